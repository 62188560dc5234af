package highlight

import (
	"os"
	"regexp"
	"slices"
	"testing"

	"github.com/google/go-cmp/cmp"
	"github.com/stretchr/testify/require"

	"newmake/lang/schema"
	"newmake/lang/testflag"
)

const (
	textMateFile = "../vscode/syntaxes/newmake.tmLanguage.json"
	vimFile      = "../vim/syntax/newmake.vim"
)

// TestFilesAreFresh: the files are what the tables give now.
func TestFilesAreFresh(t *testing.T) {
	w := Gather()
	grammar, err := TextMate(w)
	require.NoError(t, err)
	for path, want := range map[string][]byte{textMateFile: grammar, vimFile: Vim(w)} {
		if testflag.Update() {
			require.NoError(t, os.WriteFile(path, want, 0o644))
		}
		got, err := os.ReadFile(path)
		require.NoError(t, err)
		require.Empty(t, cmp.Diff(string(want), string(got)), "%s is stale: go test ./editors/highlight -update", path)
	}
}

// TestWordsAreWhole: every word of the tables stands somewhere, once.
func TestWordsAreWhole(t *testing.T) {
	w := Gather()
	begin := slices.Concat(w.Blocks, w.Steps, w.Fields)
	within := slices.Concat(w.Connectives, w.Options)
	for _, list := range [][]string{w.Declarations, begin, within, w.Units} {
		sorted := slices.Clone(list)
		slices.Sort(sorted)
		require.Len(t, slices.Compact(sorted), len(list), "a word stands twice")
	}
	var walk func(b *schema.Block, top bool)
	walk = func(b *schema.Block, top bool) {
		for _, f := range b.Fields {
			if top {
				require.Contains(t, w.Declarations, f.Name)
			} else {
				require.Contains(t, begin, f.Name)
			}
			for _, word := range f.Words() {
				require.Contains(t, within, word)
			}
			if f.Block != nil {
				walk(f.Block, false)
			}
		}
	}
	walk(schema.Language, true)
	require.Contains(t, w.Units, "% abv")
	require.Contains(t, w.Connectives, "to")
	require.Contains(t, w.Options, "new")
}

// TestOneOf: words stand for themselves, longer units before shorter.
func TestOneOf(t *testing.T) {
	units := regexp.MustCompile("^(?:" + oneOf(Gather().Units) + ")")
	for text, want := range map[string]string{"% abv": "% abv", "%": "%", "gal/lb": "gal/lb", "fl  oz": "fl  oz", "m3": "m3", "°F": "°F", "/h": "/h"} {
		require.Equal(t, want, units.FindString(text))
	}
	require.Empty(t, units.FindString("firkin"))
}
