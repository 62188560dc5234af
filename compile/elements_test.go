package compile

import (
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"

	"newmake/lang/diag"
	"newmake/lang/recipe"
)

// Bare elements heat water. Grain in what they heat bakes onto them, in the cooker as
// in the still.
func TestGrainOnElementsOfTheCooker(t *testing.T) {
	for _, c := range []struct {
		by    recipe.Heating
		heats bool // with the grain in
		want  bool
	}{
		{recipe.Elements, true, true}, {recipe.Elements, false, false}, {recipe.Jacket, true, false}, {recipe.Direct, true, false},
	} {
		_, list := planOf(t, func(b *recipe.Batch) {
			b.Mash.Cooker.HeatedBy = c.by
			if !c.heats {
				b.Mash.Steps = slices.DeleteFunc(b.Mash.Steps, func(s recipe.MashStep) bool { return s.Verb == recipe.MashHeat })
			}
		})
		said := slices.ContainsFunc(list, func(d diag.Diagnostic) bool { return d.Code == diag.CodeScorches })
		assert.Equal(t, c.want, said, "%s, heated %v", c.by, c.heats)
	}
}
