package report

import (
	"math"

	"newmake/compile/lot"
	"newmake/compile/matter/fluid"
	"newmake/compile/numbers"
	"newmake/compile/plan"
	"newmake/compile/stage/cask"
	"newmake/lang/recipe"
)

// reductionPart is the hearts brought to strength, as the plan shows it; nil if they
// are not.
func reductionPart(hearts plan.Lot, r numbers.Reduction) *plan.Reduction {
	if !r.Done {
		return nil
	}
	p := &plan.Reduction{
		From: hearts, To: lot.Of(r.Spirit), WaterL: r.WaterM3 * lot.LitresPerM3, WaterKg: r.WaterKg, WaterScaleKg: waterScaleKg(r.WaterKg),
		ContractionL: r.ContractionM3 * lot.LitresPerM3, TempRiseC: r.TempRiseC, WaterGallons: waterGal(r.WaterKg),
	}
	p.ContractionGallons = hearts.WineGallons + p.WaterGallons - p.To.WineGallons
	return p
}

// caskPart is the filling and what becomes of it, as the plan shows it.
func caskPart(n *numbers.Batch) plan.Cask {
	switch {
	case n.Filled.Done:
		return inWood(n.Batch, n.Filled, n.Reduced.ToMassFrac)
	case n.Distilled.Hearts.MassKg() > 0 && !numbers.InWood(n.Batch):
		return unaged(n.Batch, n.Reduced)
	}
	return plan.Cask{}
}

func inWood(b *recipe.Batch, r numbers.Cask, toMassFrac float64) plan.Cask {
	k, in := b.Cask, r.In
	all := lot.Of(r.Spirit)
	part := func(m3 float64) plan.Lot { return all.Times(m3 * lot.LitresPerM3 / all.VolumeL) }
	p := plan.Cask{
		Kind: k.Kind.Name, New: k.New, Char: k.Char, SizeL: k.SizeM3 * lot.LitresPerM3, Entry: lot.AtMassFrac(toMassFrac), Casks: r.Casks,
		Leftover: part(r.LeftoverM3), LeftoverOf: min(99, 100*r.LeftoverM3/in.SizeM3),
		RestMonths: k.RestS / cask.YearS * lot.MonthsPerYear, Climate: climateWords(k),
		BottleL: in.BottleM3 * lot.LitresPerM3, BottleAt: lot.AtABV(r.BottledABV), BottleAssumed: k.BottleAt.Value == 0, Bottles: r.Bottles,
	}
	if r.BottledABV < in.BottleABV {
		asked := lot.AtABV(in.BottleABV)
		p.BottleAsked = &asked
	}
	if r.Before.MassKg() > 0 {
		before := lot.Of(r.Before)
		p.Before, p.BeforeOf = &before, b.Today.Spirit.Run
	}
	if r.Casks == 0 {
		return p
	}
	filledM3 := in.SizeM3
	if r.LastM3 > 0 {
		last := part(r.LastM3)
		if p.LastFill = &last; r.Casks == 1 {
			filledM3 = r.LastM3
		}
	}
	fill := part(filledM3)
	p.Fill = &fill
	p.NetKg, p.TareKg = fluid.MassInAirKg(fill.MassKg, fill.MassKg/fill.VolumeL*lot.LitresPerM3), numbers.TareKg(k)
	p.GrossKg, p.TareSaid = p.NetKg+p.TareKg, k.TareKg > 0
	for _, y := range r.Years {
		p.Forecast = append(p.Forecast, caskYear(y))
	}
	for _, y := range cask.Monthly(in, r.Result) {
		p.ByMonth = append(p.ByMonth, caskYear(y))
	}
	last := r.Years[len(r.Years)-1]
	p.CaskLossPct = 100 * (1 - last.VolumeM3/filledM3)
	return p
}

func caskYear(y cask.Year) plan.CaskYear {
	return plan.CaskYear{
		AgeYears: y.AgeYears, VolumeL: y.VolumeM3 * lot.LitresPerM3, AbvPct: 100 * y.ABV, Proof: y.Proof,
		PureL: y.VolumeM3 * lot.LitresPerM3 * y.ABV, ProofGallons: y.ProofGallons,
		WineGallons: fluid.WineGallons(y.LiquidKg(), y.MassFrac()),
	}
}

// unaged is a batch that goes into no wood: reduced to its bottling strength and
// bottled, or kept as it comes if it asks for none.
func unaged(b *recipe.Batch, r numbers.Reduction) plan.Cask {
	asked := b.Cask.BottleAt.Value > 0
	if asked && !r.Done {
		return plan.Cask{}
	}
	kept := lot.Of(r.Spirit)
	out := plan.Cask{BottleAt: kept.Strength(), BottleAssumed: !asked}
	if asked {
		out.BottleL = numbers.BottleM3(b) * lot.LitresPerM3
		out.Bottles = int(math.Floor(lot.Bottles(b.Gauge, kept, out.BottleL) + 1e-9))
	}
	return out
}

// climateWords are the climate in which a cask is foretold.
func climateWords(k recipe.Cask) string {
	if k.Air.Said {
		return k.Climate.Named + " (by the month)"
	}
	return k.Climate.Named
}
