package compare

import (
	"math"
	"slices"
	"strings"

	"newmake/lang/recipe"
)

// subject is what a step is about, in a word or two.
func subject(s namedStep) string {
	switch s.Verb {
	case recipe.MashAdd:
		return "add " + strings.Join(s.grains, ", ")
	case recipe.MashDose:
		return s.Enzyme.Name
	default:
		return s.Verb.Word()
	}
}

// stepText is a step as it might be written.
func (s say) stepText(step namedStep) string {
	in := ""
	if step.DurationS > 0 {
		in = " in " + duration(step.DurationS)
	}
	switch step.Verb {
	case recipe.MashWater:
		kept := ""
		if step.KeptM3 > 0 {
			kept = " with " + s.volume(step.KeptM3) + " kept"
		}
		return "water " + s.volume(step.VolumeM3) + " at " + s.temp(step.TempC) + kept
	case recipe.MashBackset:
		return "backset " + s.amount(step.MashStep) + " at " + s.temp(step.TempC)
	case recipe.MashAdd:
		return "add " + strings.Join(step.grains, ", ")
	case recipe.MashDose:
		return "dose " + step.Enzyme.Name + " " + s.amount(step.MashStep)
	case recipe.MashHeat, recipe.MashCool:
		return step.Verb.Word() + " to " + s.temp(step.TempC) + in
	case recipe.MashDrain:
		return "drain" + in + s.whither(step.MashStep)
	case recipe.MashSparge:
		return "sparge " + s.volume(step.VolumeM3) + " at " + s.temp(step.TempC) + in + s.whither(step.MashStep)
	default:
		return step.Verb.Word() + " " + duration(step.DurationS)
	}
}

// whither is where what runs off goes to.
func (s say) whither(step recipe.MashStep) string {
	switch {
	case step.NextMash:
		return " for the next mash"
	case step.CooledC > 0:
		return " cooled to " + s.temp(step.CooledC)
	}
	return ""
}

// amount is how much of a dose or of backset.
func (s say) amount(step recipe.MashStep) string {
	switch {
	case step.Share > 0 && step.Verb == recipe.MashDose:
		return s.share(step.Share) + " of grain"
	case step.Share > 0:
		return s.share(step.Share)
	case step.Verb == recipe.MashDose:
		return s.mass(step.MassKg)
	default:
		return s.volume(step.VolumeM3)
	}
}

// stepChanges are the edits of a step that both mashes have.
func (d *Difference) stepChanges(a, b namedStep) []stepChange {
	var out []stepChange
	add := func(part, what string, set func(to *recipe.MashStep, from recipe.MashStep)) {
		path := b.Path
		if part != "" {
			path = path.Child(part)
		}
		e := Edit{Part: OfMash, Kind: Changed, Path: path, What: what, Counts: true,
			Lines: []Line{{Name: subject(a), Old: d.say.stepText(a), New: d.say.stepText(b)}}}
		out = append(out, stepChange{d.add(e), set})
	}
	name := subject(b)
	switch b.Verb {
	case recipe.MashDose:
		if a.Enzyme.Name != b.Enzyme.Name {
			add("enzyme", b.Enzyme.Name+" for "+a.Enzyme.Name, func(to *recipe.MashStep, from recipe.MashStep) {
				to.Enzyme, to.Share, to.MassKg = from.Enzyme, from.Share, from.MassKg
			})
		} else if a.Share != b.Share || a.Share == 0 && differ(a.MassKg, b.MassKg) {
			add("", dosed(name, a.Share, b.Share, a.MassKg, b.MassKg), func(to *recipe.MashStep, from recipe.MashStep) {
				to.Share, to.MassKg = from.Share, from.MassKg
			})
		}
	case recipe.MashWater, recipe.MashBackset, recipe.MashSparge:
		switch {
		case a.Share > 0 && b.Share > 0 && a.Share != b.Share:
			add("share", name+" "+moreOrLess(b.Share-a.Share, points), func(to *recipe.MashStep, from recipe.MashStep) { to.Share = from.Share })
		case a.Share != b.Share || a.Share == 0 && differ(a.VolumeM3, b.VolumeM3):
			what := name + " " + moreOrLess(b.VolumeM3-a.VolumeM3, d.say.volume)
			if b.VolumeM3 == 0 {
				what = "no " + name
			}
			add("volume", what, func(to *recipe.MashStep, from recipe.MashStep) {
				to.Share, to.VolumeM3 = from.Share, from.VolumeM3
			})
		}
	}
	if dT := b.TempC - a.TempC; math.Abs(dT) > 1e-9 {
		word := " hotter"
		if dT < 0 {
			word = " cooler"
		}
		part := "to"
		if b.Verb == recipe.MashWater || b.Verb == recipe.MashBackset || b.Verb == recipe.MashSparge {
			part = "at"
		}
		add(part, name+" "+d.say.tempDiff(dT)+word, func(to *recipe.MashStep, from recipe.MashStep) { to.TempC = from.TempC })
	}
	if dt := b.DurationS - a.DurationS; math.Abs(dt) > 1e-9 {
		word := " longer"
		if dt < 0 {
			word = " shorter"
		}
		what := name + " " + duration(dt) + word
		if a.DurationS == 0 || b.DurationS == 0 { // a time where there was none, or none now
			what = d.say.stepText(b)
		}
		add("for", what, func(to *recipe.MashStep, from recipe.MashStep) { to.DurationS = from.DurationS })
	}
	new := b.Values()
	for i, o := range a.Values() {
		if !slices.Contains(worded, o.Name) && !o.Same(new[i]) {
			add(o.Name, name+" "+d.say.change(o, new[i]), func(to *recipe.MashStep, from recipe.MashStep) { to.Values()[i].Set(from.Values()[i]) })
		}
	}
	return out
}

// worded are the values of a step, and of a dose, whose changes have words of
// their own.
var worded = []string{"volume", "share", "enzyme", "mass", "to", "for", "amount"}

// dosed says more or less of an enzyme.
func dosed(name string, oldShare, newShare, oldKg, newKg float64) string {
	if oldShare > 0 && newShare > 0 {
		oldKg, newKg = oldShare, newShare
	}
	if newKg < oldKg {
		return "less " + name
	}
	return "more " + name
}

// differ reports whether two amounts are not the same, the last bits apart.
func differ(a, b float64) bool { return math.Abs(a-b) > 1e-9*math.Max(math.Abs(a), math.Abs(b)) }
