package search

import (
	"math"
	"slices"
)

// Limit is how many optional jobs can be in time, and what says so.
type Limit struct {
	Most int
	// By is the resources that bear on it, the one that does most first; none where there
	// are just no more jobs.
	By []int
}

// Bound says how many of the optional jobs can be there with no cost at the first level, at
// the most, whatever the schedule. Each job counts for one.
//
// What each window of the first calendar has of a resource gets a price, each job is alone
// and goes where it pays least, and what is wanted becomes dearer (Garg and Könemann, Faster
// and simpler algorithms for multicommodity flow and other fractional packing problems, SIAM
// Journal on Computing 37 (2007) 630-652, from memory). Whatever the prices, what all of it
// costs for what a job pays is a bound. What an
// activity takes of a window is its time, or what a dual feasible function makes of it, so
// that two works of six hours do not share a shift of ten (Fekete and Schepers, New classes
// of fast lower bounds for bin packing problems, Mathematical Programming 91 (2001) 11-31,
// from memory). What is held over a night is counted at each night.
func Bound(p *Problem, reached, rounds int) Limit {
	b := newBounder(p)
	out := Limit{Most: 0}
	for _, g := range b.groups {
		out.Most += g.count
	}
	if len(b.windows) == 0 {
		return out
	}
	of := make([]float64, len(b.groups)) // prices of the jobs themselves, of each kind
	for g := range of {
		of[g] = 1 / float64(b.groups[g].count)
	}
	for i, r := range b.rows {
		switch {
		case !r.used:
		case r.capacity > 0:
			b.price[i] = 1 / r.capacity
		default:
			b.price[i] = tooDear
		}
	}
	takes, paths := make([]float64, len(b.groups)), make([][]int, len(b.groups))
	use := make([]float64, len(b.rows))
	for round := range rounds {
		if out.Most <= reached {
			break
		}
		for g := range b.groups {
			takes[g], paths[g] = b.cheapest(b.groups[g])
		}
		if most := int(math.Floor(b.sum(takes) + 1e-6)); most < out.Most {
			out.Most, out.By = most, b.by()
		}
		g := -1
		for k := range b.groups {
			if paths[k] != nil && (g < 0 || takes[k]+of[k] < takes[g]+of[g]) {
				g = k
			}
		}
		if g < 0 {
			out.Most = 0
			break
		}
		// As much of that way as there is room for, and what it takes becomes dearer.
		clear(use)
		taken(b.groups[g], paths[g], use)
		room := float64(b.groups[g].count)
		for i, u := range use {
			if u > 0 && b.rows[i].capacity > 0 {
				room = min(room, b.rows[i].capacity/u)
			}
		}
		e := dearer / (1 + float64(round)/slower)
		of[g] *= 1 + e*room/float64(b.groups[g].count)
		for i, u := range use {
			if c := b.rows[i].capacity; u > 0 && c > 0 {
				b.price[i] *= 1 + e*room*u/c
			}
		}
	}
	return out
}

// row is something of which there is so much.
type row struct {
	resource int
	capacity float64
	used     bool // something can take of it
}

// state is an activity in a window: the starts that it can have there.
type state struct {
	lo, hi int
	ok     bool
	rows   []int // what it takes
	amount []float64
}

// member is an activity of a job as the bound sees it.
type member struct {
	parent      int // of members; -1: none
	least, most int
	states      []state // by window
	path        []int   // from the first activity of the job to this one
	lo          [][]int // its least start in a window, by where on the path the window was come to; -1: none
	held        []int   // of each hold that goes over the step from its parent: the row of the first window's night
	children    []int
}

// group is jobs that are alike.
type group struct {
	count   int
	members []member
}

type bounder struct {
	*Problem
	windows []Window
	rows    []row
	price   []float64
	groups  []group
	index   map[[3]int]int // rows by resource, window and function; of nights the function is -1
	sets    map[string]int
}

// functions are dual feasible: of what fits into 1, what they make of it fits into 1.
var functions = []func(x float64) float64{
	func(x float64) float64 { return x },
	feasible(1), feasible(2), feasible(3),
}

func feasible(k float64) func(x float64) float64 {
	return func(x float64) float64 {
		y := (k + 1) * x
		if math.Abs(y-math.Round(y)) < 1e-9 {
			return x
		}
		return math.Floor(y) / k
	}
}

