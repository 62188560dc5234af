// Package shrink pools the same quantity found in several runs, each with a standard
// deviation of its own: how much the runs differ from one another, where they
// lie together, and the best estimate of each.
package shrink

import "math"

// Pooled is what several runs say together.
type Pooled struct {
	Mean, SD float64 // over all runs, and how well it is known
	Between  float64 // standard deviation from run to run
	Q        float64 // scatter about the mean in the runs' own standard deviations; its mean is N-1 if runs do not differ
	// ToCome is the root mean square of what the spread may be: by how much a run to come
	// scatters about the mean. Excess is that scatter's kurtosis above a normal's 3, since the
	// spread is not known for certain. Only WithPrior gives it; else it is 0.
	ToCome, Excess float64
}

// DerSimonianLaird pools runs with the spread between them found from their own scatter
// (DerSimonian and Laird, Controlled Clinical Trials 7 (1986) 177). It needs five runs or more:
// for fewer see WithPrior.
func DerSimonianLaird(y, s []float64) Pooled {
	p := pool(y, s, 0)
	var sum, squares float64
	for _, sd := range s {
		w := 1 / (sd * sd)
		sum += w
		squares += w * w
	}
	q := p.Q
	if spread := sum - squares/sum; spread > 0 {
		p = pool(y, s, max(0, (q-float64(len(y)-1))/spread))
	}
	p.Q = q
	return p
}

// pool is the mean at a given variance between runs.
func pool(y, s []float64, between float64) Pooled {
	var weights, sum, q float64
	for i := range y {
		w := 1 / (s[i]*s[i] + between)
		weights += w
		sum += w * y[i]
	}
	mean := sum / weights
	for i := range y {
		q += (y[i] - mean) * (y[i] - mean) / (s[i]*s[i] + between)
	}
	return Pooled{Mean: mean, SD: 1 / math.Sqrt(weights), Between: math.Sqrt(between), ToCome: math.Sqrt(between), Q: q}
}

const (
	steps = 400 // of the integral over the spread
	reach = 6   // how far out it goes, in scales of the prior
)

// WithPrior pools runs with a half-normal prior on the spread between them, of the given
// scale. Between is the mean of what is then known of the spread, so a few
// runs that happen to agree do not make it nothing. The mean of the runs has a flat prior and is integrated
// out (Gelman et al., Bayesian Data Analysis, 3rd ed., equation 5.21).
func WithPrior(y, s []float64, scale float64) Pooled {
	var weight, mean, square, spread, second, fourth float64
	top := math.Inf(-1)
	logs := make([]float64, steps)
	at := func(i int) float64 { return (float64(i) + .5) / steps * reach * scale }
	for i := range logs {
		tau := at(i)
		p := pool(y, s, tau*tau)
		logs[i] = math.Log(p.SD) - p.Q/2 - tau*tau/(2*scale*scale)
		for _, sd := range s {
			logs[i] -= math.Log(sd*sd+tau*tau) / 2
		}
		top = max(top, logs[i])
	}
	for i, l := range logs {
		tau, w := at(i), math.Exp(l-top)
		p := pool(y, s, tau*tau)
		weight += w
		mean += w * p.Mean
		square += w * (p.SD*p.SD + p.Mean*p.Mean)
		spread += w * tau
		second += w * tau * tau
		fourth += w * tau * tau * tau * tau
	}
	mean, spread, second, fourth = mean/weight, spread/weight, second/weight, fourth/weight
	return Pooled{
		Mean: mean, SD: math.Sqrt(square/weight - mean*mean), Between: spread,
		ToCome: math.Sqrt(second), Excess: 3 * (fourth/(second*second) - 1),
		Q: pool(y, s, 0).Q,
	}
}
