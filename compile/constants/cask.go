package constants

import "newmake/lang/recipe"

// lossOf is a loss of the cask by evaporation: the house's own, or that of its climate
// in the model.
func lossOf(b *recipe.Batch, line recipe.Path, own func(*recipe.Climate) *float64) []use {
	if b.Cask.Kind == nil {
		return nil
	}
	c := b.Cask.Climate
	if *own(&c) > 0 {
		return []use{{is: 1, paths: []recipe.Path{line}, set: func(b *recipe.Batch, x float64) { *own(&b.Cask.Climate) *= x }}}
	}
	name := c.Named + "-" + line.Last()
	if m := b.Models["cask"]; m == nil || !(m.Values[name] > 0) {
		return nil
	}
	return []use{{
		is: 1, sure: ofEntry(&b.Models["cask"].Entry, name, b.Models["cask"].Values[name]), paths: []recipe.Path{recipe.PathLibrary.Child("model", "cask", name)},
		set: func(b *recipe.Batch, x float64) { b.Models["cask"].Values[name] *= x },
	}}
}

func lossFirst(_ *row, b *recipe.Batch) []use {
	return lossOf(b, recipe.PathLossFirst, func(c *recipe.Climate) *float64 { return &c.LossFirstYear })
}

func lossLater(_ *row, b *recipe.Batch) []use {
	return lossOf(b, recipe.PathLoss, func(c *recipe.Climate) *float64 { return &c.LossYearly })
}

func soak(_ *row, b *recipe.Batch) []use {
	k := b.Cask.Kind
	if k == nil || !(k.SoakFrac > 0) {
		return nil
	}
	return []use{{
		of: k.Name, is: 1, sure: ofEntry(&k.Entry, "soak", k.SoakFrac), paths: []recipe.Path{recipe.PathLibrary.Child("wood", k.Name, "soak")},
		set: func(b *recipe.Batch, x float64) { b.Cask.Kind.SoakFrac *= x },
	}}
}
