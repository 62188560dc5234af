package notice

import (
	"fmt"
	"math"
	"slices"

	"newmake/compile/lot"
	"newmake/compile/measure"
	"newmake/compile/numbers"
	"newmake/compile/stage/still"
	"newmake/lang/diag"
	"newmake/lang/recipe"
	"newmake/lang/wording"
)

// Strengths of a spirit charge: the limit of a pot still, above which the first of
// the hearts is lost among the heads, and that above which stills are doublers
// (common practice).
const (
	chargeUsual = 0.32
	chargeMost  = 0.40
)

// Strip is what a distiller should know of the stripping run.
func Strip(b *recipe.Batch, r numbers.Strip) diag.List {
	w, s := about(b), b.Strip
	help := fmt.Sprintf("a smaller batch, or `charges %d`", chargesThatFit(r.Use(b), r.Charges))
	fullest(w, r.Use(b), "the wash, hot,", help,
		boilsOver(b))
	boiler(w, s.Still, "strip")
	distillate(w, s.Still)
	runProblems(w, "strip", r.Run)
	covered(w, s.Still, "strip", r.Run)
	scorches(w, s.Still)
	paces(w, s.Still, r.Run)
	heatUp(w, s.Still, r)
	preheats(w, s.Still, r)
	leftBehind(w, r)
	return w.list
}

// scorches says if grain in the wash has nothing to keep it off what is hot.
func scorches(w *writer, v *recipe.Vessel) {
	if drained(w.b) || v.HeatedBy == recipe.Direct || v.HeatedBy == recipe.Jacket && v.Agitator {
		return
	}
	d := diag.Diagnostic{
		Code: diag.CodeScorches, At: w.at(recipe.PathStrip),
		Summary: fmt.Sprintf("a wash with grain in it is heated in the still %q, which has no agitator", v.Name),
		Help:    "if it has one, say so in the still, `agitator yes`; else drain the mash off its grain, or heat by live steam",
		Reason:  "grain settles on the hot wall, burns there, and is tasted in the spirit (common practice)",
		Related: declared(v),
	}
	if v.HeatedBy == recipe.Elements {
		d.Summary = fmt.Sprintf("a wash with grain in it is heated in the still %q, by elements that are bare in it", v.Name)
		d.Help = "drain the mash off its grain, or heat by a jacket with an agitator, or by live steam"
		d.Reason = "grain bakes onto elements, which are far hotter than a jacket: it is tasted in the spirit, and they burn out (common practice)"
	}
	w.add(d)
}

// heatUp says if the charge takes longer to its boil than the batch asks.
func heatUp(w *writer, v *recipe.Vessel, r numbers.Strip) {
	slowest := r.ChargeRun(0)
	if slowest.HeatUpAskedS <= 0 || slowest.HeatUpS <= slowest.HeatUpAskedS*(1+paceMargin) {
		return
	}
	w.add(diag.Diagnostic{
		Code: diag.CodePaceBeyond, At: w.at(recipe.PathHeatUp),
		Summary: fmt.Sprintf("the wash takes %s to its boil at full heat, and its heat-up asks for %s", measure.Duration(slowest.HeatUpS/60), measure.Duration(slowest.HeatUpAskedS/60)),
		Help:    "a slower heat-up; the plan reckons with full heat",
		Related: declared(v),
	})
}

// preheatShortK is by how much less a wash may be warmed than the house asks, unsaid.
const preheatShortK = 1

