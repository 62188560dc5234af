package recipe

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"newmake/lang/schema"
)

// linesOf gives the paths of the lines that the language has, one of each where
// there may be several: those of a named block stand below the name "one".
func linesOf(f *schema.Field, at Path) []Path {
	var out []Path
	for _, l := range f.Block.Fields {
		switch {
		case l.Step, l.Edit, l.Name == "remove":
			continue // steps are aligned, edits are gone once they are made
		case l == schema.Bottle && f == schema.Batch:
			out = append(out, PathBottle) // of a batch that goes into no wood
			continue
		case l == schema.PromiseLine:
			out = append(out, PathPromise.Child("1"))
			continue
		}
		p := at.Child(l.Name)
		switch {
		case l == schema.Tank:
			p = at.Child("tank")
		case l == schema.RackHouse:
			p = at.Child("rack-house")
		case f == schema.RackHouse && l.Repeat: // the months are one value
			p = at.Child(l.Name)
		case l.Repeat && l.Block != nil: // vessels
			p = at.Child("one")
		case l.Repeat:
			p = p.Child("one")
		}
		if l.Block == nil {
			out = append(out, p)
			continue
		}
		if !l.Repeat {
			out = append(out, p)
		}
		out = append(out, linesOf(l, p)...)
	}
	if f.Block.Any != nil {
		out = append(out, at.Child("one"))
	}
	return out
}

// elsewhere are lines whose meaning stands in the value of another line.
var elsewhere = map[Path]string{
	PathPlantClimate: "of the cask, if it says nothing else: cask.climate",
	PathCosts:        "a block of prices",
}

// The table and the language have the same values: every line has a row, so that
// it is compared, nudged and tried, and every row is reached by a line.
func TestTheTableIsTheLanguage(t *testing.T) {
	lines := append(linesOf(schema.Batch, Path{}), linesOf(schema.Plant, PathPlant)...)
	for _, f := range schema.Library {
		if f != schema.Standard && f != schema.Country && f != schema.Aroma { // compared as a whole; for the books, and for tastings, alone
			lines = append(lines, linesOf(f, PathLibrary.Child(f.Name, "one"))...)
		}
	}
	b := fullBatch()
	rows := b.Values()
	for _, line := range lines {
		if elsewhere[line] != "" {
			continue
		}
		found := false
		for _, v := range rows {
			found = found || v.Path.Within(line)
		}
		assert.True(t, found, "the language has the line %s, and no row of the table is of it: give it one in lang/recipe/values_*.go", line)
	}
	for _, v := range rows {
		if v.Path.Within(PathMash.Child("step")) {
			continue
		}
		found := false
		for _, line := range lines {
			found = found || v.Path.Within(line)
		}
		assert.True(t, found, "the table has %s, and the language has no line of it: give it one in its block in lang/schema", v.Path)
	}
	assert.Greater(t, len(lines), 100)
}
