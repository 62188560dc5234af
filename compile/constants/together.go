package constants

import "newmake/lang/recipe"

// Pair is two constants of a list, by their places in it, that are known together.
type Pair struct {
	One, Two    int
	Correlation float64
}

// Together are the pairs of a list that were learned together: what is known of one goes
// with the other.
func Together(of []Constant, l *recipe.Learned) []Pair {
	if l == nil {
		return nil
	}
	at := map[string]int{}
	for i, c := range of {
		if _, ok := l.Of(c.Key()); ok {
			at[c.Key()] = i
		}
	}
	var out []Pair
	for _, p := range l.Together {
		i, ok := at[recipe.ConstantKey(p.One[0], p.One[1])]
		j, too := at[recipe.ConstantKey(p.Two[0], p.Two[1])]
		if ok && too && i != j && p.Correlation > -1 && p.Correlation < 1 {
			out = append(out, Pair{i, j, p.Correlation})
		}
	}
	return out
}
