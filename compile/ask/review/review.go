// Package review sets what a run's record says beside what the plan said, and beside
// what should have come of what was really done: reading by reading, as a balance of
// the alcohol, and as the gap of what was lived for. Of a run that is not done yet it
// says what is to come.
package review

import (
	"math"
	"slices"
	"strings"
	"time"

	"newmake/compile"
	"newmake/compile/ask/compare"
	"newmake/compile/blank"
	"newmake/compile/constants"
	"newmake/compile/made"
	"newmake/compile/measure"
	"newmake/compile/numbers"
	"newmake/compile/work"
	"newmake/lang/quantity"
	"newmake/lang/recipe"
	"newmake/lang/record"
	"newmake/lang/sorting"
)

// Question is what is to be reviewed.
type Question struct {
	Batch      *recipe.Batch // as it was planned
	Run        *record.Run
	Instrument func(name string) *record.Instrument // nil for one that is not declared
	Units      measure.Units
	Note       string // which text of the batch that is, where that is not plain
	// Kept is what was planned of the run, where the text of that is not to be found; else nil.
	Kept *blank.Planned
	// Until leaves out what was written of later moments; zero leaves out nothing.
	Until time.Time
}

// Answer is a review.
type Answer struct {
	Run   string
	Batch string
	Day   record.Date
	Units measure.Units
	Note  string // which text of the batch the run is set against, where that is not plain

	Lines   []Line
	Marks   []Mark   // those that a picture of the plan has a place for
	Balance *Balance // nil where nothing can be held against anything
	Gaps    []Gap
	Hearts  *Gap // the alcohol of the hearts, as the books count it; nil until they are gauged
	// Done are the edits of the recipe that what was done comes to, and what each is
	// worth: the planned batch against the batch as it was made. Small are those
	// that do too little to the hearts to be told apart, in words.
	Done   *compare.Comparison
	Small  []string
	Ahead  *Ahead
	Untold []Untold
}

// Line is one reading.
type Line struct {
	Words   string
	Stage   record.StageName
	Kind    Kind
	What    record.What // "" of a duration
	Said    float64     // in SI, brought to 20 C
	SD      float64     // of the reading, its instrument and the model together
	Plan    float64     // as planned; NaN where the plan does not come to it
	Made    float64     // of what was really done; NaN likewise
	ABV     float64     // of what a volume is of, by which it is counted at another temperature
	When    time.Time
	Visit   *record.Visit
	Outcome bool
}

// Off is how far the reading is from what should have come of what was done.
func (l Line) Off() float64 { return l.Said - l.Made }

// sure is within how many standard deviations a reading is as it should be: 19 times
// in 20.
const sure = 1.96

// Within reports whether the reading is what it should be, as far as anybody can tell.
func (l Line) Within() bool { return !(math.Abs(l.Off()) > sure*l.SD) }

// Kind is what a number is of, for who shows it.
type Kind uint8

// Kinds of numbers.
const (
	Temperature Kind = iota // C
	Gravity
	PH
	Volume   // m3
	Strength // fraction by volume
	Rate     // m3/s
	Duration // s
	Alcohol  // m3 of pure alcohol at 20 C
)

// Mark is a reading with its place on a picture of the plan.
type Mark struct {
	made.Mark
	Off bool // it is not what it should be
}

// marked finds of each mark whether its reading is what it should be.
func marked(all []made.Mark, lines []Line) []Mark {
	var out []Mark
	for _, m := range all {
		off := slices.ContainsFunc(lines, func(l Line) bool { return l.Visit == m.Visit && l.What == m.What && !l.Within() })
		out = append(out, Mark{m, off})
	}
	return out
}

// Gap is one thing that the house lives by: what came, what was planned, and what
// should have come of what was done.
type Gap struct {
	Words string
	Kind  Kind
	Said  float64
	Plan  float64
	Made  float64
	ABV   float64 // as of a Line
}

// Ahead is the rest of a run that is not done, planned again from what was read.
type Ahead struct {
	From   time.Time // the last moment that was written down
	Coming []Coming
	// HeartsLPA and its standard deviation; Casks that they fill.
	HeartsLPA, SD float64
	HeartsPG      float64
	Casks         int
}

// Coming is something that will happen.
type Coming struct {
	Words string
	At    time.Time
	SD    float64 // s
}

