// Package taste judges what tasters said of samples whose names they did not know:
// whether they can tell two of them apart, and how several rank.
//
// The tests are those of sensory analysis, and their probabilities are exact: triangle
// (ISO 4120), duo-trio (ISO 10399), paired comparison (ISO 5495), ranking (ISO 8587).
package taste

import "math"

// Method is how samples are served and what is asked of them.
type Method string

// The methods.
const (
	Triangle Method = "triangle" // three cups, two alike: which is the odd one?
	DuoTrio  Method = "duo-trio" // one cup that is named, two that are not: which is like it?
	Paired   Method = "paired"   // two cups: which has more of it, which is liked better?
	Ranking  Method = "ranking"  // all of them, in order
)

// methods are all of them.
var methods = []Method{Triangle, DuoTrio, Paired, Ranking}

// Test is a difference test: how often a taster who tells nothing apart is right, and
// whether an answer either way counts.
type Test struct {
	Chance   float64 // of a right answer by guessing
	TwoSided bool    // neither answer was expected: a paired comparison of liking
}

// testOf is the test of a method; expecting says that one answer of a paired
// comparison was expected before it was poured. Ranking has none.
func testOf(m Method, expecting bool) Test {
	switch m {
	case Triangle:
		return Test{Chance: 1. / 3}
	case DuoTrio:
		return Test{Chance: .5}
	}
	return Test{Chance: .5, TwoSided: !expecting}
}

// atLeast is the probability of k or more right answers of n, each right with
// probability p: the upper tail of the binomial distribution.
func atLeast(k, n int, p float64) float64 {
	switch {
	case k <= 0 || p >= 1 && k <= n:
		return 1
	case k > n || p <= 0:
		return 0
	}
	sum := 0.
	for i := n; i >= k; i-- { // the small terms first
		sum += math.Exp(logChoose(n, i) + float64(i)*math.Log(p) + float64(n-i)*math.Log1p(-p))
	}
	return min(sum, 1)
}

func logChoose(n, k int) float64 {
	a, _ := math.Lgamma(float64(n + 1))
	b, _ := math.Lgamma(float64(k + 1))
	c, _ := math.Lgamma(float64(n - k + 1))
	return a - b - c
}

// P is how often guessing alone gives so many right answers of n, or more; two-sided,
// so far from half of them either way.
func (t Test) P(right, n int) float64 {
	if !t.TwoSided {
		return atLeast(right, n, t.Chance)
	}
	return min(1, 2*atLeast(max(right, n-right), n, t.Chance))
}

// Least is the fewest right answers of n that guessing gives with a probability of at
// most alpha; n+1 if not even n of n will do.
func (t Test) Least(n int, alpha float64) int {
	if t.TwoSided {
		alpha /= 2
	}
	for k := range n + 1 {
		if atLeast(k, n, t.Chance) <= alpha {
			return k
		}
	}
	return n + 1
}

// Power is how often n answers find a difference at a level of alpha, where a share of
// the answers comes from tasters who tell the samples apart, and the rest from
// guessing.
func (t Test) Power(n int, alpha, discriminators float64) float64 {
	return atLeast(t.Least(n, alpha), n, t.Chance+(1-t.Chance)*discriminators)
}

// Needed is the fewest answers that find a share of discriminators with at least a
// power, at a level of alpha; 0 if more than most would be needed. A few more can be
// less sure, since answers come whole: it is the first number that does it.
func (t Test) Needed(alpha, discriminators, power float64, most int) int {
	for n := 1; n <= most; n++ {
		if t.Power(n, alpha, discriminators) >= power {
			return n
		}
	}
	return 0
}

// Findable is the smallest share of discriminators that n answers find with a power at
// a level of alpha; over 1 if not even tasters who are always right would show it.
func (t Test) Findable(n int, alpha, power float64) float64 {
	if t.Power(n, alpha, 1) < power {
		return math.Inf(1)
	}
	return rising(0, 1, func(d float64) bool { return t.Power(n, alpha, d) >= power })
}

// Share is a share with the range that holds it as often as was asked.
type Share struct {
	Value float64 `json:"value"`
	Low   float64 `json:"low"`
	High  float64 `json:"high"`
}

// interval is the share of right answers with its exact interval (Clopper and Pearson,
// Biometrika 26 (1934) 404).
func interval(right, n int, level float64) Share {
	tail := (1 - level) / 2
	s := Share{float64(right) / float64(n), 0, 1}
	if right > 0 {
		s.Low = rising(0, 1, func(p float64) bool { return atLeast(right, n, p) >= tail })
	}
	if right < n {
		s.High = rising(0, 1, func(p float64) bool { return 1-atLeast(right+1, n, p) <= tail })
	}
	return s
}

// discriminators is the share of answers that came from telling apart, (p-c)/(1-c) of
// the share p of right answers and the chance c (Abbott's formula), with the interval of
// that. It is never below nothing.
func (t Test) discriminators(right, n int, level float64) Share {
	above := func(p float64) float64 { return max(0, (p-t.Chance)/(1-t.Chance)) }
	s := interval(right, n, level)
	return Share{above(s.Value), above(s.Low), above(s.High)}
}

// rising is where a condition that holds from some point on begins to hold.
func rising(low, high float64, holds func(float64) bool) float64 {
	for range 60 {
		if mid := (low + high) / 2; holds(mid) {
			high = mid
		} else {
			low = mid
		}
	}
	return high
}
