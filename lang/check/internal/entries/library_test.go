package entries

import (
	"testing"
	"testing/fstest"

	"newmake/lang/house"
	"newmake/lang/schema"
	"newmake/stdlib"
)

// BenchmarkLibraryAtStart opens the built-in library and reads what a batch uses of it, as a
// process does once.
func BenchmarkLibraryAtStart(b *testing.B) {
	b.ReportAllocs()
	fsys := fstest.MapFS{"house.batch": &fstest.MapFile{Data: []byte("newmake 1\n")}}
	for b.Loop() {
		base := house.LoadLibrary(stdlib.FS)
		h, err := house.LoadFS(fsys, "", house.Options{Base: base})
		if err != nil {
			b.Fatal(err)
		}
		lib := over(h, &Library{house: base, carried: true})
		lib.All(schema.Model)
		for name, f := range map[string]*schema.Field{"corn": schema.Grain, "distillers-yeast": schema.Yeast, "charred-oak": schema.CaskWood, "bourbon": schema.Standard} {
			if e := lib.Find(f, name); e == nil || len(e.Diags) > 0 {
				b.Fatal(name)
			}
		}
	}
}
