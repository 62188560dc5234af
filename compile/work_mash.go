package compile

import (
	"strings"

	"newmake/compile/plan"
	"newmake/compile/stage/mash"
	"newmake/compile/stage/schedule"
	"newmake/lang/recipe"
)

// mashWork is the mash day up to the fermenter, one chain without a wait.
func (c *compiler) mashWork() {
	cooker := c.b.Mash.Cooker
	millS := weighS + c.b.Bill.TotalKg/millKgPerS
	c.liquorWork(millS)
	c.add(work{
		Task: schedule.Task{Key: "mash.mill", Stage: "mash", Chain: "mash", Attend: schedule.Throughout,
			DurationS: millS, MayWait: true},
		do:       plan.Say("Weigh out {} of grain by the bill, and mill it.", plan.Of(c.b.Bill.TotalKg, plan.Kilogram)),
		cautions: c.warn("dust"), path: "bill",
	})
	hot := false
	for i, s := range c.b.Mash.Steps {
		if i >= len(c.mashed.Steps) {
			break
		}
		st := c.mashed.Steps[i]
		w := work{
			Task: schedule.Task{Key: mashID(i), Stage: "mash", Vessel: cooker.Name, Chain: "mash",
				Attend: schedule.Throughout, DurationS: st.EndS - st.StartS},
			path: s.Path,
		}
		if s.Verb == recipe.MashHeat || s.Verb == recipe.MashBoil {
			w.Power = heatW(cooker, c.b.Plant)
		}
		w.do, w.read = c.mashSay(i, s, st)
		if !hot && st.EndC > hotC {
			hot = true
			w.cautions = append(w.cautions, "hot-mash")
			if s.Verb == recipe.MashHeat || s.Verb == recipe.MashBoil {
				w.cautions = append(w.cautions, "steam")
			}
		}
		if s.Verb == recipe.MashAdd {
			w.cautions = append(w.cautions, "lockout")
		}
		c.warn(w.cautions...)
		c.add(w)
	}
	after := "ferment.pitch"
	if kg := c.mashed.Draff.MassKg(); kg > 0 {
		c.add(work{
			Task: schedule.Task{Key: "mash.draff", Stage: "mash", Vessel: cooker.Name, Attend: schedule.Throughout, DurationS: kg / digKgPerS, MayWait: true},
			do:   plan.Say("Dig out {} of wet draff, hot and heavy.", plan.Of(kg, plan.Kilogram)), cautions: c.warn("confined", "lockout", "hot-mash"), after: after,
		})
		after = "mash.draff"
	}
	c.add(work{
		Task: schedule.Task{Key: "mash.clean", Stage: "mash", Vessel: cooker.Name, Attend: schedule.Throughout, DurationS: cleanS, MayWait: true},
		do:   plan.Say("Rinse and clean the cooker."), cautions: c.warn("caustic", "confined", "lockout"), after: after,
	})
}

// hotLiquorC is how much warmer than the supply water is that a tank has heated
// beforehand.
const hotLiquorC = 5

// liquorWork has the hot water ready. It heats while the grain is weighed and
// milled; if that is too short for the first water it starts so much sooner.
func (c *compiler) liquorWork(millS float64) {
	firstJ := 0.0
	text, values := "Set the hot liquor to heat:", []plan.Quantity{}
	heatJ := 0.0
	for i, s := range c.b.Mash.Steps {
		if s.Verb != recipe.MashWater || s.TempC < c.b.Plant.WaterC+hotLiquorC || i >= len(c.mashed.Steps) {
			continue
		}
		j := c.mashed.Steps[i].HeatJ
		if heatJ == 0 && i == 0 {
			firstJ = j
		}
		if heatJ > 0 {
			text += ", then"
		}
		heatJ += j
		text, values = text+" {} at {}", append(values, plan.Of(s.VolumeM3*litresPerM3, plan.Litre), plan.Of(s.TempC, plan.Celsius))
	}
	if heatJ == 0 {
		return
	}
	t := schedule.Task{Key: "mash.liquor", Stage: "mash", Chain: "mash", Attend: schedule.Begin, MayWait: true}
	text, values = text+". It takes {} of heat", append(values, plan.Of(heatJ/joulesPerKWh, plan.KilowattH))
	if w := c.liquorW(); w > 0 {
		text, values = text+", {} of steam at full power", append(values, plan.Of(heatJ/w/60, plan.Minute))
		t.DurationS, t.Power = max(0, firstJ/w-millS), w
	}
	c.add(work{Task: t, do: plan.Say(text+".", values...), cautions: c.warn("steam"), path: "mash.water"})
}

