package report

import (
	"newmake/compile/plan"
	"newmake/compile/stage/still"
	"newmake/lang/recipe"
)

// Congeners is where the congeners go, by a house's or the library's model.
func Congeners(all []still.Congener, m *recipe.Model) *plan.Congeners {
	if len(all) == 0 {
		return nil
	}
	out := &plan.Congeners{UncertaintyPct: 100 * m.Values["uncertainty"], HouseOwn: m.House}
	for _, k := range all {
		p := plan.Congener{Name: k.Name, LeftPct: estimate(k.Left, 100), Gain: estimate(k.Gain, 1), Fractions: make([]plan.CongenerFraction, 0, len(k.Fractions))}
		for _, f := range k.Fractions {
			p.Fractions = append(p.Fractions, plan.CongenerFraction{
				Fraction: f.Fraction, SharePct: estimate(f.Share, 100), Relative: estimate(f.Relative, 1),
			})
		}
		out.Each = append(out.Each, p)
	}
	out.Curve = congenerCurve(all)
	return out
}

// congenerCurve is what comes over, moment by moment, all congeners together.
func congenerCurve(all []still.Congener) []plan.CongenerPoint {
	out := make([]plan.CongenerPoint, 0, len(all[0].Spout))
	room := make([]float64, 0, len(all)*len(all[0].Spout))
	for i, s := range all[0].Spout {
		p := plan.CongenerPoint{Min: s.TimeS / 60, AbvPct: 100 * s.ABV, Relative: room[i*len(all) : i*len(all)]}
		for _, k := range all {
			p.Relative = append(p.Relative, k.Spout[i].Relative.Value)
		}
		out = append(out, p)
	}
	return out
}

func estimate(e still.Estimate, times float64) plan.Estimate {
	return plan.Estimate{Value: times * e.Value, Low: times * e.Low, High: times * e.High}
}
