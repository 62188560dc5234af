package lang_test

import (
	"os"
	"sort"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"newmake/lang"
	"newmake/lang/diag"
)

func format(text string) (string, diag.List) {
	out, list := lang.Format(diag.NewSource("test.batch", []byte(text)))
	return string(out), list
}

func TestFormatGolden(t *testing.T) {
	for _, name := range []string{"ferry-landing", "every-form", "untidy"} {
		text, err := os.ReadFile("testdata/" + name + ".batch")
		require.NoError(t, err)
		out, list := format(string(text))
		require.Empty(t, list)
		golden(t, "testdata/"+name+".formatted", out)
	}
}

func TestFormat(t *testing.T) {
	for _, c := range []struct{ name, text, want string }{
		{"nothing", "", ""},
		{"only blank lines", "\n \n\n", ""},
		{"one line", "  newmake   1", "newmake 1\n"},
		{"a bill reads as a table",
			"bill{\ncorn 68%\n oats 10 %\ndistillers-malt 4.5 %\n}",
			"bill {\n  corn              68 %\n  oats              10 %\n  distillers-malt  4.5 %\n}\n"},
		{"words keep to the left",
			"x {\nheat to 190 F\nrest 45 min\n}",
			"x {\n  heat  to 190 F\n  rest  45 min\n}\n"},
		{"a blank line parts two runs",
			"a 1\nbbbb 2\n\n\ncc 30\nd 4\n",
			"a     1\nbbbb  2\n\ncc  30\nd    4\n"},
		{"a comment parts two runs",
			"a 1\nbbbb 2\n# c\ncccccc 3\nd 4\n",
			"a     1\nbbbb  2\n# c\ncccccc  3\nd       4\n"},
		{"a block parts two runs",
			"a 1\nb {\n}\ncccccc 3\nd 4\n",
			"a 1\nb {\n}\ncccccc  3\nd       4\n"},
		{"comments of a run stand in one column",
			"a 1 # one\nbb 20 lb# two\nc x",
			"a   1      # one\nbb  20 lb  # two\nc   x\n"},
		{"blank lines at the ends of a block go",
			"\n\na {\n\n\n b 1\n\n\n c 2\n\n}\n\n\n",
			"a {\n  b 1\n\n  c 2\n}\n"},
		{"spaces", "a  3 ,4/5 , 78 .. 88F  \"x  y\"12:00", "a 3, 4/5, 78..88 F \"x  y\" 12:00\n"},
		{"numbers stay as written", "a 1,150 ft\nb 1.50 lb\nc 007 x", "a  1,150 ft\nb   1.50 lb\nc    007 x\n"},
		{"a block on one line", "a{b   4%}#c", "a { b 4 % }  #c\n"},
		{"an empty block on one line", "a{ }", "a {}\n"},
		{"a carried list",
			"add oats,#one\n\nrye,\n#two\nbarley\nheat to 5 F",
			"add   oats,  #one\n      rye,\n      #two\n      barley\nheat  to 5 F\n"},
		{"a carried list before a block",
			"fermenter \"North\",\n  \"South\" {\nholds 5 gal\n}",
			"fermenter \"North\",\n          \"South\" {\n  holds 5 gal\n}\n"},
		{"times make two columns",
			"run {\n09:20 strike 187 F\n15:05 low-wines 131 gal\n}",
			"run {\n  09:20  strike     187 F\n  15:05  low-wines  131 gal\n}\n"},
		{"wide characters are measured", "漢字 1 lb\nabc 2 lb", "漢字  1 lb\nabc   2 lb\n"},
		{"a long name does not push the others",
			"a-very-long-name-indeed-for-a-grain 5 lb\ncorn 10 lb",
			"a-very-long-name-indeed-for-a-grain   5 lb\ncorn  10 lb\n"},
		{"byte order mark", "\xef\xbb\xbfa 1\n", "a 1\n"},
		{"no-break space", "a\u00a01\u00a0lb", "a 1 lb\n"},
		{"CR LF stays", "a 1\r\nb 2\r\n\r\n\r\nc", "a  1\r\nb  2\r\n\r\nc\r\n"},
		{"the ending of most lines", "a 1\r\nb 2\nc 3\n", "a  1\nb  2\nc  3\n"},
		{"trailing space in a comment", "# a  \nb # c\t ", "# a\nb  # c\n"},
	} {
		got, list := format(c.text)
		require.Empty(t, list, c.name)
		if d := cmp.Diff(c.want, got); d != "" {
			t.Errorf("%s (-want +got):\n%s", c.name, d)
		}
	}
}

