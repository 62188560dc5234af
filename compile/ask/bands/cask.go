package bands

import (
	"math"

	"newmake/compile/plan"
	"newmake/compile/stage/cask"
	"newmake/compile/work"
)

// ageing reads one cask at an age.
func ageing(years float64, of func(y *plan.CaskYear) float64) figure {
	return func(p *plan.Plan) float64 {
		f := p.Cask.ByMonth
		l := line{len(f), func(i int) float64 { return f[i].AgeYears }}
		return l.at(years, false, func(i int) float64 { return of(&f[i]) })
	}
}

// cask is the band of one cask over the years.
func (k *bench) cask() []plan.CaskBand {
	out := []plan.CaskBand{}
	for _, y := range k.middle.Cask.ByMonth {
		volume, v := k.around(ageing(y.AgeYears, func(y *plan.CaskYear) float64 { return y.VolumeL }))
		gallons, g := k.around(ageing(y.AgeYears, func(y *plan.CaskYear) float64 { return y.WineGallons }))
		abv, a := k.around(ageing(y.AgeYears, func(y *plan.CaskYear) float64 { return y.AbvPct }))
		proof, p := k.around(ageing(y.AgeYears, func(y *plan.CaskYear) float64 { return y.Proof }))
		besides := work.SetStrength.At(abv)
		a, p = a.and(besides), p.and(plan.ProofPerPct*besides)
		out = append(out, plan.CaskBand{
			AgeYears: y.AgeYears, LowVolumeL: max(0, volume-v.down), HighVolumeL: volume + v.up, LowWineGallons: max(0, gallons-g.down), HighWineGallons: gallons + g.up,
			LowAbvPct: max(0, abv-a.down), HighAbvPct: abv + a.up, LowProof: max(0, proof-p.down), HighProof: proof + p.up,
		})
	}
	return out
}

// casks is the whole casks that a plan fills, of so many casks' worth of spirit.
func casks(worth float64) float64 {
	n := math.Floor(worth + same)
	if worth-n >= cask.LeastFill {
		n++
	}
	return n
}

// worth is the spirit at entry strength in casks.
func worth(p *plan.Plan) float64 {
	if p.Cask.SizeL == 0 {
		return math.NaN()
	}
	n := float64(p.Cask.Casks)
	if last := p.Cask.LastFill; last != nil {
		n += last.VolumeL/p.Cask.SizeL - 1
	}
	return n + p.Cask.Leftover.VolumeL/p.Cask.SizeL
}
