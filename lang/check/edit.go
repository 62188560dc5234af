package check

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"newmake/lang/diag"
	"newmake/lang/schema"
	"newmake/lang/wording"
	"newmake/lang/words"
)

// editor applies a variant's edits to the steps of the mash that it varies. All
// edits speak of those steps as they stand there, whatever the other edits do.
type editor struct {
	steps   []*node // of the mash that is varied
	before  [][]*node
	after   [][]*node
	taken   []*node   // the edit that replaced or removed a step
	instead [][]*node // what stands in its place
	diags   *diag.List
}

// editSteps gives the steps of base with the edits of a variant applied.
func editSteps(base, edits []*node, diags *diag.List) []*node {
	e := &editor{diags: diags}
	for _, n := range base {
		if n.field.Step {
			e.steps = append(e.steps, n)
		}
	}
	k := len(e.steps)
	e.before, e.after, e.instead, e.taken = make([][]*node, k), make([][]*node, k), make([][]*node, k), make([]*node, k)
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

func (e *editor) apply(n *node) {
	if n.bad {
		return
	}
	i, ok := e.find(n)
	if !ok {
		return
	}
	if len(n.lines) == 0 && n.field != schema.RemoveStep {
		if len(n.stmt.Block.Stmts) > 0 {
			return // what is wrong with them is said
		}
		e.diags.Add(diag.Diagnostic{
			Code: diag.CodeStepEdit, Summary: fmt.Sprintf("this `%s` has no step in it", n.field.Name), At: n.at(),
			Help: "write the steps between the braces, for example: " + schema.Example(n.field),
		})
		return
	}
	switch n.field {
	case schema.Before:
		e.before[i] = append(e.before[i], n.lines...)
	case schema.After:
		e.after[i] = append(e.after[i], n.lines...)
	default:
		if first := e.taken[i]; first != nil {
			e.diags.Add(diag.Diagnostic{
				Code: diag.CodeStepEdit, Summary: "this step is replaced or removed twice", At: n.at(), Help: "keep one of the two lines",
				Related: []diag.Related{{At: first.at(), Text: "the first one is here"}, {At: e.steps[i].at(), Text: "the step is here"}},
			})
			return
		}
		e.taken[i], e.instead[i] = n, n.lines
	}
}

// find gives the step that an edit speaks of, with a diagnostic if there is none
// or more than one.
func (e *editor) find(n *node) (int, bool) {
	verb := n.m.caps[0].text()
	var doing, fit []int
	for i, s := range e.steps {
		if s.field.Name == verb {
			doing = append(doing, i)
			if n.speaksOf(s, len(doing)) {
				fit = append(fit, i)
			}
		}
	}
	if len(fit) == 1 {
		return fit[0], true
	}
	d := diag.Diagnostic{Code: diag.CodeStepEdit, At: n.address()}
	written := strings.TrimSpace(strings.TrimPrefix(n.written(), n.field.Name))
	switch {
	case len(e.steps) == 0:
		d.Summary = fmt.Sprintf("the mash has no `%s` step: it has none at all", verb)
		d.Help = "a variant changes the steps of the batch it varies; write the steps themselves, without `" + n.field.Name + "`"
	case len(fit) > 1:
		d.Summary = fmt.Sprintf("`%s` may be any of %d steps", written, len(fit))
		d.Help = "say which: " + wording.OrList(e.addresses(fit))
		d.Related = e.places(fit)
	case len(doing) == 0:
		d.Summary = fmt.Sprintf("the mash that this one varies has no `%s` step", verb)
		d.Help = "its steps are " + words.And(wording.Quoted(e.addresses(nil)))
	default:
		d.Summary = fmt.Sprintf("the mash that this one varies has no step `%s`", written)
		d.Help = "it has " + words.And(wording.Quoted(e.addresses(doing)))
		d.Related = e.places(doing)
	}
	e.diags.Add(d)
	return 0, false
}

// address is the place of the words that say which step is meant.
func (n *node) address() diag.Span {
	return n.m.caps[0].at().To(n.at())
}

func (e *editor) places(which []int) []diag.Related {
	out := make([]diag.Related, 0, len(which))
	for k, name := range e.addresses(which) {
		out = append(out, diag.Related{At: e.steps[which[k]].at(), Text: "`" + name + "`"})
	}
	return out
}

// speaksOf says that an edit means a step, which is the nth of those that do the
// same.
func (n *node) speaksOf(step *node, nth int) bool {
	for i := range n.m.caps[1:] {
		switch c := &n.m.caps[1+i]; c.slot {
		case "what":
			if !slices.ContainsFunc(step.m.caps, func(s capture) bool { return s.text() == c.text() }) {
				return false
			}
		case "number":
			if c.si != float64(nth) {
				return false
			}
		case "temp", "duration":
			if !step.has(c.slot) || math.Abs(step.num(c.slot)-c.si) > 1e-6*math.Max(1, math.Abs(c.si)) {
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
		count[s.field.Name]++
		nth[i] = count[s.field.Name]
	}
	var out []string
	for i, s := range e.steps {
		if which != nil && !slices.Contains(which, i) {
			continue
		}
		name := s.field.Name
		switch {
		case name == "add" || name == "dose":
			name += " " + s.m.caps[0].text()
		case count[name] > 1:
			name = fmt.Sprintf("%s %d", name, nth[i])
		}
		out = append(out, name)
	}
	return out
}
