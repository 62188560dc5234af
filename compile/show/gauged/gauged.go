// Package gauged writes the answer to a question of proofing for people.
package gauged

import (
	"slices"
	"strconv"
	"strings"

	"newmake/compile/ask/proofing"
	"newmake/compile/measure"
	"newmake/compile/show/columns"
)

// Text is what came of it, the figure asked for first, then the working with its
// sources.
func Text(a proofing.Answer) string {
	w := &columns.Writer{}
	w.Strong(a.Question)
	w.Gap()
	for _, r := range slices.Backward(a.Results) {
		value := measure.Number(r.Value, r.Places)
		const numbers = 44 // where they end
		w.Line("  " + r.Label + columns.Right(value, max(2+columns.Width(value), numbers-columns.Width(r.Label))) + " " + strings.TrimPrefix(r.Unit, "delta_"))
	}
	w.Gap()
	for _, c := range a.Cautions {
		w.Item("Caution:", 9, c)
	}
	for _, n := range a.Notes {
		w.Item("Note:", 6, n)
	}
	w.Gap()
	for i, step := range a.Working {
		head := strconv.Itoa(i+1) + ". " + step.Title
		w.Line(head + columns.Right(step.Source, max(2+columns.Width(step.Source), columns.Page-columns.Width(head))))
		for _, l := range step.Lines {
			w.Para(3, 5, l)
		}
	}
	return w.String()
}
