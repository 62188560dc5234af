package search

import "slices"

// random is a small generator of its own (splitmix64, Steele, Lea and Flood 2014), so that
// the same effort gives the same schedule with every release of Go.
type random struct{ state uint64 }

func (r *random) next() uint64 {
	r.state += 0x9e3779b97f4a7c15
	z := r.state
	z = (z ^ z>>30) * 0xbf58476d1ce4e5b9
	z = (z ^ z>>27) * 0x94d049bb133111eb
	return z ^ z>>31
}

// below is a number from 0 to n-1.
func (r *random) below(n int) int {
	if n <= 1 {
		return 0
	}
	return int(r.next() >> 1 % uint64(n))
}

// candidates is how many starts of a job are looked at where the best of them is wanted.
const candidates = 5

// insert places a job where it costs least: for each of its choices, from a first start
// on, the next few that there are.
func (d *desk) insert(j, first, turn, most int) bool {
	var best spot
	var least Vector
	acts := d.Jobs[j].Activities
	try := func(from int) (start, over int, ok bool) {
		if !d.place(j, from) {
			return 0, 0, false
		}
		if cost := d.cost(); !best.present || cost.Less(least) {
			best, least = d.spot(j), cost
		}
		start, over = d.firstStart(j), d.over(j)
		d.remove(j)
		return start, over, true
	}
	if h := d.home[j]; h.present { // where it was when all began
		if d.putIfFree(j, h); d.present[j] {
			best, least = d.spot(j), d.cost()
			d.remove(j)
		}
	}
	d.each(j, turn, func() {
		from := first
		for range most {
			start, over, ok := try(from)
			if !ok || len(acts) == 0 {
				return
			}
			if over > 0 && most > 1 { // begun later, what is to come soon after is sooner after
				if _, left, ok := try(start + over); !ok || left > 0 {
					try(start + over/2)
				}
			}
			from = start + max(1, d.Jobs[j].Stride)
		}
	})
	if !best.present {
		return false
	}
	if d.Jobs[j].Optional && !least.Less(d.cost()) {
		return false // better left out
	}
	d.put(j, best)
	return true
}

// over is by how much a job's costs for what comes too long after its beginning are more
// than none, at the most.
func (d *desk) over(j int) int {
	most := 0
	for _, i := range d.costs[j] {
		if c := d.Costs[i]; c.Kind == Over {
			most = max(most, d.start[c.B]-d.start[c.A]-c.At)
		}
	}
	return most
}

// tighten begins each job as late as makes nothing else worse.
func (d *desk) tighten() {
	for j := range d.Jobs {
		if !d.present[j] {
			continue
		}
		lo, hi := 0, d.over(j)
		was, cost := d.spot(j), d.cost()
		start := d.firstStart(j)
		for lo < hi { // the greatest shift that helps
			shift := (lo + hi + 1) / 2
			d.remove(j)
			ok := d.place(j, start+shift)
			if ok && d.cost().Less(cost) {
				was, cost, lo = d.spot(j), d.cost(), shift
				continue
			}
			if ok {
				d.remove(j)
			}
			d.put(j, was)
			hi = shift - 1
		}
	}
}

func (d *desk) greedy() bool {
	ok := true
	full := map[int]bool{} // kinds of jobs of which no more fit
	for j, job := range d.Jobs {
		if d.present[j] || job.Alike != 0 && full[job.Alike] {
			continue
		}
		if !d.insert(j, 0, 0, 1) {
			full[job.Alike] = true
			ok = ok && job.Optional
		}
	}
	return ok
}

// Improve betters a schedule, the greedy one or another, by taking jobs out and putting
// them in again, so many times. It is never worse than what it begins with. ok is false
// where a job that is not optional has found no place.
func Improve(p *Problem, begin *Placed, steps int) (s *Placed, ok bool) {
	d := newDesk(p)
	if begin != nil {
		d.begin(begin)
	}
	d.greedy()
	d.improve(steps)
	d.tighten()
	for j, job := range p.Jobs {
		if !job.Optional && !d.present[j] {
			return d.placed(), false
		}
	}
	return d.placed(), true
}

// begin takes over what of a schedule keeps the rules, jobs that have to be there first.
func (d *desk) begin(s *Placed) {
	for _, optional := range []bool{false, true} {
		for j, job := range d.Jobs {
			if j < len(s.Present) && s.Present[j] && job.Optional == optional {
				d.home[j] = d.spotIn(j, s)
				d.putIfFree(j, d.home[j])
			}
		}
	}
}

// putIfFree puts a job where it was in another schedule, if that keeps the rules.
func (d *desk) putIfFree(j int, s spot) {
	job := d.Jobs[j]
	for i, c := range job.Choices {
		if !slices.Contains(d.Choices[c].Options, s.chosen[i]) {
			return
		}
		d.chosen[c] = s.chosen[i]
	}
	for i, a := range job.Activities {
		d.start[a] = s.start[i]
	}
	taken := 0
	ok := true
	for _, a := range job.Activities {
		t := d.start[a]
		for _, l := range d.into[a] {
			lag := d.Lags[l]
			if x := t - d.start[lag.From]; x < lag.Least || x > lag.Most {
				ok = false
			}
		}
		if at, free := d.soonest(a, t); !ok || t < d.Activities[a].Earliest || !free || at != t {
			ok = false
			break
		}
		if back, free := d.takeIfFree(a); back >= 0 || !free {
			ok = false
			break
		}
		taken++
	}
	if ok {
		d.settle(j, true)
		return
	}
	for k := taken - 1; k >= 0; k-- {
		d.takeActivity(job.Activities[k], -1)
	}
}

