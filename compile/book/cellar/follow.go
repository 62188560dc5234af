package cellar

import (
	"math"
	"slices"

	"newmake/compile/estimate/drift"
	"newmake/compile/matter/fluid"
	"newmake/compile/stage/cask"
	"newmake/lang/recipe"
	"newmake/lang/record"
)

// What a scale and a sample are good for, as one standard deviation (common practice: a
// floor scale by half a pound, and a tare that was read on another day).
const (
	scaleKg = 0.4
	tareKg  = 0.7

	tareUnknown = 0.08 // of a tare that nobody read: barrels of one size weigh 100 to 120 lb
)

// What is known of how fast a cask evaporates before anything is read of it, as shares of
// what its climate says: houses differ by a third or so, and the casks of one house by a
// fifth (common practice; no table of single casks has been published).
const (
	houseSpread = 0.35
	caskSpread  = 0.20
)

// known is a cask as far as the texts tell: what went in and out, and what was read.
type known struct {
	life   *record.Life
	in     cask.Input
	wood   *cask.Wood
	filled record.Date
	events []event // in the order of their days
	tareKg float64
	tareSD float64
	putIn  spirit // at the fill and later
	// assumed says that the strength of the fill was not gauged, and is the batch's.
	assumed bool
}

// event is what happened to a cask on a day, in SI.
type event struct {
	on      record.Date
	add     spirit            // put in
	takenM3 float64           // ran out, or was taken as a sample
	massKg  float64           // of spirit and wood, by the scale; 0: not weighed
	m3      float64           // by the dip, at 20 C; 0: not dipped
	abv     float64           // at 20 C; 0: not sampled
	moved   *recipe.YearOfAir // into other air; nil: it was not
	drawn   bool              // what was taken was drawn, and is not lost
	told    string            // topped or leaked, by a line that says so, and how much
	toldM3  float64
	toldGal float64 // the same at 60 F
}

// age is the age of a cask on a day, in years.
func (k *known) age(on record.Date) float64 {
	return math.Max(0, float64(k.filled.DaysTo(on))*86400/cask.YearS)
}

// journey is a cask on its way from its fill through what happened to it.
type journey struct {
	*known
	course  *cask.Course
	passed  int  // of the events
	sampled bool // what was sampled holds from its day on: the strength by the sample, not the volume
	drawnOf spirit
	doubts  []string // of what was put in or drawn, beside what should have been there
}

// setOut fills the cask, which evaporates at a pace.
func (k *known) setOut(pace float64, sampled bool) *journey {
	return &journey{known: k, course: k.wood.Course(pace), sampled: sampled}
}

// past goes through what happened up to a day, which is not before that of the last call,
// and tells what the cask holds just before each event. It says if there is still something
// in it.
func (j *journey) past(until record.Date, see func(e *event, y cask.Year)) bool {
	for ; j.passed < len(j.events); j.passed++ {
		e := &j.events[j.passed]
		if e.on.Compare(until) > 0 {
			break
		}
		if !j.course.To(j.age(e.on)) {
			return false
		}
		if see != nil {
			see(e, j.course.Now())
		}
		j.doubt(e)
		j.course.Add(e.add.ethanolKg, e.add.waterKg)
		if e.moved != nil {
			j.course.Move(*e.moved)
		}
		if e.takenM3 > 0 {
			j.course.Take(e.takenM3)
		}
		if j.sampled && e.abv > 0 {
			if w, err := fluid.MassFracFromABV(e.abv); err == nil {
				j.course.Set(w)
			}
		}
	}
	return true
}

// overfull is by how much more than it should hold, or should have had in it, a cask is
// believed: casks of one size differ by a few per cent, and a forecast by as much (common
// practice).
const overfull = 1.05

// doubt counts what is drawn, and says where a cask is topped over what it holds, or gives
// more than was in it.
func (j *journey) doubt(e *event) {
	if !e.drawn && e.add.kg() == 0 {
		return
	}
	y := j.course.Now()
	if e.drawn {
		share := math.Min(1, e.takenM3/y.VolumeM3)
		j.drawnOf.ethanolKg += share * y.EthanolKg
		j.drawnOf.waterKg += share * y.WaterKg
		if e.takenM3 > y.VolumeM3*overfull {
			j.doubts = append(j.doubts, "on "+e.on.String()+" more was drawn than should have been in it")
		}
	}
	if m := e.add.kg(); m > 0 && y.VolumeM3+m/fluid.Density(e.add.ethanolKg/m, referenceC) > j.in.SizeM3*overfull {
		j.doubts = append(j.doubts, "on "+e.on.String()+" more was put in than it should have had room for")
	}
}

