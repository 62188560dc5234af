package compile

import (
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"newmake/compile/plan"
	"newmake/lang/recipe"
	"newmake/lang/testflag"
)

// own is a batch whose steps, plant and vessels a test can change.
func own(b *recipe.Batch) *recipe.Batch {
	c := *b
	c.Bill.Lines, c.Mash.Steps = slices.Clone(b.Bill.Lines), slices.Clone(b.Mash.Steps)
	p := *b.Plant
	c.Plant = &p
	for _, v := range []**recipe.Vessel{&c.Mash.Cooker, &c.Strip.Still, &c.Spirit.Still} {
		w := **v
		*v = &w
	}
	return &c
}

// ways are what physics or arithmetic says of a change: the numbers that must
// rise and those that must fall, whatever the constants of the models.
var ways = []struct {
	name   string
	change func(*recipe.Batch)
	skip   func(*recipe.Batch) bool
	up     []func(*plan.Plan) float64
	down   []func(*plan.Plan) float64
}{
	{
		name: "more grain in the same liquor",
		change: func(b *recipe.Batch) {
			b.Bill.TotalKg *= 1.05
			for i := range b.Bill.Lines {
				b.Bill.Lines[i].MassKg *= 1.05
			}
			b.Resolve()
		},
		up: []func(*plan.Plan) float64{og, washPure, co2, func(p *plan.Plan) float64 { return p.Mash.MostVolumeL }, extractKg},
	},
	{
		name: "more liquor",
		change: func(b *recipe.Batch) {
			for i := range b.Mash.Steps {
				b.Mash.Steps[i].VolumeM3 *= 1.05
			}
		},
		up: []func(*plan.Plan) float64{washL}, down: []func(*plan.Plan) float64{og, washAbv},
	},
	{
		name: "higher up", change: func(b *recipe.Batch) { b.Plant.ElevationM += 300 },
		down: []func(*plan.Plan) float64{boilC, stripPotC, spiritPotC, func(p *plan.Plan) float64 { return p.Plant.PressureKPa }},
	},
	{
		name: "a later stop of the stripping run", change: func(b *recipe.Batch) { b.Strip.StopAt.Value *= 0.9 },
		up:   []func(*plan.Plan) float64{lowL, lowPure, stripHours, func(p *plan.Plan) float64 { return p.Strip.HeatKWh }},
		down: []func(*plan.Plan) float64{lowAbv, alePure},
	},
	{
		name: "hearts that go on longer", change: func(b *recipe.Batch) { b.Spirit.HeartsTo.Strength.Value -= 0.01 },
		skip: func(b *recipe.Batch) bool { return b.Spirit.Feints }, // with feints the charge changes too
		up:   []func(*plan.Plan) float64{heartsL, heartsPure}, down: []func(*plan.Plan) float64{heartsAbv, feintsL},
	},
	{
		name: "hearts that begin later", change: func(b *recipe.Batch) { b.Spirit.HeartsFrom.VolumeM3 *= 1.1 },
		skip: func(b *recipe.Batch) bool { return b.Spirit.Feints },
		up:   []func(*plan.Plan) float64{feintsL}, down: []func(*plan.Plan) float64{heartsL, heartsPure, heartsAbv},
	},
	{
		name: "more reflux in the wash still", change: func(b *recipe.Batch) { b.Strip.Still.Reflux += 0.02 },
		up: []func(*plan.Plan) float64{lowAbv, func(p *plan.Plan) float64 { return p.Strip.Curve[0].AbvPct }}, down: []func(*plan.Plan) float64{lowL},
	},
	{
		name: "more power under the wash still", change: func(b *recipe.Batch) { b.Strip.Still.HeatsW *= 1.05; b.Plant.BoilerW = 0 },
		skip: func(b *recipe.Batch) bool { return b.Plant.BoilerW > 0 },
		down: []func(*plan.Plan) float64{stripHours},
	},
	{
		name: "a weaker entry", change: func(b *recipe.Batch) { b.Cask.Entry.Value -= 0.01 },
		up: []func(*plan.Plan) float64{func(p *plan.Plan) float64 { return p.Reduction.WaterKg }, func(p *plan.Plan) float64 { return p.Reduction.To.VolumeL }},
	},
	{
		name: "a longer rest in wood", change: func(b *recipe.Batch) { b.Cask.RestS *= 1.1 },
		skip: func(b *recipe.Batch) bool { return b.Cask.SizeM3 == 0 },
		up:   []func(*plan.Plan) float64{func(p *plan.Plan) float64 { return p.Cask.CaskLossPct }},
	},
	{
		name: "dearer heat", change: func(b *recipe.Batch) { b.Costs.PerKWh += 0.05 },
		up: []func(*plan.Plan) float64{func(p *plan.Plan) float64 {
			if p.Cost == nil {
				return 0
			}
			return p.Cost.Total
		}},
	},
}

