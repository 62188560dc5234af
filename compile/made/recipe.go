// Package made is a run as it was really made: the recipe with what really went in,
// in the vessels that were used, for as long as it really took and with the cuts as
// they were made; and what was read of it, brought to what the stages say.
//
// What a record does not say stays as the recipe has it.
package made

import (
	"math"
	"slices"
	"time"

	"newmake/compile/lot"
	"newmake/lang/quantity"
	"newmake/lang/recipe"
	"newmake/lang/record"
	"newmake/lang/tree"
)

// Recipe is a batch as a run made it. The clock of the house no longer moves it: its times
// are those that were written down.
func Recipe(b *recipe.Batch, r *record.Run) *recipe.Batch {
	out := b.Clone()
	if out.Today.NoBackset && !sawBackset(r) {
		out = out.AsToday()
	} else {
		out.Today.NoBackset = false
	}
	out.Start.Year, out.Start.Month, out.Start.Day = r.Date.Year, int(r.Date.Month), r.Date.Day
	out.Plant.Shift = recipe.Shift{ToMinute: 24 * 60, Days: [7]bool{true, true, true, true, true, true, true}}
	weighed(out, r)
	waterForBackset(out, r)
	vessels(out, r)
	mashed(out, r)
	if s, ok := fermentS(r); ok {
		out.Ferm.DurationS = s
	}
	stripped(out, r)
	distilled(out, r)
	out.Resolve()
	return out
}

// sawBackset reports whether backset went into a mash, whatever the recipe has of it.
func sawBackset(r *record.Run) bool {
	for i := range r.Used {
		if _, read := r.Used[i].Amount.Holds(); read && tree.Key(r.Used[i].What) == "backset" {
			return true
		}
	}
	for i := range r.Visits {
		if v := &r.Visits[i]; v.Word == "backset" && !v.None {
			return true
		}
	}
	return false
}

// waterForBackset leaves out the backset of which somebody wrote that none went in. Where
// nobody measured any water, so much more of it did.
func waterForBackset(b *recipe.Batch, r *record.Run) {
	none := slices.ContainsFunc(r.Used, func(u record.Used) bool { return tree.Key(u.What) == "backset" && u.Amount.State == record.None }) ||
		slices.ContainsFunc(r.Visits, func(v record.Visit) bool { return v.Word == "backset" && v.None })
	if !none || sawBackset(r) {
		return
	}
	var m3 float64
	last := -1
	for i := range b.Mash.Steps {
		switch s := &b.Mash.Steps[i]; s.Verb {
		case recipe.MashBackset:
			m3 += s.VolumeM3
			s.VolumeM3, s.Share = 0, 0
		case recipe.MashWater:
			last = i
		}
	}
	if last >= 0 && !measured(r, recipe.MashWater) {
		b.Mash.Steps[last].VolumeM3 += math.Round(m3/liquorStep(b)) * liquorStep(b)
	}
}

// liquorStep is to what a volume of liquor is rounded that nobody measured, in m3.
func liquorStep(b *recipe.Batch) float64 {
	if b.Gauge == recipe.US {
		return 0.1 * quantity.USGallonM3
	}
	return 1 / lot.LitresPerM3
}

// amount is what was weighed or measured, in kg or m3, and what the rounding of its figures
// takes.
type amount struct{ is, place float64 }

// of is the amount that went in: the recipe's where the figures that were written down do not
// tell the two apart.
func (m amount) of(should float64) (in float64, as bool) {
	if math.Abs(m.is-should) <= m.place {
		return should, true
	}
	return m.is, false
}

func (m amount) plus(o amount) amount { return amount{m.is + o.is, m.place + o.place} }

// rounded is what rounding takes of the last digit: half of it, and a little more, since a plan
// is rounded before its sheet is.
const rounded = 0.6

