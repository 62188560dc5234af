package taste

import (
	"fmt"
	"hash/fnv"
	"math/rand/v2"
)

// Cup is one cup as it is served.
type Cup struct {
	Code   string `json:"code"`   // three digits, on the cup
	Sample int    `json:"sample"` // which of the samples is in it, from 0; for the one who pours alone
	Named  bool   `json:"named"`  // it is given as what the others are held against (duo-trio)
}

// Set is what one taster gets at once.
type Set struct {
	Taster int   `json:"taster"` // which of the tasters, from 0
	Cups   []Cup `json:"cups"`   // in the order of tasting
	Right  int   `json:"right"`  // the cup that is the right answer, of a triangle or duo-trio; else -1
}

// serving is a plan of who gets what: each order of cups as often as any other, as
// nearly as the number of sets allows, mixed, and coded. The same name gives the same
// plan.
func serving(m Method, samples, tasters, sets int, name string) []Set {
	h := fnv.New64a()
	h.Write([]byte(name))
	rnd := rand.New(rand.NewPCG(h.Sum64(), 0x7461737465))
	orders := ordersOf(m, samples)
	n := tasters * sets
	var dealt []order
	for len(dealt) < n {
		round := make([]order, len(orders))
		for i, k := range rnd.Perm(len(orders)) {
			round[i] = orders[k]
		}
		dealt = append(dealt, round...)
	}
	all := make([]Set, n) // never nil: an empty list in JSON
	for i := range all {
		o := dealt[i]
		codes := rnd.Perm(900)
		s := Set{Taster: i % tasters, Right: o.right}
		for c, sample := range o.cups {
			s.Cups = append(s.Cups, Cup{Code: fmt.Sprint(100 + codes[c]), Sample: sample, Named: m == DuoTrio && c == 0})
		}
		all[i] = s
	}
	return all
}

// order is one order in which cups may be served.
type order struct {
	cups  []int
	right int
}

// ordersOf are the orders of a method. A triangle has six (AAB ABA BAA BBA BAB ABB), a
// duo-trio four (with A or B named, the like one first or second), a pair two; of a
// ranking they are a Williams square, in which each sample stands in each place, and
// after each other one, equally often (J. Aust. Chem. Inst. 2 (1949) 149; from memory).
func ordersOf(m Method, samples int) []order {
	switch m {
	case Triangle:
		return []order{
			{[]int{0, 0, 1}, 2}, {[]int{0, 1, 0}, 1}, {[]int{1, 0, 0}, 0},
			{[]int{1, 1, 0}, 2}, {[]int{1, 0, 1}, 1}, {[]int{0, 1, 1}, 0},
		}
	case DuoTrio:
		return []order{{[]int{0, 0, 1}, 1}, {[]int{0, 1, 0}, 2}, {[]int{1, 1, 0}, 1}, {[]int{1, 0, 1}, 2}}
	case Paired:
		return []order{{[]int{0, 1}, -1}, {[]int{1, 0}, -1}}
	}
	return williams(samples)
}

// williams are the rows of a Williams square of n samples: n of them if n is even, else
// 2 n, each also read backwards.
func williams(n int) []order {
	var out []order
	for start := range n {
		cups := make([]int, n)
		for i := range n { // 0, 1, n-1, 2, n-2, ...
			step := (i + 1) / 2
			if i%2 == 0 {
				step = n - i/2
			}
			cups[i] = (start + step) % n
		}
		out = append(out, order{cups, -1})
		if n%2 == 1 {
			back := make([]int, n)
			for i := range n {
				back[i] = cups[n-1-i]
			}
			out = append(out, order{back, -1})
		}
	}
	return out
}
