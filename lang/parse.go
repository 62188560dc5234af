package lang

import (
	"slices"

	"newmake/lang/diag"
)

// Parse reads a text into a tree. It always returns a File, and never more than
// one syntax error for a line. Where one brace is missing or one too many, and
// the indents show which, the tree is the one that was meant.
func Parse(src *diag.Source) (file *File, list diag.List) {
	if d, ok := checkSize(src); !ok {
		return &File{Source: src}, diag.List{d}
	}
	withTokens(src.Text, func(tokens []Token) { file, list = parse(src, tokens) })
	return file, list
}

func parse(src *diag.Source, tokens []Token) (*File, diag.List) {
	if d, ok := checkNesting(src, tokens); !ok {
		return &File{Source: src}, diag.List{d}
	}
	chars, text := checkChars(src, tokens), string(src.Text)
	read := func(m mends) *parser {
		p := &parser{src: src, text: text, file: &File{Source: src}, list: slices.Clone(chars), bad: chars, mended: m}
		p.run(tokens)
		return p
	}
	p := read(mends{})
	for p.wrong() != 0 {
		d, mended := p.unbalanced()
		p.braces.Add(*d)
		better := p
		if mended != nil && len(p.braces) <= mostMends {
			better = read(*mended)
		}
		if better.wrong() >= p.wrong() {
			p.file.Adrift = p.flat()
			break
		}
		better.braces = p.braces
		p = better
	}
	attachComments(p.file, text, tokens)
	p.list = append(p.list, p.braces...)
	p.list.Sort()
	return p.file, p.list
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

	mended  mends
	braces  diag.List  // what is wrong with them
	extras  int        // braces that close nothing
	extra   int        // the first of them, -1 if there is none
	deep    int        // the first brace that stands deeper than the block it closes, -1
	misnest *openBlock // a block whose brace closes another, going by indents
	misAt   int        // that brace
}

func (p *parser) run(tokens []Token) {
	p.into, p.extra, p.deep = &p.file.Stmts, -1, -1
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
	p.mendClose(start)
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
		p.mendOpen(stmt)
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
