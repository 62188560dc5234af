package show_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"newmake/compile/measure"
	"newmake/compile/plan"
	"newmake/compile/show/internal/plantest"
)

// Each tank holds at most what the stage gives, when that stage's last step ends, and
// keeps what goes into the next batch.
func TestTanksHoldWhatTheStagesGive(t *testing.T) {
	p := plantest.Plan(t, plantest.Lantern, "Stone Ferry")
	tank := map[string]plan.TankUse{}
	for _, u := range p.Plant.Tanks {
		require.Len(t, u.For, 1)
		tank[u.For[0]] = u
	}
	ends := map[string]string{}
	starts := map[string]string{}
	for _, s := range p.Schedule.Steps {
		ends[s.ID], starts[s.ID] = s.End, s.Start
	}
	low := p.Strip.Fraction("low wines")
	assert.InDelta(t, low.VolumeL, tank["low-wines"].MostL, 0.06)
	assert.InDelta(t, low.WineGallons, tank["low-wines"].MostGallons, 0.006)
	assert.Equal(t, ends["strip.collect"], tank["low-wines"].FullestAt)
	assert.Zero(t, tank["low-wines"].LeftL)

	assert.InDelta(t, p.Spirit.Feints.VolumeL, tank["feints"].MostL, 0.06)
	assert.InDelta(t, p.Spirit.Feints.VolumeL, tank["feints"].LeftL, 0.06, "they are kept for the next charge")
	assert.Equal(t, ends["spirit.tails"], tank["feints"].FullestAt)

	assert.InDelta(t, p.Reduction.To.VolumeL, tank["spirit"].MostL, 0.06)
	assert.Equal(t, ends["fill.reduce"], tank["spirit"].FullestAt)
	assert.InDelta(t, p.Cask.Leftover.VolumeL, tank["spirit"].LeftL, 0.06)

	assert.InDelta(t, p.Mash.KeptL, tank["weak-worts"].MostL, 0.06)
	assert.InDelta(t, p.Mash.KeptL, tank["weak-worts"].LeftL, 0.06)
	assert.Equal(t, starts["mash.1"], tank["hot-liquor"].FullestAt)
}

// A tank that is used for nothing says so, and one with a long name keeps its number apart.
func TestTanksAreSaid(t *testing.T) {
	p := plantest.Plan(t, plantest.Lantern, "Ferry Landing")
	said := func(u measure.Units) string { return strings.Join(strings.Fields(asText(t, p, u)), " ") }
	assert.Contains(t, said(measure.US), "Weak worts tank nothing for weak worts; holds 180 gal")
	p.Plant.Tanks = []plan.TankUse{{Names: []string{"Low wines and feints charger"}, For: []string{"low-wines", "feints"}, HoldsL: 4000, MostL: 2000, FillPct: 50, MostGallons: 528.9}}
	assert.Contains(t, said(measure.US), "Low wines and feints charger 529 gal for low wines and feints together; 50 % of 1,057 gal; empty at the end")
	assert.Contains(t, said(measure.SI), "Low wines and feints charger 2,000 L for low wines and feints together; 50 % of 4,000 L; empty at the end")
	p.Plant.Tanks = nil
	assert.NotContains(t, said(measure.US), "TANKS")
}
