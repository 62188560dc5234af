package search

import (
	"math"
)

// tooDear is the price of what there is none of.
const tooDear = 1e9

// How much dearer something becomes that was wholly taken, and after how many rounds it
// becomes half as much.
const (
	dearer = 0.3
	slower = 400
)

// sum is the least bound that prices give which stand to one another as these do. It has
// its least where one of the kinds of jobs pays just what it is worth.
func (b *bounder) sum(takes []float64) float64 {
	capacity := 0.0
	for i, r := range b.rows {
		capacity += b.price[i] * r.capacity
	}
	least := 0.0
	for g, t := range takes {
		if !math.IsInf(t, 1) {
			least += float64(b.groups[g].count)
		}
	}
	for _, t := range takes {
		if t <= 0 || math.IsInf(t, 1) {
			continue
		}
		sum := capacity / t
		for g, x := range takes {
			if !math.IsInf(x, 1) {
				sum += float64(b.groups[g].count) * max(0, 1-x/t)
			}
		}
		least = min(least, sum)
	}
	return least
}

// taken adds up what one job takes of each row.
func taken(g group, path []int, use []float64) {
	for m, w := range path {
		s := g.members[m].states[w]
		for i, r := range s.rows {
			use[r] += s.amount[i]
		}
		if p := g.members[m].parent; p >= 0 {
			for _, first := range g.members[m].held {
				for k := path[p] + 1; k <= w; k++ {
					use[first+k]++
				}
			}
		}
	}
}

// way is where an activity goes for the least: the window, and from where on its path that
// window was come to.
type way struct{ window, from int }

// cheapest is where a job pays least; nil where it can be nowhere.
func (b *bounder) cheapest(g group) (float64, []int) {
	n := len(b.windows)
	value := make([][][]float64, len(g.members)) // by member, by place on its path, by window
	next := make([][][]way, len(g.members))      // of a member: by place and window of its parent
	for m := len(g.members) - 1; m >= 0; m-- {
		x := &g.members[m]
		value[m] = make([][]float64, len(x.path))
		for i := range x.path {
			value[m][i] = make([]float64, n)
			for w := range n {
				value[m][i][w] = math.Inf(1)
				if x.lo[i][w] < 0 {
					continue
				}
				v := 0.0
				for k, r := range x.states[w].rows {
					v += b.price[r] * x.states[w].amount[k]
				}
				for _, c := range x.children {
					if k := next[c][i][w]; k.window < 0 {
						v = math.Inf(1)
					} else {
						v += value[c][k.from][k.window] + b.nights(&g.members[c], w, k.window)
					}
				}
				value[m][i][w] = v
			}
		}
		if x.parent >= 0 {
			next[m] = b.onward(g, m, value[m])
		}
	}
	total := 0.0
	windows := make([]int, len(g.members))
	from := make([]int, len(g.members))
	for m := range g.members {
		x := &g.members[m]
		if x.parent >= 0 {
			k := next[m][from[x.parent]][windows[x.parent]]
			windows[m], from[m] = k.window, k.from
			continue
		}
		best := math.Inf(1)
		for w, v := range value[m][0] {
			if v < best-1e-12 {
				best, windows[m] = v, w
			}
		}
		if math.IsInf(best, 1) {
			return best, nil
		}
		total += best
	}
	return total, windows
}

// onward is where an activity goes from each place and window of its parent.
func (b *bounder) onward(g group, m int, value [][]float64) [][]way {
	n := len(b.windows)
	x, last := &g.members[m], len(g.members[m].path)-1
	p := &g.members[x.parent]
	nights := make([]float64, n) // up to each window
	for w := 1; w < n; w++ {
		nights[w] = nights[w-1]
		for _, first := range x.held {
			nights[w] += b.price[first+w]
		}
	}
	cheap := func(k int) float64 { return value[last][k] + nights[k] }
	later := make([]int, n+1) // the cheapest window from one on; -1: none
	later[n] = -1
	for k := n - 1; k >= 0; k-- {
		later[k] = later[k+1]
		if v := cheap(k); !math.IsInf(v, 1) && (later[k] < 0 || v <= cheap(later[k])) {
			later[k] = k
		}
	}
	out := make([][]way, len(p.path))
	for i := range p.path {
		out[i] = make([]way, n)
		for w := range n {
			out[i][w] = way{-1, 0}
			lo := p.lo[i][w]
			if lo < 0 {
				continue
			}
			best := math.Inf(1)
			if v := value[i][w]; v < best { // in the same window
				best, out[i][w] = v, way{w, i}
			}
			for k := w + 1; k < n; k++ {
				s := x.states[k]
				if !s.ok || s.hi-lo < x.least {
					continue
				}
				if x.most >= NoMost { // all that are later do
					k = later[k]
					if k < 0 {
						break
					}
				} else if s.lo-p.states[w].hi > x.most {
					break
				}
				if v := cheap(k) - nights[w]; v < best-1e-12 {
					best, out[i][w] = v, way{k, last}
				}
				if x.most >= NoMost {
					break
				}
			}
		}
	}
	return out
}

func (b *bounder) nights(x *member, from, to int) float64 {
	sum := 0.0
	for _, first := range x.held {
		for k := from + 1; k <= to; k++ {
			sum += b.price[first+k]
		}
	}
	return sum
}
