package lang

import (
	"github.com/alecthomas/participle/v2"
	"github.com/alecthomas/participle/v2/lexer"

	"newmake/lang/diag"
)

// line is one line as the grammar knows it:
//
//	line  = "}" | items | [ items ] "{" [ [ items ] "}" ] .
//	items = item { item } .
//
// A line is the unit that participle parses, so that one bad line is one error
// and the next line starts afresh. How lines nest is a stack in parse.go.
type line struct {
	Items []Item
	Inner []Item // items of a block on one line
	Open  int    // offset of "{", -1 if there is none
	Close int    // offset of "}", -1 if there is none
	Fault *fault // the first thing wrong, nil if all is well
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
}

var _ participle.Parseable = (*line)(nil)

var grammar = participle.MustBuild[line](participle.Lexer(definition{}))

// Parse implements participle.Parseable. What is wrong goes to l.Fault, which
// says more than an error of participle can.
func (l *line) Parse(lex *lexer.PeekingLexer) error {
	l.Open, l.Close = -1, -1
	if t := lex.Peek(); kindOf(t) == TokClose {
		l.Close = lex.Next().Pos.Offset
		l.expectEnd(lex, "put what follows `}` on a line of its own")
		return nil
	}
	if l.Items, l.Fault = parseItems(lex); l.Fault != nil {
		return nil
	}
	switch t := lex.Peek(); {
	case t.EOF():
		return nil
	case kindOf(t) == TokClose:
		l.Fault = &fault{code: diag.CodeBlockLine, start: t.Pos.Offset, end: t.Pos.Offset + 1,
			summary: "a `}` stands alone on its line",
			help:    "put the `}` on a line of its own, below the block"}
		return nil
	}
	l.Open = lex.Next().Pos.Offset
	if len(l.Items) == 0 {
		l.Fault = &fault{code: diag.CodeNoStatement, start: l.Open, end: l.Open + 1,
			summary: "this block has no name",
			help:    "write what the block is before the `{` on the same line, as in `bill 940 lb {`"}
		return nil
	}
	if lex.Peek().EOF() {
		return nil
	}
	if l.Inner, l.Fault = parseItems(lex); l.Fault != nil {
		return nil
	}
	if t := lex.Peek(); kindOf(t) != TokClose || t.EOF() {
		at := l.Open
		l.Fault = &fault{code: diag.CodeBlockLine, start: at, end: at + 1,
			summary: "a block that holds more than one line begins on the next line",
			help:    "end the line after `{`, or close the block with `}` on the same line"}
		return nil
	}
	l.Close = lex.Next().Pos.Offset
	l.expectEnd(lex, "put what follows `}` on a line of its own")
	return nil
}

// expectEnd makes anything left on the line a fault.
func (l *line) expectEnd(lex *lexer.PeekingLexer, help string) {
	if t := lex.Peek(); !t.EOF() && l.Fault == nil {
		l.Fault = &fault{code: diag.CodeBlockLine, start: t.Pos.Offset, end: t.Pos.Offset + len(t.Value),
			summary: "nothing may follow `}` on its line", help: help}
	}
}

// window lends participle one line of tokens after another. A PeekingLexer
// reads all its tokens into a slice that it grows from nothing, which for a
// whole file costs more memory than the tree; so one is made for the longest
// line, and its tokens are written over.
type window struct {
	lex    *lexer.PeekingLexer
	tokens []lexer.Token
}

func newWindow(size int) *window {
	blank := blankLexer(size)
	lex, _ := lexer.Upgrade(&blank) // a blankLexer does not fail
	return &window{lex: lex, tokens: lex.Range(0, lexer.RawCursor(size+1))}
}

// parse parses a line of tokens of a text.
func (w *window) parse(text string, tokens []Token) (*line, error) {
	n := 0
	for _, t := range tokens {
		if t.Kind == TokNewline || t.Kind == TokComment {
			continue // inside a list that a comma carries on
		}
		w.tokens[n] = lexer.Token{Type: symbol(t.Kind), Value: text[t.Start:t.End], Pos: lexer.Position{Offset: int(t.Start)}}
		n++
	}
	w.tokens[n] = lexer.EOFToken(lexer.Position{Offset: int(tokens[len(tokens)-1].End)})
	w.lex.LoadCheckpoint(lexer.Checkpoint{})
	return grammar.ParseFromLexer(w.lex, participle.AllowTrailing(true))
}

// blankLexer gives a number of tokens to be written over.
type blankLexer int

func (b *blankLexer) Next() (lexer.Token, error) {
	if *b == 0 {
		return lexer.EOFToken(lexer.Position{}), nil
	}
	*b--
	return lexer.Token{}, nil
}
