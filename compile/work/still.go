package work

import (
	"math"

	"newmake/compile/lot"
	"newmake/compile/matter/stream"
	"newmake/compile/numbers"
	"newmake/compile/plan"
	"newmake/compile/stage/schedule"
	"newmake/compile/stage/still"
	"newmake/lang/recipe"
	"newmake/lang/record"
)

// stripJobs is the work of the stripping run, and the cleaning of the fermenter that it
// empties.
func stripJobs(n *numbers.Batch) []Job {
	s := n.Stripped
	var jobs []Job
	for i, c := range charges("strip", n, n.Strip.Still, s.Run, s.Charges) {
		c.run = s.ChargeRun(i)
		c.warmed = s.Preheat != nil && (i > 0 || s.First == nil)
		c.warms = s.Preheat != nil && (i+1 < s.Charges || n.Strip.Still.Preheater.PotAleC > 0)
		c.stirred = n.Strip.Still.Agitator && n.Mashed.Draff.MassKg() == 0
		jobs = append(jobs, stripCharge(n, c), c.heat())
		jobs = append(jobs, c.fractions()...)
		jobs = append(jobs, stripStop(n, c))
	}
	return append(jobs, cleanWashStill(n), cleanFermenter(n))
}

// spiritJobs is the work of the spirit run.
func spiritJobs(n *numbers.Batch) []Job {
	s := n.Distilled
	var jobs []Job
	for i, c := range charges("spirit", n, n.Spirit.Still, s.Run, s.Charges) {
		c.tank = feintsTank(n, i, s.Charges)
		jobs = append(jobs, spiritCharge(n, c, i == 0), c.heat())
		jobs = append(jobs, c.fractions()...)
		jobs = append(jobs, spiritStop(n, c))
	}
	return append(jobs, cleanStill("spirit", n.Spirit.Still))
}

// charge is one charge of a still. It is a chain: once the fire is lit somebody
// stays until the stop.
type charge struct {
	id, use string
	run     still.Run
	tank    stream.Stream // what the feints tank holds before the spirit run's heads
	cuts    recipe.Spirit // of a spirit run
	task    schedule.Task // what its jobs have in common
	powerW  float64
	pumpM3S float64
	warmed  bool   // a wash that the pot ale of the charge before has warmed
	warms   bool   // its pot ale warms the next one
	fire    string // what is done to begin: the heat is lit, or turned on
	stirred bool   // with grain in it, by the still's agitator
}

func charges(use string, n *numbers.Batch, v *recipe.Vessel, r still.Run, count int) []charge {
	out := make([]charge, count)
	for i := range out {
		id := plan.ChargeID(use, i, count)
		out[i] = charge{id: id, use: use, run: r, cuts: n.Spirit, task: schedule.Task{Stage: use, Vessel: v.Name, Chain: id, Attend: schedule.Throughout},
			powerW: heatW(v, n.Plant), fire: fire(v, n.Plant), pumpM3S: numbers.Rates(n.Batch).PumpM3S}
	}
	return out
}

// fire is how a still is brought to heat: by steam, where it is blown in or the house has a
// boiler, by elements, or by whatever is lit under it.
func fire(v *recipe.Vessel, p *recipe.Plant) string {
	switch {
	case v.HeatedBy == recipe.Elements:
		return "Heat on, "
	case v.HeatedBy == recipe.Direct || p.BoilerW > 0:
		return "Steam on, "
	}
	return "Light the "
}

// feintsTank is what stands in the feints tank when charge i of n has been taken from
// it: what is kept for the charges to come, and what the charges before left.
func feintsTank(n *numbers.Batch, i, count int) stream.Stream {
	kept := n.Distilled.Returned.Scale(float64(count - 1 - i))
	return kept.Plus(n.Distilled.Run.Feints().Scale(float64(i)))
}

// fill is the task of charging the still, which runs in for so long at least.
func (c charge) fill(newDay bool, leastS float64) schedule.Task {
	t := c.task
	t.Key, t.MayWait, t.NewDay = c.id+".charge", true, newDay
	t.DurationS = pumpSetupS + max(c.run.ChargeM3/c.pumpM3S, leastS)
	return t
}

