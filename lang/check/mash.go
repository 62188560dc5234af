package check

import (
	"fmt"
	"slices"

	"newmake/lang/diag"
	"newmake/lang/quantity"
	"newmake/lang/recipe"
	"newmake/lang/schema"
	"newmake/lang/spelling"
	"newmake/lang/wording"
)

var mashVerbs = map[string]recipe.MashVerb{
	"water": recipe.MashWater, "backset": recipe.MashBackset, "add": recipe.MashAdd, "dose": recipe.MashDose,
	"heat": recipe.MashHeat, "rest": recipe.MashRest, "cool": recipe.MashCool, "boil": recipe.MashBoil, "drain": recipe.MashDrain,
}

// mash reads the steps of the mash. It says whether all could be read.
func (b *builder) mash(n *node) (whole bool) {
	if n == nil {
		return false
	}
	m := &b.batch.Mash
	m.At = n.at()
	b.places(recipe.PathMash, n)
	if c := n.get("vessel"); c != nil {
		m.Cooker = b.vessel(c, recipe.Cooker, "cooker")
	} else if !n.bad {
		m.Cooker = b.only(recipe.Cooker, n, larger)
	}
	whole = !n.bad && !n.gaps && m.Cooker != nil
	m.BacksetPH, m.BacksetSolidsFrac = n.siOr("backset-acidity", 3.9), n.siOr("backset-solids", 0.06)
	inMash := make(map[int]diag.Span)
	m.Steps = make([]recipe.MashStep, 0, len(n.lines))
	if !b.few(n, "steps") {
		return false
	}
	for _, l := range n.lines {
		verb, ok := mashVerbs[l.field.Name]
		if !ok {
			continue
		}
		if l.bad {
			whole = false
			continue
		}
		s := recipe.MashStep{Verb: verb, Path: recipe.Step(len(m.Steps) + 1), At: l.at()}
		s.TempC, s.DurationS, s.VolumeM3 = l.num("temp"), l.num("duration"), l.num("volume")
		switch verb {
		case recipe.MashWater:
			if !l.has("temp") && b.batch.Plant != nil {
				s.TempC = b.batch.Plant.WaterC
			}
			b.once(recipe.PathMashWater, l)
		case recipe.MashBackset:
			if !l.has("temp") && b.batch.Plant != nil {
				s.TempC = b.batch.Plant.AmbientC
			}
			s.Share = l.num("share")
			b.once(recipe.PathBackset, l)
		case recipe.MashAdd:
			whole = b.grains(&s, l, inMash) && whole
			if len(s.Grains) == 0 && whole && !l.has("all") {
				continue // what it adds is no longer in the bill
			}
		case recipe.MashDose:
			s.Enzyme, s.MassKg, s.Share = b.dose(l)
			whole = whole && s.Enzyme != nil
		case recipe.MashDrain:
			if !l.has("duration") {
				s.DurationS = quantity.HourS
			}
		}
		b.steps(&s, l)
		m.Steps = append(m.Steps, s)
	}
	if len(m.Steps) == 0 && whole {
		b.add(diag.Diagnostic{
			Code: diag.CodeNoSteps, Summary: "nothing is done in this mash", At: n.at(),
			Help: "write the work line by line: `water 330 gal at 58 F`, `add corn`, `heat to 190 F`, `rest 45 min` ...",
		})
		return false
	}
	b.batch.Resolve()
	return b.inDays(n) && whole
}

// inDays says that the steps of a mash last no longer than a mash may.
func (b *builder) inDays(n *node) bool {
	total := 0.0
	for i := range b.batch.Mash.Steps {
		total += b.batch.Mash.Steps[i].DurationS
	}
	if total <= schema.MostMashS {
		return true
	}
	b.add(diag.Diagnostic{
		Code: diag.CodeOutOfRange, Summary: fmt.Sprintf("the steps of this mash last %s h together", wording.Decimal(total/quantity.HourS)), At: n.at(),
		Help: fmt.Sprintf("allowed: at most %s h; shorten the rests", wording.Decimal(schema.MostMashS/quantity.HourS)), Reason: "a mash that stands for longer is soured by bacteria before it is fermented",
	})
	return false
}

// once notes the place of the first line of its sort.
func (b *builder) once(path recipe.Path, n *node) {
	if _, ok := b.batch.Where[path]; !ok {
		b.where(path, n.at())
	}
}

