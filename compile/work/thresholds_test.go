package work

import (
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"newmake/compile/matter/stream"
	"newmake/compile/numbers"
	"newmake/compile/plan"
	"newmake/compile/stage/mash"
	"newmake/lang/recipe"
)

// small is a batch of which only what the cases need is filled in.
func small() *numbers.Batch {
	n := &numbers.Batch{Batch: &recipe.Batch{
		Units: recipe.SI, Gauge: recipe.SI, Plant: &recipe.Plant{WaterC: 10, Crew: 2},
		Mash: recipe.Mash{Cooker: &recipe.Vessel{Name: "Kettle", HeatsW: 10e3}, Steps: []recipe.MashStep{{Verb: recipe.MashWater, VolumeM3: 0.1, TempC: 10}}},
		Bill: recipe.Bill{TotalKg: 100},
		Cask: recipe.Cask{Kind: &recipe.CaskWood{}, SizeM3: 0.05},
	}}
	n.Mashed.Steps = []mash.Step{{EndC: 10, HeatJ: 1e6}}
	n.Filled.Done = true
	n.Distilled.Hearts = stream.Stream{EthanolKg: 50, WaterKg: 50}
	return n
}

func job(t *testing.T, jobs []Job, key string) (Job, bool) {
	t.Helper()
	i := slices.IndexFunc(jobs, func(j Job) bool { return j.Key == key })
	if i < 0 {
		return Job{}, false
	}
	return jobs[i], true
}

// A cask is filled and lifted by two from 100 L on.
func TestWhoLiftsACask(t *testing.T) {
	for litres, people := range map[float64]int{99: 1, 100: 2, 190: 2} {
		n := small()
		n.Cask.SizeM3 = litres / 1000
		fill, ok := job(t, fillJobs(n, plan.Cask{Casks: 1, SizeL: litres, Fill: &plan.Lot{}}, &plan.Reduction{}), "fill.cask")
		require.True(t, ok)
		assert.Equal(t, people, fill.People, "%g L", litres)
		assert.Contains(t, fill.Cautions, "lift")
	}
	for crew, people := range map[int]int{1: 1, 2: 2, 3: 2} {
		n := small()
		n.Cask.SizeM3, n.Plant.Crew = 0.2, crew
		fill, _ := job(t, fillJobs(n, plan.Cask{Casks: 1, SizeL: 200, Fill: &plan.Lot{}}, &plan.Reduction{}), "fill.cask")
		assert.Equal(t, people, fill.People, "a crew of %d", crew)
		assert.Equal(t, crew == 1, strings.Contains(fill.Do.Text, "where it is to lie, chocked"), "a crew of %d", crew)
	}
}

// What is left over is put away from half a deciliter on.
func TestWhatIsLeftOverIsKept(t *testing.T) {
	for litres, kept := range map[float64]bool{0.04: false, 0.06: true} {
		fill, ok := job(t, fillJobs(small(), plan.Cask{Casks: 1, Fill: &plan.Lot{}, Leftover: plan.Lot{VolumeL: litres}}, &plan.Reduction{}), "fill.cask")
		require.True(t, ok)
		assert.Equal(t, kept, len(fill.Do.Values) > 1, "%g L", litres)
	}
}

// Liquor is heated beforehand where it is five degrees and more above the supply.
func TestHotLiquorIsHeatedBeforehand(t *testing.T) {
	for c, heated := range map[float64]bool{14.9: false, 15.1: true} {
		n := small()
		n.Mash.Steps[0].TempC = c
		_, ok := job(t, mashJobs(n), "mash.liquor")
		assert.Equal(t, heated, ok, "%g C", c)
	}
}

// A mash scalds from 60 C on.
func TestAHotMashIsWarnedOf(t *testing.T) {
	for c, hot := range map[float64]bool{59.9: false, 60.1: true} {
		n := small()
		n.Mashed.Steps[0].EndC = c
		step, ok := job(t, mashJobs(n), plan.MashStepID(0))
		require.True(t, ok)
		assert.Equal(t, hot, slices.Contains(step.Cautions, "hot-mash"), "%g C", c)
	}
}

// Wherever a mash is heated it scalds and its steam burns, however hot it was before;
// rakes start only where there are some.
func TestHeatingAMashIsWarnedOf(t *testing.T) {
	n := small()
	n.Plant.BoilerW = 50e3
	n.Mash.Cooker.Agitator = true
	n.Bill.Lines = []recipe.BillLine{{Grain: &recipe.Grain{}}}
	n.Mash.Steps = []recipe.MashStep{
		{Verb: recipe.MashWater, VolumeM3: 0.1, TempC: 70}, {Verb: recipe.MashAdd, Grains: []int{0}},
		{Verb: recipe.MashHeat, TempC: 90}, {Verb: recipe.MashCool, TempC: 65}, {Verb: recipe.MashHeat, TempC: 75},
	}
	n.Mashed.Steps = []mash.Step{{EndC: 70}, {EndC: 66}, {EndC: 90, VolumeM3: 0.15}, {EndC: 65}, {EndC: 75, VolumeM3: 0.15}}
	cautions := func(i int) []string {
		step, ok := job(t, mashJobs(n), plan.MashStepID(i))
		require.True(t, ok)
		return step.Cautions
	}
	assert.Equal(t, []string{"hot-mash"}, cautions(0))
	assert.Equal(t, []string{"lockout"}, cautions(1))
	assert.Equal(t, []string{"hot-mash", "steam"}, cautions(2))
	assert.Empty(t, cautions(3))
	assert.Equal(t, []string{"hot-mash", "steam"}, cautions(4), "again")

	// Live steam becomes part of the mash: its volume is read.
	reads := func() (what []string) {
		step, _ := job(t, mashJobs(n), plan.MashStepID(2))
		for _, r := range step.Read {
			what = append(what, r.What)
		}
		return what
	}
	assert.Equal(t, []string{"temperature"}, reads())
	n.Mash.Cooker.HeatedBy = recipe.Direct
	assert.Equal(t, []string{"temperature", "in the cooker"}, reads())
	assert.Equal(t, []string{"hot-mash", "live-steam"}, cautions(2))

	n.Mash.Cooker.Agitator = false // stirred by hand
	assert.Empty(t, cautions(1))
	for _, j := range mashJobs(n) {
		assert.NotContains(t, j.Cautions, "lockout", j.Key)
	}
}