// Of nothing comes an empty text, which is not the nil of a text with errors.
func TestFormatNothing(t *testing.T) {
	for _, text := range []string{"", "\n\n", "\xef\xbb\xbf"} {
		out, list := lang.Format(diag.NewSource("x", []byte(text)))
		assert.Empty(t, list)
		assert.Equal(t, []byte{}, out, "%q", text)
	}
}

func TestFormatRefusesErrors(t *testing.T) {
	for _, text := range []string{"a {", "fill 1,3 gal", "a }", "x \x00", "at \"x"} {
		out, list := lang.Format(diag.NewSource("x", []byte(text)))
		assert.Nil(t, out, text)
		assert.True(t, list.HasErrors(), text)
	}
}

// TestFormatCorpus: every file of the repository stays the same tree, keeps
// every comment, and is done after one pass, with either line ending.
func TestFormatCorpus(t *testing.T) {
	for name, text := range corpus(t) {
		unix := strings.ReplaceAll(string(text), "\r\n", "\n")
		if _, list := parse(unix); list.HasErrors() {
			continue
		}
		checkFormat(t, name, unix)
		crlf := strings.ReplaceAll(unix, "\n", "\r\n")
		checkFormat(t, name+" with CR LF", crlf)
		one, _ := format(unix)
		two, _ := format(crlf)
		assert.Equal(t, one, strings.ReplaceAll(two, "\r\n", "\n"), name)
	}
}

// checkFormat holds the formatter to its promises on a text without errors.
func checkFormat(t testing.TB, name, text string) {
	t.Helper()
	before, _ := parse(text)
	once, list := format(text)
	require.False(t, list.HasErrors(), "%s: %v\n%q", name, list, text)
	after, _ := parse(once)
	require.Equal(t, dump(before), dump(after), name)
	twice, _ := format(once)
	require.Equal(t, once, twice, "%s: not done after one pass", name)
	require.Equal(t, sortedComments(text), sortedComments(once), name)
	require.NotContains(t, once, "\ufeff")
}

func sortedComments(text string) []string {
	text = strings.TrimPrefix(text, "\ufeff")
	var out []string
	for _, c := range commentTokens(lang.Tokens([]byte(text)), text) {
		out = append(out, strings.TrimRight(c, " \t"))
	}
	sort.Strings(out)
	return out
}

// TestFormatCommentInEveryGap (pitfall 6): wherever a comment may stand, the
// formatter keeps it where it is.
func TestFormatCommentInEveryGap(t *testing.T) {
	text, err := os.ReadFile("testdata/every-form.batch")
	require.NoError(t, err)
	tried := 0
	for _, tok := range lang.Tokens(text) {
		for _, mark := range []string{" # here\n", "\n# here\n", "\n\n# here\n\n"} {
			cut := string(text[:tok.Start]) + mark + string(text[tok.Start:])
			if _, list := parse(cut); list.HasErrors() {
				continue // a statement may not be broken there
			}
			checkFormat(t, mark, cut)
			tried++
		}
	}
	require.Greater(t, tried, 200)
}

// TestEditTouchesOnlyItsRun (pitfall 7): a longer word in one line changes no
// line outside its run.
func TestEditTouchesOnlyItsRun(t *testing.T) {
	text, err := os.ReadFile("testdata/ferry-landing.batch")
	require.NoError(t, err)
	before, _ := format(string(text))
	after, list := format(strings.Replace(string(text), "foreshots ", "foreshots-and-heads ", 1))
	require.Empty(t, list)
	a, b := strings.Split(before, "\n"), strings.Split(after, "\n")
	require.Len(t, b, len(a))
	var changed []string
	for i := range a {
		if a[i] != b[i] {
			changed = append(changed, strings.Fields(b[i])[0])
		}
	}
	assert.Equal(t, []string{"charge", "foreshots-and-heads", "hearts", "stop"}, changed)
}

func BenchmarkFormat(b *testing.B) {
	text := benchmarkText(b, 100)
	perByte(b, text, func(s *diag.Source) { lang.Format(s) })
}
