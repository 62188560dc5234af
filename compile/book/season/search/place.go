package search

import "slices"

// desk is a schedule in the making: what is placed, and what is free.
type desk struct {
	*Problem
	free    []*profile
	start   []int
	chosen  []int
	present []bool
	into    [][]int // lags, by the activity that they lead to
	costs   [][]int // costs of each job
	costOf  []Vector
	total   Vector // without Makespan and Unfed
	longest []Cost // costs of the end of what ends last
	unfed   []Cost // costs of what finds no source
	jobOf   []int  // of each activity
	lowest  []int  // work space: the least start of each activity while its job is placed
	holdsAt [][]int
	home    []spot // of each job: where it was in the schedule that was begun with
}

func newDesk(p *Problem) *desk {
	d := &desk{
		Problem: p, start: make([]int, len(p.Activities)), chosen: make([]int, len(p.Choices)), present: make([]bool, len(p.Jobs)),
		into: make([][]int, len(p.Activities)), costs: make([][]int, len(p.Jobs)), costOf: make([]Vector, len(p.Jobs)), lowest: make([]int, len(p.Activities)),
		holdsAt: make([][]int, len(p.Activities)), home: make([]spot, len(p.Jobs)),
	}
	for _, r := range p.Resources {
		d.free = append(d.free, newProfile(r))
	}
	for i, l := range p.Lags {
		d.into[l.To] = append(d.into[l.To], i)
	}
	d.jobOf = make([]int, len(p.Activities))
	order := make([]int, len(p.Activities))
	for j, job := range p.Jobs {
		for i, a := range job.Activities {
			d.jobOf[a], order[a] = j, i
		}
	}
	for i, h := range p.Holds { // a hold is known when the later of its ends is
		last := h.To
		if order[h.From] > order[h.To] {
			last = h.From
		}
		d.holdsAt[last] = append(d.holdsAt[last], i)
	}
	for i, c := range p.Costs {
		switch c.Kind {
		case Absent, Elsewhere:
			d.costs[c.Job] = append(d.costs[c.Job], i)
		case Makespan:
			d.longest = append(d.longest, c)
		case Unfed:
			d.unfed = append(d.unfed, c)
		default:
			d.costs[d.jobOf[c.A]] = append(d.costs[d.jobOf[c.A]], i)
		}
	}
	for j := range p.Jobs {
		d.costOf[j] = d.jobCost(j)
		d.total = d.total.plus(d.costOf[j])
	}
	return d
}

// jobCost is what a job comes to as it is placed, or left out.
func (d *desk) jobCost(j int) Vector {
	var v Vector
	for _, c := range d.costs[j] {
		v[d.Costs[c].Level] += d.priced(&d.Costs[c], d.present[j], d.start, d.chosen)
	}
	return v
}

// cost is what the schedule comes to.
func (d *desk) cost() Vector {
	v := d.total
	if len(d.longest) > 0 {
		end := 0
		for j, job := range d.Jobs {
			if d.present[j] {
				for _, a := range job.Activities {
					end = max(end, d.start[a]+d.Activities[a].Duration)
				}
			}
		}
		for _, c := range d.longest {
			v[c.Level] += c.Weight * int64(end)
		}
	}
	for _, c := range d.unfed {
		if d.present[d.jobOf[c.A]] && !d.fed(d.start[c.A], c.At, d.there, d.start) {
			v[c.Level] += c.Weight
		}
	}
	return v
}

// there says that the job of an activity is placed.
func (d *desk) there(a int) bool { return d.present[d.jobOf[a]] }

func (d *desk) placed() *Placed {
	return &Placed{append([]bool(nil), d.present...), append([]int(nil), d.start...), append([]int(nil), d.chosen...), d.cost()}
}

// takeActivity takes what an activity uses where it stands, or gives it back.
func (d *desk) takeActivity(a, sign int) {
	s := d.start[a]
	for _, u := range d.Activities[a].Uses {
		d.free[resource(u.Of, d.chosen)].take(s+u.From, s+u.To, sign*u.Amount)
	}
	for _, i := range d.holdsAt[a] {
		h := d.Holds[i]
		d.free[resource(h.Of, d.chosen)].take(d.start[h.From]+h.FromTime, d.start[h.To]+h.ToTime, sign*h.Amount)
	}
}

// settle counts a job as placed.
func (d *desk) settle(j int, present bool) {
	d.present[j] = present
	d.total = d.total.minus(d.costOf[j])
	d.costOf[j] = d.jobCost(j)
	d.total = d.total.plus(d.costOf[j])
}

// remove takes a job out.
func (d *desk) remove(j int) {
	if !d.present[j] {
		return
	}
	for _, a := range d.Jobs[j].Activities {
		d.takeActivity(a, -1)
	}
	d.settle(j, false)
}

// spot is where a job was.
type spot struct {
	present bool
	start   []int
	chosen  []int
}

func (d *desk) spot(j int) spot {
	s := spot{present: d.present[j]}
	for _, a := range d.Jobs[j].Activities {
		s.start = append(s.start, d.start[a])
	}
	for _, c := range d.Jobs[j].Choices {
		s.chosen = append(s.chosen, d.chosen[c])
	}
	return s
}

