package season

import (
	"math"
	"slices"

	"newmake/compile/book/season/search"
	"newmake/compile/lot"
	"newmake/compile/numbers"
	"newmake/compile/stage/schedule"
	"newmake/compile/stage/still"
	"newmake/lang/recipe"
	"newmake/lang/record"
	asked "newmake/lang/season"
)

// Levels of cost, the first before all that follow.
const (
	tooLate    = iota // what is wanted, and not by its day
	leftOut           // and not at all
	waiting           // minutes that washes stand past their hour
	outOfShift        // minutes of work beyond the hours in which somebody is there
	unfed             // mashes that find no backset that still keeps
	moved             // of what is printed
	late              // minutes from the first day to the last cask
)

// want is a batch that is to be made.
type want struct {
	demand   int // of Season.Demands; -1: it was made, whatever for
	course   *course
	from, to int             // its mash begins between these
	on       []search.Window // and on one of these days, where that is said
	due      int             // its casks are filled by then; 0: whenever
	kind     int             // those of one kind are interchangeable
	done     *made           // it was begun
	printed  *Run
	number   string
	extra    bool // on top of what is asked for
}

// house is what the season has to work with. What would something more bring is asked of
// one that has it.
type house struct {
	plant   *recipe.Plant
	asks    outages
	axis    *axis
	windows []search.Window
	boilerW float64 // 0: no limit
	crew    int     // more of them than there are
	more    map[string]int
	backset bool // there is some when it all begins
}

// outages are from when to when a vessel is out of use.
type outages map[string][]span

// outages are those that lines of a season name.
func (a *axis) outages(of []asked.Without) outages {
	out := outages{}
	for _, w := range of {
		from, to := a.on(w.From), a.on(w.To)
		if !w.Person && from != nil && to != nil {
			out[w.Name] = append(out[w.Name], span{from.from, to.to, 0})
		}
	}
	return out
}

// built is a problem of search, and the way back.
type built struct {
	search.Problem
	first     []int // of each want: the activity of its first block
	resources map[string]int
	names     []string // of the resources
	choice    []map[string]int
	fermenter []int // of each want: its choice
}

const (
	openCalendar = iota
	beginCalendar
)

// hectowatts is the unit of the boiler's heat: what is drawn is rounded up.
const hectowatts = 100

func (h *house) build(wants []*want) *built {
	b := &built{resources: map[string]int{}}
	b.Horizon = h.axis.minutes
	b.Calendars = [][]search.Window{h.windows, h.axis.opens(h.windows)}
	for _, v := range h.plant.Vessels {
		b.resource(v.Name, h.capacity(v.Name))
	}
	for _, t := range h.plant.Tanks {
		b.resource(t.Name, h.capacity(t.Name))
	}
	if h.boilerW > 0 {
		b.resource(boilerName, []search.Step{{At: 0, Amount: int(h.boilerW / hectowatts)}})
	}
	if h.plant.Crew > 0 || h.named() {
		b.resource(crewName, h.crewSteps())
	}
	if h.backset {
		b.Sources = append(b.Sources, search.Source{A: -1})
	}
	for _, w := range wants {
		h.add(b, w)
	}
	return b
}

// Names of resources that are no vessel; no vessel can have them.
const (
	boilerName = "\x00boiler"
	crewName   = "\x00crew"
)

func (b *built) resource(name string, capacity []search.Step) {
	b.resources[name] = len(b.Resources)
	b.names = append(b.names, name)
	b.Resources = append(b.Resources, search.Resource{Capacity: capacity})
}

// capacity is one of a vessel, and none while it is out of use.
func (h *house) capacity(name string) []search.Step {
	have := 1 + h.more[name]
	change := map[int]int{0: have}
	for _, o := range h.asks[name] {
		change[o.from] -= have
		change[o.to] += have
	}
	return stepsOf(steps(change, 0, h.axis.minutes))
}

// named says that the season names its people.
func (h *house) named() bool {
	for _, d := range h.axis.days {
		for _, s := range d.people {
			if s.who != "" {
				return true
			}
		}
	}
	return false
}

// crewSteps is how many are there, and out of the shift as many as may have to stay.
func (h *house) crewSteps() []search.Step {
	var out []search.Step
	most := h.plant.Crew
	staff := h.axis.staff()
	for _, s := range staff {
		most = max(most, s.amount)
	}
	for _, s := range staff {
		amount := s.amount + h.crew
		if s.amount == 0 {
			amount = most + h.crew
		}
		out = append(out, search.Step{At: s.from, Amount: amount})
	}
	return out
}

