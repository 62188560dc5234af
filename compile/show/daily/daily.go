// Package daily shows what is to be done in a house on a day.
package daily

import (
	"fmt"
	"io"
	"slices"
	"strings"

	"newmake/compile/ask/today"
	"newmake/compile/measure"
	"newmake/compile/plan"
	"newmake/compile/show/columns"
	"newmake/compile/show/text"
	"newmake/compile/show/weeks"
	"newmake/lang/diag"
	"newmake/lang/words"
)

// The columns of a step: its clock, what it is, and what should then be read.
const (
	titleCol = 9
	readCol  = 36
)

// Text writes an answer for a terminal of 80 columns.
func Text(w io.Writer, a *today.Answer, bold bool) error {
	p := &page{columns.Writer{Bold: bold}}
	p.Strong(longDate(a.Date))
	for _, w := range a.Work {
		p.work(w)
	}
	jobs := p.seasons(a)
	p.casks(a)
	switch {
	case jobs:
	case len(a.Work) == 0 && a.Casks.Any():
		if a.Next != nil {
			p.Gap()
			p.Para(2, 4, fmt.Sprintf("No batch wants work. Next is %s, on %s.", diag.Safe(a.Next.Batch), longDate(a.Next.Date)))
		}
	case len(a.Work) == 0 && len(a.Late) > 0:
	case len(a.Work) == 0 && a.Next != nil:
		p.Para(2, 4, fmt.Sprintf("Nothing is to be done. Next is %s, on %s.", diag.Safe(a.Next.Batch), longDate(a.Next.Date)))
	case len(a.Work) == 0:
		p.Para(2, 4, "Nothing is to be done, on this day or later.")
	}
	for i, l := range a.Late {
		if i == 0 && (len(a.Work) > 0 || jobs || a.Casks.Any()) {
			p.Gap()
		}
		p.Para(2, 4, fmt.Sprintf("Run %s of %s: %s was planned for %s, and its record has nothing of it yet.", diag.Safe(l.Run), diag.Safe(l.Batch),
			map[string]string{"strip": "the stripping run", "spirit": "the spirit run"}[l.Stage], longDate(l.Planned)))
	}
	if len(a.Unread) > 0 {
		p.Gap()
		p.Para(2, 4, fmt.Sprintf("Not planned, for they cannot be read: %s. newmake check says why.", diag.Safe(strings.Join(a.Unread, ", "))))
	}
	if len(a.Work) > 0 || jobs {
		p.Gap()
		p.Para(2, 4, text.SafetyLine)
	}
	_, err := io.WriteString(w, p.String())
	return err
}

type page struct{ columns.Writer }

// seasons writes what the seasons plan for the day, and reports whether any of it is work
// for people.
func (p *page) seasons(a *today.Answer) (jobs bool) {
	for _, s := range a.Seasons {
		p.Heading("season " + diag.Safe(s.Name))
		for _, j := range s.Jobs {
			jobs = true
			line := weeks.JobName(j)
			if j.Vessel != "" {
				line += ", " + diag.Safe(j.Vessel)
			}
			line += ", " + words.CountOf(j.People, "person", "people")
			if j.OutOfShift {
				line += ", out of the shift"
			}
			if j.Conflict {
				line = "! " + line
			}
			p.Item("  "+measure.Clock(j.From)+" to "+measure.Clock(j.To), 18, line)
		}
		var all []string
		for _, x := range s.Stands {
			if x.Batch == "" {
				all = append(all, diag.Safe(x.Vessel)+" out of use")
				continue
			}
			all = append(all, fmt.Sprintf("%s %s, run %s", diag.Safe(x.Vessel), diag.Safe(x.Batch), diag.Safe(x.Run)))
		}
		if len(all) > 0 {
			p.Item("  stands", 18, strings.Join(all, "; "))
		}
	}
	return jobs
}

// longDate is a day at length.
func longDate(date string) string { return measure.LongDate(date + "T00:00:00Z") }

// shown is how many casks of one sort are named at most.
const shown = 24

