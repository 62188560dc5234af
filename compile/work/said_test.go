package work

import (
	"fmt"
	"os"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"newmake/compile/matter/stream"
	"newmake/compile/numbers"
	"newmake/compile/plan"
	"newmake/compile/stage/cask"
	"newmake/compile/stage/ferment"
	"newmake/compile/stage/mash"
	"newmake/compile/stage/schedule"
	"newmake/compile/stage/still"
	"newmake/lang/recipe"
	"newmake/lang/testflag"
)

// mashed is work on a mash of some steps, an hour each, with what each leaves.
func mashed(change func(*numbers.Batch), steps ...recipe.MashStep) []Job {
	n := whole()
	n.Mash.Steps, n.Mashed.Steps = steps, nil
	for i, s := range steps {
		end := s.TempC
		if end == 0 {
			end = 60 + float64(i)
		}
		n.Mashed.Steps = append(n.Mashed.Steps, mash.Step{StartS: 3600 * float64(i), EndS: 3600 * float64(i+1), StartC: 62 + float64(i%3), EndC: end, VolumeM3: 0.01 * float64(i+1), HeatJ: 2e6})
	}
	change(n)
	return mashJobs(n)
}

// whole is a small batch that can be worked through to the end.
func whole() *numbers.Batch {
	n := small()
	n.Plant.Rates = recipe.Rates{MillKgS: 0.1, PumpM3S: 0.001, DigKgS: 0.1}
	n.Bill.Lines = []recipe.BillLine{{Grain: &recipe.Grain{Entry: recipe.Entry{Name: "malt"}}, MassKg: 60}, {Grain: &recipe.Grain{Entry: recipe.Entry{Name: "corn"}}, MassKg: 40}}
	n.Fermented.Vessel, n.Fermented.WortM3 = &recipe.Vessel{Name: "Tun"}, 0.3
	n.Ferm.Yeast, n.Ferm.DurationS = &recipe.Yeast{Entry: recipe.Entry{Name: "yeast"}}, 72*3600
	n.Fermented.PitchKg = 0.2
	n.Strip.Still, n.Spirit.Still = &recipe.Vessel{Name: "Wash still", HeatsW: 20e3}, &recipe.Vessel{Name: "Spirit still", HeatsW: 8e3}
	return n
}

// run is a charge of a still: half an hour to the boil, and its fractions an hour each.
func run(fractions ...string) still.Run {
	r := still.Run{Charge: stream.Stream{EthanolKg: 20, WaterKg: 80, TempC: 20}, ChargeM3: 0.12, HeatUpS: 1800, HeatUpJ: 36e6,
		Curve: []still.Point{{TimeS: 1800, PotC: 90, VapourC: 85, ABV: 0.7}, {TimeS: 9000, PotC: 98, VapourC: 96, ABV: 0.05}}}
	for i, name := range fractions {
		at := 1800 + 3600*float64(i)
		r.Fractions = append(r.Fractions, still.Fraction{Name: name, Stream: stream.Stream{EthanolKg: 3 + float64(i), WaterKg: 2}, StartS: at, EndS: at + 3600, StartABV: 0.7 - 0.1*float64(i), EndABV: 0.6 - 0.1*float64(i), EndVapourC: 86 + float64(i)})
	}
	return r
}

func stripped(change func(*numbers.Batch)) []Job {
	n := whole()
	n.Stripped = numbers.Strip{Charges: 1, Run: run(still.LowWines)}
	change(n)
	return stripJobs(n)
}

func distilled(from, to recipe.Cut, change func(*numbers.Batch)) []Job {
	n := whole()
	n.Spirit.HeartsFrom, n.Spirit.HeartsTo, n.Spirit.ForeshotsM3 = from, to, 0.001
	n.Stripped.LowWines = stream.Stream{EthanolKg: 20, WaterKg: 50}
	n.Distilled = numbers.Spirit{Charges: 1, Run: run(still.Foreshots, still.Heads, still.Hearts, still.Tails)}
	change(n)
	return spiritJobs(n)
}

func filled(change func(*numbers.Batch, *plan.Cask)) []Job {
	n, k := whole(), plan.Cask{Casks: 1, SizeL: 50, Fill: &plan.Lot{VolumeL: 50, AbvPct: 60}, NetKg: 45, TareKg: 12, GrossKg: 57}
	change(n, &k)
	return fillJobs(n, k, &plan.Reduction{})
}

