package batches

import (
	"fmt"
	"slices"

	"newmake/lang/diag"
	"newmake/lang/quantity"
	"newmake/lang/recipe"
	"newmake/lang/schema"
	"newmake/lang/spelling"
	"newmake/lang/tree"
	"newmake/lang/wording"
)

// readMash reads the steps of the mash. It says whether all could be read.
func readMash(b *reader, n *tree.Node) (m recipe.Mash, whole bool) {
	if n == nil {
		return m, false
	}
	m.At = n.At()
	b.places(recipe.PathMash, n)
	if c := n.Get("vessel"); c != nil {
		m.Cooker = findVessel(b, c, recipe.Cooker, "cooker")
	} else if !n.Bad {
		m.Cooker = onlyVessel(b, recipe.Cooker, n, larger)
	}
	whole = !n.Bad && !n.Gaps && m.Cooker != nil
	m.BacksetPH, m.BacksetSolidsFrac = 3.9, 0.06
	m.Treatment = readTreatment(n)
	inMash := make(map[int]diag.Span)
	m.Steps = make([]recipe.MashStep, 0, len(n.Lines))
	if !isFew(b, n, "steps") {
		return m, false
	}
	for _, l := range n.Lines {
		verb, ok := recipe.MashVerbOf(l.Field.Name)
		if !ok {
			continue
		}
		if l.Bad {
			whole = false
			continue
		}
		s := recipe.MashStep{Verb: verb, Path: recipe.Step(len(m.Steps) + 1), At: l.At()}
		whole = readStep(b, &s, l, inMash) && whole
		if verb == recipe.MashAdd && len(s.Grains) == 0 && whole && !l.Has("all") {
			continue // what it adds is no longer in the bill
		}
		noteStep(b, &s, l)
		m.Steps = append(m.Steps, s)
	}
	if len(m.Steps) == 0 && whole {
		b.add(diag.Diagnostic{
			Code: diag.CodeNoSteps, Summary: "nothing is done in this mash", At: n.At(),
			Help: "write the work line by line: " + wording.Example(n.At(), "water 330 gal at 58 F") + ", `add corn`, " + wording.Example(n.At(), "heat to 190 F") + ", `rest 45 min` ...",
		})
		return m, false
	}
	return m, inDays(b, n, m.Steps) && whole
}

// readStep reads what a step says, and what the language states for a step that leaves it
// out. It says whether all could be read. inMash has the lines of the bill that are in.
func readStep(b *reader, s *recipe.MashStep, l *tree.Node, inMash map[int]diag.Span) (whole bool) {
	s.TempC, s.DurationS, s.VolumeM3 = l.Num("temp"), l.Num("duration"), l.Num("volume")
	asStored := !l.Has("temp") && b.batch.Plant != nil // what goes in is as warm as where it comes from
	switch s.Verb {
	case recipe.MashWater:
		if asStored {
			s.TempC = b.batch.SupplyC()
		}
		s.KeptM3 = l.Num("old")
		b.once(recipe.PathMashWater, l)
	case recipe.MashBackset:
		switch {
		case !asStored:
		case b.batch.Today.NoBackset:
			s.TempC = b.batch.SupplyC() // water in its place
		default:
			s.TempC = b.batch.Plant.AmbientC
		}
		s.Share = l.Num("share")
		b.once(recipe.PathBackset, l)
	case recipe.MashAdd:
		return readAdd(b, s, l, inMash)
	case recipe.MashDose:
		s.Enzyme, s.MassKg, s.Share = readDose(b, l)
		return s.Enzyme != nil
	case recipe.MashDrain, recipe.MashSparge:
		if !l.Has("duration") {
			s.DurationS = quantity.HourS
		}
		if s.Verb == recipe.MashSparge && asStored {
			s.TempC = b.batch.SupplyC()
		}
		s.CooledC, s.NextMash = l.Num("cold"), l.Has("next")
	case recipe.MashRecirculate:
		if !l.Has("duration") {
			s.DurationS = quantity.HourS / 4
		}
	}
	return true
}

// readTreatment reads which acid goes into the liquor.
func readTreatment(n *tree.Node) recipe.Treatment {
	var t recipe.Treatment
	l := n.Line("acid")
	for _, a := range []recipe.Acid{recipe.Lactic, recipe.Phosphoric, recipe.Sulfuric} {
		if l != nil && l.Has(a.String()) {
			t.Acid = a
		}
	}
	return t
}

// inDays reports whether the steps of a mash last no longer than a mash may.
func inDays(b *reader, n *tree.Node, steps []recipe.MashStep) bool {
	total := 0.0
	for i := range steps {
		total += steps[i].DurationS
	}
	if total <= schema.MostMashS {
		return true
	}
	b.add(diag.Diagnostic{
		Code: diag.CodeOutOfRange, Summary: fmt.Sprintf("the steps of this mash last %s h together", wording.Decimal(total/quantity.HourS)), At: n.At(),
		Help: fmt.Sprintf("allowed: at most %s h; shorten the rests", wording.Decimal(schema.MostMashS/quantity.HourS)), Reason: "a mash that stands for longer is soured by bacteria before it is fermented",
	})
	return false
}

