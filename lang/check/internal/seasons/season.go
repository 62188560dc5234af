// Package seasons reads what seasons ask of a plant.
package seasons

import (
	"cmp"
	"fmt"
	"slices"
	"time"

	"newmake/lang/check/internal/fields"
	"newmake/lang/diag"
	"newmake/lang/house"
	"newmake/lang/quantity"
	"newmake/lang/recipe"
	"newmake/lang/record"
	"newmake/lang/schema"
	"newmake/lang/season"
	"newmake/lang/sorting"
	"newmake/lang/tree"
	"newmake/lang/words"
)

// Around is what a season is read beside.
type Around struct {
	House *house.House
	Batch func(*house.Decl) *recipe.Batch // nil where it could not be read
	Plant func() *recipe.Plant            // the first of the house, nil where it has none
}

// Season is one season of the house, read.
type Season struct {
	Season *season.Season
	Diags  diag.List
}

// Read reads a season.
func Read(d *house.Decl, a Around) *Season {
	r := &reader{Around: a, node: d.Node()}
	r.read()
	return &Season{&r.season, r.diags}
}

// longest is the longest season, in days: a year, and a leap day in it.
const longest = 366

type reader struct {
	Around
	node   *tree.Node
	plant  *recipe.Plant // nil until a batch tells, and where none is read
	season season.Season
	diags  diag.List
	bad    bool // its days cannot be: nothing is held against them
}

func (r *reader) read() {
	s, n := &r.season, r.node
	s.Name, s.At = n.Text("name"), n.At()
	s.From, s.To = dayIn(n.Get("begin")), dayIn(n.Get("end"))
	switch {
	case s.From.IsZero() || s.To.IsZero():
		r.bad = true // that is said already
	case s.To.Compare(s.From) < 0:
		r.bad = true
		r.days(n.Get("end"), "this season ends before it begins", "write the first day, then the last: `season \"Spring\" from 2026-03-03 to 2026-04-14`")
	case s.Days() > longest:
		r.bad = true
		r.days(n.Get("end"), fmt.Sprintf("this season has %d days, and one has at most %d", s.Days(), longest), "part it into several: each plan takes up what the runs before it have left")
	}
	for _, l := range n.Lines { // the plant first: what else is named is of it
		if c := l.Get("batch"); c != nil && !l.Bad {
			r.batch(c)
		}
	}
	if r.plant == nil {
		r.plant = r.Plant()
	}
	for _, l := range n.All("crew") {
		r.crew(l)
	}
	for _, l := range n.Lines {
		if l.Bad {
			continue
		}
		switch l.Field.Name {
		case "casks", "order":
			r.casks(l)
		case "closed":
			r.closed(l)
		case "without":
			r.without(l)
		}
	}
	sorting.Stable(s.Closed, func(a, b season.Closed) int { return cmp.Or(a.From.Compare(b.From), a.To.Compare(b.To)) })
	for _, l := range n.All("make") { // the closures first
		r.make(l)
	}
	s.Today = fields.Today(n)
	r.empty()
}

// dayIn is the date in a slot, which the lexer found to be one.
func dayIn(c *tree.Capture) record.Date {
	if c == nil {
		return record.Date{}
	}
	return record.ReadDate(c.Text())
}

// days says that a day cannot be.
func (r *reader) days(at *tree.Capture, summary, help string) {
	r.diags.Add(diag.Diagnostic{Code: diag.CodeSeasonDays, At: at.At(), Summary: summary, Help: help})
}

// within holds a day against the season's.
func (r *reader) within(c *tree.Capture) record.Date {
	d := dayIn(c)
	if s := &r.season; !r.bad && !s.Has(d) {
		r.days(c, fmt.Sprintf("%s is no day of this season, which is from %s to %s", d, s.From, s.To), "write a day between them, or make the season longer")
	}
	return d
}

// span reads the two ends of days on a line; one day where the second is left out.
// Without any it is the whole season.
func (r *reader) span(l *tree.Node) (from, to record.Date) {
	begin, end := l.Get("begin"), l.Get("end")
	if begin == nil {
		return r.season.From, r.season.To
	}
	if from, to = r.within(begin), dayIn(begin); end == nil {
		return from, to
	}
	if to = dayIn(end); to.Compare(from) < 0 {
		r.days(end, fmt.Sprintf("%s is before %s", to, from), "write the first day, then the last")
		return from, from
	}
	return from, r.within(end)
}

