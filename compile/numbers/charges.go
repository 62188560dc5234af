//go:build !js

package numbers

import (
	"newmake/compile/stage/still"
	"newmake/lang/recipe"
)

// strippedApart runs the charges of a wash still as they were made. in is that of the mean of
// them, and warm the same of one that the pot ale before it heats.
func strippedApart(memo *Memo, b *recipe.Batch, in, warm still.StripInput, coldFirst bool) ([]still.Run, error) {
	var out []still.Run
	for i, c := range b.Strip.Apart {
		one := warm
		if i == 0 && coldFirst {
			one = in
		}
		one.Wash, one.Stop = one.Wash.Scale(c.Share*float64(len(b.Strip.Apart))), meant(b, c.Stop)
		r, err := memo.strip(one)
		if err != nil {
			return nil, err
		}
		out = append(out, r)
	}
	return out, nil
}

// distilledApart runs the charges of a spirit still as they were made. in is that of the mean of
// them.
func distilledApart(memo *Memo, b *recipe.Batch, in still.SpiritInput) ([]still.Run, error) {
	var out []still.Run
	n := float64(len(b.Spirit.Apart))
	for _, c := range b.Spirit.Apart {
		one := in
		one.LowWines, one.Feints = in.LowWines.Scale(n*c.Share), in.Feints.Scale(n*c.FeintsShare)
		one.ForeshotsM3, one.HeartsFrom, one.HeartsTo, one.Stop = c.ForeshotsM3, cutAlone(c.HeartsFrom), cutAlone(c.HeartsTo), meant(b, c.Stop)
		one.HeartsFrom.Strength, one.HeartsTo.Strength = meant(b, c.HeartsFrom.Strength), meant(b, c.HeartsTo.Strength)
		r, err := memo.spirit(one)
		if err != nil {
			return nil, err
		}
		out = append(out, r)
	}
	return out, nil
}

// meant is a strength on the basis on which it is meant, as lot.OnBasis has those of the recipe.
func meant(b *recipe.Batch, s recipe.Strength) recipe.Strength {
	if b.Gauge == recipe.US && s.Basis == recipe.ABV {
		s.Basis = recipe.Proof
	}
	return s
}
