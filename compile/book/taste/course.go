package taste

import (
	"slices"

	"newmake/lang/tree"
)

// Course is one cask, run or bottling over the days on which it was tasted.
type Course struct {
	Of     string  `json:"of"`
	Kind   string  `json:"kind"`
	Batch  string  `json:"batch,omitempty"`
	Run    string  `json:"run,omitempty"`
	Filled string  `json:"filled,omitempty"` // the date, of a cask
	Scales []Scale `json:"scales"`           // what was scored, in the order of the text
	Days   []Day   `json:"days"`
}

// Scale is a look that was scored, and the ends of its scale.
type Scale struct {
	What string  `json:"what"`
	Low  float64 `json:"low"`
	High float64 `json:"high"`
}

// Day is one day of a course.
type Day struct {
	On       string     `json:"date"`
	AgeYears *float64   `json:"ageYears,omitempty"` // in wood
	Nosed    string     `json:"nosed,omitempty"`
	Tasters  int        `json:"tasters"`
	Means    []*float64 `json:"means"`  // a place a scale; null where nothing was scored
	Aromas   []string   `json:"aromas"` // words of the vocabulary, each once
	Words    []string   `json:"words"`  // looks, as they were written
	Verdicts []string   `json:"verdicts"`
}

// courses puts the rows of each sample side by side, day by day. A cask that was filled
// anew is another.
func (f *Found) courses() {
	type head struct{ of, run string }
	at := map[head]int{}
	for _, r := range f.Rows {
		h := head{r.Of, r.Run}
		i, is := at[h]
		if !is {
			i, at[h] = len(f.Courses), len(f.Courses)
			f.Courses = append(f.Courses, Course{Of: r.Of, Kind: r.Kind, Batch: r.Batch, Run: r.Run, Filled: r.Filled, Scales: []Scale{}})
		}
		if s := (Scale{r.What, r.Low, r.High}); r.Score != nil && !slices.ContainsFunc(f.Courses[i].Scales, s.is) {
			f.Courses[i].Scales = append(f.Courses[i].Scales, s)
		}
	}
	for i := range f.Courses {
		c := &f.Courses[i]
		var rows []Row
		for _, r := range f.Rows {
			if at[head{r.Of, r.Run}] == i {
				rows = append(rows, r)
			}
		}
		for len(rows) > 0 {
			n := 1
			for n < len(rows) && rows[n].On == rows[0].On {
				n++
			}
			c.Days = append(c.Days, c.day(rows[:n]))
			rows = rows[n:]
		}
	}
}

func (s Scale) is(o Scale) bool {
	return tree.Key(s.What) == tree.Key(o.What) && s.Low == o.Low && s.High == o.High
}

// day is what was said on one day.
func (c *Course) day(rows []Row) Day {
	d := Day{On: rows[0].On, AgeYears: rows[0].AgeYears, Nosed: rows[0].Nosed, Means: make([]*float64, len(c.Scales)), Aromas: []string{}, Words: []string{}, Verdicts: []string{}}
	n, tasters := make([]int, len(c.Scales)), map[string]bool{}
	for _, r := range rows {
		tasters[tree.Key(r.By)] = true
		for _, a := range r.Aromas {
			if !slices.Contains(d.Aromas, a) {
				d.Aromas = append(d.Aromas, a)
			}
		}
		switch {
		case r.What == verdict:
			d.Verdicts = append(d.Verdicts, r.Words)
		case r.Words != "":
			d.Words = append(d.Words, r.Words)
		}
		if r.Score == nil {
			continue
		}
		i := slices.IndexFunc(c.Scales, Scale{r.What, r.Low, r.High}.is)
		n[i]++
		mean := *r.Score
		if d.Means[i] != nil {
			mean = *d.Means[i] + (mean-*d.Means[i])/float64(n[i])
		}
		d.Means[i] = &mean
	}
	d.Tasters = len(tasters)
	return d
}