// steps are the sums of changes, from one minute to another.
func steps(change map[int]int, from, to int) []span {
	at := []int{from}
	for t := range change {
		if t > from && t < to {
			at = append(at, t)
		}
	}
	slices.Sort(at)
	sum := 0
	for t, n := range change {
		if t <= from {
			sum += n
		}
	}
	var out []span
	for i, t := range at {
		if i > 0 {
			sum += change[t]
		}
		end := to
		if i+1 < len(at) {
			end = at[i+1]
		}
		if n := len(out); n > 0 && out[n-1].amount == sum {
			out[n-1].to = end
			continue
		}
		out = append(out, span{t, end, sum})
	}
	return out
}

func stepsOf(spans []span) []search.Step {
	out := make([]search.Step, len(spans))
	for i, s := range spans {
		out[i] = search.Step{At: s.from, Amount: max(s.amount, 0)}
	}
	return out
}

// add puts the work of a batch into the problem.
func (h *house) add(b *built, w *want) {
	c := w.course
	first := len(b.Activities)
	b.first = append(b.first, first)
	job := search.Job{Optional: w.done == nil, Alike: w.kind, Stride: 8 * 60}
	for i, k := range c.blocks {
		job.Activities = append(job.Activities, first+i)
		a := search.Activity{Duration: k.minutes, Latest: h.axis.minutes - k.minutes}
		past := w.done != nil && w.done.begins(c, i) >= 0
		if past {
			a.Earliest = w.done.begins(c, i)
			a.Latest = max(a.Earliest, 1)
		} else {
			if w.done != nil {
				a.Earliest = w.done.on
			}
			a.Within = h.within(k)
			a.Uses = h.uses(b, k)
		}
		if i == 0 && !past {
			a.Earliest = max(a.Earliest, w.from)
			a.Latest = min(a.Latest, w.to)
			if w.on != nil {
				a.Within = append(a.Within, search.During{Calendar: b.calendar(w.on)})
			}
		}
		b.Activities = append(b.Activities, a)
		if k.after >= 0 {
			l := search.Lag{From: first + k.after, To: first + i, Least: k.least, Most: k.most}
			if past { // what happened happened
				l.Least, l.Most = -h.axis.minutes, search.NoMost
			} else if w.done != nil {
				l.Most = search.NoMost
			}
			b.Lags = append(b.Lags, l)
			if k.also >= 0 && !past {
				b.Lags = append(b.Lags, search.Lag{From: first + k.also, To: first + i, Least: c.blocks[k.also].minutes, Most: search.NoMost})
			}
		}
	}
	h.vessels(b, w, &job, first)
	b.Jobs = append(b.Jobs, job)
	if at, ok := c.lastEnd("strip", "stop"); ok { // there is pot ale from then on
		b.Sources = append(b.Sources, search.Source{A: first + at[0], After: at[1]})
	}
	h.costs(b, w, len(b.Jobs)-1, first)
}

// calendar is the number of a calendar of those windows.
func (b *built) calendar(of []search.Window) int {
	for i, c := range b.Calendars {
		if i > beginCalendar && slices.Equal(c, of) {
			return i
		}
	}
	b.Calendars = append(b.Calendars, of)
	return len(b.Calendars) - 1
}

// within is where in the shifts a block must lie. One that fits into none begins with a
// shift, and runs over.
func (h *house) within(k block) []search.During {
	if k.now {
		return nil
	}
	out := k.attended()
	if h.tooLong(out) {
		return []search.During{{Calendar: beginCalendar, From: out[0].From, To: out[0].From}}
	}
	if k.newDay {
		out = append(out, search.During{Calendar: beginCalendar})
	}
	return out
}

// runsOver says that nothing keeps a block in the shifts.
func (h *house) runsOver(k block) bool { return k.now || h.tooLong(k.attended()) }

// tooLong says that one of some stretches fits into no shift.
func (h *house) tooLong(of []search.During) bool {
	longest := 0
	for _, w := range h.windows {
		longest = max(longest, w.Close-w.Open)
	}
	return slices.ContainsFunc(of, func(d search.During) bool { return d.To-d.From > longest })
}

// attended are the stretches of a block in which somebody is wanted.
func (k block) attended() []search.During {
	var out []search.During
	for _, t := range k.tasks {
		if t.attend == schedule.Unattended {
			continue
		}
		d := search.During{Calendar: openCalendar, From: t.from, To: t.to}
		if t.attend == schedule.Begin {
			d.To = t.from
		}
		if n := len(out); n > 0 && out[n-1].To == d.From {
			out[n-1].To = d.To
		} else {
			out = append(out, d)
		}
	}
	return out
}

