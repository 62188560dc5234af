// Package text shows a plan as text for a terminal of 80 columns. It formats and
// converts units for display; it computes nothing, and knows nothing of recipes or
// models.
package text

import (
	"io"

	"newmake/compile/measure"
	"newmake/compile/plan"
	"newmake/compile/show/columns"
)

// Options is how a plan is shown.
type Options struct {
	Units measure.Units
	Bold  bool // headings in bold
	// Days and Part leave out all else: the days of the plan (2026-03-03), or one of
	// Parts.
	Days []string
	Part string
}

// Write writes the plan as a run sheet in text: what it is, what to weigh out,
// what to expect, what to do and read hour by hour, and what to look out for.
func Write(w io.Writer, p *plan.Plan, o Options) error {
	t := text{page: page{Bold: o.Bold}, Units: o.Units, p: p, clock: newClock(p)}
	switch {
	case len(o.Days) > 0:
		t.days(o.Days)
	case o.Part != "":
		t.part(o.Part)
	default:
		t.whole()
	}
	_, err := io.WriteString(w, t.String())
	return err
}

func (t *text) whole() {
	t.header()
	t.bill()
	t.mash()
	t.ferment()
	t.strip()
	t.spirit()
	t.congeners()
	t.cask()
	t.tanks()
	t.yield()
	t.cost()
	t.law()
	t.promises()
	t.sure()
	t.sheet(t.p.Schedule.Steps)
	t.notices()
	t.cautions(t.p.Cautions)
	t.forecast()
	t.version()
}

// text is a page that knows the plan it shows.
type text struct {
	page
	measure.Units
	p     *plan.Plan
	clock clock
}

// page is text of the width of a page.
type page = columns.Writer

// clock reads the plan's times. They are written with the plant's own offset,
// so no time zone is needed to show them.
type clock struct {
	starts map[string]string // by step
	first  string
}

func newClock(p *plan.Plan) clock {
	c := clock{starts: map[string]string{}, first: p.Schedule.Start}
	for _, s := range p.Schedule.Steps {
		c.starts[s.ID] = s.Start
	}
	return c
}

// start is when a step begins, as 15:04, with the day if it is not the first;
// empty if there is none of that name.
func (c clock) start(id string) string {
	s, ok := c.starts[id]
	switch {
	case !ok:
		return ""
	case measure.SameDay(s, c.first):
		return measure.Clock(s)
	default:
		return measure.DayAndClock(s)
	}
}
