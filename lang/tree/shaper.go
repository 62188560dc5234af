package tree

import (
	"fmt"
	"strings"

	"newmake/lang"
	"newmake/lang/diag"
	"newmake/lang/quantity"
	"newmake/lang/schema"
	"newmake/lang/spelling"
	"newmake/lang/wording"
	"newmake/lang/words"
)

// Declarations makes nodes of the statements of a text's outermost level, and gives
// those that are no declaration. inLibrary says that the library that comes with the
// program has a name; it may be nil.
func Declarations(stmts []*lang.Stmt, inLibrary func(name string) bool, diags *diag.List) (nodes []*Node, lost []*lang.Stmt) {
	return shaper{diags: diags, match: new(matcher), library: inLibrary}.block(stmts, schema.Language, "")
}

// shaper turns statements into nodes, and says what does not have its shape.
// It looks at one text alone, so texts can be shaped side by side.
type shaper struct {
	diags   *diag.List
	match   *matcher
	library func(name string) bool // says that the library that comes with newmake has a name
}

// block shapes the lines of a block, and gives those that have no place in it. of
// names the block, for messages.
func (s shaper) block(stmts []*lang.Stmt, b *schema.Block, of string) (nodes []*Node, lost []*lang.Stmt) {
	nodes = make([]*Node, 0, len(stmts))
	var first firstLines
	for _, st := range stmts {
		n := s.line(st, b, of)
		if n == nil {
			lost = append(lost, st)
			continue
		}
		if n.Single() && !(b == schema.Language && n.Field.Repeat) { // names are looked at in the whole house
			if before := first.add(n, nodes); before != nil {
				s.twice(n, before)
				continue
			}
		}
		nodes = append(nodes, n)
	}
	return nodes, lost
}

// firstLines finds the first line of its sort in a block. Most blocks are short,
// and are looked through; a long one gets a map.
type firstLines map[LineKey]*Node

// add gives the line of the same sort among those before n.
func (f *firstLines) add(n *Node, before []*Node) *Node {
	const short = 24
	if *f == nil && len(before) < short {
		for _, o := range before {
			if o.Single() && o.LineKey() == n.LineKey() {
				return o
			}
		}
		return nil
	}
	if *f == nil {
		*f = make(firstLines, 2*len(before))
		for _, o := range before {
			if o.Single() {
				(*f)[o.LineKey()] = o
			}
		}
	}
	old := (*f)[n.LineKey()]
	if old == nil {
		(*f)[n.LineKey()] = n
	}
	return old
}

// LineKey is what may stand only once in a block.
type LineKey struct {
	Field *schema.Field
	Text  string
}

// LineKey is that of a line: two lines of one key are the same line twice.
func (n *Node) LineKey() LineKey { return LineKey{n.Field, n.KeyText()} }

// Single reports whether a line like this may stand only once.
func (n *Node) Single() bool { return !n.Bad && (!n.Field.Repeat || n.Field.Key != "") }

func (s shaper) twice(n, before *Node) {
	what := n.Field.Name
	if k := n.Text(n.Field.Key); n.Field.Key != "" && k != "" {
		what = strings.TrimSpace(what + " " + k)
	}
	s.diags.Add(diag.Diagnostic{
		Code: diag.CodeTwice, Summary: fmt.Sprintf("`%s` stands here twice", what), At: n.At(),
		Help:    "keep one of the two lines",
		Related: []diag.Related{{At: before.At(), Text: "the first one is here"}},
	})
}

