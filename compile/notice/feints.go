package notice

import (
	"fmt"
	"slices"
	"strings"

	"newmake/compile/lot"
	"newmake/compile/matter/fluid"
	"newmake/compile/measure"
	"newmake/compile/numbers"
	"newmake/compile/stage/still"
	"newmake/lang/diag"
	"newmake/lang/recipe"
	"newmake/lang/wording"
)

// What a run must be to be offered: at most a quarter as much alcohol among the
// heads as among the hearts, and at least two fifths of the low wines' alcohol among
// the hearts (from memory: heads are a tenth or so, and a first batch leaves half
// of its alcohol to the next).
const (
	headsMost   = 0.25
	heartsLeast = 0.40
)

// neverSteady says that the feints never settle, why, and which of the ways out
// were tried and give a run to work.
func neverSteady(w *writer, r still.Run, ways []numbers.Way) {
	if !slices.Contains(r.Problems, still.ProblemNotSteady) {
		return
	}
	d := diag.Diagnostic{
		Code: diag.CodeNotSteady, At: w.at(recipe.PathCharge),
		Summary: "with its feints returned the spirit run never comes to repeat itself: they grow from batch to batch",
		Reason:  "two cuts by strength fix how much water leaves with the alcohol; what the low wines bring over that stays in the feints",
	}
	if s := w.b.Spirit; slices.Contains([]recipe.CutBy{recipe.ByVolume, recipe.ByShare, recipe.ByTime}, s.HeartsFrom.By) {
		d.Reason = "more alcohol or more water goes back with the feints than hearts and lees carry off"
	}
	var offers []string
	var last numbers.WayBy
	for _, way := range ways {
		if way.By != last && sound(way, w.list) {
			offers, last = append(offers, offer(w, way)), way.By
		}
	}
	d.Help = "tried for this batch: " + strings.Join(offers, "; or ")
	if len(offers) == 0 {
		d.Help = "cuts farther apart, or other low wines: with these neither a volume at which the hearts begin, nor water in the charge, nor feints of a stated amount gives a run to work"
		if way, stop := obstacle(ways, w.list); stop != nil {
			d.Help = "`" + writtenCut(w, way.Batch) + "` would settle, and then " + stop.Summary + ": " + stop.Help
		}
	}
	w.add(d)
}

// obstacle is the first way that would do, and what alone keeps it from being one
// to work.
func obstacle(ways []numbers.Way, said diag.List) (numbers.Way, *diag.Diagnostic) {
	for _, way := range ways {
		if way.By == numbers.HeartsByVolume && balanced(way.Spirit) {
			return way, against(way, said)
		}
	}
	return numbers.Way{}, nil
}

// sound reports whether a way gives a run to work: one of which there is nothing to say
// that would stop it or is not said already, and whose heads and hearts are as
// heads and hearts are.
func sound(way numbers.Way, said diag.List) bool {
	return balanced(way.Spirit) && against(way, said) == nil
}

// against is what there is to be said against a way that is not said already.
func against(way numbers.Way, said diag.List) *diag.Diagnostic {
	for _, d := range Spirit(way.Batch, way.Spirit, nil) {
		same := func(known diag.Diagnostic) bool { return known.Code == d.Code }
		if d.Severity == diag.Error || d.Severity == diag.Warning && !slices.ContainsFunc(said, same) {
			return &d
		}
	}
	return nil
}

func balanced(run numbers.Spirit) bool {
	hearts, heads := run.Fraction(still.Hearts).EthanolKg, run.Fraction(still.Heads).EthanolKg
	lowWines := run.Charge.EthanolKg - run.Returned.EthanolKg
	return hearts >= heartsLeast*lowWines && heads <= headsMost*hearts
}

func writtenCut(w *writer, b *recipe.Batch) string {
	return "hearts from " + writtenVolume(w, b.Spirit.HeartsFrom.VolumeM3) + " to ..."
}

// offer is a way as the batch would write it, with what it gives.
func offer(w *writer, way numbers.Way) string {
	s, charges := way.Batch.Spirit, float64(max(way.Batch.Spirit.Charges, 1))
	hearts := lot.Of(way.Spirit.Fraction(still.Hearts).Scale(charges))
	gives := fmt.Sprintf(", which gives %s of hearts at %s", w.say.Volume(hearts), w.say.Strength(hearts.Strength()))
	switch way.By {
	case numbers.HeartsByVolume:
		return "`" + writtenCut(w, way.Batch) + "`" + gives
	case numbers.WaterInCharge:
		return "`" + watered(w, 100*s.WaterTo.Value) + "`" + gives
	case numbers.FirstBatch:
		return "in a first batch, `feints none yet`" + gives
	default:
		today := way.Batch.Today
		at := wording.Restated(measure.Number(100*today.FeintsAt.Value, 0)+" % abv", w.reader())
		if w.b.Gauge == recipe.US {
			at = measure.Number(200*today.FeintsAt.Value, 0) + " proof"
		}
		return "with what a first batch leaves, `feints " + writtenVolume(w, today.FeintsM3) + " at " + at + "`" + gives
	}
}

// writtenVolume is a volume as the batch writes it, to a tenth.
func writtenVolume(w *writer, m3 float64) string {
	if w.b.Gauge == recipe.US {
		return strings.TrimSuffix(measure.Number(m3/fluid.USGallonM3, 1), ".0") + " gal"
	}
	return strings.TrimSuffix(measure.Number(m3*lot.LitresPerM3, 1), ".0") + " L"
}
