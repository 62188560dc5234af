package notice

import (
	"fmt"

	"newmake/compile/lot"
	"newmake/compile/measure"
	"newmake/compile/numbers"
	"newmake/compile/stage/ferment"
	"newmake/lang/diag"
	"newmake/lang/recipe"
)

// Pitch says if the wort is too hot or too cold for the yeast.
func Pitch(b *recipe.Batch, atC float64) diag.List {
	w, y := about(b), b.Ferm.Yeast
	if y == nil {
		return nil
	}
	d := diag.Diagnostic{At: w.at(recipe.PathPitch),
		Summary: fmt.Sprintf("%s goes into wort at %s; it works from %s to %s", y.Name, w.say.Temp(atC), w.say.Temp(y.LowC), w.say.Temp(y.HighC))}
	switch {
	case y.HighC > 0 && atC > y.HighC+0.05:
		d.Code, d.Help = diag.CodePitchHot, "cool the mash further before it is set"
		d.Reason = "it dies quickly above " + w.say.Temp(y.MostC)
		if atC <= y.MostC {
			d.Reason = "hot yeast makes harsh spirit, and little of it"
			w.add(d)
			return w.list
		}
		w.addAs(diag.Error, d)
	case y.LowC > 0 && atC < y.LowC-0.05:
		d.Code, d.Help, d.Reason = diag.CodePitchCold, "set it warmer", "cold yeast starts slowly, and others start first"
		w.add(d)
	}
	return w.list
}

const dryLate = 0.90 // of the time: dry no later than this leaves something in hand

// Ferment is what a distiller should know of the ferment. setC is the
// temperature at which it is set.
func Ferment(b *recipe.Batch, r numbers.Ferment, setC float64) diag.List {
	w := about(b)
	fullest(w, r.Use(), "the wash",
		"a smaller batch, or a larger fermenter", "a ferment needs headspace: it heads and foams over")
	w.list = append(w.list, Pitch(b, setC)...)
	hours := r.ForS / lot.SecondsPerHour
	if r.DryS == 0 {
		w.add(diag.Diagnostic{
			Code: diag.CodeNotDry, At: w.at(recipe.PathFermentFor),
			Summary: fmt.Sprintf("it is not dry after %s: %s of sugar is left", measure.Hours(hours), w.say.Mass(r.SugarLeftKg)),
			Help:    "more time, more yeast, a warmer set, or a mash with less sugar",
			Reason:  "sugar in the wash still scorches and foams, and is spirit lost",
		})
	} else if r.DryS > dryLate*r.ForS {
		w.addAs(diag.Note, diag.Diagnostic{
			Code: diag.CodeNotDry, At: w.at(recipe.PathFermentFor),
			Summary: fmt.Sprintf("it is dry after %s of %s: nothing in hand", measure.Hours(r.DryS/lot.SecondsPerHour), measure.Hours(hours)),
			Help:    "the time to dryness is good to about a quarter: give it longer",
		})
	}
	if !holdCold(w, r) {
		holdLeft(w, r)
	}
	fermentHeat(w, r, b.Ferm.Yeast)
	return w.list
}

// holdCold reports whether the cooling water is too warm for the hold.
func holdCold(w *writer, r numbers.Ferment) bool {
	hold := w.b.Ferm.HoldHighC
	if hold == 0 || r.ColdestC == 0 || hold >= r.ColdestC {
		return false
	}
	w.add(diag.Diagnostic{
		Code: diag.CodeHoldCold, At: w.at(recipe.PathHold),
		Summary: fmt.Sprintf("%q cannot hold the wash at %s: with water at %s its cooling brings nothing below %s",
			r.Vessel.Name, w.say.Temp(hold), w.say.Temp(w.b.SupplyC()), w.say.Temp(r.ColdestC)),
		Help: "hold it warmer, or have colder water", Related: declared(r.Vessel),
	})
	return true
}

// holdLeft says if the ferment leaves the temperatures at which it is to be held. A wash
// that is dry gives off no heat and cools in the room, which costs nothing: the plan says
// so, and no notice does.
func holdLeft(w *writer, r numbers.Ferment) {
	low, high := w.b.Ferm.HoldLowC, w.b.Ferm.HoldHighC
	band := w.say.Temp(low) + " to " + w.say.Temp(high)
	if low == high {
		band = w.say.Temp(high)
	}
	say := func(how string, p ferment.Point, help, reason string) {
		goes := fmt.Sprintf("%s to %s, %s after the pitch", how, w.say.Temp(p.TempC), measure.Hours(p.TimeS/lot.SecondsPerHour))
		if p.TimeS == 0 {
			goes = "is set at " + w.say.Temp(p.TempC)
		}
		w.add(diag.Diagnostic{
			Code: diag.CodeHoldLeft, At: w.at(recipe.PathHold),
			Summary: fmt.Sprintf("the ferment is not held at %s: it %s", band, goes),
			Help:    help, Reason: reason,
		})
	}
	above, below := r.Leaves(low, high)
	if above != nil {
		help, why := cooling(w, r)
		say("rises", above.Farthest, help, why)
	}
	if below != nil && (r.DryS == 0 || below.First.TimeS < r.DryS) {
		why := fmt.Sprintf("%q is warmed by the yeast alone", r.Vessel.Name)
		if r.Vessel.HeatsW > 0 {
			why = fmt.Sprintf("%q puts in %s at most", r.Vessel.Name, w.say.Power(r.Vessel.HeatsW/1000))
		}
		say("falls", below.Farthest, "a warmer set, more yeast, or hold it from a lower temperature on", why)
	}
}

// cooling says what a fermenter takes out, and what helps against more heat than that.
func cooling(w *writer, r numbers.Ferment) (help, why string) {
	if !r.Vessel.HasCooling() {
		return "a cooler set, less yeast, or a fermenter that is cooled", fmt.Sprintf("nothing cools %q", r.Vessel.Name)
	}
	return "a cooler set, less yeast, or more cooling", fmt.Sprintf("%q takes out %s at most", r.Vessel.Name, w.say.Power(r.CoolMostW/1000))
}

// fermentHeat says if the ferment gets too warm, and why.
func fermentHeat(w *writer, r numbers.Ferment, y *recipe.Yeast) {
	if y.HighC == 0 || r.PeakTempC <= max(y.HighC, w.b.Ferm.HoldHighC)+0.5 {
		return
	}
	help, why := cooling(w, r)
	d := diag.Diagnostic{
		At:      w.at(recipe.PathHold),
		Summary: fmt.Sprintf("the ferment comes to %s; %s works up to %s", w.say.Temp(r.PeakTempC), y.Name, w.say.Temp(y.HighC)),
		Reason:  fmt.Sprintf("it gives off %s at its greatest, and %s", w.say.Power(r.PeakHeatW/1000), why),
		Help:    help,
		Related: declared(r.Vessel),
	}
	if r.PeakTempC > y.MostC && y.MostC > 0 {
		d.Code = diag.CodeYeastKilled
	} else {
		d.Code = diag.CodeFermentHot
	}
	w.add(d)
}
