package size

import (
	"slices"
	"strings"

	"newmake/lang/recipe"
)

// Kept are the lines that say how fast a still runs, and the cuts by the clock. A size
// leaves them: a still gives what it gives, and of a larger charge for longer. So heads
// by the clock do not grow with the batch.
func (f *Found) Kept() []string {
	if f.Target.Of == nil { // a cut
		return nil
	}
	var out []string
	for _, v := range f.Batch.Values() {
		byClock := v.Path.Within(recipe.PathHeartsFrom) && f.Batch.Spirit.HeartsFrom.By == recipe.ByTime ||
			v.Path.Within(recipe.PathHeartsTo) && f.Batch.Spirit.HeartsTo.By == recipe.ByTime
		at, written := f.Batch.Where[v.Path]
		if !written || !byClock && !v.Path.Within(recipe.PathPace) && !v.Path.Within(recipe.PathStripPace) {
			continue
		}
		line, _ := at.Position()
		text, _, _ := strings.Cut(at.Src.Line(line), "#")
		text = strings.Join(strings.Fields(text), " ")
		if !byClock && !strings.HasPrefix(text, "pace") { // it stands in the block
			text = "pace " + text
		}
		if !slices.Contains(out, text) {
			out = append(out, text)
		}
	}
	return out
}
