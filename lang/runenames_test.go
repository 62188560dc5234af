package lang

import (
	"fmt"
	"os"
	"slices"
	"strings"
	"testing"
	"unicode"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"golang.org/x/text/unicode/runenames"

	"newmake/lang/testflag"
)

// namedRunes are those that have a name in runenames.txt: all for which there is
// something to type instead, all letters that pass for others, all that reorder
// text, and the blocks of signs.
func namedRunes() []rune {
	var all []rune
	for r := range typeInstead {
		all = append(all, r)
	}
	for r := range latinLike {
		all = append(all, r)
	}
	for _, block := range [][2]rune{
		{0xA0, 0xBF}, {0xD7, 0xD7}, {0xF7, 0xF7}, // Latin-1's signs
		{0x0300, 0x036F},                   // accents that stand alone
		{0x061C, 0x061C}, {0x2000, 0x206F}, // spaces, dashes, quotes, orders of writing
		{0x2070, 0x209C}, {0x20A0, 0x20C0}, // small figures, money
		{0x2100, 0x218B}, {0x2190, 0x21FF}, {0x2200, 0x22FF}, // letters as signs, fractions, arrows, mathematics
		{0x3000, 0x3030}, {0xFE50, 0xFE6B}, {0xFEFF, 0xFEFF}, {0xFF01, 0xFFE6}, {0xFFFD, 0xFFFD},
	} {
		for r := block[0]; r <= block[1]; r++ {
			all = append(all, r)
		}
	}
	slices.Sort(all)
	return slices.DeleteFunc(slices.Compact(all), func(r rune) bool {
		name := runenames.Name(r)
		return name == "" || strings.HasPrefix(name, "<") || unicode.IsControl(r) ||
			strings.Contains(name, "KATAKANA") || strings.Contains(name, "HANGUL")
	})
}

// The names are Unicode's, as golang.org/x/text has them.
func TestRuneNamesAreUnicodes(t *testing.T) {
	var b strings.Builder
	b.WriteString("\n")
	for _, r := range namedRunes() {
		fmt.Fprintf(&b, "%04X %s\n", r, runenames.Name(r))
	}
	if testflag.Update() {
		require.NoError(t, os.WriteFile("runenames.txt", []byte(b.String()), 0o644))
	}
	want, err := os.ReadFile("runenames.txt")
	require.NoError(t, err)
	assert.Equal(t, b.String(), string(want), "go test ./lang -update writes it")
}

func TestRuneName(t *testing.T) {
	for r, want := range map[rune]string{
		'\u2013': "U+2013 EN DASH", 'о': "U+043E CYRILLIC SMALL LETTER O", '\u202e': "U+202E RIGHT-TO-LEFT OVERRIDE",
		'\ufeff': "U+FEFF ZERO WIDTH NO-BREAK SPACE", 'Ａ': "U+FF21 FULLWIDTH LATIN CAPITAL LETTER A", '½': "U+00BD VULGAR FRACTION ONE HALF",
		'\x1b': "U+001B", '\u0085': "U+0085", '漢': "U+6F22", '🥃': "U+1F943",
	} {
		assert.Equal(t, want, runeName(r))
	}
}
