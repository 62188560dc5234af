package weeks

import (
	"fmt"
	"io"
	"strings"

	"newmake/compile/ask/weeks"
	"newmake/compile/book/season"
	"newmake/compile/measure"
	"newmake/compile/plan"
	"newmake/compile/show/columns"
	"newmake/compile/show/text"
	"newmake/lang/diag"
	"newmake/lang/words"
)

// Options of a rendering as text.
type Options struct {
	Bold bool
	Full bool // every run, day, tank and limit
}

// screen is how many lines a terminal shows, one less for what is said besides.
const screen = 23

// Text writes the plan of a season: the verdict, what is asked for, the weeks at a
// glance, and what limits them. Unless all of it is asked for it is one screen: what it
// has no room for is counted.
func Text(w io.Writer, s *season.Season, o Options) error {
	out := ""
	for _, room := range rooms {
		p := &page{columns.Writer{Bold: o.Bold}, of(s), room}
		if o.Full {
			p.room = all
		}
		out = p.write(o)
		if o.Full || strings.Count(out, "\n") <= screen {
			break
		}
	}
	_, err := io.WriteString(w, out)
	return err
}

// room is how much of each part is shown.
type room struct {
	asked, conflicts, vessels int
	weekdays, idle            bool
	brief                     bool // a conflict and a bottleneck are a line each, and nothing stands between the parts
}

// all has room for everything; rooms are those of a screen, the largest first.
var (
	all   = room{1 << 30, 1 << 30, 1 << 30, true, true, false}
	rooms = []room{{4, 2, 99, true, true, false}, {3, 2, 99, true, true, false}, {2, 1, 99, true, true, true}, {2, 1, 99, false, true, true}, {1, 1, 99, false, false, true}, {1, 1, 6, false, false, true}}
)

func (p *page) write(o Options) string {
	title := diag.Safe(p.s.Name)
	if gap := columns.Page - columns.Width(title) - columns.Width(diag.Safe(p.s.Plant)); gap > 1 {
		title += strings.Repeat(" ", gap) + diag.Safe(p.s.Plant)
	}
	p.Strong(title)
	p.Para(0, 2, p.span()+": "+p.outcome())
	p.Para(0, 2, p.verdict())
	p.conflicts()
	p.asked()
	p.part()
	newTimeline(p.say).write(&p.Writer, p.room)
	p.limits(o)
	if o.Full {
		p.runs()
		p.days()
		p.tanks()
	}
	p.changes(o)
	p.odds(o)
	p.part()
	p.Para(0, 0, text.SafetyLine)
	return p.String()
}

// part stands between two parts of the page.
func (p *page) part() {
	if !p.room.brief {
		p.Gap()
	}
}

// sentence is one that may be cut where there is little room.
func (p *page) sentence(first, then int, text string) {
	if p.room.brief {
		p.Line(columns.Cut(strings.Repeat(" ", first)+text, columns.Page))
		return
	}
	p.Para(first, then, text)
}

type page struct {
	columns.Writer
	say
	room
}

func (p *page) conflicts() {
	all := p.inTheWay()
	for i, c := range all {
		if i == p.room.conflicts {
			p.Para(2, 4, fmt.Sprintf("! and %d more: --full", len(all)-i))
			return
		}
		p.sentence(2, 4, "! "+c)
	}
}

func (p *page) asked() {
	shown := 0
	line := func(d season.Demanded) {
		if shown++; shown <= p.room.asked {
			p.Para(2, 4, p.wanted(d)+": "+p.comes(d))
		}
	}
	for _, d := range p.s.Demands {
		if !d.Met {
			line(d)
		}
	}
	for _, d := range p.s.Demands {
		if d.Met {
			line(d)
		}
	}
	if shown > p.room.asked {
		p.Para(2, 4, fmt.Sprintf("and %d more: --full", shown-p.room.asked))
	}
}

