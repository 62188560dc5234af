package lang

import "newmake/lang/diag"

// openBlock is a block whose closing brace has not come yet.
type openBlock struct {
	stmt   *Stmt
	into   *[]*Stmt // where statements went before it
	at     int      // offset of the brace
	indent int      // of the line that opens it
}

func (p *parser) openAt(stmt *Stmt, at int) {
	stmt.Block = &Block{At: p.src.Span(at, len(p.text))}
	p.open = append(p.open, openBlock{stmt: stmt, into: p.into, at: at, indent: p.indent(at)})
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
	if len(p.open) == 0 {
		p.extraBrace(at)
		return
	}
	last := p.open[len(p.open)-1]
	if p.misnest == nil && p.indent(at) < last.indent {
		p.misnest, p.misClose = &last, at
	}
	last.stmt.Block.At.End = at + 1
	p.into = last.into
	p.open = p.open[:len(p.open)-1]
}

// extraBrace reports the first brace that closes nothing; those after it follow
// from the same slip.
func (p *parser) extraBrace(at int) {
	if p.extra {
		return
	}
	p.extra = true
	d := diag.Diagnostic{Code: diag.CodeExtraBrace, At: p.src.Span(at, at+1),
		Summary: "this `}` closes nothing",
		Help:    "take it out, or find the line above that lacks its `{`"}
	if s := p.missingOpen(); s != nil {
		d.Related = []diag.Related{{At: s.At, Text: "a `{` may be missing at the end of this line"}}
	}
	p.list.Add(d)
}

// missingOpen finds a statement without a block whose next line is indented
// deeper, as if it had one.
func (p *parser) missingOpen() *Stmt {
	var found *Stmt
	var prev *Stmt
	Walk(p.file.Stmts, func(s *Stmt, _ int) bool {
		if found == nil && prev != nil && prev.Block == nil && p.indent(s.At.Start) > p.indent(prev.At.Start) {
			found = prev
		}
		prev = s
		return true
	})
	return found
}

// finish reports a block left open: the one whose indent shows that its brace
// is missing, or else the innermost.
func (p *parser) finish() {
	if len(p.open) == 0 {
		return
	}
	culprit := p.open[len(p.open)-1]
	d := diag.Diagnostic{Code: diag.CodeUnclosedBlock, Summary: "this block is never closed",
		Help: "put a `}` on a line of its own where the block ends"}
	if p.misnest != nil {
		culprit = *p.misnest
		d.Related = []diag.Related{{At: p.src.Span(p.misClose, p.misClose+1), Text: "this `}` stands further left, as if for an outer block"}}
	}
	d.At = p.src.Span(culprit.at, culprit.at+1)
	p.list.Add(d)
}
