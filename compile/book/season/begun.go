package season

import (
	"slices"

	"newmake/compile/book/season/search"
	"newmake/lang/record"
)

// runs finds those of the season's plant that were begun, and gives the first day that
// matters.
func (s *solver) runs() record.Date {
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
