package still

import (
	"fmt"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"newmake/lang/recipe"
)

// A cut by the clock at the minute at which the spout comes to a strength gives the
// hearts that the cut by that strength gives: at each flow, with a jacket and with live
// steam, with feints returned and without.
func TestACutByTheClockIsThatByStrength(t *testing.T) {
	same := func(t *testing.T, want, got Run) {
		t.Helper()
		require.Empty(t, got.Problems)
		for i, f := range want.Fractions {
			assert.InDelta(t, f.EthanolKg, got.Fractions[i].EthanolKg, 1e-5*want.Charge.EthanolKg, f.Name)
			assert.InDelta(t, f.WaterKg, got.Fractions[i].WaterKg, 1e-5*want.Charge.EthanolKg, f.Name)
			assert.InDelta(t, f.EndS, got.Fractions[i].EndS, 2, f.Name)
		}
	}
	minutes := func(f Fraction, r Run) recipe.Cut { return recipe.Cut{By: recipe.ByTime, TimeS: f.StartS - r.HeatUpS} }
	for _, heated := range []recipe.Heating{recipe.Jacket, recipe.Direct} {
		for _, feints := range []bool{false, true} {
			for _, hours := range []float64{1.5, 2.5, 4} {
				t.Run(fmt.Sprint(heated, feints, hours), func(t *testing.T) {
					in := secondRun(t)
					in.Still.HeatedBy = heated
					in.ForeshotsM3, in.HeartsFrom, in.HeartsTo = 0.002, recipe.Cut{By: recipe.ByVolume, VolumeM3: 0.018}, byABV(0.635)
					in.Pace = recipe.Pace{Foreshots: recipe.FractionPace{OverS: 900}, Hearts: recipe.FractionPace{OverS: hours * 3600}}
					run := func(in SpiritInput) Run {
						if feints {
							r, _, err := Steady(in)
							require.NoError(t, err)
							return r
						}
						return spirit1(t, in)
					}
					want := run(in)
					require.Empty(t, want.Problems)
					heads := want.Fraction(Heads)
					require.Greater(t, heads.EndS-heads.StartS, headsLeastS, "or the heads are slowed for their own sake")

					in.HeartsFrom = minutes(want.Fraction(Hearts), want)
					same(t, want, run(in))

					in.HeartsTo = minutes(want.Fraction(Tails), want)
					in.Pace.Hearts = recipe.FractionPace{FlowM3S: want.Fraction(Hearts).VolumeM3 / (hours * 3600)}
					same(t, want, run(in))
				})
			}
		}
	}
}

// A minute later at the spout is a minute's flow less of hearts.
func TestACutByTheClockAMinuteLater(t *testing.T) {
	in := secondRun(t)
	in.HeartsFrom, in.HeartsTo = recipe.Cut{By: recipe.ByTime, TimeS: 1200}, recipe.Cut{By: recipe.ByTime, TimeS: 5400}
	in.Pace = recipe.Pace{Hearts: recipe.FractionPace{FlowM3S: 60e-3 / 3600}}
	a := spirit1(t, in)
	in.HeartsFrom.TimeS += 60
	b := spirit1(t, in)
	assert.InEpsilon(t, 1e-3, a.Fraction(Hearts).VolumeM3-b.Fraction(Hearts).VolumeM3, 5e-3)
}

// What cannot be is an error, and no cut.
func TestACutByTheClockHasATime(t *testing.T) {
	in := secondRun(t)
	in.HeartsFrom = recipe.Cut{By: recipe.ByTime, TimeS: -1}
	_, err := SpiritRun(in)
	require.ErrorContains(t, err, "from 0 up")
	in.HeartsFrom.TimeS = 0
	_, err = SpiritRun(in)
	require.NoError(t, err)
}
