package lang

import (
	"slices"
)

// openBlock is a block whose closing brace has not come yet.
type openBlock struct {
	stmt   *Stmt
	into   *[]*Stmt // where statements went before it
	at     int      // offset of the brace
	indent int      // of the line that opens it
}

func (p *parser) openAt(stmt *Stmt, at int) {
	stmt.Block = &Block{At: p.src.Span(at, len(p.text))}
	p.open = append(p.open, openBlock{stmt: stmt, into: p.into, at: at, indent: p.indent(stmt.At.Start)})
	p.into = &stmt.Block.Stmts
}

// indent is the width of the blank start of the line that holds an offset.
func (p *parser) indent(at int) int {
	begin := at
	for begin > 0 && class[p.text[begin-1]]&isLineEnd == 0 {
		begin--
	}
	n := 0
	for begin+n < at && class[p.text[begin+n]]&isBlank != 0 {
		n++
	}
	return n
}

func (p *parser) close(at int) {
	if slices.Contains(p.mended.drop, at) {
		return
	}
	if len(p.open) == 0 {
		if p.extras++; p.extra < 0 {
			p.extra = at
		}
		return
	}
	last := p.open[len(p.open)-1]
	switch indent := p.indent(at); {
	case p.misnest == nil && indent < last.indent:
		p.misnest, p.misAt = &last, at
	case p.deep < 0 && indent > last.indent && p.src.LineOf(at) != p.src.LineOf(last.at):
		p.deep = at
	}
	p.pop(at + 1)
}

// pop ends the innermost block.
func (p *parser) pop(end int) {
	last := p.open[len(p.open)-1]
	last.stmt.Block.At.End = end
	p.into = last.into
	p.open = p.open[:len(p.open)-1]
}
