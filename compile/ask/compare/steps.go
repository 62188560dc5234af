package compare

import (
	"strings"

	"newmake/lang/recipe"
)

// namedStep is a step of the mash with its grains by name.
type namedStep struct {
	recipe.MashStep
	grains []string
}

func named(b *recipe.Batch) []namedStep {
	out := make([]namedStep, len(b.Mash.Steps))
	for i, s := range b.Mash.Steps {
		out[i].MashStep = s
		for _, g := range s.Grains {
			out[i].grains = append(out[i].grains, b.Bill.Lines[g].Grain.Name)
		}
	}
	return out
}

// stepMix is the mash between old and new.
type stepMix struct {
	old, new []namedStep
	slots    []slot
	places   map[string]place // where each grain goes in
}

// slot is a step of the one, of the other, or the same of both.
type slot struct {
	pair
	edit    int          // of a step that only one has; -1 if none
	changes []stepChange // of a step that both have
}

type stepChange struct {
	edit int
	set  func(to *recipe.MashStep, from recipe.MashStep)
}

// place is the slot at which a grain goes in; -1 where it does not.
type place struct {
	old, new int
	edit     int // that moves it; -1 if it stays, or is in one of the bills alone
}

// findSteps finds the edits of the mash. An `add` is no edit of its own: where a
// grain goes in belongs to the grain when only one of the bills has it, and is a
// move when both have.
func (d *Difference) findSteps() {
	m := &d.steps
	m.old, m.new = named(d.Old), named(d.New)
	both := func(g string) bool {
		_, o := d.bill.old[g]
		_, n := d.bill.new[g]
		return o && n
	}
	for _, p := range align(m.old, m.new, both) {
		s := slot{pair: p, edit: -1}
		if p.old >= 0 && p.new >= 0 {
			s.changes = d.stepChanges(m.old[p.old], m.new[p.new])
		}
		m.slots = append(m.slots, s)
	}
	d.movedGrains(both)
	d.lone()
}

// movedGrains finds the grains that go in at another step.
func (d *Difference) movedGrains(both func(string) bool) {
	m := &d.steps
	m.places = map[string]place{}
	for i, s := range m.slots {
		if s.old >= 0 {
			for _, g := range m.old[s.old].grains {
				m.places[g] = place{i, -1, -1}
			}
		}
	}
	for i, s := range m.slots {
		if s.new >= 0 {
			for _, g := range m.new[s.new].grains {
				p, ok := m.places[g]
				if !ok {
					p.old, p.edit = -1, -1
				}
				p.new = i
				m.places[g] = p
			}
		}
	}
	type move struct{ from, to int }
	moves := map[move]int{}
	for _, g := range d.bill.order {
		p, ok := m.places[g]
		if !ok || !both(g) || p.old == p.new {
			continue
		}
		k := move{p.old, p.new}
		e, ok := moves[k]
		if !ok {
			e = d.add(Edit{Part: OfMash, Kind: Moved, Path: recipe.PathMash, Counts: true, Lines: []Line{{Name: "add", Old: d.around(p.old), New: d.around(p.new)}}})
			moves[k] = e
		}
		d.Edits[e].What = strings.TrimPrefix(d.Edits[e].What+", "+g, ", ")
		p.edit = e
		m.places[g] = p
	}
	for k, e := range moves {
		switch {
		case k.from < 0:
			d.Edits[e].What += " now goes in"
		case k.to < 0:
			d.Edits[e].What += " no longer goes in"
		case k.to < k.from:
			d.Edits[e].What += " in earlier"
		default:
			d.Edits[e].What += " in later"
		}
	}
}

// around says where in the mash a slot stands: after which step.
func (d *Difference) around(i int) string {
	m := &d.steps
	if i < 0 {
		return ""
	}
	for j := i - 1; j >= 0; j-- {
		s := m.slots[j]
		switch {
		case m.slots[i].new >= 0 && s.new >= 0:
			return "after " + d.say.stepText(m.new[s.new])
		case m.slots[i].new < 0 && s.old >= 0:
			return "after " + d.say.stepText(m.old[s.old])
		}
	}
	return "first"
}

