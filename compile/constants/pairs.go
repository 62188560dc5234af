package constants

import (
	"math"

	"newmake/lang/recipe"
)

// Pair is two constants of a list, by their places in it, that are known together.
type Pair struct {
	One, Two    int
	Correlation float64
}

// leader is the constant before it in a list that one goes with most, and how much.
type leader struct {
	at          int
	correlation float64
}

// leaders are those of the constants that were learned together with one before them.
// Of several it is the one with the greatest correlation; what a constant has in common
// with the others is then what its leader has: so the correlations always fit together.
func leaders(of []Constant, l *recipe.Learned) map[int]leader {
	if l == nil || len(l.Together) == 0 {
		return nil
	}
	at := map[string]int{}
	for i, c := range of {
		if _, ok := l.Of(c.Key()); ok && c.Owner == House {
			at[c.Key()] = i
		}
	}
	out := map[int]leader{}
	for _, p := range l.Together {
		i, ok := at[recipe.ConstantKey(p.One[0], p.One[1])]
		j, too := at[recipe.ConstantKey(p.Two[0], p.Two[1])]
		if !ok || !too || i == j || !(math.Abs(p.Correlation) < 1) {
			continue
		}
		i, j = min(i, j), max(i, j)
		if math.Abs(p.Correlation) > math.Abs(out[j].correlation) {
			out[j] = leader{i, p.Correlation}
		}
	}
	return out
}

// Together are the pairs of a list that go together, by what was learned of them.
func Together(of []Constant, l *recipe.Learned) []Pair {
	lead := leaders(of, l)
	var out []Pair
	with := make([][]float64, len(of)) // of each with those before it
	for j := range of {
		with[j] = make([]float64, j)
		to, ok := lead[j]
		if !ok {
			continue
		}
		for i := range j {
			switch {
			case i == to.at:
				with[j][i] = to.correlation
			case i < to.at:
				with[j][i] = to.correlation * with[to.at][i]
			default:
				with[j][i] = to.correlation * with[i][to.at]
			}
			if with[j][i] != 0 {
				out = append(out, Pair{i, j, with[j][i]})
			}
		}
	}
	return out
}
