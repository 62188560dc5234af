package house

import (
	"io/fs"
	"os"
	"path/filepath"
	"sync"

	"newmake/lang/parallel"
	"newmake/stdlib"
)

// Options of Load.
type Options struct {
	// Overlay gives texts that stand for files: what an editor holds unsaved, or
	// what came on standard input. The keys are paths as Load takes them (for
	// LoadFS: below the house, with slashes); the files need not exist.
	Overlay map[string][]byte
	// Base is the library that lies under the house's own; nil is the built-in one.
	Base *House
}

// Load reads the house to which a file or folder belongs: the nearest folder at
// or above it that holds house.batch, with every .batch file below that. The
// command line, the language server and every other front end load through here.
//
// The error is a diag.List if the file belongs to no house, and else says why
// the folder can't be read. What is wrong with the texts is not an error of
// Load: package check says it.
func Load(at string, o Options) (*House, error) {
	abs, err := filepath.Abs(at)
	if err != nil {
		return nil, err
	}
	overlay := make(map[string][]byte, len(o.Overlay))
	for p, data := range o.Overlay {
		full, err := filepath.Abs(p)
		if err != nil {
			return nil, err
		}
		overlay[full] = data
	}
	if _, err := os.Stat(abs); err != nil && overlay[abs] == nil {
		return nil, err
	}
	dir, ok := Above(abs, func(p string) bool {
		info, err := os.Stat(p)
		return err == nil && !info.IsDir() || overlay[p] != nil
	})
	if !ok {
		return nil, noHouse(at)
	}
	root, err := os.OpenRoot(dir)
	if err != nil {
		return nil, err
	}
	defer root.Close()
	below := make(map[string][]byte, len(overlay))
	for p, data := range overlay {
		if rel, err := filepath.Rel(dir, p); err == nil && filepath.IsLocal(rel) {
			below[filepath.ToSlash(rel)] = data
		}
	}
	shown := dir
	if !filepath.IsAbs(at) {
		if cwd, err := os.Getwd(); err == nil {
			if rel, err := filepath.Rel(cwd, dir); err == nil {
				shown = rel
			}
		}
	}
	return LoadFS(root.FS(), shown, Options{Overlay: below, Base: o.Base})
}

// LoadFS is Load for a file system whose top is the house. shown is how the user
// knows that folder; it stands before the names of the files.
func LoadFS(fsys fs.FS, shown string, o Options) (*House, error) {
	r := &reader{
		fsys: fsys, overlay: o.Overlay,
		shown: func(rel string) string { return filepath.Join(shown, filepath.FromSlash(rel)) },
	}
	r.read()
	base := o.Base
	if base == nil {
		base = Builtin()
	}
	h := newHouse(shown, openAll(r.texts, base.hasEntry), r.diags, base)
	if h.Main() == nil {
		if len(r.diags) > 0 { // it is there, and was not read
			return nil, r.diags
		}
		return nil, noHouse(shown)
	}
	return h, nil
}

// Builtin is the library that comes with the program.
var Builtin = sync.OnceValue(func() *House { return LoadLibrary(stdlib.FS) })

// LoadLibrary reads a library from the .batch files of a file system.
func LoadLibrary(fsys fs.FS) *House {
	r := &reader{fsys: fsys, shown: func(rel string) string { return "stdlib/" + rel }}
	r.read()
	return newHouse("stdlib", openAll(r.texts, nil), r.diags, nil)
}

// openAll opens texts side by side and gives the files in the same order.
func openAll(texts []text, inLibrary func(name string) bool) []*File {
	files := make([]*File, len(texts))
	parallel.Each(len(texts), func(i int) { files[i] = open(texts[i], inLibrary) })
	return files
}
