package work

import (
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"newmake/compile/matter/stream"
	"newmake/compile/numbers"
	"newmake/compile/plan"
	"newmake/compile/stage/mash"
	"newmake/compile/stage/schedule"
	"newmake/compile/stage/still"
	"newmake/lang/recipe"
)

// A piece of work in the words of a message.
func TestNames(t *testing.T) {
	for key, want := range map[string]string{
		"mash.clean": "cleaning the cooker", "mash.draff": "digging out the draff", "ferment.clean": "cleaning the fermenter",
		"strip.clean": "cleaning the still", "spirit.clean": "cleaning the still", "strip.heat": "the stripping run", "strip.2.stop": "the stripping run",
		"spirit.hearts": "the spirit run", "ferment.fill": "setting the ferment", "ferment.pitch": "setting the ferment", "ferment.run": "the ferment",
		"fill.cask": "filling the casks", "fill.reduce": "gauging and reducing", "mash.3": "the mash", "cask.rest": "the cask",
	} {
		assert.Equal(t, want, name(key), key)
	}
	assert.Equal(t, "the mash, the stripping run and cleaning the still", Names([]string{"mash.1", "mash.2", "strip.heat", "strip.clean", "spirit.clean"}))
}

func keys(jobs []Job) (out []string) {
	for _, j := range jobs {
		out = append(out, j.Key)
	}
	return out
}

// How long work takes that is done by hand: 10 min of weighing besides the mill, 10 min
// of hoses besides the pump (common practice).
func TestWorkByHandTakesItsTime(t *testing.T) {
	n := small()
	n.Bill.TotalKg = 300
	n.Plant.Rates = recipe.Rates{MillKgS: 600.0 / 3600, PumpM3S: 6.0 / 3600, DigKgS: 600.0 / 3600}
	n.Mashed.Draff = stream.Stream{WaterKg: 200}
	n.Fermented.Vessel, n.Fermented.WortM3 = &recipe.Vessel{Name: "Tun"}, 3
	n.Ferm.Yeast, n.Ferm.DurationS = &recipe.Yeast{}, 3*24*3600
	for key, minutes := range map[string]float64{
		"mash.mill": 10 + 30, "mash.draff": 20, "mash.clean": 45, "ferment.fill": 10 + 30, "ferment.pitch": 10, "ferment.run": 3 * 24 * 60,
	} {
		j, ok := job(t, append(mashJobs(n), fermentJobs(n)...), key)
		require.True(t, ok, key)
		assert.InDelta(t, minutes, j.DurationS/60, 1e-9, key)
	}
	n.Mashed.Draff = stream.Stream{WaterKg: 0.5}
	_, digs := job(t, mashJobs(n), "mash.draff")
	assert.True(t, digs, "a little draff is dug out too")
	n.Mashed.Draff = stream.Stream{}
	_, digs = job(t, mashJobs(n), "mash.draff")
	assert.False(t, digs, "there is none")
	cask := func(casks int) float64 {
		j, _ := job(t, fillJobs(n, plan.Cask{Casks: casks, Fill: &plan.Lot{}}, &plan.Reduction{}), "fill.cask")
		return j.DurationS / 60
	}
	assert.InDelta(t, 15+15, cask(1), 1e-9)
	assert.InDelta(t, 15+3*15, cask(3), 1e-9)
	for key, minutes := range map[string]float64{"fill.gauge": 20, "fill.reduce": 90, "fill.settle": 24 * 60, "cask.rest": 0} {
		j, ok := job(t, fillJobs(n, plan.Cask{Casks: 1, Fill: &plan.Lot{}}, &plan.Reduction{}), key)
		require.True(t, ok, key)
		assert.InDelta(t, minutes, j.DurationS/60, 1e-9, key)
	}
	assert.InDelta(t, 15+0.5*40, bottle(n, plan.Cask{Bottles: 40}, plan.Lot{}).DurationS/60, 1e-9)
	assert.InDelta(t, 10+60*0.5/6, charge{run: still.Run{ChargeM3: 0.5}, pumpM3S: 6.0 / 3600}.fill(false, 0).DurationS/60, 1e-9)
	assert.InDelta(t, 30, charge{}.stop(plan.Say("x"), nil).DurationS/60, 1e-9)
	assert.InDelta(t, 45, cleanStill("strip", &recipe.Vessel{}).DurationS/60, 1e-9)
}

