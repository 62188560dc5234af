package assist

import (
	"fmt"
	"slices"
	"strings"

	"newmake/lang"
	"newmake/lang/explain"
	"newmake/lang/quantity"
	"newmake/lang/schema"
	"newmake/lang/wording"
)

// Sort says what a proposal is.
type Sort uint8

// The sorts of proposals.
const (
	Line  Sort = iota // a whole line, by its first word
	Word              // a word inside a line
	Name              // something declared
	Unit              // the unit of a number
	Value             // an example of a value
)

// Proposal is something that may be written at a place.
type Proposal struct {
	Label  string // what a person sees, and what is matched
	Text   string // what is put there
	Sort   Sort
	Detail string
	Doc    string
	At     Place // what it takes the place of
}

// Complete says what may be written at a place. It goes by the tokens before it, so
// that what is broken elsewhere does not matter.
func (s *Snapshot) Complete(offset int) []Proposal {
	src := s.File.Source
	offset = min(max(offset, 0), len(src.Text))
	block, line, ok := context(src.Text, offset)
	if !ok {
		return nil
	}
	at := src.Span(offset, offset)
	if n := len(line); n > 0 && int(line[n-1].End) == offset && completes(line[n-1].Kind) {
		at.Start = int(line[n-1].Start)
		line = line[:n-1]
	}
	c := &completer{s: s, at: at}
	if block == schema.Tasting.Block && src.Text[at.Start] == '"' {
		if field, items := s.read(block, line); field != nil && slices.ContainsFunc(expected(field.Pattern(), items), func(w *schema.Shape) bool { return w.Slot == "remark" }) {
			c.aromas()
			return c.out
		}
	}
	if len(line) == 0 {
		c.lines(block)
		return c.out
	}
	field, items := s.read(block, line)
	if field == nil {
		return nil
	}
	c.after(field, items)
	return c.out
}

// completes reports whether a token is being written: it has no end of its own.
func completes(k lang.TokenKind) bool {
	return k == lang.TokWord || k == lang.TokUnclosed || k == lang.TokUnit
}

// context gives the block in which a place is, and the tokens of its line up to it.
// It is false in a comment, or in a block that the language does not know.
func context(text []byte, offset int) (block *schema.Block, line []lang.Token, ok bool) {
	w := newWalk(text)
	for _, t := range lang.Tokens(text[:offset]) {
		if t.Kind == lang.TokComment && int(t.End) == offset {
			return nil, nil, false
		}
		w.take(t)
	}
	return w.block(), w.line, w.block() != nil
}

// fieldOf gives the field of a line's first tokens.
func fieldOf(b *schema.Block, line []lang.Token, text []byte) *schema.Field {
	f, _ := headOf(b, line, text)
	return f
}

// headOf also says with which token the rest of the line begins.
func headOf(b *schema.Block, line []lang.Token, text []byte) (*schema.Field, int) {
	if b == nil || len(line) == 0 {
		return nil, 0
	}
	for i, t := range line {
		if t.Kind == lang.TokWord {
			if f := b.Find(string(text[t.Start:t.End])); f != nil {
				return f, i + 1
			}
		}
		if !b.Timed {
			break
		}
	}
	if len(b.Unworded()) > 0 {
		return b.Unworded()[0], 0
	}
	return nil, 0
}

// read reads the tokens of a line that is being written.
func (s *Snapshot) read(b *schema.Block, line []lang.Token) (*schema.Field, []lang.Item) {
	text := s.File.Source.Text
	f, from := headOf(b, line, text)
	if f == nil || from == len(line) {
		return f, nil
	}
	part := text[line[from].Start:line[len(line)-1].End]
	file, _ := lang.Parse(source(part))
	if len(file.Stmts) == 0 {
		return f, nil
	}
	return f, file.Stmts[len(file.Stmts)-1].Items
}

// completer gathers proposals for one place.
type completer struct {
	s   *Snapshot
	at  Place
	out []Proposal
}

