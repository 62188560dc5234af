package bands

import (
	"math"

	"newmake/compile/plan"
	"newmake/compile/work"
)

// which is one of the two runs of a plan.
type which func(p *plan.Plan) *plan.Run

func strip(p *plan.Plan) *plan.Run  { return &p.Strip }
func spirit(p *plan.Plan) *plan.Run { return &p.Spirit }

func spoutAbv(p *plan.RunPoint) float64  { return p.AbvPct }
func spoutRate(p *plan.RunPoint) float64 { return p.RateLPerH }
func vapourC(p *plan.RunPoint) float64   { return p.VapourC }
func overL(p *plan.RunPoint) float64     { return p.OverL }

// atVolume reads a run when so much of one charge has come over.
func (w which) atVolume(litres float64, of func(p *plan.RunPoint) float64) figure {
	return func(p *plan.Plan) float64 {
		c := w(p).Curve
		l := line{len(c), func(i int) float64 { return c[i].OverL }}
		return l.at(litres, false, func(i int) float64 { return of(&c[i]) })
	}
}

// after reads a run so many minutes after the first drop.
func (w which) after(minutes float64, of func(p *plan.RunPoint) float64) figure {
	return func(p *plan.Plan) float64 {
		c := w(p).Curve
		if len(c) == 0 {
			return math.NaN()
		}
		l := line{len(c), func(i int) float64 { return c[i].Min - c[0].Min }}
		return l.at(minutes, false, func(i int) float64 { return of(&c[i]) })
	}
}

// minutes is when so much has come over, from the fire. More than a run gives comes when
// it ends.
func (w which) minutes(litres float64) figure {
	return w.atVolume(litres, func(p *plan.RunPoint) float64 { return p.Min })
}

// run is the bands of one charge of a run.
func (k *bench) run(w which) plan.RunBands {
	c := w(k.middle).Curve
	out := plan.RunBands{ByVolume: make([]plan.RunBand, 0, len(c)), ByClock: make([]plan.RunBand, 0, len(c))}
	abvs, rates, vapours := make([]box, 0, len(c)), make([]box, 0, len(c)), make([]box, 0, len(c))
	for _, p := range c {
		_, abv := k.around(w.atVolume(p.OverL, spoutAbv))
		_, rate := k.around(w.atVolume(p.OverL, spoutRate))
		_, vapour := k.around(w.atVolume(p.OverL, vapourC))
		_, late := k.around(w.minutes(p.OverL))
		abv, rate, vapour = abv.and(work.Spout.At(p.AbvPct)), rate.and(work.Flow.At(p.RateLPerH)), vapour.and(work.VapourC.At(p.VapourC))
		b := plan.RunBand{
			Min: p.Min, OverL: p.OverL, LowOverL: p.OverL, HighOverL: p.OverL,
			LowAbvPct: max(0, p.AbvPct-abv.down), HighAbvPct: p.AbvPct + abv.up,
			LowRateLPerH: max(0, p.RateLPerH-rate.down), HighRateLPerH: p.RateLPerH + rate.up,
			LowVapourC: p.VapourC - vapour.down, HighVapourC: p.VapourC + vapour.up,
		}
		out.ByVolume = append(out.ByVolume, b)
		at := func(low, high float64) box { return box{p.Min, p.Min - late.down, p.Min + late.up, low, high} }
		abvs, rates, vapours = append(abvs, at(b.LowAbvPct, b.HighAbvPct)), append(rates, at(b.LowRateLPerH, b.HighRateLPerH)), append(vapours, at(b.LowVapourC, b.HighVapourC))
		_, over := k.around(w.after(p.Min-c[0].Min, overL))
		b.LowOverL, b.HighOverL = max(0, p.OverL-over.down), p.OverL+over.up
		out.ByClock = append(out.ByClock, b)
	}
	abv, rate, vapour := covered(abvs), covered(rates), covered(vapours)
	for i := range out.ByClock {
		b := &out.ByClock[i]
		b.LowAbvPct, b.HighAbvPct = abv[i].low, abv[i].high
		b.LowRateLPerH, b.HighRateLPerH = rate[i].low, rate[i].high
		b.LowVapourC, b.HighVapourC = vapour[i].low, vapour[i].high
	}
	return out
}
