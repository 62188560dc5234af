package edit

import (
	"cmp"
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
	// Where the example is what this batch says, another.
	other := map[string]string{
		"start": "2026-03-04 08:00", "mash.backset-pH": "4.1 pH", "mash.backset-solids": "5 %", "ferment.pitch": "distillers-yeast 0.7 g/L",
		"ferment.hold": "76..86 F", "strip.stop": "at 3 % abv", "spirit.foreshots": "0.6 gal", "spirit.hearts": "from 5 gal to 62 % abv", "spirit.stop": "at 5 % abv",
		"cask.fill": "53 gal new charred-oak char 4", "cask.bottle": "750 mL at 95 proof", "cask.climate": "hot",
		"plant.elevation": "1,250 ft", "plant.shift": "08:00 to 17:00, tue to sat", "plant.crew": "3", "plant.zone": `"America/Chicago"`, "plant.costs.currency": "CAD",
		`plant."Wash still".agitator`: "no", `plant."Wash still".condenser`: "water to 120 F, distillate at 68 F",
	}
	values := map[recipe.Key]recipe.Value{}
	for _, v := range b.Values() {
		values[v.Key()] = v
	}
	count := 0
	try := func(block *schema.Block, at recipe.Path) {
		for _, f := range block.Fields {
			if f.Repeat || f == schema.Bottle && at.IsZero() || f.Block != nil || f.Step || f.Edit || f.Name == "remove" {
				continue
			}
			path := at.Child(f.Name)
			value := cmp.Or(other[path.String()], strings.TrimSpace(strings.TrimPrefix(f.Example, f.Name)))
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
			require.GreaterOrEqual(t, i, 0, "%s is in no row of the table: give it one in batchRows or plantRows, lang/recipe/values_*.go", path)
			// The house has one plant, units are those of the printed page, and package check tries the library.
			if path != recipe.PathAt && path != recipe.PathUnits && !path.Within(recipe.PathLibrary) {
				changed := slices.ContainsFunc(all, func(v recipe.Value) bool {
					was, ok := values[v.Key()]
					return !ok || !v.Same(was)
				})
				assert.True(t, changed, "%s = %s changes no value: read it where its block is in lang/check/internal/batches", path, value)
			}
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