// uses is the people and the heat of a block, each stretch of the same amount once.
func (h *house) uses(b *built, k block) []search.Use {
	crew, heat := map[int]int{}, map[int]int{}
	for _, t := range k.tasks {
		crew[t.from] += t.people
		crew[t.busyTo()] -= t.people
		w := int(math.Ceil(t.powerW/hectowatts - 1e-9))
		if h.boilerW > 0 {
			w = min(w, int(h.boilerW/hectowatts))
		}
		heat[t.from] += w
		heat[t.to] -= w
	}
	var out []search.Use
	add := func(name string, change map[int]int) {
		r, ok := b.resources[name]
		if !ok {
			return
		}
		for _, s := range steps(change, 0, k.minutes) {
			if s.amount > 0 {
				out = append(out, search.Use{Of: search.Named(r), From: s.from, To: s.to, Amount: s.amount})
			}
		}
	}
	add(crewName, crew)
	add(boilerName, heat)
	return out
}

// vessels holds those that the batch goes through, each from its first task to the end of
// its cleaning, and the tanks in which it waits.
func (h *house) vessels(b *built, w *want, job *search.Job, first int) {
	c := w.course
	hold := func(of search.Which, from, to [2]int) {
		job.Holds = append(job.Holds, len(b.Holds))
		b.Holds = append(b.Holds, search.Hold{Of: of, From: first + from[0], FromTime: from[1], To: first + to[0], ToTime: to[1], Amount: 1})
	}
	choose := func(names []string) search.Which {
		var options []int
		for _, n := range names {
			options = append(options, b.resources[n])
		}
		if len(options) == 1 {
			return search.Named(options[0])
		}
		job.Choices = append(job.Choices, len(b.Choices))
		b.Choices = append(b.Choices, search.Choice{Options: options})
		return search.Chosen(len(b.Choices) - 1)
	}
	stage := func(stage string, v *recipe.Vessel) {
		if from, to, ok := c.stage(stage, v.Name); ok {
			hold(search.Named(b.resources[v.Name]), from, to)
		}
	}
	stage("mash", c.batch.Mash.Cooker)
	stage("strip", c.batch.Strip.Still)
	stage("spirit", c.batch.Spirit.Still)

	names := []string{}
	if w.done != nil && w.done.fermenter != "" && b.has(w.done.fermenter) {
		names = append(names, w.done.fermenter)
	} else {
		for _, v := range c.fermenters() {
			names = append(names, v.Name)
		}
	}
	b.fermenter = append(b.fermenter, -1)
	if _, to, ok := c.stage("ferment", c.n.Fermented.Vessel.Name); ok {
		of := choose(names)
		b.fermenter[len(b.fermenter)-1] = int(of)
		hold(of, [2]int{0, c.intoFermenter()}, to)
	}

	// Low wines wait from the first drop of the wash still to the last charge of the spirit
	// still, hearts from their cut until they are filled. A run's are kept apart.
	wait := func(of recipe.Contents, m3 float64, from, to [2]int) {
		if list, ok := tanks(h.plant, of, m3); ok {
			var names []string
			for _, t := range list {
				names = append(names, t.Name)
			}
			hold(choose(names), from, to)
		}
	}
	lowWines := lot.Of(c.n.Stripped.LowWines).VolumeL / lot.LitresPerM3
	if from, ok := c.begins("strip", "collect"); ok {
		if to, ok := c.lastEnd("spirit", "charge"); ok {
			wait(recipe.OfLowWines, lowWines, from, to)
		}
	}
	if from, ok := c.begins("spirit", still.Hearts); ok {
		k := c.blocks[c.fill]
		wait(recipe.OfSpirit, hearts(c.n), from, [2]int{c.fill, k.minutes})
	}
}

func (b *built) has(name string) bool {
	_, ok := b.resources[name]
	return ok
}

// hearts is the most of a batch's spirit that stands in a tank.
func hearts(n *numbers.Batch) float64 {
	l := lot.Of(n.Distilled.Hearts).VolumeL
	if n.Reduced.Done {
		l = max(l, lot.Of(n.Reduced.Spirit).VolumeL)
	}
	return l / lot.LitresPerM3
}

// begins is the first task of a stage whose key ends so.
func (c *course) begins(stage, ending string) ([2]int, bool) {
	for i, b := range c.blocks {
		for _, t := range b.tasks {
			if t.stage == stage && ends(t.key, ending) {
				return [2]int{i, t.from}, true
			}
		}
	}
	return [2]int{}, false
}

// lastEnd is the end of the last one.
func (c *course) lastEnd(stage, ending string) (out [2]int, ok bool) {
	for i, b := range c.blocks {
		for _, t := range b.tasks {
			if t.stage == stage && ends(t.key, ending) {
				out, ok = [2]int{i, t.to}, true
			}
		}
	}
	return out, ok
}