// casks names the casks that need somebody, the leaking ones first. Casks of one fill that
// need the same are put together.
func (p *page) casks(a *today.Answer) {
	u := measure.US
	if a.Casks.Units == "si" {
		u = measure.SI
	}
	if a.Casks.Any() {
		p.Heading("CASKS")
	}
	for _, g := range []struct {
		head string
		all  []today.Cask
		do   string
		say  func(c today.Cask) string
	}{
		{"! leaks?", a.Casks.Leaks, "look at hoops, staves and bung", func(c today.Cask) string {
			return fmt.Sprintf("%s more gone than of its like since %s", u.Mass(c.Kg), c.Since)
		}},
		{"sample", a.Casks.Sample, "", func(c today.Cask) string {
			if c.Since == a.Date {
				return "due today"
			}
			return "due since " + c.Since
		}},
		{"rest over", a.Casks.Over, "taste it, and bottle or say how long", func(c today.Cask) string { return "since " + c.Since }},
	} {
		head := "  " + g.head
		for _, of := range together(g.all[:min(len(g.all), shown)], g.say) {
			p.Item(head, 14, diag.Safe(of.words(g.do)))
			head = ""
		}
		if more := len(g.all) - shown; more > 0 {
			p.Item("", 14, fmt.Sprintf("and %d more: newmake cellar --on %s", more, a.Date))
		}
	}
}

// alike are casks of one fill that need the same.
type alike struct {
	said  string
	casks []today.Cask
}

// together groups casks that are alike, in the order of the first of each group.
func together(all []today.Cask, say func(today.Cask) string) []alike {
	var out []alike
	for _, c := range all {
		said := say(c)
		i := slices.IndexFunc(out, func(a alike) bool {
			return a.said == said && a.casks[0].Batch == c.Batch && a.casks[0].Filled == c.Filled
		})
		if i < 0 {
			i, out = len(out), append(out, alike{said: said})
		}
		out[i].casks = append(out[i].casks, c)
	}
	return out
}

// words describe a cask and what to do with it. For several, what they share is written
// once, and then each with its place.
func (a alike) words(do string) string {
	first := a.casks[0]
	if len(a.casks) == 1 {
		where := ""
		if first.Place != "" {
			where = ", " + first.Place
		}
		if do != "" {
			do = ": " + do
		}
		return fmt.Sprintf("%s (%s, filled %s%s): %s%s", first.Serial, first.Batch, first.Filled, where, a.said, do)
	}
	house, _, _ := strings.Cut(first.Place, ", ")
	for _, c := range a.casks {
		if at, _, _ := strings.Cut(c.Place, ", "); at != house {
			house = ""
		}
	}
	var each []string
	for _, c := range a.casks {
		place := strings.TrimPrefix(c.Place, house)
		if place = strings.TrimPrefix(place, ", "); place != "" {
			place = " (" + place + ")"
		}
		each = append(each, c.Serial+place)
	}
	if house != "" {
		house = ", " + house
	}
	if do != "" {
		do = "; of each, " + do
	}
	return fmt.Sprintf("%d casks (%s, filled %s%s): %s: %s%s", len(a.casks), first.Batch, first.Filled, house, a.said, strings.Join(each, "; "), do)
}

func (p *page) work(w today.Work) {
	u := measure.US
	if w.Units == "si" {
		u = measure.SI
	}
	name := diag.Safe(w.Batch)
	if w.Run != "" {
		name += ", run " + diag.Safe(w.Run)
	}
	until := measure.Clock(w.Day.To)
	if !measure.SameDay(w.Day.From, w.Day.To) {
		until += " the next day"
	}
	people := "1 person"
	if w.Day.People > 1 {
		people = fmt.Sprintf("%d people", w.Day.People)
	}
	p.Heading(name)
	p.Para(2, 4, fmt.Sprintf("%s, %s to %s, %s", words.And(w.Day.Work), measure.Clock(w.Day.From), until, people))
	var dangers []string
	for _, c := range w.Cautions {
		dangers = append(dangers, diag.Safe(c.Title))
	}
	if len(dangers) > 0 {
		p.Para(2, 4, "! "+strings.Join(dangers, "; "))
	}
	p.Gap()
	p.Line(columns.Fill("  from", titleCol) + columns.Fill("", readCol-titleCol) + "at its end")
	for _, s := range w.Steps {
		p.step(u, s)
	}
}

// step is a line with what should be read at its end.
func (p *page) step(u measure.Units, s plan.Step) {
	var end []string
	for _, r := range s.Read {
		if r.At == "" || r.At == s.End {
			end = append(end, diag.Safe(r.What)+" "+strings.TrimPrefix(u.Brief(r.Should), r.What+" "))
		}
	}
	if strings.HasSuffix(s.ID, ".collect") && len(end) > 0 { // its title is its beginning
		end[0] = "till " + measure.Clock(s.End) + ": " + end[0]
	}
	if s.Attend == plan.Alone {
		end = []string{"goes alone"}
	}
	head := columns.Fill("  "+measure.Clock(s.Start), titleCol) + columns.Cut(diag.Safe(u.BriefPhrase(s.Title)), readCol-titleCol-1)
	p.Item(head, readCol, strings.Join(end, ", "))
}
