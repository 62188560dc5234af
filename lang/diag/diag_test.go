package diag_test

import (
	"bytes"
	"encoding/json"
	"os"
	"regexp"
	"strings"
	"testing"
	"unicode/utf8"

	"github.com/google/go-cmp/cmp"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"newmake/lang/diag"
	"newmake/lang/diag/codetest"
	"newmake/lang/testflag"
)

func golden(t *testing.T, path, got string) {
	t.Helper()
	if testflag.Update() {
		require.NoError(t, os.WriteFile(path, []byte(got), 0o644))
	}
	want, err := os.ReadFile(path)
	require.NoError(t, err)
	if d := cmp.Diff(string(want), got); d != "" {
		t.Errorf("%s (-want +got):\n%s", path, d)
	}
}

func TestCodes(t *testing.T) {
	form := regexp.MustCompile(`^NM(0[1-9]|1[0-7])\d\d$`)
	name := regexp.MustCompile(`^[a-z0-9]+(-[a-z0-9]+)*$`)
	names := make(map[string]diag.Code)
	for i, info := range diag.Table {
		assert.Regexp(t, form, string(info.Code))
		assert.Regexp(t, name, info.Name)
		assert.NotEmpty(t, info.Title, info.Code)
		assert.Empty(t, names[info.Name], "%s and %s have one name", info.Code, names[info.Name])
		names[info.Name] = info.Code
		if i > 0 {
			assert.Less(t, diag.Table[i-1].Code, info.Code, "codes are unique and in order")
		}
		got, ok := diag.Lookup(info.Code)
		assert.True(t, ok)
		assert.Equal(t, info, got)
	}
	for constant, code := range codetest.Declared(t, ".") {
		_, ok := diag.Lookup(code)
		assert.True(t, ok, "%s (%s) has no row in the table below its constant: its name, its severity and what it is", constant, code)
	}
	_, ok := diag.Lookup("NM9999")
	assert.False(t, ok)
}

func TestPositions(t *testing.T) {
	src := diag.NewSource("a.batch", []byte("\xef\xbb\xbfone\né漢😀x\r\n\tlast\rend"))
	for _, c := range []struct {
		at        string
		line, col int
	}{{"one", 1, 1}, {"é", 2, 1}, {"漢", 2, 2}, {"😀", 2, 3}, {"x", 2, 4}, {"last", 3, 2}, {"end", 4, 1}} {
		line, col := src.Position(bytes.Index(src.Text, []byte(c.at)))
		assert.Equal(t, [2]int{c.line, c.col}, [2]int{line, col}, c.at)
	}
	assert.Equal(t, 4, src.Lines())
	assert.Equal(t, []string{"one", "é漢😀x", "\tlast", "end", ""}, []string{src.Line(1), src.Line(2), src.Line(3), src.Line(4), src.Line(5)})
	line, col := src.Position(1 << 20)
	assert.Equal(t, [2]int{4, 4}, [2]int{line, col})
	line, col = src.Position(-1)
	assert.Equal(t, [2]int{1, 1}, [2]int{line, col})
	empty := diag.NewSource("", nil)
	assert.Equal(t, 1, empty.Lines())
	assert.Equal(t, "", empty.Line(1))
}

