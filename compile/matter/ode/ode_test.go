package ode

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
)

// The conditions of order 3 for a Rosenbrock method whose Jacobian may be
// anything (Hairer and Wanner, Solving Ordinary Differential Equations II, 2nd
// ed. 1996, IV.7, W-methods): with b the weights, a = alpha and g = gammas,
//
//	sum b = 1    b a 1 = 1/2    b g 1 = 0
//	b (a1)^2 = 1/3    b a a 1 = 1/6    b a g 1 = b g a 1 = b g g 1 = 0
//
// the last four in the form for the exact Jacobian taken apart.
func TestTableauIsOfOrderThree(t *testing.T) {
	one := [stages]float64{1, 1, 1, 1}
	times := func(m [stages][stages]float64, v [stages]float64) (out [stages]float64) {
		for i := range stages {
			for j := range stages {
				out[i] += m[i][j] * v[j]
			}
		}
		return out
	}
	dot := func(v, w [stages]float64) (sum float64) {
		for i := range stages {
			sum += v[i] * w[i]
		}
		return sum
	}
	a1, g1 := times(alpha, one), times(gammas, one)
	var square [stages]float64
	for i := range stages {
		square[i] = a1[i] * a1[i]
	}
	for name, c := range map[string]struct{ got, want float64 }{
		"b1": {dot(weights, one), 1}, "ba": {dot(weights, a1), 0.5}, "bg": {dot(weights, g1), 0},
		"ba2": {dot(weights, square), 1.0 / 3}, "baa": {dot(weights, times(alpha, a1)), 1.0 / 6},
		"bag": {dot(weights, times(alpha, g1)), 0}, "bga": {dot(weights, times(gammas, a1)), 0},
		"bgg":     {dot(weights, times(gammas, g1)), 0},
		"coarser": {dot(coarser, one), 1}, "coarser a": {dot(coarser, a1), 0.5}, "coarser g": {dot(coarser, g1), 0},
	} {
		assert.InDelta(t, c.want, c.got, 1e-13, name)
	}
	for i := range stages { // stiffly accurate: the last stage is the result
		assert.InDelta(t, weights[i], alpha[3][i]+gammas[3][i], 1e-14)
	}
}

type system func(t float64, y, d []float64)

func (f system) Slopes(t float64, y, d []float64) { f(t, y, d) }

// pendulum is nonlinear and depends on time.
func pendulum(t float64, y, d []float64) {
	d[0] = y[1]
	d[1] = -math.Sin(y[0]) - 0.1*y[1] + 0.3*math.Cos(t)
}

// fixed integrates with steps of the base alone.
func fixed(f system, y0 []float64, end, h float64, fast []int) []float64 {
	floors := make([]float64, len(y0))
	for i := range floors {
		floors[i] = 1
	}
	s := New(f, len(y0), Options{Base: h, Tolerance: 1e30, Floors: floors, Fast: fast})
	copy(s.Y(), y0)
	s.Span(0, end, nil)
	return s.Y()
}

// Half the step makes an eighth of the error, whichever columns are formed.
func TestOrderWhateverTheColumns(t *testing.T) {
	fine := fixed(pendulum, []float64{1, 0}, 8, 1.0/2048, []int{0, 1})
	for name, fast := range map[string][]int{"none": nil, "one": {1}, "both": {0, 1}} {
		off := func(h float64) float64 {
			y := fixed(pendulum, []float64{1, 0}, 8, h, fast)
			return math.Hypot(y[0]-fine[0], y[1]-fine[1])
		}
		assert.InDelta(t, 8, off(1.0/32)/off(1.0/64), 1.2, name)
	}
}

// A quantity a million times as fast as the step follows the slow one, and
// leaves what both add up to as it was.
func TestFastQuantityIsFollowedAndNothingIsLost(t *testing.T) {
	f := system(func(t float64, y, d []float64) {
		in := 2 + math.Sin(t)
		out := 1e6 * y[0]
		d[0], d[1], d[2] = in-out, out, -in
	})
	s := New(f, 3, Options{Base: 1, Most: 0, Tolerance: 1e-4, Floors: []float64{1, 1, 1}, Fast: []int{0}})
	copy(s.Y(), []float64{5, 0, 0})
	s.Span(0, 10, nil)
	y := s.Y()
	assert.InDelta(t, (2+math.Sin(10))/1e6, y[0], 1e-9)
	assert.InDelta(t, 5, y[0]+y[1]+y[2], 1e-12)
	assert.InDelta(t, -20-1+math.Cos(10), y[2], 1e-3)
	assert.Less(t, s.Tries, 200)
}

