// Package cellar says what lies in a house's casks: what each holds by its readings and by
// the forecast, on a day and when its rest is over, when it is to be sampled, and which of
// them loses more than its like.
//
// A cask is followed from its fill by the model of package cask, with what was put in,
// taken out and read on the way. The strength of a sample holds from its day on. How fast
// a cask evaporates beside what its climate says is found from its last weight, or its last
// dip: the scale weighs the spirit and what the wood has taken up, so what is missing has
// gone into the air. What a cask's own readings leave open, the house's other casks tell.
package cellar

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"newmake/compile/estimate/shrink"
	"newmake/compile/lot"
	"newmake/compile/matter/fluid"
	"newmake/compile/numbers"
	"newmake/compile/stage/cask"
	"newmake/lang/parallel"
	"newmake/lang/recipe"
	"newmake/lang/record"
	"newmake/lang/sorting"
	"newmake/lang/tree"
	"newmake/lang/words"
)

// House is what a cellar asks of a house.
type House struct {
	Lives []*record.Life
	// Batch gives the recipe of a batch, nil if there is none that can be read.
	Batch    func(name string) *recipe.Batch
	Wood     func(name string) *recipe.CaskWood // nil for one that the library does not have
	Tastings []*record.Tasting
	Units    recipe.System
	// Source is the cask that a name stands for on a day; nil if it stands for none.
	Source func(name string, on record.Date) *record.Life
}

// z90 is how many standard deviations hold 9 in 10, both sides.
const z90 = 1.645

// On says what lies in the casks on a day.
func On(h House, day record.Date) *Cellar {
	c := &Cellar{Format: Format, Version: Version, Units: "si", On: day.String(), Casks: []Row{}, Totals: []Total{}, Kinds: []Total{}, Lots: []Lot{}, Said: []string{}}
	if h.Units == recipe.US {
		c.Units = "us"
	}
	lives := slices.DeleteFunc(slices.Clone(h.Lives), func(l *record.Life) bool {
		filled := l.Filled()
		return filled.IsZero() || filled.Compare(day) > 0
	})
	lives = slices.DeleteFunc(lives, func(l *record.Life) bool {
		end := l.Over()
		gone := end != nil && end.On.Compare(day) <= 0
		if gone {
			c.Gone++
		}
		return gone
	})
	drawn := h.drawn()
	all := make([]*known, len(lives))
	own, read := make([]pace, len(lives)), make([]bool, len(lives))
	parallel.Each(len(lives), func(i int) {
		if all[i] = h.know(lives[i], drawn[lives[i]], day); all[i] != nil {
			own[i], read[i] = all[i].read()
		}
	})
	house := c.houses(own, read)
	rows := make([]*Row, len(lives))
	parallel.Each(len(lives), func(i int) {
		if all[i] != nil {
			rows[i] = h.row(all[i], shrunk(own[i], read[i], house), house, day)
		}
	})
	for i, r := range rows {
		if r == nil {
			c.Said = append(c.Said, "cask "+lives[i].Serial+": nothing says what was filled into it")
			continue
		}
		c.Casks = append(c.Casks, *r)
		for _, doubt := range r.doubts {
			c.Said = append(c.Said, "cask "+r.Serial+": "+doubt)
		}
	}
	c.farOut(day)
	c.totals()
	c.sampling()
	return c
}

// heldYears is for how long in wood the model is held against anything that was published (the rule of
// volume by age: compile/ACCURACY.md, "Cask").
const heldYears = 12

// farOut says of which casks the forecast goes beyond that.
func (c *Cellar) farOut(day record.Date) {
	var far []string
	for i := range c.Casks {
		r := &c.Casks[i]
		until := day
		if r.Target != nil && !r.Target.Over {
			until = record.ReadDate(r.Target.On)
		}
		if until.Compare(r.filled.Months(12*heldYears)) > 0 {
			far = append(far, r.Serial)
		}
	}
	if len(far) == 0 {
		return
	}
	const named = 5
	of := words.And(far)
	if len(far) > named {
		of = fmt.Sprintf("%s and %d more", strings.Join(far[:named], ", "), len(far)-named)
	}
	c.Said = append(c.Said, fmt.Sprintf("%s: beyond %d years in wood the forecast, its ranges too, is held against nothing that was published; weigh and sample", of, heldYears))
}

// houses is the pace of the house by all casks that tell of theirs.
func (c *Cellar) houses(own []pace, read []bool) pace {
	y, s := []float64{1}, []float64{houseSpread} // what is known before any is read
	for i := range own {
		if read[i] {
			y, s = append(y, own[i].is), append(s, math.Hypot(own[i].sd, caskSpread))
		}
	}
	p := shrink.DerSimonianLaird(y, s)
	if n := len(y) - 1; n > 0 {
		c.Pace = &Pace{to(p.Mean, 3), to(p.SD, 3), n}
		return pace{p.Mean, p.SD}
	}
	return pace{1, houseSpread}
}