// Untold is something that was not written down, and how much of what is not known of
// the hearts it would have told.
type Untold struct {
	Words string
	// Part is 0..1 of the variance of the hearts that the readings leave: what it takes
	// off that when those before it in the list are known.
	Part   float64
	ToCome bool // the run has not come to it yet
}

// AsItShould reports whether every reading is what it should be, and that the alcohol
// balances.
func (a *Answer) AsItShould() bool {
	return (a.Balance == nil || a.Balance.Balanced()) && !slices.ContainsFunc(a.Lines, func(l Line) bool { return !l.Within() })
}

// Of reviews a run.
func Of(q Question) (*Answer, error) {
	run := until(q.Run, q.Until)
	as := made.Recipe(q.Batch, run)
	planned := q.Batch.Clone() // for the day of the run
	planned.Start.Year, planned.Start.Month, planned.Start.Day = run.Date.Year, int(run.Date.Month), run.Date.Day
	planned.Resolve()
	memo := new(compile.Memo) // of the plan, and of what was done otherwise
	n, err := compile.Numbers(planned, memo.Stages(), compile.Calculated)
	if err != nil {
		return nil, err
	}
	m, err := newModel(as)
	if err != nil {
		return nil, err
	}
	a := &Answer{Run: run.Number, Batch: q.Batch.Name, Day: run.Date, Units: q.Units, Note: q.Note}
	all := constants.Of(as)
	readings := made.Readings(as, run, q.Instrument)
	for _, r := range readings {
		if r.Instrument != "" && !slices.Contains(m.instruments, r.Instrument) {
			m.instruments = append(m.instruments, r.Instrument)
		}
	}
	var told []told
	for i := range readings {
		r := &readings[i]
		line, t := m.line(r, n, offBy(all, r.Instrument, kindOf(r.Instrument), r.Said))
		a.Lines = append(a.Lines, line)
		if t != nil {
			t.of = i
			told = append(told, *t)
		}
	}
	if a.Balance, err = balances(run, &bench{q.Instrument, func(kind string, si float64) float64 { return offBy(all, kind, kind, si) }}, expecting(m.n)); err != nil {
		return nil, err
	}
	a.likeliest()
	if q.Kept != nil {
		a.keptPlan(q.Kept, run)
	}
	for _, l := range a.Lines {
		if l.Outcome {
			a.Gaps = append(a.Gaps, Gap{l.Words, l.Kind, l.Said, l.Plan, l.Made, l.ABV})
		}
	}
	if a.Hearts = gaugedHearts(run, n, m.n, readings); a.Hearts != nil {
		if q.Kept != nil {
			a.Hearts.Plan = keptHearts(q.Kept)
		}
		a.Gaps = append(a.Gaps, *a.Hearts)
	}
	known, m := m.known(readings, told)
	a.Done, a.Small = departures(planned, as, run, memo, q.Units)
	a.Ahead = m.ahead(run, known)
	a.Untold = m.untold(run, readings, known)
	a.Marks = marked(made.Marks(as, run, m.n, q.Instrument), a.Lines)
	return a, nil
}

// known is what the readings that are believed make of the constants, and the model about there.
func (m *model) known(readings []made.Reading, all []told) (state, *model) {
	believed := m.believed(all)
	known := m.prior().after(believed)
	near := m.around(known)
	if near == nil {
		return known, m
	}
	for i := range believed {
		t := &believed[i]
		if middle, slopes := near.slopes(readings[t.of].Of); !math.IsNaN(middle) {
			t.off = readings[t.of].Said - middle
			t.slopes = append(slopes, t.slopes[len(slopes):]...)
		}
	}
	return near.prior().after(believed), near
}

// line holds one reading against the two.
func (m *model) line(r *made.Reading, planned *numbers.Batch, instrument float64) (Line, *told) {
	middle, slopes := m.slopes(r.Of)
	_, spread := m.prior().of(0, slopes)
	sure := r.Sure(m.n)
	l := Line{
		Words: r.Words, Stage: r.Stage, Kind: kind(r), What: r.What, Said: r.Said, SD: math.Hypot(math.Hypot(sure, instrument), spread),
		Plan: math.NaN(), Made: middle, Visit: r.Visit, Outcome: r.Outcome,
	}
	if r.Visit != nil {
		l.When = r.Visit.When.Time
	}
	if v, ok := r.Of(planned); ok {
		l.Plan = v
	}
	if l.Kind == Volume {
		of := r.Spot
		of.What, of.Kind = record.Strength, made.AtEnd
		l.ABV, _ = of.Says(m.n)
	}
	l.Said, l.Made = l.Said-r.LostM3, l.Made-r.LostM3 // as it was written: that so much was lost is of what was done
	if math.IsNaN(middle) {
		return l, nil
	}
	return l, &told{off: r.Said - middle, sd: sure, slopes: m.with(slopes, r.Instrument, instrument)}
}

