package still

import (
	"fmt"
	"math"

	"newmake/compile/matter/stream"
)

const (
	steadyTolerance = 1e-9
	mostIterations  = 60
	// mostFeints is the greatest mass of feints, in low wines, that is taken
	// for a house's work. Beyond there are steady runs in figures alone: a
	// flood of strong feints that leaves with what is still in the pot.
	mostFeints = 10
)

// Steady is the spirit run of a house at work: its charge holds the feints of
// the run before it, which was the same run. Foreshots are set aside and do
// not return. in.Feints is the first guess; it may be empty.
//
// Feints of f kg of ethanol and water give a run with feints of G(f); the
// steady run has f = G(f), to 1e-9 of the charge. The first step is the house's
// own, from one batch to the next; from then on Broyden's method (Math. Comp. 19 (1965) 577)
// learns how feints answer to feints. It returns the number of runs tried.
//
// When nothing steady is found, the house's first batch comes with
// ProblemNotSteady. As a rule the hearts are cut too narrow by strength: feints
// make the charge stronger, a stronger charge gives more heads, and every
// batch adds to the feints.
//
// Whether the grown charge still fits the still is for the caller to see, in
// Run.MostFill.
func Steady(in SpiritInput) (run Run, iterations int, err error) {
	b := in.boil()
	scale := in.LowWines.EthanolKg + in.LowWines.WaterKg
	if !(scale > 0) {
		return Run{}, 0, fmt.Errorf("there are no low wines to charge the spirit still with")
	}
	guess := vec{in.Feints.EthanolKg, in.Feints.WaterKg}
	var lastGuess, lastGap vec
	j := matrix{{1, 0}, {0, 1}} // inverse of minus the slope of the gap
	for iterations = 1; iterations <= mostIterations; iterations++ {
		var back vec
		back, err = feints(in.with(guess), b)
		if err != nil && iterations == 1 {
			return Run{}, iterations, err
		}
		if err != nil || guess[0]+guess[1] > mostFeints*scale {
			break // feints so strong or so many that no still takes them
		}
		gap := back.minus(guess)
		if math.Hypot(gap[0], gap[1]) <= steadyTolerance*(scale+guess[0]+guess[1]) {
			run, err = spiritRun(in.with(guess), b, true)
			return run, iterations, err
		}
		if iterations > 1 {
			j = j.broyden(guess.minus(lastGuess), gap.minus(lastGap))
		}
		next := guess.plus(j.times(gap))
		if !(next[0] >= 0 && next[1] >= 0) || next[0]+next[1] > mostFeints*scale {
			next = guess.plus(gap) // the house's own step
			j = matrix{{1, 0}, {0, 1}}
		}
		lastGuess, lastGap, guess = guess, gap, next
	}
	run, err = spiritRun(in.with(vec{}), b, true)
	run.Problems = append(run.Problems, ProblemNotSteady)
	return run, min(iterations, mostIterations), err
}

// with is the input with other feints, at the temperature of the distillate.
func (in SpiritInput) with(feints vec) SpiritInput {
	t := in.Feints.TempC
	if in.Feints.EthanolKg+in.Feints.WaterKg <= 0 {
		t = in.LowWines.TempC
	}
	in.Feints = stream.Stream{EthanolKg: feints[0], WaterKg: feints[1], TempC: t}
	return in
}

// vec is ethanol and water, in kg.
type vec [2]float64

func (a vec) plus(b vec) vec      { return vec{a[0] + b[0], a[1] + b[1]} }
func (a vec) minus(b vec) vec     { return vec{a[0] - b[0], a[1] - b[1]} }
func (a vec) dot(b vec) float64   { return a[0]*b[0] + a[1]*b[1] }
func (a vec) scale(f float64) vec { return vec{a[0] * f, a[1] * f} }

type matrix [2]vec

func (m matrix) times(v vec) vec { return vec{m[0].dot(v), m[1].dot(v)} }

// broyden learns from a step dx that changed the gap by dg: the good update of
// the inverse, for which m dg should have been -dx.
func (m matrix) broyden(dx, dg vec) matrix {
	mdg := m.times(dg)
	below := -dx.dot(mdg)
	if math.Abs(below) < 1e-300 {
		return m
	}
	left := dx.plus(mdg).scale(1 / below)
	// row vector dx' m
	right := vec{dx[0]*m[0][0] + dx[1]*m[1][0], dx[0]*m[0][1] + dx[1]*m[1][1]}
	return matrix{m[0].plus(right.scale(left[0])), m[1].plus(right.scale(left[1]))}
}
