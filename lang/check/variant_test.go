package check

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"newmake/lang/quantity"
	"newmake/lang/recipe"
)

func TestVariantOfAVariant(t *testing.T) {
	h, err := LoadFS(bench(t, map[string]string{"v.batch": `
batch "Third" from "Second" {
  cask {
    entry  100 proof
  }
}
batch "Second" from "Base" {
  bill {
    corn   66 %
    rye    20 %
  }
  mash {
    backset-pH  4.2 pH
  }
  ferment {
    dose   glucoamylase
  }
}
`}), "", Options{})
	require.NoError(t, err)
	require.Empty(t, h.Check())
	b, _ := h.Batch("Third")
	require.NotNil(t, b)
	assert.Equal(t, []string{"Second", "Base"}, b.Chain)
	assert.InDelta(t, 0.2, b.Bill.Lines[1].Share, 1e-12)
	assert.Equal(t, "rye", b.Bill.Lines[1].Grain.Name, "a line keeps its place")
	assert.InDelta(t, 900*quantity.PoundKg, b.Bill.TotalKg, 1e-9, "the total stays")
	assert.Equal(t, 4.2, b.Mash.BacksetPH)
	assert.Len(t, b.Mash.Steps, 13, "the steps stay")
	assert.Len(t, b.Ferm.Doses, 1)
	assert.Equal(t, recipe.Strength{Value: 0.5, Basis: recipe.Proof}, b.Cask.Entry)
	assert.Equal(t, []string{"Third", "Second"}, h.Variants("Base"))

	base, _ := h.Batch("Base")
	assert.InDelta(t, 0.7, base.Bill.Lines[0].Share, 1e-12, "the parent is not touched")
	assert.Empty(t, base.Ferm.Doses)
}

func TestVariantReplacesSteps(t *testing.T) {
	b, list := read(t, `batch "V" from "Base" {
  mash {
    water  320 gal at 60 F
    dose   alpha-amylase
    add    corn, rye
    heat   to 190 F
    rest   50 min
    cool   to 148 F
    add    distillers-malt
    rest   60 min
    cool   to 78 F
  }
}
`)
	require.NotNil(t, b, list.Error())
	assert.Len(t, b.Mash.Steps, 9)
	assert.Zero(t, b.Mash.BacksetShare)
	assert.Equal(t, "Kettle", b.Mash.Cooker.Name, "the vessel stays")
}

func TestVariantRemoves(t *testing.T) {
	b, list := read(t, `batch "V" from "Base" {
  remove standard
  bill {
    remove rye
    corn   86 %
  }
  mash {
    water  320 gal at 60 F
    dose   alpha-amylase
    add    corn
    heat   to 190 F
    rest   50 min
    cool   to 148 F
    add    distillers-malt
    rest   60 min
    cool   to 78 F
  }
  cask {
    remove bottle
  }
}
`)
	require.NotNil(t, b, list.Error())
	assert.Nil(t, b.Standard)
	assert.Len(t, b.Bill.Lines, 2)
	assert.Zero(t, b.Cask.BottleM3)
}

// TestVariantIsNamed: what is said of a line that a variant inherits says which
// variant it is about.
func TestVariantIsNamed(t *testing.T) {
	_, list := read(t, `batch "V" from "Base" {
  bill {
    corn  30 %
    rye   56 %
  }
  standard corn-whisky
}
`)
	require.True(t, list.HasErrors())
	for _, d := range list {
		if d.At.Src.Name == "base.batch" {
			assert.Equal(t, `in the variant "V"`, d.Related[len(d.Related)-1].Text)
		}
	}
}

func TestHouseOverridesLibrary(t *testing.T) {
	h, err := LoadFS(bench(t, map[string]string{"library.batch": `
# Ours, from the mill's sheet.
grain corn {
  starch 70 %   # the mill, 2026
}
grain old-corn from corn {
  moisture 10 %
}
grain older-corn from old-corn {
  moisture 9 %
}
model mash {
  branched 25 %   # fitted to our runs
}
standard house-bourbon from bourbon {
  age at least 4 years  # the house
}
`}), "", Options{})
	require.NoError(t, err)
	require.Empty(t, h.Check())
	built := Builtin().Library
	corn := h.Library().Grains["corn"]
	assert.InDelta(t, 0.70, corn.Starch, 1e-12)
	assert.InDelta(t, built.Grains["corn"].Moisture, corn.Moisture, 1e-12, "the other figures stay")
	assert.Equal(t, "the mill, 2026", corn.Source["starch"])
	assert.Equal(t, built.Grains["corn"].Source["moisture"], corn.Source["moisture"])
	assert.True(t, corn.House)
	assert.Equal(t, "Ours, from the mill's sheet.", corn.Doc)
	assert.InDelta(t, 0.718, built.Grains["corn"].Starch, 1e-12, "the built-in library is not touched")

	older := h.Library().Grains["older-corn"]
	assert.InDelta(t, 0.09, older.Moisture, 1e-12)
	assert.InDelta(t, 0.70, older.Starch, 1e-12)
	assert.Equal(t, "corn", older.Cereal)

	assert.InDelta(t, 0.25, h.Library().Models["mash"].Values["branched"], 1e-12)
	assert.Equal(t, built.Models["mash"].Values["gel-split"], h.Library().Models["mash"].Values["gel-split"])
	assert.Len(t, h.Library().Standards["house-bourbon"].Conditions, len(built.Standards["bourbon"].Conditions)+1)
	b, _ := h.Batch("Base")
	assert.Same(t, corn, b.Bill.Lines[0].Grain)
}

// TestVariantKeepsItsUnits: one bottle in mL does not turn a US batch into an SI
// one, nor change what its gallons and % abv mean.
func TestVariantKeepsItsUnits(t *testing.T) {
	for body, want := range map[string]recipe.System{
		`cask { bottle 750 mL at 40 % abv }`: recipe.US,
		`units si`:                           recipe.SI,
	} {
		b, list := read(t, "batch \"V\" from \"Base\" {\n"+body+"\n}\n")
		require.Empty(t, list)
		assert.Equal(t, want, b.Units, body)
		assert.Equal(t, recipe.US, b.Gauge, body)
	}
}