func (c *completer) add(p Proposal) {
	if slices.ContainsFunc(c.out, func(o Proposal) bool { return o.Label == p.Label && o.Sort == p.Sort }) {
		return
	}
	p.At = c.at
	c.out = append(c.out, p)
}

// lines proposes what may begin a line of a block.
func (c *completer) lines(b *schema.Block) {
	for _, f := range b.Fields {
		text := strings.Trim(schema.Example(f, c.s.Units()), "`")
		if f.Block != nil && !strings.Contains(text, "{") {
			text += " {\n\t\n}"
		}
		if i := strings.Index(text, f.Name); i > 0 { // an example with a clock before it
			text = text[i:]
		}
		c.add(Proposal{Label: f.Name, Text: text, Sort: Line, Detail: f.FormFor(c.s.Units()), Doc: wording.Prose(f.Doc, c.s.Units())})
	}
	if b.Any != nil {
		for _, slot := range b.Any.Slots()[:min(1, len(b.Any.Slots()))] {
			c.slot(slot.Type)
		}
	}
}

// after proposes what may follow some items of a line.
func (c *completer) after(f *schema.Field, items []lang.Item) {
	if n := len(items); n > 0 && items[n-1].Unit == "" && (items[n-1].Kind == lang.Number || items[n-1].Kind == lang.Range) {
		for _, want := range expected(f.Pattern(), items[:n-1]) {
			if want.Op == schema.Slot && want.Kind.IsQuantity() {
				c.units(want.Kind.Kind)
			}
		}
	}
	for _, want := range expected(f.Pattern(), items) {
		switch {
		case want.Op == schema.Literal:
			c.add(Proposal{Label: want.Word, Text: want.Word, Sort: Word, Detail: f.FormFor(c.s.Units()), Doc: wording.Prose(f.Doc, c.s.Units())})
		case want.Slot == "parent":
			for _, n := range c.s.names(f.Name) {
				c.name(n, f.Name)
			}
		default:
			c.slot(want.Kind.Name)
		}
	}
}

// slot proposes what a slot of a type takes.
func (c *completer) slot(kind string) {
	for _, t := range schema.SlotTypes {
		switch {
		case t.Name != kind:
		case t.Names != "" && t.Names != "name":
			for _, n := range c.s.names(t.Names) {
				c.name(n, t.Names)
			}
		case t.Names == "" && t.Name != "WORD":
			example := wording.Restated(t.Example, c.s.Units())
			c.add(Proposal{Label: example, Text: example, Sort: Value, Detail: t.Say})
		}
	}
}

// aromas proposes the words of the vocabulary for the one that is being written in a note.
func (c *completer) aromas() {
	written := c.at.Text()
	c.at.Start += 1 + strings.LastIndexAny(written, "\" ,;:")
	for _, h := range c.s.House.Vocabulary().All() {
		c.add(Proposal{Label: h.Word.Word, Text: h.Word.Word, Sort: Word, Detail: h.Aroma.Name, Doc: h.Aroma.Cause})
	}
}

// name proposes a name, in quotes if it is no single word.
func (c *completer) name(n, sort string) {
	text := n
	if toks := lang.Tokens([]byte(n)); len(toks) != 1 || toks[0].Kind != lang.TokWord {
		text = fmt.Sprintf("%q", n)
	}
	c.add(Proposal{Label: n, Text: text, Sort: Name, Detail: sort})
}

// units proposes the units of a kind, those of the file's own system first.
func (c *completer) units(k quantity.Kind) {
	other := quantity.SI
	if c.s.Units() == quantity.SI {
		other = quantity.US
	}
	var first, last []Proposal
	for _, name := range quantity.Units(k) {
		u, ok := quantity.Lookup(name)
		if !ok {
			continue
		}
		m, _ := u.Measure(k)
		p := Proposal{Label: name, Text: name, Sort: Unit, Detail: k.String(), Doc: explain.Worth(u.Name, m)}
		if u.System == other {
			last = append(last, p)
		} else {
			first = append(first, p)
		}
	}
	for _, p := range append(first, last...) {
		c.add(p)
	}
}
