package lang_test

import (
	"bytes"
	"fmt"
	"os"
	"strings"
	"testing"
	"unicode/utf16"

	"github.com/google/go-cmp/cmp"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"newmake/lang"
	"newmake/lang/diag"
	"newmake/lang/testflag"
)

func parse(text string) (*lang.File, diag.List) {
	return lang.Parse(diag.NewSource("test.batch", []byte(text)))
}

// golden compares text with a file of testdata, or writes the file.
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

func TestTreeGolden(t *testing.T) {
	for _, name := range []string{"ferry-landing", "every-form"} {
		text, err := os.ReadFile("testdata/" + name + ".batch")
		require.NoError(t, err)
		f, list := parse(string(text))
		require.Empty(t, list)
		golden(t, "testdata/"+name+".tree", dump(f))
	}
}

func TestItems(t *testing.T) {
	for _, c := range []struct{ text, want string }{
		{`water 330 gal at 58 F`, `water (330=330 gal) at (58=58 F)`},
		{`hearts from 80 % abv to 63 % abv`, `hearts from (80=80 % abv) to (63=63 % abv)`},
		{`hearts from 80%abv to 63 %  abv`, `hearts from (80=80 % abv) to (63=63 % abv)`},
		{`hold 78..88 F`, `hold (78..88=78..88 F)`},
		{`hold 78 .. 88 F`, `hold (78..88=78..88 F)`},
		{`hold -5..-1.5 C`, `hold (-5..-1.5=-5..-1.5 C)`},
		{`elevation 1,150 ft`, `elevation (1,150=1150 ft)`},
		{`big 1,234,567.25 J`, `big (1,234,567.25=1.23456725e+06 J)`},
		{`foreshots 12 fl  oz`, `foreshots (12=12 fl oz)`},
		{`charge 3 imp gal`, `charge (3=3 imp gal)`},
		{`dose alpha 0.05 % of grain`, `dose alpha (0.05=0.05 % of grain)`},
		{`backset 15 % of liquor`, `backset (15=15 %) of liquor`},
		{`strike 187 °F`, `strike (187=187 °F)`},
		{`strike 187 ° F`, `strike (187=187 °F)`},
		{`strike 187ºF`, `strike (187=187 ºF)`},
		{`growth 0.427 /h`, `growth (0.427=0.427 /h)`},
		{`loss 4 %/year`, `loss (4=4 %/year)`},
		{`energy 224.2 kJ/mol`, `energy (224.2=224.2 kJ/mol)`},
		{`heat 4.18 kJ/kg/K`, `heat (4.18=4.18 kJ/kg/K)`},
		{`corn 0.2 $/lb`, `corn (0.2=0.2 $/lb)`},
		{`score 7/10`, `score (7=7 ) / (10=10 )`},
		{`shift 07:00 to 17:00, tue to sat`, `shift clock:07:00 to clock:17:00 , tue to sat`},
		{`start 2026-03-03 07:00 -05:00`, `start date:2026-03-03 clock:07:00 clock:-05:00`},
		{`fill 30 gal new charred-oak char 3`, `fill (30=30 gal) new charred-oak char (3=3 )`},
		{`cask 1 30 gal at 114.0 proof`, `cask (1=1 ) (30=30 gal) at (114.0=114 proof)`},
		{`fermenter "North", "South"`, `fermenter "North" , "South"`},
		{`note "a \"b\" \\ c\n\td"`, `note "a \"b\" \\ c\n\td"`},
		{`promise hearts 38 gal within 2 gal`, `promise hearts (38=38 gal) within (2=2 gal)`},
		{"word\u00a0and\u2003space", "word and space"},
		{"cafe\u0301 x", "caf\u00e9 x"},
		{"at \"Cafe\u0301\"", `at "Café"`},
		{"add corn, # one\n\n # two\n  rye,\n oats", "add corn , rye , oats\ninner # one\ninner # two"},
	} {
		f, list := parse(c.text)
		assert.Empty(t, list, "%q", c.text)
		assert.Equal(t, c.want, strings.TrimSpace(dump(f)), "%q", c.text)
	}
}

