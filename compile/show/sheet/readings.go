package sheet

import "newmake/compile/plan"

// step is a step as its part shows it.
type step struct {
	plan.Step
	Dated bool // it says its day
}

func onSheet(s plan.Step, dated bool) step { return step{s, dated} }

// across is how many readings stand side by side.
const across = 3

// readRow is what is read at one time.
type readRow struct {
	Due      string // when, as 15:04; empty if it goes on from the row above
	Readings []read
}

// read is one reading. Due is when, where no other place in the row says so.
type read struct {
	plan.Reading
	Due string
}

// Room is how many columns the row leaves empty.
func (r readRow) Room() int { return 2 * (across - len(r.Readings)) }

// readings sets the readings of a step into rows: those of one time side by
// side, in the plan's order, which is that of a run record.
func readings(s plan.Step) []readRow {
	var out []readRow
	last := ""
	for i, r := range s.Read {
		due := by(s, r)
		n := len(out)
		switch {
		case i == 0 || due != last:
			out = append(out, readRow{Due: due})
			n++
		case len(out[n-1].Readings) == across:
			out = append(out, readRow{})
			n++
		}
		out[n-1].Readings = append(out[n-1].Readings, read{Reading: r})
		last = due
	}
	return out
}

// single gives the reading of a step that has no more than one: it stands on
// the line of what to do. Otherwise nil.
func single(rows []readRow) *read {
	if len(rows) != 1 || len(rows[0].Readings) != 1 {
		return nil
	}
	r := rows[0].Readings[0]
	r.Due = rows[0].Due
	return &r
}
