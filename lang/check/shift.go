package check

import (
	"newmake/lang/diag"
	"newmake/lang/recipe"
	"newmake/lang/tree"
)

var weekdays = map[string]int{"sun": 0, "mon": 1, "tue": 2, "wed": 3, "thu": 4, "fri": 5, "sat": 6}

// shift reads the hours and days of work.
func shift(n *tree.Node, diags *diag.List) recipe.Shift {
	s := recipe.Shift{FromMinute: 7 * 60, ToMinute: 17 * 60, Days: [7]bool{1: true, 2: true, 3: true, 4: true, 5: true}}
	if n == nil {
		return s
	}
	from, to := n.Get("from"), n.Get("end")
	s.FromMinute, s.ToMinute = minuteOfDay(from), minuteOfDay(to)
	if s.ToMinute <= s.FromMinute {
		diags.Add(diag.Diagnostic{
			Code: diag.CodeShift, Summary: "the shift ends before it begins", At: from.At().To(to.At()),
			Help: "write the earlier hour first; a shift over midnight can't be written yet",
		})
	}
	if days := days(n); len(days) > 0 {
		s.Days = [7]bool{}
		for _, d := range days {
			s.Days[d] = true
		}
	}
	return s
}

// days lists the weekdays on the line, with those between two joined by `to`.
func days(n *tree.Node) []int {
	var out []int
	ranged := false
	for i := range n.Match.Caps {
		c := &n.Match.Caps[i]
		if c.Slot == "through" || c.Slot == "to" {
			ranged = len(out) > 0
		}
		d, ok := weekdays[c.Slot]
		if !ok {
			continue
		}
		if ranged {
			for last := out[len(out)-1]; last != d; {
				last = (last + 1) % 7
				out = append(out, last)
			}
			ranged = false
			continue
		}
		out = append(out, d)
	}
	return out
}

// minuteOfDay reads a clock time. The parser has seen that it is one.
func minuteOfDay(c *tree.Capture) int {
	hour, minute, _ := parseClock(c.Text())
	return hour*60 + minute
}

func parseClock(text string) (hour, minute int, ok bool) {
	colon := -1
	for i, r := range text {
		switch {
		case r == ':' && colon < 0:
			colon = i
		case r < '0' || r > '9':
			return 0, 0, false
		case colon < 0:
			hour = hour*10 + int(r-'0')
		default:
			minute = minute*10 + int(r-'0')
		}
	}
	return hour, minute, colon > 0 && len(text) == colon+3 && hour < 24 && minute < 60
}