func TestConnectivesAreNoUnits(t *testing.T) {
	for _, w := range strings.Fields("to at of from in for with and any on within new used over by until as plus than least most per") {
		assert.True(t, lang.IsConnective(w))
		f, _ := parse("x 3 " + w + " y")
		assert.Equal(t, "", f.Stmts[0].Items[1].Unit, w)
	}
	assert.False(t, lang.IsConnective("gal"))
}

func TestPositions(t *testing.T) {
	f, list := parse("a\n  heat to 190 % abv  # c\n")
	require.Empty(t, list)
	s := f.Stmts[1]
	assert.Equal(t, "heat to 190 % abv", s.At.Text())
	n := s.Items[2]
	assert.Equal(t, "190 % abv", n.At.Text())
	assert.Equal(t, "% abv", n.UnitAt().Text())
	assert.Equal(t, "# c", s.Trail.At.Text())
	line, col := n.UnitAt().Position()
	assert.Equal(t, [2]int{2, 15}, [2]int{line, col})

	f, list = parse("bill {\n corn 5 lb\n}")
	require.Empty(t, list)
	assert.Equal(t, "{\n corn 5 lb\n}", f.Stmts[0].Block.At.Text())
	assert.Equal(t, "bill", f.Stmts[0].At.Text())
}

