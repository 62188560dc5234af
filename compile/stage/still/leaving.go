package still

import "math"

// leaving is how much of a pot is left as its strength falls, where nothing
// comes into it. Rayleigh's equation then has the strength alone in it,
//
//	d ln n / du = x/(y-x)    u = ln x
//
// and is integrated once for all runs of a boil: ln n = u/(a0-1) + S, with a0
// the volatility in water alone and S a Chebyshev series in z = ln(1 +
// x/stretch), as the other functions, but only to closedX: nearer the azeotrope
// at 0.89, where the slope has a pole, 48 terms would not do. Up to 0.35 they
// meet the integrator to 1e-9 (TestLeavingAgainstTheIntegrator).
type leaving struct {
	perU float64 // 1/(a0-1)
	s    single
}

// closedX is the strongest pot, 67 % vol, that is run by leaving.
const closedX = 0.35

var (
	zClosed = math.Log1p(closedX / stretch)
	// closedX's own nodes.
	closedNodeX = func() (x [order]float64) {
		for k, t := range nodeT {
			x[k] = stretch * math.Expm1(zClosed*(t+1)/2)
		}
		return x
	}()
)

// leaves integrates. With a = alpha-1 the slope less its part in water alone is
//
//	[(a0-a)/x + a (a0+1)] / ((1-x) a a0)    by x
func (b *boil) leaves() leaving {
	lnA0 := sumOf(&b.lnAlpha, -1)
	a0 := math.Expm1(lnA0)
	var slope [order]float64 // by the series' axis
	for k, x := range closedNodeX {
		lnA := sumOf(&b.lnAlpha, place(x))
		a := math.Expm1(lnA)
		slope[k] = ((a0-a)/x + a*(a0+1)) / ((1 - x) * a * a0) * (stretch + x) * zClosed / 2
	}
	var c [order + 2]float64
	for j := range order {
		sum := 0.0
		for k, v := range slope {
			sum += cosines[j][k] * v
		}
		c[j] = 2 * sum / order
	}
	out := leaving{perU: 1 / a0}
	for j := 1; j <= order; j++ {
		out.s[j] = (c[j-1] - c[j+1]) / float64(2*j)
	}
	return out
}

// lnPot is ln n at a strength, but for a constant.
func (l *leaving) lnPot(u, x float64) float64 {
	t := 2*math.Log1p(x/stretch)/zClosed - 1
	return l.perU*u + sumOf(&l.s, t)
}

// single is one function's series, made to be evaluated alone. Its last term is
// nothing where order terms are all.
type single [order + 1]float64

var _ = [1]struct{}{}[order%2] // sumOf takes the terms in pairs

// sumOf evaluates a series at t. It is Clenshaw's recurrence for the even terms
// and the odd ones side by side, which halves the wait for the last: T_2k(t) =
// T_k(w) with w = 2t^2-1, and T_2k+1(t) = t V_k(w), V_k the polynomials of the
// third kind.
func sumOf(s *single, t float64) float64 {
	w2 := 2 * (2*t*t - 1)
	var e1, e2, o1, o2 float64
	for j := order; j > 1; j -= 2 {
		e1, e2 = w2*e1+(s[j]-e2), e1
		o1, o2 = w2*o1+(s[j-1]-o2), o1
	}
	return w2/2*e1 - e2 + s[0] + t*(o1-o2)
}

// sumsOf is sumOf for two series at one place.
func sumsOf(a, b *single, t float64) (va, vb float64) {
	w2 := 2 * (2*t*t - 1)
	var e1, e2, o1, o2, f1, f2, p1, p2 float64
	for j := order; j > 1; j -= 2 {
		e1, e2 = w2*e1+(a[j]-e2), e1
		o1, o2 = w2*o1+(a[j-1]-o2), o1
		f1, f2 = w2*f1+(b[j]-f2), f1
		p1, p2 = w2*p1+(b[j-1]-p2), p1
	}
	return w2/2*e1 - e2 + a[0] + t*(o1-o2), w2/2*f1 - f2 + b[0] + t*(p1-p2)
}
