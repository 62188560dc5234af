package trade

import (
	"fmt"

	"newmake/lang/diag"
	"newmake/lang/recipe"
)

// checkGrain sees that every grain goes in, and none too hot.
func checkGrain(r *rules, w *walkthrough) {
	for i := range r.batch.Bill.Lines {
		l := &r.batch.Bill.Lines[i]
		step, ok := w.added[i]
		if !ok {
			if l.MassKg > 0 {
				r.add(diag.Diagnostic{
					Code: diag.CodeNeverAdded, Summary: fmt.Sprintf("`%s` is in the bill and never goes into the mash", l.Grain.Name), At: l.At,
					Help:    fmt.Sprintf("write `add %s` where it goes in, or take it out of the bill", l.Grain.Name),
					Related: []diag.Related{{At: r.batch.Mash.At, Text: "the mash is here"}},
				})
			}
			continue
		}
		addedHot(r, w, l, step)
	}
}

// addedHot warns of a grain put in above the temperature that its library entry
// names. Malt has rules of its own.
func addedHot(r *rules, w *walkthrough, l *recipe.BillLine, step int) {
	m := &w.moments[step]
	g := l.Grain
	if g.MostC == 0 || hasEnzymes(g) || m.meetsC() <= g.MostC+0.5 {
		return
	}
	reason := "added hotter it balls and sticks"
	if g.Viscous {
		reason = "its gums set thick and foam when it is added hot"
	}
	r.add(diag.Diagnostic{
		Code: diag.CodeHotGrain, Severity: diag.Warning,
		Summary: fmt.Sprintf("`%s` goes in at %s; it should be at most %s", g.Name, r.temp(m.meetsC()), r.temp(g.MostC)),
		At:      r.at(m.step.Path.Child(g.Name)),
		Help:    fmt.Sprintf("cool to %s before it", r.temp(g.MostC)),
		Reason:  reason,
	})
}

// checkStarch sees that the starch of every grain gets hot enough to swell, for
// only then can an enzyme work on it. Sources of the ranges differ by up to ten
// degrees, so raw grain is held against the upper end. Malt is softer: the middle
// of its range will do.
func checkStarch(r *rules, w *walkthrough) {
	const margin = 1.5
	for i := range r.batch.Bill.Lines {
		l := &r.batch.Bill.Lines[i]
		g := l.Grain
		peak, _ := w.peakC(i)
		step, added := w.added[i]
		if !added || g.Starch == 0 || g.GelHighC == 0 || w.moments[step].wasEmpty && w.last().liquorM3 == 0 {
			continue
		}
		enough := g.GelHighC - margin
		if g.Malted {
			enough = (g.GelLowC + g.GelHighC) / 2
		}
		d := diag.Diagnostic{
			Code: diag.CodeRawStarch, At: r.at(w.moments[step].step.Path.Child(g.Name)),
			Help:   fmt.Sprintf("its starch swells between %s and %s: heat the mash to at least %s with it in", r.temp(g.GelLowC), r.temp(g.GelHighC), r.temp(g.GelHighC)),
			Reason: "enzymes work only on starch that has swollen; what stays raw is lost, and feeds the bacteria",
		}
		switch {
		case peak < g.GelLowC:
			d.Summary = fmt.Sprintf("`%s` is never cooked: it gets to %s at most", g.Name, r.temp(peak))
			if g.Malted {
				d.Severity = diag.Warning
			}
		case peak < enough:
			d.Severity = diag.Warning
			d.Summary = fmt.Sprintf("`%s` is only partly cooked: it gets to %s at most", g.Name, r.temp(peak))
		default:
			continue
		}
		r.add(d)
	}
}
