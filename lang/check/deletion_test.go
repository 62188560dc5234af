package check

import (
	"maps"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"testing"
	"testing/fstest"

	"github.com/stretchr/testify/require"

	"newmake/lang"
	"newmake/lang/diag"
	"newmake/lang/testflag"
)

// mostErrors is how many errors one slip may bring.
const mostErrors = 2

// TestOneSlipFewErrors takes each token out of texts that are right, one at a
// time, and reads the house again: nobody has to look for his slip among errors
// that follow from it.
func TestOneSlipFewErrors(t *testing.T) {
	for _, house := range []fstest.MapFS{bench(t, nil), folder(t, "../../examples/lantern-hollow")} {
		for _, name := range slices.Sorted(maps.Keys(house)) {
			t.Run(name, func(t *testing.T) { oneSlip(t, house, name, house[name].Data) })
		}
	}
	t.Run("without indents", func(t *testing.T) {
		house := bench(t, nil)
		base := regexp.MustCompile(`(?m)^ +`).ReplaceAll(house["base.batch"].Data, nil)
		two := slices.Concat(base, []byte("\nbatch \"Two\" from \"Base\" {\ncask {\nrest 5 years\n}\n}\n"))
		oneSlip(t, house, "base.batch", two)
	})
}

func oneSlip(t *testing.T, house fstest.MapFS, name string, text []byte) {
	for i, tok := range lang.Tokens(text) {
		if i%testflag.Every(7) != 0 || tok.Kind == lang.TokNewline || tok.Kind == lang.TokComment {
			continue
		}
		cut := slices.Concat(text[:tok.Start], text[tok.End:])
		h, err := LoadFS(house, "", Options{Overlay: map[string][]byte{name: cut}})
		require.NoError(t, err)
		if list := h.Check(); list.Count(diag.Error) > mostErrors {
			line := diag.NewSource(name, text).LineOf(int(tok.Start))
			t.Errorf("%s:%d without %q:\n%s", name, line, text[tok.Start:tok.End], list.Error())
		}
		for _, batch := range h.Batches() {
			b, list := h.Batch(batch)
			require.Equal(t, b == nil, list.HasErrors(), "%s without %q: a batch that is not planned says why", batch, text[tok.Start:tok.End])
		}
	}
}

// folder reads the batch files of a folder.
func folder(t *testing.T, dir string) fstest.MapFS {
	fsys := fstest.MapFS{}
	paths, err := filepath.Glob(filepath.Join(dir, "*.batch"))
	require.NoError(t, err)
	for _, path := range paths {
		data, err := os.ReadFile(path)
		require.NoError(t, err)
		fsys[filepath.Base(path)] = &fstest.MapFile{Data: data}
	}
	return fsys
}
