package constants

import (
	"hash/fnv"
	"math"
	"math/rand/v2"

	"newmake/lang/recipe"
)

// seed is the same for every batch, so that what is drawn for two batches is drawn
// alike, and the same question has the same answer.
const seed = 0x6e65776d616b6501

// mostTries is how often a draw beyond the bounds is drawn again. A prior that is
// cut off so far out is put at the nearer bound.
const mostTries = 1000

// Draws are figures drawn at random for some constants.
type Draws struct {
	Of       []Constant
	X        [][]float64 // by draw, and by constant
	Rejected int         // draws beyond bounds, drawn again
}

// Drawn draws n times for each constant. A constant has a stream of its own, by the
// hash of its key, and each draw of it begins anew: so a constant that two batches
// share has the same luck in both, whatever else they have, and more draws go on
// from fewer. Constants that were learned together are drawn together; l may be nil.
func Drawn(of []Constant, n int, l *recipe.Learned) Draws {
	d := Draws{Of: of, X: make([][]float64, n)}
	all := make([]float64, n*len(of))
	for i := range d.X {
		d.X[i] = all[i*len(of) : (i+1)*len(of) : (i+1)*len(of)]
	}
	lead := leaders(of, l)
	for k, c := range of {
		h := fnv.New64a()
		h.Write([]byte(c.Key()))
		name := h.Sum64()
		to, led := lead[k]
		own := math.Sqrt(1 - to.correlation*to.correlation)
		for i := range n {
			shift := 0.0
			if led {
				shift = to.correlation * of[to.at].Prior.Z(d.X[i][to.at])
			}
			x, again := c.Prior.draw(rand.NewPCG(seed^mixed(uint64(i)), name), shift, own)
			d.X[i][k] = x
			d.Rejected += again
		}
	}
	return d
}

// draw draws one figure that lies about a shift from the middle, with a spread of its
// own, both in standard deviations; and says how many before it were out of bounds.
func (p Prior) draw(src *rand.PCG, shift, own float64) (x float64, again int) {
	src.Uint64() // the first one leans on the seed
	for again < mostTries {
		if x = p.At(shift + own*normal(src)); p.Holds(x) {
			return x, again
		}
		again++
	}
	return min(max(x, p.Low), p.High), again
}

// normal is a draw of the standard normal, by the inverse of its distribution.
func normal(src *rand.PCG) float64 {
	u := (float64(src.Uint64()>>11) + 0.5) / (1 << 53)
	return math.Sqrt2 * math.Erfinv(2*u-1)
}

// mixed spreads the bits of a counter: the finalizer of SplitMix64 (Steele, Lea and
// Flood, OOPSLA 2014, from memory).
func mixed(x uint64) uint64 {
	x += 0x9e3779b97f4a7c15
	x = (x ^ x>>30) * 0xbf58476d1ce4e5b9
	x = (x ^ x>>27) * 0x94d049bb133111eb
	return x ^ x>>31
}
