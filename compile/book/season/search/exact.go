package search

import "slices"

// Proof is what is known of the best schedule.
type Proof struct {
	Best   *Placed // the best that was found; nil for none
	Proved bool    // none is better; without a best: there is none
	Nodes  int
}

// Exact finds a schedule that costs least, and proves it, unless that takes more than so
// many nodes of its tree. begin is one to begin with, or nil.
//
// At each node starts are narrowed by lags, windows, what the resources have left beside
// what must run anyway, and on resources of which there is one by edge finding; it
// branches on jobs that may be left out, on choices, on the order of the two uses of such
// a resource that have least room, and at last on starts.
func Exact(p *Problem, begin *Placed, most int) Proof {
	e := &exact{desk: newDesk(p), most: most}
	if begin != nil {
		e.best, e.least = begin, begin.Cost
	}
	e.single = e.onlyMakespan()
	n := &node{lo: make([]int, len(p.Activities)), hi: make([]int, len(p.Activities)), present: make([]int8, len(p.Jobs)), chosen: make([]int, len(p.Choices))}
	for a := range p.Activities {
		n.lo[a], n.hi[a] = p.Activities[a].Earliest, p.latest(a)
	}
	for i := range n.chosen {
		n.chosen[i] = -1
	}
	for j, job := range p.Jobs {
		if !job.Optional {
			n.present[j] = yes
		}
	}
	e.search(n)
	return Proof{e.best, !e.spent, e.nodes}
}

const (
	open int8 = iota
	yes
	no
)

// node is a part of the tree: what can still be.
type node struct {
	lo, hi  []int
	present []int8
	chosen  []int // resources; -1: open
	arcs    []arc
}

// arc says that an activity starts so long after another at the least.
type arc struct{ from, to, least int }

func (n *node) clone() *node {
	return &node{slices.Clone(n.lo), slices.Clone(n.hi), slices.Clone(n.present), slices.Clone(n.chosen), slices.Clone(n.arcs)}
}

type exact struct {
	*desk
	best   *Placed
	least  Vector
	nodes  int
	most   int
	spent  bool
	single bool // the end of what ends last is all that counts
}

// onlyMakespan says that nothing but the end of what ends last costs anything.
func (e *exact) onlyMakespan() bool {
	for _, c := range e.Costs {
		if c.Kind != Makespan || c.Weight != 1 || c.Level != 0 {
			return false
		}
	}
	return len(e.Costs) == 1
}

// item is a stretch on a resource: from an activity's start and so long after to
// another's.
type item struct {
	from, fromTime int
	to, toTime     int
	amount, p      int
}

func (e *exact) search(n *node) {
	if e.spent {
		return
	}
	if e.nodes++; e.nodes > e.most {
		e.spent = true
		return
	}
	items, ok := e.propagate(n)
	if !ok || e.best != nil && !e.lowest(n).Less(e.least) {
		return
	}
	for j, p := range n.present {
		if p == open {
			for _, value := range []int8{yes, no} {
				m := n.clone()
				m.present[j] = value
				e.search(m)
			}
			return
		}
	}
	for j, job := range e.Jobs {
		if n.present[j] != yes {
			continue
		}
		for _, c := range job.Choices {
			if n.chosen[c] < 0 {
				for _, r := range e.Choices[c].Options {
					m := n.clone()
					m.chosen[c] = r
					e.search(m)
				}
				return
			}
		}
	}
	if e.branchOnPair(n, items) {
		return
	}
	if e.atOnce(n) {
		return
	}
	a := -1
	for j, job := range e.Jobs {
		if n.present[j] == yes {
			for _, b := range job.Activities {
				if n.lo[b] < n.hi[b] && (a < 0 || n.lo[b] < n.lo[a]) {
					a = b
				}
			}
		}
	}
	if a < 0 {
		return // all starts are set, and atOnce has said that they do not fit
	}
	m := n.clone()
	m.hi[a] = m.lo[a]
	e.search(m)
	n.lo[a]++
	e.search(n)
}