// weighedOf is a line of what went in, in kg; not ok where it is no weight.
func weighedOf(u *record.Used) (amount, bool) {
	v, ok := u.Amount.Holds()
	switch {
	case ok && v.Kind == quantity.Mass:
		return amount{v.SI, rounded * v.PlaceSI()}, true
	case ok && v.Kind == quantity.Bushel && u.BushelKg > 0:
		return amount{is: v.SI * u.BushelKg}, true // no sheet asks for bushels
	}
	return amount{}, false
}

// AsWeighed reports whether so much of something was weighed out for a run as it should have been, to
// the figures that were written down.
func AsWeighed(r *record.Run, what string, kg float64) bool {
	var all amount
	for i := range r.Used {
		if u := &r.Used[i]; tree.Key(u.What) == tree.Key(what) {
			m, _ := weighedOf(u)
			all = all.plus(m)
		}
	}
	_, as := all.of(kg)
	return as
}

// weighed puts in what was weighed and measured. Of water each line is one of the mash's
// waters, in their order, and what is left is of the last.
func weighed(b *recipe.Batch, r *record.Run) {
	kg, m3 := map[string]amount{}, map[string]amount{}
	lots := map[string][]certified{}
	var water []amount
	for i := range r.Used {
		u := &r.Used[i]
		what := tree.Key(u.What)
		if m, ok := weighedOf(u); ok {
			kg[what] = kg[what].plus(m)
			lots[what] = append(lots[what], certified{m.is, u.Moisture, u.Starch})
			continue
		}
		v, ok := u.Amount.Holds()
		m := amount{v.SI, rounded * v.PlaceSI()}
		switch {
		case !ok || v.Kind != quantity.Volume:
		case what == "water":
			water = append(water, m)
		default:
			m3[what] = m3[what].plus(m)
		}
	}
	b.Bill.TotalKg = 0
	for i := range b.Bill.Lines {
		l := &b.Bill.Lines[i]
		if v, ok := kg[tree.Key(l.Grain.Name)]; ok {
			l.MassKg, _ = v.of(l.MassKg)
			asBought(l.Grain, lots[tree.Key(l.Grain.Name)])
		}
		b.Bill.TotalKg += l.MassKg
	}
	for i := range b.Mash.Steps {
		s := &b.Mash.Steps[i]
		switch s.Verb {
		case recipe.MashDose:
			if v, ok := kg[tree.Key(s.Enzyme.Name)]; ok {
				if in, as := v.of(s.MassKg); !as {
					s.MassKg, s.Share = in, 0
				}
			}
		case recipe.MashBackset:
			if v, ok := m3["backset"]; ok {
				if in, as := v.of(s.VolumeM3); !as {
					s.VolumeM3, s.Share = in, 0
				}
				delete(m3, "backset")
			}
		case recipe.MashWater:
			if len(water) == 0 {
				continue
			}
			in := water[0]
			if water = water[1:]; lastWater(b, i) {
				for _, more := range water {
					in = in.plus(more)
				}
				water = nil
			}
			s.VolumeM3, _ = in.of(s.VolumeM3)
		}
	}
	if y := b.Ferm.Yeast; y != nil {
		if v, ok := kg[tree.Key(y.Name)]; ok {
			b.Ferm.PitchKg, b.Ferm.PitchKgM3 = v.is, 0
		}
	}
}

// certified is grain of one lot, with what its certificate says, nil where it says nothing.
type certified struct {
	kg               float64
	moisture, starch *float64
}

// asBought gives a grain the moisture and starch of the lots that went in: moisture by their
// weight, starch by what of them is dry. A lot without a certificate is as the library has
// the grain.
func asBought(g *recipe.Grain, lots []certified) {
	var kg, water, starch float64
	said := false
	for _, l := range lots {
		m, s := g.Moisture, g.Starch
		if l.moisture != nil {
			m, said = *l.moisture, true
		}
		if l.starch != nil {
			s, said = *l.starch, true
		}
		kg, water, starch = kg+l.kg, water+l.kg*m, starch+l.kg*(1-m)*s
	}
	if !said || !(kg > water) {
		return
	}
	g.Moisture, g.Starch = water/kg, starch/(kg-water)
}