// ChargedS is how long it takes to charge the wash still for the first time.
func ChargedS(n *numbers.Batch) float64 {
	c, leastS := charge{run: n.Stripped.ChargeRun(0), pumpM3S: numbers.Rates(n.Batch).PumpM3S}, 0.0
	if n.Stripped.Preheat != nil && n.Stripped.First == nil {
		leastS = n.Strip.Still.Preheater.OverS
	}
	return c.fill(false, leastS).DurationS
}

func stripCharge(n *numbers.Batch, c charge) Job {
	wash, liquid := lot.Of(c.run.Charge), lot.Liquid(n.Fermented.Wash)
	j := Job{
		Title: plan.Say("Charge the wash still"),
		Task:  c.fill(false, 0), Do: plan.Say("Charge the still with {} of wash from the fermenter.", wash.Volume()),
		Read: []Reading{volumeOf("wash", wash, MashVolume),
			read(record.Strength, "strength, strained", liquid.ByVolume(), WashStrength),
			gravity(n.Fermented.FinalSG, FermentSG)},
		Cautions: []string{"co2", inside(n.Fermented.Vessel), "vent"}, Path: recipe.PathStrip,
	}
	if c.warmed {
		j.Task = c.fill(false, n.Strip.Still.Preheater.OverS)
		j.Do = plan.Say("Charge the still with {} of wash from the fermenter, through the preheater against the hot pot ale of the charge before: it goes in at {}.", wash.Volume(), plan.Of(c.run.Charge.TempC, plan.Celsius))
		j.Read = append(j.Read, temperature(c.run.Charge.TempC, MashC))
		j.Cautions = append(j.Cautions, "hot-wash")
	}
	return j
}

func spiritCharge(n *numbers.Batch, c charge, newDay bool) Job {
	all := lot.Of(c.run.Charge)
	j := Job{
		Title: plan.Say("Charge the spirit still"),
		Task:  c.fill(newDay, 0), Do: plan.Say("Charge the still with {} of low wines.", all.Volume()),
		Read: lotReadings(all, LowWinesVolume, LowWinesStrength), Cautions: []string{"vent"}, Path: recipe.PathCharge,
	}
	feints, water := lot.Of(n.Distilled.Returned), lot.Of(n.Distilled.Water)
	low := lot.Of(n.Stripped.LowWines.Scale(1 / float64(n.Distilled.Charges)))
	text, in := "Charge the still with {} of low wines", []plan.Quantity{low.Volume()}
	if feints.MassKg > 0 {
		text, in = text+" and {} of feints", append(in, feints.Volume())
		j.Read[0].Besides = math.Hypot(LowWinesVolume.At(low.VolumeL), FeintsVolume.At(feints.VolumeL))
	}
	if water.MassKg > 0 {
		text, in = text+", and bring it down with {} of water", append(in, water.Volume())
		j.Measured = []plan.Addition{{Name: "water for the charge", Amount: water.Volume(), Step: j.Key}}
	}
	if n.Spirit.Feints && feints.MassKg == 0 {
		text += ": there are no feints yet"
	}
	j.Do = plan.Say(text+".", in...)
	return j
}

// heat brings the still to the first drop.
func (c charge) heat() Job {
	t := c.task
	t.Key, t.DurationS, t.Power = c.id+".heat", c.run.HeatUpS, c.powerW
	text, values := "Heat, slowly at the end, to the first drop.", []plan.Quantity{}
	if held := c.run.HeatUpJ / c.run.HeatUpS; held > 0 && held < c.powerW*(1-1e-6) {
		t.Power = held
		text, values = "Heat to the first drop with about {}, slowly at the end.", append(values, plan.Of(held/1000, plan.Kilowatt))
	}
	if c.stirred {
		text = "Start the agitator, and keep it going until the wash boils. " + text
	}
	j := Job{Task: t, Title: plan.Say(c.fire + stillNames[c.use]), Cautions: []string{"stillhouse", "vapour"}, Path: recipe.PathOf(c.use)}
	if len(c.run.Curve) > 0 {
		first := c.run.Curve[0]
		j.Read = []Reading{spout(first.ABV), vapour(first.VapourC)}
		text, values = text+" The pot is then at {}.", append(values, plan.Of(first.PotC, plan.Celsius))
	}
	j.Do = plan.Say(text, values...)
	return j
}

func (c charge) fractions() []Job {
	var jobs []Job
	began := when("At the first drop")
	for _, f := range c.run.Fractions {
		if f.EndS > f.StartS {
			j := c.fraction(f)
			j.When, began = began, c.whenCut(f)
			jobs = append(jobs, j)
		}
	}
	return jobs
}

