package render

import (
	"fmt"

	"newmake/compile/measure"
)

func (t *text) law() {
	l := t.p.Law
	if l == nil {
		return
	}
	t.heading("STYLE: " + safe(l.Title))
	t.para(2, 2, safe(l.Source)+". This is not legal advice.")
	for _, c := range l.Conditions {
		line := safe(c.Asks)
		if c.Found != "" {
			line += ": " + safe(c.Found)
		}
		if c.Section != "" {
			line += "  (" + safe(c.Section) + ")"
		}
		t.item("  "+c.Met, 16, line)
	}
}

func (t *text) promises() {
	if len(t.p.Promises) == 0 {
		return
	}
	t.heading("PROMISES")
	for _, p := range t.p.Promises {
		word := "kept"
		if !p.Kept {
			word = "BROKEN"
		}
		promised := t.Quantity(p.Promised)
		if p.Tolerance.Value != 0 {
			promised += " within " + t.Quantity(p.Tolerance)
		}
		what := safe(p.What)
		if p.Basis != "" {
			what += " (" + p.Basis + ")"
		}
		t.item("  "+word, 16, fmt.Sprintf("%s: %s; promised %s", what, t.Quantity(p.Found), promised))
	}
}

func (t *text) notices() {
	if len(t.p.Notices) == 0 {
		return
	}
	title := "WARNINGS AND NOTES"
	if t.notes("error") > 0 {
		title = "ERRORS, WARNINGS AND NOTES"
	}
	t.heading(title)
	for _, n := range t.p.Notices {
		head := n.Severity + " " + n.Code + ": " + safe(n.Summary)
		if n.Line > 0 {
			head += fmt.Sprintf(" (line %d)", n.Line)
		}
		t.para(2, 4, head)
		if n.Help != "" {
			t.para(4, 6, "do: "+safe(n.Help))
		}
		if n.Reason != "" {
			t.para(4, 6, "why: "+safe(n.Reason))
		}
	}
}

func (t *text) cautions() {
	t.heading("CAUTIONS")
	for _, c := range t.p.Cautions {
		t.para(2, 4, "! "+c.Title+". "+c.Text)
	}
	t.para(2, 4, safetyLine)
}

func (t *text) forecast() {
	c := t.p.Cask
	if len(c.Forecast) == 0 {
		return
	}
	t.heading(fmt.Sprintf("FORECAST: one cask of %s, %s rack house", t.Litres(c.SizeL), safe(c.Climate)))
	tab := table{indent: 2}
	us := t.Units == measure.US
	if us {
		tab.row("age", "volume", "strength", "proof gallons")
	} else {
		tab.row("age", "volume", "strength", "pure alcohol")
	}
	for _, y := range c.Forecast {
		strength, pure := measure.Number(y.AbvPct, 1)+" % vol", measure.Number(y.PureL, 1)+" L"
		if us {
			strength, pure = measure.Number(y.Proof, 1)+" proof", measure.Number(y.ProofGallons, 1)
		}
		tab.row(measure.Number(y.AgeYears, 1)+" y", t.Quantity(y.Volume()), strength, pure)
	}
	tab.write(&t.page)
	if c.Bottles > 0 {
		t.para(2, 4, fmt.Sprintf("About %s from %s after %s months%s.",
			t.bottles(), count(c.Casks, "cask"), measure.Number(c.RestMonths, 0), t.bottledAs()))
	}
	t.para(2, 4, "A forecast from published averages: each cask goes its own way.")
}

// bottles is how many, of what, at what strength.
func (t *text) bottles() string {
	c := t.p.Cask
	return fmt.Sprintf("%s of %s mL at %s", count(c.Bottles, "bottle"), measure.Number(c.BottleL*1000, 0), t.Strength(c.BottleAt))
}

// bottledAs says where the bottling strength comes from, if not from the batch.
func (t *text) bottledAs() string {
	switch c := t.p.Cask; {
	case c.BottleAsked != nil:
		return fmt.Sprintf(", as it comes from the cask: it is weaker than the %s asked for", t.Strength(*c.BottleAsked))
	case c.BottleAssumed:
		return "; the batch states no bottling strength"
	default:
		return ""
	}
}

// version says from which text the plan was made.
func (t *text) version() {
	if words := t.p.Source.String(); words != "" {
		t.gap()
		t.para(2, 4, "Made from "+safe(words)+".")
	}
}
