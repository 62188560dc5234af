package trade

import (
	"fmt"
	"math"

	"newmake/lang/diag"
	"newmake/lang/quantity"
	"newmake/lang/recipe"
	"newmake/lang/wording"
)

// azeotrope is the strength at which vapour and liquid are the same: no still
// that boils at ordinary pressure gives more. 95.6 % by mass, 97.2 % vol at 20 C
// (from memory; data/altitude_boiling.csv has 0.895 mole fraction).
const azeotrope = 0.972

// basisMargin is how far two strengths written in different terms (% abv at 20 C,
// proof at 60 F) may differ and still mean the same; the plan has the tables.
const basisMargin = 0.002

// checkSpirit looks at the cuts: their order, and whether a still can give them.
func checkSpirit(r *rules) {
	s := &r.batch.Spirit
	for _, c := range []recipe.Cut{s.HeartsFrom, s.HeartsTo} {
		if c.By == recipe.ByStrength && (c.Strength.Basis != recipe.ABW && c.Strength.Value > azeotrope || c.Strength.Value > 1) {
			r.add(diag.Diagnostic{
				Code: diag.CodeCutBeyond, At: c.At, Summary: "no pot still gives that strength",
				Help:   fmt.Sprintf("a spirit run begins near %s; nothing boils off stronger than %s", wording.Restated("75 to 80 % abv", c.At.Units()), wording.Restated(percent(azeotrope)+" abv", c.At.Units())),
				Reason: "there vapour and liquid are the same",
			})
			return
		}
	}
	cutOrder(r)
	cutByTheClock(r)
	if t := r.batch.Today; t.FeintsM3 > 0 && !s.Feints {
		r.add(diag.Diagnostic{
			Code: diag.CodeFeintsUnused, Severity: diag.Warning, At: r.at(recipe.PathFeints),
			Summary: "these feints go nowhere: the charge takes low wines alone",
			Help:    "write `charge low-wines, feints`, or take this line out",
			Related: []diag.Related{{At: r.at(recipe.PathCharge), Text: "the charge is here"}},
		})
	}
	if s.ForeshotsM3 == 0 {
		r.add(diag.Diagnostic{
			Code: diag.CodeNoForeshots, Severity: diag.Warning, At: r.at(recipe.PathSpirit),
			Summary: "no foreshots are set aside", Help: "add a line such as " + wording.Example(r.at(recipe.PathSpirit), "foreshots 0.5 gal"),
			Reason: "the first of the run carries acetaldehyde and the last of the run before; it is set aside and never drunk",
		})
	}
	if c := s.HeartsTo; c.By == recipe.ByStrength && weaker(c.Strength, s.Stop) {
		at := r.at(recipe.PathSpiritStop)
		r.add(diag.Diagnostic{
			Code: diag.CodeStopEarly, At: at, Summary: "the run stops while the hearts are still coming",
			Help:    "stop at a weaker strength than the one at which the hearts end",
			Related: []diag.Related{{At: c.At, Text: "the hearts end here"}},
		})
	}
}

// cutOrder sees that the hearts begin before they end. As a run goes on its
// strength falls, and the volume, the vapour's temperature and the share that has
// come over rise. Cuts of two kinds are compared when the run is computed.
func cutOrder(r *rules) {
	s := &r.batch.Spirit
	from, to := s.HeartsFrom, s.HeartsTo
	var crossed bool
	help := ""
	switch {
	case from.By != to.By:
		return
	case from.By == recipe.ByStrength:
		crossed = !weaker(to.Strength, from.Strength)
		help = "the strength falls as the run goes on: begin at the higher one, or by volume, as in " + wording.Example(from.At, "hearts from 4 gal to 62 % abv")
	case from.By == recipe.ByVolume:
		crossed = from.VolumeM3 >= to.VolumeM3
		help = "volumes are counted from the first drop: begin at the smaller one"
	case from.By == recipe.ByVapourTemp:
		crossed = from.TempC >= to.TempC
		help = "the vapour gets hotter as the run goes on: begin at the lower temperature"
	case from.By == recipe.ByShare:
		crossed = from.Share >= to.Share
		help = "shares are counted from the first drop: begin at the smaller one"
	case from.By == recipe.ByTime:
		crossed = from.TimeS >= to.TimeS
		help = "times are counted from the first drop: begin at the shorter one"
	}
	if crossed {
		r.add(diag.Diagnostic{
			Code: diag.CodeCutsCrossed, At: from.At.To(to.At), Summary: "the hearts end before they begin", Help: help,
		})
		return
	}
	if from.By == recipe.ByVolume && from.VolumeM3 < s.ForeshotsM3-recipe.SameVolumeM3 {
		r.add(diag.Diagnostic{
			Code: diag.CodeInForeshots, Severity: diag.Error, At: from.At, Summary: "the hearts begin within the foreshots",
			Help:    "volumes are counted from the first drop, foreshots and all",
			Related: []diag.Related{{At: r.at(recipe.PathForeshots), Text: "the foreshots are here"}},
		})
	}
}

// cutByTheClock sees that hearts by the clock begin after the foreshots, and that what comes
// before a cut by the clock has a flow or a heat: by how long it takes nothing would be said
// of how much it is.
func cutByTheClock(r *rules) {
	s := &r.batch.Spirit
	if over, from := s.Pace.Foreshots.OverS, s.HeartsFrom; from.By == recipe.ByTime && s.ForeshotsM3 > 0 && from.TimeS < over-recipe.SameTimeS {
		r.add(diag.Diagnostic{
			Code: diag.CodeInForeshots, Severity: diag.Error, At: from.At, Summary: "the hearts begin within the foreshots",
			Help:    fmt.Sprintf("times are counted from the first drop, and the foreshots come over in %s: begin later, or bring them over sooner, in `pace`", wording.In(over, "min", quantity.Duration)),
			Related: []diag.Related{{At: r.at(recipe.PathForeshots), Text: "the foreshots are here"}},
		})
	}
	for _, c := range []struct {
		cut      recipe.Cut
		pace     recipe.FractionPace
		fraction string
		ends     string
	}{
		{s.HeartsFrom, s.Pace.Heads, "heads", "begin the hearts"},
		{s.HeartsTo, s.Pace.Hearts, "hearts", "end them"},
	} {
		if c.cut.By != recipe.ByTime || c.pace.OverS == 0 {
			continue
		}
		r.add(diag.Diagnostic{
			Code: diag.CodeCutNeedsPace, At: c.cut.At, Summary: c.fraction + " that end at a time, and run over a time, say nothing of how much they are",
			Help:   "say in `pace` how fast they run, as in " + wording.Example(c.cut.At, c.fraction+" at 20 gal/h") + "; or " + c.ends + " by strength",
			Reason: "in the same time twice the flow is twice as much",
		})
	}
}

// weaker reports whether a is weaker than b, for certain.
func weaker(a, b recipe.Strength) bool {
	if a.Basis == b.Basis {
		return a.Value < b.Value
	}
	if a.Basis == recipe.ABW || b.Basis == recipe.ABW {
		return roughABV(a) < roughABV(b)-0.01
	}
	return a.Value < b.Value-basisMargin
}

// roughABV brings a strength by mass to one by volume, within a hundredth:
// densities 0.789 and 0.998, contraction left out.
func roughABV(s recipe.Strength) float64 {
	if s.Basis != recipe.ABW {
		return s.Value
	}
	v := s.Value / 0.789
	return v / (v + (1-s.Value)/0.998) * (1 + 0.035*math.Sin(math.Pi*s.Value))
}
