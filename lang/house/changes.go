package house

import (
	"strings"

	"github.com/pmezard/go-difflib/difflib"

	"newmake/lang"
	"newmake/lang/schema"
	"newmake/lang/tree"
)

// written is a line as it was written, its block left out, with single spaces.
func written(n *tree.Node) string { return writtenItems(n.Stmt.Items) }

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
func changes(before, after *tree.Node) []string {
	var out []string
	olds, news := linesOf(before), linesOf(after)
	for _, l := range after.Lines {
		if l.Field.Step {
			continue
		}
		old := olds[identity(l)]
		switch {
		case l.Field.Block != nil && old == nil:
			out = append(out, written(l)+" (new)")
		case l.Field.Block != nil:
			// A block that says nothing on its own line keeps what its parent's says.
			if is, was := writtenItems(l.Match.Items), writtenItems(old.Match.Items); is != was {
				out = append(out, changed(l, old))
			}
			for _, c := range changes(old, l) {
				out = append(out, within(l)+c)
			}
		case old == nil:
			out = append(out, written(l)+" (new)")
		case written(l) != written(old):
			out = append(out, changed(l, old))
		}
	}
	for _, l := range before.Lines {
		if !l.Field.Step && news[identity(l)] == nil {
			out = append(out, gone(l))
		}
	}
	return append(out, changedSteps(before, after)...)
}

// identity is what a line has to share with one of another batch to be the same
// line there.
func identity(n *tree.Node) tree.LineKey {
	if n.Single() {
		return n.LineKey()
	}
	return tree.LineKey{Field: n.Field, Text: written(n)}
}

func linesOf(n *tree.Node) map[tree.LineKey]*tree.Node {
	m := make(map[tree.LineKey]*tree.Node, len(n.Lines))
	for _, l := range n.Lines {
		m[identity(l)] = l
	}
	return m
}

// changed writes what a line is and was. The word and key that both begin with are
// written once.
func changed(n *tree.Node, old *tree.Node) string {
	if _, was := parts(old); was != "" {
		return written(n) + " (was " + was + ")"
	}
	return written(n) + " (new)"
}

// gone says that a line is no more.
func gone(n *tree.Node) string {
	begin, was := parts(n)
	if was == "" {
		return "no " + begin
	}
	return "no " + begin + " (was " + was + ")"
}

// parts cuts a line after its word and its key, which say what it is about.
func parts(n *tree.Node) (begin, rest string) {
	begin, text := n.Field.Name, written(n)
	if c := n.Get(n.Field.Key); c != nil {
		begin = strings.TrimSpace(begin + " " + c.At().Text())
	}
	return begin, strings.TrimSpace(strings.TrimPrefix(text, begin))
}

// within is written before a change in a block. A line of a bill needs none: it begins with
// its grain.
func within(n *tree.Node) string {
	if n.Field == schema.Bill {
		return ""
	}
	return n.Field.Name + ": "
}

// changedSteps says which steps of a mash are other steps. It finds the longest
// runs that are the same in both.
func changedSteps(before, after *tree.Node) []string {
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

func stepTexts(n *tree.Node) []string {
	var out []string
	for _, l := range n.Lines {
		if l.Field.Step {
			out = append(out, written(l))
		}
	}
	return out
}
