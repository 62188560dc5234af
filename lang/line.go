package lang

import (
	"sync"

	"github.com/alecthomas/participle/v2"
	"github.com/alecthomas/participle/v2/lexer"

	"newmake/lang/diag"
)

// lines is a run of lines, as participle parses them:
//
//	lines = [ line ] { newline [ line ] } .
//	line  = "}" | items [ "{" [ [ items ] "}" ] ] .
//	items = item { item } .
//
// One bad line is one error, and the next line starts afresh. How lines nest is
// a stack in parse.go.
type lines struct {
	list []line
}

// line is one line, read.
type line struct {
	Items []Item
	Inner []Item // items of a block on one line
	Open  int32  // offset of "{", -1 if there is none
	Close int32  // offset of "}", -1 if there is none
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

var _ participle.Parseable = (*lines)(nil)

var grammar = participle.MustBuild[lines](participle.Lexer(definition{}))

// Parse implements participle.Parseable. What is wrong with a line goes to its
// Fault, which says more than an error of participle can.
func (l *lines) Parse(lex *lexer.PeekingLexer) error {
	l.list = make([]line, 0, linesAtOnce)
	for !lex.Peek().EOF() {
		l.list = append(l.list, line{Open: -1, Close: -1})
		l.list[len(l.list)-1].parse(lex)
		for t := lex.Next(); !t.EOF() && kindOf(t) != TokNewline; {
			t = lex.Next() // after a fault
		}
	}
	return nil
}

// atEnd says whether the line has no more tokens.
func atEnd(t *lexer.Token) bool { return t.EOF() || kindOf(t) == TokNewline }

func (l *line) parse(lex *lexer.PeekingLexer) {
	if t := lex.Peek(); kindOf(t) == TokClose {
		l.Close = int32(lex.Next().Pos.Offset)
		l.expectEnd(lex, "put what follows `}` on a line of its own")
		return
	}
	if l.Items, l.Fault = parseItems(lex); l.Fault != nil {
		return
	}
	switch t := lex.Peek(); {
	case atEnd(t):
		return
	case kindOf(t) == TokClose:
		l.Fault = &fault{code: diag.CodeBlockLine, start: t.Pos.Offset, end: t.Pos.Offset + 1,
			summary: "a `}` stands alone on its line",
			help:    "put the `}` on a line of its own, below the block"}
		return
	}
	open := lex.Next().Pos.Offset
	l.Open = int32(open)
	if len(l.Items) == 0 {
		l.Fault = &fault{code: diag.CodeNoStatement, start: open, end: open + 1,
			summary: "this block has no name",
			help:    "write what the block is before the `{` on the same line, as in `bill 940 lb {`"}
		return
	}
	if atEnd(lex.Peek()) {
		return
	}
	if l.Inner, l.Fault = parseItems(lex); l.Fault != nil {
		return
	}
	if t := lex.Peek(); kindOf(t) != TokClose {
		l.Fault = &fault{code: diag.CodeBlockLine, start: open, end: open + 1,
			summary: "a block that holds more than one line begins on the next line",
			help:    "end the line after `{`, or close the block with `}` on the same line"}
		return
	}
	l.Close = int32(lex.Next().Pos.Offset)
	l.expectEnd(lex, "put what follows `}` on a line of its own")
	return
}

// expectEnd makes anything left on the line a fault.
func (l *line) expectEnd(lex *lexer.PeekingLexer, help string) {
	if t := lex.Peek(); !atEnd(t) && l.Fault == nil {
		l.Fault = &fault{code: diag.CodeBlockLine, start: t.Pos.Offset, end: t.Pos.Offset + len(t.Value),
			summary: "nothing may follow `}` on its line", help: help}
	}
}

// linesAtOnce is how many lines participle is given together, and windowTokens
// how many tokens unless one line has more.
const (
	linesAtOnce  = 12
	windowTokens = 63
)

// window lends participle a run of lines after another. A PeekingLexer reads all
// its tokens into a slice that it grows from nothing, which for a whole file
// costs more memory than the tree; so one is made, and its tokens are written
// over.
type window struct {
	lex    *lexer.PeekingLexer
	tokens []lexer.Token
	used   int
}

// windows keeps windows of the common size, for a house of many small files.
var windows = sync.Pool{New: func() any { return newWindow(windowTokens) }}

// borrowWindow gives a window with room for a line of so many tokens.
func borrowWindow(longest int) *window {
	if longest+2 > windowTokens {
		return newWindow(longest + 2)
	}
	return windows.Get().(*window)
}

// giveBack makes the window fit for the next text, and lets go of this one's.
func (w *window) giveBack() {
	if len(w.tokens) == windowTokens+1 {
		clear(w.tokens)
		windows.Put(w)
	}
}

func newWindow(size int) *window {
	blank := blankLexer(size)
	lex, _ := lexer.Upgrade(&blank) // a blankLexer does not fail
	return &window{lex: lex, tokens: lex.Range(0, lexer.RawCursor(size+1))}
}

// add puts a line of tokens of a text into the window, and says whether there
// was room.
func (w *window) add(text string, tokens []Token) bool {
	if w.used+len(tokens)+1 >= len(w.tokens) {
		return false
	}
	for _, t := range tokens {
		if t.Kind != TokNewline && t.Kind != TokComment { // a list that a comma carries on
			w.put(lexer.Token{Type: symbol(t.Kind), Value: text[t.Start:t.End], Pos: lexer.Position{Offset: int(t.Start)}})
		}
	}
	w.put(lexer.Token{Type: symbol(TokNewline), Pos: lexer.Position{Offset: int(tokens[len(tokens)-1].End)}})
	return true
}

func (w *window) put(t lexer.Token) {
	w.tokens[w.used] = t
	w.used++
}

// parse parses the lines in the window and empties it.
func (w *window) parse() ([]line, error) {
	w.put(lexer.EOFToken(lexer.Position{}))
	w.used = 0
	w.lex.LoadCheckpoint(lexer.Checkpoint{})
	got, err := grammar.ParseFromLexer(w.lex)
	return got.list, err
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