// lastWater reports whether no water goes into a mash after a step.
func lastWater(b *recipe.Batch, step int) bool {
	return !slices.ContainsFunc(b.Mash.Steps[step+1:], func(s recipe.MashStep) bool { return s.Verb == recipe.MashWater })
}

// vessels puts the run into the vessels in which it was made.
func vessels(b *recipe.Batch, r *record.Run) {
	for _, s := range r.Stages {
		i := slices.IndexFunc(b.Plant.Vessels, func(v *recipe.Vessel) bool { return tree.Key(v.Name) == tree.Key(s.Vessel) })
		if i < 0 {
			continue
		}
		v := b.Plant.Vessels[i]
		switch {
		case s.Name == record.Mash && v.Kind == recipe.Cooker:
			b.Mash.Cooker = v
		case s.Name == record.Ferment && v.Kind == recipe.Fermenter:
			b.Ferm.Vessels = []*recipe.Vessel{v}
		case s.Name == record.Strip && v.Kind == recipe.Still:
			b.Strip.Still = v
		case s.Name == record.Spirit && v.Kind == recipe.Still:
			b.Spirit.Still = v
		}
	}
}

var verbs = map[string]recipe.MashVerb{
	"water": recipe.MashWater, "backset": recipe.MashBackset, "add": recipe.MashAdd, "dose": recipe.MashDose,
	"heat": recipe.MashHeat, "rest": recipe.MashRest, "cool": recipe.MashCool, "drain": recipe.MashDrain, "boil": recipe.MashBoil,
}

// stepOf is the step of the recipe that a visit of the mash is of; -1 if it is none.
func stepOf(b *recipe.Batch, v *record.Visit) int {
	verb, ok := verbs[v.Word]
	if !ok {
		return -1
	}
	nth := 0
	for i, s := range b.Mash.Steps {
		if s.Verb != verb {
			continue
		}
		switch verb {
		case recipe.MashAdd:
			if slices.ContainsFunc(s.Grains, func(g int) bool {
				return len(v.Names) > 0 && tree.Key(b.Bill.Lines[g].Grain.Name) == tree.Key(v.Names[0])
			}) {
				return i
			}
		case recipe.MashDose:
			if s.Enzyme != nil && len(v.Names) > 0 && tree.Key(s.Enzyme.Name) == tree.Key(v.Names[0]) {
				return i
			}
		default:
			if nth++; nth == v.Nth {
				return i
			}
		}
	}
	return -1
}

// timed is a visit of the mash that ended a step, and how long that took: from the end of
// the step before, with what the work stood still taken off. Unknown where a step between was not
// written down.
type timed struct {
	from  *record.Visit // the line that ended the step before, nil if that was not written down
	visit *record.Visit
	step  int
	lastS float64 // 0: not known
	stood float64 // of it, the work stood still
}

// steps are the steps of the mash that were written down.
func steps(b *recipe.Batch, r *record.Run) []timed {
	var out []timed
	var last *record.Visit
	lastStep, stood := -1, 0.0
	for i := range r.Visits {
		v := &r.Visits[i]
		if r.Stages[v.Stage].Name != record.Mash {
			continue
		}
		if v.Word == "stopped" {
			stood += v.LastS
			continue
		}
		step := stepOf(b, v)
		if step < 0 || v.None {
			continue
		}
		t := timed{visit: v, step: step, stood: stood}
		if v.When.Known() {
			if last != nil && step == lastStep+1 {
				t.from, t.lastS = last, v.When.Time.Sub(last.When.Time).Seconds()
			}
			last, lastStep, stood = v, step, 0
		} else {
			last = nil
		}
		out = append(out, t)
	}
	return out
}

// farFromRecipeK is how far from the recipe's a temperature may have been read for the step to
// have gone to it: beyond is a slip of the pen.
const farFromRecipeK = 8

