package why

import (
	"newmake/lang/recipe"
)

func (a *asked) grainKnobs() []knob {
	var out []knob
	lines := a.b.Bill.Lines
	out = append(out, knob{
		name: "all the grain, same liquor", by: byTenth, at: a.where("bill"), stage: inGrain,
		turn: func(b *recipe.Batch) {
			b.Bill.TotalKg *= tenth
			for i := range b.Bill.Lines {
				b.Bill.Lines[i].MassKg *= tenth
			}
		},
	})
	deg, by := a.degrees()
	for i, l := range lines {
		g := l.Grain
		if len(lines) > 1 {
			out = append(out, knob{name: g.Name, by: byPoint + " of the bill", at: a.where("bill." + g.Name), stage: inGrain, turn: func(b *recipe.Batch) { moreOf(b, i) }})
		}
		out = append(out,
			knob{name: "starch of " + g.Name, by: byPoint, at: g.Where["starch"], stage: inGrain, turn: func(b *recipe.Batch) { b.Bill.Lines[i].Grain.Starch += point }},
			knob{name: "moisture of " + g.Name, by: byPoint, at: g.Where["moisture"], stage: inGrain, turn: func(b *recipe.Batch) { b.Bill.Lines[i].Grain.Moisture += point }},
			knob{name: "gelatinization of " + g.Name, by: by, at: g.Where["gelatinizes"], stage: inMash, turn: func(b *recipe.Batch) {
				b.Bill.Lines[i].Grain.GelLowC += deg
				b.Bill.Lines[i].Grain.GelHighC += deg
			}})
		if g.LintnerPower > 0 || g.AlphaDU > 0 {
			out = append(out, knob{name: "enzymes of " + g.Name, by: byTenth, at: g.Where["power"], stage: inMash, turn: func(b *recipe.Batch) {
				b.Bill.Lines[i].Grain.LintnerPower *= tenth
				b.Bill.Lines[i].Grain.AlphaDU *= tenth
			}})
		}
	}
	return out
}

// moreOf gives line i of the bill a point more; the total stays, and the others
// give way in proportion.
func moreOf(b *recipe.Batch, i int) {
	total, was := b.Bill.TotalKg, b.Bill.Lines[i].MassKg
	now := min(was+point*total, total)
	for j := range b.Bill.Lines {
		if j != i && total > was {
			b.Bill.Lines[j].MassKg *= (total - now) / (total - was)
		}
	}
	b.Bill.Lines[i].MassKg = now
}

func (a *asked) mashKnobs() []knob {
	var out []knob
	deg, by := a.degrees()
	steps := a.b.Mash.Steps
	for i, s := range steps {
		k := knob{name: a.stepWords(s), by: byTenth, at: s.At, stage: inMash}
		switch s.Verb {
		case recipe.MashWater:
			k.turn = func(b *recipe.Batch) { b.Mash.Steps[i].VolumeM3 *= tenth }
			if s.TempC > a.b.Plant.WaterC+5 {
				out = append(out, knob{name: "water at " + a.temp(s.TempC), by: by, at: s.At, stage: inMash, turn: func(b *recipe.Batch) { b.Mash.Steps[i].TempC += deg }})
			}
		case recipe.MashBackset:
			k.turn = func(b *recipe.Batch) { b.Mash.Steps[i].VolumeM3 *= tenth }
			if s.Share > 0 {
				k.by = byPoint
				k.turn = func(b *recipe.Batch) { b.Mash.Steps[i].Share += point }
			}
		case recipe.MashDose:
			k.turn = func(b *recipe.Batch) {
				b.Mash.Steps[i].MassKg *= tenth
				b.Mash.Steps[i].Share *= tenth
			}
		case recipe.MashHeat, recipe.MashCool:
			if rests(steps, i) {
				k.name = "rest at " + a.temp(s.TempC)
			}
			k.by, k.turn = by, func(b *recipe.Batch) { b.Mash.Steps[i].TempC += deg }
		case recipe.MashRest, recipe.MashBoil:
			k.turn = func(b *recipe.Batch) { b.Mash.Steps[i].DurationS *= tenth }
		default:
			continue
		}
		out = append(out, k)
	}
	return out
}

// rests says that the mash rests where step i brings it.
func rests(steps []recipe.MashStep, i int) bool {
	for _, s := range steps[i+1:] {
		switch s.Verb {
		case recipe.MashRest:
			return true
		case recipe.MashHeat, recipe.MashCool, recipe.MashBoil:
			return false
		}
	}
	return false
}

func (a *asked) fermentKnobs() []knob {
	f := a.b.Ferm
	deg, by := a.degrees()
	out := []knob{
		{name: "yeast pitched", by: byTenth, at: a.where("ferment.pitch", "ferment"), stage: inFerment, turn: func(b *recipe.Batch) {
			b.Ferm.PitchKg *= tenth
			b.Ferm.PitchKgM3 *= tenth
		}},
		{name: "time of the ferment", by: byTenth, at: a.where("ferment.for", "ferment"), stage: inFerment, turn: func(b *recipe.Batch) { b.Ferm.DurationS *= tenth }},
	}
	if f.HoldHighC > 0 {
		out = append(out, knob{name: "hold", by: by, at: a.where("ferment.hold", "ferment"), stage: inFerment, turn: func(b *recipe.Batch) {
			b.Ferm.HoldLowC += deg
			b.Ferm.HoldHighC += deg
		}})
	}
	for i, d := range f.Doses {
		out = append(out, knob{name: "dose of " + d.Enzyme.Name, by: byTenth, at: d.At, stage: inFerment, turn: func(b *recipe.Batch) {
			b.Ferm.Doses[i].MassKg *= tenth
			b.Ferm.Doses[i].Share *= tenth
		}})
	}
	if y := f.Yeast; y != nil {
		out = append(out,
			knob{name: "growth of the yeast", by: byTenth, at: y.Where["growth"], stage: inFerment, turn: func(b *recipe.Batch) { b.Ferm.Yeast.GrowthPerS *= tenth }},
			knob{name: "ethanol limit of the yeast", by: byTenth, at: y.Where["ethanol-limit"], stage: inFerment, turn: func(b *recipe.Batch) { b.Ferm.Yeast.EthanolMostKgM3 *= tenth }},
			knob{name: "ethanol yield of the yeast", by: byPoint, at: y.Where["ethanol-yield"], stage: inFerment, turn: func(b *recipe.Batch) { b.Ferm.Yeast.EthanolYield = min(1, b.Ferm.Yeast.EthanolYield+point) }})
	}
	return out
}