func (d *desk) spotIn(j int, s *Placed) spot {
	out := spot{present: true}
	for _, a := range d.Jobs[j].Activities {
		out.start = append(out.start, s.Start[a])
	}
	for _, c := range d.Jobs[j].Choices {
		out.chosen = append(out.chosen, s.Chosen[c])
	}
	return out
}

// missing is how many jobs are left out that have to be there. It counts before any cost.
func (d *desk) missing() int {
	n := 0
	for j, job := range d.Jobs {
		if !job.Optional && !d.present[j] {
			n++
		}
	}
	return n
}

func (d *desk) improve(steps int) {
	if len(d.Jobs) == 0 {
		return
	}
	r := &random{state: 1}
	missing, now := d.missing(), d.cost()
	best := d.placed()
	fewest := missing
	head := d.head()
	var out []int
	var was []spot
	for step := range steps {
		// At first all that leaves out no more jobs is as good, so that the search gets about.
		roaming := 10*step < 7*steps
		if 10*step >= 7*steps && 10*(step-1) < 7*steps {
			d.restore(best)
			missing, now = fewest, best.Cost
		}
		out = d.pick(r, out[:0])
		was = was[:0]
		for _, j := range out {
			was = append(was, d.spot(j))
			d.remove(j)
		}
		order := reorder(r, out, was)
		full := map[int]bool{}
		for _, j := range order {
			if a := d.Jobs[j].Alike; a != 0 && full[a] {
				continue
			}
			first, most := 0, candidates
			switch r.below(4) {
			case 0:
				first = r.below(d.Horizon)
			case 1:
				most = 1
			}
			if !d.insert(j, first, r.below(8), most) && first == 0 {
				full[d.Jobs[j].Alike] = true
			}
		}
		m, c := d.missing(), d.cost()
		if m > missing || m == missing && now.Less(c) && !(roaming && !now.headOf(head).Less(c.headOf(head))) {
			for _, j := range out {
				d.remove(j)
			}
			for i, j := range out {
				d.put(j, was[i])
			}
			continue
		}
		missing, now = m, c
		if m < fewest || m == fewest && c.Less(best.Cost) {
			best, fewest = d.placed(), m
		}
	}
	d.restore(best)
}

// restore goes back to a schedule of its own.
func (d *desk) restore(s *Placed) {
	for j := range d.Jobs {
		d.remove(j)
	}
	for j, there := range s.Present {
		if there {
			d.put(j, d.spotIn(j, s))
		}
	}
}

// head is how many levels there are up to the last that counts jobs that are left out.
func (d *desk) head() int {
	n := 0
	for _, c := range d.Costs {
		if c.Kind == Absent {
			n = max(n, c.Level+1)
		}
	}
	return n
}

// headOf is a cost up to a level.
func (v Vector) headOf(levels int) Vector {
	for i := levels; i < len(v); i++ {
		v[i] = 0
	}
	return v
}

// pick picks the jobs of a step: some that lie together in time, or anywhere, and a few of
// those that are left out.
func (d *desk) pick(r *random, out []int) []int {
	var there, left []int
	for j, p := range d.present {
		if p {
			there = append(there, j)
		} else {
			left = append(left, j)
		}
	}
	n := min(len(there), 1+r.below(5))
	if n > 0 && r.below(3) > 0 {
		at := d.firstStart(there[r.below(len(there))])
		slices.SortStableFunc(there, func(a, b int) int { return abs(d.firstStart(a)-at) - abs(d.firstStart(b)-at) })
		out = append(out, there[:n]...)
	} else {
		for range n {
			i := r.below(len(there))
			out = append(out, there[i])
			there = slices.Delete(there, i, i+1)
		}
	}
	seen := map[int]bool{}
	for _, j := range left { // one of each kind, and a few besides
		if a := d.Jobs[j].Alike; a == 0 || !seen[a] || r.below(4) == 0 {
			seen[a] = true
			out = append(out, j)
		}
	}
	return out
}

// reorder is the order in which jobs are put in again.
func reorder(r *random, out []int, was []spot) []int {
	order := slices.Clone(out)
	for i := len(order) - 1; i > 0; i-- {
		k := r.below(i + 1)
		order[i], order[k] = order[k], order[i]
	}
	if r.below(3) == 0 { // those that were left out come first
		there := map[int]bool{}
		for i, j := range out {
			there[j] = was[i].present
		}
		slices.SortStableFunc(order, func(a, b int) int {
			switch {
			case there[a] == there[b]:
				return 0
			case there[b]:
				return -1
			}
			return 1
		})
	}
	return order
}

func (d *desk) firstStart(j int) int {
	if acts := d.Jobs[j].Activities; len(acts) > 0 {
		return d.start[acts[0]]
	}
	return 0
}

func abs(n int) int {
	if n < 0 {
		return -n
	}
	return n
}