func newBounder(p *Problem) *bounder {
	b := &bounder{Problem: p, index: map[[3]int]int{}, sets: map[string]int{}}
	if len(p.Calendars) > 0 {
		b.windows = p.Calendars[0]
	}
	like := map[int]int{}
	lateAt := make([]int, len(p.Activities))
	for i := range lateAt {
		lateAt[i] = never
	}
	for _, c := range p.Costs {
		if c.Kind == Late && c.Level == 0 {
			lateAt[c.A] = min(lateAt[c.A], c.At)
		}
	}
	counts := make([]bool, len(p.Jobs))
	for _, c := range p.Costs {
		if c.Kind == Absent && c.Level == 0 {
			counts[c.Job] = true
		}
	}
	into := make([][]Lag, len(p.Activities))
	for _, l := range p.Lags {
		into[l.To] = append(into[l.To], l)
	}
	for j, job := range p.Jobs {
		if !job.Optional || !counts[j] {
			continue
		}
		if g, ok := like[job.Alike]; ok && job.Alike != 0 {
			b.groups[g].count++
			continue
		}
		like[job.Alike] = len(b.groups)
		b.groups = append(b.groups, b.group(job, into, lateAt))
	}
	b.price = make([]float64, len(b.rows))
	return b
}

// group makes the members of a job: those of its activities that lie in windows of the
// first calendar, each after the nearest such one before it.
func (b *bounder) group(job Job, into [][]Lag, lateAt []int) group {
	g := group{count: 1}
	at := map[int]int{} // activity to member
	type step struct{ parent, least, most int }
	chain := map[int]step{} // of an activity that is no member: how it hangs on one
	for _, a := range job.Activities {
		s := step{-1, 0, NoMost}
		if len(into[a]) > 0 {
			l := into[a][0]
			s = step{-1, l.Least, l.Most}
			if m, ok := at[l.From]; ok {
				s.parent = m
			} else {
				c := chain[l.From]
				s.parent, s.least = c.parent, s.least+c.least
				if c.most >= NoMost || s.most >= NoMost {
					s.most = NoMost
				} else {
					s.most += c.most
				}
			}
		}
		if !slices.ContainsFunc(b.Activities[a].Within, func(d During) bool { return d.Calendar == 0 }) {
			chain[a] = s
			continue
		}
		at[a] = len(g.members)
		m := member{parent: s.parent, least: s.least, most: s.most, states: make([]state, len(b.windows))}
		for w := range b.windows {
			m.states[w] = b.state(a, w, lateAt[a])
		}
		if s.parent >= 0 {
			g.members[s.parent].children = append(g.members[s.parent].children, len(g.members))
		}
		g.members = append(g.members, m)
	}
	g.prune()
	g.arrive()
	for _, a := range job.Activities {
		m, ok := at[a]
		if !ok {
			continue
		}
		for w := range b.windows {
			if s := &g.members[m].states[w]; s.ok {
				b.uses(s, a, w)
			}
		}
	}
	for _, h := range job.Holds {
		b.hold(&g, at, b.Holds[h])
	}
	return g
}

// prune takes away what no schedule of the job alone can have.
func (g *group) prune() {
	for again := true; again; {
		again = false
		for m := range g.members {
			x := &g.members[m]
			if x.parent < 0 {
				continue
			}
			p := &g.members[x.parent]
			can := func(v, w int) bool {
				a, s := p.states[v], x.states[w]
				return a.ok && s.ok && s.hi-a.lo >= x.least && (x.most >= NoMost || s.lo-a.hi <= x.most)
			}
			for w := range x.states {
				if !x.states[w].ok {
					continue
				}
				found := false
				for v := w; v >= 0 && !found; v-- {
					found = can(v, w)
				}
				if !found {
					x.states[w].ok, again = false, true
				}
			}
			for v := range p.states {
				if !p.states[v].ok {
					continue
				}
				found := false
				for w := v; w < len(x.states) && !found; w++ {
					found = can(v, w)
				}
				if !found {
					p.states[v].ok, again = false, true
				}
			}
		}
	}
}

// arrive finds how soon each activity can begin in a window when those before it on its
// path are in the same window, from one of them on.
func (g *group) arrive() {
	for m := range g.members {
		x := &g.members[m]
		if x.parent >= 0 {
			x.path = append(slices.Clone(g.members[x.parent].path), m)
		} else {
			x.path = []int{m}
		}
		x.lo = make([][]int, len(x.path))
		for i := range x.path {
			x.lo[i] = make([]int, len(x.states))
			for w, s := range x.states {
				x.lo[i][w] = -1
				if !s.ok {
					continue
				}
				lo := s.lo
				if i < len(x.path)-1 {
					before := g.members[x.parent].lo[i][w]
					if before < 0 {
						continue
					}
					lo = max(lo, before+x.least)
				}
				if lo <= s.hi {
					x.lo[i][w] = lo
				}
			}
		}
	}
}

// span is the first window that a member can be in, and the last.
func (x *member) span() (first, last int) {
	first, last = len(x.states), -1
	for w, s := range x.states {
		if s.ok {
			first, last = min(first, w), w
		}
	}
	return first, last
}

