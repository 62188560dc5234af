package learn

import (
	"newmake/compile/constants"
	"newmake/compile/estimate/leastsquares"
)

const (
	nearEnough = 0.1 // standard deviations of the result; the model's small kinks allow no less
	roughly    = 0.5 // the same of the first round
	slopesFor  = 6   // steps for which slopes are kept
	mostSteps  = 30
	patience   = 2
	goodEnough = 0.5  // standard deviations of the result that a search may lie off at its end
	mostRounds = 6    // of fits, between which scatter and gross errors are looked at anew
	falseAlarm = 0.05 // chance of a gross error said where there is none, of all readings together
)

// From learns the constants of a house from runs, in the order of their days. known are
// the constants of its instruments, by the keys that the readings name.
func From(runs []Run, known []constants.Constant) (*Learned, error) {
	m, unused, err := newModel(runs, known)
	if err != nil {
		return nil, err
	}
	l := &Learned{Unused: unused}
	var fit *leastsquares.Fit
	var s *solution
	for round := range mostRounds {
		o := leastsquares.Options{Tolerance: nearEnough, SlopesFor: slopesFor, Most: mostSteps, Patience: patience}
		switch {
		case round == 0:
			o.Tolerance = roughly
		case round == 1:
			o.Start = fit.Values
		default:
			// Slopes that have led astray are formed anew.
			if o.Start = s.z; fit.OffsetSD <= goodEnough {
				o.Slopes = s.slopesWeighed()
			}
		}
		if fit, err = m.problem().Fit(o); err != nil {
			return nil, err
		}
		l.Evals += fit.Evals
		s = solved(m, fit)
		var gross []Gross
		if round > 0 {
			if gross, err = s.gross(); err != nil {
				return nil, err
			}
			l.Gross = append(l.Gross, gross...)
		}
		l.Effects = s.effects()
		moved, err := m.look(s.z, l.Effects)
		if err != nil {
			return nil, err
		}
		if moved < atRest && len(gross) == 0 && round > 0 && fit.OffsetSD <= goodEnough {
			break
		}
	}
	l.Converged = fit.OffsetSD <= goodEnough
	l.Readings = m.rows()
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
			Low: figure(c, z-constants.NineInTen*sd), High: figure(c, z+constants.NineInTen*sd),
			AtBound: fit.AtBound[j] != 0, Untold: post.Untold(j),
		})
	}
	for _, p := range post.Confounded() {
		l.Together = append(l.Together, Pair(p))
	}
	l.Scatter = scattered(l.Effects)
	if l.Drifts, err = s.drifts(); err != nil {
		return nil, err
	}
	l.Predicted, err = s.predicted()
	return l, err
}
