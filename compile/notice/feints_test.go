package notice_test

import (
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"newmake/compile/matter/stream"
	"newmake/compile/notice"
	"newmake/compile/numbers"
	"newmake/compile/stage/still"
	"newmake/lang/diag"
	"newmake/lang/recipe"
)

// A way out of feints that never settle is offered only if its heads and hearts are
// of a usual size and it fits the still: just inside and just outside.
func TestWhichWayIsOffered(t *testing.T) {
	help := func(headsKg, heartsKg, fill float64) string {
		v := &recipe.Vessel{Kind: recipe.Still, Name: "S", HoldsM3: 1, HeatsW: 1e4}
		b := &recipe.Batch{Plant: &recipe.Plant{}, Spirit: recipe.Spirit{Still: v, Feints: true}, Strip: recipe.Strip{Still: v}}
		tried := *b
		tried.Spirit.HeartsFrom = recipe.Cut{By: recipe.ByVolume, VolumeM3: 0.02}
		run := still.Run{Charge: stream.Stream{EthanolKg: 100}, LeftHotM3: 1, MostFill: fill, Fractions: []still.Fraction{
			{Name: still.Heads, Stream: stream.Stream{EthanolKg: headsKg}}, {Name: still.Hearts, Stream: stream.Stream{EthanolKg: heartsKg, WaterKg: heartsKg / 2}},
		}}
		never := numbers.Spirit{Run: still.Run{Problems: []still.Problem{still.ProblemNotSteady}}}
		list := notice.Spirit(b, never, []numbers.Way{{By: numbers.HeartsByVolume, Batch: &tried, Spirit: numbers.Spirit{Run: run}}})
		require.Len(t, list, 1)
		return list[0].Help
	}
	for _, c := range []struct {
		heads, hearts, fill float64
		offered             bool
	}{
		{11, 45, 0.7, true}, {11.2, 45, 0.7, true}, {11.3, 45, 0.7, false},
		{5, 40.1, 0.7, true}, {5, 39.9, 0.7, false},
		{5, 45, 0.749, true}, {5, 45, 0.751, false},
	} {
		assert.Equal(t, c.offered, strings.HasPrefix(help(c.heads, c.hearts, c.fill), "tried for this batch"), "%v", c)
	}
	assert.Contains(t, help(5, 45, 0.751), "`hearts from 5.3 gal to ...` would settle, and then the spirit charge with its feints")
	assert.Contains(t, help(11.3, 45, 0.751), "cuts farther apart", "neither its size nor its heads are as they should be")
}

// What is wrong with the batch as it is written is nothing against a way out of it; what
// only the way would bring is.
func TestAWayBringsNothingNew(t *testing.T) {
	offered := func(by numbers.WayBy, written, tried float64) bool {
		v := &recipe.Vessel{Kind: recipe.Still, Name: "S", HoldsM3: 1, HeatsW: 1e4}
		b := &recipe.Batch{Plant: &recipe.Plant{}, Spirit: recipe.Spirit{Still: v, Feints: true}, Strip: recipe.Strip{Still: v}}
		run := still.Run{Charge: stream.Stream{EthanolKg: 100}, ChargeABV: tried, LeftHotM3: 1, MostFill: 0.5, Fractions: []still.Fraction{
			{Name: still.Heads, Stream: stream.Stream{EthanolKg: 5}}, {Name: still.Hearts, Stream: stream.Stream{EthanolKg: 45, WaterKg: 20}},
		}}
		never := numbers.Spirit{Run: still.Run{ChargeABV: written, LeftHotM3: 1, Problems: []still.Problem{still.ProblemNotSteady}}}
		list := notice.Spirit(b, never, []numbers.Way{{By: by, Batch: b, Spirit: numbers.Spirit{Run: run}}})
		i := slices.IndexFunc(list, func(d diag.Diagnostic) bool { return d.Code == diag.CodeNotSteady })
		require.GreaterOrEqual(t, i, 0, list.Error())
		if strings.HasPrefix(list[i].Help, "tried for this batch") {
			return true
		}
		assert.Equal(t, by == numbers.HeartsByVolume, strings.Contains(list[i].Help, "would settle"), "only a volume of hearts is named with what is against it")
		return false
	}
	assert.True(t, offered(numbers.HeartsByVolume, 0.28, 0.319))
	assert.False(t, offered(numbers.HeartsByVolume, 0.28, 0.321), "too strong a charge is new")
	assert.True(t, offered(numbers.HeartsByVolume, 0.33, 0.321), "it is said already")
	assert.False(t, offered(numbers.FirstBatch, 0.28, 0.321))
}
