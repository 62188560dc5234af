package library_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"newmake/lang/check"
	"newmake/lang/diag"
	"newmake/lang/library"
	"newmake/lang/quantity"
)

func TestSearch(t *testing.T) {
	all := check.Builtin().LibraryItems(quantity.Both)
	names := func(args ...string) (out []string) {
		for _, i := range library.Search(all, "", args).Found {
			out = append(out, i.Kind+" "+i.Name)
		}
		return out
	}
	assert.Len(t, names(), len(all), "no words are all of it")
	assert.Equal(t, []string{"grain corn"}, names("corn"), "a name is that entry alone")
	assert.Equal(t, names("grain"), names("grains"), "a kind, in the plural too")
	for _, n := range names("grain", "oats") {
		assert.True(t, strings.HasPrefix(n, "grain "), n)
	}
	none := library.Search(all, "", []string{"otas"})
	assert.Empty(t, none.Found)
	assert.Equal(t, "oats", none.Near)
	assert.Empty(t, library.Search(all, "", []string{"xyzzy"}).Near, "nothing is like it")
	assert.Empty(t, none.Document().Entries)
	assert.NotNil(t, none.Document().Entries, "JSON has a list, if an empty one")
}

func TestPageIs80ColumnsWide(t *testing.T) {
	all := check.Builtin().LibraryItems(quantity.Both)
	for _, args := range [][]string{nil, {"grain"}, {"standard", "80", "proof"}, {"corn"}, {"model"}} {
		a := library.Search(all, "", args)
		require.NotEmpty(t, a.Found, args)
		for _, line := range strings.Split(a.Text(false), "\n") {
			assert.LessOrEqual(t, diag.Width(line), 80, line)
		}
		for _, r := range a.Text(true) {
			require.Less(t, r, rune(0x80), "ASCII alone was asked for")
		}
	}
}
