package main

import (
	"bytes"
	"fmt"
	"os"
	"path/filepath"
	"slices"
	"strings"

	"github.com/google/renameio/v2"

	"newmake/cmd/newmake/internal/gitrepo"
)

// belowTop is a path as a person in the repository sees it.
func belowTop(r *gitrepo.Repo, path string) string {
	if rel, err := filepath.Rel(r.Top, path); err == nil && filepath.IsLocal(rel) {
		return filepath.ToSlash(rel)
	}
	return path
}

func configPart(r *gitrepo.Repo, key, value, why string) part {
	return part{
		name: key, why: why, show: []string{value},
		found: func() (state, error) {
			switch now, err := r.Run("config", "--local", "--get", key); {
			case err != nil:
				return notThere, nil
			case strings.TrimSuffix(now, "\n") == value:
				return isOurs, nil
			default:
				return isOther, nil
			}
		},
		set: func() error { _, err := r.Run("config", "--local", key, value); return err },
		unset: func() error {
			if _, err := r.Run("config", "--local", "--unset", key); err != nil {
				return err
			}
			section := key[:strings.LastIndex(key, ".")]
			if _, err := r.Run("config", "--local", "--get-regexp", "^"+strings.ReplaceAll(section, ".", `\.`)+`\.`); err != nil {
				_, _ = r.Run("config", "--local", "--remove-section", section) // empty now; older git leaves its head
			}
			return nil
		},
		byHand: "see it with `git config " + key + "`",
		toUndo: "see it with `git config " + key + "`",
	}
}

func attributesFound(file string) (state, error) {
	text, err := os.ReadFile(file)
	if os.IsNotExist(err) {
		return notThere, nil
	}
	if err != nil {
		return notThere, err
	}
	if bytes.Contains(text, []byte(markBegin)) {
		return isOurs, nil
	}
	for line := range strings.Lines(string(text)) {
		if against(line) {
			return isOther, nil
		}
	}
	return notThere, nil
}

// against says that a line of .gitattributes sets for all .batch files what ours,
// being below it, would silently override.
func against(line string) bool {
	words := strings.Fields(line)
	if len(words) == 0 || words[0] != "*.batch" {
		return false
	}
	return slices.ContainsFunc(words[1:], func(w string) bool {
		name, value, _ := strings.Cut(strings.TrimLeft(w, "-!"), "=")
		switch name {
		case "text":
			return w != "text" && w != "text=auto"
		case "eol":
			return value != "lf"
		case "diff":
			return value != "newmake"
		}
		return name == "binary" || name == "crlf"
	})
}

func addAttributes(file string) error {
	text, err := os.ReadFile(file)
	if err != nil && !os.IsNotExist(err) {
		return err
	}
	if len(text) > 0 && !bytes.HasSuffix(text, []byte("\n")) {
		text = append(text, '\n')
	}
	text = append(text, markBegin+"\n"+attributeLine+"\n"+markEnd+"\n"...)
	return renameio.WriteFile(file, text, 0o644, renameio.WithExistingPermissions())
}

// dropAttributes takes the marked lines out, and the file if nothing else is in it.
func dropAttributes(file string) error {
	text, err := os.ReadFile(file)
	if err != nil {
		return err
	}
	var kept []string
	inside := false
	for line := range strings.Lines(string(text)) {
		switch strings.TrimSpace(line) {
		case markBegin:
			inside = true
			continue
		case markEnd:
			inside = false
			continue
		}
		if !inside {
			kept = append(kept, line)
		}
	}
	if inside {
		return fmt.Errorf("%s has %q without its end: mend it by hand", file, markBegin)
	}
	if len(kept) == 0 {
		return os.Remove(file)
	}
	return renameio.WriteFile(file, []byte(strings.Join(kept, "")), 0o644, renameio.WithExistingPermissions())
}

func hookPath(r *gitrepo.Repo) (string, error) {
	out, err := r.Run("rev-parse", "--git-path", "hooks/pre-commit")
	if err != nil {
		return "", err
	}
	path := filepath.FromSlash(strings.TrimSuffix(out, "\n"))
	if !filepath.IsAbs(path) {
		path = filepath.Join(r.Dir, path)
	}
	return filepath.Abs(path)
}

// hookFound looks at the hook. One kept outside the repository, for all of a
// person's repositories, is somebody else's whatever is in it.
func hookFound(r *gitrepo.Repo, hook string) (state, error) {
	text, err := os.ReadFile(hook)
	switch {
	case err == nil && string(text) == hookText:
		return isOurs, nil
	case err == nil:
		return isOther, nil
	case !os.IsNotExist(err):
		return notThere, err
	}
	if path, err := r.Run("config", "--get", "core.hooksPath"); err == nil && strings.TrimSpace(path) != "" {
		return isOther, nil
	}
	return notThere, nil
}

func writeHook(hook string) error {
	if err := os.MkdirAll(filepath.Dir(hook), 0o755); err != nil {
		return err
	}
	f, err := os.OpenFile(hook, os.O_WRONLY|os.O_CREATE|os.O_EXCL, 0o755) // never over one that is there
	if err != nil {
		return err
	}
	_, err = f.WriteString(hookText)
	return errorOf(err, f.Close())
}