// Where the spirit goes: into wood, into a tank for the next cask, into bottles, or
// into a tank as it comes.
func TestWhereTheSpiritGoes(t *testing.T) {
	full := plan.Cask{Casks: 2, Fill: &plan.Lot{}, LastFill: &plan.Lot{VolumeL: 30}}
	down := []string{"fill.gauge", "fill.reduce", "fill.settle"}
	for name, c := range map[string]struct {
		turn      func(*numbers.Batch)
		cask      plan.Cask
		reduction *plan.Reduction
		want      []string
	}{
		"wood":             {func(*numbers.Batch) {}, full, &plan.Reduction{}, []string{"fill.gauge", "fill.reduce", "fill.settle", "fill.soak", "fill.cask", "cask.rest"}},
		"too little":       {func(*numbers.Batch) {}, plan.Cask{}, &plan.Reduction{}, append(down[:3:3], "fill.keep")},
		"wood, not filled": {func(n *numbers.Batch) { n.Filled.Done = false }, full, &plan.Reduction{}, nil},
		"bottled":          {func(n *numbers.Batch) { n.Filled.Done, n.Cask.Kind = false, nil }, plan.Cask{}, &plan.Reduction{}, append(down[:3:3], "fill.bottle")},
		"too weak":         {func(n *numbers.Batch) { n.Filled.Done, n.Cask.Kind, n.Cask.BottleAt.Value = false, nil, 0.4 }, plan.Cask{}, nil, nil},
		"as it comes":      {func(n *numbers.Batch) { n.Filled.Done, n.Cask.Kind = false, nil }, plan.Cask{}, nil, []string{"fill.gauge", "fill.keep"}},
		"a drop of spirit": {func(n *numbers.Batch) {
			n.Filled.Done, n.Cask.Kind, n.Distilled.Hearts = false, nil, stream.Stream{EthanolKg: 0.5}
		}, plan.Cask{}, nil, []string{"fill.gauge", "fill.keep"}},
		"no spirit to keep": {func(n *numbers.Batch) { n.Filled.Done, n.Cask.Kind, n.Distilled.Hearts = false, nil, stream.Stream{} }, plan.Cask{}, nil, nil},
	} {
		n := small()
		c.turn(n)
		assert.Equal(t, c.want, keys(fillJobs(n, c.cask, c.reduction)), name)
	}
	last := func(k plan.Cask) bool { return strings.Contains(fillCasks(small(), k).Do.Text, "The last one takes") }
	assert.True(t, last(full))
	assert.False(t, last(plan.Cask{Casks: 1, Fill: &plan.Lot{}, LastFill: &plan.Lot{VolumeL: 30}}), "one cask has no last")
	assert.False(t, last(plan.Cask{Casks: 2, Fill: &plan.Lot{}}), "all are full")
	assert.Contains(t, fillCasks(small(), full).Do.Text, "fill 2 casks of")
	assert.Contains(t, fillCasks(small(), full).Do.Text, "mark and record each")
	one := fillCasks(small(), plan.Cask{Casks: 1, SizeL: 200, Fill: &plan.Lot{}})
	assert.Contains(t, one.Do.Text, "mark and record it")
	assert.Equal(t, "cask", one.Read[0].What)
	assert.InDelta(t, 200, one.Mark.Values[0].Value, 0)
	filled := func(litres float64) Job {
		return fillCasks(small(), plan.Cask{Casks: 1, SizeL: 50, Fill: &plan.Lot{}, LastFill: &plan.Lot{VolumeL: litres}})
	}
	short := filled(49.7)
	assert.Contains(t, short.Do.Text, "It takes {}, and is not quite full.")
	assert.NotContains(t, filled(49.8).Do.Text, "not quite full", "nobody sees half a percent")
	assert.InDelta(t, 49.7, short.Mark.Values[0].Value, 0, "the line of the day says what goes in")
	assert.Contains(t, fillCasks(small(), plan.Cask{Casks: 1, Fill: &plan.Lot{}}).Do.Text, "fill one cask of")
}

