package notice_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"newmake/compile/matter/stream"
	"newmake/compile/notice"
	"newmake/compile/numbers"
	"newmake/compile/stage/still"
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
}