func ends(key, with string) bool {
	return len(key) > len(with) && key[len(key)-len(with)-1] == '.' && key[len(key)-len(with):] == with
}

func (h *house) costs(b *built, w *want, j, first int) {
	c := w.course
	cost := func(k search.Cost) { b.Costs = append(b.Costs, k) }
	if w.done == nil {
		if !w.extra {
			cost(search.Cost{Kind: search.Absent, Level: tooLate, Weight: 1, Job: j})
		}
		cost(search.Cost{Kind: search.Absent, Level: leftOut, Weight: 1, Job: j})
	}
	if w.due > 0 {
		cost(search.Cost{Kind: search.Late, Level: tooLate, Weight: 1, A: first + c.fill, At: w.due - c.blocks[c.fill].minutes})
	}
	if c.strip >= 0 {
		at := c.blocks[0].minutes + c.dryMin
		if w.printed != nil { // what people work from is not moved to better what it says already
			at += int(math.Ceil(w.printed.WashWaitHours * 60))
		}
		cost(search.Cost{Kind: search.Over, Level: waiting, Weight: 1, A: first, B: first + c.strip, At: at})
	}
	for i, k := range c.blocks {
		if w.done != nil || !h.runsOver(k) {
			continue
		}
		for _, t := range k.tasks {
			if t.attend == schedule.Throughout {
				cost(search.Cost{Kind: search.Outside, Level: outOfShift, Weight: 1, A: first + i, At: openCalendar, From: t.from, To: t.to})
			}
		}
	}
	// A plan that people work from without backset is not moved to find some.
	if wantsBackset(c.batch) > 0 && w.done == nil && (w.printed == nil || len(w.printed.Backset.From) > 0) {
		cost(search.Cost{Kind: search.Unfed, Level: unfed, Weight: 1, A: first, At: keepsS / 60})
	}
	cost(search.Cost{Kind: search.Start, Level: late, Weight: 1, A: first + c.fill})
	if w.printed != nil {
		for _, c := range b.Jobs[j].Choices {
			for _, o := range b.Choices[c].Options {
				if b.names[o] == w.printed.Fermenter || slices.Contains(w.printed.Tanks, b.names[o]) {
					cost(search.Cost{Kind: search.Elsewhere, Level: moved, Weight: 1, Job: j, A: c, At: o})
				}
			}
		}
		for i, at := range printedStarts(w.printed, c, h.axis) {
			if at >= 0 {
				cost(search.Cost{Kind: search.Moved, Level: moved, Weight: 1, A: first + i, At: at})
			}
		}
	}
}

// printedStarts is when each block begins in a plan that was printed; -1 where it has none.
func printedStarts(r *Run, c *course, a *axis) []int {
	out := make([]int, len(c.blocks))
	for i, b := range c.blocks {
		out[i] = -1
		for _, t := range r.Tasks {
			if t.Key == b.tasks[0].key {
				out[i] = a.minute(moment(t.Start))
			}
		}
	}
	return out
}

// made is a run that was begun, in minutes; -1 for what has not been.
type made struct {
	run                         *record.Run
	mash, strip, spirit, filled int
	fermenter                   string
	on                          int // from which on all else can still be decided
}

// begins is when a block was begun; -1 where it was not.
func (m *made) begins(c *course, i int) int {
	at := -1
	switch b := c.blocks[i]; {
	case b.after < 0:
		at = m.mash
	case i == c.strip:
		at = m.strip
	case i == c.fill:
		at = m.filled
	case b.tasks[0].stage == "spirit" && ends(b.tasks[0].key, "charge"):
		if first, ok := c.begins("spirit", "charge"); ok && first[0] == i {
			at = m.spirit
		}
	}
	if at >= 0 {
		return at
	}
	// What goes before something that was begun was done, and when is not written: as it is
	// planned, and before that.
	if before := m.latest(c, i); before >= 0 {
		if b := c.blocks[i]; b.after >= 0 {
			if was := m.begins(c, b.after); was >= 0 {
				return min(was+b.least, before)
			}
		}
		return before
	}
	return -1
}

// latest is when the first block was begun that comes after one, of the line of work.
func (m *made) latest(c *course, i int) int {
	if c.blocks[i].beside {
		return -1
	}
	for k := i + 1; k <= c.fill; k++ {
		at := -1
		switch b := c.blocks[k]; {
		case k == c.strip:
			at = m.strip
		case k == c.fill:
			at = m.filled
		case b.tasks[0].key == "spirit.charge" || b.tasks[0].key == "spirit.1.charge":
			at = m.spirit
		}
		if at >= 0 {
			return at
		}
	}
	return -1
}