// TestSyntaxErrors: each text has one error, with a code, at a place, in words.
func TestSyntaxErrors(t *testing.T) {
	for _, c := range []struct{ text, code, mark, says string }{
		// pitfall 11: decimal comma and digit groups
		{"fill 1,3 gal", "NM0112", "1,3", "two ways"},
		{"fill 1,30 gal", "NM0112", "1,30", "two ways"},
		{"fill 1,30 gal", "NM0112", "1,30", "write `1.30` if"},
		{"fill 1.300,5 gal", "NM0112", "1.300,5", "more than one decimal mark"},
		{"fill 1,300,5 gal", "NM0112", "1,300,5", "two ways"},
		{"fill 0,500 gal", "NM0112", "0,500", "two ways"},
		{"fill 1.2.3 gal", "NM0112", "1.2.3", "decimal mark"},
		{"fill .5 gal", "NM0112", ".5", "write `0.5`"},
		{"fill -.5 gal", "NM0112", "-.5", "write `-0.5`"},
		{"fill 5. gal", "NM0109", ".", "a point stands inside a number"},
		{"malt 2-row 5 lb", "NM0112", "2-", "cannot begin with a digit"},
		// ranges
		{"hold 78-88 F", "NM0113", "78-88", "write `78..88 F`"},
		{"shift 6-18, mon", "NM0113", "6-18", "of hours write `06:00 to 18:00`"},
		{"hold 78-88", "NM0113", "78-88", "write `78..88`"},
		{"hold 78 F - 88 F", "NM0109", "-", "its unit once, `78..88 F`"},
		{"hold 78 F..88 F", "NM0113", "F", "write `78..88 F`"},
		{"hold 78 F..88 C", "NM0113", "F", "one unit"},
		{"hold 78.. F", "NM0113", "..", "needs a number"},
		{"hold ..88 F", "NM0113", "..", "between two numbers"},
		// units
		{"heat to °F", "NM0114", "°F", "no number before it"},
		{"price $0.25", "NM0114", "$0.25", "write `0.25 USD`"},
		{"corn $0.18/lb", "NM0114", "$0.18/lb", "write `0.18 USD/lb`"},
		{"currency $", "NM0114", "$", "`USD`"},
		{"currency €", "NM0114", "€", "three capitals: `EUR`"},
		// dates and times
		{"start 2026-02-30", "NM0121", "2026-02-30", "no date"},
		{"start 2026-13-01", "NM0121", "2026-13-01", "no date"},
		{"at 25:00", "NM0121", "25:00", "no time"},
		{"at 07:60", "NM0121", "07:60", "no time"},
		{"at 7:00am", "NM0121", "7:00am", "24-hour clock"},
		{"at 2026-03-031", "NM0121", "2026-03-031", "no date"},
		// strings
		{`at "Lantern`, "NM0110", `"Lantern`, "no closing quote"},
		{`at "a\qb"`, "NM0111", "\\", "for a backslash"},
		// lists, blocks, braces
		{", a", "NM0115", ",", "begin with a comma"},
		{"add a,, b", "NM0119", ",", "two commas"},
		{"add a,", "NM0119", ",", "nothing follows"},
		{"x {\nadd a,\n}", "NM0119", ",", "nothing follows"},
		{"x {\nadd a, # c\n\n}", "NM0119", ",", "nothing follows"},
		{"{\n}", "NM0115", "{", "no name"},
		{"bill {", "NM0116", "{", "never closed"},
		{"bill {\n}\n}", "NM0117", "}", "closes nothing"},
		{"bill { corn 5 lb\n}", "NM0118", "{", "begins on the next line"},
		{"bill {\n} more", "NM0118", "more", "nothing may follow"},
		{"bill { corn 5 lb } more", "NM0118", "more", "nothing may follow"},
		{"bill {\ncorn 5 lb }", "NM0118", "}", "alone on its line"},
		// characters
		{"rest: 45 min", "NM0109", ":", "no colon"},
		{"rest = 45 min", "NM0109", "=", "no `=`"},
		{"distiller's-malt 5 lb", "NM0109", "'", "apostrophe"},
		{"rest 45 min;", "NM0109", ";", "end the line"},
		{"a ½ gal", "NM0109", "½", "0.5"},
		{"at “Lantern Hollow”", "NM0105", "“", "U+201C LEFT DOUBLE QUOTATION MARK"},
		{"hold 78–88 F", "NM0105", "–", "U+2013 EN DASH"},
		{"hold −5 C", "NM0105", "−", "type `-` instead"},
		{"hold 78…88 F", "NM0105", "…", "type `..` instead"},
		{"corn 68 ％", "NM0105", "％", "FULLWIDTH PERCENT SIGN"},
		{"bill ｛", "NM0105", "｛", "type `{` instead"},
		{"heat to 80 ℃", "NM0105", "℃", "type `°C` instead"},
		{"co\u200brn 5 lb", "NM0105", "\u200b", "invisible character"},
		{"add rye;", "NM0109", ";", "take it out"},
		{"promise hearts 38 gal +/- 2 gal", "NM0109", "+/", "within 0.002"},
		// what no text may hold
		{"corn 5 lb \x00", "NM0103", "\x00", "NUL"},
		{"at \"a\x1b[31m\"", "NM0103", "\x1b", "U+001B"},
		{"# a \u0085 b", "NM0103", "\u0085", "U+0085"},
		{"corn\u202e 5 lb", "NM0104", "\u202e", "RIGHT-TO-LEFT OVERRIDE"},
		{"at \"Caf\xe9\"", "NM0101", "\xe9", "byte E9"},
		{"# 20 \xb0C", "NM0101", "\xb0", "byte B0"},
	} {
		f, list := parse(c.text)
		if !assert.Len(t, list, 1, "%q: %v", c.text, list) {
			continue
		}
		d := list[0]
		assert.Equal(t, c.code, string(d.Code), "%q", c.text)
		assert.Equal(t, c.mark, d.At.Text(), "%q", c.text)
		assert.Contains(t, d.Summary+" / "+d.Help, c.says, "%q", c.text)
		assert.NotEmpty(t, d.Help, "%q", c.text)
		assert.NotNil(t, f)
	}
}

func TestBidiInQuotesWarns(t *testing.T) {
	for _, text := range []string{"at \"a\u202eb\"", "a # b \u2066"} {
		_, list := parse(text)
		require.Len(t, list, 1)
		assert.Equal(t, diag.Warning, list[0].Severity)
		assert.Equal(t, diag.CodeBidi, list[0].Code)
	}
}

// TestFixes: an edit offered leaves the text without that error.
func TestFixes(t *testing.T) {
	for _, c := range []struct{ text, want string }{
		{"fill .5 gal", "fill 0.5 gal"},
		{"hold 78-88 F", "hold 78..88 F"},
		{"hold 78 F .. 88 F", "hold 78.. 88 F"},
		{"at “x”", "at \"x”"},
		{"co\u200brn 5 lb", "corn 5 lb"},
		{"add a,", "add a"},
		{"fill 0,7 L", "fill 0.7 L"},
		{"corn $0.18/lb", "corn 0.18 USD/lb"},
		{"currency ¥", "currency JPY"},
	} {
		_, list := parse(c.text)
		require.Len(t, list, 1, c.text)
		fix := list[0].Fix
		require.NotNil(t, fix, c.text)
		assert.Equal(t, c.want, c.text[:fix.At.Start]+fix.Text+c.text[fix.At.End:])
	}
}

