package check

import (
	"fmt"
	"slices"

	"newmake/lang/diag"
	"newmake/lang/quantity"
	"newmake/lang/recipe"
)

// mashTemp lets pass what only looks wrong on its scale; the boil of the place is
// looked at later (trade_steps.go).
var mashTemp = mustBe(-5, 300, "hotter than any steam of the trade").of("temp")

var restTime = mustBe(1, 7*dayS, "a step of a mash takes from seconds to days").of("duration")

// mashSteps are the lines of the mash that are work; their order is its order.
var mashSteps = []*Field{
	{
		Name: "water", Shape: `VOLUME ["at" TEMP]`, Repeat: true, Step: true, Example: "water 330 gal at 58 F", Default: "at the temperature of the supply",
		Doc: "Liquor in.", Limits: []Limit{mustBe(1e-4, 1000, "some water, and no lake").of("volume"), mashTemp},
	},
	{
		Name: "backset", Shape: `(SHARE|VOLUME) ["at" TEMP]`, Repeat: true, Step: true, Example: "backset 15 %", Default: "at the temperature of the room",
		Doc: "Spent wash of an earlier run in, as a share of all the liquor or as a volume.",
		Limits: []Limit{
			mustBe(0, 0.6, "with so much acid and salt yeast does not ferment").of("share"),
			mustBe(1e-4, 1000, "some, and no lake").of("volume"), mashTemp,
		},
	},
	{Name: "add", Shape: `"all"|GRAIN ("," GRAIN)*`, Repeat: true, Step: true, Example: "add oats, rye", Doc: "Grains in, each with its whole weight, or `all` that is not in yet."},
	{
		Name: "dose", Shape: `ENZYME [MASS|DOSE|SHARE]`, Repeat: true, Step: true, Example: "dose alpha-amylase 0.04 % of grain", Default: "the middle of the stock's range",
		Doc: "An enzyme in: a weight, or a share of the grain.", Limits: []Limit{mustBe(0, 0.2, "that is no dose but a meal").of("share"), mustBe(0, 0.2, "that is no dose but a meal").of("dose")},
	},
	{Name: "heat", Shape: `"to" TEMP ["in" DURATION]`, Repeat: true, Step: true, Example: "heat to 190 F", Default: "as fast as the vessel can", Doc: "Heat to a temperature.", Limits: []Limit{mashTemp, restTime}},
	{Name: "rest", Shape: "DURATION", Repeat: true, Step: true, Example: "rest 45 min", Doc: "Hold the temperature.", Limits: []Limit{restTime}},
	{Name: "cool", Shape: `"to" TEMP ["in" DURATION]`, Repeat: true, Step: true, Example: "cool to 158 F", Default: "as fast as the vessel can", Doc: "Cool to a temperature.", Limits: []Limit{mashTemp, restTime}},
	{Name: "boil", Shape: "DURATION", Repeat: true, Step: true, Example: "boil 30 min", Doc: "Heat to the boil of the place, and hold it.", Limits: []Limit{restTime}},
	{Name: "drain", Shape: `["in" DURATION]`, Repeat: true, Step: true, Example: "drain in 60 min", Default: "in 60 min", Doc: "Draw the worts off through the false bottom; the grain stays.", Limits: []Limit{restTime}},
}

var mashField = &Field{
	Name: "mash", Shape: `["in" VESSEL]`, Need: true, Example: `mash in "Copper kettle"`,
	Doc: "The work in the cooker; the order of the lines is the order of work. A variant changes single steps with `replace`, `before`, `after` and `remove`, or gives all of them anew.",
	Block: &Block{Fields: append(slices.Clone(mashSteps),
		&Field{Name: "backset-acidity", Shape: "PH", Default: "3.9 pH", Example: "backset-acidity 3.9 pH", Doc: "The pH of the backset.", Limits: []Limit{mustBe(2.5, 7, "spent wash is sour")}},
		&Field{Name: "backset-solids", Shape: "SHARE", Default: "6 %", Example: "backset-solids 6 %", Doc: "Dissolved solids of the backset, by weight.", Limits: []Limit{mustBe(0, 0.3, "it would be a syrup")}},
		replaceField, beforeField, afterField, removeStepField,
	)},
}

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
	b.where("mash", n.at())
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
		s := recipe.MashStep{Verb: verb, Path: fmt.Sprintf("mash.step.%d", len(m.Steps)+1), At: l.at()}
		s.TempC, s.DurationS, s.VolumeM3 = l.num("temp"), l.num("duration"), l.num("volume")
		switch verb {
		case recipe.MashWater:
			if !l.has("temp") && b.batch.Plant != nil {
				s.TempC = b.batch.Plant.WaterC
			}
			b.once("mash.water", l)
		case recipe.MashBackset:
			if !l.has("temp") && b.batch.Plant != nil {
				s.TempC = b.batch.Plant.AmbientC
			}
			s.Share = l.num("share")
			b.once("mash.backset", l)
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
				s.DurationS = hourS
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
	return whole
}

// once notes the place of the first line of its sort.
func (b *builder) once(path string, n *node) {
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
			b.where(s.Path+"."+p.name, c.at())
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
			b.where(s.Path+"."+c.text(), c.at())
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
		all := sortedKeys(b.house.Stock.Grains)
		if called(c.text(), names) != "" || len(holding(c.text(), names)) > 0 || nearest(c.text(), all) == "" {
			all = names // what is not in the bill can't be added
		}
		b.unknown(grainField, "grain", c, all)
		return
	}
	b.add(diag.Diagnostic{
		Code: diag.CodeNotInBill, Summary: fmt.Sprintf("`%s` is added, and the bill has none", c.text()), At: c.at(),
		Help:    "give it a line in the bill, or add one of " + orList(names),
		Related: []diag.Related{{At: b.batch.Where["bill"], Text: "the bill is here"}},
	})
}

// dose finds an enzyme and how much of it: a weight, or a share of the grain;
// without either the middle of the stock's range holds.
func (b *builder) dose(l *node) (z *recipe.Enzyme, kg, share float64) {
	c := l.get("enzyme")
	z = b.house.Stock.Enzymes[c.text()]
	if z == nil {
		b.unknown(enzymeField, "enzyme", c, sortedKeys(b.house.Stock.Enzymes))
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
