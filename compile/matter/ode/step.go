package ode

// Step is one step taken. Its slices are good until the next one is tried.
type Step struct {
	T, H   float64
	Y0, D0 []float64 // state and slopes at its beginning
	Y1, D1 []float64 // and at its end
}

// At is quantity i at time t within the step.
func (p *Step) At(i int, t float64) float64 {
	x := (t - p.T) / p.H
	z := 1 - x
	return z*z*((1+2*x)*p.Y0[i]+x*p.H*p.D0[i]) + x*x*((1+2*z)*p.Y1[i]-z*p.H*p.D1[i])
}

// Read writes all quantities at time t within the step into out.
func (p *Step) Read(t float64, out []float64) {
	x := (t - p.T) / p.H
	z := 1 - x
	y0, d0, y1, d1 := z*z*(1+2*x), z*z*x*p.H, x*x*(1+2*z), -x*x*z*p.H
	for i := range out {
		out[i] = y0*p.Y0[i] + d0*p.D0[i] + y1*p.Y1[i] + d1*p.D1[i]
	}
}

// Until is the step cut short: the same cubic up to time t. It writes the state
// and slopes there into y and d.
func (p *Step) Until(t float64, y, d []float64) Step {
	p.Read(t, y)
	for i := range d {
		d[i] = p.Slope(i, t)
	}
	return Step{T: p.T, H: t - p.T, Y0: p.Y0, D0: p.D0, Y1: y, D1: d}
}

// Slope is the rate of change of quantity i at time t within the step.
func (p *Step) Slope(i int, t float64) float64 {
	x := (t - p.T) / p.H
	mean := (p.Y1[i] - p.Y0[i]) / p.H
	return (1-x)*(1-3*x)*p.D0[i] + x*(3*x-2)*p.D1[i] + 6*x*(1-x)*mean
}

// Steepest is the greatest rate of change of quantity i within the step, and
// when that is.
func (p *Step) Steepest(i int) (slope, t float64) {
	slope, t = p.D0[i], p.T
	if p.D1[i] > slope {
		slope, t = p.D1[i], p.T+p.H
	}
	mean := (p.Y1[i] - p.Y0[i]) / p.H
	// The slope is a parabola: D0 + b x + c x^2, with the mean its mean.
	b, c := 6*mean-4*p.D0[i]-2*p.D1[i], 3*(p.D0[i]+p.D1[i]-2*mean)
	if c < 0 {
		if x := -b / (2 * c); x > 0 && x < 1 {
			if top := p.D0[i] - b*b/(4*c); top > slope {
				slope, t = top, p.T+x*p.H
			}
		}
	}
	return slope, t
}

// Greatest is the greatest value of quantity i within the step, and when that
// is.
func (p *Step) Greatest(i int) (value, t float64) {
	value, t = p.Y0[i], p.T
	if p.Y1[i] > value {
		value, t = p.Y1[i], p.T+p.H
	}
	if !(p.D0[i] > 0 && p.D1[i] < 0) {
		return value, t
	}
	lo, hi := p.T, p.T+p.H
	for range 50 {
		if mid := (lo + hi) / 2; p.Slope(i, mid) > 0 {
			lo = mid
		} else {
			hi = mid
		}
	}
	if top := p.At(i, lo); top > value {
		return top, lo
	}
	return value, t
}

// Passes is when a function of the step, below nothing at its beginning and not
// at its end, passes it. At the beginning already, it is the beginning.
func (p *Step) Passes(f func(t float64) float64) float64 {
	lo, hi := p.T, p.T+p.H
	if f(lo) >= 0 {
		return lo
	}
	for range 60 {
		mid := (lo + hi) / 2
		if mid <= lo || mid >= hi {
			break
		}
		if f(mid) < 0 {
			lo = mid
		} else {
			hi = mid
		}
	}
	return max(lo, hi)
}