// preheats says if the preheater does nothing, or less than is asked.
func preheats(w *writer, v *recipe.Vessel, r numbers.Strip) {
	at := v.Where["preheater"]
	if at.IsZero() {
		at = v.At
	}
	if r.Idle {
		why := "the batch has one charge"
		help := "where pot ale is kept hot from batch to batch, say how hot, as in " + w.example("preheater 40 sqft, pot-ale at 180 F")
		if w.b.Today.NoPotAle {
			why, help = "the house has none of a batch before, as `pot-ale none yet` says", "once there is some, take that line out"
		}
		w.add(diag.Diagnostic{
			Code: diag.CodeNoPotAle, At: at, Summary: fmt.Sprintf("the preheater of the still %q has no hot pot ale: %s", v.Name, why), Help: help,
		})
	}
	if p := r.Preheat; p != nil && p.WantsC > p.ToC+preheatShortK {
		w.add(diag.Diagnostic{
			Code: diag.CodePreheatShort, At: at,
			Summary: fmt.Sprintf("the wash is preheated to %s and not to %s: its pot ale comes at %s", w.say.Temp(p.ToC), w.say.Temp(p.WantsC), w.say.Temp(p.PotAleC)),
			Help:    "a larger preheater, hotter pot ale, or more time; or ask for what it can do: `wash to " + w.say.Temp(p.ToC) + "`",
		})
	}
}

// Shares of the alcohol that stay in the pot ale. Stripping runs are stopped at 0 to
// 10 % at the spout (common practice), which leaves less than a tenth of it.
const (
	leftSome = 0.02
	leftMuch = 0.10
)

// leftBehind says what an early stop leaves in the pot.
func leftBehind(w *writer, r numbers.Strip) {
	left := r.Residue.EthanolKg / r.Charge.EthanolKg
	if left <= leftSome || len(r.Problems) > 0 {
		return
	}
	d := diag.Diagnostic{
		Code: diag.CodeEarlyStop, At: w.at(recipe.PathStripStop),
		Summary: fmt.Sprintf("%.1f %% of the alcohol stays in the pot ale at this stop", 100*left),
		Help:    "a lower stop gets it, with weaker low wines and more fuel",
	}
	if left <= leftMuch {
		w.add(d)
		return
	}
	lost := lot.Of(r.Run.Residue.Scale(float64(r.Charges)))
	d.Summary += fmt.Sprintf(": %s of pure alcohol go down the drain", w.say.Litres(lost.PureL))
	d.Reason = "stripping runs are stopped at " + wording.Restated("10 % abv", w.reader()) + " at the spout or lower (common practice)"
	w.addAs(diag.Warning, d)
}

// distillate says if the water is too warm for the distillate that the house asks for.
func distillate(w *writer, v *recipe.Vessel) {
	asked, coldest := v.Condenser.DistillateC, still.Setting{WaterC: w.b.SupplyC()}.ColdestC()
	if asked == 0 || asked >= coldest {
		return
	}
	at := v.Where["condenser"]
	if at.IsZero() {
		at = v.At
	}
	w.add(diag.Diagnostic{
		Code: diag.CodeDistillateWarm, At: at,
		Summary: fmt.Sprintf("the distillate of %q runs at %s and not at %s: the water comes in at %s",
			v.Name, w.say.Temp(coldest), w.say.Temp(asked), w.say.Temp(w.b.SupplyC())),
		Help:   "ask for what the water can do, or have colder water",
		Reason: "a condenser cools to about " + w.say.TempDiff(coldest-w.b.SupplyC()) + " above its water (common practice)",
	})
}

// boilsOver is why a wash still wants room.
func boilsOver(b *recipe.Batch) string {
	if drained(b) {
		return "a wash foams as it comes to the boil, and boils over into the condenser"
	}
	return "a wash with grain in it rises and boils over into the condenser"
}

// drained reports whether the grain stays behind in the tun.
func drained(b *recipe.Batch) bool {
	return slices.ContainsFunc(b.Mash.Steps, func(s recipe.MashStep) bool { return s.Verb == recipe.MashDrain })
}