func TestList(t *testing.T) {
	a, b := diag.NewSource("a", []byte("0123456789")), diag.NewSource("b", []byte("0123456789"))
	list := diag.List{
		{Code: "NM0201", Summary: "b5", At: b.Span(5, 6)},
		{Code: "NM0202", Summary: "nowhere", Severity: diag.Note},
		{Code: "NM0203", Summary: "a7", At: a.Span(7, 8), Severity: diag.Warning},
		{Code: "NM0204", Summary: "b1", At: b.Span(1, 2)},
		{Code: "NM0205", Summary: "a7 again", At: a.Span(7, 8), Severity: diag.Warning},
		{Code: "NM0204", Summary: "b1", At: b.Span(1, 2)},
	}
	assert.True(t, list.HasErrors())
	assert.False(t, list[1:3].HasErrors())
	assert.Equal(t, 3, list.Count(diag.Error))
	assert.Equal(t, "3 errors, 2 warnings, 1 note", list.Counted())
	assert.Equal(t, "", diag.List(nil).Counted())
	list.Sort()
	var order []string
	for _, d := range list.Dedup() {
		order = append(order, d.Summary)
	}
	assert.Equal(t, []string{"b1", "b5", "a7", "a7 again", "nowhere"}, order, "files in the order in which they came")
	assert.Equal(t, "b:1:2: error NM0204: b1", list[0].Header())
	assert.Equal(t, "note NM0202: nowhere", list[len(list)-1].Header())
	assert.Equal(t, "b:1:2: error NM0204: b1\nb:1:2: error NM0204: b1", list[:2].Error())
}

// sample is a list with all that a diagnostic can have.
func sample() diag.List {
	src := diag.NewSource("ferry.batch", []byte("mash in \"Coper kettle\" {\n\twater 330 gal  # 漢字\n  漢字 conr 68 %\n  \x1b[31m bad\u202e x\n}\n"))
	house := diag.NewSource("house.batch", []byte("newmake 1\n\nplant \"Lantern Hollow\" {\n  cooker \"Copper kettle\"\n}\n"))
	at := func(s *diag.Source, text string) diag.Span {
		i := bytes.Index(s.Text, []byte(text))
		return s.Span(i, i+len(text))
	}
	return diag.List{
		{Code: diag.CodeUnknownName, Summary: "there is no cooker `Coper kettle`", At: at(src, `"Coper kettle"`),
			Help:    "did you mean `Copper kettle`?",
			Reason:  "every mash needs a vessel whose volume, jacket and cooling are known, or no time and no temperature could be computed for it",
			Related: []diag.Related{{At: at(house, `"Copper kettle"`), Text: "the cooker is declared here"}, {Text: "the house has one cooker"}},
			Fix:     &diag.Fix{At: at(src, `"Coper kettle"`), Text: `"Copper kettle"`, Label: "write `Copper kettle`"}},
		{Code: diag.CodeNoUnit, Severity: diag.Warning, Summary: "a tab stands before this", At: at(src, "330 gal")},
		{Code: diag.CodeUnknownName, Summary: "wide characters stand before this", At: at(src, "conr")},
		{Code: diag.CodeControl, Summary: "the control character U+001B stands here", At: at(src, "\x1b")},
		{Code: diag.CodeBidi, Severity: diag.Note, Summary: "an escape \x1b[2J in the message", At: at(src, "x\n")},
		{Code: diag.CodeUnclosedBlock, Summary: "a place of several lines", At: at(src, "{\n\twater")},
		{Code: diag.CodeNotLaidOut, Severity: diag.Note, Summary: "no place at all"},
	}
}

func render(t testing.TB, list diag.List, o diag.Options) string {
	t.Helper()
	var b strings.Builder
	require.NoError(t, diag.Render(&b, list, o))
	return b.String()
}

func TestRenderGolden(t *testing.T) {
	golden(t, "testdata/plain.txt", render(t, sample(), diag.Options{}))
	golden(t, "testdata/ascii.txt", render(t, sample(), diag.Options{ASCII: true, Width: 60}))
	golden(t, "testdata/color.txt", render(t, sample(), diag.Options{Color: true}))
}

func TestRenderPlainHasNoEscapes(t *testing.T) {
	assert.NotContains(t, render(t, sample(), diag.Options{}), "\x1b")
	ascii := render(t, sample(), diag.Options{ASCII: true})
	for i := range len(ascii) {
		require.Less(t, ascii[i], byte(0x7f))
	}
}