// batch finds the batch on a line, and with it the plant.
func (r *reader) batch(c *tree.Capture) {
	d := r.House.Find(c.Text())
	if d == nil {
		if !r.House.Lost(schema.Batch, c.Text()) {
			r.diags.Add(tree.UnknownName("batch", c, r.House.Batches))
		}
		return
	}
	b := r.Batch(d)
	if b == nil || b.Plant == nil {
		return // what is wrong with it is said where it stands
	}
	if r.plant == nil {
		r.plant, r.season.Plant = b.Plant, b.Plant.Name
		return
	}
	if tree.Key(b.Plant.Name) != tree.Key(r.plant.Name) {
		r.diags.Add(diag.Diagnostic{Code: diag.CodeSeasonPlants, At: c.At(),
			Summary: fmt.Sprintf("%s is made in %q, and the batches before it in %q", d.Name, b.Plant.Name, r.plant.Name),
			Help:    "a season is of one plant: write a season for each"})
	}
}

// named is the batch on a line as it is declared.
func (r *reader) named(l *tree.Node) string {
	if d := r.House.Find(l.Text("batch")); d != nil {
		return d.Name
	}
	return l.Text("batch")
}

// count is the whole number on a line.
func (r *reader) count(l *tree.Node, what string) int {
	c := l.Get("number")
	n := int(c.SI)
	if float64(n) != c.SI {
		r.diags.Add(diag.Diagnostic{Code: diag.CodeWholeNumber, At: c.At(), Summary: what + " are counted, and " + c.Item.Num + " is none of the numbers", Help: "write a whole number"})
	}
	return n
}

func (r *reader) casks(l *tree.Node) {
	r.season.Casks = append(r.season.Casks, season.Casks{N: r.count(l, "casks"), Batch: r.named(l), By: r.within(l.Get("due")), For: l.Text("whom"), At: l.At()})
}

func (r *reader) closed(l *tree.Node) {
	c := season.Closed{Why: l.Text("remark"), At: l.At()}
	c.From, c.To = r.span(l)
	for _, o := range r.season.Closed {
		if c.From.Compare(o.To) <= 0 && o.From.Compare(c.To) <= 0 {
			r.overlaps(l, fmt.Sprintf("%s is closed twice", fromTo(later(c.From, o.From), earlier(c.To, o.To))), o.At)
			break
		}
	}
	r.season.Closed = append(r.season.Closed, c)
}

func (r *reader) without(l *tree.Node) {
	w := season.Without{Name: l.Text("vessel"), Why: l.Text("remark"), At: l.At()}
	w.From, w.To = r.span(l)
	vessels, people := r.vessels(), r.season.People()
	switch {
	case has(vessels, &w.Name):
	case has(people, &w.Name):
		w.Person = true
	case r.plant == nil:
		return // what is wrong with the plant is said where it stands
	default:
		d := tree.UnknownName("vessel, tank or person", l.Get("vessel"), func() []string { return append(vessels, people...) })
		if len(people) == 0 {
			d.Reason = "who may be away is named first: `crew \"M\", \"J\"`"
		}
		r.diags.Add(d)
		return
	}
	for _, o := range r.season.Without {
		if o.Name == w.Name && o.Person == w.Person && w.From.Compare(o.To) <= 0 && o.From.Compare(w.To) <= 0 {
			r.overlaps(l, fmt.Sprintf("the season is without %q twice on %s", w.Name, fromTo(later(w.From, o.From), earlier(w.To, o.To))), o.At)
			break
		}
	}
	r.season.Without = append(r.season.Without, w)
}

// vessels are the names of the plant's vessels and tanks.
func (r *reader) vessels() []string {
	var out []string
	if r.plant != nil {
		for _, v := range r.plant.Vessels {
			out = append(out, v.Name)
		}
		for _, t := range r.plant.Tanks {
			out = append(out, t.Name)
		}
	}
	return out
}

// has finds a name, and writes it as it is declared.
func has(names []string, name *string) bool {
	for _, n := range names {
		if tree.Key(n) == tree.Key(*name) {
			*name = n
			return true
		}
	}
	return false
}

func (r *reader) overlaps(l *tree.Node, summary string, other diag.Span) {
	r.diags.Add(diag.Diagnostic{Code: diag.CodeSeasonOverlap, Severity: diag.Warning, At: l.At(), Summary: summary,
		Related: []diag.Related{{At: other, Text: "the other line is here"}}, Help: "look at the dates; days that go together stand on one line"})
}

func (r *reader) crew(l *tree.Node) {
	usual := fields.UsualShift
	if r.plant != nil {
		usual = r.plant.Shift
	}
	c := season.Crew{Shift: fields.Shift(l, "opens", "closes", usual, &r.diags), At: l.At()}
	c.From, c.To = r.span(l)
	for _, who := range l.Match.All("who") {
		c.Who = who.Text()
		if known := r.season.People(); has(known, &c.Who) && l.Get("begin") == nil {
			for _, o := range r.season.Crew {
				if o.Who == c.Who && o.From == c.From && o.To == c.To {
					r.overlaps(l, fmt.Sprintf("%q is named twice for the same days, and the line before it says nothing any more", c.Who), o.At)
					break
				}
			}
		}
		r.season.Crew = append(r.season.Crew, c)
	}
}

