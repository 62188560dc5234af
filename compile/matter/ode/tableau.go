package ode

// ROS34PW2: Rang and Angermann, BIT Numer. Math. 45 (2005) 761, table 4. The
// tests hold it to the conditions of order 3 for a W-method.
const (
	stages = 4
	gamma  = 0.43586652150845900
)

var (
	alpha = [stages][stages]float64{
		{},
		{0.87173304301691801},
		{0.84457060015369423, -0.11299064236484185},
		{0, 0, 1},
	}
	gammas = [stages][stages]float64{
		{gamma},
		{-0.87173304301691801, gamma},
		{-0.90338057013044082, 0.054180672388095326, gamma},
		{0.24212380706095346, -1.2232505839045147, 0.54526025533510214, gamma},
	}
	weights = [stages]float64{0.24212380706095346, -1.2232505839045147, 1.5452602553351020, gamma}
	coarser = [stages]float64{0.37810903145819369, -0.096042292212423178, 0.5, 0.21793326075422950}
)

// The same in the stages' sums u = gammas k, which need no product with the
// Jacobian (Hairer and Wanner, Solving Ordinary Differential Equations II, 2nd
// ed. 1996, IV.7).
var (
	at              [stages]float64         // time of each stage
	along, carried  [stages][stages]float64 // alpha gammas^-1, and 1/gamma - gammas^-1
	result, omitted [stages]float64         // weights gammas^-1, and how it parts from coarser
)

func init() {
	var inverse [stages][stages]float64
	for j := range stages { // forward substitution, gammas being lower triangular
		for i := j; i < stages; i++ {
			sum := 0.0
			if i == j {
				sum = 1
			}
			for k := j; k < i; k++ {
				sum -= gammas[i][k] * inverse[k][j]
			}
			inverse[i][j] = sum / gammas[i][i]
		}
	}
	for i := range stages {
		for j := range stages {
			at[i] += alpha[i][j]
			carried[i][j] = -inverse[i][j]
			for k := range stages {
				along[i][j] += alpha[i][k] * inverse[k][j]
			}
			result[j] += weights[i] * inverse[i][j]
			omitted[j] += (weights[i] - coarser[i]) * inverse[i][j]
		}
		carried[i][i] = 0
	}
}
