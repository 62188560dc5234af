package check

import (
	"fmt"
	"strings"
	"testing"
	"testing/fstest"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"newmake/lang/diag"
	"newmake/lang/recipe"
)

// racked reads a plant with one rack house of these lines, and a cask that lies somewhere.
func racked(t *testing.T, lines, place string) (*recipe.Plant, []string) {
	t.Helper()
	text := fmt.Sprintf("plant \"One\" {\n  elevation 100 m\n  rack-house \"Rack house\" {\n%s\n  }\n}\ncask \"C-1\" {\n  2026-03-12 to %s\n}\n", lines, place)
	h, err := LoadFS(fstest.MapFS{"house.batch": &fstest.MapFile{Data: []byte(text)}}, "", Options{})
	require.NoError(t, err)
	_, list := h.Inventory()
	list = append(list, h.plant(h.Plants[0]).Diags...)
	var said []string
	for _, d := range list {
		if d.Code == diag.CodeRack || d.Code == diag.CodeMonths || d.Code == diag.CodeOutOfRange || d.Code == diag.CodeUnusual {
			said = append(said, d.Summary)
		}
	}
	return h.plant(h.Plants[0]).Plant, said
}

// A year of air is twelve months, or one line for all of them.
func TestYearOfAir(t *testing.T) {
	const at = `"Rack house"`
	all := func(but string) string {
		var b strings.Builder
		for i, m := range strings.Fields("jan feb mar apr may jun jul aug sep oct nov dec") {
			if m != but {
				fmt.Fprintf(&b, "    air %s %d C, %d %%\n", m, i, 50+i)
			}
		}
		return b.String()
	}
	p, said := racked(t, all(""), at)
	assert.Empty(t, said)
	require.True(t, p.Air().Said)
	assert.Equal(t, recipe.Air{TempC: 11, Humidity: 0.61}, p.Air().Months[11])
	assert.InDelta(t, 0.555, p.Air().Mean().Humidity, 1e-9)

	p, said = racked(t, "    air 13 C, 66 %", at)
	assert.Empty(t, said)
	assert.Equal(t, recipe.Air{TempC: 13, Humidity: 0.66}, p.Air().Months[0])
	assert.Equal(t, p.Air().Months[0], p.Air().Months[11])

	p, said = racked(t, "", at)
	assert.Empty(t, said)
	assert.False(t, p.Air().Said)

	for lines, want := range map[string]string{
		all("mar"):                             "the air of mar is not written",
		all("") + "    air jan 3 C, 60 %":      "the air of jan is written twice",
		all("") + "    air 3 C, 60 %":          "the air is written for all the year and for months too",
		"    air 3 C, 60 %\n    air 4 C, 60 %": "the air of all the year is written twice",
	} {
		_, said := racked(t, lines, at)
		require.Len(t, said, 1, lines)
		assert.Contains(t, said[0], want)
	}
}

// Rows and tiers are held against the rack house, just inside and just outside; one that
// does not say how many it has, has any.
func TestWhereCasksLie(t *testing.T) {
	const six = "    rows 6\n    tiers 3"
	for place, want := range map[string]string{
		`"Rack house", row 6, tier 3`: "",
		`"Rack house", row 7, tier 3`: `"Rack house" has 6 rows, and this is row 7`,
		`"Rack house", row 6, tier 4`: `"Rack house" has 3 tiers, and this is tier 4`,
		`"Rick house", row 6, tier 3`: `"Rick house" is no rack house of the plant`,
	} {
		_, said := racked(t, six, place)
		if want == "" {
			assert.Empty(t, said, place)
			continue
		}
		assert.Equal(t, []string{want}, said, place)
	}
	_, said := racked(t, "", `"Rack house", row 60, tier 40`)
	assert.Empty(t, said)
}
