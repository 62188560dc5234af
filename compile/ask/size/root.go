package size

import "math"

// root finds where f is 0 between a and b, at which it has opposite signs fa and
// fb, to a width of tol, by R. P. Brent's zeroin (Algorithms for Minimization
// Without Derivatives, Prentice-Hall 1973, chapter 4): inverse quadratic
// interpolation and the secant, with bisection where they gain too little. It
// stops early at |f| <= small.
func root(f func(float64) float64, a, fa, b, fb, tol, small float64) float64 {
	c, fc := a, fa
	d := b - a
	e := d
	for range 100 {
		if math.Signbit(fb) == math.Signbit(fc) {
			c, fc = a, fa
			d = b - a
			e = d
		}
		if math.Abs(fc) < math.Abs(fb) {
			a, b, c = b, c, b
			fa, fb, fc = fb, fc, fb
		}
		m := (c - b) / 2
		if math.Abs(m) <= tol || math.Abs(fb) <= small {
			break
		}
		d, e = next(a, b, c, fa, fb, fc, d, e, m, tol)
		a, fa = b, fb
		if math.Abs(d) > tol {
			b += d
		} else {
			b += math.Copysign(tol, m)
		}
		fb = f(b)
	}
	return b
}

// next is the step from b: interpolated, or half the way.
func next(a, b, c, fa, fb, fc, d, e, m, tol float64) (step, last float64) {
	if math.Abs(e) < tol || math.Abs(fa) <= math.Abs(fb) {
		return m, m
	}
	var p, q float64
	s := fb / fa
	if a == c {
		p, q = 2*m*s, 1-s
	} else {
		q = fa / fc
		r := fb / fc
		p = s * (2*m*q*(q-r) - (b-a)*(r-1))
		q = (q - 1) * (r - 1) * (s - 1)
	}
	if p > 0 {
		q = -q
	} else {
		p = -p
	}
	if 2*p < math.Min(3*m*q-math.Abs(tol*q), math.Abs(e*q)) {
		return p / q, d
	}
	return m, m
}
