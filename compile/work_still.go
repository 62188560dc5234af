package compile

import (
	"fmt"
	"math"

	"newmake/compile/plan"
	"newmake/compile/stage/schedule"
	"newmake/compile/stage/still"
	"newmake/lang/recipe"
)

// runWork is the work at one still, charge after charge. A charge is a chain:
// once the fire is lit somebody stays until the stop.
func (c *compiler) runWork(use string, v *recipe.Vessel, r still.Run, charges int) {
	for n := range charges {
		id := use
		if charges > 1 {
			id = fmt.Sprintf("%s.%d", use, n+1)
		}
		t := schedule.Task{Stage: use, Vessel: v.Name, Chain: id, Attend: schedule.Throughout}
		c.chargeWork(t, id, use, r, use == "spirit" && n == 0)
		for _, f := range r.Fractions {
			if f.EndS > f.StartS {
				c.fractionWork(t, id, use, f, r)
			}
		}
		c.stopWork(t, id, use, r)
	}
	c.add(work{
		Task: schedule.Task{Key: use + ".clean", Stage: use, Vessel: v.Name, Attend: schedule.Throughout, DurationS: cleanS, MayWait: true},
		do:   plan.Say("Rinse and clean the still."), cautions: c.warn("caustic", "confined"),
	})
	if use == "strip" {
		c.fermenterWork(charges)
	}
}

// fermenterWork cleans the fermenter once the last of the wash has gone: beside
// the run, or after it where there is nobody to spare.
func (c *compiler) fermenterWork(charges int) {
	emptied := "strip.charge"
	if charges > 1 {
		emptied = fmt.Sprintf("strip.%d.charge", charges)
	}
	if c.b.Plant.Crew == 1 {
		emptied = "strip.clean"
	}
	c.add(work{
		Task: schedule.Task{Key: "ferment.clean", Stage: "ferment", Vessel: c.fermenter.Name, Attend: schedule.Throughout, DurationS: cleanS, MayWait: true},
		do:   plan.Say("Air the empty fermenter, then rinse and clean it."), cautions: c.warn("co2", "confined", "caustic"), after: emptied,
	})
}

// chargeWork fills the still and brings it to the first drop.
func (c *compiler) chargeWork(t schedule.Task, id, use string, r still.Run, newDay bool) {
	charge := lotOf(r.Charge)
	fill := t
	fill.Key, fill.MayWait, fill.NewDay = id+".charge", true, newDay
	fill.DurationS = pumpSetupS + r.ChargeM3/pumpM3PerS
	w := work{Task: fill, cautions: c.warn("vent"), path: use}
	if use == "strip" {
		w.do = plan.Say("Charge the still with {} of wash from the fermenter.", charge.Volume())
		w.read = []reading{volumeOf("wash", charge),
			{plan.Reading{What: "strength, strained", Expect: c.p.Ferment.Liquid.ByVolume(), Tolerance: plan.Of(tolWash, plan.AbvDiff)}, -1},
			gravity(c.p.Ferment.FinalGravitySG, tolSG)}
		w.cautions = append(c.warn("co2", "confined"), w.cautions...)
	} else {
		w.do, w.path = plan.Say("Charge the still with {} of low wines.", charge.Volume()), "spirit.charge"
		if f := c.p.Spirit.FeintsReturned; f != nil {
			low := lotOf(r.Charge)
			low.VolumeL, low.WineGallons = low.VolumeL-f.VolumeL, low.WineGallons-f.WineGallons
			w.do = plan.Say("Charge the still with {} of low wines and {} of feints.", low.Volume(), f.Volume())
		}
		w.read = lotReadings(charge)
	}
	c.add(w)

	heat := t
	heat.Key, heat.DurationS, heat.Power = id+".heat", r.HeatUpS, c.stillW(use)
	first := r.Curve
	w = work{Task: heat, do: plan.Say("Heat, slowly at the end, to the first drop."), cautions: c.warn("stillhouse", "vapour"), path: use}
	if len(first) > 0 {
		w.read = []reading{spout(first[0].ABV), vapour(first[0].VapourC)}
		w.do = plan.Say("Heat, slowly at the end, to the first drop. The pot is then at {}.", plan.Of(first[0].PotC, plan.Celsius))
	}
	c.add(w)
}