// atOnce tries every activity at its least start, and keeps the schedule where it holds.
// It says whether nothing better can be below the node.
func (e *exact) atOnce(n *node) bool {
	d := e.desk
	copy(d.chosen, n.chosen)
	copy(d.start, n.lo)
	fits := true
	var taken []int
	for j, job := range e.Jobs {
		d.settle(j, n.present[j] == yes)
		if n.present[j] == yes && fits {
			fits = e.holds(job)
		}
	}
	for j, job := range e.Jobs {
		if !fits || n.present[j] != yes {
			continue
		}
		for _, a := range job.Activities {
			if t, ok := d.soonest(a, d.start[a]); !ok || t != d.start[a] {
				fits = false
			}
			for _, h := range d.holdsAt[a] {
				hold := e.Holds[h]
				if _, ok := d.free[resource(hold.Of, d.chosen)].blocked(d.start[hold.From]+hold.FromTime, d.start[hold.To]+hold.ToTime, hold.Amount); !ok {
					fits = false
				}
			}
			if !fits {
				break
			}
			d.takeActivity(a, 1)
			taken = append(taken, a)
		}
	}
	// What ends or begins at one activity was each tried alone.
	for _, f := range d.free {
		fits = fits && !f.overdrawn()
	}
	cost := d.cost()
	for _, a := range taken {
		d.takeActivity(a, -1)
	}
	if !fits {
		return false
	}
	if e.best == nil || cost.Less(e.least) {
		e.best = &Placed{append([]bool(nil), d.present...), append([]int(nil), d.start...), append([]int(nil), d.chosen...), cost}
		e.least = cost
	}
	return cost == e.lowest(n)
}

// holds says that the lags of a job hold.
func (e *exact) holds(job Job) bool {
	for _, a := range job.Activities {
		for _, l := range e.into[a] {
			lag := e.Lags[l]
			if d := e.start[a] - e.start[lag.From]; d < lag.Least || d > lag.Most {
				return false
			}
		}
	}
	return true
}

// lowest is what no schedule of a node costs less than.
func (e *exact) lowest(n *node) Vector {
	var v Vector
	end := 0
	for j, job := range e.Jobs {
		for _, c := range e.costs[j] {
			c := e.Costs[c]
			there := n.present[j] == yes
			switch {
			case c.Kind == Absent:
				if n.present[j] == no {
					v[c.Level] += c.Weight
				}
			case !there:
			case c.Kind == Elsewhere:
				if n.chosen[c.A] >= 0 && n.chosen[c.A] != c.At {
					v[c.Level] += c.Weight
				}
			case c.Kind == Late:
				if n.lo[c.A] > c.At {
					v[c.Level] += c.Weight
				}
			case c.Kind == Over:
				v[c.Level] += c.Weight * int64(max(0, n.lo[c.B]-n.hi[c.A]-c.At))
			case c.Kind == Start:
				v[c.Level] += c.Weight * int64(n.lo[c.A])
			case c.Kind == Moved:
				if c.At < n.lo[c.A] || c.At > n.hi[c.A] {
					v[c.Level] += c.Weight
				}
			}
		}
		if n.present[j] == yes {
			for _, a := range job.Activities {
				end = max(end, n.lo[a]+e.Activities[a].Duration)
			}
		}
	}
	for _, c := range e.longest {
		v[c.Level] += c.Weight * int64(end)
	}
	return v
}

// propagate narrows the starts of a node until nothing more follows. It gives the
// stretches on each resource.
func (e *exact) propagate(n *node) ([][]item, bool) {
	if e.single && e.best != nil {
		for a := range n.lo {
			n.hi[a] = min(n.hi[a], int(e.least[0])-1-e.Activities[a].Duration)
		}
	}
	items := e.items(n)
	for moved := true; moved; {
		moved = false
		if !e.lags(n, &moved) || !e.windows(n, &moved) {
			return nil, false
		}
		for r := range items {
			if !e.unary(n, r, items[r], &moved) {
				return nil, false
			}
		}
		if !moved && !e.compulsory(n, items, &moved) {
			return nil, false
		}
	}
	return items, true
}

