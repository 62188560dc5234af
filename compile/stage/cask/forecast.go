package cask

import (
	"fmt"
	"math"

	"newmake/compile/matter/fluid"
	"newmake/lang/quantity"
)

const (
	referenceC = 20.0
	// YearS is the mean year of 365.25 days.
	YearS = quantity.YearS
	// mostYears is the longest rest that is forecast.
	mostYears = 100
	// LeastFill is the share of a cask from which on it is filled all the same:
	// an air space of a bucket or less does it no harm that the first year's
	// loss would not do (common practice; no source prints a limit).
	LeastFill = 0.97
)

// fill counts the casks that the spirit fills and what is left over. It is
// Forecast without the years.
func fill(in Input) (Result, error) {
	m := in.SpiritEthanolKg + in.SpiritWaterKg
	switch {
	case !(in.SpiritEthanolKg >= 0 && in.SpiritWaterKg >= 0 && m > 0) || math.IsInf(m, 1):
		return Result{}, fmt.Errorf("there is no spirit to fill casks with")
	case !(in.SizeM3 > 0) || math.IsInf(in.SizeM3, 1):
		return Result{}, fmt.Errorf("a cask of %g L cannot be filled", 1000*in.SizeM3)
	}
	w := in.SpiritEthanolKg / m
	volume := m / fluid.Density(w, referenceC)
	// A billionth of a cask is not what keeps the last one from being full.
	full := math.Floor(volume/in.SizeM3 + 1e-9)
	if full > 1e6 {
		return Result{}, fmt.Errorf("%.0f L would fill %.0f casks of %g L: is the size right?", 1000*volume, full, 1000*in.SizeM3)
	}
	r := Result{
		Casks: int(full), LeftoverM3: math.Max(0, volume-full*in.SizeM3),
	}
	switch {
	case r.LeftoverM3 >= LeastFill*in.SizeM3:
		r.Casks, r.LastM3, r.LeftoverM3 = r.Casks+1, r.LeftoverM3, 0
		r.Problems = append(r.Problems, ProblemShort)
	case r.Casks == 0:
		r.Problems = append(r.Problems, ProblemNotOneCask)
	}
	return r, nil
}

// filled is the casks as a number of full ones.
func (r *Result) filled(sizeM3 float64) float64 {
	if r.LastM3 == 0 {
		return float64(r.Casks)
	}
	return float64(r.Casks-1) + r.LastM3/sizeM3
}

// Forecast fills casks and lets them rest: what one of them holds year by
// year, and the bottles that all of them give. See the package's doc for the
// model.
func Forecast(in Input) (Result, error) {
	r, err := fill(in)
	if err != nil {
		return Result{}, err
	}
	if !(in.RestS >= 0 && in.RestS <= mostYears*YearS) {
		return Result{}, fmt.Errorf("a rest of %g years cannot be forecast: 0 to %d years", in.RestS/YearS, mostYears)
	}
	if in.BottleM3 < 0 || !(in.BottleABV >= 0 && in.BottleABV <= 1) {
		return Result{}, fmt.Errorf("bottles of %g L at %g %% vol cannot be filled", 1000*in.BottleM3, 100*in.BottleABV)
	}
	k, err := readConstants(in.Model)
	if err != nil {
		return Result{}, err
	}
	filled := r.filled(in.SizeM3)
	if r.Casks == 1 && r.LastM3 > 0 { // the one cask that there is
		in.SizeM3, filled = r.LastM3, 1
	}
	c, err := newCask(in, k)
	if err != nil {
		return Result{}, err
	}
	if c.clipped {
		r.Problems = append(r.Problems, ProblemClimate)
	}
	r.LossYearly, r.ProofPerYear = c.yearly()
	if r.Years = c.rest(in.RestS); c.dry {
		r.Problems = append(r.Problems, ProblemDry)
	}
	bottle(&r, in, filled)
	return r, nil
}

// mostMonths is the longest rest that is followed month by month; a longer one is by the
// half year.
const mostMonths = 240

// Monthly is the forecast of the same cask month by month from its fill, to the end of its
// rest or to where it runs dry. It is empty where there is no cask.
func Monthly(in Input, r Result) []Year {
	if r.Casks == 0 || len(r.Years) == 0 {
		return nil
	}
	in.SpiritEthanolKg, in.SpiritWaterKg = r.Years[0].EthanolKg, r.Years[0].WaterKg
	if r.Casks == 1 && r.LastM3 > 0 { // as Forecast has it
		in.SizeM3 = r.LastM3
	}
	wood, err := NewWood(in)
	if err != nil {
		return nil
	}
	one, end, every := wood.Course(1), r.Years[len(r.Years)-1].AgeYears, 1
	if end*12 > mostMonths {
		every = sampleMonths
	}
	out := []Year{one.Now()}
	for n := every; ; n += every {
		age := float64(n) / 12
		if age > end-1e-9 {
			age = end
		}
		if age > 0 && one.To(age) {
			out = append(out, one.Now())
		}
		if age == end {
			return out
		}
	}
}

// bottle reduces what all casks hold at the end and counts whole bottles.
func bottle(r *Result, in Input, casks float64) {
	last := r.Years[len(r.Years)-1]
	r.BottledABV = in.BottleABV
	if last.ABV < in.BottleABV || in.BottleABV == 0 {
		r.BottledABV = last.ABV
		if in.BottleABV > 0 {
			r.Problems = append(r.Problems, ProblemWeak)
		}
	}
	if r.BottledABV > 0 {
		pure := last.EthanolKg / fluid.Density(1, referenceC)
		r.BottledM3 = casks * pure / r.BottledABV
		if w, err := fluid.MassFracFromABV(r.BottledABV); err == nil {
			r.BottledM3 *= fluid.Density(w, referenceC) / fluid.Density(w, in.BottleC)
		}
	}
	if in.BottleM3 > 0 {
		r.Bottles = int(math.Floor(r.BottledM3/in.BottleM3 + 1e-9))
	}
}
