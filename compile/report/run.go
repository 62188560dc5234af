package report

import (
	"newmake/compile/lot"
	"newmake/compile/matter/fluid"
	"newmake/compile/numbers"
	"newmake/compile/plan"
	"newmake/compile/stage/still"
	"newmake/lang/recipe"
)

// stripPart is the stripping run as the plan shows it.
func stripPart(b *recipe.Batch, s numbers.Strip) plan.Run {
	p := run(b.Strip.Still, s.Run, s.Charges)
	if s.First != nil { // of which not all is as in the others
		p.TotalHours = s.Sum(func(r still.Run) float64 { return r.DurationS }) / lot.SecondsPerHour
		p.HeatKWh = s.Sum(func(r still.Run) float64 { return r.HeatJ }) / lot.JoulesPerKWh
		p.CoolKWh = s.Sum(func(r still.Run) float64 { return r.CondenserJ }) / lot.JoulesPerKWh
		p.CoolingWaterL = s.Sum(func(r still.Run) float64 { return r.CoolingWaterM3 }) * lot.LitresPerM3
		p.Fractions[0].Lot = lot.Of(s.LowWines)
		p.Residue = lot.Of(s.PotAle())
		p.LossL = p.Residue.PureL
	}
	if h := s.Preheat; h != nil {
		p.Preheat = &plan.Preheat{
			Charges: h.Charges, FromC: h.FromC, ToC: h.ToC, PotAleC: h.PotAleC, LeavesC: h.LeavesC,
			SavedKWh: float64(h.Charges) * h.SavedJ / lot.JoulesPerKWh, SavedMin: h.SavedS / lot.SecondsPerMin,
		}
	}
	return p
}

// spiritPart is the spirit run as the plan shows it.
func spiritPart(b *recipe.Batch, s numbers.Spirit) plan.Run {
	p := run(b.Spirit.Still, s.Run, s.Charges)
	if b.Spirit.Feints {
		p.FeintsFrom = feintsFrom(b.Today)
	}
	if s.Returned.MassKg() > 0 {
		returned := lot.Of(s.Returned)
		p.FeintsReturned, p.SteadyTried = &returned, s.Tried
		if brought := s.Charge.EthanolKg - s.Returned.EthanolKg; brought > 0 {
			p.HeartsOfLowWinesPct = 100 * s.Run.Fraction(still.Hearts).EthanolKg / brought
		}
	}
	if s.Water.WaterKg > 0 {
		water := lot.Of(s.Water)
		p.ChargeWater = &water
	}
	feints := lot.Of(s.Feints()).Times(float64(s.Charges))
	p.Feints = &feints
	return p
}

// feintsFrom says whose feints a charge takes.
func feintsFrom(t recipe.Today) plan.FeintsFrom {
	switch {
	case !t.FeintsSaid:
		return plan.FeintsSteady
	case t.FeintsM3 > 0:
		return plan.FeintsOnHand
	}
	return plan.FeintsNone
}

// run is n equal charges at one still.
func run(v *recipe.Vessel, r still.Run, charges int) plan.Run {
	n := float64(charges)
	out := plan.Run{
		Still: v.Name, Charges: charges, Charge: lot.Of(r.Charge),
		HeatUpMin: r.HeatUpS / 60, Hours: r.DurationS / lot.SecondsPerHour, TotalHours: n * r.DurationS / lot.SecondsPerHour,
		MostFillPct: 100 * r.MostFill, Residue: lot.Of(r.Residue).Times(n),
		HeatKWh: n * r.HeatJ / lot.JoulesPerKWh, CoolKWh: n * r.CondenserJ / lot.JoulesPerKWh,
		CoolingWaterL: n * r.CoolingWaterM3 * lot.LitresPerM3,
	}
	out.LossL = out.Residue.PureL
	if k := len(r.Curve); k > 0 {
		out.StopAbvPct = 100 * r.Curve[k-1].ABV
	}
	over := 0.0
	out.Fractions = make([]plan.Fraction, 0, len(r.Fractions))
	for _, f := range r.Fractions {
		before := over
		over += lot.Of(f.Stream).VolumeL
		p := plan.Fraction{
			StartOverL: before, EndOverL: over,
			Name: f.Name, Lot: lot.Of(f.Stream).Times(n), StartMin: f.StartS / 60, EndMin: f.EndS / 60,
			Begins: lot.AtABV(f.StartABV), Ends: lot.AtABV(f.EndABV), VapourC: f.EndVapourC,
		}
		if r.Charge.EthanolKg > 0 {
			p.PureShare = 100 * f.EthanolKg / r.Charge.EthanolKg
		}
		out.Fractions = append(out.Fractions, p)
	}
	out.Curve = make([]plan.RunPoint, 0, len(r.Curve))
	for _, p := range r.Curve {
		out.Curve = append(out.Curve, plan.RunPoint{
			Min: p.TimeS / 60, PotC: p.PotC, VapourC: p.VapourC, AbvPct: 100 * p.ABV, Proof: fluid.ProofFromMassFrac(p.MassFrac),
			PotAbvPct: 100 * p.PotABV, OverL: p.OverM3 * lot.LitresPerM3, RateLPerH: p.RateM3S * lot.LitresPerM3 * lot.SecondsPerHour,
			Fraction: p.Fraction,
		})
	}
	return out
}