// The error asked for is about the error got, and finer is finer.
func TestToleranceIsKept(t *testing.T) {
	fine := fixed(pendulum, []float64{1, 0}, 8, 1.0/4096, []int{0, 1})
	last := 0
	for _, tol := range []float64{1e-3, 1e-5, 1e-7, 1e-9} {
		s := New(system(pendulum), 2, Options{Base: 1, Most: 0, Tolerance: tol, Floors: []float64{1, 1}, Fast: []int{1}})
		copy(s.Y(), []float64{1, 0})
		s.Span(0, 8, nil)
		assert.Less(t, math.Hypot(s.Y()[0]-fine[0], s.Y()[1]-fine[1]), 30*tol, "%g", tol)
		assert.Greater(t, s.Steps, last)
		assert.Less(t, s.Tries, 3*s.Steps)
		last = s.Steps
	}
}

// A quantity that weighs four times as much is as exact as with a quarter of the
// tolerance, and weights of one are none.
func TestWeights(t *testing.T) {
	growth := system(func(_ float64, y, d []float64) { d[0], d[1] = y[0], 0 })
	at := func(tolerance float64, weights []float64) (float64, int) {
		s := New(growth, 2, Options{Base: 0.125, Most: 20, Tolerance: tolerance, Floors: []float64{1, 1}, Weights: weights})
		copy(s.Y(), []float64{1, 1})
		s.Span(0, 5, nil)
		return s.Y()[0], s.Steps
	}
	plain, steps := at(1e-4, nil)
	ones, same := at(1e-4, []float64{1, 1})
	assert.Equal(t, plain, ones)
	assert.Equal(t, steps, same)
	finer, more := at(0.25e-4, nil)
	heavy, asMany := at(1e-4, []float64{4, 1})
	assert.Equal(t, finer, heavy)
	assert.Equal(t, more, asMany)
	other, few := at(1e-4, []float64{1, 4})
	assert.Equal(t, plain, other)
	assert.Equal(t, steps, few)
	assert.Greater(t, more, steps)
}

// Between the ends of a step the cubic is as good as the method.
func TestBetweenSteps(t *testing.T) {
	worst := func(h float64) (off float64) {
		fine := New(system(pendulum), 2, Options{Base: 1.0 / 2048, Tolerance: 1e30, Floors: []float64{1, 1}})
		copy(fine.Y(), []float64{1, 0})
		at := 0.0
		s := New(system(pendulum), 2, Options{Base: h, Tolerance: 1e30, Floors: []float64{1, 1}, Fast: []int{0, 1}})
		copy(s.Y(), []float64{1, 0})
		s.Span(0, 8, func(p *Step) {
			for _, x := range []float64{0.25, 0.5, 0.75} {
				fine.Span(at, p.T+x*p.H, nil)
				at = p.T + x*p.H
				off = max(off, math.Abs(p.At(0, at)-fine.Y()[0]))
			}
			assert.Equal(t, p.Y0[1], p.At(1, p.T))
			assert.InDelta(t, p.Y1[1], p.At(1, p.T+p.H), 1e-15)
		})
		return off
	}
	assert.InDelta(t, 8, worst(1.0/16)/worst(1.0/32), 2)
}

func TestSpansJoin(t *testing.T) {
	whole := fixed(pendulum, []float64{1, 0}, 8, 1.0/64, nil)
	s := New(system(pendulum), 2, Options{Base: 1.0 / 64, Tolerance: 1e30, Floors: []float64{1, 1}})
	copy(s.Y(), []float64{1, 0})
	s.Span(0, 3, nil)
	s.Span(3, 3, nil)
	s.Span(5, 4, nil)
	s.Span(3, 8, nil)
	assert.InDeltaSlice(t, whole, s.Y(), 1e-12)
	assert.Equal(t, 8*64, s.Steps)
}