// liquorW is the power that heats the liquor: the boiler's, or what the cooker
// takes if the house states no boiler.
func (c *compiler) liquorW() float64 {
	if b := c.b.Plant.BoilerW; b > 0 {
		return b
	}
	return c.b.Mash.Cooker.HeatsW
}

// mashSay is what a step of the mash asks for, and what should then be read.
func (c *compiler) mashSay(i int, s recipe.MashStep, st mash.Step) (plan.Phrase, []reading) {
	litres := plan.Of(s.VolumeM3*litresPerM3, plan.Litre)
	to := plan.Of(s.TempC, plan.Celsius)
	after := []reading{temperature(st.EndC, mashTolC)}
	switch s.Verb {
	case recipe.MashWater:
		c.addition("water", litres, mashID(i), &to)
		return plan.Say("Run in {} of water at {}.", litres, to), append(after, volume("in the cooker", st.VolumeM3*litresPerM3))
	case recipe.MashBackset:
		c.addition("backset", litres, mashID(i), &to)
		return plan.Say("Run in {} of backset at {}.", litres, to), after
	case recipe.MashAdd:
		return c.sayAdd(s), after
	case recipe.MashDose:
		kg := plan.Of(s.MassKg, plan.Kilogram)
		c.addition(s.Enzyme.Name, kg, mashID(i), nil)
		return plan.Say("Stir in {} of "+s.Enzyme.Name+".", kg), nil
	case recipe.MashHeat:
		return plan.Say("Heat to {}.", plan.Of(st.EndC, plan.Celsius)), after
	case recipe.MashBoil:
		return plan.Say("Boil at {} for {}.", plan.Of(st.EndC, plan.Celsius), plan.Of(s.DurationS/60, plan.Minute)), nil
	case recipe.MashCool:
		return plan.Say("Cool to {}.", plan.Of(st.EndC, plan.Celsius)), after
	case recipe.MashDrain:
		return plan.Say("Drain the worts off the grain, slowly, without sucking air."), []reading{volume("worts so far", st.VolumeM3*litresPerM3)}
	default:
		if c.lastRest(i) {
			return plan.Say("Rest for {}, stirring. Iodine on a drop stays yellow when it is done.", plan.Of(s.DurationS/60, plan.Minute)),
				append(after, acidity(st.PH))
		}
		return plan.Say("Rest for {}, stirring.", plan.Of(s.DurationS/60, plan.Minute)), after
	}
}

// sayAdd names the grains of a step with their weights.
func (c *compiler) sayAdd(s recipe.MashStep) plan.Phrase {
	var words []string
	var amounts []plan.Quantity
	for _, l := range s.Grains {
		line := c.b.Bill.Lines[l]
		words = append(words, "{} of "+line.Grain.Name)
		amounts = append(amounts, plan.Of(line.MassKg, plan.Kilogram))
	}
	return plan.Say("Stir in "+strings.Join(words, ", ")+".", amounts...)
}

// lastRest says if a step is the first rest with all the grain in, at which the
// mash is converted.
func (c *compiler) lastRest(i int) bool {
	last := -1
	for j, s := range c.b.Mash.Steps {
		if s.Verb == recipe.MashAdd {
			last = j
		}
	}
	for j := last + 1; j < i; j++ {
		if c.b.Mash.Steps[j].Verb == recipe.MashRest {
			return false
		}
	}
	return i > last
}

// heatW is what a vessel draws from the boiler.
func heatW(v *recipe.Vessel, p *recipe.Plant) float64 {
	if p.BoilerW > 0 {
		return min(v.HeatsW, p.BoilerW)
	}
	return v.HeatsW
}
