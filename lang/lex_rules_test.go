package lang

import (
	"strings"
	"testing"

	"github.com/alecthomas/participle/v2/lexer"
	"github.com/stretchr/testify/require"
)

// A word begins with a letter or underscore and goes on with more. To Unicode º
// is a letter; to us it is a degree sign where a word would begin.
const (
	first = `(?:[A-Za-z_]|[^\P{L}º])`
	rest  = `[\pL\pN\pM_-]*`
)

// rules are the tokens of the language as participle writes them, the first
// that matches being taken. lex.go does the same by hand, some fifty times
// faster.
var rules = func() *lexer.StatefulDefinition {
	w := first + rest
	return lexer.MustSimple([]lexer.SimpleRule{
		{Name: "Newline", Pattern: `\r\n|\n|\r`},
		{Name: "Space", Pattern: `[\t\p{Zs}]+`},
		{Name: "Comment", Pattern: `#[^\r\n]*`},
		{Name: "Remark", Pattern: `//[^\r\n]*`},
		{Name: "String", Pattern: `"(?:[^"\\\r\n]|\\[^\r\n])*"`},
		{Name: "Unclosed", Pattern: `"(?:[^"\\\r\n]|\\[^\r\n])*\\?`},
		{Name: "Date", Pattern: `\d{4}-\d\d-\d\d`},
		{Name: "Clock", Pattern: `[+-]?\d{1,2}:\d\d(?::\d\d)?`},
		{Name: "Range", Pattern: `\.\.`},
		{Name: "Number", Pattern: `-?\.?\d+(?:[.,]\d+)*`},
		{Name: "Unit", Pattern: `[°º](?:` + w + `)?(?:/` + w + `)*|[%$€£¥](?:/` + w + `)*|(?:/` + w + `)+|` + w + `(?:/` + w + `)+`},
		{Name: "Word", Pattern: w},
		{Name: "Comma", Pattern: `,`},
		{Name: "Slash", Pattern: `/`},
		{Name: "Open", Pattern: `\{`},
		{Name: "Close", Pattern: `\}`},
		{Name: "Bad", Pattern: `(?s:.)`},
	})
}()

// byRules lexes by the rules.
func byRules(t testing.TB, text string) []string {
	t.Helper()
	names := lexer.SymbolsByRune(rules)
	lex, err := rules.LexString("", text)
	require.NoError(t, err)
	var out []string
	for {
		tok, err := lex.Next()
		require.NoError(t, err)
		if tok.EOF() {
			return out
		}
		if name := names[tok.Type]; name != "Space" {
			if name == "Remark" { // as other languages have it, and not ours
				name = "Bad"
			}
			out = append(out, name+" "+tok.Value)
		}
	}
}

// byHand lexes by hand, through the interface that participle uses.
func byHand(t testing.TB, text string) []string {
	t.Helper()
	names := lexer.SymbolsByRune(definition{})
	lex, err := definition{}.Lex("", strings.NewReader(text))
	require.NoError(t, err)
	var out []string
	for {
		tok, err := lex.Next()
		require.NoError(t, err)
		if tok.EOF() {
			require.Equal(t, len(text), tok.Pos.Offset)
			return out
		}
		require.Equal(t, text[tok.Pos.Offset:tok.Pos.Offset+len(tok.Value)], tok.Value)
		out = append(out, names[tok.Type]+" "+tok.Value)
	}
}

var lexSamples = []string{
	"", "\n", "\r\n", "\r", "a", "a b", "bill 940 lb {\n  corn 68 %\n}\n",
	"2026-03-03 07:00 -05:00 7:00:30 24:00 123:45 2026-03-0 12026-03-03",
	"1,150 -5 .5 -.5 1. 1..2 1...2 78..88 1.2.3 1,3 1.300,5 1,", "07:0 07:000 07:00:0 07:00:00:00",
	"g/L kJ/kg/K /h % %/year % abv %abv °F ºF ° F $/lb € 7/10 a/1 a/ / // ///a a/b/", "½ m³ kg/m³ µg Fº ªb",
	`"a" "a\"b" "a\\" "open`, "\"a\\", "\"a\\\n\"", `"a\`, "\"a\rb\"", "# c\r\nx#y\n#", "{}{a}", "- -- -a a- a-b + +5 +05:00 -05:00 -5:00",
	"é e\u0301 \u0301e 漢字 😀 \u00a0x\u3000y\u2007", "“a” ’ – … ：", "\x00\x1b\u202e\u2028\v\f\u0085", "_a _ a_1 1a 2-row",
}

func TestHandLexerEqualsRules(t *testing.T) {
	for _, text := range lexSamples {
		require.Equal(t, byRules(t, text), byHand(t, text), "%q", text)
	}
}

func FuzzLexerEqualsRules(f *testing.F) {
	for _, text := range lexSamples {
		f.Add(text)
	}
	f.Fuzz(func(t *testing.T, text string) {
		text = strings.ToValidUTF8(text, "?") // regular expressions match characters
		if len(text) > 4096 {
			return // the rules take time that grows with the square of a line
		}
		require.Equal(t, byRules(t, text), byHand(t, text), "%q", text)
	})
}
