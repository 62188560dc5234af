package still

import (
	"math"

	"newmake/compile/matter/fluid"
)

// Points of the curve stand a hundredth of the run apart, but not less than a
// minute; each cut has its own.
const (
	curveLeastS = 60.0
	curveShare  = 0.01
)

// curve reads the run's steps at even times. Between two steps, u and the
// pot's content follow the cubic that has their values and slopes.
func (r *runner) curve() []Point {
	if len(r.path) < 2 {
		return nil
	}
	from, to := r.path[0].timeS, r.now.timeS
	every := max(curveLeastS, curveShare*(to-from))
	points := make([]Point, 0, int((to-from)/every)+len(r.fractions)+2)
	r.filled, r.startE, r.startW = 0, 0, 0
	i := 1
	for k, f := range r.fractions {
		if f.EndS <= f.StartS {
			continue
		}
		r.drive(k)
		for t := f.StartS; t == f.StartS || t < f.EndS-every/4; {
			for i < len(r.path)-1 && r.path[i].timeS <= t {
				i++
			}
			points = append(points, r.point(between(r.path[i-1], r.path[i], t), f.Name))
			next := from + every*(math.Floor((t-from)/every+1e-9)+1)
			if next-t < every/4 {
				next += every
			}
			t = next
		}
		r.filled += f.VolumeM3
		r.startE += f.EthanolKg
		r.startW += f.WaterKg
	}
	last := r.now
	p := r.point(last, points[len(points)-1].Fraction)
	p.OverM3 = r.filled
	return append(points, p)
}

// between is a node at time t between two neighbours.
func between(a, b node, timeS float64) node {
	h := b.timeS - a.timeS
	s := (timeS - a.timeS) / h
	cubic := func(va, vb, da, db float64) float64 {
		return va*(1+2*s)*(1-s)*(1-s) + vb*s*s*(3-2*s) + h*s*(1-s)*(da*(1-s)-db*s)
	}
	n := node{u: cubic(a.u, b.u, 1/a.d.timeS, 1/b.d.timeS)}
	n.pot = cubic(a.pot, b.pot, a.d.pot/a.d.timeS, b.d.pot/b.d.timeS)
	n.heatJ = cubic(a.heatJ, b.heatJ, a.d.heatJ/a.d.timeS, b.d.heatJ/b.d.timeS)
	n.timeS = timeS
	return n
}

func (r *runner) point(n node, fraction string) Point {
	x := n.x()
	st := r.p.b.at(x)
	w := fluid.MassFrac(st.y)
	rho := fluid.Density(w, 20)
	d := r.p.slopeOf(st, n.level)
	overMolS := (r.p.steam*d.heatJ - d.pot) / d.timeS
	return Point{
		TimeS: n.timeS, PotC: st.potC, VapourC: st.vapourC,
		ABV: fluid.ABVFromMassFrac(w), MassFrac: w, PotABV: fluid.ABVFromMassFrac(fluid.MassFrac(x)),
		OverM3:  r.overM3(n),
		RateM3S: overMolS * fluid.MolarMass(st.y) / rho, Fraction: fraction,
	}
}