// once notes the place of the first line of its sort.
func (b *reader) once(path recipe.Path, n *tree.Node) {
	if _, ok := b.batch.Where[path]; !ok {
		b.where(path, n.At())
	}
}

// stepPlaces are the parts of a step's line that have a place of their own.
var stepPlaces = [...]struct{ slot, name string }{
	{"temp", "to"}, {"duration", "for"}, {"volume", "volume"}, {"share", "share"}, {"enzyme", "enzyme"},
	{"old", "kept"}, {"cold", "cooled"},
}

// noteStep notes the places of a step and of what stands on its line.
func noteStep(b *reader, s *recipe.MashStep, l *tree.Node) {
	b.where(s.Path, l.At())
	for _, p := range stepPlaces {
		if c := l.Get(p.slot); c != nil {
			b.where(s.Path.Child(p.name), c.At())
		}
	}
}

// readAdd finds the bill lines that an `add` names.
func readAdd(b *reader, s *recipe.MashStep, l *tree.Node, inMash map[int]diag.Span) bool {
	bill := b.batch.Bill.Lines
	if l.Has("all") {
		for i := range bill {
			if _, in := inMash[i]; !in {
				s.Grains = append(s.Grains, i)
				inMash[i] = l.At()
			}
		}
		if len(s.Grains) == 0 && len(bill) > 0 {
			b.add(diag.Diagnostic{
				Code: diag.CodeNothingToAdd, Summary: "every grain of the bill is in already", At: l.At(), Help: "take this line out",
			})
		}
		return true
	}
	whole := true
	for _, c := range l.Match.All("grain") {
		i, ok := billIndex(b, c.Text())
		switch at, in := inMash[i]; {
		case !ok && isAbsent(b, c):
		case !ok:
			whole = false
			notInBill(b, c)
		case in:
			b.add(diag.Diagnostic{
				Code: diag.CodeAddedTwice, Summary: fmt.Sprintf("`%s` is added twice", c.Text()), At: c.At(),
				Help:    "each `add` puts in the grain's whole weight: take one of them out",
				Related: []diag.Related{{At: at, Text: "it goes in here already"}},
			})
		default:
			inMash[i] = c.At()
			b.where(s.Path.Child(c.Text()), c.At())
			s.Grains = append(s.Grains, i)
		}
	}
	return whole
}

// isAbsent reports whether a grain is rightly not in the bill although a line adds it: the
// bill has none of it, or a variant took it out under a line that it inherits.
func isAbsent(b *reader, c *tree.Capture) bool {
	return slices.Contains(b.none, c.Text()) || slices.Contains(b.gone, c.Text()) && !b.entry.Decl.Has(c.At())
}

func billIndex(b *reader, name string) (int, bool) {
	for i := range b.batch.Bill.Lines {
		if b.batch.Bill.Lines[i].Grain.Name == name {
			return i, true
		}
	}
	return -1, false
}

// notInBill says that a grain is added that the bill does not have.
func notInBill(b *reader, c *tree.Capture) {
	if !b.whole["bill"] {
		return // what is in the bill is not sure
	}
	var names []string
	for _, l := range b.batch.Bill.Lines {
		names = append(names, l.Grain.Name)
	}
	if !b.House.Declares(schema.Grain, c.Text()) {
		all := b.House.EntryNames(schema.Grain)
		if spelling.Called(c.Text(), names) != "" || spelling.Likely(c.Text(), names) != "" || len(spelling.Holding(c.Text(), names)) > 0 || spelling.Nearest(c.Text(), all) == "" {
			all = names // what is not in the bill can't be added
		}
		b.unknown(schema.Grain, "grain", c, func() []string { return all })
		return
	}
	b.add(diag.Diagnostic{
		Code: diag.CodeNotInBill, Summary: fmt.Sprintf("`%s` is added, and the bill has none", c.Text()), At: c.At(),
		Help:    "give it a line in the bill, or add one of " + wording.OrList(names),
		Related: []diag.Related{{At: b.batch.Where[recipe.PathBill], Text: "the bill is here"}},
	})
}

// readDose finds an enzyme and how much of it: a weight, or a share of the grain;
// without either the middle of the library's range holds.
func readDose(b *reader, l *tree.Node) (z *recipe.Enzyme, kg, share float64) {
	c := l.Get("enzyme")
	z = named[recipe.Enzyme](b, schema.Enzyme, c.Text())
	if z == nil {
		b.unknown(schema.Enzyme, "enzyme", c, b.entries(schema.Enzyme))
		return nil, 0, 0
	}
	switch q := l.Quantity(); {
	case q == nil:
		share = (z.DoseLow + z.DoseHigh) / 2
	case q.Kind == quantity.Mass:
		return z, q.SI, 0
	default:
		share = q.SI
	}
	return z, share * b.batch.Bill.TotalKg, share
}
