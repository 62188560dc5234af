package exponential

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
)

func TestAgainstMath(t *testing.T) {
	worst := 0.0
	for x := -699.9; x < 699.9; x += 0.00137 {
		want := math.Exp(x)
		worst = max(worst, math.Abs(Exp(x)-want)/want)
	}
	assert.Less(t, worst, 1e-15)
}

func TestEnds(t *testing.T) {
	for _, x := range []float64{math.Inf(-1), -800, -745, -700, 700, 709, 710, math.Inf(1)} {
		assert.Equal(t, math.Exp(x), Exp(x), "%g", x)
	}
	assert.True(t, math.IsNaN(Exp(math.NaN())))
	assert.Equal(t, 1.0, Exp(0))
	for _, x := range []float64{-699.99, 699.99, 1e-300, -1e-300} {
		assert.InEpsilon(t, math.Exp(x), Exp(x), 1e-15, "%g", x)
	}
}

func BenchmarkExp(b *testing.B) {
	var xs [1024]float64
	for i := range xs {
		xs[i] = float64(i)/20 - 25
	}
	for name, f := range map[string]func(float64) float64{"here": Exp, "math": math.Exp} {
		b.Run(name, func(b *testing.B) {
			sum := 0.0
			for b.Loop() {
				for _, x := range xs {
					sum += f(x)
				}
			}
			b.ReportMetric(float64(b.Elapsed().Nanoseconds())/float64(b.N*len(xs)), "ns/exp")
		})
	}
}
