package compare

import (
	"fmt"
	"strings"

	"newmake/lang/recipe"
)

// field is one value of a batch that stands on its own.
type field struct {
	part Part
	path string
	name string
	idle bool // it changes nothing that the plan calculates
	// get gives what is compared, and what it reads as.
	get func(b *recipe.Batch) any
	say func(s say, b *recipe.Batch) string
	set func(to, from *recipe.Batch)
	// what words the change; nil is the name and the new value.
	what func(s say, old, new *recipe.Batch) string
}

// fields are the values of a batch outside its bill and its steps.
var fields = []field{
	{part: OfBatch, path: "at", name: "plant", idle: true,
		get: func(b *recipe.Batch) any { return b.Plant.Name },
		say: func(_ say, b *recipe.Batch) string { return b.Plant.Name }},
	{part: OfBatch, path: "units", name: "gauged",
		get: func(b *recipe.Batch) any { return b.Gauge },
		say: func(_ say, b *recipe.Batch) string {
			if b.Gauge == recipe.SI {
				return "in litres at 20 C"
			}
			return "in gallons at 60 F"
		},
		set: func(to, from *recipe.Batch) { to.Gauge = from.Gauge }},
	{part: OfBatch, path: "start", name: "start",
		get: func(b *recipe.Batch) any { return b.Start },
		say: func(_ say, b *recipe.Batch) string {
			s := b.Start
			return fmt.Sprintf("%04d-%02d-%02d %02d:%02d", s.Year, s.Month, s.Day, s.Hour, s.Minute)
		},
		set: func(to, from *recipe.Batch) { to.Start = from.Start }},
	{part: OfBatch, path: "expect", name: "promises", idle: true,
		get: func(b *recipe.Batch) any { return promises(b) },
		say: func(_ say, b *recipe.Batch) string { return promises(b) }},

	{part: OfMash, path: "mash", name: "cooker",
		get: func(b *recipe.Batch) any { return b.Mash.Cooker.Name },
		say: func(_ say, b *recipe.Batch) string { return b.Mash.Cooker.Name },
		set: func(to, from *recipe.Batch) { to.Mash.Cooker = from.Mash.Cooker }},
	{part: OfMash, path: "mash.backset-acidity", name: "backset acidity",
		get: func(b *recipe.Batch) any { return b.Mash.BacksetPH },
		say: func(_ say, b *recipe.Batch) string { return number(b.Mash.BacksetPH) + " pH" },
		set: func(to, from *recipe.Batch) { to.Mash.BacksetPH = from.Mash.BacksetPH }},
	{part: OfMash, path: "mash.backset-solids", name: "backset solids",
		get: func(b *recipe.Batch) any { return b.Mash.BacksetSolidsFrac },
		say: func(s say, b *recipe.Batch) string { return s.share(b.Mash.BacksetSolidsFrac) },
		set: func(to, from *recipe.Batch) { to.Mash.BacksetSolidsFrac = from.Mash.BacksetSolidsFrac }},

	{part: OfFerment, path: "ferment", name: "fermenter",
		get: func(b *recipe.Batch) any { return vesselNames(b.Ferm.Vessels) },
		say: func(_ say, b *recipe.Batch) string { return vesselNames(b.Ferm.Vessels) },
		set: func(to, from *recipe.Batch) { to.Ferm.Vessels = from.Ferm.Vessels }},
	{part: OfFerment, path: "ferment.pitch", name: "yeast",
		get:  func(b *recipe.Batch) any { return b.Ferm.Yeast.Name },
		say:  func(_ say, b *recipe.Batch) string { return b.Ferm.Yeast.Name },
		set:  func(to, from *recipe.Batch) { to.Ferm.Yeast = from.Ferm.Yeast },
		what: func(_ say, old, new *recipe.Batch) string { return new.Ferm.Yeast.Name + " for " + old.Ferm.Yeast.Name }},
	{part: OfFerment, path: "ferment.pitch", name: "pitch",
		get: func(b *recipe.Batch) any { return [2]float64{b.Ferm.PitchKg, b.Ferm.PitchKgM3} },
		say: pitch,
		set: func(to, from *recipe.Batch) {
			to.Ferm.PitchKg, to.Ferm.PitchKgM3 = from.Ferm.PitchKg, from.Ferm.PitchKgM3
		}},
	{part: OfFerment, path: "ferment.hold", name: "hold",
		get: func(b *recipe.Batch) any { return [2]float64{b.Ferm.HoldLowC, b.Ferm.HoldHighC} },
		say: func(s say, b *recipe.Batch) string {
			if b.Ferm.HoldLowC == b.Ferm.HoldHighC {
				return s.temp(b.Ferm.HoldHighC)
			}
			low, _, _ := strings.Cut(s.temp(b.Ferm.HoldLowC), " ")
			return low + ".." + s.temp(b.Ferm.HoldHighC)
		},
		set: func(to, from *recipe.Batch) {
			to.Ferm.HoldLowC, to.Ferm.HoldHighC = from.Ferm.HoldLowC, from.Ferm.HoldHighC
		}},
	{part: OfFerment, path: "ferment.for", name: "ferment",
		get:  func(b *recipe.Batch) any { return b.Ferm.DurationS },
		say:  func(s say, b *recipe.Batch) string { return s.duration(b.Ferm.DurationS) },
		set:  func(to, from *recipe.Batch) { to.Ferm.DurationS = from.Ferm.DurationS },
		what: longer("ferment", func(b *recipe.Batch) float64 { return b.Ferm.DurationS })},

	{part: OfStrip, path: "strip", name: "wash still",
		get: func(b *recipe.Batch) any { return b.Strip.Still.Name },
		say: func(_ say, b *recipe.Batch) string { return b.Strip.Still.Name },
		set: func(to, from *recipe.Batch) { to.Strip.Still = from.Strip.Still }},
	{part: OfStrip, path: "strip.charges", name: "wash run",
		get: func(b *recipe.Batch) any { return b.Strip.Charges },
		say: func(_ say, b *recipe.Batch) string { return plural(b.Strip.Charges, "charge") },
		set: func(to, from *recipe.Batch) { to.Strip.Charges = from.Strip.Charges }},
	{part: OfStrip, path: "strip.stop", name: "wash run's stop",
		get: func(b *recipe.Batch) any { return b.Strip.StopAt },
		say: func(s say, b *recipe.Batch) string { return s.strength(b.Strip.StopAt) },
		set: func(to, from *recipe.Batch) { to.Strip.StopAt = from.Strip.StopAt }},

	{part: OfSpirit, path: "spirit", name: "spirit still",
		get: func(b *recipe.Batch) any { return b.Spirit.Still.Name },
		say: func(_ say, b *recipe.Batch) string { return b.Spirit.Still.Name },
		set: func(to, from *recipe.Batch) { to.Spirit.Still = from.Spirit.Still }},
	{part: OfSpirit, path: "spirit.charge", name: "charge",
		get: func(b *recipe.Batch) any { return b.Spirit.Feints },
		say: func(_ say, b *recipe.Batch) string {
			if b.Spirit.Feints {
				return "low wines and feints"
			}
			return "low wines alone"
		},
		set: func(to, from *recipe.Batch) { to.Spirit.Feints = from.Spirit.Feints }},
	{part: OfSpirit, path: "spirit.charges", name: "spirit run",
		get: func(b *recipe.Batch) any { return b.Spirit.Charges },
		say: func(_ say, b *recipe.Batch) string { return plural(b.Spirit.Charges, "charge") },
		set: func(to, from *recipe.Batch) { to.Spirit.Charges = from.Spirit.Charges }},
	{part: OfSpirit, path: "spirit.foreshots", name: "foreshots",
		get: func(b *recipe.Batch) any { return b.Spirit.ForeshotsM3 },
		say: func(s say, b *recipe.Batch) string { return s.volume(b.Spirit.ForeshotsM3) },
		set: func(to, from *recipe.Batch) { to.Spirit.ForeshotsM3 = from.Spirit.ForeshotsM3 }},
	{part: OfSpirit, path: "spirit.hearts.from", name: "hearts from",
		get: func(b *recipe.Batch) any { return bare(b.Spirit.HeartsFrom) },
		say: func(s say, b *recipe.Batch) string { return s.cut(b.Spirit.HeartsFrom) },
		set: func(to, from *recipe.Batch) { to.Spirit.HeartsFrom = from.Spirit.HeartsFrom }},
	{part: OfSpirit, path: "spirit.hearts.to", name: "hearts to",
		get: func(b *recipe.Batch) any { return bare(b.Spirit.HeartsTo) },
		say: func(s say, b *recipe.Batch) string { return s.cut(b.Spirit.HeartsTo) },
		set: func(to, from *recipe.Batch) { to.Spirit.HeartsTo = from.Spirit.HeartsTo }},
	{part: OfSpirit, path: "spirit.stop", name: "spirit run's stop",
		get: func(b *recipe.Batch) any { return b.Spirit.Stop },
		say: func(s say, b *recipe.Batch) string { return s.strength(b.Spirit.Stop) },
		set: func(to, from *recipe.Batch) { to.Spirit.Stop = from.Spirit.Stop }},

	{part: OfCask, path: "cask.entry", name: "entry",
		get: func(b *recipe.Batch) any { return b.Cask.Entry },
		say: func(s say, b *recipe.Batch) string { return s.strength(b.Cask.Entry) },
		set: func(to, from *recipe.Batch) { to.Cask.Entry = from.Cask.Entry }},
	{part: OfCask, path: "cask.fill", name: "cask",
		get: func(b *recipe.Batch) any { return [4]any{b.Cask.SizeM3, wood(b), b.Cask.New, b.Cask.Char} },
		say: caskWords,
		set: func(to, from *recipe.Batch) {
			if (to.Cask.Kind == nil) != (from.Cask.Kind == nil) {
				bottle, at := to.Cask.BottleM3, to.Cask.BottleAt
				to.Cask = from.Cask
				to.Cask.BottleM3, to.Cask.BottleAt = bottle, at
				return
			}
			to.Cask.SizeM3, to.Cask.Kind, to.Cask.New, to.Cask.Char = from.Cask.SizeM3, from.Cask.Kind, from.Cask.New, from.Cask.Char
		}},
	{part: OfCask, path: "cask.rest", name: "rest in wood",
		get:  func(b *recipe.Batch) any { return b.Cask.RestS },
		say:  func(s say, b *recipe.Batch) string { return s.duration(b.Cask.RestS) },
		set:  func(to, from *recipe.Batch) { to.Cask.RestS = from.Cask.RestS },
		what: longer("rest in wood", func(b *recipe.Batch) float64 { return b.Cask.RestS })},
	{part: OfCask, path: "cask.bottle", name: "bottle",
		get: func(b *recipe.Batch) any { return [2]any{b.Cask.BottleM3, b.Cask.BottleAt} },
		say: func(s say, b *recipe.Batch) string {
			size, at := "the usual", "the least"
			if b.Cask.BottleM3 > 0 {
				size = number(b.Cask.BottleM3*1e6) + " mL"
			}
			if b.Cask.BottleAt.Value > 0 {
				at = s.strength(b.Cask.BottleAt)
			}
			return size + " at " + at
		},
		set: func(to, from *recipe.Batch) {
			to.Cask.BottleM3, to.Cask.BottleAt = from.Cask.BottleM3, from.Cask.BottleAt
		}},
	{part: OfCask, path: "cask.climate", name: "climate",
		get: func(b *recipe.Batch) any { return b.Cask.Climate },
		say: func(s say, b *recipe.Batch) string {
			return strings.TrimSpace(b.Cask.Climate.Named + " " + lossWords(s, b.Cask.Climate))
		},
		set: func(to, from *recipe.Batch) { to.Cask.Climate = from.Cask.Climate }},
}

