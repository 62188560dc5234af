package check

import (
	"io/fs"
	"slices"
	"sync"

	"newmake/lang"
	"newmake/lang/diag"
	"newmake/lang/recipe"
	"newmake/lang/schema"
	"newmake/stdlib"
)

// Library is a stock that houses build on, read once.
type Library struct {
	Files []*lang.File
	Stock recipe.Stock
	Diags diag.List // what is wrong with it

	nodes map[*schema.Field]*index // every entry, with all that lies under it
}

// Builtin is the stock that comes with the program. It is read once.
var Builtin = sync.OnceValue(func() *Library { return NewLibrary(stdlib.FS) })

// NewLibrary reads a stock from the .batch files of a file system.
func NewLibrary(fsys fs.FS) *Library {
	r := &reader{fsys: fsys, shown: func(rel string) string { return "stdlib/" + rel }}
	r.read()
	lib := &Library{Diags: r.diags}
	b := newStockBuilder(nil)
	for _, f := range parseAll(r.texts, nil) {
		lib.Files = append(lib.Files, f.File)
		lib.Diags = append(lib.Diags, f.diags...)
		for _, n := range f.decls {
			if b.takes(n) {
				b.add(n, &lib.Diags)
			}
		}
	}
	lib.Stock = b.build(&lib.Diags)
	lib.nodes = b.done
	return lib
}

// knows says that the library has an entry of a name.
func (l *Library) knows(name string) bool {
	for _, x := range l.nodes {
		if slices.Contains(x.order, name) {
			return true
		}
	}
	return false
}
