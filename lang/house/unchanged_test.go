package house

import (
	"testing"
	"testing/fstest"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// TestButRuns: a run may change in a file of its own, and nothing else may.
func TestButRuns(t *testing.T) {
	digest := func(texts map[string]string) [32]byte {
		fsys := fstest.MapFS{}
		for name, text := range texts {
			fsys[name] = &fstest.MapFile{Data: []byte(text)}
		}
		h, err := LoadFS(fsys, "house", Options{})
		require.NoError(t, err)
		return h.ButRuns()
	}
	with := func(name, text string) map[string]string {
		out := map[string]string{
			"house.batch": "newmake 1\nplant \"Mill\" {\n}\n", "rye.batch": "batch \"Rye\" {\n}\n", "learned.batch": "learned \"Mill\" {\n}\n",
			"runs/1.batch": "run \"1\" of \"Rye\" on 2026-03-03 {\n}\n", "casks.batch": "cask \"C-1\" {\n}\n",
		}
		if out[name] = text; text == "" {
			delete(out, name)
		}
		return out
	}
	as := digest(with("", ""))
	assert.Equal(t, as, digest(with("runs/1.batch", "run \"1\" of \"Rye\" on 2026-03-03 {\n  # read\n}\n")))
	assert.Equal(t, as, digest(with("runs/1.batch", "")))
	assert.Equal(t, as, digest(with("runs/2.batch", "run \"2\" of \"Rye\" on 2026-03-10 {\n}\n")))
	for name, text := range map[string]string{
		"house.batch": "newmake 1\nplant \"Mill\" {\n  elevation 100 ft\n}\n", "rye.batch": "batch \"Rye\" {\n  bill 1 kg {\n  }\n}\n", "casks.batch": "",
		"learned.batch": "learned \"Mill\" {\n  on 2026-03-03\n}\n", "more.batch": "grain rye {\n}\n",
		"runs/1.batch": "run \"1\" of \"Rye\" on 2026-03-03 {\n}\nbatch \"Corn\" {\n}\n",
		"runs/2.batch": "run \"2\" of \"Rye\" on 2026-03-10 {\n}\nnothing known\n",
	} {
		assert.NotEqual(t, as, digest(with(name, text)), name)
	}
	assert.NotEqual(t, digest(with("a.batch", "grain rye {\n}\n")), digest(with("b.batch", "grain rye {\n}\n")), "by which name a file goes")
}
