package season

import (
	"math"
	"slices"

	"newmake/compile/book/season/search"
)

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

// printedUses says that a run of the printed plan is in a vessel or a tank.
func printedUses(r *Run, name string) bool {
	return slices.ContainsFunc(r.Tasks, func(t Task) bool { return t.Vessel == name }) || slices.Contains(r.Tanks, name)
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