// line shapes one statement and its block. It gives nil for what has no place
// here at all; what has a place but is not right comes back marked bad.
func (s shaper) line(st *lang.Stmt, b *schema.Block, of string) *Node {
	if len(st.Items) == 0 {
		return nil
	}
	var when When
	items := st.Items
	if b.Timed {
		if when, items = whenOf(items); len(items) == 0 {
			return s.onlyWhen(st, b, when)
		}
	}
	head, rest := &items[0], items[1:]
	f := b.Find(head.Text)
	if f == nil || head.Kind != lang.Word {
		rest = items
		switch {
		case b.Any != nil && (head.Kind == lang.Word || head.Kind == lang.String):
			f = b.Any
		case b.Bare != nil && !when.IsZero() && (head.Kind != lang.Word || b.Bare.Pattern().KnowsWord(head.Text)):
			f = b.Bare
		default:
			return s.unknown(st, items, b, of)
		}
	}
	n := &Node{Field: f, Stmt: st, When: when}
	if st.Bad {
		n.Bad = true
		return n
	}
	if n.Match = s.match.line(f.Pattern(), hoursAndMinutes(rest)); !n.Match.fits() {
		if f.Block == nil || st.Block != nil { // what stands in the way of a block is said with it
			s.mismatch(n, b, of)
		}
		n.Bad = true
	}
	s.alike(n)
	s.limits(n)
	switch {
	case f.Block != nil && st.Block != nil:
		var lost []*lang.Stmt
		n.Lines, lost = s.block(st.Block.Stmts, f.Block, strings.TrimSpace(f.Name))
		n.Gaps = len(lost) > 0
	case f.Block != nil:
		s.diags.Add(diag.Diagnostic{
			Code: diag.CodeNoBlock, Summary: fmt.Sprintf("`%s` needs a block", f.Name), At: st.At,
			Help: "write its lines between braces: " + schema.ExampleBlock(f, st.At.Units()),
		})
		n.Bad = true
	case st.Block != nil:
		s.diags.Add(diag.Diagnostic{
			Code: diag.CodeBlockHere, Summary: fmt.Sprintf("`%s` takes no block", head.Text),
			At:   diag.Span{Src: st.Block.At.Src, Start: st.Block.At.Start, End: st.Block.At.Start + 1},
			Help: "it is one line: " + schema.Example(f, st.At.Units()),
		})
		n.Bad = true
	}
	return n
}

// unknown speaks of a word that the block does not know. If it is near to a known
// one it gives a bad node of that field, so that the field is not missed too.
func (s shaper) unknown(st *lang.Stmt, items []lang.Item, b *schema.Block, of string) *Node {
	head := &items[0]
	if st.Bad {
		return nil
	}
	d := diag.Diagnostic{Code: diag.CodeUnknownField, At: head.At}
	words := b.Words()
	allowed := "a line here may begin with " + wording.OrList(words)
	switch {
	case head.Kind != lang.Word:
		d.Summary = fmt.Sprintf("a line begins with a word, and %s is none", wording.Item(head))
		if b.Any != nil && len(items) > 1 && items[1].Kind == lang.Word {
			allowed = "the name comes first here: " + schema.Example(b.Any, head.At.Units()) + "\n" + allowed
		}
	case b == schema.Language:
		d.Code = diag.CodeUnknownDecl
		d.Summary = fmt.Sprintf("`%s` is not a declaration", head.Text)
		allowed = "a file may declare " + wording.OrList(words)
	default:
		d.Summary = fmt.Sprintf("%s has no `%s`", wording.Article(of), head.Text)
	}
	if b.Timed {
		allowed += ", each with a day and a clock before it"
	}
	if b.Bare != nil && head.Kind == lang.Word && b.Bare.Pattern().KnowsWord(head.Text) {
		d.Code, d.Summary = diag.CodeShape, "what was read needs its date or its time before it"
		allowed = "write when it was read, as in `2027-03-11 " + head.Text + " ...` or `09:00 " + head.Text + " ...`"
	}
	d.Help = allowed
	var n *Node
	if looks, desc, ok := lang.LookAlike(head.Text); ok && head.Kind == lang.Word && b.Find(looks) != nil {
		s.diags.Add(nameAlike(head, looks, desc))
		return &Node{Field: b.Find(looks), Stmt: st, Bad: true}
	}
	if b.Timed && timedOtherwise(items, b, &d) || asOthersSay(st, sayingsOf(b, of), &d) {
		// said, with the line that says it
	} else if near := spelling.Nearest(head.Text, words); near != "" && head.Kind == lang.Word {
		d.Help = fmt.Sprintf("did you mean `%s`? %s", near, allowed)
		d.Fix = &diag.Fix{At: head.At, Text: near, Label: "write `" + near + "`", Guess: true}
		n = &Node{Field: b.Find(near), Stmt: st, Bad: true}
	} else if other := spelling.Called(head.Text, words); other != "" && head.Kind == lang.Word {
		f := b.Find(other)
		m := new(matcher).line(f.Pattern(), items[1:])
		d.Help = fmt.Sprintf("it is called `%s` here; %s", other, allowed)
		d.Fix = &diag.Fix{At: head.At, Text: other, Label: "write `" + other + "`", Guess: !m.fits()}
		n = &Node{Field: f, Stmt: st, Bad: true}
	} else if like := spelling.Likely(head.Text, words); like != "" && head.Kind == lang.Word {
		d.Help = fmt.Sprintf("did you mean `%s`? %s", like, allowed)
		d.Fix = &diag.Fix{At: head.At, Text: like, Label: "write `" + like + "`", Guess: true}
		n = &Node{Field: b.Find(like), Stmt: st, Bad: true}
	} else if home := elsewhere(head.Text, of); home != "" && head.Kind == lang.Word {
		d.Help = fmt.Sprintf("`%s` belongs in %s; %s", head.Text, wording.Article(home), allowed)
	}
	s.diags.Add(d)
	return n
}

