package lang

import (
	"slices"

	"newmake/lang/diag"
)

// Parse reads a text into a tree. It always returns a File, and never more than
// one syntax error for a line.
func Parse(src *diag.Source) (*File, diag.List) {
	file := &File{Source: src}
	if d, ok := checkSize(src); !ok {
		return file, diag.List{d}
	}
	var list diag.List
	withTokens(src.Text, func(tokens []Token) { list = parse(file, tokens) })
	return file, list
}

func parse(file *File, tokens []Token) diag.List {
	src := file.Source
	if d, ok := checkNesting(src, tokens); !ok {
		return diag.List{d}
	}
	list := checkChars(src, tokens)
	p := &parser{src: src, text: string(src.Text), file: file, list: list, bad: list}
	p.run(tokens)
	attachComments(file, p.text, tokens)
	p.list.Sort()
	return p.list
}

// parser keeps the stack of open blocks while lines go by.
type parser struct {
	src  *diag.Source
	text string
	file *File
	list diag.List
	bad  diag.List // problems of the text itself: their lines are Bad already

	open  []openBlock
	into  *[]*Stmt // where the next statement goes
	stmts []Stmt   // room for statements, made in lots
	lines int      // lines not yet read, at most

	extra    bool       // an extra brace was reported
	misnest  *openBlock // a block whose brace closes another, going by indents
	misClose int
}

func (p *parser) run(tokens []Token) {
	p.into = &p.file.Stmts
	longest, count := measureLines(tokens)
	p.lines = count
	w := borrowWindow(longest)
	defer w.giveBack()
	var waiting [][]Token
	for len(tokens) > 0 {
		n := lineTokens(tokens)
		if n == 0 || !hasContent(tokens[:n]) {
			tokens = tokens[n:]
			if len(tokens) > 0 {
				tokens = tokens[1:] // the newline
			}
			continue
		}
		if len(waiting) == linesAtOnce || !w.add(p.text, tokens[:n]) {
			p.flush(w, waiting)
			waiting = waiting[:0]
			w.add(p.text, tokens[:n])
		}
		waiting = append(waiting, tokens[:n])
		tokens = tokens[n:]
	}
	p.flush(w, waiting)
	p.finish()
}

// flush parses the lines in the window and puts them in their places.
func (p *parser) flush(w *window, waiting [][]Token) {
	got, err := w.parse()
	for i, tokens := range waiting {
		if err != nil || i >= len(got) { // lines.Parse reports by Fault only, and gives every line
			p.list.Add(diag.Diagnostic{Code: diag.CodeUnknownChar, At: p.src.Span(int(tokens[0].Start), int(tokens[0].End)),
				Summary: "this line was not understood", Help: "please report it: this is a fault in newmake"})
			return
		}
		p.line(&got[i], tokens)
	}
}

// lineTokens counts the tokens of the next line, its ending left out. A line
// that ends in a comma goes on, unless a block ends there.
func lineTokens(tokens []Token) int {
	carried, end := false, 0 // end: the first line ending after the comma
	for i, t := range tokens {
		switch t.Kind {
		case TokNewline:
			if !carried {
				return i
			}
			if end == 0 {
				end = i
			}
		case TokComment:
		case TokClose:
			if carried && end > 0 {
				return end
			}
			carried = false
		default:
			carried, end = t.Kind == TokComma, 0
		}
	}
	return len(tokens)
}

func hasContent(tokens []Token) bool {
	return slices.ContainsFunc(tokens, func(t Token) bool { return t.Kind != TokNewline && t.Kind != TokComment })
}

// measureLines gives the tokens of the longest line and the number of lines.
func measureLines(tokens []Token) (longest, count int) {
	for len(tokens) > 0 {
		n := lineTokens(tokens)
		if n > 0 {
			longest = max(longest, n)
			count++
		}
		tokens = tokens[min(n+1, len(tokens)):]
	}
	return longest, count
}

// line puts a line that was read in its place.
func (p *parser) line(l *line, tokens []Token) {
	p.lines--
	start, end := int(tokens[0].Start), int(tokens[len(tokens)-1].End)
	if l.Fault != nil || p.spoilt(start, end) {
		p.badLine(l, tokens)
		return
	}
	if len(l.Items) == 0 {
		p.close(int(l.Close))
		return
	}
	stmt := p.add(l.Items)
	if l.Open < 0 {
		return
	}
	p.openAt(stmt, int(l.Open))
	if l.Close < 0 {
		return
	}
	if len(l.Inner) > 0 {
		p.add(l.Inner)
	}
	p.close(int(l.Close))
}

// spoilt says whether a problem of the text itself is in the line. Lines come in
// order, and so do those problems.
func (p *parser) spoilt(start, end int) bool {
	for len(p.bad) > 0 && p.bad[0].At.Start < start {
		p.bad = p.bad[1:]
	}
	for _, d := range p.bad {
		if d.At.Start >= end {
			return false
		}
		if d.Severity == diag.Error {
			return true
		}
	}
	return false
}

// badLine reports a line that was not understood, keeps what was, and follows
// its braces so that the lines after it still nest.
func (p *parser) badLine(l *line, tokens []Token) {
	start, end := int(tokens[0].Start), int(tokens[len(tokens)-1].End)
	if !p.spoilt(start, end) {
		p.report(l.Fault)
	}
	stmt := p.newStmt()
	stmt.Bad = true
	stmt.Items = l.Items
	p.place(stmt.Items)
	stmt.At = p.src.Span(start, end)
	var closes []int
	opens, lastOpen := 0, 0
	for _, t := range tokens {
		switch {
		case t.Kind == TokOpen:
			opens++
			lastOpen = int(t.Start)
		case t.Kind == TokClose && opens > 0:
			opens--
		case t.Kind == TokClose:
			closes = append(closes, int(t.Start))
		}
	}
	for _, at := range closes {
		p.close(at)
	}
	*p.into = append(*p.into, stmt)
	if opens > 0 {
		p.openAt(stmt, lastOpen)
	}
	for ; opens > 1; opens-- {
		inner := p.newStmt()
		inner.Bad, inner.At = true, p.src.Span(lastOpen, lastOpen+1)
		*p.into = append(*p.into, inner)
		p.openAt(inner, lastOpen)
	}
}

func (p *parser) report(f *fault) {
	d := diag.Diagnostic{Code: f.code, Summary: f.summary, Help: f.help, Reason: f.reason, At: p.src.Span(f.start, f.end)}
	if f.fix != nil {
		d.Fix = &diag.Fix{At: p.src.Span(f.fix.start, f.fix.end), Text: f.fix.text, Label: f.fix.label}
	}
	p.list.Add(d)
}

// newStmt gives a fresh statement, out of a lot.
func (p *parser) newStmt() *Stmt {
	if len(p.stmts) == 0 {
		p.stmts = make([]Stmt, min(max(p.lines+1, 1), 64))
	}
	s := &p.stmts[0]
	p.stmts = p.stmts[1:]
	return s
}

// place gives items the source that the grammar does not know.
func (p *parser) place(items []Item) {
	for i := range items {
		items[i].At.Src = p.src
	}
}

func (p *parser) add(items []Item) *Stmt {
	s := p.newStmt()
	s.Items = items
	p.place(items)
	s.At = items[0].At.To(items[len(items)-1].At)
	*p.into = append(*p.into, s)
	return s
}