func (r *reader) make(l *tree.Node) {
	m := season.Make{Batch: r.named(l), Weekdays: fields.Weekdays(l), At: l.At()}
	switch every := l.Get("duration"); {
	case every != nil:
		m.EveryDays = int(every.SI / quantity.DayS)
		switch {
		case float64(m.EveryDays)*quantity.DayS != every.SI:
			r.days(every, fmt.Sprintf("%s are no whole days", every.Item.At.Text()), "write days or weeks, `every 10 days`, `every 2 weeks`")
		case m.OnWeekdays() && m.EveryDays%7 != 0:
			r.days(every, fmt.Sprintf("%s are no whole weeks, and a day of the week comes once a week", every.Item.At.Text()), "write weeks, `every 2 weeks on tue`, or leave the day of the week out")
		case !r.bad && m.EveryDays > r.season.Days():
			r.days(every, fmt.Sprintf("this season has %s, fewer than that", words.Count(r.season.Days(), "day")), "a batch that is made once is `make 1 of \""+m.Batch+"\"`")
		}
	case l.Has("number"):
		m.Times = r.count(l, "mashes")
	case m.OnWeekdays():
		m.EveryDays = 7
	default:
		for _, c := range l.Match.All("day") {
			d := r.within(c)
			if k := r.season.ClosedOn(d); k != nil && r.season.Has(d) {
				r.days(c, fmt.Sprintf("%s is closed", d), "write another day, or open this one")
				r.diags[len(r.diags)-1].Related = []diag.Related{{At: k.At, Text: "it is closed here"}}
			}
			m.Dates = append(m.Dates, d)
		}
	}
	r.nobody(l, &m)
	r.season.Makes = append(r.season.Makes, m)
}

// nobody speaks of days of the week on which nobody is there to mash.
func (r *reader) nobody(l *tree.Node, m *season.Make) {
	if r.plant == nil || r.bad {
		return
	}
	var idle []string
	for d, on := range m.Weekdays {
		if on && !r.manned(d) {
			idle = append(idle, time.Weekday(d).String())
		}
	}
	for _, d := range m.Dates {
		if !r.manned(int(d.Weekday())) {
			idle = append(idle, d.Weekday().String()+" "+d.String())
		}
	}
	if len(idle) > 0 {
		r.diags.Add(diag.Diagnostic{Code: diag.CodeSeasonNobody, Severity: diag.Warning, At: l.At(), Summary: "nobody is there on " + words.And(idle),
			Help: "write a day of the `shift` of the plant, or say with `crew` who is there"})
	}
}

// manned reports whether somebody is there on a day of the week, at least at times.
func (r *reader) manned(weekday int) bool {
	if len(r.season.Crew) == 0 {
		return r.plant.Shift.Days[weekday]
	}
	return slices.ContainsFunc(r.season.Crew, func(c season.Crew) bool { return c.Shift.Days[weekday] })
}

// empty speaks of a season that asks for nothing, or in which nobody works.
func (r *reader) empty() {
	s := &r.season
	if r.bad || r.node.Gaps || !r.node.Sound() {
		return
	}
	d := diag.Diagnostic{Code: diag.CodeSeasonEmpty, Severity: diag.Warning, At: s.At}
	open := false
	for i := 0; i < s.Days() && !open; i++ {
		day := s.From.After(i)
		open = s.ClosedOn(day) == nil && (r.plant == nil || r.manned(int(day.Weekday())))
	}
	switch {
	case len(s.Casks) == 0 && len(s.Makes) == 0:
		d.Summary, d.Help = fmt.Sprintf("the season %q asks for nothing", s.Name), "say what is to be made: "+schema.Season.Block.Find("casks").Example
	case !open:
		d.Summary, d.Help = fmt.Sprintf("in the season %q there is no day on which anybody works", s.Name), "look at its dates, its closures and the `shift` of the plant"
	default:
		return
	}
	r.diags.Add(d)
}

func fromTo(from, to record.Date) string {
	if from == to {
		return from.String()
	}
	return from.String() + " to " + to.String()
}

func later(a, b record.Date) record.Date {
	if a.Compare(b) < 0 {
		return b
	}
	return a
}

func earlier(a, b record.Date) record.Date {
	if a.Compare(b) > 0 {
		return b
	}
	return a
}