// Spirit is what a distiller should know of the spirit run. The ways are those out
// of feints that never settle.
func Spirit(b *recipe.Batch, run numbers.Spirit, ways []numbers.Way) diag.List {
	w, s := about(b), b.Spirit
	what := "the spirit charge, hot,"
	if s.Feints {
		what = "the spirit charge with its feints, hot,"
	}
	charges := chargesThatFit(run.Use(b), run.Charges)
	help := fmt.Sprintf("`charges %d`, an earlier stop of the stripping run for less and stronger low wines, or a larger still", charges)
	if run.WaterKg > 0 {
		help = fmt.Sprintf("less water in the charge, `charges %d`, or a larger still", charges)
	}
	fullest(w, run.Use(b), what, help,
		"a still needs room over the charge to part vapour from spray")
	boiler(w, s.Still, "spirit")
	if s.Still != b.Strip.Still {
		distillate(w, s.Still)
	}
	runProblems(w, "spirit", run.Run)
	covered(w, s.Still, "spirit", run.Run)
	paces(w, s.Still, run.Run)
	oddPace(w, s.Still, run.Run)
	strength(w, run)
	neverSteady(w, run.Run, ways)
	return w.list
}

// strength says if the charge is stronger than is usual, or weaker than the water
// in it was meant to make it.
func strength(w *writer, run numbers.Spirit) {
	is := w.say.Strength(lot.AtABV(run.ChargeABV))
	if to := w.b.Spirit.WaterTo; to.Value > 0 && run.WaterKg == 0 {
		w.add(diag.Diagnostic{
			Code: diag.CodeNoWaterWanted, At: w.at(recipe.PathCharge),
			Summary: fmt.Sprintf("no water goes into the charge: it is %s as it comes", is), Help: "leave the water out, or bring it to a lower strength",
		})
	}
	if run.ChargeABV <= chargeUsual {
		return
	}
	d := diag.Diagnostic{
		Code: diag.CodeChargeStrong, At: w.at(recipe.PathCharge),
		Summary: "the spirit charge is " + is,
		Help:    fmt.Sprintf("bring it down with water, `%s`, or strip further", watered(w, 28)),
		Reason: fmt.Sprintf("pot stills are charged at about %s or less: a stronger charge gives its heads and hearts up in a rush, and its vapour takes fire sooner (common practice)",
			w.say.Abv(30)),
	}
	if run.ChargeABV > chargeMost {
		d.Reason = "a doubler is charged so (common practice): what it gives first is stronger and there is more of it, so cuts by strength fall later than those of a weaker charge; its vapour takes fire well below the boil"
	}
	w.add(d)
}

// watered is the line that charges the still as the batch does, with water to a
// strength.
func watered(w *writer, abvPct float64) string {
	line := "charge low-wines"
	if w.b.Spirit.Feints {
		line += ", feints"
	}
	return line + ", water to " + wording.Restated(measure.Number(abvPct, 0)+" % abv", w.reader())
}

// runProblems says what went otherwise than written. use is strip or spirit.
func runProblems(w *writer, use string, r still.Run) {
	end := 0.0
	if k := len(r.Curve); k > 0 {
		end = r.Curve[k-1].ABV
	}
	for _, p := range r.Problems {
		d := diag.Diagnostic{At: w.at(recipe.PathOf(use, "stop"))}
		switch p {
		case still.ProblemNoDistillate:
			d.Code, d.Summary = diag.CodeNoDistillate, fmt.Sprintf("the first drop is weaker than the stop: nothing comes of the %s run", use)
			d.Help = "a lower stop, or a stronger charge"
		case still.ProblemStopNotReached:
			d.Code, d.Summary = diag.CodeStopUnreached, fmt.Sprintf("the spout still runs at %s when the pot is nearly empty: the stop is never reached", w.byVolume(end))
			d.Help = "a higher stop: a pot must never boil dry"
		case still.ProblemForeshotsNotReached:
			d.Code, d.At = diag.CodeCutUnreached, w.at(recipe.PathForeshots)
			d.Summary, d.Help = "the run ends within the foreshots", "set less aside, or charge more"
		case still.ProblemHeartsWeak:
			d.Code, d.At = diag.CodeCutUnreached, w.at(recipe.PathHeartsFrom)
			d.Summary, d.Help = heartsTooSoon(w, r)
		case still.ProblemHeartsFromPassed:
			if from := w.b.Spirit.HeartsFrom; from.By == recipe.ByVolume && math.Abs(from.VolumeM3-w.b.Spirit.ForeshotsM3) < recipe.SameVolumeM3 {
				continue // they begin where the foreshots end: there are no heads
			}
			if from := w.b.Spirit.HeartsFrom; from.By == recipe.ByTime && from.TimeS > r.Fractions[0].EndS-r.HeatUpS-recipe.SameTimeS {
				continue // as they do at a volume
			}
			d.Code, d.At = diag.CodeInForeshots, w.at(recipe.PathHeartsFrom)
			d.Summary, d.Help = "the hearts are to begin within the foreshots", "begin them later, or set less aside"
			w.addAs(diag.Warning, d)
			continue
		case still.ProblemHeartsFromNotReached:
			d.Code, d.At = diag.CodeCutUnreached, w.at(recipe.PathHeartsFrom)
			d.Summary, d.Help = "the run ends before the hearts begin", "begin them earlier, or stop later"
		case still.ProblemHeartsToNotReached:
			d.Code, d.At = diag.CodeCutUnreached, w.at(recipe.PathHeartsTo)
			d.Summary = fmt.Sprintf("the run ends before the hearts do: it stops at %s", w.byVolume(end))
			d.Help = "end the hearts earlier, or stop later"
		case still.ProblemCutsCrossed:
			d.Code, d.At = diag.CodeCutsCrossed, w.at(recipe.PathHearts)
			d.Summary, d.Help = "the hearts are to end before they begin", "strength falls through a run: the first cut is the stronger"
		case still.ProblemNotSteady:
			continue // neverSteady says it
		}
		w.add(d)
	}
}

