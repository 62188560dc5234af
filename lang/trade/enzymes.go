package trade

import (
	"fmt"

	"newmake/lang/diag"
	"newmake/lang/recipe"
	"newmake/lang/wording"
)

// Temperatures of malt's enzymes, and the power of a grist (common practice; see
// the references in the library). Beta-amylase dies in minutes above 68 C, 155 F;
// alpha-amylase is gone above 80 C.
const (
	maltMostC    = 68.5
	maltDiesC    = 80
	convertLowC  = 45
	convertHighC = 75
	convertLeast = 10 * 60 // s of rest in which something is converted

	preMalt = 0.05 // of the bill: a little malt goes in with the cook to thin it, and is given up

	selfConverts  = 35 // degrees Lintner of the grist: floor for malt alone
	powerLeast    = 20 // below it malt alone leaves starch behind
	powerWithDose = 12 // with a liquefying enzyme in the cook
	bourbonUsual  = 24
)

// hasEnzymes reports whether a grain can convert starch.
func hasEnzymes(g *recipe.Grain) bool { return !g.Roasted && (g.LintnerPower > 0 || g.AlphaDU > 0) }

// converts reports whether anything in the batch makes sugar of starch.
func converts(r *rules, w *walkthrough) bool { return saccharifies(r) || len(lives(r, w)) > 0 }

// saccharifies reports whether an enzyme preparation makes sugar.
func saccharifies(r *rules) bool {
	for _, d := range r.batch.Ferm.Doses {
		if d.Enzyme.Does == recipe.Saccharifying {
			return true
		}
	}
	return dosed(r, recipe.Saccharifying)
}

// dosed reports whether an enzyme of a kind goes into the mash.
func dosed(r *rules, kind recipe.EnzymeKind) bool {
	for _, s := range r.batch.Mash.Steps {
		if s.Enzyme != nil && s.Enzyme.Does == kind {
			return true
		}
	}
	return false
}

// life is what becomes of one malt's enzymes.
type life struct {
	line     int
	metC     float64          // the temperature it meets when it goes in
	killedBy *recipe.MashStep // heats it above 80 C before it had time to work
	restS    float64          // of rest at a temperature at which it converts
}

func (l life) alive() bool { return l.metC <= maltDiesC && l.killedBy == nil }

// lives follows every malt of the bill through the mash.
func lives(r *rules, w *walkthrough) []life {
	var out []life
	for i, line := range r.batch.Bill.Lines {
		from, ok := w.added[i]
		if !ok || !hasEnzymes(line.Grain) || line.MassKg == 0 {
			continue
		}
		l := life{line: i, metC: w.moments[from].meetsC()}
		for j := from + 1; j < len(w.moments); j++ {
			m := &w.moments[j]
			if m.afterC > maltDiesC {
				if l.restS < convertLeast {
					l.killedBy = m.step
				}
				break
			}
			if m.step.Verb == recipe.MashRest && m.afterC >= convertLowC && m.afterC <= convertHighC {
				l.restS += m.step.DurationS
			}
		}
		out = append(out, l)
	}
	return out
}

// checkEnzymes sees that something makes sugar of the starch, and that it lives
// to do it.
func checkEnzymes(r *rules, w *walkthrough) {
	if !starchy(r) {
		return
	}
	lives := lives(r, w)
	added := saccharifies(r)
	var lintner, rests float64
	living := 0
	for _, l := range lives {
		if l.alive() && l.metC <= maltDiesC {
			living++
			lintner += r.batch.Bill.Lines[l.line].MassKg * r.batch.Bill.Lines[l.line].Grain.LintnerPower
			rests = max(rests, l.restS)
		}
	}
	for _, l := range lives {
		maltHeat(r, w, l, living > 0 || added)
	}
	switch {
	case added:
	case len(lives) == 0:
		noEnzymes(r)
	case living > 0 && rests < convertLeast:
		r.add(diag.Diagnostic{
			Code: diag.CodeEnzymeWindow, Severity: diag.Warning, Summary: "the malt gets no rest in which to convert the starch", At: r.batch.Mash.At,
			Help: fmt.Sprintf("rest the mash for 30 to 60 min near %s once the malt is in", r.temp(64.5)),
		})
	case living > 0:
		weakGrist(r, lintner/r.batch.Bill.TotalKg)
	}
}

