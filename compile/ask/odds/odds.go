package odds

import (
	"math"

	"newmake/compile/plan"
	"newmake/lang/words"
)

// Odds is a share of draws, and how well it is known.
type Odds struct {
	Share float64 `json:"share"` // of the draws
	Low   float64 `json:"low"`   // of the true share, 95 times in 100
	High  float64 `json:"high"`
	Words string  `json:"words"` // in whole tenths
}

// z95 is the normal quantile that 95 times in 100 lies within.
const z95 = 1.959963984540054

// oddsOf is the odds of k draws in n, with Wilson's interval of the share (E. B.
// Wilson, J. Am. Stat. Assoc. 22 (1927) 209), which holds near nothing and all too.
func oddsOf(k, n int) Odds {
	p, m := float64(k)/float64(n), float64(n)
	mid := (p + z95*z95/(2*m)) / (1 + z95*z95/m)
	half := z95 / (1 + z95*z95/m) * math.Sqrt(p*(1-p)/m+z95*z95/(4*m*m))
	return Odds{Share: p, Low: max(0, mid-half), High: min(1, mid+half), Words: words.Odds(p)}
}

// margin is how many in 100 the share may be off.
func (o Odds) margin() int {
	return int(math.Round(100 * max(o.Share-o.Low, o.High-o.Share)))
}

// against says whether something is so at least so often, as a promise stands: kept or
// broken only if all of the interval is on one side.
func (o Odds) against(least float64) string {
	switch {
	case o.Low >= least:
		return plan.PromiseKept
	case o.High < least:
		return plan.PromiseBroken
	}
	return plan.PromiseTooClose
}