// put puts a job back where it was; nothing may be there.
func (d *desk) put(j int, s spot) {
	if !s.present {
		d.settle(j, false)
		return
	}
	for i, c := range d.Jobs[j].Choices {
		d.chosen[c] = s.chosen[i]
	}
	for i, a := range d.Jobs[j].Activities {
		d.start[a] = s.start[i]
	}
	for _, a := range d.Jobs[j].Activities {
		d.takeActivity(a, 1)
	}
	d.settle(j, true)
}

// soonest is the first start of an activity not before t that its calendars and what is
// free allow.
func (d *desk) soonest(a, t int) (int, bool) {
	act, latest := &d.Activities[a], d.latest(a)
	for moved := true; moved; {
		moved = false
		for _, w := range act.Within {
			at, ok := fitting(d.Calendars[w.Calendar], t, w)
			if !ok {
				return 0, false
			}
			if at > t {
				t, moved = at, true
			}
		}
		if t > latest {
			return 0, false
		}
		for _, u := range act.Uses {
			b, ok := d.free[resource(u.Of, d.chosen)].blocked(t+u.From, t+u.To, u.Amount)
			if !ok {
				t, moved = b.Close-u.From, true
				if t > latest {
					return 0, false
				}
			}
		}
	}
	return t, true
}

// mostTries bounds the ways in which one job is tried to be placed from one start: one
// activity after the other is moved on until all of them fit.
const mostTries = 400

// place places a job, none of whose activities starts before its own least, with the
// choices as they stand. What it places ends as soon as it can. The job counts as placed
// where it gives true; else nothing is changed.
func (d *desk) place(j int, first int) bool {
	acts := d.Jobs[j].Activities
	for _, a := range acts {
		d.lowest[a] = d.Activities[a].Earliest
	}
	if len(acts) > 0 {
		d.lowest[acts[0]] = max(d.lowest[acts[0]], first)
	}
	index := func(a int) int {
		for i, b := range acts {
			if a == b {
				return i
			}
		}
		return -1
	}
	tries := 0
	for i := 0; i < len(acts); {
		a := acts[i]
		back := -1 // the activity from which on all is placed anew
		t := d.lowest[a]
		for _, l := range d.into[a] {
			t = max(t, d.start[d.Lags[l].From]+d.Lags[l].Least)
		}
		t, ok := d.soonest(a, t)
		took := false
		if ok {
			d.start[a] = t
			for _, l := range d.into[a] {
				lag := d.Lags[l]
				if t > d.start[lag.From]+lag.Most {
					d.lowest[lag.From] = t - lag.Most
					back = lag.From
					break
				}
			}
			if back < 0 {
				took = true
				back, ok = d.takeIfFree(a)
			}
		}
		if tries++; !ok || tries > mostTries {
			if took && back < 0 && ok {
				i++ // it stands already
			}
			for k := i - 1; k >= 0; k-- {
				d.takeActivity(acts[k], -1)
			}
			return false
		}
		if back < 0 {
			i++
			continue
		}
		to := index(back)
		for k := i - 1; k >= to; k-- {
			d.takeActivity(acts[k], -1)
		}
		i = to
	}
	d.settle(j, true)
	return true
}

// takeIfFree takes what an activity uses, where that is free beside its own and what its
// job has taken. Else it takes nothing, and gives the activity that has to start later,
// whose least start it has set; ok is false where that does not help.
func (d *desk) takeIfFree(a int) (back int, ok bool) {
	s := d.start[a]
	for _, u := range d.Activities[a].Uses {
		d.free[resource(u.Of, d.chosen)].take(s+u.From, s+u.To, u.Amount)
	}
	for n, i := range d.holdsAt[a] {
		h := d.Holds[i]
		f := d.free[resource(h.Of, d.chosen)]
		from, to := d.start[h.From]+h.FromTime, d.start[h.To]+h.ToTime
		b, free := f.blocked(from, to, h.Amount)
		if free {
			f.take(from, to, h.Amount)
			continue
		}
		for _, i := range d.holdsAt[a][:n] {
			h := d.Holds[i]
			d.free[resource(h.Of, d.chosen)].take(d.start[h.From]+h.FromTime, d.start[h.To]+h.ToTime, -h.Amount)
		}
		for _, u := range d.Activities[a].Uses {
			d.free[resource(u.Of, d.chosen)].take(s+u.From, s+u.To, -u.Amount)
		}
		if b.Close >= never {
			return -1, false
		}
		d.lowest[h.From] = max(b.Close-h.FromTime, d.lowest[h.From]+1)
		return h.From, true
	}
	return -1, true
}

// mostCombinations bounds the choices of one job that are tried together.
const mostCombinations = 24

// each calls f with each combination of a job's choices, set. Of options that are free at
// the same times one is enough.
func (d *desk) each(j int, turn int, f func()) {
	choices := d.Jobs[j].Choices
	options := make([][]int, len(choices))
	n := 1
	for i, c := range choices {
		for k := range d.Choices[c].Options {
			o := d.Choices[c].Options[(k+turn)%len(d.Choices[c].Options)]
			if !slices.ContainsFunc(options[i], func(x int) bool { return d.free[x].equal(d.free[o]) }) {
				options[i] = append(options[i], o)
			}
		}
		n *= len(options[i])
	}
	for k := range min(n, mostCombinations) {
		x := k
		for i, c := range choices {
			d.chosen[c] = options[i][x%len(options[i])]
			x /= len(options[i])
		}
		f()
	}
}
