package compile

import (
	"fmt"
	"strconv"

	"newmake/compile/matter/stream"
	"newmake/compile/plan"
	"newmake/compile/stage/schedule"
)

// leastLeftL is what is left over from which on it is worth a word.
const leastLeftL = 0.05

// fillWork gauges and reduces the hearts, lets them settle, and fills the wood.
func (c *compiler) fillWork() {
	k := c.p.Cask
	c.gaugeWork()
	c.reduceWork("cask.entry")
	if k.Casks == 0 {
		c.add(work{
			Task: schedule.Task{Key: "fill.keep", Stage: "fill", Attend: schedule.Throughout, MayWait: true, DurationS: fillSetupS},
			do: plan.Say("Too little for a cask of {}: put {} into a closed tank, bonded and labelled, and fill with the next batch.",
				plan.Of(k.SizeL, plan.Litre), k.Leftover.Volume()),
			read: lotReadings(k.Leftover), cautions: c.warn("spirit"), path: "cask.fill",
		})
		return
	}
	people := 1
	if c.b.Cask.SizeM3 >= heavyCaskM3 {
		people = 2
	}
	t := schedule.Task{Key: "fill.cask", Stage: "fill", Attend: schedule.Throughout, MayWait: true, People: people,
		DurationS: fillSetupS + fillS*float64(k.Casks)}
	what := "one cask"
	if k.Casks > 1 {
		what = strconv.Itoa(k.Casks) + " casks"
	}
	text := "Gauge again, fill " + what + " of {}, bung, weigh, and record each" + c.cite("27 CFR 19.283, .301") + "."
	values := []plan.Quantity{plan.Of(k.SizeL, plan.Litre)}
	fill := lotReadings(*k.Fill)
	fill[0].What = "each cask"
	if k.LastFill != nil && k.Casks > 1 {
		text, values = text+" The last one takes {}.", append(values, k.LastFill.Volume())
	}
	if k.Leftover.VolumeL > leastLeftL {
		text, values = text+" {} is left: into a closed tank, labelled, for the next cask.", append(values, k.Leftover.Volume())
	}
	c.add(work{Task: t, do: plan.Say(text, values...), read: fill, cautions: c.warn("spirit", "lift"), path: "cask.fill"})
	c.add(work{Task: schedule.Task{Key: "cask.rest", Stage: "cask", DurationS: c.b.Cask.RestS},
		do: plan.Say("Rests in wood. Draw a sample twice a year, and hold it against the forecast."), path: "cask.rest"})
}

func (c *compiler) gaugeWork() {
	t := schedule.Task{Key: "fill.gauge", Stage: "fill", Attend: schedule.Throughout, MayWait: true, Chain: "reduce", DurationS: gaugeS}
	c.add(work{Task: t, do: plan.Say("Gauge the hearts: volume, temperature and hydrometer; true strength by the official tables."),
		read: lotReadings(lotOf(c.hearts)), cautions: c.warn("spirit"), path: "cask"})
}

func (c *compiler) reduceWork(path string) {
	r := c.p.Reduction
	t := schedule.Task{Key: "fill.reduce", Stage: "fill", Attend: schedule.Throughout, MayWait: true, Chain: "reduce", DurationS: reduceS}
	c.add(work{Task: t, do: plan.Say("Reduce with {} of water by the proofing card: in steps, stirring and gauging between. It warms by some {}.",
		r.Water(), plan.Of(r.TempRiseC, plan.CelsiusDiff)),
		read: lotReadings(r.To), path: path})
	c.addition("water to reduce", r.Water(), "fill.reduce", nil)
	c.add(work{Task: schedule.Task{Key: "fill.settle", Stage: "fill", DurationS: settleS, Elastic: true},
		do: plan.Say("Let it settle and come to the temperature of the room."), path: "cask"})
}

// keepWork ends a batch that goes into no wood.
func (c *compiler) keepWork(kept stream.Stream) {
	k, lot := c.p.Cask, lotOf(kept)
	c.gaugeWork()
	t := schedule.Task{Key: "fill.keep", Stage: "fill", Attend: schedule.Throughout, MayWait: true, DurationS: fillSetupS}
	if c.p.Reduction == nil {
		c.add(work{Task: t, do: plan.Say("Put the spirit into a closed tank, bonded and labelled, and record it" + c.cite("27 CFR 19.301") + "."),
			read: lotReadings(lot), cautions: c.warn("spirit"), path: "batch"})
		return
	}
	c.reduceWork("cask.bottle.at")
	t.Key, t.DurationS = "fill.bottle", fillSetupS+bottleS*float64(k.Bottles)
	c.add(work{Task: t, do: plan.Say(fmt.Sprintf("Gauge again, and bottle: about %d of %.0f mL.", k.Bottles, k.BottleL*1000)),
		read: lotReadings(lot), cautions: c.warn("spirit"), path: "cask.bottle"})
}