// starchy reports whether there is starch to convert.
func starchy(r *rules) bool {
	for _, l := range r.batch.Bill.Lines {
		if l.Grain.Starch > 0 && l.MassKg > 0 {
			return true
		}
	}
	return false
}

// maltHeat speaks of a malt that meets a mash too hot for it. It is an error if
// nothing else is left to convert the starch.
func maltHeat(r *rules, w *walkthrough, l life, other bool) {
	g := r.batch.Bill.Lines[l.line].Grain
	step := w.moments[w.added[l.line]].step
	d := diag.Diagnostic{
		Code: diag.CodeEnzymesDie, At: r.at(step.Path.Child(g.Name)),
	}
	if other {
		d.Severity = diag.Warning
	}
	most := maltMostC
	if g.MostC > 0 {
		most = g.MostC + 0.5
	}
	switch {
	case l.metC > maltDiesC:
		d.Summary = fmt.Sprintf("`%s` goes in at %s: its enzymes die", g.Name, r.temp(l.metC))
	case l.killedBy != nil && other && r.batch.Bill.Lines[l.line].Share <= preMalt:
		return // it was put in to thin the cook, and has
	case l.killedBy != nil:
		d.At = r.at(l.killedBy.Path.Child("to"))
		d.Summary = fmt.Sprintf("this heats `%s` above %s before it has converted anything: its enzymes die", g.Name, r.temp(maltDiesC))
		d.Help = "put the malt in after the cook, when the mash has cooled"
		d.Related = []diag.Related{{At: r.at(step.Path.Child(g.Name)), Text: "it goes in here"}}
	case l.metC > most:
		d.Severity = diag.Warning
		d.Summary = fmt.Sprintf("`%s` goes in at %s, where much of its enzymes dies", g.Name, r.temp(l.metC))
	default:
		return
	}
	if d.Help == "" {
		d.Help = fmt.Sprintf("cool the mash to %s before the malt goes in, and rest it there", r.temp(64.5))
	}
	d.Reason = wording.Prose("beta-amylase dies within minutes above 155 F (68 C), alpha-amylase above 176 F (80 C)", r.at(step.Path.Child(g.Name)).Units())
	r.add(d)
}

func noEnzymes(r *rules) {
	d := diag.Diagnostic{
		Code: diag.CodeNoEnzymes, Summary: "nothing in this batch makes sugar of the starch", At: r.batch.Where[recipe.PathBill],
		Help:   "put malt with enzymes in the bill, such as `distillers-malt`, or dose `glucoamylase`",
		Reason: "yeast takes sugar, not starch: without malt or a saccharifying enzyme there is nothing to ferment",
	}
	if dosed(r, recipe.Liquefying) {
		d.Summary = "nothing in this batch makes sugar: a liquefying enzyme stops at dextrins"
	}
	r.add(d)
}

// weakGrist speaks of a grist that is weak in enzymes.
func weakGrist(r *rules, lintner float64) {
	least, usual := float64(powerLeast), float64(selfConverts)
	if dosed(r, recipe.Liquefying) {
		least, usual = powerWithDose, powerLeast
	}
	d := diag.Diagnostic{
		Code: diag.CodeWeakEnzymes, Severity: diag.Warning, At: r.batch.Where[recipe.PathBill],
		Summary: fmt.Sprintf("the grist has a diastatic power of %s lintner, which is little", wording.Decimal(lintner)),
		Help:    "more malt, a stronger malt such as `distillers-malt`, or a dose of enzyme",
		Reason:  fmt.Sprintf("a grist converts itself from about %d lintner; bourbon with distillers' malt stands near %d (common practice)", selfConverts, bourbonUsual),
	}
	switch {
	case lintner < least:
	case lintner < usual:
		d.Severity = diag.Note
	default:
		return
	}
	r.add(d)
}

