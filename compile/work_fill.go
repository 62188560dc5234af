package compile

import (
	"strconv"

	"newmake/compile/plan"
	"newmake/compile/schedule"
)

// fillWork gauges and reduces the hearts, lets them settle, and fills the wood.
func (c *compiler) fillWork() {
	r, k := c.p.Reduction, c.p.Cask
	t := schedule.Task{Stage: "fill", Attend: schedule.Throughout, MayWait: true, Chain: "reduce"}
	t.Key, t.DurationS = "fill.gauge", gaugeS
	c.add(work{Task: t, do: plan.Say("Gauge the hearts: volume, temperature and hydrometer; true proof by the official tables."),
		read: lotReadings(r.From), cautions: c.warn("spirit"), path: "cask"})
	t.Key, t.DurationS = "fill.reduce", reduceS
	c.add(work{Task: t, do: plan.Say("Reduce with {} of water by the proofing card: in steps, stirring and gauging between. It warms by some {}.",
		plan.Of(r.WaterL, plan.Litre), plan.Of(r.TempRiseC, plan.CelsiusDiff)),
		read: lotReadings(r.To), path: "cask.entry"})
	c.addition("water to reduce", plan.Of(r.WaterL, plan.Litre), "fill.reduce", nil)
	c.add(work{Task: schedule.Task{Key: "fill.settle", Stage: "fill", DurationS: settleS, Elastic: true},
		do: plan.Say("Let it settle and come to the temperature of the room."), path: "cask"})
	if k.Casks == 0 {
		return
	}
	people := 1
	if c.b.Cask.SizeM3 >= heavyCaskM3 {
		people = 2
	}
	t = schedule.Task{Key: "fill.cask", Stage: "fill", Attend: schedule.Throughout, MayWait: true, People: people,
		DurationS: fillSetupS + fillS*float64(k.Casks)}
	what := "one cask"
	if k.Casks > 1 {
		what = strconv.Itoa(k.Casks) + " casks"
	}
	fill := lotReadings(*k.Fill)
	fill[0] = volume("each cask", k.Fill.VolumeL) // as wood holds it, warm or cold
	c.add(work{Task: t, do: plan.Say("Gauge again, fill "+what+" of {}, bung, weigh, and record each (27 CFR 19.283, .301).", plan.Of(k.SizeL, plan.Litre)),
		read: fill, cautions: c.warn("spirit", "lift"), path: "cask.fill"})
	c.add(work{Task: schedule.Task{Key: "cask.rest", Stage: "cask", DurationS: c.b.Cask.RestS},
		do: plan.Say("Rests in wood. Draw a sample twice a year, and hold it against the forecast."), path: "cask.rest"})
}
