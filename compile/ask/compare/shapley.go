package compare

import (
	"math"
	"math/bits"
	"math/rand/v2"
	"runtime"
	"sync"
	"sync/atomic"
)

// mostExact is the greatest number of edits of which every combination is
// computed.
const mostExact = 8

// Beyond it orders are drawn, each with its reverse. The seed is fixed: the same
// comparison gives the same figures.
const (
	drawnPairs = 12
	drawnSeed  = 0x6e65776d616b65
)

// set is a set of edits, a bit each.
type set []uint64

func newSet(n int) set { return make(set, (n+63)/64) }

func (s set) has(i int) bool { return s[i/64]>>(i%64)&1 == 1 }

func (s set) with(i int) set {
	out := append(set(nil), s...)
	out[i/64] |= 1 << (i % 64)
	return out
}

// key makes a set a key of a map.
func (s set) key() string {
	b := make([]byte, 0, 8*len(s))
	for _, w := range s {
		for k := range 8 {
			b = append(b, byte(w>>(8*k)))
		}
	}
	return string(b)
}

// game is a function of sets of players, several numbers at once. A nil value
// is a set that cannot be computed.
type game struct {
	players int
	value   func(set) []float64
	pairs   int // of orders drawn; 0 is drawnPairs
}

// shares is what comes of a game.
type shares struct {
	exact  bool
	sets   int         // different sets computed
	orders int         // drawn, if not exact
	part   [][]float64 // by player, by number: the Shapley value
	err    [][]float64 // its standard error; nil if exact
	alone  [][]float64 // f({i}) - f({})
	whole  []float64   // f(all) - f({})
}

// play computes the Shapley values. It is false if some set cannot be computed.
func (g game) play() (shares, bool) {
	if g.players <= mostExact {
		return g.exact()
	}
	return g.drawn()
}

// exact weighs every set: a player's part is the sum over the sets S without it
// of |S|! (n-|S|-1)! / n! times what it adds to S.
func (g game) exact() (shares, bool) {
	n := g.players
	all := make([]set, 1<<n)
	for i := range all {
		all[i] = set{uint64(i)}
	}
	values, ok := g.values(all)
	if !ok {
		return shares{}, false
	}
	weight := make([]float64, n)
	for size := range n {
		weight[size] = 1 / (float64(n) * binomial(n-1, size))
	}
	out := g.start(values[0], values[len(values)-1])
	out.exact, out.sets = true, len(all)
	for i := range n {
		for s := range all {
			if s>>i&1 == 1 {
				continue
			}
			w := weight[bits.OnesCount(uint(s))]
			for k := range out.whole {
				out.part[i][k] += w * (values[s|1<<i][k] - values[s][k])
			}
		}
		for k := range out.whole {
			out.alone[i][k] = values[1<<i][k] - values[0][k]
		}
	}
	return out, true
}

func binomial(n, k int) float64 {
	out := 1.0
	for i := range k {
		out = out * float64(n-i) / float64(i+1)
	}
	return out
}

// drawn takes the mean over orders drawn at random (J. Castro, D. Gomez, J.
// Tejada, Polynomial calculation of the Shapley value based on sampling,
// Computers & Operations Research 36 (2009) 1726-1730). An order and its reverse
// count as one draw, which steadies the mean; the standard error is that of the
// draws.
func (g game) drawn() (shares, bool) {
	n := g.players
	random := rand.New(rand.NewPCG(drawnSeed, uint64(n)))
	if g.pairs == 0 {
		g.pairs = drawnPairs
	}
	var orders [][]int
	for range g.pairs {
		o := random.Perm(n)
		r := make([]int, n)
		for i := range o {
			r[n-1-i] = o[i]
		}
		orders = append(orders, o, r)
	}
	none := newSet(n)
	index := map[string]int{}
	var all []set
	see := func(s set) int {
		k := s.key()
		i, ok := index[k]
		if !ok {
			i = len(all)
			index[k] = i
			all = append(all, s)
		}
		return i
	}
	see(none)
	paths := make([][]int, len(orders)) // of sets, as each order goes
	for i, o := range orders {
		s := none
		for _, p := range o {
			s = s.with(p)
			paths[i] = append(paths[i], see(s))
		}
	}
	singles := make([]int, n)
	for i := range n {
		singles[i] = see(none.with(i))
	}
	values, ok := g.values(all)
	if !ok {
		return shares{}, false
	}
	out := g.start(values[0], values[paths[0][n-1]])
	out.sets, out.orders = len(all), len(orders)
	out.err = zeros(n, len(out.whole))
	m := float64(g.pairs)
	for k := range out.whole {
		sum, squares := make([]float64, n), make([]float64, n)
		for pair := 0; pair < len(orders); pair += 2 {
			draw := make([]float64, n)
			for i := pair; i < pair+2; i++ {
				before := 0
				for step, p := range orders[i] {
					draw[p] += (values[paths[i][step]][k] - values[before][k]) / 2
					before = paths[i][step]
				}
			}
			for i, x := range draw {
				sum[i] += x
				squares[i] += x * x
			}
		}
		for i := range n {
			mean := sum[i] / m
			out.part[i][k] = mean
			variance := math.Max(squares[i]/m-mean*mean, 0) * m / (m - 1)
			out.err[i][k] = math.Sqrt(variance / m)
			out.alone[i][k] = values[singles[i]][k] - values[0][k]
		}
	}
	return out, true
}

func (g game) start(none, all []float64) shares {
	s := shares{whole: make([]float64, len(none))}
	for k := range none {
		s.whole[k] = all[k] - none[k]
	}
	s.part, s.alone = zeros(g.players, len(none)), zeros(g.players, len(none))
	return s
}

func zeros(n, m int) [][]float64 {
	out := make([][]float64, n)
	for i := range out {
		out[i] = make([]float64, m)
	}
	return out
}

// values computes sets side by side, and gives them in their order.
func (g game) values(all []set) ([][]float64, bool) {
	out := make([][]float64, len(all))
	var next atomic.Int64
	var failed atomic.Bool
	var workers sync.WaitGroup
	for range min(runtime.GOMAXPROCS(0), len(all)) {
		workers.Go(func() {
			for !failed.Load() {
				i := int(next.Add(1)) - 1
				if i >= len(all) {
					return
				}
				if out[i] = g.value(all[i]); out[i] == nil {
					failed.Store(true)
				}
			}
		})
	}
	workers.Wait()
	return out, !failed.Load()
}
