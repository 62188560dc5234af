package fields

import (
	"strconv"
	"strings"

	"newmake/lang/diag"
	"newmake/lang/recipe"
	"newmake/lang/tree"
)

var weekdays = map[string]int{"sun": 0, "mon": 1, "tue": 2, "wed": 3, "thu": 4, "fri": 5, "sat": 6}

// UsualShift is that of a plant that states none.
var UsualShift = recipe.Shift{FromMinute: 7 * 60, ToMinute: 17 * 60, Days: [7]bool{1: true, 2: true, 3: true, 4: true, 5: true}}

// Shift reads the hours and days of work on a line. What it leaves out is as usual. begin
// and end are the names of its slots.
func Shift(l *tree.Node, begin, end string, usual recipe.Shift, diags *diag.List) recipe.Shift {
	s := usual
	if l == nil {
		return s
	}
	if from, to := l.Get(begin), l.Get(end); from != nil {
		if s.FromMinute, s.ToMinute = MinuteOfDay(from), MinuteOfDay(to); s.ToMinute <= s.FromMinute {
			diags.Add(diag.Diagnostic{
				Code: diag.CodeShift, Summary: "the shift ends before it begins", At: from.At().To(to.At()),
				Help: "write the earlier hour first; a shift over midnight can't be written yet",
			})
		}
	}
	if on := Weekdays(l); on != [7]bool{} {
		s.Days = on
	}
	return s
}

// Weekdays are the days of the week on the line, with those between two joined by `to`.
func Weekdays(l *tree.Node) (on [7]bool) {
	last, ranged := -1, false
	for i := range l.Match.Caps {
		c := &l.Match.Caps[i]
		if c.Slot == "through" || c.Slot == "to" {
			ranged = last >= 0
		}
		d, ok := weekdays[c.Slot]
		if !ok {
			continue
		}
		for ranged && last != d {
			last = (last + 1) % 7
			on[last] = true
		}
		last, ranged = d, false
		on[d] = true
	}
	return on
}

// MinuteOfDay reads a clock time. The lexer has found that it is one.
func MinuteOfDay(c *tree.Capture) int {
	part := strings.SplitN(c.Text(), ":", 3)
	hour, _ := strconv.Atoi(part[0])
	minute, _ := strconv.Atoi(part[1])
	return hour*60 + minute
}
