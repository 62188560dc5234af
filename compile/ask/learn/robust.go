package learn

import (
	"cmp"
	"math"
	"slices"

	"gonum.org/v1/gonum/mat"

	"newmake/compile/estimate/leastsquares"
	"newmake/lang/sorting"
)

// huber is from how many standard deviations on a reading counts for less: P. J. Huber, Annals of
// Mathematical Statistics 35 (1964) 73. With this figure 95 parts in 100 of what the readings
// tell are kept where all of them are right (Holland and Welsch, Communications in Statistics A6
// (1977) 813; both papers from memory).
const huber = 1.345

// weight is by how much a reading counts that is so many standard deviations off.
func weight(z float64) float64 { return min(1, huber/math.Abs(z)) }

// Eased is a reading that counts for less, being far from what all others say.
type Eased struct {
	Run, Reading int
	Weight       float64 // 0..1
}

const (
	mostEasings = 30
	easedEnough = 0.01 // of a standard deviation by which no reading's changes any more
)

// robust weighs the readings by how far they are off, and finds the constants again, in turns.
// It is for a solution whose gross errors were said: those are left out, and not weighed.
func (m *model) robust(s *solution, fit *leastsquares.Fit, l *Learned) (*solution, *leastsquares.Fit, error) {
	for range mostEasings {
		moved, err := s.ease()
		if err != nil {
			return nil, nil, err
		}
		o := leastsquares.Options{Tolerance: nearEnough, SlopesFor: slopesFor, Most: mostSteps, Patience: patience, Start: s.z, Slopes: s.slopesWeighed()}
		if fit, err = m.problem().Fit(o); err != nil {
			return nil, nil, err
		}
		l.Evals += fit.Evals
		if s = solved(m, fit); moved < easedEnough {
			break
		}
	}
	l.Eased = nil
	for k, r := range m.runs {
		for _, i := range r.use() {
			if r.loose[i] > 1 {
				l.Eased = append(l.Eased, Eased{k, i, 1 / (r.loose[i] * r.loose[i])})
			}
		}
	}
	sorting.Stable(l.Eased, func(a, b Eased) int { return cmp.Compare(a.Weight, b.Weight) })
	return s, fit, nil
}

// ease gives each reading its weight, as a standard deviation that is so much wider. How far it is
// off is told beside what the other readings of its run say of what scatters, for those err
// together. moved is by how much the widest changed.
func (s *solution) ease() (moved float64, err error) {
	for k, r := range s.m.runs {
		use := r.use()
		if len(use) == 0 {
			continue
		}
		root, err := r.covariance(nil)
		if err != nil {
			return 0, err
		}
		var inverse mat.SymDense
		if err := root.InverseTo(&inverse); err != nil {
			return 0, err
		}
		off := mat.NewVecDense(len(use), nil)
		for a, i := range use {
			off.SetVec(a, s.off[k][i])
		}
		var pull mat.VecDense
		pull.MulVec(&inverse, off)
		if r.loose == nil {
			r.loose = slices.Repeat([]float64{1}, len(r.Readings))
		}
		next := slices.Clone(r.loose)
		for a, i := range use {
			alone := 1 / inverse.At(a, a) // the variance of the reading, the others known
			beside := alone * pull.AtVec(a)
			next[i] = 1 / math.Sqrt(weight(beside/math.Sqrt(alone-r.eased(i))))
			moved = max(moved, math.Abs(next[i]-r.loose[i]))
		}
		r.loose = next
	}
	return moved, s.m.weigh()
}

// eased is the variance that a reading has more for counting less.
func (r *run) eased(i int) float64 {
	if r.loose == nil {
		return 0
	}
	return (r.loose[i]*r.loose[i] - 1) * r.sure(i) * r.sure(i)
}
