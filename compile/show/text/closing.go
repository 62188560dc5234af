package text

import (
	"fmt"

	"newmake/compile/plan"
	"newmake/lang/diag"
)

func (t *text) law() {
	l := t.p.Law
	if l == nil {
		return
	}
	t.Heading("STANDARD: " + diag.Safe(l.Title))
	t.Para(2, 2, diag.Safe(l.Source)+". This is not legal advice.")
	for _, c := range l.Conditions {
		line := diag.Safe(c.Asks)
		if c.Found != "" {
			line += ": " + diag.Safe(c.Found)
		}
		if c.Section != "" {
			line += "  (" + diag.Safe(c.Section) + ")"
		}
		t.Item("  "+c.Met, 16, line)
	}
}

func (t *text) promises() {
	if len(t.p.Promises) == 0 {
		return
	}
	t.Heading("PROMISES")
	for _, p := range t.p.Promises {
		word := p.Stands()
		if word == plan.PromiseBroken {
			word = "BROKEN"
		}
		promised := t.Quantity(p.Promised)
		if p.Tolerance.Value != 0 {
			promised += " within " + t.Quantity(p.Tolerance)
		}
		what := diag.Safe(p.What)
		if p.Basis != "" {
			what += " (" + p.Basis + ")"
		}
		if p.Times != nil {
			promised += fmt.Sprintf(" in %d of %d runs", p.Times.Of, p.Times.In)
			if p.Tried == nil {
				promised += ": newmake odds tries it"
			} else {
				promised += fmt.Sprintf("; kept in %s (%d draws)", p.Tried.Words, p.Tried.Draws)
			}
		}
		t.Item("  "+word, 16, fmt.Sprintf("%s: %s; promised %s", what, t.Quantity(p.Found), promised))
	}
}

func (t *text) notices() {
	if len(t.p.Notices) == 0 {
		return
	}
	title := "WARNINGS AND NOTES"
	if notes(t.p, "error") > 0 {
		title = "ERRORS, WARNINGS AND NOTES"
	}
	t.Heading(title)
	for _, n := range t.p.Notices {
		head := n.Severity + " " + n.Code + ": " + diag.Safe(n.Summary)
		if n.Line > 0 {
			head += fmt.Sprintf(" (line %d)", n.Line)
		}
		t.Para(2, 4, head)
		if n.Help != "" {
			t.Para(4, 6, "do: "+diag.Safe(n.Help))
		}
		if n.Reason != "" {
			t.Para(4, 6, "why: "+diag.Safe(n.Reason))
		}
	}
}

func (t *text) cautions(all []plan.Caution) {
	t.Heading("CAUTIONS")
	for _, c := range all {
		t.Para(2, 4, t.Words("! "+c.Title+". "+c.Text))
	}
	t.Para(2, 4, SafetyLine)
}
