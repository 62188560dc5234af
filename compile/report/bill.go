package report

import (
	"newmake/compile/lot"
	"newmake/compile/plan"
	"newmake/compile/stage/mash"
	"newmake/lang/recipe"
)

// billPart is the grain, and what it gives in the mash. What else is measured out is
// for the work to say.
func billPart(b *recipe.Batch, r mash.Result) plan.Bill {
	out := plan.Bill{
		TotalKg: b.Bill.TotalKg, Bushels: b.Bill.TotalKg / lot.KgPerBushel, ExtractKg: r.ExtractKg,
	}
	added := addedIn(b.Mash.Steps)
	for i, l := range b.Bill.Lines {
		g := l.Grain
		line := plan.Grain{
			Name: g.Name, MassKg: l.MassKg, SharePct: 100 * l.Share, MoisturePct: 100 * g.Moisture,
			AddedIn: added[i], HouseOwn: g.House,
			TheoryExtractKg: l.MassKg * (1 - g.Moisture) * mash.TheoryExtract(g),
		}
		// The model mixes all starch once it has gelatinized, so the whole is
		// shared out by what each line could give.
		if r.TheoryExtractKg > 0 {
			line.ExtractKg = line.TheoryExtractKg / r.TheoryExtractKg * r.ExtractKg
		}
		out.Lines = append(out.Lines, line)
	}
	out.LintnerDeg = LintnerDeg(b.Bill)
	return out
}

// LintnerDeg is the diastatic power of a bill.
func LintnerDeg(b recipe.Bill) float64 {
	deg := 0.0
	for _, l := range b.Lines {
		if b.TotalKg > 0 {
			deg += l.Grain.LintnerPower * l.MassKg / b.TotalKg
		}
	}
	return deg
}

// addedIn is the step that adds each line of the bill.
func addedIn(steps []recipe.MashStep) map[int]string {
	in := map[int]string{}
	for i, s := range steps {
		if s.Verb != recipe.MashAdd {
			continue
		}
		for _, g := range s.Grains {
			in[g] = plan.MashStepID(i)
		}
	}
	return in
}
