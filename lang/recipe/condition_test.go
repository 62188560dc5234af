package recipe

import (
	"testing"

	"github.com/stretchr/testify/assert"
)

// The share of a bill, the time in wood and the size of a cask, just inside and just
// outside of what is asked: a rounded number does not break a law.
func TestConditionsAtTheirEdge(t *testing.T) {
	least, most, some := Condition{Test: GrainLeast, Share: 0.51}, Condition{Test: GrainMost, Share: 0.2}, Condition{Test: GrainSome}
	assert.True(t, least.GrainsDo(0.51-0.9e-6))
	assert.False(t, least.GrainsDo(0.51-1.1e-6))
	assert.True(t, most.GrainsDo(0.2+0.9e-6))
	assert.False(t, most.GrainsDo(0.2+1.1e-6))
	assert.True(t, some.GrainsDo(1e-9))
	assert.False(t, some.GrainsDo(0))

	age := Condition{Test: AgeLeast, AgeS: 1e6}
	assert.True(t, age.Rested(1e6-99))
	assert.False(t, age.Rested(1e6-101))

	wood := Condition{Test: WoodIs, SizeM3: 0.7}
	assert.True(t, wood.SizeDoes(&Cask{SizeM3: 0.7 + 0.00006}))
	assert.False(t, wood.SizeDoes(&Cask{SizeM3: 0.7 + 0.00008}))
	assert.True(t, (&Condition{}).SizeDoes(&Cask{SizeM3: 100}))
}

func TestGrainsOfACondition(t *testing.T) {
	corn, malt := &Grain{Entry: Entry{Name: "corn"}, Cereal: "maize"}, &Grain{Entry: Entry{Name: "malt"}, Cereal: "barley", Malted: true}
	bill := &Bill{Lines: []BillLine{{Grain: corn, Share: 0.8}, {Grain: malt, Share: 0.2}}}
	for _, c := range []struct {
		cond  Condition
		share float64
		text  string
	}{
		{Condition{Grains: []string{"any"}}, 1, "grain"},
		{Condition{Grains: []string{"any"}, Malted: true}, 0.2, "malted grain"},
		{Condition{Grains: []string{"any"}, Unmalted: true}, 0.8, "unmalted grain"},
		{Condition{Grains: []string{"maize", "rye"}}, 0.8, "maize or rye"},
		{Condition{Grains: []string{"malt"}}, 0.2, "malt"},
		{Condition{Grains: []string{"barley"}, Unmalted: true}, 0, "unmalted barley"},
	} {
		assert.InDelta(t, c.share, c.cond.GrainShare(bill), 1e-12, c.text)
		assert.Equal(t, c.text, c.cond.GrainText())
	}
}

// A cask is charred by its kind alone: a char on other wood is a mistake.
func TestWoods(t *testing.T) {
	oak, charredOak, other := &CaskWood{Tree: "oak"}, &CaskWood{Tree: "oak", Charred: true}, &CaskWood{Tree: "other"}
	newCharredOak := Wood{Use: "new", Char: "charred", Of: "oak"}
	for _, c := range []struct {
		wood Wood
		cask Cask
		is   bool
	}{
		{newCharredOak, Cask{New: true, Kind: charredOak}, true},
		{newCharredOak, Cask{New: true, Kind: charredOak, Char: 3}, true},
		{newCharredOak, Cask{New: true, Kind: oak, Char: 3}, false},
		{newCharredOak, Cask{Kind: charredOak}, false},
		{newCharredOak, Cask{New: true, Kind: other, Char: 3}, false},
		{Wood{Char: "uncharred"}, Cask{Kind: oak}, true},
		{Wood{Char: "uncharred"}, Cask{Kind: charredOak}, false},
		{Wood{Use: "used"}, Cask{Kind: other}, true},
		{Wood{Use: "used"}, Cask{New: true, Kind: other}, false},
		{Wood{}, Cask{Kind: other}, true},
		{Wood{None: true}, Cask{Kind: oak}, false},
	} {
		assert.Equal(t, c.is, c.wood.Is(&c.cask), "%+v %+v", c.wood, c.cask)
	}
	assert.Equal(t, "new charred oak", newCharredOak.Text())
	assert.Equal(t, "used wood", Wood{Use: "used"}.Text())
	or := Condition{Woods: []Wood{{None: true}, {Use: "used"}}}
	assert.True(t, or.NoWoodDoes())
	assert.True(t, or.WoodDoes(&Cask{Kind: oak}))
	assert.False(t, or.WoodDoes(&Cask{Kind: oak, New: true}))
	assert.False(t, (&Condition{Woods: []Wood{newCharredOak}}).NoWoodDoes())
	assert.True(t, (&Condition{}).WoodDoes(&Cask{Kind: oak}))
}
