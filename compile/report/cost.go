package report

import (
	"newmake/compile/lot"
	"newmake/compile/numbers"
	"newmake/compile/plan"
	"newmake/compile/stage/cask"
	"newmake/lang/recipe"
)

// Cost prices a plan whose work is on the clock; nil where the house does not say
// what things cost.
func Cost(b *recipe.Batch, p *plan.Plan, hearts plan.Lot) *plan.Cost {
	k := b.Costs
	if len(k.PerKg) == 0 && k.PerKWh == 0 && k.PerM3Water == 0 && k.PerCask == 0 && k.PerUsedCask == 0 && k.PerBottle == 0 && k.PerHour == 0 {
		return nil
	}
	out := &plan.Cost{Currency: k.Currency, Lines: []plan.CostLine{}}
	// Each line is paid to the cent, so that what is printed adds up, and the sum is one
	// number wherever it is said.
	pay := func(what string, amount plan.Quantity, cost float64) {
		cost = plan.RoundTo(cost, plan.MoneyPlaces(k.Currency))
		out.Lines = append(out.Lines, plan.CostLine{What: what, Amount: amount, Cost: cost})
		out.Total += cost
	}
	add := func(what string, amount plan.Quantity, price, units float64) {
		switch {
		case units == 0:
		case price == 0:
			out.Unpriced = append(out.Unpriced, what)
		default:
			pay(what, amount, price*units)
		}
	}
	for _, m := range materials(b, p) {
		add(m.name, plan.Of(m.kg, plan.Kilogram), k.PerKg[m.name], m.kg)
	}
	add("heat", plan.Of(p.Energy.HeatKWh, plan.KilowattH), k.PerKWh, p.Energy.HeatKWh)
	add("water", plan.Of(p.Energy.WaterL, plan.Litre), k.PerM3Water, p.Energy.WaterL/lot.LitresPerM3)
	casks, perCask := "casks", k.PerCask
	if numbers.InWood(b) && !b.Cask.New {
		casks, perCask = "used casks", k.PerUsedCask
	}
	add(casks, plan.Of(float64(p.Cask.Casks), plan.Each), perCask, float64(p.Cask.Casks))
	if h := p.Schedule.PeopleHours; k.PerHour > 0 {
		pay("work", plan.Of(h, plan.Hour), h*k.PerHour)
	} else {
		out.Unpriced = append(out.Unpriced, "work")
	}
	if hearts.PureL > 0 {
		out.PerLPA, out.PerPG = out.Total/hearts.PureL, out.Total/hearts.ProofGallons
		if wood := paid(out, casks); wood > 0 {
			spirit := out.Total - wood
			out.SpiritPerLPA, out.SpiritPerPG = spirit/hearts.PureL, spirit/hearts.ProofGallons
		}
	}
	if n := p.Cask.Casks; n > 0 {
		out.PerCask = out.Total / float64(n)
	}
	if numbers.InWood(b) {
		out.Carrying = out.Total * k.CarryingPerYear * b.Cask.RestS / cask.YearS
	}
	if n := p.Cask.Bottles; n > 0 {
		out.EmptyBottle = k.PerBottle
		out.PerBottle = (out.Total+out.Carrying)/float64(n) + out.EmptyBottle
	}
	return out
}

// paid is what a line of a cost comes to, 0 where there is none.
func paid(c *plan.Cost, what string) float64 {
	for _, l := range c.Lines {
		if l.What == what {
			return l.Cost
		}
	}
	return 0
}

// antifoamKgM3 is the density of an emulsion, mostly water (from memory).
const antifoamKgM3 = 1000

type material struct {
	name string
	kg   float64
}

// materials is what the batch uses by weight, each once, in the order of use.
func materials(b *recipe.Batch, p *plan.Plan) []material {
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
	for _, l := range b.Bill.Lines {
		add(l.Grain.Name, l.MassKg)
	}
	for _, s := range b.Mash.Steps {
		if s.Verb == recipe.MashDose && s.Enzyme != nil {
			add(s.Enzyme.Name, s.MassKg)
		}
	}
	if b.Ferm.Yeast != nil {
		add(b.Ferm.Yeast.Name, p.Ferment.PitchKg)
	}
	for _, d := range b.Ferm.Doses {
		add(d.Enzyme.Name, d.MassKg)
	}
	some := func(name string, kg float64) {
		if kg > 0 {
			add(name, kg)
		}
	}
	t := b.Mash.Treatment
	some(t.Acid.String()+"-acid", p.Mash.AcidKg)
	some("gypsum", t.GypsumKg)
	some("lime", t.LimeKg)
	some("dap", p.Ferment.NutrientKg)
	some("antifoam", b.Ferm.AntifoamM3*antifoamKgM3)
	return out
}
