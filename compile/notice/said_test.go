package notice_test

import (
	"fmt"
	"os"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"newmake/compile/matter/stream"
	"newmake/compile/notice"
	"newmake/compile/numbers"
	"newmake/compile/plan"
	"newmake/compile/promise"
	"newmake/compile/stage/cask"
	"newmake/compile/stage/ferment"
	"newmake/compile/stage/mash"
	"newmake/compile/stage/schedule"
	"newmake/compile/stage/still"
	"newmake/lang/diag"
	"newmake/lang/quantity"
	"newmake/lang/recipe"
	"newmake/lang/testflag"
)

// corn gelatinizes higher than the malt of the small batch, and brings no enzymes.
var corn = &recipe.Grain{Entry: recipe.Entry{Name: "corn"}, GelLowC: 62, GelHighC: 75}

// cooked is a mash of corn, and of malt that goes in later; ends is how hot each step
// leaves it, and alpha what lives of the malt's enzymes.
func cooked(gelatinized float64, ends, alpha []float64) diag.List {
	return mashOf(func(b *recipe.Batch, r *mash.Result, _ float64) {
		b.Bill.Lines = append(b.Bill.Lines, recipe.BillLine{Grain: corn, MassKg: 60})
		b.Mash.Steps = []recipe.MashStep{{Verb: recipe.MashWater}, {Verb: recipe.MashAdd, Grains: []int{1}}, {Verb: recipe.MashHeat}, {Verb: recipe.MashAdd, Grains: []int{0}}, {Verb: recipe.MashHeat}, {Verb: recipe.MashRest}}
		r.Conversion, r.Gelatinized, r.Steps = 0.8, gelatinized, nil
		for i := range ends {
			at := lines.at(10 + i)
			b.Mash.Steps[i].At = at
			r.Steps = append(r.Steps, mash.Step{StartC: 40, EndC: ends[i], AlphaLeft: alpha[i]})
		}
	})(0)
}

func inUS(change func(*recipe.Batch)) func(*recipe.Batch) {
	return func(b *recipe.Batch) { b.Units, b.Gauge = recipe.US, recipe.US; change(b) }
}

// text is one in which something may stand on a line.
type text struct{ *diag.Source }

var lines = text{diag.NewSource("it.batch", []byte(strings.Repeat(".\n", 99)))}

func (l text) at(line int) diag.Span { return l.Span(2*line-2, 2*line-1) }

// promises are those of a batch, each on its own line.
func promises(units recipe.System, all []recipe.Promise, p *plan.Plan, hearts plan.Lot) diag.List {
	b := small()
	b.Units, b.Promises, b.Where = units, all, map[recipe.Path]diag.Span{}
	for i := range all {
		b.Where[recipe.PathPromise.Child(fmt.Sprint(i+1))] = lines.at(i + 1)
	}
	return notice.Promises(b, promise.Answers(b, p, plan.Lot{}, hearts))
}

// ways are a run whose feints never settle, and what was tried.
func ways(units recipe.System, heads, hearts, charge float64, by ...numbers.WayBy) diag.List {
	v := &recipe.Vessel{Kind: recipe.Still, Name: "S", HoldsM3: 1, HeatsW: 1e4}
	b := &recipe.Batch{Units: units, Gauge: units, Plant: &recipe.Plant{}, Spirit: recipe.Spirit{Still: v, Feints: true}, Strip: recipe.Strip{Still: v}}
	var all []numbers.Way
	for _, by := range by {
		tried := *b
		switch by {
		case numbers.HeartsByVolume:
			tried.Spirit.HeartsFrom = recipe.Cut{By: recipe.ByVolume, VolumeM3: 0.02}
		case numbers.WaterInCharge:
			tried.Spirit.WaterTo.Value = 0.26
		case numbers.SecondBatch:
			tried.Spirit.Charges = 2
			tried.Today = recipe.Today{FeintsM3: 0.0123, FeintsAt: recipe.Strength{Value: 0.61}}
		}
		run := still.Run{ChargeABV: charge, LeftHotM3: 1, MostFill: 0.7, Fractions: []still.Fraction{
			{Name: still.Heads, Stream: spirit(heads)}, {Name: still.Hearts, Stream: spirit(hearts)},
		}}
		run.Charge.EthanolKg = 100
		all = append(all, numbers.Way{By: by, Batch: &tried, Spirit: numbers.Spirit{Run: run}})
	}
	never := numbers.Spirit{Run: still.Run{Problems: []still.Problem{still.ProblemNotSteady}}}
	return notice.Spirit(b, never, all)
}