func (p *page) limits(o Options) {
	if !o.Full {
		if b := p.narrow(); b != "" && p.room.brief {
			p.sentence(0, 2, b)
		} else if b := p.bottleneck(); b != "" {
			p.sentence(0, 2, b)
		}
		if p.room.weekdays {
			for _, line := range p.together() {
				p.Para(0, 2, line)
			}
		}
		return
	}
	if len(p.s.Bottlenecks) > 0 {
		p.Heading("WHAT ONE THING MORE WOULD BRING")
	}
	for _, r := range p.s.Bottlenecks {
		p.Para(2, 4, p.relief(r))
	}
	if len(p.s.Weekdays) > 0 {
		p.Heading("DAYS OF THE WEEK")
	}
	for _, w := range p.s.Weekdays {
		p.Para(2, 4, mashable(w))
	}
}

// together are the days of the week on which batches can be mashed, those with the same
// days in one line, without the reasons.
func (p *page) together() []string {
	var lines, days []string
	of := map[string][]string{}
	for _, w := range p.s.Weekdays {
		on := ""
		if can := mashDays(w); len(can) > 0 {
			on = words.And(can)
		}
		if of[on] == nil {
			days = append(days, on)
		}
		of[on] = append(of[on], diag.Safe(w.Batch))
	}
	for _, on := range days {
		if on == "" {
			lines = append(lines, words.And(of[on])+" can be mashed on no day of the week: --full says why.")
			continue
		}
		lines = append(lines, fmt.Sprintf("%s can be mashed on %s.", words.And(of[on]), on))
	}
	return lines
}

func (p *page) runs() {
	if len(p.s.Runs) == 0 {
		return
	}
	p.Heading("RUNS")
	t := columns.Table{Left: map[int]bool{1: true, 2: true, 3: true}}
	t.Row("run", "batch", "mash", "fermenter", "strip", "spirit", "filled", "casks")
	for _, r := range p.s.Runs {
		at := map[string]string{}
		for _, s := range weeks.Stages(r) {
			if at[s.Name] == "" && !s.Cleaning {
				at[s.Name] = moment(s.From).Format("2 Jan")
			}
		}
		filled := ""
		if r.Filled != "" {
			filled = moment(r.Filled).Format("2 Jan")
		}
		number := diag.Safe(r.Number)
		if r.Done {
			number += " *"
		}
		t.Row(number, columns.Cut(diag.Safe(r.Batch), 16), day(r.Mash), columns.Cut(diag.Safe(r.Fermenter), 12), at["strip"], at["spirit"], filled, fmt.Sprint(r.Casks))
	}
	t.Write(&p.Writer)
	for _, r := range p.s.Runs {
		if r.Done {
			p.Para(2, 4, "* it was begun, and stands as it was")
			break
		}
	}
	p.Gap()
	for _, r := range p.s.Runs {
		p.Para(2, 4, "run "+diag.Safe(r.Number)+": "+p.flows(r))
	}
}

// flows is what a run takes of those before it, and what it makes.
func (p *page) flows(r season.Run) string {
	text := fmt.Sprintf("hearts %s at %s, %s of a house at work", p.u.Volume(r.Hearts), p.u.LotAbv(r.Hearts), measure.Number(r.OfSteadyPct, 0)+" %")
	if f := r.Feints; f.In.VolumeL > 0 {
		text += fmt.Sprintf("; feints %s at %s", p.u.Volume(f.In), p.u.LotAbv(f.In))
		if len(f.From) > 0 {
			text += ", " + leftBy(f.From)
		}
		if f.OtherKind {
			text += ", of another batch"
		}
	} else {
		text += "; no feints"
	}
	switch b := r.Backset; {
	case b.WantedL == 0:
	case b.In.VolumeL == 0:
		text += "; no backset that still keeps, so water"
	case b.AgeH == 0:
		text += "; backset that was there"
	default:
		text += fmt.Sprintf("; backset %s old, %s", measure.Hours(b.AgeH), leftBy(b.From))
	}
	if r.SpiritIn.VolumeL > 0 {
		text += fmt.Sprintf("; spirit %s at %s, %s, filled with its own", p.u.Volume(r.SpiritIn), p.u.LotAbv(r.SpiritIn), leftBy([]string{r.SpiritFrom}))
	}
	if r.NoKept {
		text += "; no water kept of a mash before, so fresh"
	}
	if r.NoPotAle {
		text += p.u.Words("; no hot pot ale for the preheater")
	}
	if r.WashWaitHours > 0.5 {
		text += fmt.Sprintf("; the wash stands %s past its time", measure.Hours(r.WashWaitHours))
	}
	if r.OverFill {
		text += fmt.Sprintf("; the spirit still is %s full", measure.Number(r.MostFillPct, 0)+" %")
	}
	if r.FeintsTooBig {
		text += "; its feints do not go into their tank"
	}
	return text + "."
}