// Whatever is to go into the fermenter is measured out, however little.
func TestWhatGoesIntoTheFerment(t *testing.T) {
	n := small()
	n.Fermented.Vessel, n.Ferm.Yeast = &recipe.Vessel{Name: "Tun"}, &recipe.Yeast{Entry: recipe.Entry{Name: "house"}}
	measured := func() (names []string, kg []float64) {
		for _, a := range Additions(fermentJobs(n)) {
			names, kg = append(names, a.Name), append(kg, a.Amount.Value)
		}
		return names, kg
	}
	n.Fermented.PitchKg = 0.4
	names, kg := measured()
	assert.Equal(t, []string{"house"}, names)
	assert.Equal(t, []float64{0.4}, kg)

	n.Fermented.NutrientKg, n.Ferm.AntifoamM3 = 0.2, 0.05e-3
	n.Ferm.Doses = []recipe.Dose{{Enzyme: &recipe.Enzyme{Entry: recipe.Entry{Name: "gluco"}}, MassKg: 0.03}}
	n.Ferm.Rehydrate.VolumeM3 = 0.5e-3
	names, kg = measured()
	assert.Equal(t, []string{"water for the yeast", "house", "gluco", "diammonium phosphate", "antifoam"}, names)
	assert.InDeltaSlice(t, []float64{0.5, 0.4, 0.03, 0.2, 0.05}, kg, 1e-9)

	for name, c := range map[string]struct {
		highC  float64
		vessel recipe.Vessel
		want   string
	}{
		"not held":       {0, recipe.Vessel{}, ""},
		"nothing cools":  {30, recipe.Vessel{}, " Nothing cools this vessel: it comes to some {} by itself, and is not meant to pass {}."},
		"something does": {30, recipe.Vessel{CoolsW: 1000}, " Cool it when it passes {}."},
	} {
		n.Ferm.HoldHighC, n.Fermented.Vessel = c.highC, &c.vessel
		run, ok := job(t, fermentJobs(n), "ferment.run")
		require.True(t, ok)
		assert.Equal(t, "Ferment."+c.want, run.Do.Text, name)
	}
}

// The liquor heats while the grain is weighed and milled, and sooner where that is
// too short. The first water alone is waited for.
func TestHotLiquorIsReadyInTime(t *testing.T) {
	n := small() // 10 kW of heating, 1 MJ in the first water: 100 s, and 100 kg take 1,200 s
	n.Plant.Rates.MillKgS = 600.0 / 3600
	n.Mash.Steps[0].TempC = 65
	for heatJ, wantS := range map[float64]float64{1e6: 0, 11.9e6: 0, 12.1e6: 10, 22e6: 1000} {
		n.Mashed.Steps[0].HeatJ = heatJ
		hot, ok := job(t, mashJobs(n), "mash.liquor")
		require.True(t, ok)
		assert.InDelta(t, wantS, hot.DurationS, 1e-6, "%g J", heatJ)
		assert.Equal(t, 10e3, hot.Power)
		assert.Contains(t, hot.Do.Text, "of heating at full power")
		assert.InDelta(t, heatJ/10e3/60, hot.Do.Values[3].Value, 1e-9)
		assert.Equal(t, []string{"hot-water"}, hot.Cautions)
	}
	n.Mashed.Steps[0].HeatJ = 22e6 // whichever of the map came last
	n.Plant.BoilerW = 20e3
	hot, _ := job(t, mashJobs(n), "mash.liquor")
	assert.Equal(t, 20e3, hot.Power)
	assert.Contains(t, hot.Do.Text, "of steam at full power")
	assert.Equal(t, []string{"steam"}, hot.Cautions)

	n.Mashed.Steps[0].HeatJ = 22e6
	// A second water is heated too, but the mash does not wait for it at the start.
	n.Mash.Steps = append(n.Mash.Steps, recipe.MashStep{Verb: recipe.MashWater, VolumeM3: 0.2, TempC: 80})
	n.Mashed.Steps = append(n.Mashed.Steps, mash.Step{EndC: 70, HeatJ: 500e6})
	hot, _ = job(t, mashJobs(n), "mash.liquor")
	assert.Zero(t, hot.DurationS)
	assert.Contains(t, hot.Do.Text, ", then {} at {}")
	assert.InDelta(t, (22e6+500e6)/3.6e6, hot.Do.Values[4].Value, 1e-9)

	n.Mash.Steps[0].TempC = 10 // cold: the hot one comes later, and nobody waits for it
	hot, _ = job(t, mashJobs(n), "mash.liquor")
	assert.Zero(t, hot.DurationS)
	assert.NotContains(t, hot.Do.Text, "then")

	n.Plant.BoilerW, n.Mash.Cooker.HeatsW = 0, 0
	hot, _ = job(t, mashJobs(n), "mash.liquor")
	assert.NotContains(t, hot.Do.Text, "full power")
}

