package compare

import (
	"math"
	"slices"
	"strings"

	"newmake/lang/recipe"
)

// subject is what a step is about, in a word or two.
func (d *Difference) subject(s namedStep) string {
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
func (d *Difference) stepText(s namedStep) string {
	in := ""
	if s.DurationS > 0 {
		in = " in " + d.say.duration(s.DurationS)
	}
	switch s.Verb {
	case recipe.MashWater:
		kept := ""
		if s.KeptM3 > 0 {
			kept = " with " + d.say.volume(s.KeptM3) + " kept"
		}
		return "water " + d.say.volume(s.VolumeM3) + " at " + d.say.temp(s.TempC) + kept
	case recipe.MashBackset:
		return "backset " + d.amount(s.MashStep) + " at " + d.say.temp(s.TempC)
	case recipe.MashAdd:
		return "add " + strings.Join(s.grains, ", ")
	case recipe.MashDose:
		return "dose " + s.Enzyme.Name + " " + d.amount(s.MashStep)
	case recipe.MashHeat, recipe.MashCool:
		return s.Verb.Word() + " to " + d.say.temp(s.TempC) + in
	case recipe.MashDrain:
		return "drain" + in + d.whither(s.MashStep)
	case recipe.MashSparge:
		return "sparge " + d.say.volume(s.VolumeM3) + " at " + d.say.temp(s.TempC) + in + d.whither(s.MashStep)
	default:
		return s.Verb.Word() + " " + d.say.duration(s.DurationS)
	}
}

// whither is where what runs off goes to.
func (d *Difference) whither(s recipe.MashStep) string {
	switch {
	case s.NextMash:
		return " for the next mash"
	case s.CooledC > 0:
		return " cooled to " + d.say.temp(s.CooledC)
	}
	return ""
}

// amount is how much of a dose or of backset.
func (d *Difference) amount(s recipe.MashStep) string {
	switch {
	case s.Share > 0 && s.Verb == recipe.MashDose:
		return d.say.share(s.Share) + " of grain"
	case s.Share > 0:
		return d.say.share(s.Share)
	case s.Verb == recipe.MashDose:
		return d.say.mass(s.MassKg)
	default:
		return d.say.volume(s.VolumeM3)
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
			Lines: []Line{{Name: d.subject(a), Old: d.stepText(a), New: d.stepText(b)}}}
		out = append(out, stepChange{d.add(e), set})
	}
	name := d.subject(b)
	switch b.Verb {
	case recipe.MashDose:
		if a.Enzyme.Name != b.Enzyme.Name {
			add("enzyme", b.Enzyme.Name+" for "+a.Enzyme.Name, func(to *recipe.MashStep, from recipe.MashStep) {
				to.Enzyme, to.Share, to.MassKg = from.Enzyme, from.Share, from.MassKg
			})
		} else if a.Share != b.Share || a.Share == 0 && differ(a.MassKg, b.MassKg) {
			add("", d.dosed(name, a.Share, b.Share, a.MassKg, b.MassKg), func(to *recipe.MashStep, from recipe.MashStep) {
				to.Share, to.MassKg = from.Share, from.MassKg
			})
		}
	case recipe.MashWater, recipe.MashBackset, recipe.MashSparge:
		switch {
		case a.Share > 0 && b.Share > 0 && a.Share != b.Share:
			add("share", name+" "+d.moreOrLess(b.Share-a.Share, points), func(to *recipe.MashStep, from recipe.MashStep) { to.Share = from.Share })
		case a.Share != b.Share || a.Share == 0 && differ(a.VolumeM3, b.VolumeM3):
			add("volume", name+" "+d.moreOrLess(b.VolumeM3-a.VolumeM3, d.say.volume), func(to *recipe.MashStep, from recipe.MashStep) {
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
		what := name + " " + d.say.duration(dt) + word
		if a.DurationS == 0 || b.DurationS == 0 { // a time where there was none, or none now
			what = d.stepText(b)
		}
		add("for", what, func(to *recipe.MashStep, from recipe.MashStep) { to.DurationS = from.DurationS })
	}
	new := b.Values()
	for i, o := range a.Values() {
		if !slices.Contains(worded, o.Name) && !o.Same(new[i]) {
			add(o.Name, name+" "+d.change(o, new[i]), func(to *recipe.MashStep, from recipe.MashStep) { to.Values()[i].Set(from.Values()[i]) })
		}
	}
	return out
}

// worded are the values of a step, and of a dose, whose changes have words of
// their own.
var worded = []string{"volume", "share", "enzyme", "mass", "to", "for", "amount"}

// dosed says more or less of an enzyme.
func (d *Difference) dosed(name string, oldShare, newShare, oldKg, newKg float64) string {
	if oldShare > 0 && newShare > 0 {
		oldKg, newKg = oldShare, newShare
	}
	if newKg < oldKg {
		return "less " + name
	}
	return "more " + name
}

// differ says that two amounts are not the same, the last bits apart.
func differ(a, b float64) bool { return math.Abs(a-b) > 1e-9*math.Max(math.Abs(a), math.Abs(b)) }
