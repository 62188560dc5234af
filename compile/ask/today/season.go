package today

import (
	"slices"

	"newmake/compile/ask/weeks"
	"newmake/compile/book/season"
	"newmake/compile/front"
	"newmake/lang/record"
	asked "newmake/lang/season"
)

// Season is what a season of the house has on the day.
type Season struct {
	Name   string           `json:"name"`
	Jobs   []weeks.Job      `json:"jobs"` // by the hour at which they begin
	Stands []weeks.Standing `json:"stands"`
}

// inSeason reports whether a season has something to do.
func (a *Answer) inSeason() bool {
	for _, s := range a.Seasons {
		if len(s.Jobs) > 0 {
			return true
		}
	}
	return false
}

// told is what the seasons of a day tell.
type told struct {
	batches map[string][]*asked.Season // those that plan a batch
	runs    map[string]bool            // by number, of those that were begun
}

// has says that a season plans a batch in the weeks in which it starts.
func (t told) has(batch string, start record.Date) bool {
	return slices.ContainsFunc(t.batches[batch], func(s *asked.Season) bool { return s.Has(start) })
}

// seasons adds what the seasons have on the day that it is of, or that it follows while
// the last of their runs are distilled and filled. The plan is that of `newmake season`:
// the whole of it, with what was begun as it was.
func (a *Answer) seasons(src *front.Source, on record.Date) told {
	t := told{map[string][]*asked.Season{}, map[string]bool{}}
	for _, name := range src.House.SeasonNames() {
		asks, _ := src.House.Season(name)
		if asks == nil || on.Compare(asks.From) < 0 && on.DaysTo(asks.From) > longest || on.Compare(asks.To.After(longest)) > 0 {
			continue
		}
		s, _, err := weeks.Of(src, weeks.Question{Name: name, Quick: true, NoStore: true})
		if err != nil || s == nil {
			a.Unread = append(a.Unread, "season "+name)
			continue
		}
		for _, r := range s.Runs {
			if r.Done {
				t.runs[r.Number] = true
			}
		}
		for _, batch := range asks.Batches() {
			if !slices.ContainsFunc(s.LeftOut, func(l season.LeftOut) bool { return l.Batch == batch }) {
				t.batches[batch] = append(t.batches[batch], asks)
			}
		}
		d := Season{Name: name, Jobs: weeks.Jobs(s, on.String()), Stands: weeks.Stands(s, on.String())}
		if len(d.Jobs)+len(d.Stands) > 0 {
			a.Seasons = append(a.Seasons, d)
		}
		a.nextIn(s, on)
	}
	return t
}

// nextIn keeps the first day with work of a season after the day asked for.
func (a *Answer) nextIn(s *season.Season, on record.Date) {
	for _, r := range s.Runs {
		for _, st := range weeks.Stages(r) {
			for _, t := range st.Tasks {
				if date := t.Start[:min(len(t.Start), 10)]; date > on.String() && t.People > 0 {
					a.next(date, r.Batch)
				}
			}
		}
	}
}
