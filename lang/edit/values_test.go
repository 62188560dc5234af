package edit

import (
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"newmake/lang/diag"
	"newmake/lang/recipe"
	"newmake/lang/schema"
)

// Every line of the language can be tried by its path, whether the batch has it
// already or not, and stands in its place then.
func TestEveryLineCanBeTried(t *testing.T) {
	const name = "Ferry Landing"
	h := house(t)
	b := batch(t, h, name)
	count := 0
	try := func(block *schema.Block, at recipe.Path) {
		for _, f := range block.Fields {
			if f.Repeat || f == schema.Bottle && at.IsZero() || f.Block != nil || f.Step || f.Edit || f.Name == "remove" {
				continue
			}
			path := at.Child(f.Name)
			value := strings.TrimSpace(strings.TrimPrefix(f.Example, f.Name))
			r, err := Apply(h, b, []Change{{Path: path, Value: value}})
			if list, ok := err.(diag.List); ok {
				assert.NotEqual(t, diag.CodeChangePath, list[0].Code, "%s = %s: %v", path, value, err)
				continue
			}
			require.NoError(t, err, path)
			after, err := r.House(lantern, nil)
			require.NoError(t, err)
			tried, list := after.Batch(name)
			if tried == nil {
				for _, d := range list { // an example need not go with this batch; but it is read
					assert.NotContains(t, []diag.Code{diag.CodeTwice, diag.CodeUnknownField}, d.Code, "%s = %s: %v", path, value, d.Summary)
				}
				continue
			}
			all := tried.Values()
			i := slices.IndexFunc(all, func(v recipe.Value) bool { return v.Path.Within(path) })
			if path == recipe.PathPlantClimate {
				continue // it is the cask's: cask.climate
			}
			require.GreaterOrEqual(t, i, 0, "%s is in no row of the table", path)
			line := strings.Join(strings.Fields(all[i].At.Text()), " ")
			assert.Contains(t, f.Name+" "+value, strings.TrimPrefix(line, f.Name+" "), "the place of %s", path)
			count++
		}
	}
	try(schema.Batch.Block, recipe.Path{})
	try(schema.Mash.Block, recipe.PathMash)
	try(schema.Ferment.Block, recipe.PathFerm)
	try(schema.Strip.Block, recipe.PathStrip)
	try(schema.Spirit.Block, recipe.PathSpirit)
	try(schema.Cask.Block, recipe.PathCask)
	try(schema.Plant.Block, recipe.PathPlant)
	try(schema.Costs.Block, recipe.PathCosts)
	for _, f := range schema.Plant.Block.Fields {
		if f.Name == "still" {
			try(f.Block, recipe.PathPlant.Child("Wash still"))
		}
	}
	try(schema.Grain.Block, recipe.PathLibrary.Child("grain", "corn"))
	try(schema.Yeast.Block, recipe.PathLibrary.Child("yeast", b.Ferm.Yeast.Name))
	assert.Greater(t, count, 60)
}