// state is what an activity can be in a window.
func (b *bounder) state(a, w, lateAt int) state {
	act, win := b.Activities[a], b.windows[w]
	s := state{lo: act.Earliest, hi: min(b.latest(a), lateAt), ok: true}
	for _, d := range act.Within {
		if d.Calendar == 0 {
			s.lo, s.hi = max(s.lo, win.Open-d.From), min(s.hi, win.Close-d.To)
		}
	}
	for range 2 {
		for _, d := range act.Within {
			lo, ok := fitting(b.Calendars[d.Calendar], s.lo, d)
			hi, too := lastFitting(b.Calendars[d.Calendar], s.hi, d)
			if !ok || !too {
				s.ok = false
				return s
			}
			s.lo, s.hi = max(s.lo, lo), min(s.hi, hi)
		}
	}
	if s.lo > s.hi {
		s.ok = false
		return s
	}
	return s
}

// uses is what an activity takes of a window that it lies in.
func (b *bounder) uses(s *state, a, w int) {
	act, win := b.Activities[a], b.windows[w]
	long := float64(win.Close - win.Open)
	for _, u := range act.Uses {
		inside := slices.ContainsFunc(act.Within, func(d During) bool { return d.Calendar == 0 && d.From <= u.From && u.To <= d.To })
		if !inside || u.Of < 0 || long <= 0 {
			continue
		}
		b.take(s, int(u.Of), w, float64(u.Amount), float64(u.To-u.From)/long)
	}
}

func (b *bounder) take(s *state, resource, w int, amount, share float64) {
	for f, of := range functions {
		if x := of(share); x > 0 {
			s.rows, s.amount = append(s.rows, b.row(resource, w, f)), append(s.amount, amount*x)
		}
	}
}

// row is the number of what a window, or the night before it, has of a resource.
func (b *bounder) row(resource, w, function int) int {
	k := [3]int{resource, w, function}
	if i, ok := b.index[k]; ok {
		return i
	}
	from, to := b.windows[w].Open, b.windows[w].Close
	most := 0
	for i, c := range b.Resources[resource].Capacity {
		end := never
		if i+1 < len(b.Resources[resource].Capacity) {
			end = b.Resources[resource].Capacity[i+1].At
		}
		if c.At < to && end > from {
			most = max(most, c.Amount)
		}
	}
	b.rows = append(b.rows, row{resource, float64(most), true})
	b.index[k] = len(b.rows) - 1
	return len(b.rows) - 1
}

// night is the row of the night before a window, of the resources that may be chosen.
func (b *bounder) night(of Which, w int) int {
	options := []int{int(of)}
	if of < 0 {
		options = b.Choices[^of].Options
	}
	name := ""
	for _, o := range options {
		name += string(rune(o + 1))
	}
	set, ok := b.sets[name]
	if !ok {
		set = len(b.sets)
		b.sets[name] = set
	}
	k := [3]int{set, w, -1}
	if i, ok := b.index[k]; ok {
		return i
	}
	at, sum := b.windows[w].Open, 0
	for _, o := range options {
		amount := 0
		for _, c := range b.Resources[o].Capacity {
			if c.At < at {
				amount = c.Amount
			}
		}
		sum += amount
	}
	b.rows = append(b.rows, row{options[0], float64(sum), false})
	b.index[k] = len(b.rows) - 1
	return len(b.rows) - 1
}

// hold counts what is kept over the nights between its ends.
func (b *bounder) hold(g *group, at map[int]int, h Hold) {
	from, ok := at[h.From]
	to, too := at[h.To]
	if !ok || !too || h.Amount != 1 || from == to || h.FromTime < 0 {
		return
	}
	path := []int{}
	for m := to; m != from; m = g.members[m].parent {
		if m < 0 || g.members[m].parent < 0 {
			return
		}
		path = append(path, m)
	}
	first := b.night(h.Of, 0)
	for w := range b.windows { // the rows of a set are made one after the other
		b.night(h.Of, w)
	}
	begins, _ := g.members[from].span()
	_, ends := g.members[to].span()
	for w := begins + 1; w <= ends; w++ {
		b.rows[first+w].used = true
	}
	for _, m := range path {
		g.members[m].held = append(g.members[m].held, first)
	}
}

// by is the resources by what their prices come to, the greatest first.
func (b *bounder) by() []int {
	sum := map[int]float64{}
	for i, r := range b.rows {
		sum[r.resource] += b.price[i] * r.capacity
	}
	var out []int
	for r, x := range sum {
		if x > 1e-6 {
			out = append(out, r)
		}
	}
	slices.SortFunc(out, func(x, y int) int {
		switch {
		case sum[x] > sum[y]:
			return -1
		case sum[x] < sum[y]:
			return 1
		}
		return x - y
	})
	return out
}
