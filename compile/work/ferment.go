package work

import (
	"strconv"
	"strings"
	"time"

	"newmake/compile/lot"
	"newmake/compile/numbers"
	"newmake/compile/plan"
	"newmake/compile/stage/ferment"
	"newmake/compile/stage/schedule"
	"newmake/lang/recipe"
)

// fermentJobs is the set, which ends the mash day, and the days that follow.
func fermentJobs(n *numbers.Batch) []Job {
	f, name := n.Fermented, n.Fermented.Vessel.Name
	fill := Job{
		Task: schedule.Task{Key: "ferment.fill", Stage: "ferment", Vessel: name, Chain: "mash", Attend: schedule.Throughout,
			DurationS: pumpSetupS + f.WortM3/numbers.Rates(n.Batch).PumpM3S},
		When:     whenMashed(n),
		Do:       plan.Say("Pump over to the fermenter: {}.", plan.Of(f.WortM3*lot.LitresPerM3, plan.Litre)),
		Read:     []Reading{volume("volume", f.WortM3*lot.LitresPerM3, MashVolume)},
		Cautions: []string{"co2", inside(f.Vessel)}, Path: recipe.PathFerm,
	}
	if !n.Mashed.InFermenter {
		rehydrated(n, &fill)
	}
	pitch := Job{
		Mark:     mark("pitch"),
		Task:     schedule.Task{Key: "ferment.pitch", Stage: "ferment", Vessel: name, Chain: "mash", Attend: schedule.Throughout, DurationS: pitchS},
		Read:     []Reading{temperature(n.Mashed.Out.TempC, MashC), gravity(n.Mashed.HydrometerSG, WortSG), pH(n.Mashed.PH)},
		Cautions: []string{"co2"}, Path: recipe.PathPitch,
	}
	if n.Ferm.AsItFills {
		pitch.Do = plan.Say("The fermenter is full: stir it, and read it before it works.")
	} else {
		words, values, measured := yeastWords(n, pitch.Key)
		pitch.Do, pitch.Measured = plan.Say("Pitch "+words+".", values...), measured
	}
	hold := plan.Say("Ferment. Cool it when it passes {}.", plan.Of(n.Ferm.HoldHighC, plan.Celsius))
	switch {
	case n.Ferm.HoldHighC == 0:
		hold = plan.Say("Ferment.")
	case !n.Fermented.Vessel.HasCooling():
		hold = plan.Say("Ferment. Nothing cools this vessel: it comes to some {} by itself, and is not meant to pass {}.",
			plan.Of(f.PeakTempC, plan.Celsius), plan.Of(n.Ferm.HoldHighC, plan.Celsius))
	}
	out := []Job{fill, pitch}
	if n.Mashed.InFermenter { // it ran in from the tun
		out = []Job{pitch}
	}
	return append(out, Job{
		Task: schedule.Task{Key: fermentKey, Stage: "ferment", Vessel: name, DurationS: n.Ferm.DurationS, Elastic: true},
		Do:   hold, Cautions: []string{"co2", inside(f.Vessel)}, Path: recipe.PathFermentFor,
	})
}

// rehydrated adds to a job that the yeast is wetted meanwhile, if it is.
func rehydrated(n *numbers.Batch, j *Job) {
	r := n.Ferm.Rehydrate
	if r.VolumeM3 == 0 {
		return
	}
	water, at := plan.Of(r.VolumeM3*lot.LitresPerM3, plan.Litre), plan.Of(r.TempC, plan.Celsius)
	j.Do = plan.Say(j.Do.Text+" Meanwhile strew {} of yeast on {} of clean water at {}; leave it, stir it in at the end, and pitch after {}, within {} of the wort: add wort by parts until it is.",
		append(j.Do.Values, plan.Of(n.Fermented.PitchKg, plan.Kilogram), water, at, plan.Of(r.DurationS/60, plan.Minute), plan.Of(10, plan.CelsiusDiff))...)
	j.Measured = append(j.Measured, plan.Addition{Name: "water for the yeast", Amount: water, At: &at, Step: j.Key})
}