// stepPlaces are the parts of a step's line that have a place of their own.
var stepPlaces = [...]struct{ slot, name string }{
	{"temp", "to"}, {"duration", "for"}, {"volume", "volume"}, {"share", "share"}, {"enzyme", "enzyme"},
}

// steps notes the places of a step and of what stands on its line.
func (b *builder) steps(s *recipe.MashStep, l *node) {
	b.where(s.Path, l.at())
	for _, p := range stepPlaces {
		if c := l.get(p.slot); c != nil {
			b.where(s.Path.Child(p.name), c.at())
		}
	}
}

// grains finds the bill lines that an `add` names.
func (b *builder) grains(s *recipe.MashStep, l *node, inMash map[int]diag.Span) bool {
	bill := b.batch.Bill.Lines
	if l.has("all") {
		for i := range bill {
			if _, in := inMash[i]; !in {
				s.Grains = append(s.Grains, i)
				inMash[i] = l.at()
			}
		}
		if len(s.Grains) == 0 && len(bill) > 0 {
			b.add(diag.Diagnostic{
				Code: diag.CodeNothingToAdd, Summary: "every grain of the bill is in already", At: l.at(), Help: "take this line out",
			})
		}
		return true
	}
	whole := true
	for _, c := range l.m.all("grain") {
		i, ok := b.billIndex(c.text())
		switch at, in := inMash[i]; {
		case !ok && b.absent(c):
		case !ok:
			whole = false
			b.notInBill(c)
		case in:
			b.add(diag.Diagnostic{
				Code: diag.CodeAddedTwice, Summary: fmt.Sprintf("`%s` is added twice", c.text()), At: c.at(),
				Help:    "each `add` puts in the grain's whole weight: take one of them out",
				Related: []diag.Related{{At: at, Text: "it goes in here already"}},
			})
		default:
			inMash[i] = c.at()
			b.where(s.Path.Child(c.text()), c.at())
			s.Grains = append(s.Grains, i)
		}
	}
	return whole
}

// absent says that a grain is rightly not in the bill although a line adds it: the
// bill has none of it, or a variant took it out under a line that it inherits.
func (b *builder) absent(c *capture) bool {
	return slices.Contains(b.none, c.text()) || slices.Contains(b.gone, c.text()) && !b.entry.owns(c.at())
}

func (b *builder) billIndex(name string) (int, bool) {
	for i := range b.batch.Bill.Lines {
		if b.batch.Bill.Lines[i].Grain.Name == name {
			return i, true
		}
	}
	return -1, false
}

// notInBill says that a grain is added that the bill does not have.
func (b *builder) notInBill(c *capture) {
	if !b.whole["bill"] {
		return // what is in the bill is not sure
	}
	var names []string
	for _, l := range b.batch.Bill.Lines {
		names = append(names, l.Grain.Name)
	}
	if _, known := b.house.Stock.Grains[c.text()]; !known {
		all := b.house.known.grains()
		if spelling.Called(c.text(), names) != "" || len(spelling.Holding(c.text(), names)) > 0 || spelling.Nearest(c.text(), all) == "" {
			all = names // what is not in the bill can't be added
		}
		b.unknown(schema.Grain, "grain", c, func() []string { return all })
		return
	}
	b.add(diag.Diagnostic{
		Code: diag.CodeNotInBill, Summary: fmt.Sprintf("`%s` is added, and the bill has none", c.text()), At: c.at(),
		Help:    "give it a line in the bill, or add one of " + wording.OrList(names),
		Related: []diag.Related{{At: b.batch.Where[recipe.PathBill], Text: "the bill is here"}},
	})
}

// dose finds an enzyme and how much of it: a weight, or a share of the grain;
// without either the middle of the stock's range holds.
func (b *builder) dose(l *node) (z *recipe.Enzyme, kg, share float64) {
	c := l.get("enzyme")
	z = b.house.Stock.Enzymes[c.text()]
	if z == nil {
		b.unknown(schema.Enzyme, "enzyme", c, b.house.known.enzymes)
		return nil, 0, 0
	}
	switch q := l.quantity(); {
	case q == nil:
		share = (z.DoseLow + z.DoseHigh) / 2
	case q.kind == quantity.Mass:
		return z, q.si, 0
	default:
		share = q.si
	}
	return z, share * b.batch.Bill.TotalKg, share
}