// drawn is what was taken out of casks to top others, which the lines of those tell.
func (h House) drawn() map[*record.Life][]event {
	out := map[*record.Life][]event{}
	if h.Source == nil {
		return out
	}
	for _, l := range h.Lives {
		for i := range l.Events {
			v := &l.Events[i]
			if v.Word != "topped" || v.From == "" {
				continue
			}
			from := h.Source(v.From, v.When.Date)
			if from == nil || from == l {
				continue
			}
			abv, ok := strength(v)
			if !ok {
				abv = 0.6 // for its temperature alone
			}
			if m3, ok := volume(v, record.Dip, abv); ok {
				out[from] = append(out[from], event{on: v.When.Date, takenM3: m3, drawn: true})
			}
		}
	}
	return out
}

// know reads what the texts tell of a cask up to a day. It is nil where nothing says what
// was filled.
func (h House) know(l *record.Life, drawn []event, day record.Date) *known {
	first := l.Fills[0]
	b := h.Batch(first.Run.Batch)
	k := &known{life: l, filled: l.Filled()}
	if b != nil {
		k.in = cask.Input{Kind: b.Cask.Kind, Used: !b.Cask.New, Climate: b.Cask.Climate, Air: b.Cask.Air, FilledAt: cask.ShareOfYear(k.filled), SizeM3: b.Cask.SizeM3, Model: b.Models["cask"]}
	}
	if l.Cask != nil && l.Cask.SizeM3 > 0 {
		k.in.SizeM3, k.in.Used = l.Cask.SizeM3, l.Cask.Used
		if w := h.Wood(l.Cask.Wood); w != nil {
			k.in.Kind = w
		}
	}
	if k.in.Model == nil || !(k.in.SizeM3 > 0) {
		return nil
	}
	for i, f := range l.Fills {
		if i > 0 && f.On().Compare(day) > 0 {
			break // it is filled up after that day
		}
		s, tare, assumed, ok := h.fill(f, b)
		if !ok {
			if i == 0 {
				return nil
			}
			continue
		}
		k.assumed = k.assumed || assumed
		if tare > 0 && k.tareKg == 0 {
			k.tareKg = tare
		}
		if i == 0 {
			k.in.SpiritEthanolKg, k.in.SpiritWaterKg = s.ethanolKg, s.waterKg
			continue
		}
		k.events = append(k.events, event{on: f.On(), add: s})
	}
	k.tareSD = tareKg
	if k.tareKg == 0 { // by its wood and size, as a plan has it
		k.tareKg = numbers.TareKg(recipe.Cask{SizeM3: k.in.SizeM3, Kind: k.in.Kind})
		k.tareSD = tareUnknown * k.tareKg
	}
	k.lies(l, b, day)
	k.putIn = spirit{k.in.SpiritEthanolKg, k.in.SpiritWaterKg}
	var err error
	if k.wood, err = cask.NewWood(k.in); err != nil {
		return nil
	}
	for i := range l.Events {
		if v := &l.Events[i]; v.When.Date.Compare(day) <= 0 {
			k.events = append(k.events, k.event(v))
		}
	}
	for _, e := range l.Ends {
		if e.Part && e.On.Compare(day) <= 0 {
			abv, _ := strength(e.Visit)
			m3, _ := volume(e.Visit, record.Dip, abv)
			k.events = append(k.events, event{on: e.On, takenM3: m3, drawn: true})
		}
	}
	for _, e := range drawn {
		if e.on.Compare(day) <= 0 {
			k.events = append(k.events, e)
		}
	}
	sorting.Stable(k.events, func(a, b event) int { return a.on.Compare(b.on) })
	for _, e := range k.events {
		k.putIn.ethanolKg += e.add.ethanolKg
		k.putIn.waterKg += e.add.waterKg
	}
	return k
}

// lies finds in which air the cask lies from its fill on. Where the plant declares rack
// houses it is that of the one to which it was moved; a move on the day of the fill or the
// week after counts from the fill.
func (k *known) lies(l *record.Life, b *recipe.Batch, day record.Date) {
	if b == nil || b.Plant == nil || !b.Cask.Air.Said {
		return
	}
	for i := range l.Events {
		v := &l.Events[i]
		if v.Word != "to" || v.When.Date.Compare(day) > 0 {
			continue
		}
		i := slices.IndexFunc(b.Plant.RackHouses, func(h *recipe.RackHouse) bool { return tree.Key(h.Name) == tree.Key(v.To) })
		if i < 0 {
			continue
		}
		to := &b.Plant.RackHouses[i].Air
		if k.filled.DaysTo(v.When.Date) <= 7 {
			k.in.Air = *to
			continue
		}
		k.events = append(k.events, event{on: v.When.Date, moved: to})
	}
}