// cut is a spirit run that a problem befalls, of hearts that begin by a cut.
func cut(p still.Problem, from recipe.Cut, change func(*recipe.Batch)) diag.List {
	return spiritOf(func(b *recipe.Batch, r *numbers.Spirit, _ float64) {
		b.Spirit.HeartsFrom, b.Spirit.ForeshotsM3 = from, 2e-3
		r.Problems, r.HeatUpS = []still.Problem{p}, 3600
		r.Curve = []still.Point{{ABV: 0.8, VapourC: 80.02}, {ABV: 0.3, VapourC: 95}}
		r.Fractions = []still.Fraction{{Name: still.Foreshots, EndS: 3600 + 900}}
		change(b)
	})(0)
}

func shifted(better map[int]float64, waits float64) diag.List {
	of := func(days int, hours float64) []schedule.Slot {
		start := time.Date(2026, 3, 3+days, 7, 0, 0, 0, time.UTC)
		return []schedule.Slot{{Start: start}, washCharge("strip.charge", start, hours)}
	}
	return notice.OtherStart(small(), of(0, waits), func(days int) []schedule.Slot {
		if h, ok := better[days]; ok {
			return of(days, h)
		}
		return of(days, 100)
	})
}

// more is what is said beside the thresholds: which words, which grain, which line.
var more = []struct {
	what string
	list diag.List
}{
	{"the corn was never cooked, more of it than of the malt", cooked(0.5, []float64{60, 58, 66, 60, 64, 63}, []float64{0, 0, 0, 1, .9, .8})},
	{"the malt alone was never cooked", cooked(0.5, []float64{60, 58, 80, 60, 64, 63}, []float64{0, 0, 0, 1, .9, .8})},
	{"the malt was all but cooked", cooked(0.9, []float64{60, 58, 80, 60, 64.98, 63}, []float64{0, 0, 0, 1, .9, .8})},
	{"the enzymes died in the last heat", cooked(1, []float64{60, 58, 90, 65, 85, 70}, []float64{0, 0, 0, .9, .04, .01})},
	{"the enzymes died as the malt went in", cooked(1, []float64{60, 58, 90, 85, 86, 80}, []float64{0, 0, 0, .05, .04, .03})},
	{"there are no enzymes", mashOf(func(b *recipe.Batch, r *mash.Result, _ float64) {
		b.Bill.Lines[0].Grain = corn
		r.Conversion, r.Steps[1].AlphaLeft = 0.8, 0
	})(0)},
	{"a drain that runs cold, by water that is too warm", mashOf(func(b *recipe.Batch, r *mash.Result, _ float64) {
		b.Mash.Steps[0] = recipe.MashStep{Verb: recipe.MashDrain, TempC: 70, CooledC: 18}
		r.Problems = []mash.Problem{{What: mash.ProblemWarmWater, ToC: 21}}
	})(0)},
	{"a cool, by water that is too warm", mashOf(func(b *recipe.Batch, r *mash.Result, _ float64) {
		b.Mash.Steps[0] = recipe.MashStep{Verb: recipe.MashCool, TempC: 19}
		r.Problems = []mash.Problem{{What: mash.ProblemWarmWater, ToC: 21}}
	})(0)},
	{"worts cooled on the bed, twice", mashOf(func(b *recipe.Batch, _ *mash.Result, _ float64) {
		b.Mash.Cooker.CoolsW = 1e4
		b.Mash.Steps = []recipe.MashStep{{Verb: recipe.MashCool}, {Verb: recipe.MashDrain, NextMash: true}, {Verb: recipe.MashCool, TempC: 29, At: lines.at(3)}, {Verb: recipe.MashDrain}, {Verb: recipe.MashCool, TempC: 30, At: lines.at(5)}, {Verb: recipe.MashCool, TempC: 20, At: lines.at(6)}}
	})(0)},
	{"worts cooled by a cooler", mashOf(func(b *recipe.Batch, _ *mash.Result, _ float64) {
		b.Mash.Cooker.CoolsW, b.Plant.WortCooler.AreaM2 = 1e4, 1
		b.Mash.Steps = []recipe.MashStep{{Verb: recipe.MashDrain}, {Verb: recipe.MashCool, TempC: 30}}
	})(0)},
	{"worts that nothing cools", mashOf(func(b *recipe.Batch, _ *mash.Result, _ float64) {
		b.Mash.Steps = []recipe.MashStep{{Verb: recipe.MashDrain}, {Verb: recipe.MashCool, TempC: 30}}
	})(0)},

	{"yeast of which no limits are known", func() diag.List {
		b := small()
		b.Ferm.Yeast = &recipe.Yeast{Entry: recipe.Entry{Name: "yeast"}}
		return notice.Ferment(b, numbers.Ferment{Result: ferment.Result{DryS: 1, PeakTempC: 60}, Vessel: b.Ferm.Vessels[0], ForS: 10}, 60)
	}()},
	{"held in a band, set above it", heldAt(25, 31, 33, 28)(28)},
	{"held at one temperature, warmed by the yeast alone", heldAt(28, 28, 28)(26)},
	{"held, with heat, and falling before it is dry", fermentOf(func(b *recipe.Batch, r *numbers.Ferment, v float64) {
		r.Vessel.HeatsW, r.DryS = 2000, 0
		b.Ferm.HoldLowC, b.Ferm.HoldHighC, r.Curve = 25, 31, []ferment.Point{{TempC: 28}, {TimeS: 3600, TempC: 20}}
	})(0)},
	{"held, without heat, and falling", fermentOf(func(b *recipe.Batch, r *numbers.Ferment, v float64) {
		r.Vessel.HeatsW = 0
		b.Ferm.HoldLowC, b.Ferm.HoldHighC, r.Curve = 25, 31, []ferment.Point{{TempC: 28}, {TimeS: 3600, TempC: 20}}
	})(0)},
	{"hotter than yeast bears, of one whose death is not known", fermentOf(func(b *recipe.Batch, r *numbers.Ferment, v float64) {
		b.Ferm.Yeast = &recipe.Yeast{Entry: recipe.Entry{Name: "yeast"}, LowC: 20, HighC: 34}
		r.PeakTempC, r.Vessel.CoolsW, r.CoolMostW = 50, 5e3, 4e3
	})(0)},

	{"grain in a still that is heated by elements", stripOf(func(b *recipe.Batch, _ *numbers.Strip, _ float64) { b.Strip.Still.HeatedBy = recipe.Elements })(0)},
	{"grain in a jacketed still without rakes", stripOf(func(b *recipe.Batch, _ *numbers.Strip, _ float64) {
		b.Strip.Still.HeatedBy, b.Strip.Still.Agitator = recipe.Jacket, false
	})(0)},
	{"a stop that was never reached leaves alcohol in the pot, and that is said once", stripOf(func(_ *recipe.Batch, r *numbers.Strip, _ float64) {
		r.Residue.EthanolKg, r.Problems, r.Curve = 50, []still.Problem{still.ProblemStopNotReached}, []still.Point{{ABV: 0.5}, {ABV: 0.07}}
	})(0)},
	{"much is left, in two charges", stripOf(func(_ *recipe.Batch, r *numbers.Strip, _ float64) { r.Residue.EthanolKg, r.Charges = 11, 2 })(0)},
	{"the distillate is as warm as the water makes it", stripOf(func(b *recipe.Batch, _ *numbers.Strip, v float64) {
		b.Plant.WaterC, b.Strip.Still.Condenser.DistillateC = 30, 20
		b.Strip.Still.At, b.Strip.Still.Where = lines.at(4), map[string]diag.Span{"condenser": lines.at(5)}
	})(0)},
	{"it is as warm in a still of which no line is known", stripOf(func(b *recipe.Batch, _ *numbers.Strip, v float64) {
		b.Plant.WaterC, b.Strip.Still.Condenser.DistillateC, b.Strip.Still.At = 30, 20, lines.at(4)
	})(0)},
	{"no pot ale, by the batch", stripOf(func(b *recipe.Batch, r *numbers.Strip, _ float64) { r.Idle = true })(0)},
	{"no pot ale, as said", stripOf(func(b *recipe.Batch, r *numbers.Strip, _ float64) { r.Idle, b.Today.NoPotAle = true, true })(0)},
	{"a doubler's charge", spiritOf(func(_ *recipe.Batch, r *numbers.Spirit, _ float64) { r.ChargeABV = 0.401 })(0)},
	{"less than a doubler's, with feints, in gallons", spiritOf(func(b *recipe.Batch, r *numbers.Spirit, _ float64) {
		r.ChargeABV = 0.399
		b.Units, b.Gauge, b.Spirit.Feints = recipe.US, recipe.US, true
	})(0)},
	{"a charge with water in it fills the still", spiritOf(func(_ *recipe.Batch, r *numbers.Spirit, _ float64) { r.WaterKg, r.MostFill = 0.5, 0.9 })(0)},
	{"hearts of a temperature at which the vapour never is", cut(still.ProblemHeartsWeak, recipe.Cut{By: recipe.ByVapourTemp, TempC: 78}, func(*recipe.Batch) {})},
	{"hearts of a temperature that reads as the vapour's", cut(still.ProblemHeartsWeak, recipe.Cut{By: recipe.ByVapourTemp, TempC: 80}, func(*recipe.Batch) {})},
	{"hearts of a temperature that reads as the vapour's, in F", cut(still.ProblemHeartsWeak, recipe.Cut{By: recipe.ByVapourTemp, TempC: 80}, inUS(func(*recipe.Batch) {}))},
	{"hearts of a strength that is never reached", cut(still.ProblemHeartsWeak, recipe.Cut{By: recipe.ByStrength}, func(*recipe.Batch) {})},
	{"hearts from a time within the foreshots", cut(still.ProblemHeartsFromPassed, recipe.Cut{By: recipe.ByTime, TimeS: 898}, func(*recipe.Batch) {})},
	{"hearts from the time at which the foreshots end", cut(still.ProblemHeartsFromPassed, recipe.Cut{By: recipe.ByTime, TimeS: 900}, func(*recipe.Batch) {})},
	{"hearts from a strength within the foreshots", cut(still.ProblemHeartsFromPassed, recipe.Cut{By: recipe.ByStrength, TimeS: 900}, func(*recipe.Batch) {})},
	{"the run ends before the hearts do", cut(still.ProblemHeartsToNotReached, recipe.Cut{}, func(*recipe.Batch) {})},
	{"the hearts are never begun", cut(still.ProblemHeartsFromNotReached, recipe.Cut{}, func(*recipe.Batch) {})},
	{"the foreshots are never over", cut(still.ProblemForeshotsNotReached, recipe.Cut{}, func(*recipe.Batch) {})},
	{"the cuts are crossed", cut(still.ProblemCutsCrossed, recipe.Cut{}, func(*recipe.Batch) {})},
	{"a run with one point", stripOf(func(_ *recipe.Batch, r *numbers.Strip, _ float64) {
		r.Problems, r.Curve = []still.Problem{still.ProblemStopNotReached}, []still.Point{{ABV: 0.07}}
	})(0)},
	{"a run without a curve", stripOf(func(_ *recipe.Batch, r *numbers.Strip, _ float64) {
		r.Problems = []still.Problem{still.ProblemStopNotReached}
	})(0)},
	{"little hearts that trickle take hours", spiritOf(hearts)(1)},
	{"hearts that rush take more than an hour", spiritOf(hearts)(16)},
	{"hearts for which an hour and a half is usual", spiritOf(func(b *recipe.Batch, r *numbers.Spirit, v float64) {
		hearts(b, r, v)
		r.Fractions[0].EndS = 1800 + 1200
	})(5.41)},
	{"hearts for which a little less is usual", spiritOf(func(b *recipe.Batch, r *numbers.Spirit, v float64) {
		hearts(b, r, v)
		r.Fractions[0].EndS = 1800 + 1200
	})(5.39)},
	{"hearts that take no time", spiritOf(func(b *recipe.Batch, r *numbers.Spirit, v float64) {
		hearts(b, r, v)
		r.Fractions[0].EndS = 1800
	})(5)},
	{"no hearts in an hour", spiritOf(hearts)(0)},
	{"low wines slower than asked", stripOf(func(b *recipe.Batch, r *numbers.Strip, v float64) {
		b.Where = map[recipe.Path]diag.Span{recipe.PathStripPace: lines.at(7)}
		r.Fractions = []still.Fraction{{Name: still.LowWines, AskedS: 6000, EndS: 7000}}
	})(0)},
	{"hearts slower than the usual pace, which nobody wrote", spiritOf(func(b *recipe.Batch, r *numbers.Spirit, v float64) {
		r.Fractions = []still.Fraction{{Name: still.Hearts, AskedS: 6000, EndS: 7000}}
	})(0)},
	{"live steam has no surface that could be bare", stripOf(func(b *recipe.Batch, r *numbers.Strip, _ float64) {
		b.Strip.Still.HeatedBy, r.LeftHotM3 = recipe.Direct, 0.001
	})(0)},

	{"one way by volume", ways(recipe.SI, 5, 45, 0.28, numbers.HeartsByVolume)},
	{"two ways of one kind, the first of which is told", ways(recipe.SI, 5, 45, 0.28, numbers.HeartsByVolume, numbers.HeartsByVolume, numbers.WaterInCharge)},
	{"ways in gallons", ways(recipe.US, 5, 45, 0.28, numbers.HeartsByVolume, numbers.WaterInCharge, numbers.FirstBatch, numbers.SecondBatch)},
	{"ways in litres", ways(recipe.SI, 5, 45, 0.28, numbers.WaterInCharge, numbers.FirstBatch, numbers.SecondBatch)},
	{"a way that would be charged too strong", ways(recipe.SI, 5, 45, 0.35, numbers.HeartsByVolume, numbers.WaterInCharge)},
	{"ways whose heads are too great", ways(recipe.SI, 30, 45, 0.28, numbers.WaterInCharge, numbers.HeartsByVolume)},

	{"no cask is filled, without feints", caskOf(func(_ *recipe.Batch, r *numbers.Cask, p *plan.Cask, _ float64) {
		r.Problems, p.Leftover.VolumeL = []cask.Problem{cask.ProblemNotOneCask}, 60
	})(0)},
	{"no cask is filled, with feints", caskOf(func(b *recipe.Batch, r *numbers.Cask, p *plan.Cask, _ float64) {
		b.Spirit.Feints, r.Problems, p.Leftover.VolumeL = true, []cask.Problem{cask.ProblemNotOneCask}, 60
	})(0)},
	{"no cask is filled, today without feints", caskOf(func(b *recipe.Batch, r *numbers.Cask, p *plan.Cask, _ float64) {
		b.Today.FeintsSaid, r.Problems, p.Leftover.VolumeL = true, []cask.Problem{cask.ProblemNotOneCask}, 60
	})(0)},
	{"the one cask is short", caskOf(func(_ *recipe.Batch, r *numbers.Cask, p *plan.Cask, _ float64) {
		r.Problems, p.LastFill = []cask.Problem{cask.ProblemShort}, &plan.Lot{VolumeL: 98}
	})(0)},
	{"the last of two casks is short", caskOf(func(_ *recipe.Batch, r *numbers.Cask, p *plan.Cask, _ float64) {
		r.Problems, p.LastFill, p.Casks = []cask.Problem{cask.ProblemShort}, &plan.Lot{VolumeL: 98}, 2
	})(0)},
	{"a cask that weakens", caskOf(func(b *recipe.Batch, r *numbers.Cask, p *plan.Cask, _ float64) {
		b.Cask.BottleAt = recipe.Strength{Value: 0.46, Basis: recipe.ABV}
		r.Problems, r.Years = []cask.Problem{cask.ProblemWeak}, []cask.Year{{ABV: 0.6}, {ABV: 0.44}}
	})(0)},
	{"a cask that dries", caskOf(func(_ *recipe.Batch, r *numbers.Cask, _ *plan.Cask, _ float64) {
		r.Problems = []cask.Problem{cask.ProblemDry, cask.ProblemClimate}
	})(0)},

	{"a wash that hardly waits two days later", shifted(map[int]float64{2: 0.9, 3: 0.95}, 60)},
	{"a wash that waits an hour six days later", shifted(map[int]float64{6: 1}, 60)},
	{"a wash that waits less one day later", shifted(map[int]float64{1: 20}, 60)},
	{"a wash that waits as long all week, and less a week later", shifted(map[int]float64{7: 1}, 60)},
	{"the wash of one charge waits, and of no other", notice.OtherStart(small(), []schedule.Slot{{}, washCharge("strip.1.charge", time.Time{}, 5), washCharge("strip.2.charge", time.Time{}, 62), washCharge("strip.3.charge", time.Time{}, 40)}, func(int) []schedule.Slot {
		return []schedule.Slot{{}, washCharge("strip.1.charge", time.Time{}, 30)}
	})},
	{"the wash of the first charge waits", notice.OtherStart(small(), []schedule.Slot{{}, washCharge("strip.1.charge", time.Time{}, 62), washCharge("strip.2.charge", time.Time{}, 62)}, func(int) []schedule.Slot {
		return []schedule.Slot{{}, washCharge("strip.1.charge", time.Time{}, 30)}
	})},
	{"a wash of three charges stands", notice.Schedule(small(), []schedule.Slot{washCharge("strip.1.charge", time.Time{}, 0), washCharge("strip.2.charge", time.Time{}, 1), washCharge("strip.3.charge", time.Time{}.Add(80*time.Hour), 62)})},
	{"a wash that many charges take long for", notice.Schedule(small(), []schedule.Slot{{Task: schedule.Task{Key: "strip.1.charge", Stage: "strip"}}, {Task: schedule.Task{Key: "strip.2.charge", Stage: "strip"}, Start: time.Time{}.Add(80 * time.Hour)}})},
	{"no wash at all", notice.OtherStart(small(), nil, nil)},
	{"a vessel that is not cleaned", slots(func(s []schedule.Slot, _ float64) { s[0].Stage, s[0].Key = "strip", "strip.2.charge" })(0)},
	{"a run of the spirit still beside a late cleaning", slots(func(s []schedule.Slot, _ float64) {
		s[0].Stage, s[0].Key = "spirit", "spirit.charge"
		s[1].Key, s[1].Start = "ferment.clean", s[0].End.Add(100*time.Hour)
	})(0)},
	{"two stages past the shift, one of them twice", slots(func(s []schedule.Slot, _ float64) {
		s[0].OutOfShift, s[1].OutOfShift, s[1].Stage = time.Hour, 10*time.Minute, "strip"
	})(0)},

	{"promises of which the second is broken", promises(recipe.SI, []recipe.Promise{
		{What: "casks", Value: 1}, {What: "hearts", Kind: quantity.PureAlcohol, Value: 0.03},
		{What: "hearts", Kind: quantity.PureAlcohol, Value: 0.02, OfRuns: 8, InRuns: 10}, {What: "hearts", Kind: quantity.PureAlcohol, Value: 0.01},
	}, &plan.Plan{Cask: plan.Cask{Casks: 1}}, plan.Lot{PureL: 25})},

	{"a ferment that cannot be computed, set too hot", notice.Failed(failed(numbers.Fermenting, true))},
	{"a ferment that cannot be computed, without a fermenter", notice.Failed(failed(numbers.Fermenting, false))},
	{"a mash that cannot be computed", notice.Failed(failed(numbers.Mashing, true))},
	{"a reduction that cannot be computed", notice.Failed(failed(numbers.Reducing, true))},
	{"an error of no stage", notice.Failed(&numbers.Batch{Batch: small()}, os.ErrInvalid)},
}