var fractionWords = map[string]string{
	still.LowWines:  "Collect low wines: {}.",
	still.Foreshots: "Foreshots: {}, into their own can.",
	still.Heads:     "Heads: {}, to the feints.",
	still.Hearts:    "HEARTS: turn the spout to the spirit receiver, {} in all.",
	still.Tails:     "TAILS: turn the spout to the feints, {} in all.",
}

// fraction collects one fraction, with the readings of each hour and those at its
// end.
func (c charge) fraction(f still.Fraction) Job {
	all, curve := lot.Of(f.Stream), c.run.Curve
	t := c.task
	t.Key, t.DurationS, t.Power = c.id+"."+fractionKey(f.Name), f.EndS-f.StartS, f.HeatJ/(f.EndS-f.StartS)
	pace := " Full heat, {}."
	held := []plan.Quantity{all.Volume(), plan.Of(t.Power/1000, plan.Kilowatt)}
	if t.Power < c.powerW*(1-1e-6) {
		pace = " Hold {}, about {}."
		held = []plan.Quantity{all.Volume(), flowOf(pointAt(curve, f.StartS).RateM3S), held[1]}
	}
	j := Job{Task: t, Do: plan.Say(fractionWords[f.Name]+pace, held...), Path: recipe.PathOf(c.use, fractionKey(f.Name))}
	if f.Name == still.Foreshots {
		j.Cautions = []string{"foreshots"}
	}
	j.Title, j.Mark = c.fractionTitle(f)
	every := readEveryS
	if f.Name == still.Hearts {
		every = readHeartsS
	}
	// Full steps from the first drop, but none close to a cut.
	// Volumes are what the receiver shows: this fraction alone, or all that is in the
	// feints tank.
	before := pointAt(curve, f.StartS).OverM3
	for s := math.Ceil((f.StartS-c.run.HeatUpS)/every+0.25)*every + c.run.HeatUpS; s < f.EndS-every/4; s += every {
		p := pointAt(curve, s)
		share := (p.OverM3 - before) * lot.LitresPerM3 / all.VolumeL
		j.Read = append(j.Read,
			spout(p.ABV).at(s-f.StartS).byVolume(),
			flow(p.RateM3S).at(s-f.StartS).byVolume(),
			receiver(receiverName(f), c.receiver(f, share), SetVolume).at(s-f.StartS),
			vapour(p.VapourC).at(s-f.StartS).byVolume())
	}
	j.Read = append(j.Read, spout(f.EndABV).at(f.EndS-f.StartS), receiver(receiverName(f), c.receiver(f, 1), VolumeOf(f.Name, c.cuts)).at(f.EndS-f.StartS))
	if f.Name != still.Foreshots {
		j.Read = append(j.Read, vapour(f.EndVapourC).at(f.EndS-f.StartS))
	}
	return j
}

func fractionKey(name string) string {
	if name == still.LowWines {
		return "collect"
	}
	return name
}

// receiverName is what the vessel is called into which a fraction runs.
func receiverName(f still.Fraction) string {
	if f.Name == still.Tails {
		return "feints tank"
	}
	return "receiver"
}

// receiver is what stands in that vessel when a share of the fraction has run. The
// tails run onto the heads.
func (c charge) receiver(f still.Fraction, share float64) plan.Lot {
	held := f.Stream.Scale(share)
	if f.Name == still.Tails {
		held = held.Plus(c.tank).Plus(c.run.Fraction(still.Heads).Stream)
	}
	return lot.Of(held)
}

func receiver(what string, l plan.Lot, b ReadingError) Reading {
	r := volumeOf(what, l, b)
	r.Kind = record.Receiver
	return r
}

// stop ends a charge.
func (c charge) stop(do plan.Phrase, read []Reading) Job {
	t := c.task
	t.Key, t.DurationS = c.id+".stop", dischargeS
	j := Job{Task: t, Title: plan.Say("Stop"), Do: do, Read: read, Cautions: []string{"stillage", "air-in"}, Path: recipe.PathOf(c.use, "stop")}
	if n := len(c.run.Curve); n > 0 {
		last := lot.AtABV(c.run.Curve[n-1].ABV).ByVolume()
		j.Title = plan.Say("Stop at {}", last)
		if c.use == "strip" { // of a spirit run it is the hearts that decide
			j.Mark = mark("stop {}", last)
		}
	}
	if n := len(c.run.Fractions); n > 0 {
		j.When = c.whenCut(c.run.Fractions[n-1])
	}
	return j
}

