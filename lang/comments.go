package lang

import "strings"

// attachComments gives every comment of the text to the statement, block or
// file that it belongs to. The tree is walked in the order of the text, with
// the comments beside it, so each is taken exactly once.
func attachComments(file *File, text string, tokens []Token) {
	a := &attacher{text: text, file: file, tokens: tokens}
	a.skip()
	a.stmts(file.Stmts)
	for a.left() {
		file.Tail = append(file.Tail, a.take())
	}
}

type attacher struct {
	file   *File
	text   string
	tokens []Token
	next   int
}

// skip goes on to the next comment.
func (a *attacher) skip() {
	for a.next < len(a.tokens) && a.tokens[a.next].Kind != TokComment {
		a.next++
	}
}

func (a *attacher) left() bool { return a.next < len(a.tokens) }

func (a *attacher) before(offset int) bool {
	return a.left() && int(a.tokens[a.next].Start) < offset
}

func (a *attacher) take() Comment {
	t := a.tokens[a.next]
	a.next++
	a.skip()
	return Comment{Text: a.text[t.Start:t.End], At: a.file.Source.Span(int(t.Start), int(t.End))}
}

// onLine takes the comment that follows offset on the same line, if one does.
func (a *attacher) onLine(offset int) *Comment {
	if !a.left() {
		return nil
	}
	start := int(a.tokens[a.next].Start)
	if start < offset || strings.ContainsAny(a.text[offset:start], "\r\n{}") {
		return nil
	}
	c := a.take()
	return &c
}

func (a *attacher) stmts(stmts []*Stmt) {
	for _, s := range stmts {
		a.stmt(s)
	}
}

func (a *attacher) stmt(s *Stmt) {
	for a.before(s.At.Start) {
		s.Lead = append(s.Lead, a.take())
	}
	for a.before(s.At.End) {
		s.Inner = append(s.Inner, a.take())
	}
	if s.Block == nil {
		s.Trail = a.onLine(s.At.End)
		return
	}
	s.Trail = a.onLine(s.Block.At.Start + 1)
	a.stmts(s.Block.Stmts)
	for a.before(s.Block.At.End) {
		s.Block.Tail = append(s.Block.Tail, a.take())
	}
	s.Block.Trail = a.onLine(s.Block.At.End)
}