// The steps of the mashes below.
var (
	mashWater  = recipe.MashStep{Verb: recipe.MashWater, VolumeM3: 0.1, TempC: 70}
	mashCold   = recipe.MashStep{Verb: recipe.MashWater, VolumeM3: 0.1, TempC: 10}
	mashAdd    = recipe.MashStep{Verb: recipe.MashAdd, Grains: []int{0}}
	mashCorn   = recipe.MashStep{Verb: recipe.MashAdd, Grains: []int{1}}
	mashHeat   = recipe.MashStep{Verb: recipe.MashHeat, TempC: 90}
	mashBoil   = recipe.MashStep{Verb: recipe.MashBoil, DurationS: 1200}
	mashRest   = recipe.MashStep{Verb: recipe.MashRest, DurationS: 3600}
	mashCool   = recipe.MashStep{Verb: recipe.MashCool, TempC: 25}
	mashDrain  = recipe.MashStep{Verb: recipe.MashDrain}
	mashCooled = recipe.MashStep{Verb: recipe.MashDrain, CooledC: 20}
	mashNext   = recipe.MashStep{Verb: recipe.MashDrain, NextMash: true}
	mashSparge = recipe.MashStep{Verb: recipe.MashSparge, VolumeM3: 0.05, TempC: 78}
	mashBright = recipe.MashStep{Verb: recipe.MashRecirculate, DurationS: 600}

	asItIs = func(*numbers.Batch) {}
)

// worked is work of all sorts, as it is told.
var worked = []struct {
	what string
	jobs []Job
}{
	{"corn cooked in cold water, and malt", mashed(asItIs, mashCold, mashCorn, mashHeat, mashRest, mashCool, mashAdd, mashRest, mashRest, mashCool)},
	{"corn boiled, and no rest after it", mashed(asItIs, mashWater, mashCorn, mashBoil, mashAdd)},
	{"two drains and one for the next mash", mashed(asItIs, mashWater, mashAdd, mashRest, mashDrain, mashWater, mashDrain, mashWater, mashNext, mashCool)},
	{"the first runnings go round, and a sparge", mashed(asItIs, mashWater, mashAdd, mashRest, mashBright, mashDrain, mashSparge)},
	{"a sparge before any drain", mashed(asItIs, mashWater, mashAdd, mashRest, mashSparge, mashDrain)},
	{"worts run cold into the fermenter, where the yeast goes in as it fills", mashed(func(n *numbers.Batch) {
		n.Mashed.InFermenter, n.Ferm.AsItFills, n.Plant.WortCooler.AreaM2 = true, true, 2
	}, mashWater, mashAdd, mashRest, mashCooled, mashWater, mashCooled)},
	{"the yeast is wetted as they do", mashed(func(n *numbers.Batch) {
		n.Mashed.InFermenter, n.Ferm.Rehydrate = true, recipe.Rehydration{VolumeM3: 0.002, TempC: 35, DurationS: 900}
	}, mashWater, mashAdd, mashRest, mashCooled)},
	{"by way of the underback", mashed(func(n *numbers.Batch) {
		n.Mashed.InFermenter, n.Ferm.AsItFills, n.Plant.WortCooler.AreaM2 = true, true, 2
	}, mashWater, mashAdd, mashRest, mashDrain, mashCool)},
	{"into a tank for worts", mashed(func(n *numbers.Batch) {
		n.Plant.Tanks = []*recipe.Tank{{Name: "Underback", HoldsM3: 1, For: recipe.OfWorts}}
	}, mashWater, mashAdd, mashRest, mashDrain)},
	{"cooled as they run, and not into the fermenter", mashed(asItIs, mashWater, mashAdd, mashRest, mashCooled)},
	{"a cool that is no part of a run into the fermenter", mashed(func(n *numbers.Batch) { n.Ferm.AsItFills = true }, mashWater, mashAdd, mashCool)},

	{"one cold charge", stripped(asItIs)},
	{"heat held back, by a hair and by more", append(stripped(func(n *numbers.Batch) { n.Stripped.HeatUpJ = 36e6 * (1 - 1e-7) }), stripped(func(n *numbers.Batch) { n.Stripped.HeatUpJ = 35e6 })...)},
	{"one charge that pot ale of the batch before warms", stripped(func(n *numbers.Batch) {
		n.Stripped.Preheat, n.Strip.Still.Preheater = &still.Preheat{}, recipe.Preheater{PotAleC: 85, OverS: 1800}
	})},
	{"two charges, of which the first is cold", stripped(func(n *numbers.Batch) {
		first := run(still.LowWines)
		first.Charge.TempC = 15
		n.Stripped.Charges, n.Stripped.First, n.Stripped.Preheat = 2, &first, &still.Preheat{}
	})},
	{"a run without a curve", stripped(func(n *numbers.Batch) { n.Stripped.Curve, n.Stripped.Fractions = nil, nil })},
	{"a run with a curve of one point", stripped(func(n *numbers.Batch) { n.Stripped.Curve = n.Stripped.Curve[:1] })},

	{"cuts by strength", distilled(recipe.Cut{By: recipe.ByStrength}, recipe.Cut{By: recipe.ByStrength}, asItIs)},
	{"cuts by volume and vapour", distilled(recipe.Cut{By: recipe.ByVolume, VolumeM3: 0.004}, recipe.Cut{By: recipe.ByVapourTemp, TempC: 92}, asItIs)},
	{"cuts by time and share", distilled(recipe.Cut{By: recipe.ByTime, TimeS: 3600}, recipe.Cut{By: recipe.ByShare}, asItIs)},
	{"with feints and water, in two charges", distilled(recipe.Cut{By: recipe.ByStrength}, recipe.Cut{By: recipe.ByVolume, VolumeM3: 0.01}, func(n *numbers.Batch) {
		n.Distilled.Charges, n.Distilled.Returned, n.Distilled.Water = 2, stream.Stream{EthanolKg: 4, WaterKg: 4}, stream.Stream{WaterKg: 10}
	})},
	{"one fraction", distilled(recipe.Cut{By: recipe.ByStrength}, recipe.Cut{By: recipe.ByStrength}, func(n *numbers.Batch) { n.Distilled.Fractions = n.Distilled.Fractions[:1] })},

	{"one cask", filled(func(*numbers.Batch, *plan.Cask) {})},
	{"one cask that is a little short", filled(func(_ *numbers.Batch, k *plan.Cask) { k.LastFill = &plan.Lot{VolumeL: 49} })},
	{"two casks, the last short, and some left", filled(func(_ *numbers.Batch, k *plan.Cask) {
		k.Casks, k.LastFill, k.Leftover = 2, &plan.Lot{VolumeL: 49}, plan.Lot{VolumeL: 0.052}
	})},
	{"one cask, and a little less left", filled(func(_ *numbers.Batch, k *plan.Cask) { k.Leftover = plan.Lot{VolumeL: 0.048} })},
	{"no cask", filled(func(n *numbers.Batch, k *plan.Cask) {
		k.Casks, k.Leftover, n.Filled.Result = 0, plan.Lot{VolumeL: 30}, cask.Result{}
	})},
	{"into no wood", filled(func(n *numbers.Batch, _ *plan.Cask) { n.Filled.Done, n.Cask = false, recipe.Cask{} })},
	{"reduced, into no wood", filled(func(n *numbers.Batch, k *plan.Cask) {
		n.Filled.Done, n.Cask, n.Reduced.Done = false, recipe.Cask{}, true
		k.Bottles = 40
	})},
}

