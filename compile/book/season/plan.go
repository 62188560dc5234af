package season

import (
	"errors"
	"fmt"
	"math"
	"slices"
	"time"

	"newmake/compile/book/season/search"
	"newmake/compile/matter/stream"
	"newmake/compile/numbers"
	"newmake/compile/plan"
	"newmake/compile/stage/cask"
	"newmake/lang/recipe"
	"newmake/lang/record"
	asked "newmake/lang/season"
	"newmake/lang/zone"
)

const leastFill = cask.LeastFill

// solver is a season in the making.
type solver struct {
	*Problem
	axis    *axis
	memo    *numbers.Memo
	house   *house
	courses map[string]*course // by batch, in a house at work
	begun   []*made
	list    []*want
	from    int // the first minute that can still be decided
	built   *built
	placed  *search.Placed
	flows   *flows
	steps   int  // of the search, so far
	best    bool // no plan has more of what is wanted in time
	open    int  // runs that casks are short of, and that were not looked for any more
	leftOut []LeftOut
	whole   *asked.Season // what is asked for, with the lines of batches that are left out
}

// ErrZone says that the plant's zone is not known.
var ErrZone = errors.New("the zone of the plant is not known")

// BatchError is a batch of the season that cannot be computed, where there is no other.
type BatchError struct {
	Batch string
	Err   error
}

func (e *BatchError) Error() string { return fmt.Sprintf("%s: %v", e.Batch, e.Err) }

func (e *BatchError) Unwrap() error { return e.Err }

// Plan plans a season. The error is ErrZone or a *BatchError.
func Plan(p *Problem) (*Season, error) {
	s, err := newSolver(p)
	if err != nil {
		return nil, err
	}
	s.solve()
	return s.answer(), nil
}

func newSolver(p *Problem) (*solver, error) {
	where, err := zone.Load(p.Plant.Zone)
	if err != nil {
		return nil, ErrZone
	}
	s := &solver{Problem: p, memo: numbers.Keeping(stagesKept), courses: map[string]*course{}}
	if err := s.leaveOut(); err != nil {
		return nil, err
	}
	first := s.runs(where)
	s.axis = newAxis(p.Asks, p.Plant, where, first)
	for _, m := range s.begun {
		m.times(s.axis)
		if !p.On.IsZero() {
			if d := s.axis.on(p.On); d != nil {
				m.on = d.from
			}
		}
	}
	s.house = &house{plant: p.Plant, axis: s.axis, windows: s.axis.windows(), boilerW: p.Plant.BoilerW, asks: s.axis.outages(p.Asks.Without), more: map[string]int{}, backset: !p.Asks.Today.NoBackset}
	s.wants()
	s.match()
	return s, nil
}

// stagesKept is how many results of each stage are kept: those of the recipes of a season,
// each with a few lots of feints.
const stagesKept = 64

// courseOf computes a batch in a house at work, in the middle of the season.
func (s *solver) courseOf(name string) error {
	if s.courses[name] != nil {
		return nil
	}
	b, ok := s.Batches[name]
	if !ok {
		return &BatchError{name, errors.New("there is no such batch")}
	}
	c := *b
	mid := s.Asks.From.After(s.Asks.Days() / 2)
	c.Start = recipe.Start{Year: mid.Year, Month: int(mid.Month), Day: mid.Day, Hour: 12}
	c.Today = recipe.Today{}
	n, err := numbersOf(&c, s.memo)
	if err != nil {
		return &BatchError{name, err}
	}
	s.courses[name] = courseOf(n)
	return nil
}

// runs finds those of the season's plant that were begun, and gives the first day that
// matters.
func (s *solver) runs(where *time.Location) record.Date {
	first := s.Asks.From
	for _, r := range s.Problem.Runs {
		b := s.Batches[r.Batch]
		if b == nil || b.Plant != nil && b.Plant.Name != s.Plant.Name || !s.bears(r) || s.courseOf(r.Batch) != nil {
			continue
		}
		s.begun = append(s.begun, &made{run: r, mash: -1, strip: -1, spirit: -1, filled: -1})
		if r.Date.Compare(first) < 0 {
			first = r.Date
		}
	}
	slices.SortStableFunc(s.begun, func(a, b *made) int { return a.run.Date.Compare(b.run.Date) })
	return first
}

