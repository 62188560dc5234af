package season

import (
	"errors"
	"fmt"
	"time"

	"newmake/compile/book/season/search"
	"newmake/compile/numbers"
	"newmake/compile/plan"
	"newmake/compile/stage/cask"
	"newmake/lang/recipe"
	asked "newmake/lang/season"
	"newmake/lang/zone"
)

const leastFill = cask.LeastFill

// solver looks for a solution.
type solver struct {
	solution
	memo    *numbers.Memo
	steps   int  // of the search, so far
	best    bool // no plan has more of what is wanted in time
	open    int  // runs that casks are short of, and that were not looked for any more
	leftOut []LeftOut
	whole   *asked.Season // what is asked for, with the lines of batches that are left out
}

// errZone says that the plant's zone is not known.
var errZone = errors.New("the zone of the plant is not known")

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
		return nil, errZone
	}
	s := &solver{solution: solution{Problem: p, courses: map[string]*course{}}, memo: numbers.Keeping(stagesKept)}
	if err := s.leaveOut(); err != nil {
		return nil, err
	}
	first := s.runs()
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

// mostRounds is how often the search is run for casks that were counted short, or work
// that takes longer than in a house at work.
const mostRounds = 8

func (s *solver) solve() {
	effort := s.effort()
	s.doing(Placing)
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
				if printedUses(w.printed, b.names[o]) {
					out.Chosen[c] = o
				}
			}
		}
		out.Present[j] = whole
	}
	return out
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
