package lsp

import (
	"net/url"
	"path/filepath"
	"runtime"
	"strings"
)

// pathOf gives the path of a file: URI; false for a text that is no file, as one that
// was never saved.
func pathOf(uri string) (string, bool) { return pathIn(uri, runtime.GOOS == "windows") }

func pathIn(uri string, windows bool) (string, bool) {
	u, err := url.Parse(uri)
	if err != nil || u.Scheme != "file" || u.Path == "" {
		return "", false
	}
	path := u.Path
	if !windows {
		if u.Host != "" && u.Host != "localhost" {
			return "", false
		}
		return filepath.Clean(path), true
	}
	if len(path) > 2 && path[0] == '/' && path[2] == ':' { // /c:/still
		path = strings.ToUpper(path[1:2]) + path[2:]
	} else if u.Host != "" {
		path = "//" + u.Host + path
	}
	return strings.ReplaceAll(path, "/", `\`), true
}

// uriOf gives the URI of a path.
func uriOf(path string) string { return uriIn(path, runtime.GOOS == "windows") }

func uriIn(path string, windows bool) string {
	u := url.URL{Scheme: "file", Path: path}
	if windows {
		path = strings.ReplaceAll(path, `\`, "/")
		switch {
		case strings.HasPrefix(path, "//"):
			host, rest, _ := strings.Cut(path[2:], "/")
			u.Host, u.Path = host, "/"+rest
		default:
			u.Path = "/" + path
		}
	}
	return u.String()
}