func TestSeveralErrors(t *testing.T) {
	f, list := parse("a 1,3 gal 1,4 gal\nb 2 gal\nc 5. gal ; \"x\nbill = {\n  d ..\n  corn 5 lb\n}\ne 5 lb\n")
	require.Len(t, list, 4)
	for i, line := range []int{1, 3, 4, 5} {
		got, _ := list[i].At.Position()
		assert.Equal(t, line, got)
	}
	assert.Equal(t, "BAD a\nb (2=2 gal)\nBAD c (5=5 )\nBAD bill\n  BAD d\n  corn (5=5 lb)\nend\ne (5=5 lb)\n", dump(f))
}

func TestBraceHints(t *testing.T) {
	_, list := parse("batch \"a\" {\n  bill 940 lb\n    corn 68 %\n  }\n  cask {\n    entry 114 proof\n  }\n}\n")
	require.Len(t, list, 1)
	assert.Equal(t, diag.CodeExtraBrace, list[0].Code)
	require.Len(t, list[0].Related, 1)
	assert.Equal(t, "bill 940 lb", list[0].Related[0].At.Text())

	_, list = parse("batch \"a\" {\n  bill 940 lb {\n    corn 68 %\n  cask {\n    entry 114 proof\n  }\n}\n")
	require.Len(t, list, 1)
	assert.Equal(t, diag.CodeUnclosedBlock, list[0].Code)
	line, _ := list[0].At.Position()
	assert.Equal(t, 2, line, "the bill is the block whose brace is missing")
}

// TestBraceMended: where the indents show which brace is missing, or is one too
// many, the tree is that of the text as it was meant.
func TestBraceMended(t *testing.T) {
	right := "batch \"a\" {\n  bill 940 lb {\n    corn 68 %\n  }\n  mash {\n    boil 5 min\n  }\n}\n\nbatch \"b\" {\n  units us\n}\n"
	want, list := parse(right)
	require.Empty(t, list)
	for _, tok := range lang.Tokens([]byte(right)) {
		if tok.Kind != lang.TokOpen && tok.Kind != lang.TokClose {
			continue
		}
		got, list := parse(right[:tok.Start] + right[tok.End:])
		require.Len(t, list, 1, "without the brace at %d", tok.Start)
		assert.Equal(t, dump(want), dump(got), "without the brace at %d", tok.Start)
		assert.False(t, got.Adrift)
		if fix := list[0].Fix; fix != nil {
			cut := right[:tok.Start] + right[tok.End:]
			_, list := parse(cut[:fix.At.Start] + fix.Text + cut[fix.At.End:])
			assert.Empty(t, list, "the fix mends it")
		}
	}
	got, list := parse(strings.Replace(right, "  mash {", "  }\n  mash {", 1))
	require.Len(t, list, 1)
	assert.Equal(t, dump(want), dump(got), "one too many")

	flat, list := parse(strings.ReplaceAll(strings.Replace(right, "940 lb {", "940 lb", 1), "  ", ""))
	require.Len(t, list, 1)
	assert.True(t, flat.Adrift, "without indents nothing shows what was meant")
	two, list := parse(strings.Replace(strings.Replace(right, "940 lb {", "940 lb", 1), "mash {", "mash", 1))
	require.Len(t, list, 2)
	assert.Equal(t, dump(want), dump(two), "two slips")
}

// TestSingleTokenDeletion: taking any one token out of a right text makes at most
// two errors.
func TestSingleTokenDeletion(t *testing.T) {
	for name, text := range corpus(t) {
		for i, tok := range lang.Tokens(text) {
			if i%testflag.Every(17) != 0 || tok.Kind == lang.TokComment {
				continue
			}
			cut := string(text[:tok.Start]) + string(text[tok.End:])
			_, list := parse(cut)
			if len(list) > 2 {
				t.Errorf("%s without %q at %d: %v", name, text[tok.Start:tok.End], tok.Start, list)
			}
		}
	}
}

