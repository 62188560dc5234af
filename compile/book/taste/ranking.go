package taste

import (
	"math"
	"slices"

	"gonum.org/v1/gonum/stat/distuv"
)

// Ranks are the ranks that tasters gave samples: a row a taster, a column a sample.
// Samples that a taster cannot part share the mean of their ranks.
type Ranks [][]float64

// Sums are the rank sums of the samples.
func (r Ranks) Sums() []float64 {
	sums := make([]float64, len(r[0]))
	for _, row := range r {
		for i, x := range row {
			sums[i] += x
		}
	}
	return sums
}

// tied is the sum of t^3-t over the groups of t samples that a taster did not part.
func (r Ranks) tied() float64 {
	e := 0.
	for _, row := range r {
		s := slices.Sorted(slices.Values(row))
		for i := 0; i < len(s); {
			j := i
			for j < len(s) && s[j] == s[i] {
				j++
			}
			t := float64(j - i)
			e += t*t*t - t
			i = j
		}
	}
	return e
}

// Friedman is the test that the samples differ at all (ISO 8587): its statistic,
// corrected for ties, and how often chance gives as much or more. exact says that this
// was counted over all rankings, not read from the chi-squared distribution.
//
//	F = 12/(J P (P+1)) sum R^2 - 3 J (P+1),  F' = F / (1 - E/(J P (P^2-1)))
func (r Ranks) Friedman() (f, p float64, exact bool) {
	j, n := float64(len(r)), float64(len(r[0]))
	squares := squares(r.Sums())
	f = statistic(squares, len(r), len(r[0]))
	e := r.tied()
	if e == 0 {
		if p, ok := exactFriedman(len(r), len(r[0]), squares); ok {
			return f, p, true
		}
	} else if rest := 1 - e/(j*n*(n*n-1)); rest > 0 {
		f /= rest
	} else { // nobody parted anything
		return 0, 1, true
	}
	return f, distuv.ChiSquared{K: n - 1}.Survival(f), false
}

// statistic is Friedman's, of rank sums without ties, given the sum of their squares.
func statistic(squares float64, tasters, samples int) float64 {
	j, n := float64(tasters), float64(samples)
	return 12/(j*n*(n+1))*squares - 3*j*(n+1)
}

func squares(sums []float64) float64 {
	sum := 0.
	for _, x := range sums {
		sum += x * x
	}
	return sum
}

// mostStates is how many sets of rank sums are followed before the chi-squared
// distribution has to do.
const mostStates = 20_000

// exactFriedman is how often random rankings by so many tasters give a sum of squares
// of rank sums of at least s. Sets of rank sums are followed from taster to taster; the
// order of the samples does not matter, so they are kept sorted.
func exactFriedman(tasters, samples int, s float64) (p float64, ok bool) {
	if samples > 5 {
		return 0, false
	}
	perms := permutations(samples)
	type key [5]int16
	states := map[key]float64{{}: 1}
	var order []key // of states, so that sums are made in one order
	order = append(order, key{})
	for range tasters {
		next := map[key]float64{}
		var seen []key
		for _, k := range order {
			share := states[k] / float64(len(perms))
			for _, perm := range perms {
				sums := k
				for i, x := range perm {
					sums[i] += int16(x)
				}
				slices.Sort(sums[:samples])
				if _, had := next[sums]; !had {
					seen = append(seen, sums)
				}
				next[sums] += share
			}
		}
		if len(seen) > mostStates {
			return 0, false
		}
		states, order = next, seen
	}
	for _, k := range order {
		sum := 0.
		for _, x := range k {
			sum += float64(x) * float64(x)
		}
		if sum > s-1e-6 {
			p += states[k]
		}
	}
	return min(p, 1), true
}

// leastDifference is by how much two rank sums have to differ for the two samples to
// differ at a level of alpha (ISO 8587): z sqrt(J P (P+1)/6). It is for pairs that were
// chosen before it was poured, or where Friedman's test has found a difference.
func leastDifference(tasters, samples int, alpha float64) float64 {
	z := distuv.UnitNormal.Quantile(1 - alpha/2)
	return z * math.Sqrt(float64(tasters*samples*(samples+1))/6)
}

// Page is the test of an order that was expected before it was poured (Page, J. Am.
// Stat. Assoc. 58 (1963) 216): L = sum i R_i over the samples in that order, and how
// often chance gives as much or more. exact says that this was counted; with ties, or
// with many samples, it comes from the normal distribution.
func (r Ranks) Page(order []int) (l, p float64, exact bool) {
	sums, samples := r.Sums(), len(order)
	for i, s := range order {
		l += float64(i+1) * sums[s]
	}
	if r.tied() == 0 && samples <= 7 {
		return l, exactPage(len(r), samples, int(math.Round(l))), true
	}
	j, n := float64(len(r)), float64(samples)
	z := (12*l - 3*j*n*(n+1)*(n+1)) / (n * (n + 1) * math.Sqrt(j*(n-1)))
	return l, distuv.UnitNormal.Survival(z), false
}

// exactPage is how often random rankings give a statistic of at least l: the
// distribution of one taster's, added up taster by taster.
func exactPage(tasters, samples, l int) float64 {
	one := map[int]int{}
	most, perms := 0, permutations(samples)
	for _, perm := range perms {
		sum := 0
		for i, x := range perm {
			sum += (i + 1) * x
		}
		one[sum]++
		most = max(most, sum)
	}
	all := []float64{1}
	for range tasters {
		next := make([]float64, len(all)+most)
		for a, pa := range all {
			if pa == 0 {
				continue
			}
			for b := range most + 1 {
				if one[b] > 0 {
					next[a+b] += pa * float64(one[b]) / float64(len(perms))
				}
			}
		}
		all = next
	}
	p := 0.
	for i := len(all) - 1; i >= max(l, 0); i-- {
		p += all[i]
	}
	return min(p, 1)
}

// Agreement is Kendall's coefficient of concordance, W = F/(J (P-1)): 0 if the tasters
// rank as if by lot, 1 if they all rank alike.
func (r Ranks) Agreement() float64 {
	f, _, _ := r.Friedman()
	return f / (float64(len(r)) * float64(len(r[0])-1))
}

// permutations are the orders of 1 to n, in a fixed order.
func permutations(n int) [][]int {
	if n == 0 {
		return [][]int{nil}
	}
	var out [][]int
	for _, p := range permutations(n - 1) {
		for at := range n {
			out = append(out, slices.Insert(slices.Clone(p), at, n))
		}
	}
	return out
}