// fill is what one run filled into a cask, and the cask's tare: by weight where it was weighed, as
// the books count it (27 CFR 19.618), for the volume that is written is often that of the wood.
func (h House) fill(f record.Filling, b *recipe.Batch) (s spirit, tare float64, assumed, ok bool) {
	abv, gauged := filledAt(f)
	if !gauged && b != nil {
		abv, assumed = entryABV(b), true
	}
	tare, _ = massKg(f.Visit, record.Tare)
	gross, weighed := massKg(f.Visit, record.Gross)
	if weighed && tare > 0 && gross > tare && reading(f.Visit, record.Gross).Doubt == "" {
		w, err := fluid.MassFracFromABV(abv)
		kg := inVacuum(gross-tare, w)
		return spirit{kg * w, kg * (1 - w)}, tare, assumed, err == nil
	}
	m3, is := volume(f.Visit, record.Volume, abv)
	if !is {
		return s, tare, assumed, false
	}
	s, ok = spiritOf(m3, abv)
	return s, tare, assumed, ok
}

// inVacuum is the mass of spirit that a scale weighs in air.
func inVacuum(airKg, w float64) float64 {
	return airKg / fluid.MassInAirKg(1, fluid.Density(w, referenceC))
}

// entryABV is the strength at which a batch fills, by volume at 20 C; 0 if it is none.
func entryABV(b *recipe.Batch) float64 {
	w, err := lot.MassFrac(b.Cask.Entry)
	if err != nil {
		return 0
	}
	return fluid.ABVFromMassFrac(w)
}

// event is a line of a cask's own, in SI.
func (k *known) event(v *record.Visit) event {
	e := event{on: v.When.Date}
	abv, sampled := strength(v)
	if sampled && v.Word != "topped" {
		e.abv = abv
	}
	if v.Word == "topped" || v.Word == "leaked" {
		e.told = v.Word
	}
	if !sampled {
		abv = fluid.ABVFromMassFrac(k.in.SpiritEthanolKg / (k.in.SpiritEthanolKg + k.in.SpiritWaterKg))
	}
	switch v.Word {
	case "topped":
		if m3, ok := volume(v, record.Dip, abv); ok {
			e.add, _ = spiritOf(m3, abv)
			e.toldM3, e.toldGal = m3, e.add.wineGallons()
		}
		return e
	case "leaked":
		e.takenM3, _ = volume(v, record.Lost, abv)
		lost, _ := spiritOf(e.takenM3, abv)
		e.toldM3, e.toldGal = e.takenM3, lost.wineGallons()
		return e
	}
	if gross, ok := massKg(v, record.Gross); ok && reading(v, record.Gross).Doubt == "" {
		tare := k.tareKg
		if own, is := massKg(v, record.Tare); is {
			tare = own
		}
		w, _ := fluid.MassFracFromABV(abv)
		e.massKg = inVacuum(gross-tare, w)
	}
	if m3, ok := volume(v, record.Dip, abv); ok {
		e.m3 = m3
	}
	if m3, ok := volume(v, record.Sampled, abv); ok {
		e.takenM3 = m3
	}
	return e
}