func TestEncodings(t *testing.T) {
	text := "bill 940 lb {\n  corn 68 %\n}\n"
	want, _ := parse(text)

	f, list := parse("\xef\xbb\xbf" + text)
	require.Empty(t, list)
	assert.Equal(t, dump(want), dump(f))

	units := utf16.Encode([]rune("\ufeff" + text))
	var le, be bytes.Buffer
	for _, u := range units {
		le.Write([]byte{byte(u), byte(u >> 8)})
		be.Write([]byte{byte(u >> 8), byte(u)})
	}
	for name, raw := range map[string][]byte{"little": le.Bytes(), "big": be.Bytes()} {
		for _, cut := range []int{0, 2} { // with and without its byte order mark
			f, list := parse(string(raw[cut:]))
			require.Len(t, list, 1)
			assert.Equal(t, diag.CodeUTF16, list[0].Code)
			assert.Contains(t, list[0].Summary, "UTF-16 ("+name)
			assert.Empty(t, f.Stmts)
		}
	}
}

// TestLineEndings (pitfall 8): CR LF and CR twins of every file have the same tree.
func TestLineEndings(t *testing.T) {
	for name, text := range corpus(t) {
		unix := strings.ReplaceAll(string(text), "\r\n", "\n")
		want, wantList := parse(unix)
		for _, ending := range []string{"\r\n", "\r"} {
			f, list := parse(strings.ReplaceAll(unix, "\n", ending))
			assert.Len(t, list, len(wantList), name)
			assert.Equal(t, dump(want), dump(f), name)
		}
	}
}

// TestLimits (pitfall 18): each is an ordinary error that names itself.
func TestLimits(t *testing.T) {
	deep := func(n int) string { return strings.Repeat("a {\n", n) + strings.Repeat("}\n", n) }
	for _, c := range []struct {
		name, text string
		code       diag.Code
	}{
		{"file", strings.Repeat("# x\n", lang.MaxFileBytes/4+1), diag.CodeFileTooLarge},
		{"line", "a " + strings.Repeat("x", lang.MaxLineBytes), diag.CodeLineTooLong},
		{"one line of 4 MB", strings.Repeat("x ", 2_000_000), diag.CodeLineTooLong},
		{"nesting", deep(lang.MaxNesting + 1), diag.CodeTooDeep},
		{"lines", strings.Repeat("a\n", lang.MaxStatements+1), diag.CodeTooLong},
		{"lines without ends", strings.Repeat("a,\n", lang.MaxItems/2) + "a", diag.CodeTooLong},
		{"remarks", strings.Repeat("# x\n", lang.MaxItems/2) + "#", diag.CodeTooLong},
		{"a million braces", strings.Repeat("{", 60_000) + "\n" + strings.Repeat(strings.Repeat("{", 60_000)+"\n", 16), diag.CodeTooDeep},
	} {
		_, list := parse(c.text)
		require.Len(t, list, 1, c.name)
		assert.Equal(t, c.code, list[0].Code, c.name)
		assert.NotEmpty(t, list[0].Help, c.name)
	}
	_, list := parse(deep(lang.MaxNesting))
	assert.Empty(t, list)
	_, list = parse(strings.Repeat("# x\n", lang.MaxItems/2))
	assert.Empty(t, list)
	_, list = parse("a " + strings.Repeat("x", lang.MaxLineBytes-2))
	assert.Empty(t, list)
	f, list := parse(strings.Repeat("a\n", lang.MaxStatements))
	assert.Empty(t, list)
	assert.Len(t, f.Stmts, lang.MaxStatements)
	_, list = parse(strings.Repeat("a {\n}\n", lang.MaxStatements))
	assert.Empty(t, list)
	_, list = parse(strings.Repeat("a b c d\n", lang.MaxStatements) + strings.Repeat("# x\n", (lang.MaxItems-5*lang.MaxStatements)/2))
	assert.Empty(t, list)
	_, list = parse(strings.Repeat("a ;\n", diag.MostSaid))
	assert.Len(t, list, diag.MostSaid)
	_, list = parse(strings.Repeat("a ;\n", lang.MaxStatements))
	require.Len(t, list, diag.MostSaid+1)
	last := list[diag.MostSaid]
	assert.Equal(t, diag.CodeTooManySaid, last.Code)
	assert.Equal(t, "and 9000 errors more: no more than 1000 are shown", last.Summary)
	assert.Equal(t, lang.MaxStatements, list.Count(diag.Error))
}