func (c *compiler) stillW(use string) float64 {
	v := c.b.Strip.Still
	if use == "spirit" {
		v = c.b.Spirit.Still
	}
	return heatW(v, c.b.Plant)
}

var fractionSays = map[string]string{
	still.LowWines:  "Collect low wines: {}.",
	still.Foreshots: "Foreshots: {}, into their own can.",
	still.Heads:     "Heads: {}, to the feints.",
	still.Hearts:    "HEARTS: turn the spout to the spirit receiver. {} in all.",
	still.Tails:     "Tails: turn the spout to the feints. {} in all.",
}

// fractionWork collects one fraction, with the readings of each hour and those
// at its end.
func (c *compiler) fractionWork(t schedule.Task, id, use string, f still.Fraction, r still.Run) {
	lot := lotOf(f.Stream)
	t.Key, t.DurationS, t.Power = id+"."+key(f.Name), f.EndS-f.StartS, c.stillW(use)
	w := work{Task: t, do: plan.Say(fractionSays[f.Name], lot.Volume()), path: use + "." + key(f.Name)}
	if f.Name == still.Foreshots {
		w.cautions = c.warn("foreshots")
	}
	every := readEveryS
	if f.Name == still.Hearts {
		every = readHeartsS
	}
	// Full steps from the first drop, but none close to a cut.
	// Volumes are of this fraction alone: what its receiver shows.
	before := pointAt(r.Curve, f.StartS).OverM3
	for s := math.Ceil((f.StartS-r.HeatUpS)/every+0.25)*every + r.HeatUpS; s < f.EndS-every/4; s += every {
		p := pointAt(r.Curve, s)
		soFar := lot.Times((p.OverM3 - before) * litresPerM3 / lot.VolumeL)
		w.read = append(w.read, spout(p.ABV).at(s-f.StartS), receiver(soFar).at(s-f.StartS), vapour(p.VapourC).at(s-f.StartS))
	}
	end := pointAt(r.Curve, f.EndS)
	w.read = append(w.read, spout(f.EndABV).at(f.EndS-f.StartS), receiver(lot).at(f.EndS-f.StartS))
	if f.Name != still.Foreshots {
		w.read = append(w.read, vapour(end.VapourC).at(f.EndS-f.StartS))
	}
	c.add(w)
}

func key(fraction string) string {
	if fraction == still.LowWines {
		return "collect"
	}
	return fraction
}

func receiver(l plan.Lot) reading { return volumeOf("receiver", l) }

// stopWork ends a charge.
func (c *compiler) stopWork(t schedule.Task, id, use string, r still.Run) {
	t.Key, t.DurationS = id+".stop", dischargeS
	rest := lotOf(r.Residue).Volume()
	w := work{Task: t, cautions: c.warn("stillage", "air-in"), path: use + ".stop"}
	if use == "strip" {
		keep := ""
		if c.p.Mash.BacksetL > 0 {
			keep = "Keep what the next mash wants as backset. "
		}
		w.do = plan.Say("Heat off, vent, discharge {} of pot ale. "+keep+"Record the low wines before they are mingled"+c.cite("27 CFR 19.301")+".", rest)
		w.read = lotReadings(lotOf(r.Fraction(still.LowWines).Stream))
	} else {
		w.do = plan.Say("Heat off, vent, discharge {} of spent lees. Record the feints before they are mingled"+c.cite("27 CFR 19.301")+".", rest)
		w.read = lotReadings(lotOf(r.Feints()))
	}
	c.add(w)
}

// pointAt reads a run's curve at a time from the fire, between its points.
func pointAt(curve []still.Point, s float64) still.Point {
	a, b, f := around(curve, func(p still.Point) float64 { return p.TimeS }, s)
	return still.Point{
		TimeS: s, PotC: mix(a.PotC, b.PotC, f), VapourC: mix(a.VapourC, b.VapourC, f), ABV: mix(a.ABV, b.ABV, f),
		OverM3: mix(a.OverM3, b.OverM3, f), RateM3S: mix(a.RateM3S, b.RateM3S, f), Fraction: a.Fraction,
	}
}
