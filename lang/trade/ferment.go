package trade

import (
	"fmt"
	"slices"

	"newmake/lang/diag"
	"newmake/lang/recipe"
	"newmake/lang/wording"
)

// checkSet looks at the temperature at which the mash goes to the yeast.
func checkSet(r *rules, w *walkthrough) {
	y := r.batch.Ferm.Yeast
	set, last := w.set()
	path := last.Path.Child("to")
	if last.CooledC > 0 {
		path = last.Path.Child("cooled")
	}
	asItFills(r)
	wetted(r)
	d := diag.Diagnostic{
		Code: diag.CodeSetTemperature, At: r.at(path),
		Help:    fmt.Sprintf("end the mash with `cool to` a temperature between %s and %s", r.temp(y.LowC), r.temp(y.HighC)),
		Reason:  fmt.Sprintf("`%s` is well between %s and %s, and dies quickly above %s", y.Name, r.temp(y.LowC), r.temp(y.HighC), r.temp(y.MostC)),
		Related: []diag.Related{{At: r.at(recipe.PathPitch), Text: "the yeast goes in here"}},
	}
	if hot := w.hotDraw; hot != nil && (last.Verb == recipe.MashDrain || last.Verb == recipe.MashSparge) {
		d.At = r.at(hot.Path)
		d.Help = fmt.Sprintf("this one runs off hot: let it through the wort cooler, `%s cooled to` a temperature between %s and %s", hot.Verb.Word(), r.temp(y.LowC), r.temp(y.HighC))
	}
	if set <= y.MostC {
		setWindow(r, d, set)
		return
	}
	d.Summary = fmt.Sprintf("the mash is set at %s: it kills the yeast", r.temp(set))
	r.otherScale(&d, path, y.LowC-5, y.HighC)
	r.add(d)
}

// wetted says that only dry yeast is rehydrated.
func wetted(r *rules) {
	if y := r.batch.Ferm.Yeast; r.batch.Ferm.Rehydrate.VolumeM3 > 0 && !y.Dry {
		r.add(diag.Diagnostic{
			Code: diag.CodeWetYeast, At: r.at(recipe.PathRehydrate),
			Summary: fmt.Sprintf("`%s` is pressed, and wet as it is bought", y.Name),
			Help:    "take the line out: pressed yeast is stirred up in some of the wort, or pitch a dry one",
		})
	}
}

// asItFills says that yeast can't be pitched as the fermenter fills where nothing
// runs cold into it.
func asItFills(r *rules) {
	if !r.batch.Ferm.AsItFills || slices.ContainsFunc(r.batch.Mash.Steps, func(s recipe.MashStep) bool { return s.CooledC > 0 }) {
		return
	}
	r.add(diag.Diagnostic{
		Code: diag.CodeAsItFills, At: r.at(recipe.PathPitch),
		Summary: "yeast can't go in as the fermenter fills: no wort runs cold into it",
		Help:    "take `as it fills` out, or let the worts run by a wort cooler: " + wording.Example(r.at(recipe.PathPitch), "drain in 60 min cooled to 70 F"),
	})
}

// setWindow warns of a set, in C, that the yeast survives but that lies outside its range.
// Two degrees below the range pass: malt washes are set cool on purpose (common practice).
func setWindow(r *rules, d diag.Diagnostic, set float64) {
	const margin = 2 // K
	y := r.batch.Ferm.Yeast
	d.Severity = diag.Warning
	switch {
	case set > y.HighC+0.1:
		d.Summary = fmt.Sprintf("the mash is set at %s, warmer than the yeast likes", r.temp(set))
	case set < y.LowC-margin:
		d.Summary = fmt.Sprintf("the mash is set at %s, where the yeast sleeps", r.temp(set))
	default:
		return
	}
	r.add(d)
}

// checkPitch holds the pitch against what is usual for the yeast. A pitch by
// weight is reckoned on the volume of the wash, which is known here to some per
// cent.
func checkPitch(r *rules, washM3 float64) {
	f := &r.batch.Ferm
	y, rate, margin := f.Yeast, f.PitchKgM3, 0.001
	if f.PitchKg > 0 && washM3 > 0 {
		rate, margin = f.PitchKg/washM3, 0.1
	}
	low, high := y.PitchLowKgM3, y.PitchHighKgM3
	if rate == 0 || rate >= low*(1-margin) && rate <= high*(1+margin) {
		return
	}
	word, reason := "much", "more yeast than is needed costs money, and can be tasted"
	if rate < low {
		word, reason = "little", "a small pitch starts slowly and stays slow, for it doubles only some five times at its full pace without air (from memory): bacteria get there first, and it may stop short of dry"
	}
	r.add(diag.Diagnostic{
		Code: diag.CodePitchRate, Severity: diag.Warning, At: r.at(recipe.PathPitch), Reason: reason,
		Summary: fmt.Sprintf("%s g/L is %s for `%s`", wording.Decimal(rate), word, y.Name),
		Help:    fmt.Sprintf("usual: %s to %s g/L, as bought", wording.Decimal(low), wording.Decimal(high)),
	})
}

// checkFerment looks at where the ferment is held.
func checkFerment(r *rules) {
	f := &r.batch.Ferm
	y := f.Yeast
	const margin = 2
	d := diag.Diagnostic{
		Code: diag.CodeHoldWindow, Severity: diag.Warning, At: r.at(recipe.PathHold),
		Help: fmt.Sprintf("`%s` is well between %s and %s", y.Name, r.temp(y.LowC), r.temp(y.HighC)),
	}
	switch {
	case f.HoldLowC > y.MostC:
		d.Severity = diag.Error
		d.Summary = fmt.Sprintf("the ferment is held at %s and more: that kills the yeast", r.temp(f.HoldLowC))
		r.otherScale(&d, recipe.PathHold, 0, y.MostC)
	case f.HoldHighC > y.HighC+0.1:
		d.Summary = fmt.Sprintf("the batch lets the ferment get to %s, warmer than the yeast likes", r.temp(f.HoldHighC))
	case f.HoldLowC < y.LowC-margin && f.HoldHighC < y.LowC:
		d.Summary = fmt.Sprintf("the ferment is held at %s at most, where the yeast sleeps", r.temp(f.HoldHighC))
	default:
		return
	}
	r.add(d)
}
