package still

import (
	"math"

	"newmake/lang/recipe"
)

// drive is how a still is driven through one fraction: with the heat that gives a
// flow at the spout, or with a heat.
type drive struct {
	flowM3S float64 // at 20 C; 0: with all of heatW
	heatW   float64 // 0: all that the still has
}

// drive sets the pot to fraction k. The slopes where it begins are those of the
// new heat.
func (r *runner) drive(k int) {
	if k >= len(r.drives) || r.x0 <= leastX {
		return
	}
	d, all := r.drives[k], r.set.heatW()
	r.p.flowM3S, r.p.heatW = d.flowM3S, all
	if d.heatW > 0 {
		r.p.heatW = min(all, d.heatW)
	}
	r.now.d = r.p.slope(r.now.u, r.now.level)
}

// heatFor is the heat in W that brings over so much at the spout as is held, with
// D its moles: the balances of slope solved for the heat P,
//
//	P (1 + k (hs - h) + W k/n) = loss + (H - h) D - W (y-x) D/(x n)
//
// with k the steam's condensate in mol/J and W what warms pot and metal as u rises.
func (p *pot) heatFor(st state, l level, warming, molS float64) float64 {
	needs := p.lossW + (st.overH-st.potH)*molS - warming*st.equilibriumGap*molS/(st.x*l.pot)
	return needs / (1 + p.steam*(p.steamH-st.potH+warming/l.pot))
}

// headsLeastS is how long heads take at least whose pace is that of the hearts:
// fewer minutes nobody can cut by (from memory). Yet they come no slower than the
// foreshots did.
const headsLeastS = 5 * 60.0

// Rounds in which paces that are times are turned into flows. With a jacket what
// comes over does not hang on the heat, and one is enough; with live steam the
// longer run condenses more.
const paceRounds = 4

// The rounds where a cut is made by the clock, at most, and how near two flows are to be.
const (
	timedRounds    = 60
	timedTolerance = 1e-10
)

// drives finds how each fraction is driven. A time is a flow once it is known how
// much comes, and so the run is made before without a pace.
func (in SpiritInput) drives(b *boil) ([]drive, error) {
	all := [...]recipe.FractionPace{in.Pace.Foreshots, in.Pace.Heads, in.Pace.Hearts, in.Pace.Tails}
	if all == [4]recipe.FractionPace{} {
		return nil, nil
	}
	if in.HeartsFrom.By == recipe.ByTime { // how long it takes says nothing of how much it is
		all[1].OverS = 0
	}
	if in.HeartsTo.By == recipe.ByTime {
		all[2].OverS = 0
	}
	whole, first := in, true
	return in.driven(all[:], in.byTime(), func(drives []drive) ([]Fraction, error) {
		in := whole
		if first && in.HeartsFrom.By == recipe.ByTime { // at full heat it would fall anywhere
			in.HeartsFrom = recipe.Cut{By: recipe.ByVolume, VolumeM3: in.ForeshotsM3}
		}
		first = false
		r, err := cutSpirit(in, b, func(r *runner) { r.bare, r.drives = true, drives })
		if err != nil {
			return nil, err
		}
		return r.fractions, nil
	})
}

// driven turns the paces of a run's fractions into how each is driven. cut is the
// run that is driven so. Where a cut is made by the clock the flows set how much there is
// of each fraction, and how much there is the flows: the secant of two rounds, each flow
// for itself, comes to both.
func (s Setting) driven(paces []recipe.FractionPace, byTime bool, cut func([]drive) ([]Fraction, error)) ([]drive, error) {
	out := make([]drive, len(paces))
	for i, p := range paces {
		out[i] = drive{flowM3S: p.FlowM3S, heatW: p.PowerW}
	}
	rounds := 1
	if s.Still.HeatedBy == recipe.Direct {
		rounds = paceRounds
	}
	if byTime {
		rounds = timedRounds
	}
	var last, lastGap []float64 // of the flows, and how far off they were
	for round := range rounds {
		fractions, err := cut(out)
		if err != nil {
			return nil, err
		}
		volumeM3 := func(i int) float64 { return spiritM3(fractions[i].EthanolKg, fractions[i].WaterKg, referenceC) }
		next := append([]drive{}, out...)
		for i, p := range paces {
			if p.OverS > 0 {
				next[i].flowM3S = volumeM3(i) / p.OverS
			}
		}
		for i, p := range paces {
			if p != (recipe.FractionPace{}) || i == 0 || i+1 >= len(paces) {
				continue
			}
			next[i] = next[i+1] // heads come as the hearts do
			if least := next[i-1].flowM3S; least > 0 && !byTime {
				next[i].flowM3S = min(next[i].flowM3S, max(least, volumeM3(i)/headsLeastS))
			}
		}
		settled := byTime && round > 0
		if settled {
			flows, gaps := make([]float64, len(out)), make([]float64, len(out))
			for i := range next {
				flows[i], gaps[i] = out[i].flowM3S, next[i].flowM3S-out[i].flowM3S
				settled = settled && math.Abs(gaps[i]) <= timedTolerance*next[i].flowM3S
				step := gaps[i] / 2 // the mean of the two, until there is a slope
				if last != nil {
					step = secant(flows[i]-last[i], gaps[i]-lastGap[i], gaps[i])
				}
				next[i].flowM3S = out[i].flowM3S + step
			}
			last, lastGap = flows, gaps
		}
		out = next
		if settled {
			break
		}
	}
	return out, nil
}

// secant is the step that closes a gap which changed by dGap when the flow changed by
// dFlow. It is half the gap where the two say nothing, or would go against it or beyond.
func secant(dFlow, dGap, gap float64) float64 {
	step := -gap * dFlow / dGap
	if within := step / gap; within > 0 && within <= 1 {
		return step
	}
	return gap / 2
}

// asked notes the time that each fraction's pace asks for.
func (in SpiritInput) asked(run *Run) {
	asked(run, in.Pace.Foreshots, in.Pace.Heads, in.Pace.Hearts, in.Pace.Tails)
}

func asked(run *Run, paces ...recipe.FractionPace) {
	for i, p := range paces {
		f := &run.Fractions[i]
		switch {
		case f.VolumeM3 <= 0:
		case p.OverS > 0:
			f.AskedS = p.OverS
		case p.FlowM3S > 0:
			f.AskedS = f.VolumeM3 / p.FlowM3S
		}
	}
}
