package odds

import "math"

// Shares tell which inputs make the spread of a number: y is fitted by straight lines
// and squares of the draws, all at once by least squares, and what an input's line and
// square bring is its share of the variance. The inputs are drawn apart from one
// another, so the shares of a sum are its first-order indices (Sobol, 1993); what comes
// of two together, or of a sharper bend, is in no share and missing in R2.
type fitted struct {
	Share []float64 // of the variance of y, by input; less what noise alone would bring
	R2    float64   // of the variance, adjusted for the number of terms
}

// drawsPerTerm is how many draws each line or square wants at least.
const drawsPerTerm = 4

// shares fits y, a value a draw, by the scores z, a row a draw. False if y does not
// vary or there are too few draws.
func shares(z [][]float64, y []float64) (fitted, bool) {
	n := len(y)
	if n == 0 {
		return fitted{}, false
	}
	k := len(z[0])
	perInput := 2
	if n < drawsPerTerm*(2*k+1) {
		perInput = 1
	}
	if n < drawsPerTerm*(k+1) {
		return fitted{}, false
	}
	terms := make([][]float64, 0, perInput*k) // by column, each with its mean taken out
	for j := range k {
		line := make([]float64, n)
		for i := range z {
			line[i] = z[i][j]
		}
		centre(line)
		terms = append(terms, line)
		if perInput == 2 {
			square := make([]float64, n)
			for i, x := range line {
				square[i] = x * x
			}
			centre(square)
			terms = append(terms, square)
		}
	}
	y = append([]float64(nil), y...)
	centre(y)
	total := dot(y, y)
	if !(total > 0) {
		return fitted{}, false
	}
	beta := leastSquares(terms, y)
	left := 0.0
	for i := range y {
		r := y[i]
		for t, b := range beta {
			r -= b * terms[t][i]
		}
		left += r * r
	}
	free := float64(n - 1 - len(terms))
	noise := left / free // of one draw
	out := fitted{Share: make([]float64, k), R2: max(0, 1-(left/free)/(total/float64(n-1)))}
	for j := range k {
		brings := 0.0
		for i := range y {
			part := 0.0
			for t := j * perInput; t < (j+1)*perInput; t++ {
				part += beta[t] * terms[t][i]
			}
			brings += part * part
		}
		out.Share[j] = max(0, (brings-float64(perInput)*noise)/total)
	}
	return out, true
}

// centre takes the mean out of a column.
func centre(x []float64) {
	mean := 0.0
	for _, v := range x {
		mean += v
	}
	mean /= float64(len(x))
	for i := range x {
		x[i] -= mean
	}
}

func dot(a, b []float64) float64 {
	sum := 0.0
	for i := range a {
		sum += a[i] * b[i]
	}
	return sum
}

// leastSquares fits y by columns, by Householder's reflections (Golub, Numer. Math. 7
// (1965) 206). A column that the ones before it make up has no part.
func leastSquares(columns [][]float64, y []float64) []float64 {
	n, m := len(y), len(columns)
	a := make([][]float64, m)
	for t := range a {
		a[t] = append([]float64(nil), columns[t]...)
	}
	y = append([]float64(nil), y...)
	diag := make([]float64, m)
	for t := range m {
		col := a[t]
		before, norm := math.Sqrt(dot(columns[t], columns[t])), 0.0
		for i := t; i < n; i++ {
			norm += col[i] * col[i]
		}
		norm = math.Sqrt(norm)
		if norm <= 1e-10*before || before == 0 {
			continue
		}
		if col[t] > 0 {
			norm = -norm
		}
		diag[t] = norm
		col[t] -= norm // col is now the reflection's vector
		scale := -norm * col[t]
		reflect := func(x []float64) {
			s := 0.0
			for i := t; i < n; i++ {
				s += col[i] * x[i]
			}
			s /= scale
			for i := t; i < n; i++ {
				x[i] -= s * col[i]
			}
		}
		for u := t + 1; u < m; u++ {
			reflect(a[u])
		}
		reflect(y)
	}
	beta := make([]float64, m)
	for t := m - 1; t >= 0; t-- {
		if diag[t] == 0 {
			continue
		}
		s := y[t]
		for u := t + 1; u < m; u++ {
			s -= a[u][t] * beta[u]
		}
		beta[t] = s / diag[t]
	}
	return beta
}
