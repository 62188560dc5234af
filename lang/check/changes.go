package check

import (
	"strings"

	"github.com/pmezard/go-difflib/difflib"

	"newmake/lang"
	"newmake/lang/schema"
)

// written is a line as it was written, its block left out, with single spaces.
func (n *node) written() string { return writtenItems(n.stmt.Items) }

func writtenItems(items []lang.Item) string {
	var b strings.Builder
	for i := range items {
		it := &items[i]
		if i > 0 && it.Kind != lang.Comma {
			b.WriteByte(' ')
		}
		b.WriteString(strings.Join(strings.Fields(it.At.Text()), " "))
	}
	return b.String()
}

// changes says in words what a batch has other than the one it varies, both with
// their variants applied, in the order of the batch: "oats 4 % (was 10 %)".
func changes(before, after *node) []string {
	var out []string
	olds, news := linesOf(before), linesOf(after)
	for _, l := range after.lines {
		if l.field.Step {
			continue
		}
		old := olds[l.identity()]
		switch {
		case l.field.Block != nil && old == nil:
			out = append(out, l.written()+" (new)")
		case l.field.Block != nil:
			// A block that says nothing on its own line keeps what its parent's says.
			if is, was := writtenItems(l.m.items), writtenItems(old.m.items); is != was {
				out = append(out, l.changed(old))
			}
			for _, c := range changes(old, l) {
				out = append(out, l.within()+c)
			}
		case old == nil:
			out = append(out, l.written()+" (new)")
		case l.written() != old.written():
			out = append(out, l.changed(old))
		}
	}
	for _, l := range before.lines {
		if !l.field.Step && news[l.identity()] == nil {
			out = append(out, l.gone())
		}
	}
	return append(out, changedSteps(before, after)...)
}

// identity is what a line has to share with one of another batch to be the same
// line there.
func (n *node) identity() lineKey {
	if n.single() {
		return n.lineKey()
	}
	return lineKey{n.field, n.written()}
}

func linesOf(n *node) map[lineKey]*node {
	m := make(map[lineKey]*node, len(n.lines))
	for _, l := range n.lines {
		m[l.identity()] = l
	}
	return m
}

// changed says what a line is and was. What begins both, its word and its key,
// is said once.
func (n *node) changed(old *node) string {
	if _, was := old.parts(); was != "" {
		return n.written() + " (was " + was + ")"
	}
	return n.written() + " (new)"
}

// gone says that a line is no more.
func (n *node) gone() string {
	begin, was := n.parts()
	if was == "" {
		return "no " + begin
	}
	return "no " + begin + " (was " + was + ")"
}

// parts cuts a line after its word and its key, which say what it is about.
func (n *node) parts() (begin, rest string) {
	begin, text := n.field.Name, n.written()
	if c := n.get(n.field.Key); c != nil {
		begin = strings.TrimSpace(begin + " " + c.at().Text())
	}
	return begin, strings.TrimSpace(strings.TrimPrefix(text, begin))
}

// within is said before a change in a block. The lines of a bill begin with their
// grain, which says enough.
func (n *node) within() string {
	if n.field == schema.Bill {
		return ""
	}
	return n.field.Name + ": "
}

// changedSteps says which steps of a mash are other steps. It finds the longest
// runs that are the same in both.
func changedSteps(before, after *node) []string {
	old, now := stepTexts(before), stepTexts(after)
	if len(old) == 0 && len(now) == 0 {
		return nil
	}
	var out []string
	for _, op := range difflib.NewMatcher(old, now).GetOpCodes() {
		was, is := strings.Join(old[op.I1:op.I2], ", "), strings.Join(now[op.J1:op.J2], ", ")
		if verb, _, _ := strings.Cut(is, " "); op.I2-op.I1 == 1 && op.J2-op.J1 == 1 {
			was = strings.TrimPrefix(was, verb+" ")
		}
		switch op.Tag {
		case 'r':
			out = append(out, is+" (was "+was+")")
		case 'd':
			out = append(out, "no "+was+placed(old, op.I1))
		case 'i':
			out = append(out, is+placed(now, op.J1)+" (new)")
		}
	}
	return out
}

// placed says after which step something stands.
func placed(steps []string, i int) string {
	if i == 0 {
		return " first"
	}
	return " after " + steps[i-1]
}

func stepTexts(n *node) []string {
	var out []string
	for _, l := range n.lines {
		if l.field.Step {
			out = append(out, l.written())
		}
	}
	return out
}