func stripStop(n *numbers.Batch, c charge) Job {
	keep, where := "", ""
	if c.warms {
		where = ", hot, into its tank for the next charge"
	}
	if usesBackset(n.Mash.Steps) {
		keep = "Keep what the next mash wants as backset. "
	}
	return c.stop(
		plan.Say("Heat off, vent, discharge {} of pot ale"+where+". "+keep+"Record the low wines before they are mingled"+cite(n.Batch, "27 CFR 19.301")+".", lot.Of(c.run.Residue).Volume()),
		lotReadings(lot.Of(c.run.Fraction(still.LowWines).Stream), LowWinesVolume, LowWinesStrength))
}

func spiritStop(n *numbers.Batch, c charge) Job {
	foreshots := ""
	if n.Spirit.ForeshotsM3 > 0 {
		foreshots = "the foreshots" + cite(n.Batch, "27 CFR 19.584(g)") + ", and "
	}
	which, read := "the feints before they are mingled", lotReadings(lot.Of(c.run.Feints()), FeintsVolume, FeintsStrength)
	if c.tank.MassKg() > 0 { // the tank shows more than this charge's
		which = "the feints of this charge, apart from what the tank held before"
		read[0].What, read[1].What = "this charge's feints", "their strength"
	}
	return c.stop(
		plan.Say("Heat off, vent, discharge {} of spent lees. Record "+foreshots+which+cite(n.Batch, "27 CFR 19.301")+".", lot.Of(c.run.Residue).Volume()), read)
}

func usesBackset(steps []recipe.MashStep) bool {
	for _, s := range steps {
		if s.Verb == recipe.MashBackset && s.VolumeM3 > 0 {
			return true
		}
	}
	return false
}

func cleanStill(use string, v *recipe.Vessel) Job {
	return Job{
		Task: schedule.Task{Key: use + ".clean", Stage: use, Vessel: v.Name, Attend: schedule.Throughout, DurationS: cleaningS(v), MayWait: true},
		Do:   cleaning("Rinse and clean the still", v), Cautions: driven(v, "caustic", inside(v)),
	}
}

// cleanWashStill cleans the wash still once it is empty: in the line of work, or beside
// it where the spirit runs in another still and somebody is to spare. Then the spirit
// does not wait for a day on which the wash still was cleaned first.
func cleanWashStill(n *numbers.Batch) Job {
	j := cleanStill("strip", n.Strip.Still)
	if n.Plant.Crew > 1 && n.Spirit.Still != n.Strip.Still {
		count := n.Stripped.Charges
		j.After = plan.ChargeID("strip", count-1, count) + ".stop"
	}
	return j
}

// cleanFermenter cleans the fermenter once the last of the wash has gone: beside
// the run, or in the line of work after it where there is nobody to spare.
func cleanFermenter(n *numbers.Batch) Job {
	count := n.Stripped.Charges
	emptied := plan.ChargeID("strip", count-1, count) + ".charge"
	if n.Plant.Crew == 1 {
		emptied = ""
	}
	v := n.Fermented.Vessel
	return Job{
		Task: schedule.Task{Key: "ferment.clean", Stage: "ferment", Vessel: v.Name, Attend: schedule.Throughout, DurationS: cleaningS(v), MayWait: true},
		Do:   cleaning("Air the empty fermenter, then rinse and clean it", v), Cautions: []string{"co2", inside(v), "caustic"}, After: emptied,
	}
}

// pointAt reads a run's curve at a time from the fire, between its points.
func pointAt(curve []still.Point, s float64) still.Point {
	a, b, f := around(curve, func(p still.Point) float64 { return p.TimeS }, s)
	return still.Point{
		TimeS: s, PotC: mix(a.PotC, b.PotC, f), VapourC: mix(a.VapourC, b.VapourC, f), ABV: mix(a.ABV, b.ABV, f),
		OverM3: mix(a.OverM3, b.OverM3, f), RateM3S: mix(a.RateM3S, b.RateM3S, f), Fraction: a.Fraction,
	}
}