// A vessel draws no more than the boiler gives, and all it takes where none is named.
func TestHeatOfAVessel(t *testing.T) {
	v := &recipe.Vessel{HeatsW: 50e3}
	assert.Equal(t, 50e3, heatW(v, &recipe.Plant{}))
	assert.Equal(t, 30e3, heatW(v, &recipe.Plant{BoilerW: 30e3}))
	assert.Equal(t, 50e3, heatW(v, &recipe.Plant{BoilerW: 70e3}))
}

// What sets the pH goes into the first water, weighed; acid and lime are warned of.
func TestTreatment(t *testing.T) {
	for name, c := range map[string]struct {
		treat    recipe.Treatment
		acidKg   float64
		want     string
		cautions []string
	}{
		"none":   {recipe.Treatment{}, 0, "", nil},
		"gypsum": {recipe.Treatment{GypsumKg: 0.05}, 0, "Weigh out {} of gypsum and stir into the liquor.", nil},
		"lime":   {recipe.Treatment{LimeKg: 0.05}, 0, "Weigh out {} of slaked lime and stir into the liquor.", []string{"acid"}},
		"acid":   {recipe.Treatment{}, 0.05, "stir into the liquor.", []string{"acid"}},
	} {
		n := small()
		n.Mash.Treatment, n.Mashed.AcidKg = c.treat, c.acidKg
		n.Mash.Steps = append(n.Mash.Steps, n.Mash.Steps[0])
		n.Mashed.Steps = append(n.Mashed.Steps, n.Mashed.Steps[0])
		treats := 0
		for _, j := range mashJobs(n) {
			if j.Key == "mash.treat" {
				treats++
				assert.Contains(t, j.Do.Text, c.want, name)
				assert.Equal(t, c.cautions, j.Cautions, name)
			}
		}
		assert.Equal(t, c.want != "", treats == 1, name)
		assert.LessOrEqual(t, treats, 1, "%s: the first water alone", name)
	}
}

// The mash is converted at the first rest with all the grain in.
func TestLastRest(t *testing.T) {
	steps := func(verbs ...recipe.MashVerb) (out []recipe.MashStep) {
		for _, v := range verbs {
			out = append(out, recipe.MashStep{Verb: v})
		}
		return out
	}
	all := steps(recipe.MashWater, recipe.MashAdd, recipe.MashRest, recipe.MashAdd, recipe.MashRest, recipe.MashHeat, recipe.MashRest)
	for i, want := range []bool{false, false, false, false, true, true, false} {
		if all[i].Verb == recipe.MashRest {
			assert.Equal(t, want, isLastRest(all, i), "step %d", i)
		}
	}
	assert.True(t, isLastRest(steps(recipe.MashRest), 0))
	assert.False(t, usesBackset(steps(recipe.MashBackset)), "none of it")
	assert.True(t, usesBackset([]recipe.MashStep{{Verb: recipe.MashBackset, VolumeM3: 0.01}}))
}