func og(p *plan.Plan) float64         { return p.Mash.OriginalGravitySG }
func washPure(p *plan.Plan) float64   { return p.Ferment.PureL }
func washL(p *plan.Plan) float64      { return p.Ferment.WashVolumeL }
func washAbv(p *plan.Plan) float64    { return p.Ferment.AbvPct }
func co2(p *plan.Plan) float64        { return p.Ferment.CO2Kg }
func extractKg(p *plan.Plan) float64  { return p.Bill.ExtractKg }
func boilC(p *plan.Plan) float64      { return p.Plant.WaterBoilsC }
func stripPotC(p *plan.Plan) float64  { return p.Strip.Curve[0].PotC }
func spiritPotC(p *plan.Plan) float64 { return p.Spirit.Curve[len(p.Spirit.Curve)-1].PotC }
func stripHours(p *plan.Plan) float64 { return p.Strip.TotalHours }
func lowL(p *plan.Plan) float64       { return p.Strip.Fractions[0].VolumeL }
func lowPure(p *plan.Plan) float64    { return p.Strip.Fractions[0].PureL }
func lowAbv(p *plan.Plan) float64     { return p.Strip.Fractions[0].AbvPct }
func alePure(p *plan.Plan) float64    { return p.Strip.Residue.PureL }
func heartsL(p *plan.Plan) float64    { return overOf(p, plan.StreamHearts).VolumeL }
func heartsPure(p *plan.Plan) float64 { return overOf(p, plan.StreamHearts).PureL }
func heartsAbv(p *plan.Plan) float64  { return overOf(p, plan.StreamHearts).AbvPct }
func feintsL(p *plan.Plan) float64    { return p.Spirit.Feints.VolumeL }

func overOf(p *plan.Plan, name string) plan.Fraction {
	for _, f := range p.Spirit.Fractions {
		if f.Name == name {
			return f
		}
	}
	return plan.Fraction{}
}

// Where physics says which way a number goes, it goes that way, in every batch.
func TestMonotone(t *testing.T) {
	tried := map[string]int{}
	randomBatches(t, 40/testflag.Every(2), func(t *testing.T, b *recipe.Batch) {
		memo := new(Memo)
		before, list := memo.Compile(b)
		require.NotNil(t, before, list.Error())
		for _, w := range ways {
			if w.skip != nil && w.skip(b) {
				continue
			}
			c := own(b)
			w.change(c)
			after, list := memo.Compile(c)
			require.NotNil(t, after, "%s: %s", w.name, list.Error())
			if after.Reduction == nil || before.Reduction == nil || after.Cask.Casks == 0 || before.Cask.Casks == 0 {
				continue
			}
			tried[w.name]++
			for i, f := range w.up {
				assert.Greater(t, f(after), f(before), "%s: number %d must rise", w.name, i+1)
			}
			for i, f := range w.down {
				assert.Less(t, f(after), f(before), "%s: number %d must fall", w.name, i+1)
			}
		}
	})
	for _, w := range ways {
		assert.Greater(t, tried[w.name], 5, w.name)
	}
}
