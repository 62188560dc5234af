package learntest

import (
	"fmt"
	"strings"
	"time"

	"newmake/compile/lot"
	"newmake/compile/matter/fluid"
	"newmake/compile/numbers"
	"newmake/lang"
	"newmake/lang/diag"
	"newmake/lang/recipe"
)

// event is a run of a history, with what happened in it that is in no constant.
type event struct {
	number     string
	begun      time.Time
	before     string        // the run whose feints were charged, "" where none is named
	slipAtRest int           // at which rest of the mash the pen slipped
	stuck      time.Duration // how long the rakes stuck at the first heating, which nobody wrote down
	drift      float64       // by how much the alcoholometer reads more from now on
}

// What happened to the invented house, of which its runs are the record. Whoever learns from
// them should find the hour and the drift, and the constants that Invent draws.
const (
	historySeed = 5
	Stuck       = time.Hour // in run 26-03
	Drift       = .012      // of volume, from run 26-04 on
)

// History is the history of the example: the feints that were left of the year before, and six
// runs, one with a slip of the pen, one with rakes that stuck, and an alcoholometer that
// drifts. b is the recipe.
func History(b *recipe.Batch) (*House, []byte, error) {
	h := Invent(b, historySeed)
	begun := time.Date(2026, 1, 6, 7, 0, 0, 0, time.UTC)
	events := []event{
		{number: "26-01"},
		{number: "26-02", slipAtRest: 2},
		{number: "26-03", stuck: Stuck},
		{number: "26-04", drift: Drift},
		{number: "26-05"},
		{number: "26-06"},
	}
	before := "25-24"
	today := recipe.Today{FeintsSaid: true, FeintsM3: 47 * fluid.USGallonM3, FeintsAt: recipe.Strength{Value: .369, Basis: recipe.ABV}}
	var text strings.Builder
	fmt.Fprintf(&text, "# The first six runs of 2026. Lantern Hollow is an invented house, and its runs are invented.\n"+
		"# Of the last of 2025 only the feints were kept: the first of 2026 charged them.\n\n"+
		"run %q of %q on 2025-12-16 {\n  spirit in %q {\n    2025-12-23 13:40 feints 47.0 gal at 68 F, %.2f %% abv at 68 F\n  }\n}\n", before, b.Name, b.Spirit.Still.Name, 100*shownAt68F(today.FeintsAt.Value))
	for i, e := range events {
		e.before, e.begun = before, begun.AddDate(0, 0, 7*i)
		h.Off["alcoholometer"] += e.drift
		h.Recipe.Today.FeintsSaid, h.Recipe.Today.FeintsM3, h.Recipe.Today.FeintsAt = today.FeintsSaid, today.FeintsM3, today.FeintsAt
		n, err := h.Run()
		if err != nil {
			return nil, nil, fmt.Errorf("run %s: %w", e.number, err)
		}
		stick(n, e.stuck)
		text.WriteString("\n" + h.write(e, n))
		left := n.Distilled.Feints()
		today.FeintsM3, today.FeintsAt.Value, before = left.VolumeAtM3(lot.ReferenceC), left.ABV(), e.number
	}
	laid, list := lang.Format(diag.NewSource("2026.batch", []byte(text.String())))
	if list.HasErrors() {
		return nil, nil, list
	}
	return h, laid, nil
}

// stick keeps a mash at its first heating for so long.
func stick(n *numbers.Batch, late time.Duration) {
	heated := false
	for i := range n.Mashed.Steps {
		if heated = heated || n.Mash.Steps[i].Verb == recipe.MashHeat; heated {
			n.Mashed.Steps[i].EndS += late.Seconds()
		}
	}
	n.Mashed.DurationS += late.Seconds()
}
