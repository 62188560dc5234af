package still

import (
	"fmt"
	"math"

	"newmake/compile/matter/exponential"
	"newmake/compile/matter/fluid"
	"newmake/lang/recipe"
)

// mark is where a fraction ends: at a pot that has fallen to u = ln x, or at
// an event, or neither (past nil, u minus infinity), when the run's own end is
// meant.
type mark struct {
	u    float64
	past event
}

var runsOut = mark{u: math.Inf(-1)}

// leastX is the mole fraction of the pot below which there is nothing left to
// distil (0.4 parts per million of ethanol by volume is far below any stop).
const leastX = 1e-7

// strengthMark is where the spout has fallen to mass fraction w.
func (b *boil) strengthMark(w, fromX float64) mark {
	y := fluid.MoleFrac(w)
	return mark{u: fallTo(fromX, func(x float64) float64 { return y - b.vapour(x) })}
}

// temperatureMark is where the vapour leaving the head has risen to tempC.
func (b *boil) temperatureMark(tempC, fromX float64) mark {
	return mark{u: fallTo(fromX, func(x float64) float64 { return b.at(x).vapourC - tempC })}
}

// fallTo gives the ln x at which a function that rises as x falls comes to
// zero, going down from fromX: plus infinity if it is there already, minus
// infinity if it never is. It is the Illinois method, and where that is slow,
// halving.
func fallTo(fromX float64, f func(x float64) float64) float64 {
	fHi := f(fromX)
	if fHi >= 0 {
		return math.Inf(1)
	}
	lo, hi := math.Log(leastX), math.Log(fromX) // not below zero at lo, below at hi
	if lo >= hi {
		return math.Inf(-1)
	}
	fLo := f(leastX)
	if !(fLo >= 0) {
		return math.Inf(-1)
	}
	side := 0
	for i := range 100 {
		mid := (fLo*hi - fHi*lo) / (fLo - fHi)
		if i%3 == 2 || !(mid > lo && mid < hi) {
			mid = (lo + hi) / 2
		}
		if mid <= lo || mid >= hi || fLo < 1e-15 || hi-lo < 1e-14 {
			break
		}
		if v := f(exponential.Exp(mid)); v >= 0 {
			lo, fLo = mid, v
			if side > 0 {
				fHi /= 2
			}
			side = 1
		} else {
			hi, fHi = mid, v
			if side < 0 {
				fLo /= 2
			}
			side = -1
		}
	}
	return lo
}

// mark turns a cut into a mark of this run.
func (r *runner) mark(c recipe.Cut) (mark, error) {
	switch c.By {
	case recipe.ByVolume:
		if !(c.VolumeM3 >= 0) {
			return mark{}, fmt.Errorf("a cut at %g L cannot be: it needs a volume from 0 up", 1000*c.VolumeM3)
		}
		return r.volumeMark(c.VolumeM3), nil
	case recipe.ByShare:
		if !(c.Share >= 0 && c.Share <= 1) {
			return mark{}, fmt.Errorf("a cut at %g %% of the alcohol cannot be: it needs 0 to 100 %%", 100*c.Share)
		}
		all := r.charge.EthanolKg
		return mark{u: math.Inf(-1), past: func(n node) float64 {
			ethanol, _ := r.p.overKg(n)
			return ethanol/all - c.Share
		}}, nil
	case recipe.ByTime:
		if !(c.TimeS >= 0) {
			return mark{}, fmt.Errorf("a cut at %g min cannot be: it needs a time from 0 up", c.TimeS/60)
		}
		return r.timeMark(c.TimeS), nil
	case recipe.ByVapourTemp:
		if math.IsNaN(c.TempC) {
			return mark{}, fmt.Errorf("the temperature of a cut is not a number")
		}
		return r.p.b.temperatureMark(c.TempC, r.x0), nil
	default:
		w, err := massFrac(c.Strength)
		if err != nil {
			return mark{}, fmt.Errorf("cut by strength: %w", err)
		}
		return r.p.b.strengthMark(w, r.x0), nil
	}
}

// volumeMark is where so much has been collected since the first drop: the
// receivers so far and the one that is filling.
func (r *runner) volumeMark(volumeM3 float64) mark {
	return mark{u: math.Inf(-1), past: func(n node) float64 {
		over := r.gaugedM3(n)
		if volumeM3 == 0 {
			return over
		}
		return over/volumeM3 - 1
	}}
}

// timeMark is where so long has gone by since the first drop.
func (r *runner) timeMark(timeS float64) mark {
	return mark{u: math.Inf(-1), past: func(n node) float64 {
		since := n.timeS - r.hot.heatUpS
		if timeS == 0 {
			return since
		}
		return since/timeS - 1
	}}
}

// passed tells whether a run that stands at n is at or beyond the mark.
func (m mark) passed(n node) bool {
	return n.u <= m.u || m.past != nil && m.past(n) >= 0
}

func errStrength(v float64) error {
	return fmt.Errorf("strength %g %% by weight is not possible: it must be from 0 to 100", 100*v)
}
