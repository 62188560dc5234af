package main

import (
	"bytes"
	"compress/gzip"
	"crypto/sha256"
	"embed"
	"encoding/hex"
	"encoding/json"
	"errors"
	"fmt"
	"io/fs"
	"maps"
	"os"
	"os/exec"
	"path"
	"path/filepath"
	"slices"
	"strings"

	"newmake/compile/front"
	"newmake/lang/wholefile"
)

//go:embed site
var site embed.FS

// size is what a folder weighs.
type size struct {
	files  int
	packed int // bytes, each file with gzip
}

// build writes the folder. It is made whole first, and each file is written whole.
func build(out string) (size, error) {
	root, err := moduleRoot()
	if err != nil {
		return size{}, err
	}
	files, err := contents(root)
	if err != nil {
		return size{}, err
	}
	if err := os.MkdirAll(out, 0o777); err != nil {
		return size{}, err
	}
	total := size{files: len(files)}
	for _, name := range slices.Sorted(maps.Keys(files)) {
		packed, err := pack(files[name])
		if err != nil {
			return size{}, err
		}
		total.packed += min(len(packed), len(files[name]))
		if _, err := (wholefile.Disk{}).Write(filepath.Join(out, name), files[name]); err != nil {
			return size{}, err
		}
	}
	return total, nil
}

// moduleRoot is where the sources of newmake lie.
func moduleRoot() (string, error) { return told("list", "-m", "-f", "{{.Dir}}", "newmake") }

// told is what the go tool says. Where it lies itself it is asked too: a program that is
// built with -trimpath does not know.
func told(args ...string) (string, error) {
	out, err := exec.Command("go", args...).Output()
	if err != nil {
		return "", errors.New("run this inside the sources of newmake, with the Go that built it in PATH")
	}
	return strings.TrimSpace(string(out)), nil
}

// contents makes all files of the folder, by their names.
func contents(root string) (map[string][]byte, error) {
	files := map[string][]byte{}
	listed, err := site.ReadDir("site")
	if err != nil {
		return nil, err
	}
	for _, e := range listed {
		if files[e.Name()], err = site.ReadFile(path.Join("site", e.Name())); err != nil {
			return nil, err
		}
	}
	goroot, err := told("env", "GOROOT")
	if err != nil {
		return nil, err
	}
	if files["wasm_exec.js"], err = os.ReadFile(filepath.Join(goroot, "lib", "wasm", "wasm_exec.js")); err != nil {
		return nil, err
	}
	if files["engine.bin"], err = engineOf(root); err != nil {
		return nil, err
	}
	if files["built.json"], err = examples(root); err != nil {
		return nil, err
	}
	linked, err := os.ReadFile(filepath.Join(root, "cmd", "newmake", "internal", "licences", "linked.txt"))
	if err != nil {
		return nil, err
	}
	files["licences.txt"] = slices.Concat(
		[]byte("The licence of newmake itself is for its owner to state; none is stated here.\n"+
			"The engine of the page, engine.bin, is linked of these, or of some of them:\n\n"), linked, []byte("\n"), files["codemirror-licences.txt"])
	delete(files, "codemirror-licences.txt")
	return files, listForWorker(files)
}

// inlined are the packages that reckon: there a call that is put in place is worth its
// room. Everywhere else no call is, which makes the engine a tenth smaller.
var inlined = []string{"newmake/compile/matter/fluid", "newmake/compile/matter/exponential", "newmake/compile/matter/monotone", "newmake/compile/stage/ferment", "math"}

// engineOf builds newmake as WebAssembly, packed.
func engineOf(root string) ([]byte, error) {
	dir, err := os.MkdirTemp("", "newmake-page-")
	if err != nil {
		return nil, err
	}
	defer os.RemoveAll(dir)
	wasm := filepath.Join(dir, "engine.wasm")
	args := []string{"build", "-buildvcs=auto", "-trimpath", "-ldflags", "-s -w", "-gcflags=all=-l"}
	for _, quick := range inlined {
		args = append(args, "-gcflags="+quick+"=")
	}
	cmd := exec.Command("go", append(args, "-o", wasm, "./editors/page/wasm")...)
	cmd.Dir = root
	cmd.Env = append(os.Environ(), "GOOS=js", "GOARCH=wasm")
	if said, err := cmd.CombinedOutput(); err != nil {
		return nil, fmt.Errorf("the engine cannot be built: %v\n%s", err, said)
	}
	code, err := os.ReadFile(wasm)
	if err != nil {
		return nil, err
	}
	if code, err = rejoined(code); err != nil {
		return nil, err
	}
	return pack(code)
}

// pack is a file packed with gzip. No clock goes into it.
func pack(data []byte) ([]byte, error) {
	var b bytes.Buffer
	w, err := gzip.NewWriterLevel(&b, gzip.BestCompression)
	if err != nil {
		return nil, err
	}
	if _, err := w.Write(data); err != nil {
		return nil, err
	}
	if err := w.Close(); err != nil {
		return nil, err
	}
	return b.Bytes(), nil
}

// examples are the example houses as the page holds them.
func examples(root string) ([]byte, error) {
	houses := map[string]map[string]string{}
	top := os.DirFS(filepath.Join(root, "examples"))
	err := fs.WalkDir(top, ".", func(p string, d fs.DirEntry, err error) error {
		if err != nil || d.IsDir() || path.Ext(p) != front.Ending {
			return err
		}
		house, name, _ := strings.Cut(p, "/")
		text, err := fs.ReadFile(top, p)
		if houses[house] == nil {
			houses[house] = map[string]string{}
		}
		houses[house][name] = string(text)
		return err
	})
	if err != nil {
		return nil, err
	}
	return json.Marshal(map[string]any{"examples": houses})
}

// listForWorker writes into the service worker which files there are, and a version that
// changes with each of them.
func listForWorker(files map[string][]byte) error {
	const name, blank = "service-worker.js", "const built = null;"
	if !bytes.Contains(files[name], []byte(blank)) {
		return fmt.Errorf("%s has no place for the list of files", name)
	}
	sum := sha256.New()
	list := []string{"./"}
	for _, f := range slices.Sorted(maps.Keys(files)) {
		fmt.Fprintf(sum, "%s %d\n", f, len(files[f]))
		sum.Write(files[f])
		if f != name {
			list = append(list, f)
		}
	}
	text, err := json.Marshal(map[string]any{"version": hex.EncodeToString(sum.Sum(nil))[:16], "files": list})
	if err != nil {
		return err
	}
	files[name] = bytes.Replace(files[name], []byte(blank), []byte("const built = "+string(text)+";"), 1)
	return nil
}
