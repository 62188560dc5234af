package compile

import (
	"os"
	"testing"
	"testing/fstest"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"newmake/compile/plan"
	"newmake/lang/check"
	"newmake/lang/recipe"
)

// Each congener is somewhere: its shares come to all of the charge's. The
// estimate lies within its own bounds.
func TestCongenersAreAccountedFor(t *testing.T) {
	for _, name := range []string{ferry, "Stone Ferry", "Toll Road", "Low Bridge"} {
		p, list := Compile(batch(t, lantern, name))
		require.NotNil(t, p, list.Error())
		c := p.Congeners
		require.NotNil(t, c)
		assert.Equal(t, 30.0, c.UncertaintyPct)
		assert.False(t, c.HouseOwn)
		require.Len(t, c.Each, 8)
		for _, k := range c.Each {
			sum := k.LeftPct.Value
			require.Len(t, k.Fractions, 4)
			for i, f := range k.Fractions {
				assert.Equal(t, p.Spirit.Fractions[i].Name, f.Fraction)
				for _, e := range []plan.Estimate{f.SharePct, f.Relative, k.LeftPct, k.Gain} {
					assert.LessOrEqual(t, e.Low, e.Value)
					assert.LessOrEqual(t, e.Value, e.High)
				}
				sum += f.SharePct.Value
			}
			assert.InDelta(t, 100, sum, 0.003, k.Name) // rounded five times to 0.001
			assert.GreaterOrEqual(t, k.Gain.Value, 1.0)
		}
		for _, at := range c.Curve {
			require.Len(t, at.Relative, len(c.Each))
		}
		assert.Equal(t, p.Spirit.Curve[0].Min, c.Curve[0].Min)
	}
}

// Methanol runs with the ethanol: no fraction is without it, and the hearts have
// hardly less than the charge. A plan that showed otherwise would mislead.
func TestNoCutRemovesMethanol(t *testing.T) {
	p, _ := Compile(batch(t, lantern, ferry))
	for _, k := range p.Congeners.Each {
		if k.Name != "methanol" {
			continue
		}
		for _, f := range k.Fractions {
			assert.Greater(t, f.Relative.Value, 0.5, f.Fraction)
			assert.Less(t, f.Relative.Value, 2.0, f.Fraction)
		}
		return
	}
	t.Error("no methanol")
}

// A house puts its own figures over the library's.
func TestHouseOwnCongeners(t *testing.T) {
	fsys := fstest.MapFS{}
	for _, name := range []string{"house.batch", "ferry-landing.batch"} {
		text, err := os.ReadFile("../" + lantern + "/" + name)
		require.NoError(t, err)
		fsys[name] = &fstest.MapFile{Data: text}
	}
	fsys["own.batch"] = &fstest.MapFile{Data: []byte("model congener {\n  uncertainty 10 %      # gas chromatography of twelve runs\n  isobutanol-factor 1.2 # the same\n}\n")}
	h, err := check.LoadFS(fsys, "own", check.Options{})
	require.NoError(t, err)
	b, list := h.Batch(ferry)
	require.NotNil(t, b, list.Error())
	mine, list := Compile(b)
	require.NotNil(t, mine, list.Error())
	library, _ := Compile(batch(t, lantern, ferry))
	assert.True(t, mine.Congeners.HouseOwn)
	assert.Equal(t, 10.0, mine.Congeners.UncertaintyPct)
	for i, k := range mine.Congeners.Each {
		was := library.Congeners.Each[i]
		width := func(e plan.Estimate) float64 { return e.High - e.Low }
		assert.Less(t, width(k.Fractions[2].SharePct), width(was.Fractions[2].SharePct), k.Name)
		if k.Name == "isobutanol" {
			assert.Greater(t, k.Fractions[1].Relative.Value, 1.1*was.Fractions[1].Relative.Value, "a fifth more volatile, so more of it in the heads")
		} else {
			assert.Equal(t, was.Fractions[2].SharePct.Value, k.Fractions[2].SharePct.Value, k.Name)
		}
	}
}

// Without the model there is no section, and a memo does not work it out.
func TestCongenersCanBeAbsent(t *testing.T) {
	b := own(batch(t, lantern, ferry))
	p, _ := new(Memo).Compile(b)
	assert.Nil(t, p.Congeners)
	b.Models = map[string]*recipe.Model{"mash": b.Models["mash"], "ferment": b.Models["ferment"], "cask": b.Models["cask"]}
	p, list := Compile(b)
	require.NotNil(t, p, list.Error())
	assert.Nil(t, p.Congeners)
}
