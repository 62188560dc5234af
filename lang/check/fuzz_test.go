package check

import (
	"os"
	"path/filepath"
	"slices"
	"testing"
	"testing/fstest"

	"newmake/lang/check/internal/entries"
	"newmake/lang/diag"
	"newmake/lang/house"
	"newmake/lang/schema"
)

// seeds adds every fixture, example and library file to a fuzz target.
func seeds(f *testing.F) {
	for _, glob := range []string{"testdata/*.batch", "testdata/mistakes/*.batch", "../../examples/*/*.batch", "../../stdlib/*.batch", "../../testdata/*/*/*.batch"} {
		paths, err := filepath.Glob(glob)
		if err != nil {
			f.Fatal(err)
		}
		for _, p := range paths {
			data, err := os.ReadFile(p)
			if err != nil {
				f.Fatal(err)
			}
			f.Add(data)
		}
	}
}

// FuzzCheck: no text makes the checker panic, whether it is a file beside a good
// house, the house itself, or part of the library; and what has no error is a
// recipe.
func FuzzCheck(f *testing.F) {
	seeds(f)
	f.Fuzz(func(t *testing.T, data []byte) {
		beside := bench(t, map[string]string{"x.batch": string(data)})
		for _, fsys := range []fstest.MapFS{beside, {house.FileName: {Data: data}}} {
			h, err := LoadFS(fsys, "", Options{})
			if err != nil {
				t.Fatal(err)
			}
			h.Check()
			for _, name := range h.Batches() {
				if b, list := h.Batch(name); (b == nil) != list.HasErrors() {
					t.Fatalf("%q: a recipe is there, or an error says why not: %v", name, list)
				}
			}
		}
		saidOf(entries.Of(house.LoadLibrary(fstest.MapFS{"x.batch": {Data: data}})))
	})
}

// saidOf reads all of a library, and gives what there is to say of it.
func saidOf(s *entries.Library) diag.List {
	list := slices.Concat(s.House().Loading(), s.House().General())
	for _, f := range s.House().Files {
		list = append(list, f.Said()...)
	}
	for _, f := range schema.Library {
		for _, m := range s.All(f) {
			list = append(list, m.Diags...)
		}
	}
	return list
}
