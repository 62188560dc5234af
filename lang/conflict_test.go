package lang_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"newmake/lang"
	"newmake/lang/diag"
)

// TestConflict: where git has left both sides of a merge, that is said once, and
// the upper side is read.
func TestConflict(t *testing.T) {
	text := "batch \"A\" {\n  bill {\n<<<<<<< HEAD\n    rye 12 %\n||||||| 1a2b3c\n    rye 10 %\n=======\n    rye 14 % {\n>>>>>>> more-rye\n  }\n}\n"
	for name, text := range map[string]string{
		"three sides": text,
		"two sides":   strings.Replace(text, "||||||| 1a2b3c\n    rye 10 %\n", "", 1),
		"CRLF":        strings.ReplaceAll(text, "\n", "\r\n"),
		"no names":    strings.NewReplacer(" HEAD", "", " more-rye", "").Replace(text),
	} {
		t.Run(name, func(t *testing.T) {
			src := diag.NewSource("a.batch", []byte(text))
			file, list := lang.Parse(src)
			require.Len(t, list, 1, "%v", list)
			assert.Equal(t, diag.CodeConflict, list[0].Code)
			line, _ := list[0].At.Position()
			assert.Equal(t, 3, line)
			bill := file.Stmts[0].Block.Stmts[0].Block
			require.Len(t, bill.Stmts, 1)
			assert.Equal(t, "rye", bill.Stmts[0].Items[0].Text)
			assert.Equal(t, 12.0, bill.Stmts[0].Items[1].Value)
			_, ok := lang.Outline(src)
			assert.False(t, ok, "a house reads the whole of it")
		})
	}
	two, list := lang.Parse(diag.NewSource("a.batch", []byte(text+text)))
	assert.Len(t, two.Stmts, 2)
	assert.Len(t, list, 2, "one for each")
	out, list := lang.Format(diag.NewSource("a.batch", []byte(text)))
	assert.Nil(t, out, "it is not laid out")
	assert.True(t, list.HasErrors())
}

// TestNoConflict: what looks like a part of one is none.
func TestNoConflict(t *testing.T) {
	for _, text := range []string{
		"x 1\n=======\n>>>>>>> b\n",
		"<<<<<<< a\nx 1\n>>>>>>> b\n",
		"<<<<<<< a\nx 1\n=======\n",
		"<<<<<<<< a\nx 1\n=======\n>>>>>>>> b\n",
		" <<<<<<< a\nx 1\n =======\n >>>>>>> b\n",
	} {
		_, list := lang.Parse(diag.NewSource("a.batch", []byte(text)))
		require.NotEmpty(t, list, text)
		for _, d := range list {
			assert.NotEqual(t, diag.CodeConflict, d.Code, text)
		}
	}
	_, list := lang.Parse(diag.NewSource("a.batch", []byte("# <<<<<<< a\n# =======\n# >>>>>>> b\nx 1\n")))
	assert.Empty(t, list)
}