// tempAbove shows a temperature that is above another; where both would read the
// same it takes one more digit.
func tempAbove(say measure.Units, tempC, otherC float64) string {
	switch {
	case say.Temp(tempC) != say.Temp(otherC):
		return say.Temp(tempC)
	case say == measure.SI:
		return measure.Number(tempC, 2) + " C"
	}
	return measure.Number(tempC*1.8+32, 1) + " F"
}

// heartsTooSoon says why the cut that begins the hearts is never reached, in the
// terms in which it is written: the run starts weaker than that, or its vapour
// warmer.
func heartsTooSoon(w *writer, r still.Run) (summary, help string) {
	var top still.Point
	if len(r.Curve) > 0 {
		top = r.Curve[0]
	}
	if from := w.b.Spirit.HeartsFrom; from.By == recipe.ByVapourTemp {
		return fmt.Sprintf("the hearts are to begin with the vapour at %s, and it is never so cool: it starts at %s", w.say.Temp(from.TempC), tempAbove(w.say, top.VapourC, from.TempC)),
			"begin them at a higher temperature, strip to a stronger low wine, or return more in the head"
	}
	return fmt.Sprintf("the hearts are to begin at a strength that is never reached: the spout starts at %s", w.byVolume(top.ABV)),
		"begin them below that, strip to a stronger low wine, or return more in the head"
}

// Coils, elements and jackets reach to 20 to 25 % of what a still works with, and a
// twentieth is kept above them (from memory).
const (
	coveredUsual  = 0.20
	coveredMargin = 0.05
)

// covered says if a run leaves the heating surface bare, or nearly so: below where
// the house says it is covered, or where it usually is.
func covered(w *writer, v *recipe.Vessel, use string, r still.Run) {
	known := v.CoveredM3 > 0
	coveredM3 := v.CoveredM3
	if !known && v.HeatedBy != recipe.Direct {
		coveredM3 = coveredUsual * v.HoldsM3
	}
	wanted := coveredM3
	if known {
		wanted += coveredMargin * v.HoldsM3
	}
	if r.LeftHotM3 <= 0 || r.LeftHotM3 >= wanted {
		return
	}
	left, surface := w.say.Litres(r.LeftHotM3*lot.LitresPerM3), w.say.Litres(coveredM3*lot.LitresPerM3)
	d := diag.Diagnostic{
		Code: diag.CodeBareSurface, At: w.at(recipe.PathOf(use, "stop"), recipe.PathOf(use)),
		Help:    "charge more, with water if need be, or stop earlier",
		Reason:  "what is heated must stay wet to the end: bare elements burn out, a bare jacket burns what dries on it (common practice)",
		Related: declared(v),
	}
	switch {
	case !known:
		d.Summary = fmt.Sprintf("the run leaves %s in the still %q, less than a fifth of the %s it holds: its heating surface may be bare", left, v.Name, w.say.Litres(v.HoldsM3*lot.LitresPerM3))
		d.Help += "; or say in the still what covers it, `heating-surface covered by " + surface + "`"
		w.addAs(diag.Warning, d)
	case r.LeftHotM3 < coveredM3:
		d.Summary = fmt.Sprintf("the run leaves %s in the still %q, and its heating surface is covered by %s", left, v.Name, surface)
		w.add(d)
	default:
		d.Summary = fmt.Sprintf("the run leaves %s in the still %q, little more than the %s that cover its heating surface", left, v.Name, surface)
		w.addAs(diag.Warning, d)
	}
}