// An end that is no whole number of steps away is met exactly, and the last
// step is no crumb.
func TestEndIsMet(t *testing.T) {
	for _, end := range []float64{0.3, 1, 1.01, 1.9, 2, 2.0000001, 7.3} {
		shortest, at := math.Inf(1), 0.0
		s := New(system(func(_ float64, _, d []float64) { d[0] = 1 }), 1, Options{Base: 1, Tolerance: 1, Floors: []float64{1}})
		s.Span(0, end, func(p *Step) { shortest, at = min(shortest, p.H), p.T+p.H })
		assert.Equal(t, end, at)
		assert.InDelta(t, end, s.Y()[0], 1e-12)
		assert.GreaterOrEqual(t, shortest, min(0.5, end))
	}
}

// What decides the next step is the error rounded: its last bits do not.
func TestRungs(t *testing.T) {
	for _, c := range []struct {
		e    float64
		want int
	}{{0, 32}, {1e-30, 32}, {1, 0}, {1.0001, 0}, {0.75, 0}, {0.7, 1}, {0.5, 2}, {0.25, 5}, {0.1, 8}, {1.2, -2}, {8, -9}, {1e9, -32}, {math.NaN(), -32}, {math.Inf(1), -32}} {
		assert.Equal(t, c.want, rungs(c.e), "%g", c.e)
	}
	for e := 1e-9; e < 1e3; e *= 1.37 {
		assert.Equal(t, rungs(e), rungs(math.Nextafter(e, 1)), "%g", e)
	}
}

// The last of a span is one step, or two even ones where one would leave a crumb.
func TestLastSteps(t *testing.T) {
	s := New(system(pendulum), 2, Options{Base: 1, Tolerance: 1, Floors: []float64{1, 1}})
	s.rung = 0
	for _, c := range []struct {
		left, h float64
		last    bool
	}{{0.5, 0.5, true}, {1, 1, true}, {1 + 1e-7, 1 + 1e-7, true}, {1.01, 0.505, false}, {1.99, 0.995, false}, {2, 1, false}, {2.01, 1, false}} {
		h, last := s.length(c.left)
		assert.InDelta(t, c.h, h, 1e-15, "%g", c.left)
		assert.Equal(t, c.last, last, "%g", c.left)
	}
}

// A system without a solution ends, and says so; so does one that asks for more
// steps than it may have.
func TestWhatCannotBeFollowedIsSaid(t *testing.T) {
	none := system(func(t float64, y, d []float64) { d[0] = math.Sqrt(1 - t) })
	s := New(none, 1, Options{Base: 1, Tolerance: 1e-6, Floors: []float64{1}})
	assert.False(t, s.Span(0, 3, nil))
	for most, want := range map[int]bool{9: false, 10: true, 0: true} {
		s := New(system(pendulum), 2, Options{Base: 1, Tolerance: 1e30, Floors: []float64{1, 1}, MostTries: most})
		assert.Equal(t, want, s.Span(0, 10, nil), "%d", most)
	}
}

func TestStepsAllocateNothing(t *testing.T) {
	s := New(system(pendulum), 2, Options{Base: 0.1, Tolerance: 1e-6, Floors: []float64{1, 1}, Fast: []int{1}})
	copy(s.Y(), []float64{1, 0})
	assert.Zero(t, testing.AllocsPerRun(10, func() { s.Span(0, 1, nil) }))
}

// The cost of a step is a few evaluations and little else.
func BenchmarkSpan(b *testing.B) {
	for name, n := range map[string]int{"4": 4, "30": 30} {
		b.Run(name+" quantities", func(b *testing.B) {
			floors := make([]float64, n)
			for i := range floors {
				floors[i] = 1
			}
			f := system(func(_ float64, y, d []float64) {
				for i, v := range y {
					d[i] = -v
				}
			})
			s := New(f, n, Options{Base: 1, Tolerance: 1e30, Floors: floors, Fast: []int{0, 1, 2}})
			b.ReportAllocs()
			for b.Loop() {
				s.Span(0, 100, nil)
			}
		})
	}
}
