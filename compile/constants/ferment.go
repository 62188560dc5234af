package constants

import "newmake/lang/recipe"

func yeastPath(y *recipe.Yeast, line string) recipe.Path {
	return recipe.PathLibrary.Child("yeast", y.Name, line)
}

func yeastLag(_ *row, b *recipe.Batch) []use {
	y := b.Ferm.Yeast
	if y == nil || y.LagS <= 0 {
		return nil
	}
	return []use{{
		of: y.Name, is: y.LagS, sure: ofEntry(&y.Entry, "lag", y.LagS), paths: []recipe.Path{yeastPath(y, "lag")},
		set: func(b *recipe.Batch, x float64) { b.Ferm.Yeast.LagS = x },
	}}
}

func yeastRate(_ *row, b *recipe.Batch) []use {
	y := b.Ferm.Yeast
	if y == nil || y.GrowthPerS <= 0 {
		return nil
	}
	return []use{{
		of: y.Name, is: 1, sure: ofEntry(&y.Entry, "growth", y.GrowthPerS), paths: []recipe.Path{yeastPath(y, "growth")},
		set: func(b *recipe.Batch, x float64) { b.Ferm.Yeast.GrowthPerS *= x },
	}}
}

// vigor is the rate of the yeast again, as it is on the day.
func vigor(r *row, b *recipe.Batch) []use {
	out := yeastRate(r, b)
	for i := range out {
		out[i].sure = nil // that is the house's
		out[i].as = Constant{ID: "yeast-rate", Of: out[i].of}.Key()
	}
	return out
}