// goesWithWood says that a field changes because one of the two batches goes into
// no wood at all: the edit of the cask says so, and takes these with it.
func (d *Difference) goesWithWood(f field) bool {
	if (d.Old.Cask.Kind == nil) == (d.New.Cask.Kind == nil) {
		return false
	}
	return f.path == "cask.entry" || f.path == "cask.rest" || f.path == "cask.climate"
}

// fields finds the edits of single values.
func (d *Difference) fields() {
	for _, f := range fields {
		if f.get(d.Old) == f.get(d.New) || d.renamedVessel(f) || d.goesWithWood(f) {
			continue
		}
		e := Edit{Part: f.part, Kind: Changed, Path: f.path, Counts: !f.idle,
			Lines: []Line{{Name: f.name, Old: f.say(d.say, d.Old), New: f.say(d.say, d.New)}}}
		switch {
		case f.what != nil:
			e.What = f.what(d.say, d.Old, d.New)
		case f.path == "expect":
			e.What, e.Lines = "the promises", nil
		default:
			e.What = f.name + " " + e.Lines[0].New
		}
		if new := d.New; f.set != nil {
			e.apply = func(b *recipe.Batch) { f.set(b, new) }
		}
		d.add(e)
	}
	d.style()
	d.doses()
}

// style is the standard that the batch is held against. It counts only where it
// says the bottling strength.
func (d *Difference) style() {
	o, n := d.Old.Style, d.New.Style
	title := func(s *recipe.Standard) string {
		if s == nil {
			return "none"
		}
		return s.Name
	}
	e := Edit{Part: OfBatch, Kind: Changed, Path: "style", Counts: d.Old.Cask.BottleAt.Value == 0 || d.New.Cask.BottleAt.Value == 0,
		What: "style " + title(n), Lines: []Line{{Name: "style", Old: title(o), New: title(n)}},
		apply: func(b *recipe.Batch) { b.Style = n }}
	switch {
	case title(o) != title(n):
	case o != nil && !sameStandard(o, n):
		e.Part, e.What, e.Lines = OfStock, "what "+title(n)+" asks", nil
	default:
		return
	}
	d.add(e)
}

