package compile

import (
	"strconv"

	"newmake/compile/plan"
	"newmake/lang/recipe"
)

// bill fills in the grain. What dissolves of it is known once it is mashed.
func (c *compiler) bill() bool {
	b := &c.p.Bill
	b.TotalKg = c.b.Bill.TotalKg
	b.Bushels = b.TotalKg / kgPerBushel
	b.Additions = []plan.Addition{}
	added := c.addedIn()
	for i, l := range c.b.Bill.Lines {
		g := l.Grain
		b.Lines = append(b.Lines, plan.Grain{
			Name: g.Name, MassKg: l.MassKg, SharePct: 100 * l.Share, MoisturePct: 100 * g.Moisture,
			AddedIn: added[i], HouseOwn: g.House,
		})
		if b.TotalKg > 0 {
			b.LintnerDeg += g.LintnerPower * l.MassKg / b.TotalKg
		}
	}
	return true
}

// addedIn is the step that adds each line of the bill.
func (c *compiler) addedIn() map[int]string {
	in := map[int]string{}
	for i, s := range c.b.Mash.Steps {
		if s.Verb != recipe.MashAdd {
			continue
		}
		for _, g := range s.Grains {
			in[g] = mashID(i)
		}
	}
	return in
}

func mashID(step int) string { return "mash." + strconv.Itoa(step+1) }

// addition enters something to measure out, in the order of use.
func (c *compiler) addition(name string, amount plan.Quantity, step string, at *plan.Quantity) {
	c.p.Bill.Additions = append(c.p.Bill.Additions, plan.Addition{Name: name, Amount: amount, At: at, Step: step})
}
