package bands

import (
	"newmake/compile/plan"
	"newmake/compile/work"
)

// fermenting reads a ferment at an hour from the pitch.
func fermenting(hour float64, of func(p *plan.FermentPoint) float64) figure {
	return func(p *plan.Plan) float64 {
		c := p.Ferment.Curve
		l := line{len(c), func(i int) float64 { return c[i].Hour }}
		return l.at(hour, false, func(i int) float64 { return of(&c[i]) })
	}
}

func fermentC(p *plan.FermentPoint) float64   { return p.TempC }
func fermentSG(p *plan.FermentPoint) float64  { return p.SG }
func fermentAbv(p *plan.FermentPoint) float64 { return p.AbvPct }
func fermentPH(p *plan.FermentPoint) float64  { return p.PH }

// ferment is the band of the ferment by the hour.
func (k *bench) ferment() []plan.FermentBand {
	out := make([]plan.FermentBand, 0, len(k.middle.Ferment.Curve))
	for _, p := range k.middle.Ferment.Curve {
		_, c := k.around(fermenting(p.Hour, fermentC))
		_, sg := k.around(fermenting(p.Hour, fermentSG))
		_, abv := k.around(fermenting(p.Hour, fermentAbv))
		c, sg, abv = c.and(work.FermentC.At(p.TempC)), sg.and(work.FermentSG.At(p.SG)), abv.and(work.WashStrength.At(p.AbvPct))
		out = append(out, plan.FermentBand{
			Hour: p.Hour, LowC: p.TempC - c.down, HighC: p.TempC + c.up, LowSG: p.SG - sg.down, HighSG: p.SG + sg.up,
			LowAbvPct: max(0, p.AbvPct-abv.down), HighAbvPct: p.AbvPct + abv.up,
		})
	}
	return out
}
