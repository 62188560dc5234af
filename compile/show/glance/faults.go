package glance

import (
	"fmt"
	"strings"

	"newmake/compile/plan"
	"newmake/compile/show/columns"
	"newmake/lang/diag"
	"newmake/lang/sorting"
	"newmake/lang/words"
)

// mostFaults is how many are shown: the rest are counted.
const mostFaults = 4

// fault is one thing that is wrong, in order of what stops a batch.
type fault struct {
	rank int // 0 an error, 1 a broken promise, 2 a warning
	word string
	text string
	line int
}

// faults are those of the plan, in at most so many lines each; where there is none, a
// line that says so.
func (g *screen) faults(lines int) []string {
	all, notes := g.found()
	if len(all) == 0 {
		return []string{g.sound(notes)}
	}
	var out []string
	for i, f := range all {
		if i == mostFaults {
			out = append(out, fmt.Sprintf("    and %d more: newmake check", len(all)-i))
			break
		}
		text, where := f.text, ""
		if f.line > 0 {
			where = fmt.Sprintf(" (line %d)", f.line)
		}
		head := "  ! " + f.word + "  "
		indent := columns.Width(head)
		rows := columns.Wrap(text+where, columns.Page-indent)
		if len(rows) > lines { // the place is kept
			room := columns.Page - indent
			rest := strings.TrimSuffix(strings.Join(rows[lines-1:], " "), where)
			rows = append(rows[:lines-1:lines-1], columns.Cut(rest, room-columns.Width(where))+where)
		}
		how := bad
		if f.rank == 2 {
			how = warn
		}
		for k, row := range rows {
			if k == 0 {
				out = append(out, "  "+g.paint(how, "! "+f.word)+"  "+row)
			} else {
				out = append(out, strings.Repeat(" ", indent)+row)
			}
		}
	}
	return out
}

// found are the faults, the worst first, and how many notes there are besides.
func (g *screen) found() (all []fault, notes int) {
	for _, n := range g.p.Notices {
		f := fault{text: n.Summary, line: n.Line}
		switch {
		case n.Code == string(diag.CodePromiseBroken):
			f.rank, f.word = 1, "BROKEN"
		case n.Severity == "error":
			f.word = "error " + n.Code
		case n.Severity == "warning":
			f.rank, f.word = 2, "warning "+n.Code
		default:
			notes++
			continue
		}
		all = append(all, f)
	}
	sorting.Stable(all, func(a, b fault) int { return a.rank - b.rank })
	return all, notes
}

// sound says that nothing is wrong.
func (g *screen) sound(notes int) string {
	kept, untried := 0, 0
	for _, k := range g.p.Promises {
		switch k.Stands() {
		case plan.PromiseKept:
			kept++
		case plan.PromiseUntried:
			untried++
		}
	}
	parts := []string{"no warnings"}
	if kept > 0 {
		parts = append([]string{words.Count(kept, "promise") + " kept"}, parts...)
	}
	if untried > 0 {
		parts = append(parts, words.Count(untried, "promise")+" to be tried: newmake odds")
	}
	if notes > 0 {
		parts = append(parts, words.Count(notes, "note")+": newmake check")
	}
	return "  " + g.paint(good, "good:") + " " + strings.Join(parts, " · ")
}
