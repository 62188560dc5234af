package bands

import (
	"math"

	"newmake/compile/plan"
	"newmake/compile/work"
)

// warped is the moment of another mash that answers one of this: at the same step, and
// as far through it.
func warped(this, other *plan.Mash, minute float64) float64 {
	for i, s := range this.Steps {
		if i >= len(other.Steps) {
			break
		}
		if end := s.StartMin + s.Minutes; minute <= end+same {
			o := other.Steps[i]
			if s.Minutes < same {
				return o.StartMin + o.Minutes
			}
			return o.StartMin + (minute-s.StartMin)/s.Minutes*o.Minutes
		}
	}
	return math.NaN()
}

func mashLine(m *plan.Mash) line {
	return line{len(m.Curve), func(i int) float64 { return m.Curve[i].Min }}
}

// mash is the band of the mash's temperature by the clock.
func (k *bench) mash() []plan.MashBand {
	m := &k.middle.Mash
	boxes := make([]box, 0, len(m.Curve))
	for i, p := range m.Curve {
		after := i > 0 && m.Curve[i-1].Min == p.Min
		_, late := k.around(func(p *plan.Plan) float64 { return warped(m, &p.Mash, m.Curve[i].Min) })
		_, warm := k.around(func(p *plan.Plan) float64 {
			at := warped(m, &p.Mash, m.Curve[i].Min)
			return mashLine(&p.Mash).at(at, after, func(i int) float64 { return p.Mash.Curve[i].TempC })
		})
		warm = warm.and(work.MashC.At(p.TempC))
		boxes = append(boxes, box{p.Min, p.Min - late.down, p.Min + late.up, p.TempC - warm.down, p.TempC + warm.up})
	}
	out := make([]plan.MashBand, 0, len(boxes))
	for i, c := range covered(boxes) {
		out = append(out, plan.MashBand{Min: boxes[i].at, LowC: c.low, HighC: c.high})
	}
	return out
}