// row says what is in one cask.
func (h House) row(k *known, p, house pace, day record.Date) *Row {
	l := k.life
	run := l.Fills[0].Run
	r := &Row{Serial: l.Serial, Batch: run.Batch, Run: run.Number, Filled: k.filled.String(), AgeYears: to(k.age(day), 3), SizeL: to(1000*k.in.SizeM3, 2), PaceIs: to(p.is, 3), Assumed: k.assumed}
	r.Place, r.Spot = l.Place(day)
	r.PutInL = to(fluid.PureAlcoholLitres(k.putIn.kg(), k.putIn.ethanolKg/k.putIn.kg()), 3)
	b := h.Batch(run.Batch)
	restS := 0.0
	if b != nil {
		restS = b.Cask.RestS
	}
	r.AtFill = k.nowAndThen(1, k.filled, k.filled).now
	over := cask.RestOver(k.filled, restS)
	then := Target{On: over.String(), Over: over.Compare(day) <= 0}
	likely, low, high := k.nowAndThen(p.is, day, over), k.nowAndThen(p.is+z90*p.sd, day, over), k.nowAndThen(max(0, p.is-z90*p.sd), day, over)
	r.Now, r.Low, r.High = likely.now, low.now, high.now
	then.Then, then.Low, then.High = likely.then, low.then, high.then
	if m := likely.drawn.kg(); m > 0 {
		r.DrawnL, r.DrawnPG = to(fluid.PureAlcoholLitres(m, likely.drawn.ethanolKg/m), 3), to(fluid.ProofGallonsFromKg(m, likely.drawn.ethanolKg/m), 3)
	}
	r.doubts, r.Told = likely.doubts, []Told{}
	for _, e := range k.events {
		if e.told != "" && e.on.Compare(day) <= 0 {
			r.Told = append(r.Told, Told{e.on.String(), e.told, to(1000*e.toldM3, 2), to(e.toldGal, 3)})
		}
	}
	if restS > 0 {
		then.bottled(numbers.BottleABV(b))
		r.Target = &then
	}
	k.last(r, day, restS)
	if a, ok := k.leaks(house, day); ok {
		r.Leak = &Leak{a.since.String(), to(a.kgs, 2)}
	}
	if b != nil && b.Standard != nil {
		r.kind = b.Standard.Title
		if s := leastAge(b.Standard); s > 0 {
			on := cask.RestOver(k.youngest(l, day), s)
			r.Standard = &Aged{Of: b.Standard.Title, From: on.String(), Met: on.Compare(day) <= 0}
		}
	}
	for _, t := range h.Tastings {
		if t.Of.Kind == record.OfCask && t.Of.Name == l.Serial && t.On.Compare(k.filled) >= 0 && t.On.Compare(day) <= 0 && len(t.Verdicts) > 0 {
			r.Verdict = t.Verdicts[len(t.Verdicts)-1].Says() + ", " + t.On.String()
		}
	}
	return r
}

// twoDays is what a cask holds on two days, nothing where it is empty by then, and what was
// drawn of it by the first.
type twoDays struct {
	now, then Holds
	drawn     spirit
	doubts    []string
}

// nowAndThen is what the cask holds on two days, at a pace. One course leads to both.
func (k *known) nowAndThen(pace float64, now, then record.Date) (t twoDays) {
	j := k.setOut(pace, true)
	holds := func(on record.Date) Holds {
		y, ok := j.to(on)
		if !ok {
			return Holds{}
		}
		return holdsOf(y)
	}
	if then.Compare(now) < 0 {
		t.then = holds(then)
		t.now = holds(now)
	} else {
		t.now = holds(now)
		t.then = holds(then)
	}
	t.drawn, t.doubts = j.drawnOf, j.doubts
	return t
}

// leastAge is how long a standard asks for in wood, in s; 0 if it does not.
func leastAge(of *recipe.Standard) (s float64) {
	for _, c := range of.Conditions {
		if c.Test == recipe.AgeLeast {
			s = max(s, c.AgeS)
		}
	}
	return s
}

// youngest is the day of the last fill up to a day.
func (k *known) youngest(l *record.Life, day record.Date) record.Date {
	on := k.filled
	for _, f := range l.Fills {
		if f.On().Compare(on) > 0 && f.On().Compare(day) <= 0 {
			on = f.On()
		}
	}
	return on
}

// last tells of the last reading, and when the next sample is due.
func (k *known) last(r *Row, day record.Date, restS float64) {
	sampled := k.filled
	k.setOut(1, false).past(day, func(e *event, expected cask.Year) {
		if e.abv > 0 {
			sampled = e.on
		}
		last := &Last{On: e.on.String()}
		switch {
		case e.massKg > 0:
			last.By, last.OffL = "weight", 1000*(e.massKg-expected.LiquidKg()-expected.WoodKg())/fluid.Density(expected.MassFrac(), referenceC)
		case e.m3 > 0:
			last.By, last.OffL = "dip", 1000*(e.m3-expected.VolumeM3)
		default:
			return
		}
		last.OffL = to(last.OffL, 2)
		r.Last = last
	})
	if r.Last != nil && sampled != k.filled {
		r.Last.Sampled = sampled.String()
	}
	r.filled, r.restS = k.filled, restS
	if sampled != k.filled {
		r.sampled = sampled
	}
	r.Sample = cask.NextSampling(k.filled, sampled, restS).String()
}

func holdsOf(y cask.Year) Holds {
	return Holds{
		VolumeL: to(1000*y.VolumeM3, 2), WineGallons: to(fluid.WineGallons(y.LiquidKg(), y.MassFrac()), 3), AbvPct: to(100*y.ABV, 3), Proof: to(y.Proof, 2), ProofGallons: to(y.ProofGallons, 3),
		PureL: to(fluid.PureAlcoholLitres(y.LiquidKg(), y.MassFrac()), 3),
	}
}

// to rounds to so many places: what is shown is the same on every processor.
func to(x float64, places int) float64 {
	p := math.Pow10(places)
	return math.Round(x*p) / p
}
