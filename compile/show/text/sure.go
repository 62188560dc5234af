package text

import (
	"fmt"
	"strings"

	"newmake/compile/measure"
	"newmake/compile/plan"
	"newmake/lang/diag"
)

// sure is how sure the numbers of the summary are, and what makes them so unsure.
func (t *text) sure() {
	b := t.p.Bands
	if b == nil {
		return
	}
	t.Heading("HOW SURE")
	t.Para(2, 2, fmt.Sprintf("9 times in 10 what comes lies between the two, each number by itself. Behind it, what makes the spread. %d batches were computed, with each constant by itself at either end; `newmake odds` draws all at once, so its ranges lie a little otherwise.", b.Computed))
	for _, n := range b.Numbers {
		if n.Planned.Unit == plan.ProofGallon && t.Units == measure.SI || n.Low == n.High {
			continue
		}
		var of []string
		for _, s := range n.Of[:min(len(n.Of), 2)] {
			of = append(of, fmt.Sprintf("%s %s %%", diag.Safe(s.Words), measure.Number(s.SharePct, 0)))
		}
		t.Item("  "+n.Words, 26, fmt.Sprintf("%s to %s; %s", read(t.Units, n.Low), read(t.Units, n.High), strings.Join(of, ", ")))
	}
}
