package check

import (
	"fmt"

	"newmake/lang/diag"
	"newmake/lang/recipe"
)

// Temperatures of malt's enzymes, and the power of a grist (common practice; see
// the references in the stock). Beta-amylase dies in minutes above 68 C, 155 F;
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

// hasEnzymes says that a grain can convert starch.
func hasEnzymes(g *recipe.Grain) bool { return !g.Roasted && (g.LintnerPower > 0 || g.AlphaDU > 0) }

// converts says whether anything in the batch makes sugar of starch.
func (b *builder) converts(w *walkthrough) bool { return b.saccharifies() || len(b.lives(w)) > 0 }

// saccharifies says whether an enzyme preparation makes sugar.
func (b *builder) saccharifies() bool {
	for _, d := range b.batch.Ferm.Doses {
		if d.Enzyme.Does == recipe.Saccharifying {
			return true
		}
	}
	return b.dosed(recipe.Saccharifying)
}

// dosed says whether an enzyme of a kind goes into the mash.
func (b *builder) dosed(kind recipe.EnzymeKind) bool {
	for _, s := range b.batch.Mash.Steps {
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
func (b *builder) lives(w *walkthrough) []life {
	var out []life
	for i, line := range b.batch.Bill.Lines {
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

// tradeEnzymes sees that something makes sugar of the starch, and that it lives
// to do it.
func (b *builder) tradeEnzymes(w *walkthrough) {
	if !b.starchy() {
		return
	}
	lives := b.lives(w)
	added := b.saccharifies()
	var power, rests float64
	living := 0
	for _, l := range lives {
		if l.alive() && l.metC <= maltDiesC {
			living++
			power += b.batch.Bill.Lines[l.line].MassKg * b.batch.Bill.Lines[l.line].Grain.LintnerPower
			rests = max(rests, l.restS)
		}
	}
	for _, l := range lives {
		b.maltHeat(w, l, living > 0 || added)
	}
	switch {
	case added:
	case len(lives) == 0:
		b.noEnzymes()
	case living > 0 && rests < convertLeast:
		b.add(diag.Diagnostic{
			Code: diag.CodeEnzymeWindow, Severity: diag.Warning, Summary: "the malt gets no rest in which to convert the starch", At: b.batch.Mash.At,
			Help: fmt.Sprintf("rest the mash for 30 to 60 min near %s once the malt is in", b.temp(64.5)),
		})
	case living > 0:
		b.power(power / b.batch.Bill.TotalKg)
	}
}

// starchy says that there is starch to convert.
func (b *builder) starchy() bool {
	for _, l := range b.batch.Bill.Lines {
		if l.Grain.Starch > 0 && l.MassKg > 0 {
			return true
		}
	}
	return false
}

// maltHeat speaks of a malt that meets a mash too hot for it. It is an error if
// nothing else is left to convert the starch.
func (b *builder) maltHeat(w *walkthrough, l life, other bool) {
	g := b.batch.Bill.Lines[l.line].Grain
	step := w.moments[w.added[l.line]].step
	d := diag.Diagnostic{
		Code: diag.CodeEnzymesDie, At: b.at(step.Path + "." + g.Name),
		Help:   fmt.Sprintf("cool the mash to %s before the malt goes in, and rest it there", b.temp(64.5)),
		Reason: "beta-amylase dies within minutes above 155 F (68 C), alpha-amylase above 176 F (80 C)",
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
		d.Summary = fmt.Sprintf("`%s` goes in at %s: its enzymes die", g.Name, b.temp(l.metC))
	case l.killedBy != nil && other && b.batch.Bill.Lines[l.line].Share <= preMalt:
		return // it was put in to thin the cook, and has
	case l.killedBy != nil:
		d.At = b.at(l.killedBy.Path + ".to")
		d.Summary = fmt.Sprintf("this heats `%s` above %s before it has converted anything: its enzymes die", g.Name, b.temp(maltDiesC))
		d.Help = "put the malt in after the cook, when the mash has cooled"
		d.Related = []diag.Related{{At: b.at(step.Path + "." + g.Name), Text: "it goes in here"}}
	case l.metC > most:
		d.Severity = diag.Warning
		d.Summary = fmt.Sprintf("`%s` goes in at %s, where much of its enzymes dies", g.Name, b.temp(l.metC))
	default:
		return
	}
	b.add(d)
}

func (b *builder) noEnzymes() {
	d := diag.Diagnostic{
		Code: diag.CodeNoEnzymes, Summary: "nothing in this batch makes sugar of the starch", At: b.batch.Where["bill"],
		Help:   "put malt with enzymes in the bill, such as `distillers-malt`, or dose `glucoamylase`",
		Reason: "yeast takes sugar, not starch: without malt or a saccharifying enzyme there is nothing to ferment",
	}
	if b.dosed(recipe.Liquefying) {
		d.Summary = "nothing in this batch makes sugar: a liquefying enzyme stops at dextrins"
	}
	b.add(d)
}

// power speaks of a grist that is weak in enzymes.
func (b *builder) power(lintner float64) {
	least, usual := float64(powerLeast), float64(selfConverts)
	if b.dosed(recipe.Liquefying) {
		least, usual = powerWithDose, powerLeast
	}
	d := diag.Diagnostic{
		Code: diag.CodeWeakEnzymes, Severity: diag.Warning, At: b.batch.Where["bill"],
		Summary: fmt.Sprintf("the grist has a diastatic power of %s lintner, which is little", decimal(lintner)),
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
	b.add(d)
}

// tradeDoses holds every dose against its maker's range, and the enzyme against
// the temperatures that it meets.
func (b *builder) tradeDoses(w *walkthrough) {
	for i := range w.moments {
		s := w.moments[i].step
		if s.Verb != recipe.MashDose || s.Enzyme == nil {
			continue
		}
		b.doseRange(s.Enzyme, s.MassKg, s.At)
		b.doseWindow(w, i)
	}
	for _, d := range b.batch.Ferm.Doses {
		b.doseRange(d.Enzyme, d.MassKg, d.At)
		if f := &b.batch.Ferm; f.HoldHighC > 0 && (f.HoldHighC < d.Enzyme.LowC || f.HoldLowC > d.Enzyme.HighC) {
			b.add(diag.Diagnostic{
				Code: diag.CodeEnzymeWindow, Severity: diag.Warning, At: d.At,
				Summary: fmt.Sprintf("`%s` works between %s and %s, and the ferment is held outside that", d.Enzyme.Name, b.temp(d.Enzyme.LowC), b.temp(d.Enzyme.HighC)),
				Help:    "dose it in the mash, or use another enzyme",
				Related: []diag.Related{{At: b.at("ferment.hold"), Text: "the ferment is held here"}},
			})
		}
	}
}

func (b *builder) doseRange(z *recipe.Enzyme, kg float64, at diag.Span) {
	share := kg / b.batch.Bill.TotalKg
	if z.DoseHigh == 0 || share >= z.DoseLow*0.999 && share <= z.DoseHigh*1.001 {
		return
	}
	b.add(diag.Diagnostic{
		Code: diag.CodeDose, Severity: diag.Warning, At: at,
		Summary: fmt.Sprintf("this doses `%s` at %s of the grain", z.Name, percent(share)),
		Help:    fmt.Sprintf("usual: %s to %s of the grain", percent(z.DoseLow), percent(z.DoseHigh)),
		Reason:  "too little does nothing in its time, and too much costs money",
	})
}

// doseWindow warns of an enzyme that dies before it works, or never works.
func (b *builder) doseWindow(w *walkthrough, dosed int) {
	z := w.moments[dosed].step.Enzyme
	if z.HighC == 0 {
		return
	}
	const margin = 0.5
	for i := dosed; i < len(w.moments); i++ {
		m := &w.moments[i]
		if m.afterC > z.MostC+margin {
			b.add(diag.Diagnostic{
				Code: diag.CodeEnzymeWindow, Severity: diag.Warning, At: w.moments[dosed].step.At,
				Summary: fmt.Sprintf("`%s` dies before it works: the mash gets to %s, and above %s it is gone", z.Name, b.temp(m.afterC), b.temp(z.MostC)),
				Help:    fmt.Sprintf("dose it when the mash is between %s and %s", b.temp(z.LowC), b.temp(z.HighC)),
				Related: []diag.Related{{At: b.at(m.step.Path + ".to"), Text: "it dies here"}},
			})
			return
		}
		if m.afterC >= z.LowC-margin && m.afterC <= z.HighC+margin && m.step.Verb == recipe.MashRest {
			return
		}
	}
	if f := &b.batch.Ferm; f.HoldHighC >= z.LowC && f.HoldLowC <= z.HighC {
		return // it works on in the fermenter
	}
	b.add(diag.Diagnostic{
		Code: diag.CodeEnzymeWindow, Severity: diag.Warning, At: w.moments[dosed].step.At,
		Summary: fmt.Sprintf("`%s` gets no rest where it works, between %s and %s", z.Name, b.temp(z.LowC), b.temp(z.HighC)),
		Help:    "rest the mash there once it is dosed",
	})
}
