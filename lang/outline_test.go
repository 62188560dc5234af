package lang_test

import (
	"bytes"
	"fmt"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"newmake/lang"
	"newmake/lang/diag"
)

// checkOutline holds the parts of a text against the whole: read one by one they
// give the same statements, comments and diagnostics, and what is said of a plain
// one is so.
func checkOutline(t *testing.T, text string) {
	t.Helper()
	src := diag.NewSource("outline.batch", []byte(text))
	parts, ok := lang.Outline(src)
	if !ok {
		return
	}
	whole, want := lang.Parse(src)
	require.False(t, whole.Adrift)
	var got diag.List
	joined := &lang.File{Source: src}
	at := 0
	for i, p := range parts {
		require.Equal(t, at, p.Start, "parts leave nothing out")
		at = p.End
		part, list := lang.ParsePart(src, p)
		got = append(got, list...)
		if len(joined.Tail) > 0 && len(part.Stmts) > 0 { // of a line that could not be read: it goes to what follows
			part.Stmts[0].Lead, joined.Tail = append(joined.Tail, part.Stmts[0].Lead...), nil
		}
		joined.Stmts = append(joined.Stmts, part.Stmts...)
		joined.Tail = append(joined.Tail, part.Tail...)
		if len(part.Stmts) == 0 {
			require.Equal(t, len(parts)-1, i, "every part but the last has a statement")
			require.False(t, p.Plain)
			continue
		}
		require.True(t, len(part.Tail) == 0 || list.HasErrors())
		if !p.Plain {
			continue
		}
		require.Len(t, part.Stmts, 1)
		s := part.Stmts[0]
		require.False(t, s.Bad)
		require.NotNil(t, s.Block)
		require.Equal(t, p.Word, s.Head())
		require.Equal(t, p.Head, s.Items[1:])
		require.Equal(t, p.At, s.At)
	}
	require.Equal(t, len(src.Text), at)
	got.Sort()
	require.Equal(t, want, got)
	require.Equal(t, whole, joined)
}

// FuzzOutline holds the outline of any text against its full parse.
func FuzzOutline(f *testing.F) {
	seeds(f)
	for _, text := range []string{
		"batch a {\n}\nbatch b from a {\n}\n", "# c\n\nbatch \"a b\" { # d\n  x \"}\" # }\n} # e\n# f\n", "a b {\n} c d {\n}\n", "a b { c }\n",
		"batch a, \n b {\n}", "a b {\nadd x,\n}\nc d {\n}", "a \"\\n\" {\n}\n", "a \"b {\n}\n", "a b {\r\n}\r\nc d {\r}\r", "\u00a0\n a b {\n}", "a b\u202e {\n}",
		"a b {\n\"x\n}\n", "a b { # \xff\n}\n", "a \"\" {\n}", "a b from \"\" {\n}", "a 3 {\n}", "a b {\n x { y } }\n", "e\u0301 b {\n}",
	} {
		f.Add(text)
	}
	f.Fuzz(checkOutline)
}

// TestOutlineIsPlain: the declarations of the shipped texts are all known by their
// outline; what only reading can tell is left to it.
func TestOutlineIsPlain(t *testing.T) {
	for path, text := range corpus(t) {
		src := diag.NewSource(path, text)
		parts, ok := lang.Outline(src)
		if _, list := lang.Parse(src); list.HasErrors() {
			continue
		}
		require.True(t, ok, path)
		for _, p := range parts {
			file, _ := lang.ParsePart(src, p)
			if len(file.Stmts) > 0 && file.Stmts[0].Block != nil && file.Stmts[0].Block.At.Text() != "{}" {
				require.True(t, p.Plain || file.Stmts[0].Head() != "batch", "%s: %s", path, file.Stmts[0].At.Text())
			}
		}
	}
	for _, text := range []string{"a {\n", "}\n", "a b {\n} c\n", "a,\nb {\n}\n", "a { } }\n"} {
		_, ok := lang.Outline(diag.NewSource("x", []byte(text)))
		require.False(t, ok, text)
	}
}

// TestOutlineOfLong: what Parse refuses for its length has no outline.
func TestOutlineOfLong(t *testing.T) {
	for _, c := range []struct {
		text string
		ok   bool
	}{
		{strings.Repeat("a\n", lang.MaxStatements), true},
		{strings.Repeat("a\n", lang.MaxStatements+1), false},
		{"a b {\n" + strings.Repeat(strings.Repeat("c ", 1000)+"\n", 199) + "}\n", true},
		{"a b {\n" + strings.Repeat(strings.Repeat("c ", 1000)+"\n", 200) + "}\n", false},
		{strings.Repeat("{\n", 3), false},
		{"a { " + strings.Repeat("b {\n", lang.MaxNesting-1) + strings.Repeat("}\n", lang.MaxNesting), true},
		{"a { " + strings.Repeat("b {\n", lang.MaxNesting) + strings.Repeat("}\n", lang.MaxNesting+1), false},
		{"a b {\n" + strings.Repeat(" ", lang.MaxLineBytes-1) + "c\n}\n", true},
		{"a b {\n" + strings.Repeat(" ", lang.MaxLineBytes) + "c\n}\n", false},
		{"#" + strings.Repeat(" ", lang.MaxLineBytes-1) + "\n", true},
		{"#" + strings.Repeat(" ", lang.MaxLineBytes), false},
		{"a b {\n" + "}" + strings.Repeat(" ", lang.MaxLineBytes-1) + "\n", true},
		{"a b {\n" + "}" + strings.Repeat(" ", lang.MaxLineBytes) + "\n", false},
	} {
		src := diag.NewSource("long.batch", []byte(c.text))
		_, ok := lang.Outline(src)
		_, list := lang.Parse(src)
		refused := slices.ContainsFunc(list, func(d diag.Diagnostic) bool {
			return slices.Contains([]diag.Code{diag.CodeTooLong, diag.CodeLineTooLong, diag.CodeTooDeep, diag.CodeUnclosedBlock, diag.CodeNoStatement}, d.Code)
		})
		require.Equal(t, c.ok, ok, "%.20q", c.text)
		require.Equal(t, !c.ok, refused, "%.20q: %v", c.text, list)
	}
}

func BenchmarkOutline(b *testing.B) {
	for _, copies := range []int{1, 1000} {
		text := bytes.TrimSpace(benchmarkText(b, copies))
		b.Run(fmt.Sprintf("%dkB", len(text)/1000), func(b *testing.B) {
			perByte(b, text, func(s *diag.Source) { lang.Outline(s) })
		})
	}
}
