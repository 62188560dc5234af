package trade

import (
	"fmt"

	"newmake/lang/diag"
	"newmake/lang/quantity"
	"newmake/lang/recipe"
	"newmake/lang/wording"
)

// Liquor to grist, in m3 a kg. Malt is mashed at 2.5-4 L/kg; bourbon at about 22
// US gal a distiller's bushel (3.3 L/kg) at craft scale, 30-40 (4.5-6) in large
// plants (common practice).
const (
	thickest = 2.3e-3
	thinnest = 7e-3
)

// checkThickness looks at how thick the mash is, and at the share of backset.
func checkThickness(r *rules, w *walkthrough) {
	var thick *moment
	for i := range w.moments {
		m := &w.moments[i]
		switch m.step.Verb {
		case recipe.MashHeat, recipe.MashRest, recipe.MashCool, recipe.MashBoil:
			if m.grainKg > 0 && i <= w.firstDrain && m.liquorM3 > 0 && m.liquorM3/m.grainKg < thickest &&
				(thick == nil || m.liquorM3/m.grainKg < thick.liquorM3/thick.grainKg) {
				thick = m
			}
		}
	}
	if thick != nil {
		r.add(diag.Diagnostic{
			Code: diag.CodeThickness, Severity: diag.Warning, At: thick.step.At,
			Summary: fmt.Sprintf("the mash is very thick here: %s", r.ratio(thick.liquorM3/thick.grainKg)),
			Help:    "more water, or less grain",
			Reason:  "below about 2.3 L/kg a mash neither stirs nor cools, and its grain scorches",
		})
	}
	var liquor float64
	for _, s := range r.batch.Mash.Steps {
		if s.Verb == recipe.MashWater || s.Verb == recipe.MashBackset {
			liquor += s.VolumeM3
		}
	}
	if thin := liquor / r.batch.Bill.TotalKg; thin > thinnest {
		r.add(diag.Diagnostic{
			Code: diag.CodeThickness, Severity: diag.Warning, At: r.at(recipe.PathMashWater),
			Summary: fmt.Sprintf("the mash is very thin: %s", r.ratio(thin)),
			Help:    "less water, or more grain",
			Reason:  "a thin wash is weak, and all its water has to be heated twice",
		})
	}
	backsetShare(r)
}

func (r *rules) ratio(m3PerKg float64) string {
	if r.batch.Units == recipe.US {
		return fmt.Sprintf("%s gal a distiller's bushel (%s L/kg)", wording.Decimal(m3PerKg*56*quantity.PoundKg/quantity.USGallonM3), wording.Decimal(m3PerKg*1000))
	}
	return wording.Decimal(m3PerKg*1000) + " L/kg"
}

func backsetShare(r *rules) {
	share := r.batch.Mash.BacksetShare
	d := diag.Diagnostic{
		Code: diag.CodeBackset, At: r.at(recipe.PathBackset),
		Reason: "backset is 10 to 33 % of the liquor: less hardly sours the mash, more brings acid and salt that harm the yeast (common practice)",
	}
	switch {
	case share > 0.6:
		d.Summary, d.Help = fmt.Sprintf("backset is %s of the liquor", percent(share)), "usual: 10 % to 33 %; with so much, yeast does not ferment"
	case share > 0.333:
		d.Severity, d.Summary, d.Help = diag.Warning, fmt.Sprintf("backset is %s of the liquor, which is much", percent(share)), "usual: 10 % to 33 %"
	case share > 0 && share < 0.0995:
		d.Severity, d.Summary, d.Help = diag.Note, fmt.Sprintf("backset is %s of the liquor, which is little", percent(share)), "usual: 10 % to 33 %"
	default:
		return
	}
	r.add(d)
}

// checkVolumes sees what can't fit a vessel however it is computed. Whether it
// fits with its headspace, hot, is for the plan to say.
func checkVolumes(r *rules, w *walkthrough) {
	cooker := r.batch.Mash.Cooker
	for i := range w.moments {
		if m := &w.moments[i]; m.volumeM3() > cooker.HoldsM3 {
			tooFull(r, diag.CodeCookerFull, m.step.At, "the mash", m.volumeM3(), cooker)
			break
		}
	}
	out := w.outM3()
	var largest *recipe.Vessel
	for _, v := range r.batch.Ferm.Vessels {
		if largest == nil || v.HoldsM3 > largest.HoldsM3 {
			largest = v
		}
	}
	if largest != nil && out > largest.HoldsM3 {
		tooFull(r, diag.CodeFermenterFull, r.batch.Ferm.At, "the wash", out, largest)
	}
	if s := &r.batch.Strip; r.can.Strip && out/float64(s.Charges) > s.Still.HoldsM3 {
		tooFull(r, diag.CodeStillFull, s.At, "a charge of the wash", out/float64(s.Charges), s.Still)
	}
}

func tooFull(r *rules, code diag.Code, at diag.Span, what string, m3 float64, v *recipe.Vessel) {
	kind := v.Kind.String()
	help := "a smaller bill with less water, or a larger vessel"
	if code == diag.CodeStillFull {
		help = "run it in more charges (`charges 2`), or make a smaller batch"
	}
	r.add(diag.Diagnostic{
		Code: code, At: at,
		Summary: fmt.Sprintf("%s is about %s, and the %s %q holds %s", what, r.volume(m3), kind, v.Name, r.volume(v.HoldsM3)),
		Help:    help,
		Reason:  "and no vessel is filled to the brim: a mash rises as it heats, a ferment and a boil foam",
		Related: []diag.Related{{At: v.At, Text: fmt.Sprintf("the %s is declared here", kind)}},
	})
}