// items are the stretches on each resource whose jobs are there and whose choices are
// made.
func (e *exact) items(n *node) [][]item {
	items := make([][]item, len(e.Resources))
	set := func(w Which) (int, bool) {
		r := int(w)
		if w < 0 {
			r = n.chosen[^w]
		}
		return r, r >= 0
	}
	for j, job := range e.Jobs {
		if n.present[j] != yes {
			continue
		}
		for _, a := range job.Activities {
			for _, u := range e.Activities[a].Uses {
				if r, ok := set(u.Of); ok && u.Amount > 0 && u.To > u.From {
					items[r] = append(items[r], item{a, u.From, a, u.To, u.Amount, u.To - u.From})
				}
			}
			for _, i := range e.holdsAt[a] {
				h := e.Holds[i]
				if r, ok := set(h.Of); ok && h.Amount > 0 {
					items[r] = append(items[r], item{h.From, h.FromTime, h.To, h.ToTime, h.Amount, 0})
				}
			}
		}
	}
	return items
}

func (n *node) raise(a, to int, moved *bool) bool {
	if to > n.lo[a] {
		n.lo[a], *moved = to, true
	}
	return n.lo[a] <= n.hi[a]
}

func (n *node) lower(a, to int, moved *bool) bool {
	if to < n.hi[a] {
		n.hi[a], *moved = to, true
	}
	return n.lo[a] <= n.hi[a]
}

func (e *exact) lags(n *node, moved *bool) bool {
	for again := true; again; {
		again = false
		for j, job := range e.Jobs {
			if n.present[j] != yes {
				continue
			}
			for _, a := range job.Activities {
				for _, i := range e.into[a] {
					l := e.Lags[i]
					if !n.raise(a, n.lo[l.From]+l.Least, &again) || !n.lower(l.From, n.hi[a]-l.Least, &again) {
						return false
					}
					if l.Most < NoMost && (!n.raise(l.From, n.lo[a]-l.Most, &again) || !n.lower(a, n.hi[l.From]+l.Most, &again)) {
						return false
					}
				}
			}
		}
		for _, x := range n.arcs {
			if !n.raise(x.to, n.lo[x.from]+x.least, &again) || !n.lower(x.from, n.hi[x.to]-x.least, &again) {
				return false
			}
		}
		*moved = *moved || again
	}
	return true
}

func (e *exact) windows(n *node, moved *bool) bool {
	for j, job := range e.Jobs {
		if n.present[j] != yes {
			continue
		}
		for _, a := range job.Activities {
			for _, w := range e.Activities[a].Within {
				lo, ok := fitting(e.Calendars[w.Calendar], n.lo[a], w)
				hi, too := lastFitting(e.Calendars[w.Calendar], n.hi[a], w)
				if !ok || !too || !n.raise(a, lo, moved) || !n.lower(a, hi, moved) {
					return false
				}
			}
		}
	}
	return true
}

// one says that a resource takes one of some stretches at a time, wherever they lie.
func (e *exact) one(r int, items []item) bool {
	most := 0
	for _, s := range e.Resources[r].Capacity {
		most = max(most, s.Amount)
	}
	for _, x := range items {
		if 2*x.amount <= most {
			return false
		}
	}
	return len(items) > 0
}

// least is how long a stretch is at the least.
func (n *node) least(x item) int {
	if x.from == x.to {
		return x.p
	}
	return max(0, n.lo[x.to]+x.toTime-n.hi[x.from]-x.fromTime)
}

// spans are how long each stretch is at the least, a hold by its job's lags too.
func (e *exact) spans(n *node, items []item) []interval {
	out := make([]interval, len(items))
	for i, x := range items {
		p := n.least(x)
		if x.from != x.to {
			for _, l := range e.into[x.to] {
				if e.Lags[l].From == x.from {
					p = max(p, e.Lags[l].Least+x.toTime-x.fromTime)
				}
			}
		}
		out[i] = interval{n.lo[x.from] + x.fromTime, n.hi[x.to] + x.toTime, p}
	}
	return out
}