// Readings stand at full steps from the first drop, an hour apart and half an hour in
// the hearts, and none within a quarter of a step of a cut.
func TestWhenAStillIsRead(t *testing.T) {
	const heatUpS = 1800
	run := still.Run{HeatUpS: heatUpS, Curve: []still.Point{{TimeS: heatUpS, ABV: 0.8, RateM3S: 1e-5}, {TimeS: 40000, ABV: 0.2, OverM3: 0.4, RateM3S: 1e-5}}}
	c := charge{id: "spirit", use: "spirit", run: run, powerW: 10e3}
	at := func(name string, startMin, endMin float64) (out []float64) {
		f := still.Fraction{Name: name, Stream: stream.Stream{EthanolKg: 10, WaterKg: 10}, StartS: heatUpS + 60*startMin, EndS: heatUpS + 60*endMin}
		for _, r := range c.fraction(f).Read {
			if m := startMin + r.AtS/60; len(out) == 0 || m != out[len(out)-1] {
				out = append(out, m)
			}
		}
		return out
	}
	assert.InDeltaSlice(t, []float64{60, 120, 150}, at(still.Tails, 0, 150), 1e-6)
	assert.InDeltaSlice(t, []float64{120, 174}, at(still.Tails, 46, 174), 1e-6, "60 is 14 min after the cut")
	assert.InDeltaSlice(t, []float64{60, 120, 174}, at(still.Tails, 44, 174), 1e-6, "60 is 16 min after the cut")
	assert.InDeltaSlice(t, []float64{60, 134}, at(still.Tails, 0, 134), 1e-6, "120 is 14 min before the cut")
	assert.InDeltaSlice(t, []float64{60, 120, 136}, at(still.Tails, 0, 136), 1e-6, "120 is 16 min before the cut")
	assert.InDeltaSlice(t, []float64{30, 60, 75}, at(still.Hearts, 0, 75), 1e-6)
	assert.InDeltaSlice(t, []float64{30, 38}, at(still.Hearts, 22, 38), 1e-6, "30 is 8 min from either cut")
	assert.InDeltaSlice(t, []float64{38}, at(still.Hearts, 23, 38), 1e-6, "7 min after")

	// Full heat, or held at the pace that is asked for.
	paced := func(heatW float64) Job {
		return c.fraction(still.Fraction{Name: still.Heads, Stream: stream.Stream{EthanolKg: 1}, StartS: heatUpS, EndS: heatUpS + 1000, HeatJ: 1000 * heatW})
	}
	assert.Contains(t, paced(10e3).Do.Text, "Full heat, {}.")
	assert.Contains(t, paced(9.99e3).Do.Text, "Hold {}, about {}")
	assert.InDelta(t, 36, paced(9.99e3).Do.Values[1].Value, 1e-9, "10 mL/s is 36 L/h")
	assert.InDelta(t, 9.99, paced(9.99e3).Do.Values[2].Value, 1e-9)
	vapourRead := func(name string) bool {
		for _, r := range c.fraction(still.Fraction{Name: name, Stream: stream.Stream{EthanolKg: 1}, StartS: heatUpS, EndS: heatUpS + 60}).Read {
			if r.What == "vapour" {
				return true
			}
		}
		return false
	}
	assert.True(t, vapourRead(still.Heads))
	assert.False(t, vapourRead(still.Foreshots))
	empty := charge{run: still.Run{Fractions: []still.Fraction{{Name: still.Heads, StartS: 5, EndS: 5}, {Name: still.Hearts, Stream: stream.Stream{EthanolKg: 1}, StartS: 5, EndS: 6}}}}
	assert.Len(t, empty.fractions(), 1, "an empty fraction is no work")
}