// likeliest puts first, of the causes that explain a break about as well, the readings
// that are not what they should be anyway.
func (a *Answer) likeliest() {
	if a.Balance == nil {
		return
	}
	off := map[string]bool{}
	for _, l := range a.Lines {
		if !l.Within() {
			off["the "+l.Words] = true
		}
	}
	for _, f := range a.Balance.Gross {
		sorting.Stable(f.Causes, func(x, y Cause) int {
			switch {
			case off[x.Words] == off[y.Words]:
				return 0
			case off[x.Words]:
				return -1
			}
			return 1
		})
	}
}

// believed are the readings from which the rest of the run is predicted. A reading far from
// what all the others predict for it is reported, and left out: the farthest first, and then
// the rest is judged again.
func (m *model) believed(all []told) []told {
	all = slices.Clone(all)
	for {
		worst, far := -1, unbelievable
		for i, t := range all {
			others := slices.Delete(slices.Clone(all), i, i+1)
			is, spread := m.prior().after(others).of(0, t.slopes)
			if z := math.Abs(t.off-is) / math.Hypot(t.sd, spread); z > far {
				worst, far = i, z
			}
		}
		if worst < 0 {
			return all
		}
		all = slices.Delete(all, worst, worst+1)
	}
}

const unbelievable = 3.5 // standard deviations: one reading in two thousand

var kinds = map[record.What]Kind{
	record.Temperature: Temperature, record.Vapour: Temperature, record.Gravity: Gravity, record.PH: PH, record.Volume: Volume,
	record.Receiver: Volume, record.Water: Volume, record.Flow: Rate, record.Spout: Strength, record.Strength: Strength,
}

func kind(r *made.Reading) Kind {
	if k, ok := kinds[r.What]; ok {
		return k
	}
	return Duration
}

// kindOf is the kind of an instrument, of its key.
func kindOf(key string) string {
	kind, _, _ := strings.Cut(key, " of ")
	return kind
}

// until is a run as far as it was written down at a moment.
func until(run *record.Run, at time.Time) *record.Run {
	if at.IsZero() {
		return run
	}
	out := *run
	out.Visits = nil
	var last time.Time
	for _, v := range run.Visits {
		if v.When.Known() {
			last = v.When.Time
		}
		if !last.After(at) {
			out.Visits = append(out.Visits, v)
		}
	}
	begun := map[int]bool{}
	for _, v := range out.Visits {
		begun[v.Stage] = true
	}
	out.Stages = slices.Clone(run.Stages)
	return &out
}

// mostApart is how many departures are taken one by one: of so many every combination
// can be computed.
const mostApart = 7

// departure is one thing that was done otherwise: values that mean nothing one without the
// other, and what they do to the hearts.
type departure struct {
	of     []recipe.Value
	effect float64
}

// departed finds what a batch has other than another. How much goes in at a step of the mash,
// and what share of the liquor that is, is one thing.
func departed(from, to *recipe.Batch) []departure {
	was := map[recipe.Key]recipe.Value{}
	for _, v := range from.Values() {
		was[v.Key()] = v
	}
	var all []departure
	liquor := map[string]int{}
	for _, v := range to.Values() {
		o, ok := was[v.Key()]
		if !ok || o.Same(v) || len(o.Cells) != len(v.Cells) || asTheSheetSays(o, v) {
			continue
		}
		if last := v.Path.Last(); last == "volume" || last == "share" {
			step := v.Path.Parent().String()
			if i, seen := liquor[step]; seen {
				all[i].of = append(all[i].of, v)
				continue
			}
			liquor[step] = len(all)
		}
		all = append(all, departure{of: []recipe.Value{v}})
	}
	return all
}

// printed is the share of an amount that three figures hide, which are what a sheet has of it.
const printed = 0.002

// asTheSheetSays reports whether so much was weighed or measured as stands in the plan, to its figures.
func asTheSheetSays(o, v recipe.Value) bool {
	for i, c := range v.Cells {
		was, isOne := o.Cells[i].Is().(float64)
		is, isToo := c.Is().(float64)
		if c.Kind != quantity.Volume && c.Kind != quantity.Mass || !isOne || !isToo || math.Abs(is-was) > printed*math.Abs(was) {
			return false
		}
	}
	return true
}