// yeastWords are the yeast and what goes in with it, as words with their values, and
// as what a step has measured out.
func yeastWords(n *numbers.Batch, key string) (text string, values []plan.Quantity, measured []plan.Addition) {
	measure := func(what string, kg float64) {
		q := plan.Of(kg, plan.Kilogram)
		values = append(values, q)
		measured = append(measured, plan.Addition{Name: what, Amount: q, Step: key})
	}
	text = "{} of " + n.Ferm.Yeast.Name
	measure(n.Ferm.Yeast.Name, n.Fermented.PitchKg)
	for _, d := range n.Ferm.Doses {
		text += "; stir in {} of " + d.Enzyme.Name
		measure(d.Enzyme.Name, d.MassKg)
	}
	if kg := n.Fermented.NutrientKg; kg > 0 {
		text += "; stir in {} of diammonium phosphate"
		measure("diammonium phosphate", kg)
	}
	if m3 := n.Ferm.AntifoamM3; m3 > 0 {
		text += "; stir in {} of antifoam, no more than the law lets stay in food"
		measure("antifoam", m3*antifoamKgM3)
	}
	return text, values, measured
}

// antifoamKgM3 is the density of an antifoam emulsion, mostly water (from memory).
const antifoamKgM3 = 1000

// fermentKey is the ferment itself, which goes on until the still is charged.
const fermentKey = "ferment.run"

// roundPrefix begins the key of each reading of the ferment.
const roundPrefix = "ferment.round."

// RoundTitle is such a reading in a few words.
const RoundTitle = "Read the ferment"

// RoundKey is the key of a reading of the ferment, counted from 1; IsRound knows one.
func RoundKey(n int) string { return roundPrefix + strconv.Itoa(n) }

// IsRound says that a key is that of a reading of the ferment.
func IsRound(key string) bool { return strings.HasPrefix(key, roundPrefix) }

// Rounds are when a ferment is read, and how long that takes.
func Rounds(from, to time.Time, shift recipe.Shift, zone *time.Location) (at []time.Time, each time.Duration) {
	return schedule.Rounds(from, to, shift, zone, roundMinute), roundS * time.Second
}

// rounds are the daily readings of the ferment, as steps.
func (c Clock) rounds(s schedule.Slot, curve []ferment.Point, asItFills bool) []plan.Step {
	var out []plan.Step
	from := "the pitch"
	if asItFills {
		from = "the fermenter was full"
	}
	all, each := Rounds(s.Start, s.End, c.shift, c.zone)
	for i, at := range all {
		after := at.Sub(s.Start).Seconds()
		p := fermentAt(curve, after)
		step := plan.Step{
			ID: RoundKey(i + 1), Title: plan.Say(RoundTitle), Mark: mark("{}", plan.Of(p.SG, plan.SG)), Stage: "ferment", Vessel: s.Vessel,
			Start: rfc3339(at), End: rfc3339(at.Add(each)), DurationMin: each.Minutes(),
			Do:     plan.Say("Read the ferment, {} after "+from+".", plan.Of(at.Sub(s.Start).Hours(), plan.Hour)),
			Attend: plan.Stay, People: 1, Cautions: []string{"co2"},
		}
		for _, r := range []Reading{
			gravity(p.SG, FermentSG), temperature(p.TempC, FermentC), pH(p.PH),
		} {
			step.Read = append(step.Read, r.Reading)
		}
		out = append(out, step)
	}
	return out
}

// fermentAt reads the curve at a time, between its points.
func fermentAt(curve []ferment.Point, s float64) ferment.Point {
	a, b, f := around(curve, func(p ferment.Point) float64 { return p.TimeS }, s)
	return ferment.Point{
		TimeS: s, TempC: mix(a.TempC, b.TempC, f), SG: mix(a.SG, b.SG, f), ABV: mix(a.ABV, b.ABV, f), PH: mix(a.PH, b.PH, f),
	}
}
