package search

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// TestOutside: what lies in no window is counted to the unit.
func TestOutside(t *testing.T) {
	calendar := []Window{{10, 20}, {20, 25}, {30, 40}}
	for _, c := range []struct{ from, to, want int }{
		{10, 25, 0}, {9, 20, 1}, {10, 26, 1}, {25, 30, 5}, {24, 31, 5}, {0, 50, 25}, {40, 45, 5}, {39, 41, 1}, {12, 12, 0},
	} {
		assert.Equal(t, c.want, outside(calendar, c.from, c.to), "%d to %d", c.from, c.to)
	}
}

// TestFed: a source serves from the moment at which it is there, for as long as it keeps,
// and only if its job is done.
func TestFed(t *testing.T) {
	p := &Problem{Sources: []Source{{0, 5}}}
	there := func(int) bool { return true }
	start := []int{10}
	assert.False(t, p.fed(14, 7, there, start), "not there yet")
	assert.True(t, p.fed(15, 7, there, start))
	assert.True(t, p.fed(22, 7, there, start))
	assert.False(t, p.fed(23, 7, there, start), "it keeps no longer")
	assert.False(t, p.fed(15, 7, func(int) bool { return false }, start), "its job is left out")
	p.Sources = []Source{{-1, 3}}
	assert.True(t, p.fed(3, 0, there, start))
	assert.False(t, p.fed(2, 0, there, start))
}

// TestOutsideAndUnfedAgainstAll: of small random problems with these costs what Exact
// proves is the best of all schedules that there are, and Improve gives none that is better.
func TestOutsideAndUnfedAgainstAll(t *testing.T) {
	found := 0
	const all = 40
	for seed := range uint64(all) {
		r := &random{state: seed*97 + 3}
		p := &Problem{Horizon: 13, Resources: []Resource{{[]Step{{0, 1 + r.below(2)}}}}, Calendars: [][]Window{{{2, 5}, {8, 11}}}}
		if r.below(3) == 0 {
			p.Sources = append(p.Sources, Source{-1, r.below(4)})
		}
		for j := range 3 {
			d := 1 + r.below(3)
			p.Activities = append(p.Activities, Activity{Duration: d, Uses: []Use{{Named(0), 0, d, 1}}})
			p.Jobs = append(p.Jobs, Job{Activities: []int{j}})
			p.Costs = append(p.Costs, Cost{Kind: Outside, Level: r.below(2), Weight: 1, A: j, To: d}, Cost{Kind: Unfed, Level: r.below(2), Weight: 1 + int64(r.below(3)), A: j, At: r.below(4)},
				Cost{Kind: Start, Level: 2, Weight: int64(1 + j), A: j})
			if r.below(3) > 0 {
				p.Sources = append(p.Sources, Source{j, d})
			}
		}
		require.NoError(t, p.Valid())
		var best *Vector
		s := &Placed{Present: []bool{true, true, true}, Start: make([]int, 3)}
		for s.Start[0] = range p.Horizon {
			for s.Start[1] = range p.Horizon {
				for s.Start[2] = range p.Horizon {
					if v, ok := costs(p, s); ok && (best == nil || v.Less(*best)) {
						best = &v
					}
				}
			}
		}
		require.NotNil(t, best)
		proof := Exact(p, nil, 1_000_000)
		require.True(t, proof.Proved, "instance %d", seed)
		require.NoError(t, Check(p, proof.Best), "instance %d", seed)
		assert.Equal(t, *best, proof.Best.Cost, "instance %d", seed)
		better, ok := Improve(p, nil, 100)
		require.True(t, ok)
		require.NoError(t, Check(p, better), "instance %d", seed)
		assert.False(t, better.Cost.Less(*best), "instance %d", seed)
		if better.Cost == *best {
			found++
		}
	}
	t.Logf("the search found the best of %d of %d", found, all)
	assert.Greater(t, found, all/2)
}

// costs counts anew what a schedule of such a problem comes to; false where it breaks a rule.
func costs(p *Problem, s *Placed) (v Vector, ok bool) {
	for at := range p.Horizon {
		n := 0
		for j, t := range s.Start {
			if t+p.Activities[j].Duration > p.Horizon {
				return v, false
			}
			if t <= at && at < t+p.Activities[j].Duration {
				n++
			}
		}
		if n > p.Resources[0].Capacity[0].Amount {
			return v, false
		}
	}
	for _, c := range p.Costs {
		t := s.Start[c.A]
		switch c.Kind {
		case Start:
			v[c.Level] += c.Weight * int64(t)
		case Outside:
			for at := t; at < t+c.To; at++ {
				if at < 2 || at >= 5 && at < 8 || at >= 11 {
					v[c.Level] += c.Weight
				}
			}
		case Unfed:
			fed := false
			for _, o := range p.Sources {
				from := o.After
				if o.A >= 0 {
					from += s.Start[o.A]
				}
				fed = fed || from <= t && t <= from+c.At
			}
			if !fed {
				v[c.Level] += c.Weight
			}
		}
	}
	return v, true
}