// lone finds the steps that only one of the mashes has. One that is taken out
// here and put in there is moved.
func (d *Difference) lone() {
	m := &d.steps
	for i := range m.slots {
		s := &m.slots[i]
		if s.edit >= 0 || s.old >= 0 && s.new >= 0 || m.verb(*s) == recipe.MashAdd {
			continue
		}
		if j := m.elsewhere(i); j >= 0 {
			gone, come := i, j
			if s.new >= 0 {
				gone, come = j, i
			}
			to := m.new[m.slots[come].new]
			e := d.add(Edit{Part: OfMash, Kind: Moved, Path: to.Path, Counts: true, What: subject(to) + " moved",
				Lines: []Line{{Name: d.say.stepText(to), Old: d.around(gone), New: d.around(come)}}})
			s.edit, m.slots[j].edit = e, e
			continue
		}
		if s.new >= 0 {
			step := m.new[s.new]
			s.edit = d.add(Edit{Part: OfMash, Kind: Added, Path: step.Path, Counts: true, What: d.say.stepText(step) + " added",
				Lines: []Line{{Name: subject(step), New: d.say.stepText(step)}}})
		} else {
			step := m.old[s.old]
			s.edit = d.add(Edit{Part: OfMash, Kind: Removed, Path: step.Path, Counts: true, What: d.say.stepText(step) + " left out",
				Lines: []Line{{Name: subject(step), Old: d.say.stepText(step)}}})
		}
	}
}

func (m *stepMix) verb(s slot) recipe.MashVerb {
	if s.old >= 0 {
		return m.old[s.old].Verb
	}
	return m.new[s.new].Verb
}

// elsewhere finds the same thing put in at another place. A rest or a heat-up
// has nothing that would make it the same.
func (m *stepMix) elsewhere(i int) int {
	s := m.slots[i]
	switch m.verb(s) {
	case recipe.MashDose, recipe.MashWater, recipe.MashBackset, recipe.MashSparge:
	default:
		return -1
	}
	for j := i + 1; j < len(m.slots); j++ {
		o := m.slots[j]
		if o.edit >= 0 || (o.old >= 0) == (s.old >= 0) || (o.new >= 0) == (s.new >= 0) {
			continue
		}
		a, b := s, o
		if a.old < 0 {
			a, b = b, a
		}
		if apart(m.old[a.old], m.new[b.new], func(string) bool { return true }) == 0 {
			return j
		}
	}
	return -1
}

func (m *stepMix) renumber(to []int) {
	for i := range m.slots {
		s := &m.slots[i]
		s.edit = at(to, s.edit)
		for j := range s.changes {
			s.changes[j].edit = to[s.changes[j].edit]
		}
	}
	for g, p := range m.places {
		p.edit = at(to, p.edit)
		m.places[g] = p
	}
}

// mix is the steps with some of the edits made, for a bill with some made.
func (m *stepMix) mix(on []bool, bill recipe.Bill) []recipe.MashStep {
	grains := make([][]int, len(m.slots))
	for i, l := range bill.Lines {
		p, ok := m.places[l.Grain.Name]
		if !ok {
			continue
		}
		at := p.old
		if p.old < 0 && p.edit < 0 || p.edit >= 0 && on[p.edit] {
			at = p.new
		}
		if at >= 0 {
			grains[at] = append(grains[at], i)
		}
	}
	out := make([]recipe.MashStep, 0, len(m.slots))
	for i, s := range m.slots {
		var step recipe.MashStep
		switch {
		case s.old >= 0:
			step = m.old[s.old].MashStep
		default:
			step = m.new[s.new].MashStep
		}
		if step.Verb == recipe.MashAdd {
			if step.Grains = grains[i]; len(step.Grains) > 0 {
				out = append(out, step)
			}
			continue
		}
		if s.edit >= 0 && on[s.edit] != (s.new >= 0) {
			continue // taken out, or not yet put in
		}
		for _, c := range s.changes {
			if on[c.edit] {
				c.set(&step, m.new[s.new].MashStep)
			}
		}
		out = append(out, step)
	}
	return out
}