func mashed(b *recipe.Batch, r *record.Run) {
	for _, t := range steps(b, r) {
		s := &b.Mash.Steps[t.step]
		c, read := held(t.visit, record.Temperature)
		switch s.Verb {
		case recipe.MashHeat, recipe.MashCool:
			if read && math.Abs(c.SI-s.TempC) <= farFromRecipeK {
				s.TempC = c.SI
			}
		case recipe.MashRest:
			if t.lastS > 0 {
				s.DurationS = t.lastS
			}
		case recipe.MashWater, recipe.MashBackset:
			if v, ok := held(t.visit, record.Volume); ok && !measured(r, s.Verb) {
				if m3, ok := wentIn(b, t.step, v.SI); ok {
					s.VolumeM3, s.Share = m3, 0
				}
			}
		}
	}
}

// measured reports whether the liquor of a verb was measured before it went in, which is surer than
// a dip.
func measured(r *record.Run, verb recipe.MashVerb) bool {
	return slices.ContainsFunc(r.Used, func(u record.Used) bool {
		v, read := u.Amount.Holds()
		return read && v.Kind == quantity.Volume && verbs[tree.Key(u.What)] == verb
	})
}

// wentIn is how much liquor went in at a step, of the volume that was written down there. The
// sheet asks for what is then in the cooker, and people write what they put in as well: it is
// taken for the one that lies nearer to the recipe. A dip over grain does not tell of liquor.
func wentIn(b *recipe.Batch, step int, m3 float64) (float64, bool) {
	before, grain := 0.0, false
	for _, s := range b.Mash.Steps[:step] {
		switch s.Verb {
		case recipe.MashWater, recipe.MashBackset:
			before += s.VolumeM3
		case recipe.MashAdd:
			grain = true
		}
	}
	should := b.Mash.Steps[step].VolumeM3
	dipped := math.Abs(m3-before-should) < math.Abs(m3-should)
	switch {
	case m3 <= 0 || dipped && grain:
		return 0, false
	case dipped:
		return m3 - before, m3 > before
	}
	return m3, true
}

// held is what holds of a reading of a visit.
func held(v *record.Visit, what record.What) (record.Value, bool) {
	for i := range v.Read {
		if v.Read[i].What == what {
			if x, ok := v.Read[i].Holds(); ok {
				return x, true
			}
		}
	}
	return record.Value{}, false
}

// WhenDone is when something of a stage was done.
func WhenDone(r *record.Run, stage record.StageName, words ...string) (time.Time, bool) {
	return WhenDoneOf(r, stage, anyCharge, words...)
}

// WhenDoneOf is when something of one charge of a still was done; what has no charges has 0.
func WhenDoneOf(r *record.Run, stage record.StageName, charge int, words ...string) (time.Time, bool) {
	if v := whenDone(r, stage, charge, words...); v != nil {
		return v.When.Time, true
	}
	return time.Time{}, false
}

// anyCharge asks for whichever comes first.
const anyCharge = -1

// whenDone is the line of a charge with the clock of the first of words that has one, nil if none
// has.
func whenDone(r *record.Run, stage record.StageName, charge int, words ...string) *record.Visit {
	for _, w := range words {
		for i := range r.Visits {
			v := &r.Visits[i]
			if r.Stages[v.Stage].Name == stage && (charge == anyCharge || v.Charge == charge) && v.Word == w && v.When.Known() {
				return v
			}
		}
	}
	return nil
}

// pitching are the words of a line at which the yeast went in, the surer first.
var pitching = []string{"pitch", "pump"}

// pitched is when the yeast went in.
func pitched(r *record.Run) (time.Time, bool) { return WhenDone(r, record.Ferment, pitching...) }

// fermentS is how long the wash stood, from the yeast to the still.
func fermentS(r *record.Run) (float64, bool) {
	from, ok := pitched(r)
	to, charged := WhenDone(r, record.Strip, "charge", "fire")
	if !ok || !charged || !to.After(from) {
		return 0, false
	}
	return to.Sub(from).Seconds(), true
}

func reading(v *record.Visit, what record.What) (*record.Reading, bool) {
	for i := range v.Read {
		if v.Read[i].What == what {
			if _, ok := v.Read[i].Holds(); ok {
				return &v.Read[i], true
			}
		}
	}
	return nil, false
}
