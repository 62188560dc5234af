// Package gauged writes the answer to a question of proofing for people.
package gauged

import (
	"strconv"
	"strings"

	"newmake/compile/ask/proofing"
	"newmake/compile/measure"
	"newmake/compile/show/columns"
)

// Text is the working with its sources, then what came of it, the figure asked for
// last.
func Text(a proofing.Answer) string {
	w := &columns.Writer{}
	w.Line(a.Question)
	w.Gap()
	for i, step := range a.Working {
		head := strconv.Itoa(i+1) + ". " + step.Title
		w.Line(head + columns.Right(step.Source, max(2+columns.Width(step.Source), columns.Page-columns.Width(head))))
		for _, l := range step.Lines {
			w.Para(3, 5, l)
		}
	}
	w.Gap()
	for _, n := range a.Notes {
		w.Item("Note:", 6, n)
	}
	for _, c := range a.Cautions {
		w.Item("Caution:", 9, c)
	}
	w.Gap()
	for _, r := range a.Results {
		value := measure.Number(r.Value, r.Places)
		const numbers = 44 // where they end
		w.Line("  " + r.Label + columns.Right(value, max(2+columns.Width(value), numbers-columns.Width(r.Label))) + " " + strings.TrimPrefix(r.Unit, "delta_"))
	}
	return w.String()
}