// TestCommentInEveryGap (pitfall 6): a comment put between any two tokens is in
// the tree exactly once, or the text is in error and the tree still stands.
func TestCommentInEveryGap(t *testing.T) {
	for _, name := range []string{"ferry-landing", "every-form"} {
		text, err := os.ReadFile("testdata/" + name + ".batch")
		require.NoError(t, err)
		tokens := lang.Tokens(text)
		for i := range tokens {
			at := tokens[i].Start
			for _, mark := range []string{"# here\n", "\n# here\n"} {
				f, _ := parse(string(text[:at]) + mark + string(text[at:]))
				have := append(comments(f), "")
				want := append(commentTokens(lang.Tokens([]byte(string(text[:at])+mark+string(text[at:]))), string(text[:at])+mark+string(text[at:])), "")
				if d := cmp.Diff(want, have); d != "" {
					t.Fatalf("%s: at %d: %s", name, at, d)
				}
			}
		}
	}
}

// comments lists the comments of a tree in the order of the text.
func comments(f *lang.File) []string {
	var out []string
	add := func(cs ...lang.Comment) {
		for _, c := range cs {
			out = append(out, c.Text)
		}
	}
	var stmts func([]*lang.Stmt)
	stmts = func(list []*lang.Stmt) {
		for _, s := range list {
			add(s.Lead...)
			add(s.Inner...)
			if s.Trail != nil {
				add(*s.Trail)
			}
			if s.Block != nil {
				stmts(s.Block.Stmts)
				add(s.Block.Tail...)
				if s.Block.Trail != nil {
					add(*s.Block.Trail)
				}
			}
		}
	}
	stmts(f.Stmts)
	add(f.Tail...)
	return out
}

func commentTokens(tokens []lang.Token, text string) []string {
	var out []string
	for _, t := range tokens {
		if t.Kind == lang.TokComment {
			out = append(out, text[t.Start:t.End])
		}
	}
	return out
}

func TestLookAlike(t *testing.T) {
	for _, c := range []struct{ word, want, desc string }{
		{"сorn", "corn", "letter 1 is U+0441 CYRILLIC SMALL LETTER ES"},
		{"cоrn", "corn", "letter 2 is U+043E CYRILLIC SMALL LETTER O"},
		{"ｒｙｅ", "rye", "letter 1 is U+FF52 FULLWIDTH LATIN SMALL LETTER R"},
		{"οats", "oats", "letter 1 is U+03BF GREEK SMALL LETTER OMICRON"},
	} {
		got, desc, ok := lang.LookAlike(c.word)
		assert.True(t, ok, c.word)
		assert.Equal(t, c.want, got)
		assert.Equal(t, c.desc, desc)
	}
	for _, w := range []string{"corn", "café", "рожь", "ячмень", "漢字", "", "distillers-malt"} {
		_, _, ok := lang.LookAlike(w)
		assert.False(t, ok, w)
	}
}

func TestMixedAlphabets(t *testing.T) {
	for _, c := range []struct{ name, want, desc string }{
		{"Fеrry Landing", "Ferry Landing", "letter 2 is U+0435 CYRILLIC SMALL LETTER IE"},
		{"Море Bоurbon", "Море Bourbon", "letter 7 is U+043E CYRILLIC SMALL LETTER O"},
		{"ｒｙｅ", "rye", "letter 1 is U+FF52 FULLWIDTH LATIN SMALL LETTER R"},
		{"hill-cоrn", "hill-corn", "letter 7 is U+043E CYRILLIC SMALL LETTER O"},
	} {
		got, desc, ok := lang.MixedAlphabets(c.name)
		assert.True(t, ok, c.name)
		assert.Equal(t, c.want, got)
		assert.Equal(t, c.desc, desc)
	}
	for _, w := range []string{"corn", "Ferry Landing, 2", "café", "Море", "Море North", "Kılıç", "β-glucanase", "漢字 A", ""} {
		_, _, ok := lang.MixedAlphabets(w)
		assert.False(t, ok, w)
	}
}

