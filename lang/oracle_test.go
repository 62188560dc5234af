package lang

import (
	"fmt"
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"

	"github.com/alecthomas/participle/v2"
	"github.com/alecthomas/participle/v2/ebnf"
	"github.com/stretchr/testify/require"

	"newmake/lang/diag"
)

// The grammar once more, as participle writes grammars: struct tags over the
// regular expressions of lex_rules_test.go, with lookahead and no thought of
// speed or of error messages. It shares no code with the parser. Where it
// accepts a text, both must read the same.
type (
	oFile struct {
		Body []*oEntry `parser:"@@*"`
	}
	oEntry struct {
		Stmt *oStmt `parser:"( @@ (?= Newline | Close | EOF)"`
		End  bool   `parser:"| @Newline )"`
	}
	oStmt struct {
		Items []*oItem `parser:"@@ ( @@ )*"`
		Block *oBlock  `parser:"@@?"`
	}
	oBlock struct {
		One  *oStmt    `parser:"Open ( @@? Close"`
		Body []*oEntry `parser:"| Newline @@* Close )"`
	}
	oItem struct {
		Price  *oPrice  `parser:"@@"`
		Range  *oRange  `parser:"| @@"`
		Number *oNumber `parser:"| @@"`
		Other  string   `parser:"| @(String | Date | Clock | Word | Slash)"`
		Comma  bool     `parser:"| @Comma Newline*"`
	}
	oPrice struct {
		Sign string `parser:"@('£' | '€' | '¥')"`
		Num  string `parser:"@Number"`
		Per  string `parser:"@Unit?"`
	}
	oRange struct {
		Low  string `parser:"@Number Range"`
		High string `parser:"@Number"`
		Unit *oUnit `parser:"@@?"`
	}
	oNumber struct {
		Num  string `parser:"@Number"`
		Unit *oUnit `parser:"@@?"`
	}
	oUnit struct {
		Words []string `parser:"@'%' @('abv' | 'abw' | 'vol') | @'%' @'of' @'grain' | @'fl' @'oz' | @'imp' @'gal' | @'proof' @('gal' | 'gallon' | 'gallons') | @('°' | 'º') @('F' | 'C') | @Unit | (?! 'to' | 'at' | 'of' | 'from' | 'in' | 'for' | 'with' | 'and' | 'any' | 'on' | 'within' | 'new' | 'used' | 'over' | 'by' | 'until' | 'as' | 'plus' | 'than' | 'least' | 'most' | 'per') @Word"`
	}
)

var oracle = participle.MustBuild[oFile](participle.Lexer(rules), participle.Elide("Space", "Comment"), participle.UseLookahead(50))

// read writes what the oracle read, in the words of outline.
func (f *oFile) read() string {
	var b strings.Builder
	readEntries(&b, f.Body, 0)
	return b.String()
}

func readEntries(b *strings.Builder, body []*oEntry, depth int) {
	for _, e := range body {
		if e.Stmt != nil {
			e.Stmt.read(b, depth)
		}
	}
}

func (s *oStmt) read(b *strings.Builder, depth int) {
	b.WriteString(strings.Repeat(" ", depth))
	for _, i := range s.Items {
		switch {
		case i.Price != nil:
			fmt.Fprintf(b, "<%s|%s%s>", i.Price.Num, i.Price.Sign, i.Price.Per)
		case i.Range != nil:
			fmt.Fprintf(b, "<%s..%s%s>", i.Range.Low, i.Range.High, i.Range.Unit.read())
		case i.Number != nil:
			fmt.Fprintf(b, "<%s%s>", i.Number.Num, i.Number.Unit.read())
		case i.Comma:
			b.WriteString("<,>")
		default:
			fmt.Fprintf(b, "<%s>", i.Other)
		}
	}
	b.WriteByte('\n')
	if s.Block == nil {
		return
	}
	if s.Block.One != nil {
		s.Block.One.read(b, depth+1)
	}
	readEntries(b, s.Block.Body, depth+1)
	fmt.Fprintf(b, "%send\n", strings.Repeat(" ", depth))
}

func (u *oUnit) read() string {
	if u == nil {
		return ""
	}
	return "|" + strings.Join(u.Words, "")
}

// outline writes a tree in the same words.
func outline(b *strings.Builder, stmts []*Stmt, depth int) {
	for _, s := range stmts {
		b.WriteString(strings.Repeat(" ", depth))
		for _, i := range s.Items {
			switch {
			case i.Kind != Number && i.Kind != Range:
				fmt.Fprintf(b, "<%s>", i)
			case i.Unit == "":
				fmt.Fprintf(b, "<%s>", i.Num)
			case i.UnitAt().IsZero():
				fmt.Fprintf(b, "<%s|%s>", i.Num, i.Unit)
			default:
				fmt.Fprintf(b, "<%s|%s>", i.Num, strings.Join(strings.Fields(i.UnitAt().Text()), ""))
			}
		}
		b.WriteByte('\n')
		if s.Block != nil {
			outline(b, s.Block.Stmts, depth+1)
			fmt.Fprintf(b, "%send\n", strings.Repeat(" ", depth))
		}
	}
}

func TestParserEqualsGrammar(t *testing.T) {
	var files []string
	for _, pattern := range []string{"testdata/*.batch", "../stdlib/*.batch", "../examples/*/*.batch"} {
		found, err := filepath.Glob(pattern)
		require.NoError(t, err)
		files = append(files, found...)
	}
	for _, path := range files {
		text, err := os.ReadFile(path)
		require.NoError(t, err)
		file, list := Parse(diag.NewSource(path, text))
		if list.HasErrors() {
			continue
		}
		want, err := oracle.ParseString(path, string(text))
		require.NoError(t, err, path)
		var got strings.Builder
		outline(&got, file.Stmts, 0)
		require.NotEmpty(t, got.String(), path)
		require.Equal(t, want.read(), got.String(), path)
	}
	require.NotEmpty(t, files)
}

// FuzzParserEqualsGrammar: a text that the parser takes is one that the grammar
// takes, and both read it alike.
func FuzzParserEqualsGrammar(f *testing.F) {
	for _, text := range append(lexSamples, "a { b 5 % }\n", "a {\n b 78..88 F\n}\n", "a b,\n\n c # d\n", "x 5 % of grain\ny 5 % of z 7/10") {
		f.Add(text)
	}
	f.Fuzz(func(t *testing.T, text string) {
		if len(text) > 300 {
			return // lookahead takes time
		}
		file, list := Parse(diag.NewSource("fuzz", []byte(text)))
		if len(list) > 0 {
			return
		}
		want, err := oracle.ParseString("fuzz", string(file.Source.Text))
		require.NoError(t, err, "%q", text)
		var got strings.Builder
		outline(&got, file.Stmts, 0)
		require.Equal(t, want.read(), got.String(), "%q", text)
	})
}

// TestGrammarText: the grammar that the reference prints is well formed, and
// names only itself and tokens.
func TestGrammarText(t *testing.T) {
	g, err := ebnf.ParseString(Grammar())
	require.NoError(t, err)
	known := map[string]bool{"<newline>": true}
	for _, name := range tokenNames {
		known[name] = true
	}
	for _, p := range g.Productions {
		known[p.Production] = true
	}
	for _, name := range regexp.MustCompile(`<[a-z]+>|[A-Za-z]+`).FindAllString(Grammar(), -1) {
		require.True(t, known[name], name)
	}
}