// elsewhere finds the block of the language that knows a word, other than of.
func elsewhere(word, of string) string {
	var find func(b *schema.Block, name string) string
	find = func(b *schema.Block, name string) string {
		if name != "" && name != of && b.Find(word) != nil {
			return name
		}
		for _, f := range b.Fields {
			if f.Block != nil {
				if home := find(f.Block, f.Name); home != "" {
					return home
				}
			}
		}
		return ""
	}
	return find(schema.Language, "")
}

// Missing says which lines that must be there are not, in a block whose variants
// have been applied. Of a block that could not be read it says nothing more.
func Missing(diags *diag.List, n *Node, of string) (whole bool) {
	if n.Bad || n.Gaps {
		return false
	}
	var names, examples []string
	d := diag.Diagnostic{Code: diag.CodeMissing, At: n.At()}
	for _, f := range n.Field.Block.Fields {
		if !f.Need || n.Present(f.Name) {
			continue
		}
		d.Reason = f.Doc
		names, examples = append(names, f.Name), append(examples, schema.ExampleBlock(f, n.At().Units()))
	}
	switch len(names) {
	case 0:
		return true
	case 1:
		d.Summary = fmt.Sprintf("%s has no `%s` line", of, names[0])
		d.Help = "add one, for example: " + examples[0]
	default:
		d.Summary = fmt.Sprintf("%s has no lines %s", of, words.And(wording.Quoted(names)))
		d.Help = "add them, for example:\n" + strings.Join(examples, "\n")
		d.Reason = ""
	}
	diags.Add(d)
	return false
}

// limits holds the quantities of a line against its field's limits.
func (s shaper) limits(n *Node) {
	what := n.Field.Name
	if what == "" {
		what = n.Text(n.Field.Key) // a line that begins with a name
	}
	if what == "" {
		what = n.Text("name") // of a store, whose lines begin with their days
	}
	for i := range n.Match.Caps {
		c := &n.Match.Caps[i]
		if c.Kind == 0 {
			continue
		}
		if c.high < c.SI {
			n.Bad = true
			s.diags.Add(diag.Diagnostic{
				Code: diag.CodeRangeTurned, Severity: diag.Error, At: c.At(),
				Summary: "the range begins above its end", Help: "write the lower value first",
			})
			continue
		}
		for _, l := range n.Field.Limits {
			if !l.Holds(c.Slot, c.Kind) || c.SI >= l.Low && c.high <= l.High {
				continue
			}
			of := "`" + what + "`"
			if n.Field.Name == "" && l.Slot != "" { // of several numbers behind a name, which
				of = "the " + l.Slot + " of " + of
			}
			d := diag.Diagnostic{
				Code: diag.CodeOutOfRange, Severity: l.Severity, At: c.At(), Reason: l.Reason,
				Summary: fmt.Sprintf("%s is outside what %s can be", wording.Item(c.Item), of),
				Help:    "allowed: " + wording.Between(l.Low, l.High, c.Kind, c.Item.Unit),
			}
			if l.Severity != diag.Error {
				d.Code = diag.CodeUnusual
				d.Summary = fmt.Sprintf("%s is unusual for %s", wording.Item(c.Item), of)
				d.Help = "usual: " + wording.Between(l.Low, l.High, c.Kind, c.Item.Unit)
			} else {
				n.Bad = true
			}
			switch c.Kind {
			case quantity.Temperature:
				wording.OtherScale(&d, c.Item, c.Item.UnitAt(), l.Low, l.High)
			case quantity.Gravity:
				wording.OtherGravity(&d, c.Item, l.Low, l.High)
			}
			s.diags.Add(d)
			break
		}
	}
}