func TestUnseen(t *testing.T) {
	for _, c := range []struct{ name, want, desc string }{
		{"Ferry\u200b Landing", "Ferry Landing", "character 6 is U+200B ZERO WIDTH SPACE"},
		{"LH\u200d-1", "LH-1", "character 3 is U+200D ZERO WIDTH JOINER"},
		{"\ufeffNorth", "North", "character 1 is U+FEFF ZERO WIDTH NO-BREAK SPACE"},
		{"Ferry\u00a0Landing", "Ferry Landing", "character 6 is U+00A0 NO-BREAK SPACE"},
		{" North", "North", "it begins with a space"},
		{"North ", "North", "it ends in a space"},
		{"\U0001f33e\u200d\u200d", "\U0001f33e\u200d", "character 3 is U+200D ZERO WIDTH JOINER"},
	} {
		got, desc, ok := lang.Unseen(c.name)
		assert.True(t, ok, c.name)
		assert.Equal(t, c.want, got)
		assert.Equal(t, c.desc, desc)
	}
	// A joiner joins letters of its script, and pictures: Persian, and a farmer.
	for _, w := range []string{"", "corn", "Ferry Landing, 2", "Ferry  Landing", "café", "漢字 A", "می\u200cخواهم", "\U0001f469\u200d\U0001f33e"} {
		_, _, ok := lang.Unseen(w)
		assert.False(t, ok, w)
	}
}

func TestEmptyAndNoise(t *testing.T) {
	for _, text := range []string{"", "\n\n", "   ", "# only\n"} {
		f, list := parse(text)
		assert.Empty(t, list)
		assert.Empty(t, f.Stmts)
	}
	noise := make([]byte, 4096)
	x := uint32(1)
	for i := range noise {
		x = x*1664525 + 1013904223
		noise[i] = byte(x >> 24)
	}
	_, list := parse(string(noise))
	assert.True(t, list.HasErrors())
	lines := make(map[int]int)
	for _, d := range list {
		n, _ := d.At.Position()
		lines[n]++
	}
	for n, count := range lines {
		assert.LessOrEqual(t, count, 2, fmt.Sprintf("line %d", n))
	}
}

// TestCurrencySigns: £540 is 540 £, and £0.48/kg is 0.48 £/kg; laid out it stays as it was
// written.
func TestCurrencySigns(t *testing.T) {
	for _, c := range []struct {
		line, num, unit string
		value           float64
	}{
		{"cask £540", "540", "£", 540},
		{"cask 540 £", "540", "£", 540},
		{"cask €1,240.50", "1,240.50", "€", 1240.5},
		{"cask ¥54,000", "54,000", "¥", 54000},
		{"malt £0.48/kg", "0.48", "£/kg", 0.48},
		{"malt 0.48 £/kg", "0.48", "£/kg", 0.48},
	} {
		src := diag.NewSource("a.batch", []byte(c.line+"\n"))
		f, list := lang.Parse(src)
		require.Empty(t, list, c.line)
		it := f.Stmts[0].Items[1]
		require.Equal(t, lang.Number, it.Kind, c.line)
		require.Equal(t, c.num, it.Num, c.line)
		require.Equal(t, c.unit, it.Unit, c.line)
		require.InDelta(t, c.value, it.Value, 1e-12, c.line)
		require.Equal(t, c.line[5:], it.At.Text(), c.line)
		out, list := lang.Format(src)
		require.Empty(t, list, c.line)
		require.Equal(t, strings.Join(strings.Fields(c.line), " "), strings.Join(strings.Fields(string(out)), " "))
	}
	for _, line := range []string{"cask £", "cask £ GBP", "cask $540", "cask £1.2.3", "cask £540kg2x 5"} {
		_, list := lang.Parse(diag.NewSource("a.batch", []byte(line+"\n")))
		require.NotEmpty(t, list, line)
	}
}
