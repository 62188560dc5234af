package text

import (
	"fmt"
	"strings"

	"newmake/compile/measure"
	"newmake/compile/plan"
	"newmake/compile/show/columns"
	"newmake/lang/diag"
	"newmake/lang/words"
)

// SafetyLine ends whatever may be worked from.
const SafetyLine = "Local code, permits and licensed practice come first; a sheet is no substitute."

func (t *text) header() {
	p := t.p
	house := diag.Safe(p.Plant.Name)
	name := diag.Safe(p.Batch.Name)
	if columns.Width(name)+2+columns.Width(house) <= columns.Page {
		t.Strong(name + strings.Repeat(" ", columns.Page-columns.Width(name)-columns.Width(house)) + house)
	} else {
		t.Strong(name)
		t.Para(0, 0, house)
	}
	if p.Batch.Parent != "" {
		t.Para(0, 2, "a variant of "+diag.Safe(p.Batch.Parent)+changes(t.p))
	}
	start := plan.Moment(p.Batch.Start)
	standard := "no standard of identity named"
	if p.Batch.Standard != "" {
		standard = diag.Safe(p.Batch.Standard)
	}
	t.Para(0, 2, fmt.Sprintf("%s. Starts %s at %s, %s.", standard, measure.Date(p.Batch.Start), start.Format("15:04"), p.Plant.Zone))
	h := p.Plant
	facts := []string{t.Length(h.ElevationM) + " up", "water boils at " + t.Temp(h.WaterBoilsC), "cold water " + t.Temp(h.WaterC)}
	if len(h.ShiftDays) > 0 {
		facts = append(facts, fmt.Sprintf("shift %s to %s %s", h.ShiftFrom, h.ShiftTo, shortDays(h.ShiftDays)))
	}
	if h.Crew > 0 {
		facts = append(facts, fmt.Sprintf("crew %d", h.Crew))
	}
	t.Para(0, 2, strings.Join(facts, ", ")+".")

	t.Gap()
	var b strings.Builder
	fmt.Fprintf(&b, "%s of grain -> %s of wash at %s -> %s of low wines at %s -> %s of hearts at %s, %s",
		t.Mass(p.Bill.TotalKg), t.Volume(p.Ferment.Wash), t.LotAbv(p.Ferment.Wash),
		t.Volume(p.Strip.Fraction("low wines").Lot), t.LotAbv(p.Strip.Fraction("low wines").Lot),
		t.hearts(), t.Strength(t.fraction("hearts").Strength()), pure(t.Units, t.fraction("hearts").Lot))
	switch {
	case p.Cask.SizeL == 0 && p.Cask.Bottles > 0:
		fmt.Fprintf(&b, " -> %s at %s, unaged", words.Count(p.Cask.Bottles, "bottle"), t.Strength(p.Cask.BottleAt))
	case p.Cask.SizeL == 0 && t.fraction("hearts").VolumeL > 0:
		b.WriteString(", kept unaged")
	case p.Cask.SizeL == 0:
	case p.Cask.Casks == 0:
		fmt.Fprintf(&b, " -> no full cask of %s", t.Litres(p.Cask.SizeL))
	default:
		fmt.Fprintf(&b, " -> %s of %s at %s", words.Count(p.Cask.Casks, "cask"), t.Litres(p.Cask.SizeL), t.Strength(p.Cask.Entry))
	}
	t.Para(2, 5, b.String()+".")
	t.Para(2, 5, "Wash and spirit are counted at "+gaugeTemp(t.Units)+".")
	if said := t.toRead(); said != "" {
		t.Para(2, 5, said+" below: read before the grain is milled.")
	}
}

// changes says what a variant has other than its parent.
func changes(p *plan.Plan) string {
	if len(p.Batch.Changes) == 0 {
		return ""
	}
	return ": " + diag.Safe(strings.Join(p.Batch.Changes, "; "))
}

// toRead counts what is more than a note: promises that are not kept, and
// warnings.
func (t *text) toRead() string {
	var said []string
	broken := 0
	for _, p := range t.p.Promises {
		if p.Stands() == plan.PromiseBroken {
			broken++
		}
	}
	if broken > 0 {
		said = append(said, words.Count(broken, "broken promise"))
	}
	if n := notes(t.p, "error") - broken; n > 0 {
		said = append(said, words.Count(n, "error"))
	}
	if n := notes(t.p, "warning"); n > 0 {
		said = append(said, words.Count(n, "warning"))
	}
	if len(said) == 0 {
		return ""
	}
	return words.And(said)
}

func notes(p *plan.Plan, severity string) int {
	n := 0
	for _, d := range p.Notices {
		if d.Severity == severity {
			n++
		}
	}
	return n
}

// pure is the alcohol of a lot, in the measure that the reader is taxed by.
func pure(u measure.Units, l plan.Lot) string {
	if u == measure.US {
		return measure.Number(l.ProofGallons, 1) + " proof gallons"
	}
	return measure.Number(l.PureL, 1) + " L of pure alcohol"
}

// hearts is the volume of the hearts, in the gauge of the reader.
func (t *text) hearts() string { return t.Volume(t.fraction("hearts").Lot) }

// shortDays says a run of days as its ends: Tue to Sat.
func shortDays(days []string) string {
	week := "Sunday Monday Tuesday Wednesday Thursday Friday Saturday Sunday Monday Tuesday Wednesday Thursday Friday Saturday"
	short := make([]string, len(days))
	for i, d := range days {
		short[i] = d[:3]
	}
	if len(days) > 2 && strings.Contains(week, strings.Join(days, " ")) {
		return short[0] + " to " + short[len(short)-1]
	}
	return strings.Join(short, ", ")
}

// mostWorst is how many notices are said in a line.
const mostWorst = 3

// worst is what errors and warnings say, the first few.
func worst(p *plan.Plan) []string {
	var out []string
	for _, severity := range []string{"error", "warning"} {
		for _, n := range p.Notices {
			if n.Severity == severity {
				out = append(out, diag.Safe(n.Summary))
			}
		}
	}
	if more := len(out) - mostWorst; more > 0 {
		out = append(out[:mostWorst], fmt.Sprintf("and %d more, which `newmake check` says", more))
	}
	return out
}
