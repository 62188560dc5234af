package learn

import (
	"math"

	"newmake/compile/constants"
	"newmake/compile/estimate/leastsquares"
)

const (
	nearEnough = 0.1 // standard deviations of the result; the model's small kinks allow no less
	roughly    = 0.5 // the same of the first round
	nearby     = 1.0 // how far constants and causes may have gone, in prior standard deviations, for slopes to be kept
	slopesFor  = 6   // steps for which slopes are kept
	mostSteps  = 30
	patience   = 2
	goodEnough = 0.5  // standard deviations of the result that a search may lie off at its end
	mostRounds = 14   // of fits, between which scatter and gross errors are looked at anew
	trusting   = 4    // rounds in which a reading is called wrong only where the search has come to rest
	falseAlarm = 0.05 // chance of a gross error said where there is none, of all readings together
)

// Options of learning.
type Options struct {
	// Exact foretells each run by constants that are found anew without it, from the
	// beginning, and not by one step along the line: as many searches more as there are runs.
	Exact bool
	// Robust has readings count for less that are far from what all others say, once gross errors
	// were said.
	Robust bool
}

// From learns the constants of a house from runs, in the order of their days. known are
// the constants of its instruments, by the keys that the readings name.
func From(runs []Run, known []constants.Constant, o Options) (*Learned, error) {
	m, unused, err := newModel(runs, known)
	if err != nil {
		return nil, err
	}
	l := &Learned{Unused: unused, Robust: o.Robust}
	s, fit, err := m.solve(l, o)
	if err != nil {
		return nil, err
	}
	l.Effects = s.effects()
	l.Converged = fit.OffsetSD <= goodEnough && !l.Hopeless
	l.Readings = m.rows()
	fit.Slopes = s.slopesWeighed()
	post, err := fit.Posterior()
	if err != nil {
		return nil, err
	}
	l.Of = len(m.of)
	for _, v := range post.Eigenvalues {
		if v > 1 {
			l.Told++
		}
	}
	for j, c := range m.of {
		z, sd := fit.Values[j], post.SD[j]
		l.Found = append(l.Found, Found{
			Constant: c, Key: m.keys[j], Value: figure(c, z), Z: z, SD: sd,
			AtBound: fit.AtBound[j] != 0, Untold: post.Untold(j),
		})
	}
	l.profiled(m, fit, post)
	for _, p := range post.Confounded() {
		l.Together = append(l.Together, Pair(p))
	}
	l.Scatter = scattered(l.Effects)
	if l.Drifts, err = s.drifts(l.Drifts); err != nil {
		return nil, err
	}
	if o.Exact {
		l.Exact = true
		l.Predicted, err = s.foretoldAnew(runs, known, o)
	} else {
		l.Predicted, err = s.predicted()
	}
	return l, err
}

// solve is settle, and the readings weighed where that is asked for.
func (m *model) solve(l *Learned, o Options) (*solution, *leastsquares.Fit, error) {
	s, fit, err := m.settle(l)
	if err != nil || !o.Robust {
		return s, fit, err
	}
	return m.robust(s, fit, l)
}

// settle searches for the constants of all runs, and for the readings that none explain, until
// both stand. What it finds on the way is put into l.
func (m *model) settle(l *Learned) (s *solution, fit *leastsquares.Fit, err error) {
	again, done := false, false
	var start []float64
	moved := math.Inf(1)
	for round := range mostRounds {
		o := leastsquares.Options{Tolerance: nearEnough, SlopesFor: slopesFor, Most: mostSteps, Patience: patience, Start: start}
		switch {
		case round == 0:
			o.Tolerance = roughly
		case fit.OffsetSD <= goodEnough && moved <= nearby:
			// Slopes of another place, and those that have led astray, are formed anew.
			o.Slopes = s.slopesWeighed()
		}
		if fit, err = m.problem().Fit(o); err != nil {
			return nil, nil, err
		}
		l.Evals += fit.Evals
		s = solved(m, fit)
		l.Effects = s.effects()
		before := moved
		if start, moved, err = m.look(s.z, l.Effects); err != nil {
			return nil, nil, err
		}
		if err := s.alike(); err != nil {
			return nil, nil, err
		}
		// A reading is wrong only for constants that are as good as they will be.
		rest := moved < atRest && fit.OffsetSD <= goodEnough
		if round == 0 || !rest && moved > 0 && round < trusting {
			continue
		}
		gross, drifts, err := s.gross()
		if err != nil {
			return nil, nil, err
		}
		l.Drifts = drifts
		if l.Gross = append(l.Gross, gross...); len(gross) > 0 {
			m.least = math.Inf(1) // of other readings
		}
		switch {
		case len(gross) > 0 && !s.hopeless():
		case moved == 0 && before == 0 && !rest:
			done = true // it is as good as it will be, and is said not to be good
		case !rest && s.hopeless():
			// Most of what was read can't be: more of the search makes nothing of it.
			l.Hopeless, done = true, true
		case !rest:
		case len(l.Gross) > 0 && !again:
			// What seemed wrong from where the search began may be right from here.
			again = true
			found, drifts, err := s.grossAnew(l.Gross)
			if err != nil {
				return nil, nil, err
			}
			done = sameReadings(found, l.Gross)
			l.Drifts = drifts
			if l.Gross = found; !done {
				moved, m.least = math.Inf(1), math.Inf(1)
			}
		default:
			done = true
		}
		if done {
			break
		}
	}
	return s, fit, nil
}
