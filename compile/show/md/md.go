// Package md writes a plan for a pull request.
package md

import (
	"fmt"
	"io"
	"strings"

	"newmake/compile/measure"
	"newmake/compile/plan"
	"newmake/lang/diag"
	"newmake/lang/words"
)

// Write writes the plan for a pull request: what the batch gives, what is
// wrong with it, and the steps folded away.
func Write(w io.Writer, p *plan.Plan, u measure.Units) error {
	p = p.Strings(func(s string) string { return Escape(diag.Safe(s)) })
	m := markdown{Units: u, p: p}
	m.head()
	m.verdict()
	m.notices()
	m.numbers()
	m.bill()
	m.law()
	m.steps()
	_, err := io.WriteString(w, m.b.String())
	return err
}

type markdown struct {
	measure.Units
	p *plan.Plan
	b strings.Builder
}

func (m *markdown) line(format string, args ...any) { fmt.Fprintf(&m.b, format+"\n", args...) }

func (m *markdown) table(right bool, rows ...[]string) { m.b.WriteString(Table(right, rows...)) }

func (m *markdown) head() {
	p := m.p
	m.line("## %s", p.Batch.Name)
	m.line("")
	standard := "no standard of identity named"
	if p.Batch.Standard != "" {
		standard = p.Batch.Standard
	}
	m.line("%s, %s. Starts %s at %s.", p.Plant.Name, standard, measure.Date(p.Batch.Start), measure.Clock(p.Batch.Start))
	if p.Batch.Parent != "" {
		changes := ""
		if len(p.Batch.Changes) > 0 {
			changes = ": " + strings.Join(p.Batch.Changes, "; ")
		}
		m.line("A variant of %s%s.", p.Batch.Parent, changes)
	}
	if words := p.Source.String(); words != "" {
		m.line("Made from %s.", words)
	}
	m.line("")
}

// verdict is in one line what comes of it, and whether all is well.
func (m *markdown) verdict() {
	p := m.p
	hearts := p.Spirit.Fraction("hearts")
	parts := []string{m.Volume(hearts.Lot) + " of hearts at " + m.Strength(hearts.Strength())}
	if p.Cask.SizeL > 0 {
		parts = append(parts, words.Count(p.Cask.Casks, "cask"))
	}
	kept, broken, warnings, errors := 0, 0, 0, 0
	for _, k := range p.Promises {
		switch k.Stands() {
		case plan.PromiseKept:
			kept++
		case plan.PromiseBroken:
			broken++
		}
	}
	for _, n := range p.Notices {
		switch {
		case n.Code == string(diag.CodePromiseBroken):
		case n.Severity == "error":
			errors++
		case n.Severity == "warning":
			warnings++
		}
	}
	for _, c := range []struct {
		n    int
		what string
	}{{errors, "error"}, {broken, "broken promise"}, {warnings, "warning"}} {
		if c.n > 0 {
			parts = append(parts, words.Count(c.n, c.what))
		}
	}
	if errors+broken+warnings == 0 {
		parts = append(parts, "no warnings")
	}
	if kept > 0 {
		parts = append(parts, words.Count(kept, "promise")+" kept")
	}
	m.line("**%s**", strings.Join(parts, "; "))
	m.line("")
}

func (m *markdown) notices() {
	for _, n := range m.p.Notices {
		if n.Code == string(diag.CodePromiseBroken) {
			continue // it stands below, as a promise
		}
		line := ""
		if n.Line > 0 {
			line = fmt.Sprintf(" (line %d)", n.Line)
		}
		m.line("- **%s %s**%s: %s", n.Severity, n.Code, line, n.Summary)
		if n.Help != "" {
			m.line("  %s", n.Help)
		}
	}
	for _, k := range m.p.Promises {
		switch stands := k.Stands(); {
		case k.Times != nil && stands != plan.PromiseKept:
			m.line("- **promise %s**: %s %s in %d of %d runs", stands, k.What, m.Quantity(k.Promised), k.Times.Of, k.Times.In)
		case stands == plan.PromiseBroken:
			m.line("- **promise not kept**: %s %s, promised %s", k.What, m.Quantity(k.Found), m.Quantity(k.Promised))
		}
	}
	if len(m.p.Notices) > 0 {
		m.line("")
	}
}