// paceMargin is by how much longer a fraction may take than its pace asks for.
const paceMargin = 0.02

// paces says which fractions come slower than the batch writes.
func paces(w *writer, v *recipe.Vessel, r still.Run) {
	for _, f := range r.Fractions {
		path := recipe.PathPace.Child(f.Name)
		if f.Name == still.LowWines {
			path = recipe.PathStripPace
		}
		if _, written := w.b.Where[path]; !written || f.AskedS <= 0 || f.EndS-f.StartS <= f.AskedS*(1+paceMargin) {
			continue
		}
		w.add(diag.Diagnostic{
			Code: diag.CodePaceBeyond, At: w.at(path),
			Summary: fmt.Sprintf("the %s take %s at full heat, and their pace asks for %s", f.Name, measure.Duration((f.EndS-f.StartS)/60), measure.Duration(f.AskedS/60)),
			Help:    "a slower pace; the plan reckons with full heat",
			Related: declared(v),
		})
	}
}

// Hearts by the hour, as a share of what the still holds. Some 15 % of a charge (HMRC
// manual SPIR4100) in 2.5 to 3 h (Nicol, in Russell (ed.), Whisky (2003), ch. 5), of a
// still filled to two thirds, is 3.6 %; a third of that and some three times as much are
// put as the ends (from memory).
const (
	heartsUsualPerH = 0.036
	heartsSlowPerH  = 0.012
	heartsFastPerH  = 0.12
)

// oddPace says if the hearts come far slower or faster than is usual for a still of
// that size. Where no pace is written they take the same hours in every still.
func oddPace(w *writer, v *recipe.Vessel, r still.Run) {
	f := r.Fraction(still.Hearts)
	litres, hours := lot.Of(f.Stream).VolumeL, (f.EndS-f.StartS)/lot.SecondsPerHour
	if !(litres > 0 && hours > 0) {
		return
	}
	holdsL := v.HoldsM3 * lot.LitresPerM3
	pace := litres / hours / holdsL
	if pace >= heartsSlowPerH && pace <= heartsFastPerH {
		return
	}
	word := "fast: what comes over has little of the copper, and cuts are over in minutes"
	if pace < heartsSlowPerH {
		word = "slow: a trickle, that no valve holds and that the loss of heat from the still governs"
	}
	over := fmt.Sprintf("%.0f h", math.Ceil(litres/(heartsUsualPerH*holdsL)))
	if h := litres / (heartsUsualPerH * holdsL); h < 1.5 {
		over = fmt.Sprintf("%.0f min", 5*math.Ceil(12*h))
	}
	w.add(diag.Diagnostic{
		Code: diag.CodeOddPace, At: w.at(recipe.PathPaceHearts, recipe.PathHearts),
		Summary: fmt.Sprintf("the hearts run at %s, from a still that holds %s: that is %s", w.say.Flow(litres/hours), w.say.Litres(holdsL), word),
		Help:    fmt.Sprintf("write in `spirit` a block `pace` with the line `hearts over %s`", over),
		Reason:  "a still gives some 1 to 12 % of what it holds as hearts in an hour (from memory), about 4 % where a sixth of the charge comes over in 2.5 to 3 h",
		Related: declared(v),
	})
}