// TestWordsOfWork holds all work to a file: its words and figures, what is read, and what is
// warned of.
func TestWordsOfWork(t *testing.T) {
	var out strings.Builder
	phrase := func(p plan.Phrase) string {
		text := p.Text
		for _, v := range p.Values {
			q := fmt.Sprintf("%.6g %s", v.Value, v.Unit)
			if v.Gallons > 0 {
				q += fmt.Sprintf(" (%.5g gal)", v.Gallons)
			}
			text = strings.Replace(text, "{}", q, 1)
		}
		return text
	}
	line := func(format string, a ...any) { fmt.Fprintf(&out, format+"\n", a...) }
	for _, c := range worked {
		line("## %s", c.what)
		for _, j := range c.jobs {
			line("%s in %q: %s", j.Key, j.Vessel, phrase(j.titled()))
			if j.When != nil {
				line("  when: %s", phrase(*j.When))
			}
			line("  do: %s", phrase(j.Do))
			if j.Mark != nil {
				line("  mark: %s", phrase(*j.Mark))
			}
			line("  takes: %.6g min, %s, %d people, %.6g W, chain %q, after %q%s", j.DurationS/60, attendWords[j.Attend], j.People, j.Power, j.Chain, j.After,
				map[bool]string{true: ", meanwhile"}[j.Meanwhile]+map[bool]string{true: ", on a new day"}[j.NewDay]+map[bool]string{true: ", may wait"}[j.MayWait])
			for _, r := range j.Read {
				line("  read: %s %s %.6g %s, besides %.4g, at %.6g s", r.Kind, r.What, r.Should.Value, r.Should.Unit, r.Besides, r.AtS)
			}
			for _, m := range j.Measured {
				line("  measured: %s %.6g %s", m.Name, m.Amount.Value, m.Amount.Unit)
			}
			if len(j.Cautions) > 0 {
				line("  cautions: %s", strings.Join(j.Cautions, ", "))
			}
		}
		line("")
	}
	const name = "testdata/said.txt"
	if testflag.Update() {
		require.NoError(t, os.MkdirAll("testdata", 0o755))
		require.NoError(t, os.WriteFile(name, []byte(out.String()), 0o644))
	}
	want, err := os.ReadFile(name)
	require.NoError(t, err)
	assert.Equal(t, string(want), out.String())
}

