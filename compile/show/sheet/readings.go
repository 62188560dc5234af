package sheet

import (
	"slices"
	"strings"
	"unicode/utf8"

	"newmake/compile/measure"
	"newmake/compile/plan"
	"newmake/lang/record"
)

// step is a step as its part shows it.
type step struct {
	plan.Step
	Care  []care    // its dangers that the page has not named at its vessel on its day
	Rows  []readRow // what is read
	Alone []cell    // what it has to read, where that stands on the line of what to do
	Span  int       // columns that what to do takes
	Dated bool      // it says its day
	Bare  bool      // it is to read and no more: one row says it
	Jug   bool      // what it measures is so little that a jug does it
	// AfterJug: it begins when that has run, and says how much in the same measure.
	AfterJug bool
}

// care is a danger: its title, and its number in the list where it stands in full.
type care struct {
	Number int
	Title  string // empty: the number says it
}

// readRow is what is read at one time, a cell for each instrument of the part.
type readRow struct {
	Due   string // when, as 15:04; empty if it goes on from the row above
	Spare bool   // nothing is asked for: room for readings of one's own
	Cells []cell
}

// cell is an instrument's place in a row: a reading, nothing, or room for one.
type cell struct {
	column
	*plan.Reading
	Name  string // of what is read, where it is not what the column says
	Spare bool
	Off   bool // how far off it may be is said
	Jug   bool // in a jug's units
}

// named is where a page has named a danger: the words are said again at another vessel and
// on another day, for whoever works there may not have read what stands above.
type named struct {
	at map[danger]bool
	// brief: what a page has named at a vessel has the number alone on another day.
	brief bool
}

// danger is a caution at a vessel on a day.
type danger struct{ key, vessel, day string }

// of are the dangers of a step that the page has not named where it is; they are added. The
// rounds of a ferment are rows of one log at one vessel: they have the number alone.
func (n named) of(s plan.Step, numbers map[string]care) []care {
	var out []care
	for _, key := range s.Cautions {
		at, log := danger{key, s.Vessel, measure.Date(s.Start)}, danger{key: key, vessel: s.Vessel}
		c, known := numbers[key]
		if !known || n.at[at] {
			continue
		}
		if (n.brief || round(s)) && n.at[log] {
			c.Title = ""
		}
		n.at[at], n.at[log] = true, true
		out = append(out, c)
	}
	return out
}

// jug reports whether what a step measures is so little that a jug does it.
func jug(s plan.Step) bool { return strings.HasSuffix(s.ID, ".foreshots") }

// round reports whether a step is a reading of the ferment on one of its days.
func round(s plan.Step) bool { return strings.HasPrefix(s.ID, "ferment.round.") }

// stepOf lays a step out in the columns of its part. Said are the dangers that the page has
// named already; those of this step are added.
func stepOf(s plan.Step, p *part, numbers map[string]care, said named) step {
	out := step{Step: s, Dated: p.Dated, Jug: jug(s)}
	out.Care = said.of(s, numbers)
	out.Rows = rowsOf(s, p.Columns)
	if len(p.Days) == 1 && len(p.Days[0].Steps) == 0 {
		out.WaitMin = 0 // of what comes before, which is on another page
	}
	out.Span = p.Cells()
	if len(out.Rows) == 1 && p.Stage == "mash" {
		out.besideText(len(p.Columns))
	}
	untitled := !slices.ContainsFunc(out.Care, func(c care) bool { return c.Title != "" })
	out.Bare = round(s) && len(out.Rows) == 1 && untitled && s.WaitMin == 0 && s.OutOfShift == 0
	if len(out.Rows) > 0 && endsWithCut(s) {
		spare := readRow{Spare: true, Cells: make([]cell, len(p.Columns))}
		for i, c := range p.Columns {
			spare.Cells[i] = cell{column: c, Spare: true}
		}
		n := len(out.Rows) - 1
		out.Rows = append(out.Rows[:n:n], spare, out.Rows[n])
	}
	return out
}

// What to do takes so many characters of a line beside one reading, and beside two.
var besideChars = map[int]int{1: 100, 2: 100}

// besideText puts the only row of readings on the line of what to do, if that leaves room
// for the words: it has no more than the last two instruments read.
func (s *step) besideText(columns int) {
	first := columns
	for i, c := range s.Rows[0].Cells {
		if c.Reading != nil {
			first = i
			break
		}
	}
	n := columns - first
	if n == 0 || s.chars() > besideChars[n] {
		return
	}
	s.Alone, s.Rows = s.Rows[0].Cells[first:], nil
	for _, c := range s.Alone {
		s.Span -= c.Cells()
	}
}

// chars is about how long the words of what to do are; a quantity is taken for its place
// and a few more.
func (s *step) chars() int {
	n := utf8.RuneCountInString(s.Do.Text) + 5*len(s.Do.Values)
	if s.When != nil {
		n += utf8.RuneCountInString(s.When.Text) + 5*len(s.When.Values)
	}
	for _, c := range s.Care {
		n += utf8.RuneCountInString(c.Title) + 4
	}
	if s.Attend != plan.Stay {
		n += 16
	}
	if s.WaitMin > 0 {
		n += 30 + utf8.RuneCountInString(s.WaitWhy)
	}
	return n
}

// rowsOf sets the readings of a step into rows: those of one time side by side, each in
// the column of its instrument.
func rowsOf(s plan.Step, cols []column) []readRow {
	var out []readRow
	last := ""
	for i := range s.Read {
		r := &s.Read[i]
		due, at := by(s, *r), place(cols, *r)
		n := len(out)
		if n == 0 || due != last || out[n-1].Cells[at].Reading != nil {
			row := readRow{Cells: make([]cell, len(cols))}
			if due != last {
				row.Due = due
			}
			for k, c := range cols {
				row.Cells[k].column = c
			}
			out, n = append(out, row), n+1
		}
		c := &out[n-1].Cells[at]
		c.Reading, c.Off = r, r.Tolerance.Unit != ""
		if strings.HasSuffix(s.ID, ".foreshots") && r.Kind == record.Receiver {
			c.Jug, c.Off = true, false
		}
		switch r.What {
		case c.Head, "volume", "strength", "in the cooker": // as its unit says
		default:
			c.Name = r.What[strings.LastIndexByte(r.What, ' ')+1:]
			if c.Unit == "" || r.Kind != record.Strength {
				c.Name = r.What
			}
		}
		last = due
	}
	return out
}

// endsWithCut reports whether somebody waits at the end of a step for the moment to turn the
// spout or to stop: readings come thicker there than the plan asks for.
func endsWithCut(s plan.Step) bool {
	switch s.ID[strings.LastIndexByte(s.ID, '.')+1:] {
	case "hearts", "tails", "collect":
		return true
	}
	return false
}