func failed(stage numbers.Stage, vessels bool) (*numbers.Batch, error) {
	b := small()
	if !vessels {
		b.Ferm.Vessels = nil
	}
	n := &numbers.Batch{Batch: b}
	n.Mashed.Out.TempC = 50
	return n, &numbers.Failure{Stage: stage, Err: fmt.Errorf("mash: that is why")}
}

// TestWordsOfNotices holds all that is said to a file, word by word: at the numbers that
// decide, and in the cases above.
func TestWordsOfNotices(t *testing.T) {
	var out strings.Builder
	say := func(what string, list diag.List) {
		fmt.Fprintf(&out, "## %s\n", what)
		for _, d := range list {
			fmt.Fprintf(&out, "%s\n  help: %s\n", d.Header(), d.Help)
			if d.Reason != "" {
				fmt.Fprintf(&out, "  reason: %s\n", d.Reason)
			}
		}
		out.WriteString("\n")
	}
	for _, c := range thresholds {
		say(fmt.Sprintf("%s, %s: at %g", c.code, c.what, c.in), c.said(c.in))
		say(fmt.Sprintf("%s, %s: at %g", c.code, c.what, c.out), c.said(c.out))
	}
	for _, c := range more {
		say(c.what, c.list)
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

// Together leaves out what the checker has said of the same, as gravely.
func TestSaidSooner(t *testing.T) {
	one := func(code diag.Code, s diag.Severity) diag.List { return diag.List{{Code: code, Severity: s}} }
	for _, c := range []struct {
		what              string
		checked, computed diag.List
		want              int
	}{
		{"the same, as gravely", one(diag.CodeRawStarch, diag.Warning), one(diag.CodeNotCooked, diag.Warning), 1},
		{"the same, more gravely", one(diag.CodeRawStarch, diag.Error), one(diag.CodeNotCooked, diag.Warning), 1},
		{"the same, less gravely", one(diag.CodeWeakEnzymes, diag.Note), one(diag.CodeUnconverted, diag.Warning), 2},
		{"something else", one(diag.CodeGums, diag.Warning), one(diag.CodeNotCooked, diag.Warning), 2},
		{"something else after the same", append(one(diag.CodeRawStarch, diag.Warning), one(diag.CodeGums, diag.Warning)...), one(diag.CodeNotCooked, diag.Warning), 2},
	} {
		assert.Len(t, notice.Together(c.checked, c.computed), c.want, c.what)
	}
}

// spirit is a stream of so much alcohol, and half as much water.
func spirit(ethanolKg float64) stream.Stream {
	return stream.Stream{EthanolKg: ethanolKg, WaterKg: ethanolKg / 2}
}