// bears says that a run was begun, and may still be on its way in the season.
func (s *solver) bears(r *record.Run) bool {
	return r.Date.Compare(s.Asks.To) <= 0 && r.Date.DaysTo(s.Asks.From) <= backDays && len(r.Visits) > 0
}

// backDays is how long before a season a run may have begun that is still on its way.
const backDays = 21

// times takes from a run's record when each stage was begun.
func (m *made) times(a *axis) {
	at := func(s record.StageName, words ...string) int {
		for i := range m.run.Visits {
			v := &m.run.Visits[i]
			if m.run.Stages[v.Stage].Name != s || !v.When.Known() || len(words) > 0 && !slices.Contains(words, v.Word) {
				continue
			}
			return a.minute(v.When.Time)
		}
		return -1
	}
	if m.mash = at(record.Mash); m.mash < 0 {
		d := a.on(m.run.Date)
		m.mash = d.from + 7*60
		if len(d.people) > 0 {
			m.mash = d.people[0].open
		}
	}
	m.strip, m.spirit, m.filled = at(record.Strip), at(record.Spirit), at(record.Fill)
	for _, st := range m.run.Stages {
		if st.Name == record.Ferment {
			m.fermenter = st.Vessel
		}
	}
}

// match finds for each want the run of the printed plan that it is.
func (s *solver) match() {
	if s.Printed == nil {
		return
	}
	used := map[string]bool{}
	for _, w := range s.list {
		for i := range s.Printed.Runs {
			r := &s.Printed.Runs[i]
			if used[r.Number] || r.Batch != w.course.batch.Name || w.done != nil && r.Number != w.number {
				continue
			}
			at := s.axis.minute(moment(r.Mash))
			if w.done == nil && (at < w.from || at > w.to || w.on != nil && !slices.ContainsFunc(w.on, func(x search.Window) bool { return x.Open <= at && at <= x.Close })) {
				continue
			}
			used[r.Number] = true
			w.printed, w.number = r, r.Number
			if w.done == nil {
				w.course = w.course.printed(r, s.axis)
			}
			break
		}
	}
}

// printed is a course whose tasks take the times that a printed plan has for a run, which
// were worked out from what flows into it. It is the course itself where the run has other
// work.
func (c *course) printed(r *Run, a *axis) *course {
	out := *c
	out.blocks = slices.Clone(c.blocks)
	starts := printedStarts(r, c, a)
	for i := range out.blocks {
		b := &out.blocks[i]
		b.tasks = slices.Clone(b.tasks)
		for k := range b.tasks {
			t := &b.tasks[k]
			n := slices.IndexFunc(r.Tasks, func(x Task) bool { return x.Key == t.key })
			if n < 0 || starts[i] < 0 {
				return c
			}
			t.from, t.to = a.minute(moment(r.Tasks[n].Start))-starts[i], a.minute(moment(r.Tasks[n].End))-starts[i]
			if w := r.Tasks[n].KW * 1000; math.Abs(w-t.powerW) > hectowatts {
				t.powerW = w
			}
		}
		b.minutes = b.tasks[len(b.tasks)-1].to
		if b.after >= 0 { // what is printed kept all limits by its own times
			apart := starts[i] - starts[b.after]
			was, is := c.blocks[b.after], out.blocks[b.after]
			if k := slices.IndexFunc(was.tasks, func(t task) bool { return b.beside && t.to == b.least }); k >= 0 {
				b.least = is.tasks[k].to
			} else {
				b.least += is.minutes - was.minutes
			}
			b.least, b.most = min(b.least, apart), max(b.most, apart)
		}
	}
	return &out
}

// mostRounds is how often the search is run for casks that were counted short, or work
// that takes longer than in a house at work.
const mostRounds = 8

func (s *solver) solve() {
	effort := s.effort()
	for round := range mostRounds {
		s.built = s.house.build(s.list)
		begin := s.carried()
		if round > 1 { // the second round is the first that knows how long the work takes
			effort = max(effort/4, 1)
		}
		s.placed, _ = search.Improve(&s.built.Problem, begin, effort)
		s.steps += effort
		s.exactly(max(effort/4, 1))
		s.flows = flow(s.ways(), s.today(), s.steady, s.memo, s.axis, s.Plant)
		more := s.short()
		if round == mostRounds-1 {
			s.open = len(more)
			return
		}
		if longer := s.longer(); !longer && len(more) == 0 {
			return
		}
		for _, w := range more {
			s.list = append(s.list, w)
			w.kind = 1 + s.kindOf(len(s.list)-1)
		}
	}
}

