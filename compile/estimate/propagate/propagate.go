// Package propagate carries uncertainty from what goes into a calculation to what
// comes out: by the slopes, as the Guide to the expression of uncertainty in
// measurement has it (JCGM 100:2008, clause 5), and from draws (JCGM 101:2008).
package propagate

import "math"

// Linear gives what a calculation makes of its inputs, and the covariance of that,
// from the covariance of the inputs and the slopes, which are central differences of a
// tenth of each input's standard deviation (JCGM 100, equation 13, and F.1.2 for several
// outputs). It is as good as the calculation is a line over a few of those; through a
// ferment it is not, and draws are wanted.
func Linear(calculate func(in []float64) []float64, in []float64, covariance [][]float64) (out []float64, of [][]float64) {
	out = calculate(in)
	slopes := make([][]float64, len(in)) // by input, of each output
	for j := range in {
		slopes[j] = make([]float64, len(out))
		step := math.Sqrt(covariance[j][j]) / 10
		if step == 0 {
			continue
		}
		beside := append([]float64(nil), in...)
		beside[j] = in[j] + step
		up := calculate(beside)
		beside[j] = in[j] - step
		down := calculate(beside)
		for k := range out {
			slopes[j][k] = (up[k] - down[k]) / (2 * step)
		}
	}
	of = make([][]float64, len(out))
	for a := range of {
		of[a] = make([]float64, len(out))
		for b := range of[a] {
			for i := range in {
				for j := range in {
					of[a][b] += slopes[i][a] * covariance[i][j] * slopes[j][b]
				}
			}
		}
	}
	return out, of
}

// Freedom is the effective degrees of freedom of a sum of independent parts, each with a
// standard deviation and degrees of freedom of its own (Welch and Satterthwaite;
// JCGM 100, equation G.2b). One that is known without doubt has infinitely many.
func Freedom(sds, freedoms []float64) float64 {
	var variance, parts float64
	for i, u := range sds {
		variance += u * u
		parts += u * u * u * u / freedoms[i]
	}
	return variance * variance / parts
}

// Shortest is the shortest interval that holds a part of the draws, which must be in
// rising order (JCGM 101, clause 7.7 and its note).
func Shortest(draws []float64, part float64) (low, high float64) {
	n := len(draws)
	if n == 0 {
		return math.NaN(), math.NaN()
	}
	hold := min(int(math.Ceil(part*float64(n))), n-1)
	best := 0
	for i := range n - hold {
		if draws[i+hold]-draws[i] < draws[best+hold]-draws[best] {
			best = i
		}
	}
	return draws[best], draws[best+hold]
}

// Central is the interval that leaves as many draws below it as above; the draws must be
// in rising order.
func Central(draws []float64, part float64) (low, high float64) {
	n := len(draws)
	if n == 0 {
		return math.NaN(), math.NaN()
	}
	hold := min(int(math.Ceil(part*float64(n))), n-1)
	r := (n - hold) / 2
	return draws[r], draws[r+hold]
}