// leftBy names the runs that left something.
func leftBy(from []string) string {
	var runs []string
	opening := false
	for _, n := range from {
		if n == "opening" {
			opening = true
		} else {
			runs = append(runs, diag.Safe(n))
		}
	}
	switch {
	case len(runs) == 0 && opening:
		return "in the tank on the first day"
	case len(runs) == 1:
		return "left by run " + runs[0]
	}
	return "left by runs " + words.And(runs)
}

func (p *page) days() {
	p.Heading("DAYS WITH WORK")
	t := columns.Table{Left: map[int]bool{1: true, 4: true}}
	t.Row("day", "hours", "people", "boiler", "what")
	for _, d := range p.s.Days {
		if len(d.Runs) == 0 {
			continue
		}
		hours := ""
		if d.Open != "" {
			hours = measure.Clock(d.Open) + " to " + measure.Clock(d.Close)
		}
		t.Row(day(d.Date), hours, fmt.Sprintf("%d of %d", d.Wanted, d.People), p.u.Power(d.MostKW), columns.Cut(strings.Join(p.doneOn(d.Date), "; "), 33))
	}
	t.Write(&p.Writer)
}

// doneOn is what is done on a day by people, briefly.
func (p *page) doneOn(date string) []string {
	var out []string
	for _, r := range p.s.Runs {
		for _, s := range weeks.Stages(r) {
			if s.People == 0 || s.Cleaning {
				continue
			}
			for _, t := range s.Tasks {
				if t.Attend != plan.Alone && dateOf(t.Start) == date {
					out = append(out, fmt.Sprintf("%s %s", s.Name, diag.Safe(r.Number)))
					break
				}
			}
		}
	}
	return out
}

func (p *page) tanks() {
	if len(p.s.Tanks) == 0 {
		return
	}
	p.Heading("TANKS")
	t := columns.Table{Left: map[int]bool{1: true}}
	t.Row("tank", "for", "holds", "fullest")
	for _, x := range p.s.Tanks {
		most := p.u.Litres(x.MostL)
		if x.Over {
			most = "! " + most
		}
		t.Row(diag.Safe(x.Tank), diag.Safe(x.Holds), p.u.Litres(x.OfL), most)
	}
	t.Write(&p.Writer)
}

func (p *page) changes(o Options) {
	if n := len(p.s.Changes); !o.Full && n > 0 {
		p.Para(0, 2, words.CountOf(n, "thing is", "things are")+" otherwise than printed: --full.")
		return
	}
	for i, c := range p.s.Changes {
		if i == 0 {
			p.Heading("OTHERWISE THAN PRINTED")
		}
		p.Para(2, 4, changeSaid(c))
	}
}

// odds is how often the season comes out, of many draws.
func (p *page) odds(o Options) {
	d := p.s.Odds
	if d == nil {
		return
	}
	if !o.Full {
		p.Para(0, 2, fmt.Sprintf("How sure: all of it is met %s, by %d draws.", words.Odds(d.AllMet), d.Draws))
		return
	}
	p.Heading("HOW SURE IT IS")
	p.Para(2, 4, fmt.Sprintf("All that is asked for is met %s.", words.Odds(d.AllMet)))
	for i, x := range d.Demands {
		if i < len(p.s.Demands) {
			p.Para(2, 4, fmt.Sprintf("%s: %s", p.wanted(p.s.Demands[i]), words.Odds(x.Share)))
		}
	}
	p.Para(2, 4, fmt.Sprintf("Of %d draws: the constants of the house once a draw, what differs from run to run each time anew.", d.Draws))
}
