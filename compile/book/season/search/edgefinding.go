package search

import "slices"

// interval is something on a resource that takes one thing at a time: it starts at its
// least at est, ends at its most at lct, and lasts for p at least.
type interval struct{ est, lct, p int }

// edges finds, of intervals on such a resource, how much later each starts at the least,
// since it must come after others (Carlier and Pinson, An algorithm for solving the
// job-shop problem, Management Science 35 (1989) 164-176; in the form of task intervals,
// Caseau and Laburthe 1994, from memory). ok is false where they do not fit at all.
func edges(of []interval) (est []int, ok bool) {
	est = make([]int, len(of))
	byEst := make([]int, len(of))
	for i := range of {
		est[i], byEst[i] = of[i].est, i
	}
	slices.SortStableFunc(byEst, func(a, b int) int { return of[b].est - of[a].est }) // the latest first
	for _, last := range of {
		b := last.lct
		// Those that lie within from est to b, as est goes down.
		sum, after := 0, -never // after: when all of some of them have ended at the least
		for i := 0; i < len(byEst); {
			a := of[byEst[i]].est
			for ; i < len(byEst) && of[byEst[i]].est == a; i++ {
				if x := of[byEst[i]]; x.lct <= b {
					sum += x.p
				}
			}
			if sum == 0 {
				continue
			}
			if after = max(after, a+sum); a+sum > b {
				return nil, false
			}
			for k, x := range of {
				if x.lct > b && min(a, x.est)+sum+x.p > b { // it ends after all of them
					est[k] = max(est[k], after)
				}
			}
		}
	}
	// Of two the one that cannot come first comes second.
	for i, x := range of {
		for k, y := range of {
			if i != k && x.p > 0 && y.p > 0 && x.est+x.p+y.p > y.lct {
				if y.est+y.p+x.p > x.lct {
					return nil, false
				}
				est[i] = max(est[i], y.est+y.p)
			}
		}
	}
	return est, true
}

// mirrored are intervals with time running backwards.
func mirrored(of []interval) []interval {
	out := make([]interval, len(of))
	for i, x := range of {
		out[i] = interval{-x.lct, -x.est, x.p}
	}
	return out
}
