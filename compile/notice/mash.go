package notice

import (
	"fmt"
	"slices"

	"newmake/compile/numbers"
	"newmake/compile/report"
	"newmake/compile/stage/mash"
	"newmake/lang/diag"
	"newmake/lang/recipe"
)

// Where malt enzymes work (common practice).
const phLeast, phMost = 4.8, 5.9

// Mash is what a distiller should know of the mash.
func Mash(b *recipe.Batch, r mash.Result) diag.List {
	w := about(b)
	fullest(w, numbers.MashUse(b, r), "the mash at its fullest",
		"a smaller bill, or less liquor, or a larger cooker",
		"it rises when it is stirred and heated, and it is near the boil")
	boiler(w, b.Mash.Cooker, "mash")
	for _, p := range r.Problems {
		mashProblem(w, p)
	}
	starch(w, r)
	lauter(w, r)
	bakes(w)
	if to := b.Mash.Treatment.AcidToPH; to > 0 && r.PHWithoutAcid <= to {
		w.add(diag.Diagnostic{
			Code: diag.CodeNoAcidWanted, At: w.at(recipe.PathAcid),
			Summary: fmt.Sprintf("no acid goes in: the mash stands at pH %.2f without, and pH %.2f is asked for", r.PHWithoutAcid, to),
			Help:    "take the line out, or ask for a lower pH",
		})
	}
	if ph := r.PH; ph < phLeast || ph > phMost {
		w.add(diag.Diagnostic{
			Code: diag.CodeMashPH, At: w.at(recipe.PathMash),
			Summary: fmt.Sprintf("the mash stands at pH %.1f", ph),
			Help:    otherPH(w.b, ph > phMost, w.example("lime 2 oz")),
			Reason:  "malt enzymes work between about 4.8 and 5.9, best near 5.3 (common practice); the prediction is good to 0.2",
		})
	}
	return w.list
}

// otherPH is what brings a mash nearer to where enzymes work, of what the batch has.
func otherPH(b *recipe.Batch, tooHigh bool, lime string) string {
	backset := slices.ContainsFunc(b.Mash.Steps, func(s recipe.MashStep) bool { return s.Verb == recipe.MashBackset })
	switch {
	case tooHigh && backset:
		return "more backset lowers it, or an acid: a line `acid lactic to 5.4 pH` in the mash"
	case tooHigh:
		return "an acid lowers it: a line `acid lactic to 5.4 pH` in the mash"
	case b.Mash.Treatment.Acid != recipe.NoAcid:
		return "less acid raises it"
	case backset:
		return "less backset raises it, or slaked lime: a line " + lime + " in the mash"
	}
	return "slaked lime raises it: a line " + lime + " in the mash; or less roasted grain"
}

func mashProblem(w *writer, p mash.Problem) {
	s := w.b.Mash.Steps[p.Step]
	verb, path := s.Verb.Word(), s.Path
	d := diag.Diagnostic{At: s.At}
	if d.At.IsZero() {
		d.At = w.at(path)
	}
	to := w.say.Temp(p.ToC)
	switch p.What {
	case mash.ProblemAboveBoil:
		d.Code = diag.CodeAboveBoil
		d.Summary = fmt.Sprintf("%s to %s: water boils at %s here", verb, w.say.Temp(s.TempC), to)
		d.Help = fmt.Sprintf("ask for less than %s, or write `boil` with a time", to)
		d.Reason = "at " + w.say.Length(w.b.Plant.ElevationM) + " the air weighs less, and an open cooker gets no hotter"
	case mash.ProblemNoHeat:
		d.Code, d.Summary = diag.CodeNoHeat, fmt.Sprintf("%q has no heat, so it cannot be heated to %s", w.b.Mash.Cooker.Name, w.say.Temp(s.TempC))
		d.Help = "state what it heats at in house.batch, or let hotter liquor in"
	case mash.ProblemLoss:
		d.Code, d.Summary = diag.CodeNoHeat, fmt.Sprintf("the mash gets no hotter than %s: the vessel loses as much heat as it gets", to)
		d.Help = "more heat, or lagging"
	case mash.ProblemNoCooling:
		d.Code, d.Summary = diag.CodeCannotCool, fmt.Sprintf("%q has no cooling, so it cannot be cooled to %s", w.b.Mash.Cooker.Name, w.say.Temp(s.TempC))
		d.Help = "state what cools it in house.batch, for example " + w.example("cools by jacket 60 sqft, water 20 gal/min")
	case mash.ProblemWarmWater:
		asked := s.TempC
		if s.CooledC > 0 {
			asked = s.CooledC
		}
		d.Code, d.Summary = diag.CodeCannotCool, fmt.Sprintf("the mash cannot be cooled to %s: with water at %s it comes to %s", w.say.Temp(asked), w.say.Temp(w.b.SupplyC()), to)
		d.Help = "ask for a warmer temperature, or have colder water"
	case mash.ProblemSlower:
		d.Code, d.Summary = diag.CodeSlowStep, fmt.Sprintf("this %s takes longer than the time written: the plan shows how long", verb)
		d.Help = "give it more time, or leave the time out"
	case mash.ProblemAlreadyThere:
		d.Code, d.Summary = diag.CodeAlreadyThere, fmt.Sprintf("%s to %s has nothing to do: the mash is there already", verb, w.say.Temp(s.TempC))
		d.Help = "leave the line out, or mend its temperature"
	case mash.ProblemNothingDrawn:
		d.Code, d.Summary = diag.CodeNothingDrawn, "nothing runs off: the grain keeps all the liquor"
		d.Help = "let more liquor in before it is drained"
	default:
		d.Code, d.Summary = diag.CodeEmptyStep, fmt.Sprintf("%s with nothing in the cooker", verb)
		d.Help = "let water in first"
	}
	w.add(d)
}

