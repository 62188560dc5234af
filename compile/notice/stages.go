package notice

import (
	"errors"

	"newmake/compile/lot"
	"newmake/compile/numbers"
	"newmake/lang/diag"
)

// Stages is what the stages show, up to the one that failed, if one did. Of the
// casks the plan's own numbers speak: see Cask.
func Stages(n *numbers.Batch, failed error) diag.List {
	b := n.Batch
	var at numbers.Stage
	if f := (*numbers.Failure)(nil); errors.As(failed, &f) {
		at = f.Stage
	}
	var list diag.List
	for _, s := range []struct {
		stages []numbers.Stage
		said   func() diag.List
	}{
		{[]numbers.Stage{numbers.Mashing}, func() diag.List { return Mash(b, n.Mashed) }},
		{[]numbers.Stage{numbers.Fermenting}, func() diag.List { return Ferment(b, n.Fermented, n.Mashed.Out.TempC) }},
		{[]numbers.Stage{numbers.Stripping}, func() diag.List { return Strip(b, n.Stripped) }},
		{[]numbers.Stage{numbers.Distilling}, func() diag.List { return Spirit(b, n.Distilled, n.Ways) }},
		{[]numbers.Stage{numbers.Following}, func() diag.List { return nil }},
		{[]numbers.Stage{numbers.Filling}, func() diag.List { return append(reduction(n, lot.Of(n.Distilled.Hearts)), Tanks(n)...) }},
	} {
		for _, stage := range s.stages {
			if stage == at {
				return append(list, Failed(n, failed)...)
			}
		}
		list = append(list, s.said()...)
	}
	return list
}
