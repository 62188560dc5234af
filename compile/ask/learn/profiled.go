package learn

import (
	"math"

	"newmake/compile/constants"
	"newmake/compile/estimate/leastsquares"
	"newmake/lang/parallel"
)

// uneven is from where on the two intervals differ: an end of one lies by a quarter of the way
// to the value from that of the other (own rule).
const uneven = 0.25

// profiled gives each constant its interval by the profile of the likelihood, where the curvature
// at the most probable figure says too little: a share that may be nothing and may be three
// hundredths has a long way down, and a short one up. Of what the readings do not tell, the prior's
// word stands. A constant that something scatters about from run to run (the rate of the yeast, by
// its vigor) keeps its curvature: what scatters is weighed in a straight line, and far from here
// the two would part.
func (l *Learned) profiled(m *model, fit *leastsquares.Fit, post *leastsquares.Posterior) {
	scatters := map[string]bool{}
	for _, r := range m.runs {
		for _, c := range r.of {
			scatters[c.As] = true
		}
	}
	parallel.Each(len(l.Found), func(j int) {
		f := &l.Found[j]
		reach := constants.NineInTen * f.SD
		low, high := f.Z-reach, f.Z+reach
		f.ByCurve = [2]float64{figure(f.Constant, low), figure(f.Constant, high)}
		if !f.Untold && !scatters[f.Key] {
			// Where the model cannot be computed at an end, the curvature is all there is.
			if a, b, err := fit.Profile(post, j, constants.NineInTen*constants.NineInTen); err == nil {
				f.Uneven = math.Abs(a-low) > uneven*reach || math.Abs(b-high) > uneven*reach
				low, high = a, b
			}
		}
		f.Low, f.High = figure(f.Constant, low), figure(f.Constant, high)
		f.ends = [2]float64{low, high}
	})
}