// departures takes apart what the batch as it was made has other than the plan. What
// does next to nothing is put in first, and named.
func departures(planned, as *recipe.Batch, run *record.Run, memo *compile.Memo, u measure.Units) (done *compare.Comparison, small []string) {
	as = as.Clone()
	as.Plant = withShift(as.Plant, planned.Plant)
	as.Start = planned.Start
	if !slices.ContainsFunc(as.Mash.Steps, func(s recipe.MashStep) bool { return s.Verb == recipe.MashBackset }) {
		planned = planned.AsToday() // the plan had water in its place
	}
	if any, in := planned.Ferm.Vessels, as.Ferm.Vessels; len(in) == 1 && slices.ContainsFunc(any, func(v *recipe.Vessel) bool { return v.Name == in[0].Name }) {
		as.Ferm.Vessels = any // it is one of those that the plan left open
	}
	as.Resolve()
	hearts := func(b *recipe.Batch) float64 {
		n, err := compile.Numbers(b, memo.Stages(), compile.Calculated)
		if err != nil {
			return math.NaN()
		}
		v, _ := heartsLPA(n)
		return v
	}
	if n, err := compile.Numbers(planned, memo.Stages(), compile.Calculated); err == nil {
		byTheSheet(as, run, planned, n)
	}
	before := hearts(planned)
	all := departed(planned, as)
	for i := range all {
		one := planned.Clone()
		set(one, all[i].of)
		all[i].effect = math.Abs(hearts(one) - before)
	}
	sorting.Stable(all, func(a, b departure) int {
		switch {
		case a.effect > b.effect:
			return -1
		case a.effect < b.effect:
			return 1
		}
		return 0
	})
	apart := 0
	for apart < min(mostApart, len(all)) && all[apart].effect > smallest*before {
		apart++
	}
	base := planned.Clone()
	for _, d := range all[apart:] {
		set(base, d.of)
	}
	end := base.Clone()
	for _, d := range all[:apart] {
		set(end, d.of)
	}
	asPlanned := compare.SideOf("as planned", planned, nil)
	for _, e := range compare.Batches(asPlanned, compare.SideOf("small things", base, nil), compare.Options{Units: u, Memo: memo, Measured: true}).Edits {
		small = append(small, e.What)
	}
	return compare.Batches(compare.SideOf("as planned", base, nil), compare.SideOf("as made", end, nil), compare.Options{Units: u, Memo: memo, Measured: true}), small
}

// smallest is the part of the hearts below which what was done otherwise is a small
// thing: a thousandth, which nobody gauges.
const smallest = 0.001

// clockS is what two clocks that are written to the minute hide of the time between them, each
// beside the sheet's own.
const clockS = 120

// byTheSheet takes for done as planned what is so to the figures of the sheet, where that says in
// other terms what the recipe says: a pitch in weight, and a ferment until the still is charged,
// of which the clock may be that of the pump's beginning or its end.
func byTheSheet(as *recipe.Batch, run *record.Run, planned *recipe.Batch, n *numbers.Batch) {
	a, p := &as.Ferm, &planned.Ferm
	if y := p.Yeast; y != nil && a.PitchKg != p.PitchKg && made.AsWeighed(run, y.Name, n.Fermented.PitchKg) {
		a.PitchKg, a.PitchKgM3 = p.PitchKg, p.PitchKgM3
	}
	if late := a.DurationS - n.Fermented.ForS; late >= -clockS && late <= work.ChargedS(n)+clockS {
		a.DurationS = p.DurationS
	}
	for i := range min(len(as.Mash.Steps), len(planned.Mash.Steps)) {
		a, p := &as.Mash.Steps[i], planned.Mash.Steps[i]
		if math.Abs(a.DurationS-p.DurationS) <= clockS {
			a.DurationS = p.DurationS
		}
	}
}

// set puts values in the place of a batch's own.
func set(b *recipe.Batch, of []recipe.Value) {
	for _, o := range b.Values() {
		for _, v := range of {
			if o.Key() == v.Key() {
				o.Set(v)
			}
		}
	}
	b.Resolve()
}

func withShift(p, of *recipe.Plant) *recipe.Plant {
	out := *p
	out.Shift = of.Shift
	return &out
}
