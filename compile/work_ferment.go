package compile

import (
	"fmt"
	"time"

	"newmake/compile/plan"
	"newmake/compile/stage/ferment"
	"newmake/compile/stage/schedule"
)

// fermentWork is the set, which ends the mash day, and the days that follow.
func (c *compiler) fermentWork() {
	b, m, f := c.b.Ferm, c.p.Mash, c.p.Ferment
	name := c.fermenter.Name
	fill := c.mashed.Out.VolumeM3()
	c.add(work{
		Task: schedule.Task{Key: "ferment.fill", Stage: "ferment", Vessel: name, Chain: "mash", Attend: schedule.Throughout,
			DurationS: pumpSetupS + fill/pumpM3PerS},
		do:       plan.Say("Pump over to the fermenter: {}.", plan.Of(fill*litresPerM3, plan.Litre)),
		read:     []reading{volume("volume", fill*litresPerM3)},
		cautions: c.warn("confined"), path: "ferment",
	})
	pitch := plan.Of(f.PitchKg, plan.Kilogram)
	c.addition(b.Yeast.Name, pitch, "ferment.pitch", nil)
	say, values := "Pitch {} of "+b.Yeast.Name, []plan.Quantity{pitch}
	for _, d := range b.Doses {
		kg := plan.Of(d.MassKg, plan.Kilogram)
		c.addition(d.Enzyme.Name, kg, "ferment.pitch", nil)
		say, values = say+"; stir in {} of "+d.Enzyme.Name, append(values, kg)
	}
	c.add(work{
		Task: schedule.Task{Key: "ferment.pitch", Stage: "ferment", Vessel: name, Chain: "mash", Attend: schedule.Throughout, DurationS: pitchS},
		do:   plan.Say(say+".", values...),
		read: []reading{temperature(c.mashed.Out.TempC, mashTolC), gravity(m.HydrometerSG, tolSG), acidity(m.PH)},
		path: "ferment.pitch",
	})
	hold := plan.Say("Ferment. Cool it when it passes {}.", plan.Of(f.HoldHighC, plan.Celsius))
	if f.HoldHighC == 0 {
		hold = plan.Say("Ferment.")
	}
	c.add(work{
		Task: schedule.Task{Key: "ferment.run", Stage: "ferment", Vessel: name, DurationS: b.DurationS, Elastic: true},
		do:   hold, cautions: c.warn("co2", "confined"), path: "ferment.for",
	})
}

// rounds are the daily readings of the ferment, as steps.
func (c *compiler) rounds(s schedule.Slot, zone *time.Location) []plan.Step {
	var out []plan.Step
	for i, at := range schedule.Rounds(s.Start, s.End, c.b.Plant.Shift, zone, roundMinute) {
		p := fermentAt(c.fermented.Curve, at.Sub(s.Start).Seconds())
		step := plan.Step{
			ID: fmt.Sprintf("ferment.round.%d", i+1), Stage: "ferment", Vessel: s.Vessel,
			Start: rfc3339(at), End: rfc3339(at.Add(time.Duration(roundS) * time.Second)), DurationMin: roundS / 60,
			Do:     plan.Say("Read the ferment, {} after the pitch.", plan.Of(at.Sub(s.Start).Hours(), plan.Hour)),
			Attend: plan.Throughout, People: 1,
		}
		for _, r := range []reading{gravity(p.SG, fermentSG), temperature(p.TempC, fermentTolC), acidity(p.PH)} {
			step.Read = append(step.Read, r.Reading)
		}
		out = append(out, step)
	}
	return out
}

// fermentAt reads the curve at a time, between its points.
func fermentAt(curve []ferment.Point, s float64) ferment.Point {
	a, b, f := around(curve, func(p ferment.Point) float64 { return p.TimeS }, s)
	return ferment.Point{
		TimeS: s, TempC: mix(a.TempC, b.TempC, f), SG: mix(a.SG, b.SG, f), ABV: mix(a.ABV, b.ABV, f), PH: mix(a.PH, b.PH, f),
	}
}