// Shares below which the trade would ask what went wrong (common practice: a
// good mash converts nearly all; a tenth lost is money left in the draff).
const (
	cookedLeast    = 0.93
	convertedLeast = 0.93
	enzymesDead    = 0.05
)

// starch says why starch was lost, the first cause alone: what never
// gelatinized could not be converted, and dead enzymes convert nothing.
func starch(w *writer, r mash.Result) {
	if r.Conversion >= convertedLeast {
		return
	}
	lost := fmt.Sprintf("%.0f %% of the starch is not converted", 100*(1-r.Conversion))
	switch step, dead := diedIn(w.b, r); {
	case r.Gelatinized < cookedLeast:
		w.add(notCooked(w, r, lost))
	case dead:
		s := w.b.Mash.Steps[step]
		w.add(diag.Diagnostic{
			Code: diag.CodeEnzymesDead, At: s.At,
			Summary: fmt.Sprintf("%s: the malt's enzymes die here, at %s", lost, w.say.Temp(max(r.Steps[step].StartC, r.Steps[step].EndC))),
			Help:    "cool the mash before the malt goes in: " + w.say.Temp(64) + " to " + w.say.Temp(67) + " suits both amylases",
			Reason:  "beta-amylase is gone within minutes above " + w.say.Temp(68) + ", alpha-amylase above " + w.say.Temp(78),
		})
	default:
		w.add(diag.Diagnostic{
			Code: diag.CodeUnconverted, At: w.at(recipe.PathMash),
			Summary: lost + ", though it is cooked and the enzymes live",
			Help:    "a longer rest, more malt of high power, or an added enzyme",
			Reason:  fmt.Sprintf("the grist has %.0f deg Lintner", report.LintnerDeg(w.b.Bill)),
		})
	}
}

// notCooked names the grains that never came to the end of their
// gelatinization.
func notCooked(w *writer, r mash.Result, lost string) diag.Diagnostic {
	d := diag.Diagnostic{
		Code: diag.CodeNotCooked, At: w.at(recipe.PathMash),
		Summary: fmt.Sprintf("%s: %.0f %% never gelatinized", lost, 100*(1-r.Gelatinized)),
		Help:    "cook it hotter or longer before the malt goes in",
		Reason:  "no malt enzyme gets at starch in the granule",
	}
	worst := 0.0
	for i, s := range w.b.Mash.Steps {
		if s.Verb != recipe.MashAdd {
			continue
		}
		hottest := 0.0
		for _, later := range r.Steps[min(i, len(r.Steps)):] {
			hottest = max(hottest, later.EndC)
		}
		for _, l := range s.Grains {
			line := w.b.Bill.Lines[l]
			if short := line.Grain.GelHighC - hottest; short > 0 && short*line.MassKg > worst {
				worst = short * line.MassKg
				d.At = s.At
				d.Help = fmt.Sprintf("%s gelatinizes from %s to %s, and the mash comes to %s after it goes in: cook it",
					line.Grain.Name, w.say.Temp(line.Grain.GelLowC), w.say.Temp(line.Grain.GelHighC), w.say.Temp(hottest))
			}
		}
	}
	return d
}

// diedIn finds the step in which the malt's alpha-amylase was lost, if it was.
func diedIn(b *recipe.Batch, r mash.Result) (step int, dead bool) {
	before, worst := 0.0, 0.0 // before malt goes in there is nothing to lose
	for i, s := range r.Steps {
		if addsMalt(b, b.Mash.Steps[i]) {
			before = 1 // what was just added is alive
		}
		if drop := before - s.AlphaLeft; drop > worst && hasMalt(b) {
			worst, step = drop, i
		}
		before = s.AlphaLeft
	}
	n := len(r.Steps)
	return step, n > 0 && hasMalt(b) && r.Steps[n-1].AlphaLeft < enzymesDead
}

// addsMalt reports whether a step brings in enzymes of malt.
func addsMalt(b *recipe.Batch, s recipe.MashStep) bool {
	return s.Verb == recipe.MashAdd && slices.ContainsFunc(s.Grains, func(line int) bool { return b.Bill.Lines[line].Grain.AlphaDU > 0 })
}

func hasMalt(b *recipe.Batch) bool {
	for _, l := range b.Bill.Lines {
		if l.Grain.AlphaDU > 0 {
			return true
		}
	}
	return false
}

// bakes says if a mash is heated by elements that are bare in it when its grain is in.
func bakes(w *writer) {
	v, grain := w.b.Mash.Cooker, false
	if v.HeatedBy != recipe.Elements {
		return
	}
	for _, s := range w.b.Mash.Steps {
		switch s.Verb {
		case recipe.MashAdd:
			grain = true
		case recipe.MashHeat, recipe.MashBoil:
			if !grain {
				continue
			}
			w.add(diag.Diagnostic{
				Code: diag.CodeScorches, At: s.At,
				Summary: fmt.Sprintf("the mash is heated with its grain in, in the cooker %q, by elements that are bare in it", v.Name),
				Help:    "heat the water alone and let the mash cool to each rest; or heat by a jacket, or by live steam",
				Reason:  "grain bakes onto elements, which are far hotter than a jacket: it is tasted in the spirit, and they burn out (common practice)",
				Related: declared(v),
			})
			return
		}
	}
}