func (s *solver) effort() int {
	if s.Effort == 0 {
		return usualEffort
	}
	return s.Effort
}

// carried is what stands of the plan so far, or of the printed one.
func (s *solver) carried() *search.Placed {
	b := s.built
	out := &search.Placed{Present: make([]bool, len(b.Jobs)), Start: make([]int, len(b.Activities)), Chosen: make([]int, len(b.Choices))}
	if s.placed != nil {
		// The wants are the same, some more at the end; their blocks may have grown.
		copy(out.Present, s.placed.Present)
		copy(out.Start, s.placed.Start)
		copy(out.Chosen, s.placed.Chosen)
		return out
	}
	for j, w := range s.list {
		if w.printed == nil {
			continue
		}
		starts, whole := printedStarts(w.printed, w.course, s.axis), true
		for i, at := range starts {
			whole = whole && at >= 0
			out.Start[b.first[j]+i] = at
		}
		for _, c := range b.Jobs[j].Choices {
			out.Chosen[c] = b.Choices[c].Options[0]
			for _, o := range b.Choices[c].Options {
				if s.printedUses(w.printed, b.names[o]) {
					out.Chosen[c] = o
				}
			}
		}
		out.Present[j] = whole
	}
	return out
}

// printedUses says that a run of the printed plan is in a vessel or a tank.
func (s *solver) printedUses(r *Run, name string) bool {
	return slices.ContainsFunc(r.Tasks, func(t Task) bool { return t.Vessel == name }) || slices.Contains(r.Tanks, name)
}

// start is when a block of a want begins.
func (s *solver) start(j, block int) int { return s.placed.Start[s.built.first[j]+block] }

// filledBy says that a want's casks are full by a minute.
func (s *solver) filledBy(j, minute int) bool { return s.filled(j) <= minute }

// filled is when a want's casks are full.
func (s *solver) filled(j int) int {
	c := s.list[j].course
	return s.start(j, c.fill) + c.blocks[c.fill].minutes
}

// lastMinute is the end of the season's last day.
func (s *solver) lastMinute() int { return s.axis.on(s.Asks.To).to }

// end of a task of a want.
func (s *solver) at(j int, where [2]int) int { return s.start(j, where[0]) + where[1] }

// ways are the runs that are placed, on the clock; those that are not come last and do
// nothing.
func (s *solver) ways() []way {
	var out []way
	for _, j := range s.present() {
		w := s.list[j]
		c := w.course
		x := way{batch: s.Batches[c.batch.Name], mash: s.start(j, 0), pitched: s.start(j, 0) + c.blocks[0].minutes, filled: s.filled(j)}
		x.charged = s.start(j, max(c.strip, 0))
		x.stands = float64(x.charged-x.pitched) * 60
		if to, ok := c.lastEnd("strip", "stop"); ok {
			x.stripped = s.at(j, to)
		}
		if from, ok := c.begins("spirit", "charge"); ok {
			x.spirit = s.at(j, from)
		}
		if to, ok := c.lastEnd("spirit", "stop"); ok {
			x.spirits = s.at(j, to)
		}
		out = append(out, x)
	}
	return out
}

// present are the wants that are placed, by the start of their mash.
func (s *solver) present() []int {
	var out []int
	for j := range s.list {
		if s.placed.Present[j] {
			out = append(out, j)
		}
	}
	slices.SortStableFunc(out, func(a, b int) int { return s.start(a, 0) - s.start(b, 0) })
	return out
}

func (s *solver) today() recipe.Today { return s.Asks.Today }

// steady is the feints of a house at work.
func (s *solver) steady(b *recipe.Batch) stream.Stream {
	n := s.courses[b.Name].n
	return n.Distilled.Feints().Scale(float64(n.Distilled.Charges))
}

