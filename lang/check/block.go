package check

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

// shaper turns statements into nodes, and says what does not have its shape.
// It looks at one text alone, so texts can be shaped side by side.
type shaper struct {
	diags *diag.List
	match *matcher
	stock func(name string) bool // says that the stock that comes with newmake has a name
}

// block shapes the lines of a block, and gives those that have no place in it. of
// names the block, for messages.
func (s shaper) block(stmts []*lang.Stmt, b *schema.Block, of string) (nodes []*node, lost []*lang.Stmt) {
	nodes = make([]*node, 0, len(stmts))
	var first firstLines
	for _, st := range stmts {
		n := s.line(st, b, of)
		if n == nil {
			lost = append(lost, st)
			continue
		}
		if n.single() && !(b == schema.Language && n.field.Repeat) { // names are looked at in the whole house
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
type firstLines map[lineKey]*node

// add gives the line of the same sort among those before n.
func (f *firstLines) add(n *node, before []*node) *node {
	const short = 24
	if *f == nil && len(before) < short {
		for _, o := range before {
			if o.single() && o.lineKey() == n.lineKey() {
				return o
			}
		}
		return nil
	}
	if *f == nil {
		*f = make(firstLines, 2*len(before))
		for _, o := range before {
			if o.single() {
				(*f)[o.lineKey()] = o
			}
		}
	}
	old := (*f)[n.lineKey()]
	if old == nil {
		(*f)[n.lineKey()] = n
	}
	return old
}

// lineKey is what may stand only once in a block.
type lineKey struct {
	field *schema.Field
	key   string
}

func (n *node) lineKey() lineKey { return lineKey{n.field, n.key()} }

// single says that a line like this may stand only once.
func (n *node) single() bool { return !n.bad && (!n.field.Repeat || n.field.Key != "") }

func (s shaper) twice(n, before *node) {
	what := n.field.Name
	if k := n.text(n.field.Key); n.field.Key != "" && k != "" {
		what = strings.TrimSpace(what + " " + k)
	}
	s.diags.Add(diag.Diagnostic{
		Code: diag.CodeTwice, Summary: fmt.Sprintf("`%s` stands here twice", what), At: n.at(),
		Help:    "keep one of the two lines",
		Related: []diag.Related{{At: before.at(), Text: "the first one is here"}},
	})
}

// line shapes one statement and its block. It gives nil for what has no place
// here at all; what has a place but is not right comes back marked bad.
func (s shaper) line(st *lang.Stmt, b *schema.Block, of string) *node {
	if len(st.Items) == 0 {
		return nil
	}
	head, rest := &st.Items[0], st.Items[1:]
	f := b.Find(head.Text)
	if f == nil || head.Kind != lang.Word {
		f = b.Any
		rest = st.Items
		if f == nil || head.Kind != lang.Word && head.Kind != lang.String {
			return s.unknown(st, b, of)
		}
	}
	n := &node{field: f, stmt: st}
	if st.Bad {
		n.bad = true
		return n
	}
	if n.m = s.match.line(f.Pattern, rest); !n.m.fits() {
		s.mismatch(n, b)
		n.bad = true
	}
	s.alike(n)
	s.limits(n)
	switch {
	case f.Block != nil && st.Block != nil:
		var lost []*lang.Stmt
		n.lines, lost = s.block(st.Block.Stmts, f.Block, strings.TrimSpace(f.Name))
		n.gaps = len(lost) > 0
	case f.Block != nil:
		s.diags.Add(diag.Diagnostic{
			Code: diag.CodeNoBlock, Summary: fmt.Sprintf("`%s` needs a block", f.Name), At: st.At,
			Help: "write its lines between braces: " + schema.ExampleBlock(f),
		})
		n.bad = true
	case st.Block != nil:
		s.diags.Add(diag.Diagnostic{
			Code: diag.CodeBlockHere, Summary: fmt.Sprintf("`%s` takes no block", head.Text),
			At:   diag.Span{Src: st.Block.At.Src, Start: st.Block.At.Start, End: st.Block.At.Start + 1},
			Help: "it is one line: " + schema.Example(f),
		})
		n.bad = true
	}
	return n
}

// unknown speaks of a word that the block does not know. If it is near to a known
// one it gives a bad node of that field, so that the field is not missed too.
func (s shaper) unknown(st *lang.Stmt, b *schema.Block, of string) *node {
	head := &st.Items[0]
	if st.Bad {
		return nil
	}
	d := diag.Diagnostic{Code: diag.CodeUnknownField, At: head.At}
	words := b.Words()
	allowed := "a line here may begin with " + wording.OrList(words)
	switch {
	case head.Kind != lang.Word:
		d.Summary = fmt.Sprintf("a line begins with a word, and %s is none", wording.Item(head))
		if b.Any != nil && len(st.Items) > 1 && st.Items[1].Kind == lang.Word {
			allowed = "the name comes first here: " + schema.Example(b.Any) + "\n" + allowed
		}
	case b == schema.Language:
		d.Code = diag.CodeUnknownDecl
		d.Summary = fmt.Sprintf("`%s` is not a declaration", head.Text)
		allowed = "a file may declare " + wording.OrList(words)
	default:
		d.Summary = fmt.Sprintf("%s has no `%s`", wording.Article(of), head.Text)
	}
	d.Help = allowed
	var n *node
	if looks, desc, ok := lang.LookAlike(head.Text); ok && head.Kind == lang.Word && b.Find(looks) != nil {
		s.diags.Add(nameAlike(head, looks, desc))
		return &node{field: b.Find(looks), stmt: st, bad: true}
	}
	if near := spelling.Nearest(head.Text, words); near != "" && head.Kind == lang.Word {
		d.Help = fmt.Sprintf("did you mean `%s`? %s", near, allowed)
		d.Fix = &diag.Fix{At: head.At, Text: near, Label: "write `" + near + "`"}
		n = &node{field: b.Find(near), stmt: st, bad: true}
	} else if other := spelling.Called(head.Text, words); other != "" && head.Kind == lang.Word {
		d.Help = fmt.Sprintf("it is called `%s` here; %s", other, allowed)
		d.Fix = &diag.Fix{At: head.At, Text: other, Label: "write `" + other + "`"}
		n = &node{field: b.Find(other), stmt: st, bad: true}
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

// missing says which lines that must be there are not, in a block whose variants
// have been applied. Of a block that could not be read it says nothing more.
func missing(diags *diag.List, n *node, of string) (whole bool) {
	if n.bad || n.gaps {
		return false
	}
	var names, examples []string
	d := diag.Diagnostic{Code: diag.CodeMissing, At: n.at()}
	for _, f := range n.field.Block.Fields {
		if !f.Need || n.present(f.Name) {
			continue
		}
		d.Reason = f.Doc
		names, examples = append(names, f.Name), append(examples, schema.ExampleBlock(f))
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
func (s shaper) limits(n *node) {
	what := n.field.Name
	if what == "" {
		what = n.text(n.field.Key) // a line that begins with a name
	}
	for i := range n.m.caps {
		c := &n.m.caps[i]
		if c.kind == 0 {
			continue
		}
		for _, l := range n.field.Limits {
			if l.Slot != "" && l.Slot != c.slot || c.si >= l.Low && c.high <= l.High {
				continue
			}
			d := diag.Diagnostic{
				Code: diag.CodeOutOfRange, Severity: l.Severity, At: c.at(), Reason: l.Reason,
				Summary: fmt.Sprintf("%s is outside what `%s` can be", wording.Item(c.item), what),
				Help:    "allowed: " + wording.Between(l.Low, l.High, c.kind, c.item.Unit),
			}
			if l.Severity != diag.Error {
				d.Code = diag.CodeUnusual
				d.Summary = fmt.Sprintf("%s is unusual for `%s`", wording.Item(c.item), what)
				d.Help = "usual: " + wording.Between(l.Low, l.High, c.kind, c.item.Unit)
			} else {
				n.bad = true
			}
			if c.kind == quantity.Temperature {
				wording.OtherScale(&d, c.item, c.item.UnitAt(), l.Low, l.High)
			}
			s.diags.Add(d)
			break
		}
	}
}