// to is what the cask holds on a day, which is not before that of the last call. It is not
// ok where it is empty by then.
func (j *journey) to(on record.Date) (y cask.Year, ok bool) {
	ok = j.past(on, nil) && j.course.To(j.age(on))
	return j.course.Now(), ok
}

// at is what the cask holds on a day, at a pace.
func (k *known) at(on record.Date, pace float64) (cask.Year, bool) {
	return k.setOut(pace, true).to(on)
}

// pace is how much faster than its climate says a cask evaporates, and how sure that is,
// by a reading of what it has lost.
type pace struct{ is, sd float64 }

// paceBy finds the pace at which the cask has, on the day of an event, what was read then.
// It is not ok where the event says nothing of it, or too early.
func (k *known) paceBy(e event) (pace, bool) {
	weighed := func(y cask.Year) float64 { return y.LiquidKg() + y.WoodKg() }
	var want, sd float64
	of := weighed
	switch {
	case e.massKg > 0:
		want, sd = e.massKg, math.Hypot(scaleKg, k.tareSD)
	case e.m3 > 0:
		of = func(y cask.Year) float64 { return y.VolumeM3 }
		want, sd = e.m3, 0.01*k.in.SizeM3 // a dip is read to a hundredth of the cask (common practice)
	default:
		return pace{}, false
	}
	none, ok0 := k.at(e.on, 0)
	one, ok1 := k.at(e.on, 1)
	slope := of(none) - of(one) // lost at pace 1
	if !ok0 || !ok1 || slope <= 3*sd {
		return pace{}, false
	}
	p := (of(none) - want) / slope
	if two, ok := k.at(e.on, max(p, 0)); ok && p > 0 { // evaporation slows as the cask empties
		p *= slope * p / math.Max(of(none)-of(two), 1e-9)
	}
	return pace{p, sd / slope}, true
}

// read is the last event that tells the pace, and the pace it tells.
func (k *known) read() (pace, bool) {
	for _, e := range slices.Backward(k.events) {
		if p, ok := k.paceBy(e); ok {
			return p, true
		}
	}
	return pace{}, false
}

// shrunk is a pace, read or not, drawn towards that of the house by how sure each is.
func shrunk(own pace, read bool, house pace) pace {
	prior := pace{house.is, math.Hypot(house.sd, caskSpread)}
	if !read {
		return prior
	}
	a, b := 1/(own.sd*own.sd), 1/(prior.sd*prior.sd)
	return pace{math.Max(0, (a*own.is+b*prior.is)/(a+b)), 1 / math.Sqrt(a+b)}
}

// alarm is a cask that loses more than its like.
type alarm struct {
	since record.Date
	kgs   float64 // more than foretold, since then
}

// watch is tuned to a shift of one standard deviation: a false alarm in about 465 weights
// (Montgomery, Introduction to Statistical Quality Control, Table 9.3).
var watch = drift.Cusum{Slack: .5, Limit: 5}

// leaks watches the weights of a cask, from one to the next, for a loss beyond what it
// should lose at a pace: a cumulative sum (package drift).
func (k *known) leaks(p pace, until record.Date) (alarm, bool) {
	var z []float64
	var over []float64
	var days []record.Date
	var before *event
	var should cask.Year
	k.setOut(p.is, true).past(until, func(e *event, now cask.Year) {
		if e.massKg == 0 {
			return
		}
		if before != nil {
			lost := before.massKg - e.massKg + k.between(before.on, e.on)
			foretold := now.LostEthanolKg + now.LostWaterKg - should.LostEthanolKg - should.LostWaterKg
			sd := math.Hypot(math.Sqrt2*scaleKg, caskSpread*foretold)
			z, over, days = append(z, (lost-foretold)/sd), append(over, lost-foretold), append(days, before.on)
		}
		before, should = e, now
	})
	shift, ok := watch.First(z)
	if !ok || shift.By < 0 {
		return alarm{}, false
	}
	a := alarm{since: days[shift.Since]}
	for _, x := range over[shift.Since:] {
		a.kgs += x
	}
	return a, a.kgs > 0 // what came back since was no leak
}

// between is what was put in less what was taken out after one day and by another, in kg.
func (k *known) between(from, to record.Date) float64 {
	sum := 0.
	for _, e := range k.events {
		if e.on.Compare(from) > 0 && e.on.Compare(to) <= 0 {
			sum += e.add.kg()
			if e.takenM3 > 0 {
				w := 0.5
				if abv := e.abv; abv > 0 {
					w, _ = fluid.MassFracFromABV(abv)
				}
				sum -= e.takenM3 * fluid.Density(w, referenceC)
			}
		}
	}
	return sum
}