// A value lies between the two points about its time; the ends stand still.
func TestBetweenPoints(t *testing.T) {
	curve := []ferment.Point{{TimeS: 10, TempC: 20}, {TimeS: 20, TempC: 30}, {TimeS: 40, TempC: 10}}
	for s, want := range map[float64]float64{0: 20, 10: 20, 12: 22, 20: 30, 30: 20, 40: 10, 99: 10} {
		assert.InDelta(t, want, fermentAt(curve, s).TempC, 1e-9, "%g s", s)
	}
	assert.Zero(t, fermentAt(nil, 5).TempC)
	one := curve[:1]
	for _, s := range []float64{0, 10, 99} {
		assert.InDelta(t, 20, fermentAt(one, s).TempC, 1e-9)
	}
}

// The error of each reading besides the constants of a batch, at a hundred of its unit: its
// parts are independent (sources beside each).
func TestErrorsOfReadings(t *testing.T) {
	for _, c := range []struct {
		of   ReadingError
		want float64 // of its parts alone
	}{
		{MashC, 0.8}, {VapourC, 0.9}, {FermentSG, 0.003}, {PH, 0.2}, {MashVolume, 2}, {LowWinesVolume, 4}, {HeartsVolume, 1.2}, {FeintsVolume, 8},
		{SetVolume, 2}, {LowWinesStrength, 4}, {FeintsStrength, 1}, {HeartsStrength, 0.7}, {SetStrength, 0.2}, {Spout, 3.5}, {Flow, 10}, {Net, 1}, {Tare, 10},
	} {
		sum := 0.0
		for _, p := range c.of.Parts {
			part := p.Of(100)
			sum += part * part
		}
		assert.InDelta(t, c.want*c.want, sum, 1e-3*c.want*c.want, c.of.Of)
	}
	assert.InDelta(t, 0.01, SetVolume.Parts[1].Abs, 1e-12)
}

// How long a wash stands in the fermenter is read off the clock; of a batch without a
// ferment there is nothing to read.
func TestHowLongTheWashStands(t *testing.T) {
	at := time.Date(2026, 3, 3, 7, 0, 0, 0, time.UTC)
	c := Clock{start: at, zone: time.UTC, shift: recipe.Shift{}}
	jobs := []Job{{Task: schedule.Task{Key: "mash.1", DurationS: 3600}}, {Task: schedule.Task{Key: fermentKey, DurationS: 7200}}}
	assert.InDelta(t, 7200, c.FermentS(jobs), 1e-9)
	assert.Zero(t, c.FermentS(jobs[:1]))
}

// What is done beside the line of work begins when what it waits for has ended, be that the
// first work of all; what waits for work that there is not is not done.
func TestBesideTheLine(t *testing.T) {
	at := time.Date(2026, 3, 3, 7, 0, 0, 0, time.UTC)
	c := Clock{start: at, zone: time.UTC}
	b := whole().Batch
	task := func(key string, h float64) schedule.Task {
		return schedule.Task{Key: key, Stage: "mash", DurationS: 3600 * h}
	}
	jobs := []Job{{Task: task("mash.1", 1)}, {Task: task("mash.2", 2)}, {Task: task("mash.clean", 1), After: "mash.1"}, {Task: task("ferment.clean", 1), After: "mash.2"}, {Task: task("strip.clean", 1), After: "strip.stop"}}
	for i := range jobs {
		jobs[i].Title = plan.Say("x")
	}
	_, slots := c.Scheduled(b, jobs, nil)
	begins := map[string]float64{}
	for _, s := range slots {
		begins[s.Key] = s.Start.Sub(at).Hours()
	}
	assert.Equal(t, map[string]float64{"mash.1": 0, "mash.2": 1, "mash.clean": 1, "ferment.clean": 3}, begins)
}