// TestMarks (pitfalls 12, 16): the mark stands under the place, whatever is
// before it, by the columns that a terminal shows.
func TestMarks(t *testing.T) {
	for _, before := range []string{"", "  ", "\t", " \t", "é ", "e\u0301 ", "漢字", "😀 ", "\x1b[31m", "\u202e", "\xff", "\x00\x7f\u0085", "ab\tcd\t"} {
		src := diag.NewSource("x", []byte(before+"HERE after"))
		out := render(t, diag.List{{Summary: "s", At: src.Span(len(before), len(before)+4)}}, diag.Options{})
		lines := strings.Split(out, "\n")
		textLine, markLine := lines[2], lines[3]
		mark := diag.Width(markLine[:strings.Index(markLine, "^")])
		place := diag.Width(textLine[:strings.Index(textLine, "HERE")])
		assert.Equal(t, place, mark, "%q", before)
		assert.Equal(t, 4, strings.Count(markLine, "^"))
	}
}

func TestLongLines(t *testing.T) {
	long := strings.Repeat("abcd ", 4000)
	for _, at := range []int{0, 40, 9000, len(long) - 5} {
		src := diag.NewSource("x", []byte(long[:at]+"HERE"+long[at:]))
		for _, o := range []diag.Options{{}, {ASCII: true}, {Width: 40}} {
			out := render(t, diag.List{{Summary: "s", At: src.Span(at, at+4)}}, o)
			lines := strings.Split(out, "\n")
			for _, line := range lines {
				assert.LessOrEqual(t, diag.Width(line), max(o.Width, 40)+40, "at %d", at)
			}
			assert.Equal(t, strings.Index(lines[2], "HERE"), strings.Index(lines[3], "^")+strings.Count(lines[2][:strings.Index(lines[2], "HERE")], "…")*2, "at %d", at)
		}
	}
}

func TestMostShown(t *testing.T) {
	src := diag.NewSource("x", []byte("abc"))
	var list diag.List
	for range 262 {
		list.Add(diag.Diagnostic{Code: diag.CodeNoUnit, Summary: "s", At: src.Span(0, 1)})
	}
	assert.Contains(t, render(t, list, diag.Options{}), "\nand 212 more\n")
	assert.Equal(t, 50, strings.Count(render(t, list, diag.Options{}), "NM0303"))
	assert.Contains(t, render(t, list, diag.Options{Max: 2}), "\nand 260 more\n")
	assert.Equal(t, 262, strings.Count(render(t, list, diag.Options{Max: -1}), "NM0303"))
	assert.Equal(t, "", render(t, nil, diag.Options{}))
}

func TestSafe(t *testing.T) {
	assert.Equal(t, "plain", diag.Safe("plain"))
	assert.Equal(t, "␛]8;;x␇ ␀␡ ␍␊ � é漢 ���", diag.Safe("\x1b]8;;x\a \x00\x7f \r\n \u0085 é漢 \u202e\ufeff\xff"))
	assert.Equal(t, "?]8 ??", diag.SafeIn("\x1b]8 é漢", true))
}

func TestJSONGolden(t *testing.T) {
	out, err := json.MarshalIndent(sample(), "", "  ")
	require.NoError(t, err)
	golden(t, "testdata/list.json", string(out)+"\n")
	none, err := json.Marshal(diag.List(nil))
	require.NoError(t, err)
	assert.Equal(t, "[]", string(none))

	var back []map[string]any
	require.NoError(t, json.Unmarshal(out, &back))
	require.Len(t, back, len(sample()))
	r := sample().Reports()[1]
	assert.Equal(t, "330 gal", r.Snippet.Code[r.Snippet.HighlightStart:r.Snippet.HighlightEnd])
	require.NotContains(t, string(out), "\x1b")
	last := ""
	for _, line := range strings.Split(string(out), "\n") {
		if line == "  {" {
			last = ""
		}
		if key, ok := strings.CutPrefix(line, `    "`); ok {
			assert.Less(t, last, key, "keys are sorted")
			last = key
		}
	}
}