// checkDoses holds every dose against its maker's range, and the enzyme against
// the temperatures that it meets.
func checkDoses(r *rules, w *walkthrough) {
	for i := range w.moments {
		s := w.moments[i].step
		if s.Enzyme == nil { // no dose
			continue
		}
		doseRange(r, s.Enzyme, s.MassKg, s.At)
		doseWindow(r, w, i)
	}
	for _, d := range r.batch.Ferm.Doses {
		doseRange(r, d.Enzyme, d.MassKg, d.At)
		if f := &r.batch.Ferm; f.HoldHighC > 0 && (f.HoldHighC < d.Enzyme.LowC || f.HoldLowC > d.Enzyme.HighC) {
			r.add(diag.Diagnostic{
				Code: diag.CodeEnzymeWindow, Severity: diag.Warning, At: d.At,
				Summary: fmt.Sprintf("`%s` works between %s and %s, and the ferment is held outside that", d.Enzyme.Name, r.temp(d.Enzyme.LowC), r.temp(d.Enzyme.HighC)),
				Help:    "dose it in the mash, or use another enzyme",
				Related: []diag.Related{{At: r.at(recipe.PathHold), Text: "the ferment is held here"}},
			})
		}
	}
}

func doseRange(r *rules, z *recipe.Enzyme, kg float64, at diag.Span) {
	share := kg / r.batch.Bill.TotalKg
	if z.DoseHigh == 0 || share >= z.DoseLow*0.999 && share <= z.DoseHigh*1.001 {
		return
	}
	r.add(diag.Diagnostic{
		Code: diag.CodeDose, Severity: diag.Warning, At: at,
		Summary: fmt.Sprintf("this doses `%s` at %s of the grain", z.Name, percent(share)),
		Help:    fmt.Sprintf("usual: %s to %s of the grain", percent(z.DoseLow), percent(z.DoseHigh)),
		Reason:  "too little does nothing in its time, and too much costs money",
	})
}

// doseWindow warns of an enzyme that dies before it works, or never works.
func doseWindow(r *rules, w *walkthrough, dosed int) {
	z := w.moments[dosed].step.Enzyme
	if z.HighC == 0 {
		return
	}
	const margin = 0.5
	for i := dosed; i < len(w.moments); i++ {
		m := &w.moments[i]
		if m.afterC > z.MostC+margin {
			r.add(diag.Diagnostic{
				Code: diag.CodeEnzymeWindow, Severity: diag.Warning, At: w.moments[dosed].step.At,
				Summary: fmt.Sprintf("`%s` dies before it works: the mash gets to %s, and above %s it is gone", z.Name, r.temp(m.afterC), r.temp(z.MostC)),
				Help:    fmt.Sprintf("dose it when the mash is between %s and %s", r.temp(z.LowC), r.temp(z.HighC)),
				Related: []diag.Related{{At: r.at(m.step.Path.Child("to")), Text: "it dies here"}},
			})
			return
		}
		if m.afterC >= z.LowC-margin && m.afterC <= z.HighC+margin && m.step.Verb == recipe.MashRest {
			return
		}
	}
	if f := &r.batch.Ferm; f.HoldHighC >= z.LowC && f.HoldLowC <= z.HighC {
		return // it works on in the fermenter
	}
	r.add(diag.Diagnostic{
		Code: diag.CodeEnzymeWindow, Severity: diag.Warning, At: w.moments[dosed].step.At,
		Summary: fmt.Sprintf("`%s` gets no rest where it works, between %s and %s", z.Name, r.temp(z.LowC), r.temp(z.HighC)),
		Help:    "rest the mash there once it is dosed",
	})
}
