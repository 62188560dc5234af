//go:build js

package numbers

import (
	"newmake/compile/stage/still"
	"newmake/lang/recipe"
)

// The page plans recipes, whose charges are alike.

func strippedApart(*Memo, *recipe.Batch, still.StripInput, still.StripInput, bool) ([]still.Run, error) {
	return nil, nil
}

func distilledApart(*Memo, *recipe.Batch, still.SpiritInput) ([]still.Run, error) { return nil, nil }