func (e *exact) unary(n *node, r int, items []item, moved *bool) bool {
	if len(items) < 2 || !e.one(r, items) {
		return true
	}
	of := e.spans(n, items)
	est, ok := edges(of)
	if !ok {
		return false
	}
	for i, x := range items {
		if !n.raise(x.from, est[i]-x.fromTime, moved) {
			return false
		}
	}
	lct, ok := edges(mirrored(of))
	if !ok {
		return false
	}
	for i, x := range items {
		if !n.lower(x.to, -lct[i]-x.toTime, moved) {
			return false
		}
	}
	return true
}

// compulsory moves activities out of where others run in any case.
func (e *exact) compulsory(n *node, items [][]item, moved *bool) bool {
	free := make([]*profile, len(items))
	part := func(x item) (from, to int) { return n.hi[x.from] + x.fromTime, n.lo[x.to] + x.toTime }
	for r := range items {
		free[r] = newProfile(e.Resources[r])
		for _, x := range items[r] {
			from, to := part(x)
			free[r].take(from, to, x.amount)
		}
		if free[r].overdrawn() {
			return false
		}
	}
	for r := range items {
		for _, x := range items[r] {
			if x.from != x.to {
				continue // a hold goes by its ends
			}
			from, to := part(x)
			free[r].take(from, to, -x.amount)
			t, ok := n.lo[x.from], true
			for {
				b, fine := free[r].blocked(t+x.fromTime, t+x.toTime, x.amount)
				if fine {
					break
				}
				if t = b.Close - x.fromTime; t > n.hi[x.from] {
					ok = false
					break
				}
			}
			ok = ok && n.raise(x.from, t, moved)
			t = n.hi[x.from]
			for ok {
				b, fine := free[r].lastBlocked(t+x.fromTime, t+x.toTime, x.amount)
				if fine {
					break
				}
				if t = b.Open - x.toTime; t < n.lo[x.from] {
					ok = false
				}
			}
			ok = ok && n.lower(x.from, t, moved)
			if !ok {
				return false
			}
			from, to = part(x)
			free[r].take(from, to, x.amount)
		}
	}
	return true
}

// branchOnPair branches on the order of the two stretches that have least room, of those
// on one resource that takes one at a time and whose order is open. It gives false where
// there are none.
func (e *exact) branchOnPair(n *node, items [][]item) bool {
	var first, second item
	least := never
	for r := range items {
		if len(items[r]) < 2 || !e.one(r, items[r]) {
			continue
		}
		of := e.spans(n, items[r])
		for i := range of {
			for k := i + 1; k < len(of); k++ {
				x, y := items[r][i], items[r][k]
				if of[i].p == 0 || of[k].p == 0 || before(n, x, y) || before(n, y, x) {
					continue
				}
				ij, ji := of[k].lct-of[i].est-of[i].p-of[k].p, of[i].lct-of[k].est-of[i].p-of[k].p
				if room := min(ij, ji)*4 + max(ij, ji); room < least {
					least, first, second = room, x, y
					if ji > ij { // the order that has more room first
						first, second = y, x
					}
				}
			}
		}
	}
	if least == never {
		return false
	}
	for _, o := range [][2]item{{first, second}, {second, first}} {
		m := n.clone()
		m.arcs = append(m.arcs, arc{o[0].to, o[1].from, o[0].toTime - o[1].fromTime})
		e.search(m)
	}
	return true
}

// before says that one stretch ends before another begins, whatever their starts.
func before(n *node, x, y item) bool {
	return n.hi[x.to]+x.toTime <= n.lo[y.from]+y.fromTime || n.ordered(x, y)
}

func (n *node) ordered(x, y item) bool {
	for _, a := range n.arcs {
		if a.from == x.to && a.to == y.from && a.least >= x.toTime-y.fromTime {
			return true
		}
	}
	return false
}
