package house

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"newmake/lang/diag"
	"newmake/lang/schema"
	"newmake/lang/tree"
	"newmake/lang/wording"
	"newmake/lang/words"
)

// editor applies a variant's edits to the steps of the mash that it varies. All
// edits speak of those steps as they stand there, whatever the other edits do.
type editor struct {
	steps   []*tree.Node // of the mash that is varied
	before  [][]*tree.Node
	after   [][]*tree.Node
	taken   []*tree.Node   // the edit that replaced or removed a step
	instead [][]*tree.Node // what stands in its place
	diags   *diag.List
}

// editSteps gives the steps of base with the edits of a variant applied.
func editSteps(base, edits []*tree.Node, diags *diag.List) []*tree.Node {
	e := &editor{diags: diags}
	for _, n := range base {
		if n.Field.Step {
			e.steps = append(e.steps, n)
		}
	}
	k := len(e.steps)
	e.before, e.after, e.instead, e.taken = make([][]*tree.Node, k), make([][]*tree.Node, k), make([][]*tree.Node, k), make([]*tree.Node, k)
	for _, n := range edits {
		e.apply(n)
	}
	out := slices.DeleteFunc(slices.Clone(base), isStep)
	for i, s := range e.steps {
		out = append(out, e.before[i]...)
		if e.taken[i] == nil {
			out = append(out, s)
		}
		out = append(append(out, e.instead[i]...), e.after[i]...)
	}
	return out
}

func (e *editor) apply(n *tree.Node) {
	if n.Bad {
		return
	}
	i, ok := e.find(n)
	if !ok {
		return
	}
	if len(n.Lines) == 0 && n.Field != schema.RemoveStep {
		if len(n.Stmt.Block.Stmts) > 0 {
			return // what is wrong with them is said
		}
		e.diags.Add(diag.Diagnostic{
			Code: diag.CodeStepEdit, Summary: fmt.Sprintf("this `%s` has no step in it", n.Field.Name), At: n.At(),
			Help: "write the steps between the braces, for example: " + schema.Example(n.Field, n.At().Units()),
		})
		return
	}
	switch n.Field {
	case schema.Before:
		e.before[i] = append(e.before[i], n.Lines...)
	case schema.After:
		e.after[i] = append(e.after[i], n.Lines...)
	default:
		if first := e.taken[i]; first != nil {
			e.diags.Add(diag.Diagnostic{
				Code: diag.CodeStepEdit, Summary: "this step is replaced or removed twice", At: n.At(), Help: "keep one of the two lines",
				Related: []diag.Related{{At: first.At(), Text: "the first one is here"}, {At: e.steps[i].At(), Text: "the step is here"}},
			})
			return
		}
		e.taken[i], e.instead[i] = n, n.Lines
	}
}

// find gives the step that an edit speaks of, with a diagnostic if there is none
// or more than one.
func (e *editor) find(n *tree.Node) (int, bool) {
	verb := n.Match.Caps[0].Text()
	var doing, fit []int
	for i, s := range e.steps {
		if s.Field.Name == verb {
			doing = append(doing, i)
			if speaksOf(n, s, len(doing)) {
				fit = append(fit, i)
			}
		}
	}
	if len(fit) == 1 {
		return fit[0], true
	}
	d := diag.Diagnostic{Code: diag.CodeStepEdit, At: address(n)}
	named := strings.TrimSpace(strings.TrimPrefix(written(n), n.Field.Name))
	switch {
	case len(e.steps) == 0:
		d.Summary = fmt.Sprintf("the mash has no `%s` step: it has none at all", verb)
		d.Help = "a variant changes the steps of the batch it varies; write the steps themselves, without `" + n.Field.Name + "`"
	case len(fit) > 1:
		d.Summary = fmt.Sprintf("`%s` may be any of %d steps", named, len(fit))
		d.Help = "say which: " + wording.OrList(e.addresses(fit))
		d.Related = e.places(fit)
	case len(doing) == 0:
		d.Summary = fmt.Sprintf("the mash that this one varies has no `%s` step", verb)
		d.Help = "its steps are " + words.And(wording.Quoted(e.addresses(nil)))
	default:
		d.Summary = fmt.Sprintf("the mash that this one varies has no step `%s`", named)
		d.Help = "it has " + words.And(wording.Quoted(e.addresses(doing)))
		d.Related = e.places(doing)
	}
	e.diags.Add(d)
	return 0, false
}

// address is the place of the words that say which step is meant.
func address(n *tree.Node) diag.Span {
	return n.Match.Caps[0].At().To(n.At())
}

func (e *editor) places(which []int) []diag.Related {
	out := make([]diag.Related, 0, len(which))
	for k, name := range e.addresses(which) {
		out = append(out, diag.Related{At: e.steps[which[k]].At(), Text: "`" + name + "`"})
	}
	return out
}

// speaksOf reports whether an edit means a step, which is the nth of those that do the
// same.
func speaksOf(n *tree.Node, step *tree.Node, nth int) bool {
	for i := range n.Match.Caps[1:] {
		switch c := &n.Match.Caps[1+i]; c.Slot {
		case "what":
			if !slices.ContainsFunc(step.Match.Caps, func(s tree.Capture) bool { return s.Text() == c.Text() }) {
				return false
			}
		case "number":
			if c.SI != float64(nth) {
				return false
			}
		case "temp", "duration":
			if !step.Has(c.Slot) || math.Abs(step.Num(c.Slot)-c.SI) > 1e-6*math.Max(1, math.Abs(c.SI)) {
				return false
			}
		}
	}
	return true
}

// addresses writes how each of some steps is spoken of, of all if which is nil.
func (e *editor) addresses(which []int) []string {
	count, nth := map[string]int{}, make([]int, len(e.steps))
	for i, s := range e.steps {
		count[s.Field.Name]++
		nth[i] = count[s.Field.Name]
	}
	var out []string
	for i, s := range e.steps {
		if which != nil && !slices.Contains(which, i) {
			continue
		}
		name := s.Field.Name
		switch {
		case name == "add" || name == "dose":
			name += " " + s.Match.Caps[0].Text()
		case count[name] > 1:
			name = fmt.Sprintf("%s %d", name, nth[i])
		}
		out = append(out, name)
	}
	return out
}