// The fermenter is cleaned beside the stripping run, or after it by whoever works alone.
func TestWhoCleansTheFermenter(t *testing.T) {
	for crew, want := range map[int]string{1: "", 2: "strip.2.charge", 3: "strip.2.charge"} {
		n := small()
		n.Plant.Crew, n.Stripped.Charges, n.Fermented.Vessel = crew, 2, &recipe.Vessel{Name: "Tun"}
		assert.Equal(t, want, cleanFermenter(n).After, "%d", crew)
	}
	assert.Equal(t, "strip", plan.ChargeID("strip", 0, 1))
	assert.Equal(t, "strip.1", plan.ChargeID("strip", 0, 2))
}

// Whoever carries a full cask alone carries no more than 23 kg (NIOSH 94-110).
func TestWhatOnePersonCarries(t *testing.T) {
	b := small().Batch
	for kg, alone := range map[float64]bool{22.9: true, 23: true, 23.1: false} {
		c, ok := liftCaution(b, plan.Cask{SizeL: 20, NetKg: kg, Fill: &plan.Lot{}})
		require.True(t, ok)
		assert.Equal(t, alone, c.title == "a cask rolls and slips", "%g kg", kg)
	}
	_, ok := liftCaution(b, plan.Cask{})
	assert.False(t, ok, "no cask is filled")
	for kg, alone := range map[float64]bool{21: true, 21.1: false} { // 20 L are soaked with 2, which weigh 1.94 kg
		c, ok := rollCaution(b, plan.Cask{SizeL: 20, TareKg: kg})
		require.True(t, ok)
		assert.Equal(t, rolls, c.title)
		assert.Equal(t, alone, strings.Contains(c.text, "carry"), "%g kg", kg)
		assert.NotContains(t, c.text, "crush")
	}
	_, ok = rollCaution(b, plan.Cask{})
	assert.False(t, ok, "no cask is soaked")
}

// What only has to be begun takes a quarter of an hour of somebody, or less. The cask
// does not count to the time from the start to the filling.
func TestHoursOfAPlan(t *testing.T) {
	start := time.Date(2026, 3, 2, 7, 0, 0, 0, time.UTC)
	steps := []plan.Step{
		{DurationMin: 120, Attend: plan.Start, People: 1}, {DurationMin: 6, Attend: plan.Start, People: 1},
		{DurationMin: 60, Attend: plan.Stay, People: 2}, {DurationMin: 600, Attend: plan.Alone},
	}
	slots := []schedule.Slot{
		{Task: schedule.Task{Stage: "fill"}, Start: start, End: start.Add(30 * time.Hour), OutOfShift: time.Hour},
		{Task: schedule.Task{Stage: "mash"}, Start: start, End: start.Add(5 * time.Hour), OutOfShift: time.Hour / 2},
		{Task: schedule.Task{Stage: "cask"}, Start: start, End: start.Add(9000 * time.Hour)},
	}
	s := scheduleOf(steps, slots, start)
	assert.InDelta(t, 0.25+0.1+2, s.PeopleHours, 1e-9)
	assert.InDelta(t, 30, s.ElapsedHours, 1e-9)
	assert.InDelta(t, 1.5, s.OutOfShiftH, 1e-9)

	b := small().Batch
	j := Job{Read: []Reading{{AtS: 0}, {AtS: 90}, {AtS: -1}}}
	made := step(b, &j, schedule.Slot{Task: schedule.Task{Attend: schedule.Throughout}, Start: start, End: start.Add(time.Hour)})
	assert.Equal(t, 1, made.People, "somebody")
	assert.Equal(t, []string{rfc3339(start), rfc3339(start.Add(90 * time.Second)), ""}, []string{made.Read[0].At, made.Read[1].At, made.Read[2].At})
	assert.Zero(t, step(b, &j, schedule.Slot{Start: start, End: start}).People, "nobody")
	assert.Equal(t, 3, step(b, &j, schedule.Slot{Task: schedule.Task{Attend: schedule.Begin, People: 3}, Start: start, End: start}).People)
}