// FuzzRender: whatever the text and the place, the output has no control
// character but line ends, and is UTF-8.
func FuzzRender(f *testing.F) {
	f.Add("a\tb \x1b[0m 漢", 2, 5, 80, false)
	f.Add(strings.Repeat("x", 500), 300, 20, 40, true)
	f.Add("", 0, 0, 0, false)
	f.Fuzz(func(t *testing.T, text string, start, length, width int, ascii bool) {
		src := diag.NewSource(text, []byte(text))
		n := len(src.Text)
		start = min(max(start, 0), n)
		end := min(start+min(max(length, 0), n), n)
		at := src.Span(start, end)
		list := diag.List{{Code: "NM0101", Summary: text, Help: text, Reason: text, At: at, Related: []diag.Related{{At: at, Text: text}}}}
		out := render(t, list, diag.Options{ASCII: ascii, Width: min(max(width, 0), 500)})
		require.True(t, utf8.ValidString(out))
		for _, r := range out {
			require.False(t, r < ' ' && r != '\n' || r >= 0x7f && r < 0xa0 || r >= '\u202a' && r <= '\u202e', "%q", out)
		}
		_, err := json.Marshal(list)
		require.NoError(t, err)
	})
}

// TestNothingToShow: of a file that was not read there is no line to show.
func TestNothingToShow(t *testing.T) {
	at := diag.NewSource("lone.batch", nil).Span(0, 0)
	list := diag.List{{Code: "NM0501", Summary: "lone.batch belongs to no house", Help: "move it", At: at}}
	var b strings.Builder
	require.NoError(t, diag.Render(&b, list, diag.Options{}))
	assert.Equal(t, "lone.batch: error NM0501: lone.batch belongs to no house\n  = help: move it\n", b.String())
	assert.Equal(t, "lone.batch: error NM0501: lone.batch belongs to no house", list[0].Header())
	assert.Nil(t, list.Reports()[0].Snippet)
	assert.Equal(t, "lone.batch", list.Reports()[0].Range.File)
}

// TestFingerprints: a thing found is the same thing wherever its line moves, and
// another when the line says something else, or is one of several alike.
func TestFingerprints(t *testing.T) {
	at := func(text string, code diag.Code, n int) diag.Diagnostic {
		src := diag.NewSource("a.batch", []byte(text))
		from := -1
		for ; n >= 0; n-- {
			from += 1 + strings.Index(text[from+1:], "corn")
		}
		return diag.Diagnostic{Code: code, Summary: text, At: src.Span(from, from+4)}
	}
	of := func(list ...diag.Diagnostic) []string { return diag.List(list).Fingerprints() }
	was := of(at("corn 5 lb\n", diag.CodeUnknownUnit, 0))[0]
	assert.Equal(t, was, of(at("# more\n\n    corn   5 lb\n", diag.CodeUnknownUnit, 0))[0], "moved, and laid out")
	assert.NotEqual(t, was, of(at("corn 6 lb\n", diag.CodeUnknownUnit, 0))[0], "changed")
	assert.NotEqual(t, was, of(at("corn 5 lb\n", diag.CodeUnknownField, 0))[0], "something else")
	two := of(at("corn 5 lb\ncorn 5 lb\n", diag.CodeUnknownUnit, 0), at("corn 5 lb\ncorn 5 lb\n", diag.CodeUnknownUnit, 1))
	assert.Equal(t, was, two[0])
	assert.NotEqual(t, two[0], two[1])
	assert.Len(t, of(diag.Diagnostic{Code: diag.CodeNoBatch, Summary: "nowhere"})[0], 20)
}

// TestLongNames: a batch's name is given whole, but for one that no batch may have.
func TestLongNames(t *testing.T) {
	report := func(n int) string {
		return diag.List{{Code: diag.CodeNameLength, Batches: []string{strings.Repeat("é", n)}}}.Reports()[0].Batches[0]
	}
	assert.Equal(t, strings.Repeat("é", 500), report(500))
	assert.Equal(t, strings.Repeat("é", 500)+"…", report(501))
}
