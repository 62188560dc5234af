package notice

import (
	"slices"

	"newmake/compile/plan"
	"newmake/lang/diag"
)

// InPlan is a list as a plan keeps it. Of errors a plan that is worked from has
// none but promises that are not kept.
func InPlan(list diag.List) []plan.Notice {
	out := []plan.Notice{}
	for _, d := range list {
		line, _ := d.At.Position()
		out = append(out, plan.Notice{
			Code: string(d.Code), Severity: d.Severity.String(),
			Summary: d.Summary, Help: d.Help, Reason: d.Reason, Line: line,
		})
	}
	return out
}

// sooner names, for what computing shows, the checker's codes that say the same
// from the text alone.
var sooner = map[diag.Code][]diag.Code{
	diag.CodePitchHot:    {diag.CodeSetTemperature},
	diag.CodePitchCold:   {diag.CodeSetTemperature},
	diag.CodeNotCooked:   {diag.CodeRawStarch},
	diag.CodeEnzymesDead: {diag.CodeEnzymesDie},
	diag.CodeUnconverted: {diag.CodeWeakEnzymes, diag.CodeNoEnzymes, diag.CodeEnzymeWindow},
}

// Together joins what the checker and the computed numbers say of one batch, without
// saying the same thing twice. A note of the checker's leaves room for a warning: a
// grist of little power may still convert, or not at all.
func Together(checked, computed diag.List) diag.List {
	out := append(diag.List{}, checked...)
	for _, d := range computed {
		said := false
		for _, c := range checked {
			said = said || slices.Contains(sooner[d.Code], c.Code) && c.Severity <= d.Severity
		}
		if !said {
			out.Add(d)
		}
	}
	out.Sort()
	return out.Dedup()
}