// longer gives runs whose work takes other times than in a house at work their own course;
// false where there are none.
func (s *solver) longer() bool {
	found := false
	for i, j := range s.present() {
		r := s.flows.runs[i]
		if r.err != nil || s.list[j].done != nil {
			continue
		}
		within := 0
		if s.list[j].printed != nil {
			within = printedWithinMin
		}
		if own := s.list[j].course.as(courseOf(r.n), within); own != nil {
			s.list[j].course, found = own, true
		}
	}
	return found
}

// printedWithinMin is how far a task may be from the time that is printed for it before
// the sheet is written anew: the clocks of a plan are no better than that. A printed run
// has its own times (course.printed); what flows into it, though, comes from runs before it
// that may have moved, and by some minutes more or less of theirs nobody's sheet is wrong.
const printedWithinMin = 10

// as is a course with those blocks of another that take other times, by more than so many
// minutes; nil where there are none.
func (c *course) as(own *course, within int) *course {
	var out *course
	for i, b := range c.blocks {
		k := slices.IndexFunc(own.blocks, func(o block) bool { return o.like(b) })
		if k < 0 || !own.blocks[k].differs(b, within) {
			continue
		}
		if out == nil {
			x := *c
			x.blocks = slices.Clone(c.blocks)
			out = &x
		}
		more := own.blocks[k].minutes - b.minutes
		out.blocks[i].tasks, out.blocks[i].minutes = own.blocks[k].tasks, own.blocks[k].minutes
		for n := range out.blocks { // what follows its end follows so much later
			if f := &out.blocks[n]; f.after == i && !f.beside {
				f.least += more
				if f.most < search.NoMost {
					f.most += more
				}
			}
		}
		for n := range out.blocks { // what is done beside it follows one of its tasks
			f := &out.blocks[n]
			if f.after != i || !f.beside {
				continue
			}
			o := slices.IndexFunc(own.blocks, func(o block) bool { return o.after == k && o.beside && o.like(*f) })
			if o < 0 {
				continue
			}
			if f.most == f.least {
				f.most = own.blocks[o].least
			}
			f.least = own.blocks[o].least
		}
	}
	return out
}

// like says that two blocks are the same work.
func (b block) like(o block) bool {
	return slices.EqualFunc(b.tasks, o.tasks, func(x, y task) bool { return x.key == y.key })
}

// differs says that a task of one takes another time, by more than so many minutes, or
// another heat: by more than an eighth where minutes are let pass, which is what ten of
// them make of a heating of 80 min.
func (b block) differs(o block, within int) bool {
	for i, t := range b.tasks {
		u := o.tasks[i]
		longer := t.to - t.from - (u.to - u.from)
		heatW := float64(hectowatts)
		if within > 0 { // a minute more or less of a short task is as much less or more heat
			heatW = max(heatW, t.powerW/8)
		}
		if max(longer, -longer) > within || math.Abs(t.powerW-u.powerW) > heatW {
			return true
		}
	}
	return false
}

// short is one run more of each batch whose casks come short although all its runs are in
// time.
func (s *solver) short() (more []*want) {
	done := map[string]bool{}
	for i, c := range s.Asks.Casks {
		if done[c.Batch] || s.casksBy(c.Batch, s.axis.on(c.By).to) >= s.askedBy(c) || !s.allInTime(c.Batch, s.axis.on(c.By).to) {
			continue
		}
		done[c.Batch] = true
		more = append(more, &want{demand: i, course: s.courses[c.Batch], from: s.from, to: s.lastMinute() - 1, due: s.axis.on(c.By).to})
	}
	return more
}

// askedBy is how many casks of a line's batch are asked for by its day.
func (s *solver) askedBy(c asked.Casks) int {
	n := 0
	for _, o := range s.Asks.Casks {
		if o.Batch == c.Batch && o.By.Compare(c.By) <= 0 {
			n += o.N
		}
	}
	return n
}

func (s *solver) casksBy(batch string, due int) int {
	n := 0
	for i, j := range s.present() {
		if s.list[j].course.batch.Name == batch && s.filledBy(j, due) {
			n += s.flows.runs[i].casks
		}
	}
	return n
}

func (s *solver) allInTime(batch string, due int) bool {
	for j, w := range s.list {
		if w.course.batch.Name == batch && w.due == due && (!s.placed.Present[j] || !s.filledBy(j, due)) {
			return false
		}
	}
	return true
}

func moment(t string) time.Time { return plan.Moment(t) }