// A curve is read between its points, and stands still before and after.
func TestAround(t *testing.T) {
	curve := []still.Point{{TimeS: 10, ABV: 0.8}, {TimeS: 20, ABV: 0.6}, {TimeS: 40, ABV: 0.2}}
	for s, want := range map[float64]float64{0: 0.8, 10: 0.8, 15: 0.7, 20: 0.6, 30: 0.4, 40: 0.2, 99: 0.2} {
		assert.InDelta(t, want, pointAt(curve, s).ABV, 1e-12, "%g s", s)
	}
	assert.Zero(t, pointAt(nil, 5).ABV)
}

// The charge of the spirit still: what it is made of, as far as there is any.
func TestTheSpiritCharge(t *testing.T) {
	for name, c := range map[string]struct {
		feints, water stream.Stream
		returned      bool
		want          string
	}{
		"low wines":   {stream.Stream{}, stream.Stream{}, false, "Charge the still with {} of low wines."},
		"feints":      {stream.Stream{EthanolKg: 0.3, WaterKg: 0.2}, stream.Stream{}, true, "Charge the still with {} of low wines and {} of feints."},
		"none yet":    {stream.Stream{}, stream.Stream{}, true, "Charge the still with {} of low wines: there are no feints yet."},
		"and water":   {stream.Stream{}, stream.Stream{WaterKg: 0.5}, false, "Charge the still with {} of low wines, and bring it down with {} of water."},
		"all of them": {stream.Stream{EthanolKg: 1}, stream.Stream{WaterKg: 1}, true, "Charge the still with {} of low wines and {} of feints, and bring it down with {} of water."},
	} {
		n := small()
		n.Stripped.LowWines = stream.Stream{EthanolKg: 20, WaterKg: 40}
		n.Distilled.Returned, n.Distilled.Water, n.Distilled.Charges, n.Spirit.Feints = c.feints, c.water, 2, c.returned
		j := spiritCharge(n, charge{id: "spirit", run: still.Run{Charge: stream.Stream{EthanolKg: 10, WaterKg: 20}}}, true)
		assert.Equal(t, c.want, j.Do.Text, name)
	}
	n := small()
	stop := func() string {
		return spiritStop(n, charge{run: still.Run{Residue: stream.Stream{WaterKg: 1}}}).Do.Text
	}
	assert.NotContains(t, stop(), "foreshots")
	n.Spirit.ForeshotsM3 = 0.1e-3
	assert.Contains(t, stop(), "Record the foreshots")
}

// The wash still is cleaned beside the line of work where the spirit runs in another
// and there are two people.
func TestTheWashStillIsCleanedBesideTheSpirit(t *testing.T) {
	n := small()
	n.Stripped.Charges = 2
	n.Strip.Still, n.Spirit.Still = &recipe.Vessel{Name: "Wash still"}, &recipe.Vessel{Name: "Spirit still"}
	assert.Equal(t, "strip.2.stop", cleanWashStill(n).After)
	n.Plant.Crew = 1
	assert.Empty(t, cleanWashStill(n).After)
	n.Plant.Crew, n.Spirit.Still = 2, n.Strip.Still
	assert.Empty(t, cleanWashStill(n).After, "it must be clean before the spirit runs in it")
}

// A still is lit, or its steam or its elements are turned on.
func TestHowAStillIsHeated(t *testing.T) {
	for _, c := range []struct {
		by      recipe.Heating
		boilerW float64
		want    string
	}{
		{recipe.Jacket, 0, "Light the wash still"},
		{recipe.Jacket, 1, "Steam on, wash still"},
		{recipe.Direct, 0, "Steam on, wash still"},
		{recipe.Elements, 1, "Heat on, wash still"},
	} {
		n := small()
		n.Plant.BoilerW = c.boilerW
		all := charges("strip", n, &recipe.Vessel{Name: "S", HeatedBy: c.by, HeatsW: 1e4}, still.Run{HeatUpS: 60}, 1)
		assert.Equal(t, c.want, all[0].heat().Title.Text)
	}
}
