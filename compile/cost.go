package compile

import (
	"newmake/compile/plan"
	"newmake/lang/recipe"
)

// cost prices the batch where the house says what things cost.
func (c *compiler) cost() bool {
	k := c.b.Costs
	if len(k.PerKg) == 0 && k.PerKWh == 0 && k.PerM3Water == 0 && k.PerCask == 0 && k.PerUsedCask == 0 && k.PerHour == 0 {
		return true
	}
	out := &plan.Cost{Currency: k.Currency, Lines: []plan.CostLine{}}
	c.p.Cost = out
	add := func(what string, amount plan.Quantity, price, units float64) {
		switch {
		case units == 0:
		case price == 0:
			out.Unpriced = append(out.Unpriced, what)
		default:
			c.payFor(what, amount, price*units)
		}
	}
	for _, m := range c.materials() {
		add(m.name, plan.Of(m.kg, plan.Kilogram), k.PerKg[m.name], m.kg)
	}
	add("heat", plan.Of(c.p.Energy.HeatKWh, plan.KilowattH), k.PerKWh, c.p.Energy.HeatKWh)
	add("water", plan.Of(c.p.Energy.WaterL, plan.Litre), k.PerM3Water, c.p.Energy.WaterL/litresPerM3)
	casks, perCask := "casks", k.PerCask
	if c.inWood() && !c.b.Cask.New {
		casks, perCask = "used casks", k.PerUsedCask
	}
	add(casks, plan.Of(float64(c.p.Cask.Casks), plan.Each), perCask, float64(c.p.Cask.Casks))
	return true
}

// payFor adds a line, for people to the cent: what it all comes to is then what
// the lines come to.
func (c *compiler) payFor(what string, amount plan.Quantity, cost float64) {
	if c.purpose == printed {
		cost = plan.RoundTo(cost, 2)
	}
	out := c.p.Cost
	out.Lines = append(out.Lines, plan.CostLine{What: what, Amount: amount, Cost: cost})
	out.Total += cost
}

// costWork adds the people, whose hours are known once the work is on the
// clock, and what it all comes to.
func (c *compiler) costWork() {
	out := c.p.Cost
	if out == nil {
		return
	}
	if h := c.p.Schedule.PeopleHours; c.b.Costs.PerHour > 0 {
		c.payFor("work", plan.Of(h, plan.Hour), h*c.b.Costs.PerHour)
	} else {
		out.Unpriced = append(out.Unpriced, "work")
	}
	if hearts := lotOf(c.hearts); hearts.PureL > 0 {
		out.PerLPA, out.PerPG = out.Total/hearts.PureL, out.Total/hearts.ProofGallons
	}
	if n := c.p.Cask.Casks; n > 0 {
		out.PerCask = out.Total / float64(n)
	}
}

type material struct {
	name string
	kg   float64
}

// materials is what the batch uses by weight, each once, in the order of use.
func (c *compiler) materials() []material {
	var out []material
	add := func(name string, kg float64) {
		for i := range out {
			if out[i].name == name {
				out[i].kg += kg
				return
			}
		}
		out = append(out, material{name, kg})
	}
	for _, l := range c.b.Bill.Lines {
		add(l.Grain.Name, l.MassKg)
	}
	for _, s := range c.b.Mash.Steps {
		if s.Verb == recipe.MashDose && s.Enzyme != nil {
			add(s.Enzyme.Name, s.MassKg)
		}
	}
	if c.b.Ferm.Yeast != nil {
		add(c.b.Ferm.Yeast.Name, c.p.Ferment.PitchKg)
	}
	for _, d := range c.b.Ferm.Doses {
		add(d.Enzyme.Name, d.MassKg)
	}
	return out
}