func (m *markdown) numbers() {
	p, s := m.p, m.p.Summary
	hearts, low := p.Spirit.Fraction("hearts"), p.Strip.Fraction("low wines")
	rows := [][]string{
		{"", "expected"},
		{"grain", m.Mass(p.Bill.TotalKg)},
		{"gravity at the pitch", measure.Gravity(p.Mash.HydrometerSG)},
		{"final gravity", measure.Gravity(s.FinalGravitySG)},
		{"wash", m.Volume(p.Ferment.Wash) + " at " + m.LotAbv(p.Ferment.Wash)},
		{"low wines", m.Volume(low.Lot) + " at " + m.LotAbv(low.Lot)},
		{"hearts", m.Volume(hearts.Lot) + " at " + m.Strength(hearts.Strength())},
		{"hearts, alcohol", m.pure(hearts.Lot)},
		{"yield", measure.Number(s.YieldLPAPerTonne, 0) + " LPA/t"},
	}
	if f := p.Spirit.Feints; f != nil {
		rows = append(rows, []string{"feints", m.Volume(*f) + " at " + m.Strength(f.Strength())})
	}
	if p.Cask.SizeL > 0 {
		rows = append(rows, []string{"casks", fmt.Sprintf("%d of %s at %s", p.Cask.Casks, m.Litres(p.Cask.SizeL), m.Strength(p.Cask.Entry))},
			[]string{"left over", m.Volume(p.Cask.Leftover)})
	}
	rows = append(rows, []string{"mash, ferment", measure.Duration(s.MashHours*60) + ", " + measure.Hours(s.FermentHours)},
		[]string{"stripping run, spirit run", measure.Duration(s.StripHours*60) + ", " + measure.Duration(s.SpiritHours*60)})
	m.table(true, rows...)
}

// pure is alcohol in the measure that the reader is taxed by.
func (m *markdown) pure(l plan.Lot) string {
	if m.Units == measure.US {
		return measure.Number(l.ProofGallons, 1) + " PG"
	}
	return measure.Number(l.PureL, 1) + " LPA"
}

func (m *markdown) bill() {
	rows := [][]string{{"grain", "weigh out", "share"}}
	for _, l := range m.p.Bill.Lines {
		name := l.Name
		if lots := m.Lots(l); lots != "" {
			name += ", " + lots
		}
		rows = append(rows, []string{name, m.Mass(l.MassKg), measure.Number(l.SharePct, 1) + " %"})
	}
	m.table(true, rows...)
}

func (m *markdown) law() {
	l := m.p.Law
	if l == nil {
		return
	}
	m.line("<details><summary>the law</summary>") // nothing of the recipe inside a tag
	m.line("")
	m.line("%s", l.Title)
	m.line("")
	rows := [][]string{{"the law asks", "found", "", "section"}}
	for _, c := range l.Conditions {
		met := c.Met
		if met == "NOT met" {
			met = "**NOT met**"
		}
		rows = append(rows, []string{c.Asks, c.Found, met, c.Section})
	}
	m.table(false, rows...)
	m.line("%s. This is not legal advice.", l.Source)
	m.line("")
	m.line("</details>")
	m.line("")
}

func (m *markdown) steps() {
	m.line("<details><summary>%s</summary>", words.Count(len(m.p.Schedule.Steps), "step"))
	m.line("")
	rows := [][]string{{"when", "for", "what to do", "should say"}}
	for _, s := range m.p.Schedule.Steps {
		var reads []string
		for _, r := range s.Read {
			at := ""
			if r.At != "" {
				at = measure.Clock(r.At) + " "
			}
			off := ""
			if r.Tolerance.Unit != "" {
				off = " " + strings.Replace(m.Tolerance(r.Tolerance), "+/-", "±", 1)
			}
			reads = append(reads, at+r.What+" "+strings.TrimPrefix(m.Quantity(r.Should), r.What+" ")+off)
		}
		rows = append(rows, []string{measure.DayAndClock(s.Start), measure.Duration(s.DurationMin), m.Phrase(s.Do), strings.Join(reads, "<br>")})
	}
	m.table(false, rows...)
	m.line("</details>")
}
