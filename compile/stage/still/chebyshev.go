package still

import (
	"math"

	"newmake/compile/matter/exponential"
)

// Functions of the pot's mole fraction x are kept as Chebyshev series in
// z = ln(1 + x/stretch), which opens up the low strengths where volatility
// changes fastest. Order 48 meets fluid's equilibrium to 1e-8 and
// a head's condensation to 2e-7 (TestSeriesAgainstFluid, TestHeadAgainstFineSteps).
const (
	order   = 48
	stretch = 0.02
)

var (
	zMost = math.Log1p(1 / stretch)
	// nodeT are the Chebyshev nodes on -1..1, nodeX the mole fractions there.
	nodeT, nodeX = nodes()
)

func nodes() (t, x [order]float64) {
	for k := range order {
		t[k] = math.Cos(math.Pi * (float64(k) + 0.5) / order)
		x[k] = stretch * math.Expm1(zMost*(t[k]+1)/2)
	}
	return t, x
}

// place is where x stands on the series' axis -1..1. Near nothing its error is that of
// 1 + x/stretch, 1e-16 of the axis, which is what math.Log1p would take 2 times as long
// to spare.
func place(x float64) float64 {
	return math.Log(1+max(x, 0)*(1/stretch))*(2/zMost) - 1
}

// placed is the x that stands at t.
func placed(t float64) float64 { return stretch * (exponential.Exp(zMost*(t+1)/2) - 1) }

// dPlace is the derivative of place.
func dPlace(x float64) float64 { return 2 / (zMost * (stretch + x)) }

// series is width functions side by side: one pass evaluates all of them.
type series [order][width]float64

const width = 8

type row [width]float64

// cosines of a fit: function j of the series at node k.
var cosines = func() (c [order][order]float64) {
	for j := range order {
		for k := range order {
			c[j][k] = math.Cos(math.Pi * float64(j) * (float64(k) + 0.5) / order)
		}
	}
	return c
}()

// fit makes the series that take the given values at the nodes.
func fit(values *[order]row) *series {
	// The cosine of an even function is the same at both nodes as far from the
	// middle, that of an odd one the opposite.
	const half = order / 2
	var sums [2][half]row
	for k := range half {
		for i, v := range values[k] {
			w := values[order-1-k][i]
			sums[0][k][i], sums[1][k][i] = v+w, v-w
		}
	}
	var s series
	for j := range order {
		scale := 2.0 / order
		if j == 0 {
			scale = 1.0 / order
		}
		for q := 0; q < width; q += 4 {
			var a, b, c, d float64
			for k := range half {
				f, r := cosines[j][k], (*[4]float64)(sums[j%2][k][q:])
				a, b, c, d = a+f*r[0], b+f*r[1], c+f*r[2], d+f*r[3]
			}
			s[j][q], s[j][q+1], s[j][q+2], s[j][q+3] = scale*a, scale*b, scale*c, scale*d
		}
	}
	return &s
}

// at evaluates all functions at t by Clenshaw's recurrence, four side by side: as
// many as stay in registers. What does not wait for the product is summed first.
func (s *series) at(t float64) (out row) {
	t2 := 2 * t
	for q := 0; q < width; q += 4 {
		var a1, a2, b1, b2, c1, c2, d1, d2 float64
		for j := order - 1; j > 0; j-- {
			r := (*[4]float64)(s[j][q:])
			a1, a2 = t2*a1+(r[0]-a2), a1
			b1, b2 = t2*b1+(r[1]-b2), b1
			c1, c2 = t2*c1+(r[2]-c2), c1
			d1, d2 = t2*d1+(r[3]-d2), d1
		}
		r := (*[4]float64)(s[0][q:])
		out[q], out[q+1], out[q+2], out[q+3] = t*a1-a2+r[0], t*b1-b2+r[1], t*c1-c2+r[2], t*d1-d2+r[3]
	}
	return out
}

var _ = [1]struct{}{}[width%4] // at takes them in fours

// differentiate sets function to of the series to the derivative, with respect
// to t, of function from.
func (s *series) differentiate(from, to int) {
	var d [order + 2]float64
	for j := order - 1; j > 0; j-- {
		d[j-1] = d[j+1] + 2*float64(j)*s[j][from]
	}
	d[0] /= 2
	for j := range order {
		s[j][to] = d[j]
	}
}

func cbrtSquared(v float64) float64 {
	c := math.Cbrt(v)
	return c * c
}
