package season

import (
	"math"
	"slices"

	"newmake/compile/constants"
	"newmake/compile/numbers"
	"newmake/lang/parallel"
)

// odds draws what is not known for certain so many times, and computes the season's runs
// as they are planned: what belongs to the house once in each draw, what scatters from run
// to run for each run anew. The clock stays the plan's.
func (s *answer) odds(draws int) *Odds {
	ways := s.ways()
	type drawn struct {
		of   []constants.Constant
		runs constants.Draws
	}
	of := map[string]*drawn{}
	n := len(ways)
	for _, w := range ways {
		if of[w.batch.Name] == nil {
			all := constants.Drawable(constants.Of(w.batch))
			of[w.batch.Name] = &drawn{all, constants.Drawn(all, draws*(n+1), w.batch.Learned)}
		}
	}
	made := make([][]int, draws) // of each demand
	casks := make([]int, draws)
	pure := make([]float64, draws)
	parallel.Each(draws, func(d int) {
		mine := slices.Clone(ways)
		for i := range mine {
			k := of[mine[i].batch.Name]
			x := slices.Clone(k.runs.X[d*(n+1)])
			for c, constant := range k.of {
				if constant.Owner == constants.Run {
					x[c] = k.runs.X[d*(n+1)+1+i][c]
				}
			}
			mine[i].batch = constants.Set(mine[i].batch, k.of, x)
		}
		f := flow(mine, s.today(), s.steady, numbers.Keeping(n+1), s.axis, s.Plant)
		with := *s.solution
		with.flows = f
		t := &answer{solution: &with, order: s.order, number: s.number}
		for i := range f.runs {
			if f.runs[i].err == nil {
				if s.filledBy(s.order[i], s.lastMinute()) {
					casks[d] += f.runs[i].casks
				}
				pure[d] += f.runs[i].n.Distilled.Hearts.PureAlcoholM3() * 1000
			}
		}
		for _, x := range t.demanded() {
			made[d] = append(made[d], x.Made)
		}
	})
	o := &Odds{Draws: draws, Demands: []DemandOdds{}, Casks: []CaskOdds{}, PureL: between(pure, 1)}
	all := 0
	for k, d := range s.out.Demands {
		var of []float64
		met := 0
		for i := range draws {
			of = append(of, float64(made[i][k]))
			if made[i][k] >= d.Amount {
				met++
			}
		}
		o.Demands = append(o.Demands, DemandOdds{Batch: d.Batch, Share: to(float64(met)/float64(draws), 3), Made: between(of, 0)})
	}
	for i := range draws {
		met := true
		for k, d := range s.out.Demands {
			met = met && made[i][k] >= d.Amount
		}
		if met {
			all++
		}
	}
	o.AllMet = to(float64(all)/float64(draws), 3)
	for c := 1; c <= slices.Max(casks); c++ {
		n := 0
		for _, x := range casks {
			if x >= c {
				n++
			}
		}
		o.Casks = append(o.Casks, CaskOdds{c, to(float64(n)/float64(draws), 3)})
	}
	return o
}

// between is where 9 of 10 lie, and the middle.
func between(of []float64, places int) Between {
	of = slices.Clone(of)
	slices.Sort(of)
	at := func(share float64) float64 {
		return to(of[int(math.Round(share*float64(len(of)-1)))], places)
	}
	return Between{at(0.05), at(0.5), at(0.95)}
}
