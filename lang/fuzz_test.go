package lang_test

import (
	"testing"

	"github.com/stretchr/testify/require"

	"newmake/lang"
	"newmake/lang/diag"
)

// seeds are every .batch file of the repository, and the lines of the tables.
func seeds(f *testing.F) {
	for _, text := range corpus(f) {
		f.Add(string(text))
	}
	for _, text := range []string{
		"", "a {\n}\n", "a { b 4 % }", "a {}", "a { b }  # c", "a,\n b", "a,\n# c\n\nb {\n}", "x 1,3 gal", "78..88 F", "78 F..88 F",
		"\"a\\\"b\"", "\"open", "} }", "{", "a }", "a ,, b", ", a", "7/10", "a / b", "a /h", "°F", "5 ° F", "% abv", "5 % of grain", "5 % of",
		"\ufeffa", "a\r\nb\rc", "a\u00a0b", "“a”", "2026-02-30", "07:00 -05:00", "\x00", "\xff\xfea\x00", "# \u202e", "a \xe9",
		"a 5\nb 6 # c\n\n\n# d\n}", "09:20 strike 5 F\n2026-03-03 x", "a b,", "x {\nadd a,\n}", "a 1 / 2", "a 1 /\n", "a 1..2..3 F", "a - b", "5 a\n\"b\" 6", "a } b", "/}x", "a { b } c } d",
	} {
		f.Add(text)
	}
}

// FuzzParse: any text gives a tree, at most one syntax error for a line, places
// inside the text, and no comment lost.
func FuzzParse(f *testing.F) {
	seeds(f)
	f.Fuzz(func(t *testing.T, text string) {
		src := diag.NewSource("fuzz.batch", []byte(text))
		file, list := lang.Parse(src)
		text = string(src.Text)
		perLine := make(map[int]int)
		for _, d := range list {
			inside(t, src, d.At)
			if d.Fix != nil {
				inside(t, src, d.Fix.At)
			}
			require.NotEmpty(t, d.Summary)
			require.NotEmpty(t, d.Help, "%s", d.Summary)
			require.NotContains(t, d.Summary, "not understood", "the grammar stopped: %s", d.Reason)
			_, known := diag.Lookup(d.Code)
			require.True(t, known, "%s", d.Code)
			switch d.Code {
			case diag.CodeUnclosedBlock, diag.CodeExtraBrace, diag.CodeBidi: // one for a file; a warning
			default:
				n, _ := d.At.Position()
				perLine[n]++
				require.Equal(t, 1, perLine[n], "line %d: %v", n, list)
			}
		}
		last := 0
		lang.Walk(file.Stmts, func(s *lang.Stmt, _ int) bool {
			inside(t, src, s.At)
			require.GreaterOrEqual(t, s.At.Start, last, "statements stand in the order of the text")
			last = s.At.Start
			require.True(t, s.Bad || len(s.Items) > 0)
			for _, i := range s.Items {
				inside(t, src, i.At)
			}
			if s.Block != nil {
				inside(t, src, s.Block.At)
			}
			return true
		})
		if len(file.Stmts) > 0 || len(file.Tail) > 0 {
			require.Equal(t, commentTokens(lang.Tokens(src.Text), text), comments(file))
		}
	})
}

func inside(t *testing.T, src *diag.Source, s diag.Span) {
	t.Helper()
	require.Same(t, src, s.Src)
	require.True(t, 0 <= s.Start && s.Start <= s.End && s.End <= len(src.Text), "%d..%d of %d", s.Start, s.End, len(src.Text))
}

// FuzzFormat: a text without errors formats to the same tree with the same
// comments, and is done after one pass; a text with errors is refused.
func FuzzFormat(f *testing.F) {
	seeds(f)
	f.Fuzz(func(t *testing.T, text string) {
		if _, list := parse(text); list.HasErrors() {
			out, list := lang.Format(diag.NewSource("fuzz.batch", []byte(text)))
			require.Nil(t, out)
			require.True(t, list.HasErrors())
			return
		}
		checkFormat(t, "fuzz", text)
	})
}
