package check

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"newmake/lang/house"
	"newmake/lang/quantity"
)

// TestDocOfEntry: an entry's comment is what stands directly above it; the head
// of a file is the file's.
func TestDocOfEntry(t *testing.T) {
	h, err := LoadFS(bench(t, map[string]string{"library.batch": `# The file: two mills and what they send.
#
# Second paragraph of the file.

# A rule of dashes.

# Ours.
#
# From the hill field.
grain hill-corn from corn {
  moisture 12 %
}

# Nothing to do with it.

grain vale-corn from corn {
  moisture 13 %
}
grain corn {
  moisture 14 %
}
`}), "", Options{})
	require.NoError(t, err)
	require.Empty(t, h.Check())
	g := h.Library().Grains
	assert.Equal(t, "Ours.\n\nFrom the hill field.", g["hill-corn"].Doc)
	assert.Empty(t, g["vale-corn"].Doc)
	assert.Equal(t, Builtin().Library.Grains["corn"].Doc, g["corn"].Doc, "a house that only changes a figure keeps the comment")
	for name, first := range Builtin().Library.Enzymes {
		assert.NotContains(t, first.Doc, "Enzymes from a drum", name)
	}
	for name, y := range Builtin().Library.Yeasts {
		assert.NotContains(t, y.Doc, "\n\n\n", name)
	}
}

func TestLibraryItems(t *testing.T) {
	h, err := LoadFS(bench(t, map[string]string{"library.batch": `
grain corn {
  starch 70 %   # the mill, 2026
}
grain hill-corn from corn {
  moisture 12 %
}
`}), "", Options{})
	require.NoError(t, err)
	items := map[string]house.LibraryItem{}
	kinds := map[string]int{}
	for _, i := range h.LibraryItems(quantity.Both) {
		items[i.Kind+" "+i.Name] = i
		kinds[i.Kind]++
	}
	assert.Len(t, Builtin().LibraryItems(quantity.Both), len(items)-1)
	assert.Len(t, kinds, len(house.LibraryKinds()))

	corn := items["grain corn"]
	assert.True(t, corn.House)
	assert.False(t, corn.Own)
	assert.Equal(t, "library.batch", corn.At.Src.Name)
	for _, l := range corn.Lines {
		assert.Equal(t, l.Field == "starch", l.House, l.Field)
		if l.Field != "cereal" && l.Field != "malted" {
			assert.NotEmpty(t, l.Source, l.Field)
		}
		if l.House {
			assert.Equal(t, house.LibraryLine{Field: "starch", Text: "70 %", Source: "the mill, 2026", House: true, Was: "71.8 %, 70..73.6 %", Figure: &house.Figure{Low: 70, High: 70, Unit: "%"}, At: l.At}, l)
		}
	}
	hill := items["grain hill-corn"]
	assert.True(t, hill.Own)
	assert.Equal(t, "corn", hill.From)
	assert.Greater(t, len(hill.Lines), 5)

	oats := items["grain oats"]
	assert.False(t, oats.House || oats.Own)
	bourbon := items["standard bourbon"]
	assert.Contains(t, bourbon.Lines, house.LibraryLine{Field: "grain", Text: "corn at least 51 %", Source: "5.143(c), table 1 (2)", At: bourbon.Lines[4].At})
	mash := items["model mash"]
	require.NotEmpty(t, mash.Lines)
	assert.NotContains(t, mash.Lines[0].Text, mash.Lines[0].Field)
}

// TestLibraryInUnits: a figure in the other system's units is that of the file, to three
// figures; what is in the reader's units stays as written.
func TestLibraryInUnits(t *testing.T) {
	line := func(units quantity.System, kind, name, field string) house.LibraryLine {
		for _, i := range Builtin().LibraryItems(units) {
			for _, l := range i.Lines {
				if i.Kind == kind && i.Name == name && l.Field == field {
					return l
				}
			}
		}
		t.Fatalf("no %s %s %s", kind, name, field)
		return house.LibraryLine{}
	}
	pound := line(quantity.SI, "grain", "corn", "bushel")
	assert.Equal(t, "25.4 kg", pound.Text, "56 lb of 0.45359237 kg: NIST SP 811 (2008), appendix B.8")
	assert.Equal(t, &house.Figure{Low: 25.4, High: 25.4, Unit: "kg"}, pound.Figure)
	assert.Equal(t, "56 lb", line(quantity.US, "grain", "corn", "bushel").Text)
	hot := line(quantity.US, "grain", "corn", "gelatinizes")
	assert.Equal(t, "144..167 F", hot.Text, "62..75 C")
	assert.Equal(t, &house.Figure{Low: 144, High: 167, Unit: "F"}, hot.Figure)
	assert.Equal(t, "62..75 C", line(quantity.Both, "grain", "corn", "gelatinizes").Text)
	assert.Equal(t, "at most 125 proof", line(quantity.SI, "standard", "bourbon", "entry").Text, "no factor leads from proof at 60 F to % abv at 20 C")
}