// doses are the enzymes that go into the fermenter.
func (d *Difference) doses() {
	find := func(all []recipe.Dose, name string) *recipe.Dose {
		for i := range all {
			if all[i].Enzyme.Name == name {
				return &all[i]
			}
		}
		return nil
	}
	amount := func(x *recipe.Dose) string {
		switch {
		case x == nil:
			return ""
		case x.Share > 0:
			return d.say.share(x.Share) + " of grain"
		}
		return d.say.mass(x.MassKg)
	}
	edit := func(name string) {
		o, n := find(d.Old.Ferm.Doses, name), find(d.New.Ferm.Doses, name)
		e := Edit{Part: OfFerment, Kind: Changed, Path: "ferment.dose." + name, Counts: true,
			Lines: []Line{{Name: name, Old: amount(o), New: amount(n)}}}
		switch {
		case o == nil:
			e.Kind, e.What = Added, name+" added to the ferment"
			e.apply = func(b *recipe.Batch) { b.Ferm.Doses = append(b.Ferm.Doses, *n) }
		case n == nil:
			e.Kind, e.What = Removed, name+" left out of the ferment"
			e.apply = func(b *recipe.Batch) { b.Ferm.Doses = without(b.Ferm.Doses, name) }
		case o.Share != n.Share || o.Share == 0 && differ(o.MassKg, n.MassKg):
			e.What = d.dosed(name, o.Share, n.Share, o.MassKg, n.MassKg) + " in the ferment"
			e.apply = func(b *recipe.Batch) {
				if x := find(b.Ferm.Doses, name); x != nil {
					x.Share, x.MassKg = n.Share, n.MassKg
				}
			}
		default:
			return
		}
		d.add(e)
	}
	for _, o := range d.Old.Ferm.Doses {
		edit(o.Enzyme.Name)
	}
	for _, n := range d.New.Ferm.Doses {
		if find(d.Old.Ferm.Doses, n.Enzyme.Name) == nil {
			edit(n.Enzyme.Name)
		}
	}
}

func without(all []recipe.Dose, name string) []recipe.Dose {
	var out []recipe.Dose
	for _, x := range all {
		if x.Enzyme.Name != name {
			out = append(out, x)
		}
	}
	return out
}
