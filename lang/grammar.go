package lang

import (
	"io"
	"slices"
	"sync"

	"github.com/alecthomas/participle/v2"
	"github.com/alecthomas/participle/v2/lexer"

	"newmake/lang/diag"
)

// The grammar of the language. A line ending ends a statement, and so does a
// brace; items read themselves, with their units and what is wrong with them
// (items.go), so a line that cannot be read costs nothing but itself. Braces that
// are missing are put in before (balance.go), and what may share a line is told
// apart (layout.go), so parsing never fails.
type (
	file struct {
		Statements []statement `parser:"@@*"`
	}
	statement struct {
		Items items  `parser:"@@"`
		Block *block `parser:"( Newline | @@ )"`
	}
	block struct {
		Open       open        `parser:"@@"`
		Statements []statement `parser:"@@*"`
		Close      shut        `parser:"@@"`
	}
)

// items is what stands in a line before its block: words, names, quantities, dates,
// clocks, commas.
type items struct {
	list  []Item
	at    int32  // offset of the first
	fault *fault // what ends them before the line does
}

type (
	open int32 // offset of "{"
	shut int32 // offset after "}"
)

var grammar = sync.OnceValue(func() *participle.Parser[file] {
	return participle.MustBuild[file](participle.Lexer(structure{}))
})

// Grammar is the grammar of the language in EBNF: as participle prints it, and
// what the words in it that read themselves take. Spaces and comments may stand
// between any two tokens.
func Grammar() string { return grammar().String() + "\n" + inLine }

// inLine is the grammar of items, which a test holds against the tags of a grammar
// that is all participle's.
const inLine = `items = (Word | String | Quantity | Date | Clock | Slash | (Comma <newline>*))* .
Quantity = Number (Range Number)? Unit? | ("£" | "€" | "¥") Number Unit? .
open = "{" .
shut = "}" .
`

func init() { participle.MaxIterations = MaxFileBytes } // no block has more statements

// Parse implements participle.Parseable.
func (o *open) Parse(lex *lexer.PeekingLexer) error {
	if lex.Peek().Type != symbol(TokOpen) {
		return participle.NextMatch
	}
	*o = open(lex.Next().Pos.Offset)
	return nil
}

// Parse implements participle.Parseable.
func (c *shut) Parse(lex *lexer.PeekingLexer) error {
	t := lex.Peek()
	if t.Type != symbol(TokClose) {
		return participle.NextMatch
	}
	*c = shut(t.Pos.Offset + len(t.Value))
	lex.Next()
	return nil
}

// fault is a syntax error with places as offsets; parse.go knows the Source.
type fault struct {
	code       diag.Code
	start, end int
	summary    string
	help       string
	reason     string
	fix        *edit
}

type edit struct {
	start, end  int
	text, label string
	guess       bool // see diag.Fix
}

// symbol is participle's number for a kind; EOF is -1.
func symbol(k TokenKind) lexer.TokenType { return lexer.TokenType(k) + 1 }

// structure names the tokens of the grammar. The items of a line are one of them;
// they part it further themselves.
type structure struct{}

const symbolItems = lexer.TokenType(-2)

// Symbols implements lexer.Definition.
func (structure) Symbols() map[string]lexer.TokenType {
	return map[string]lexer.TokenType{
		"EOF": lexer.EOF, "Items": symbolItems, "Newline": symbol(TokNewline), "Open": symbol(TokOpen), "Close": symbol(TokClose),
	}
}

// Lex implements lexer.Definition.
func (structure) Lex(name string, r io.Reader) (lexer.Lexer, error) {
	text, err := io.ReadAll(r)
	if err != nil {
		return nil, err
	}
	return &balanced{text: string(text), lines: codeLines(text, Tokens(text))}, nil
}

// balanced hands participle the tokens of a text line by line, with its mends:
// each brace has its partner, and each statement without a block its line ending.
type balanced struct {
	text   string
	lines  []codeLine // still to come
	mended mends
	queue  []lexer.Token // of the line at hand
	sent   int           // of the queue
	open   int           // blocks
	due    bool          // a line ending, for items have been sent
}

// Next implements lexer.Lexer. It never fails.
func (b *balanced) Next() (lexer.Token, error) {
	for b.sent == len(b.queue) {
		b.queue, b.sent = b.queue[:0], 0
		switch {
		case len(b.lines) > 0:
			b.line(&b.lines[0])
			b.lines = b.lines[1:]
		case b.open > 0:
			b.brace(TokClose, len(b.text), "")
		default:
			return lexer.EOFToken(lexer.Position{Offset: len(b.text)}), nil
		}
	}
	b.sent++
	return b.queue[b.sent-1], nil
}

// line queues a line: its runs of items, and its braces. A brace that is only
// meant has no text.
func (b *balanced) line(l *codeLine) {
	if slices.Contains(b.mended.close, l.start) {
		b.brace(TokClose, l.start, "")
	}
	run := -1 // where the items at hand begin
	flush := func(end int) {
		if run >= 0 {
			b.add(symbolItems, run, b.text[run:end])
			run, b.due = -1, true
		}
	}
	end := 0
	for _, t := range l.tokens {
		start := int(t.Start)
		switch {
		case t.Kind != TokOpen && t.Kind != TokClose:
			if run < 0 {
				run = start
			}
		case t.Kind == TokClose && slices.Contains(b.mended.drop, start):
			flush(end)
			b.end(end) // a statement ends at it all the same
		default:
			flush(end)
			b.brace(t.Kind, start, b.text[t.Start:t.End])
		}
		end = int(t.End)
	}
	flush(end)
	if slices.Contains(b.mended.open, l.end) {
		b.brace(TokOpen, l.end-1, "")
	}
	b.end(l.end)
}

// brace queues a brace. One that closes nothing is left out, and ends the statement
// before it all the same.
func (b *balanced) brace(kind TokenKind, at int, text string) {
	switch {
	case kind == TokOpen:
		b.open++
		b.due = false
	case b.open == 0:
		b.end(at)
		return
	default:
		b.end(at)
		b.open--
	}
	b.add(symbol(kind), at, text)
}

// end queues the line ending that a statement without a block wants.
func (b *balanced) end(at int) {
	if b.due {
		b.add(symbol(TokNewline), at, "")
		b.due = false
	}
}

func (b *balanced) add(kind lexer.TokenType, at int, text string) {
	b.queue = append(b.queue, lexer.Token{Type: kind, Value: text, Pos: lexer.Position{Offset: at}})
}
