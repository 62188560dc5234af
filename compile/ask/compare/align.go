package compare

import (
	"math"
	"slices"

	"newmake/lang/recipe"
)

// pair is a step of the old mash beside one of the new; -1 where there is none.
type pair struct{ old, new int }

const (
	gap        = 1.0           // cost of a step that has no counterpart
	impossible = math.MaxInt32 // two steps that are not one and the same
)

// align puts the steps of two mashes side by side, at the least cost.
func align(old, new []namedStep, both func(grain string) bool) []pair {
	n, m := len(old), len(new)
	best := make([][]float64, n+1)
	for i := range best {
		best[i] = make([]float64, m+1)
	}
	for i := n; i >= 0; i-- {
		for j := m; j >= 0; j-- {
			switch {
			case i == n:
				best[i][j] = gap * float64(m-j)
			case j == m:
				best[i][j] = gap * float64(n-i)
			default:
				best[i][j] = min(best[i+1][j+1]+apart(old[i], new[j], both), best[i+1][j]+gap, best[i][j+1]+gap)
			}
		}
	}
	var out []pair
	for i, j := 0, 0; i < n || j < m; {
		switch {
		case i < n && j < m && best[i][j] == best[i+1][j+1]+apart(old[i], new[j], both):
			out = append(out, pair{i, j})
			i, j = i+1, j+1
		case i < n && best[i][j] == best[i+1][j]+gap:
			out = append(out, pair{i, -1})
			i++
		default:
			out = append(out, pair{-1, j})
			j++
		}
	}
	return out
}

// apart is how far two steps are from being the same one: 0 the same, below two
// gaps one that was changed.
func apart(a, b namedStep, both func(string) bool) float64 {
	if a.Verb != b.Verb {
		return impossible
	}
	switch a.Verb {
	case recipe.MashAdd:
		return grainsApart(a.grains, b.grains, both)
	case recipe.MashDose:
		switch {
		case a.Enzyme.Name != b.Enzyme.Name:
			return 1.2
		case a.Share == b.Share && a.MassKg == b.MassKg || a.Share == b.Share && a.Share > 0:
			return 0
		}
		return 0.4
	case recipe.MashWater, recipe.MashBackset, recipe.MashSparge:
		if a.Share > 0 && a.Share == b.Share && a.TempC == b.TempC {
			return 0
		}
		return changed(ratio(a.VolumeM3, b.VolumeM3), math.Abs(a.TempC-b.TempC)/50)
	case recipe.MashHeat, recipe.MashCool:
		return changed(math.Abs(a.TempC-b.TempC)/50, ratio(a.DurationS, b.DurationS))
	default:
		return changed(ratio(a.DurationS, b.DurationS), 0)
	}
}

// changed is 0 for the same, and from 0.4 up for what differs.
func changed(a, b float64) float64 {
	if a == 0 && b == 0 {
		return 0
	}
	return 0.4 + 0.4*min(a+b, 1)
}

// ratio is how far two amounts are apart, 0 when they are the same.
func ratio(a, b float64) float64 {
	if a == b {
		return 0
	}
	if a <= 0 || b <= 0 {
		return 1
	}
	return math.Abs(math.Log(a / b))
}

// grainsApart looks at what two `add` lines put in. A grain that only one of the
// bills has says nothing against them.
func grainsApart(a, b []string, both func(string) bool) float64 {
	if slices.Equal(a, b) {
		return 0
	}
	shared, stray := 0, 0
	for _, g := range a {
		if slices.Contains(b, g) {
			shared++
		} else if both(g) {
			stray++
		}
	}
	for _, g := range b {
		if !slices.Contains(a, g) && both(g) {
			stray++
		}
	}
	switch {
	case stray == 0:
		return 0.2
	case shared > 0:
		return 0.5
	}
	return 1.8
}
