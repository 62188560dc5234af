package house

import (
	"os"
	"path/filepath"
	"slices"
	"testing"

	"github.com/stretchr/testify/require"

	"newmake/lang"
	"newmake/lang/diag"
)

// declared is what the index tells of a declaration.
type declared struct {
	word, name, parent, of, on string
	nameAt, at                 [2]int
}

func declaredIn(f *File) (out []declared) {
	for _, d := range f.Decls {
		out = append(out, declared{d.Field.Name, d.Name, d.Parent, d.Of, d.On, [2]int{d.NameAt.Start, d.NameAt.End}, [2]int{d.At.Start, d.At.End}})
	}
	return out
}

func saidIn(f *File) (out []string) {
	for _, d := range f.Said() {
		out = append(out, d.Header()+" "+d.Summary)
	}
	slices.Sort(out)
	return out
}

// checkIndex holds the index of a text against the text read whole: the same
// declarations, names and places; and read one by one, or all at once, the same is
// said of them.
func checkIndex(t *testing.T, data string) {
	t.Helper()
	src := text{path: "index.batch", name: "index.batch", data: []byte(data)}
	if _, ok := lang.Outline(diag.NewSource(src.name, src.data)); !ok {
		return // it is read whole in any case
	}
	whole := bare(src)
	whole.whole()
	whole.fewBatches()
	want := declaredIn(whole)

	once, each := open(src, nil), open(src, nil)
	require.Equal(t, want, declaredIn(once))
	for _, d := range each.Decls {
		require.NotNil(t, d.Node())
		require.Equal(t, d.At, d.Node().At())
		require.Equal(t, d.Name, d.Node().Text("name"))
	}
	if said := saidIn(whole); len(said) < diag.MostSaid {
		require.Equal(t, said, saidIn(once))
		require.Equal(t, said, saidIn(each))
	}
	require.Equal(t, whole.Heads(), once.Heads())
	us, si := whole.Units()
	us2, si2 := once.Units()
	require.Equal(t, [2]int{us, si}, [2]int{us2, si2})
}

// FuzzIndex holds the index of any text against its full parse.
func FuzzIndex(f *testing.F) {
	for _, pattern := range []string{"../check/testdata/*.batch", "../check/testdata/mistakes/*.batch", "../../stdlib/*.batch", "../../examples/lantern-hollow/*.batch"} {
		paths, _ := filepath.Glob(pattern)
		for _, path := range paths {
			data, err := os.ReadFile(path)
			require.NoError(f, err)
			f.Add(string(data))
		}
	}
	for _, data := range []string{
		"newmake 1\nnewmake 1\n", "grain a {\n}\ngrain b from a {\n}\nplant p from q {\n}\n", "batch \"\" {\n}\n", "nonsense\nbatch a {\n}\n", "batch {\n}\nbatch b { at c }\n",
		"run \"26-03\" of \"Ferry Landing\" on 2026-03-03 {\n}\nrun a of b on 2026-02-30 {\n}\nrun a of b on 2026-03-03x {\n}\ninstrument H3 {\n}\n", "season a from 2026-01-01 to 2026-02-01 {\n}\nround on 2026-01-01 {\n}\nvat \"a\" on 2026-01-01 in b {\n}\nbatch a from 2026-01-01 {\n}\n",
		"model m {\n  a 3\n}\nyeast y {\n  growth\n}\nenzyme z {\n}\n", "batch \"a\u0301\" from \"\u00e1\" {\n}\n",
	} {
		f.Add(data)
	}
	f.Fuzz(checkIndex)
}
