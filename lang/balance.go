package lang

import (
	"slices"

	"newmake/lang/diag"
)

// mostMends is how many braces of a text are put right before it is left as it
// is.
const mostMends = 4

// mends are braces that a text is read with, or without, so that what follows a
// slip is read as it was meant.
type mends struct {
	open  []int // ends of statements that lack a `{`
	close []int // starts of lines before which the innermost block lacks its `}`
	drop  []int // braces that close nothing
}

// mendOpen opens the block of a statement that lacks its brace.
func (p *parser) mendOpen(s *Stmt) {
	if slices.Contains(p.mended.open, s.At.End) {
		p.openAt(s, s.At.End-1)
	}
}

// mendClose closes the block that lacks its brace before a line.
func (p *parser) mendClose(start int) {
	for _, at := range p.mended.close {
		if at == start && len(p.open) > 0 {
			p.pop(start)
		}
	}
}

// wrong counts the blocks that are never closed and the braces that close nothing.
func (p *parser) wrong() int { return p.extras + len(p.open) }

// unbalanced says what is wrong with the braces first of all. The mends are those
// of this reading and one more, nil if it is not plain which: the indents have to
// show it.
func (p *parser) unbalanced() (*diag.Diagnostic, *mends) {
	m := mends{slices.Clone(p.mended.open), slices.Clone(p.mended.close), slices.Clone(p.mended.drop)}
	if p.extras > 0 {
		lacks := p.lacksOpen()
		d := p.extraBrace(lacks)
		switch {
		case lacks != nil:
			m.open = append(m.open, lacks.At.End)
		case p.deep >= 0:
			d.At = p.src.Span(p.deep, p.deep+1)
			m.drop = append(m.drop, p.deep)
		default:
			return d, nil
		}
		return d, &m
	}
	culprit := p.open[len(p.open)-1]
	if p.misnest != nil {
		culprit = *p.misnest
	}
	d := p.unclosed(culprit)
	at := p.endOf(culprit)
	if at < 0 {
		return d, nil
	}
	m.close = append(m.close, at)
	return d, &m
}

func (p *parser) extraBrace(lacks *Stmt) *diag.Diagnostic {
	d := &diag.Diagnostic{Code: diag.CodeExtraBrace, At: p.src.Span(p.extra, p.extra+1),
		Summary: "this `}` closes nothing",
		Help:    "take it out, or find the line above that lacks its `{`"}
	if lacks != nil {
		d.Related = []diag.Related{{At: lacks.At, Text: "a `{` may be missing at the end of this line"}}
		d.Fix = &diag.Fix{At: p.src.Span(lacks.At.End, lacks.At.End), Text: " {", Label: "put a `{` there"}
	}
	return d
}

func (p *parser) unclosed(b openBlock) *diag.Diagnostic {
	d := &diag.Diagnostic{Code: diag.CodeUnclosedBlock, At: p.src.Span(b.at, b.at+1),
		Summary: "this block is never closed",
		Help:    "put a `}` on a line of its own where the block ends"}
	if p.misnest != nil {
		d.Related = []diag.Related{{At: p.src.Span(p.misAt, p.misAt+1), Text: "this `}` stands further left, as if for an outer block"}}
	}
	return d
}

// lacksOpen finds a statement without a block whose next line is indented
// deeper, as if it had one.
func (p *parser) lacksOpen() *Stmt {
	var found *Stmt
	var prev *Stmt
	Walk(p.file.Stmts, func(s *Stmt, _ int) bool {
		if found == nil && prev != nil && prev.Block == nil && p.indent(s.At.Start) > p.indent(prev.At.Start) {
			found = prev
		}
		prev = s
		return found == nil
	})
	return found
}

// endOf finds the start of the line before which a block ends, going by the
// indents: the first in it that stands no deeper than the line that opens it,
// after some that do. It is -1 if there is none.
func (p *parser) endOf(b openBlock) int {
	for i, s := range b.stmt.Block.Stmts {
		switch deeper := p.indent(s.At.Start) > b.indent; {
		case !deeper && i == 0:
			return -1
		case !deeper:
			return s.At.Start
		}
	}
	if p.misnest != nil {
		return p.misAt
	}
	return -1
}

// flat says that the indents do not show how the text is nested.
func (p *parser) flat() bool {
	found := false
	Walk(p.file.Stmts, func(s *Stmt, _ int) bool {
		for _, inner := range s.Stmts() {
			if p.indent(inner.At.Start) <= p.indent(s.At.Start) && p.src.LineOf(inner.At.Start) != p.src.LineOf(s.At.Start) {
				found = true
			}
		}
		return !found
	})
	return found
}
