package compile

import (
	"newmake/compile/plan"
	"newmake/lang/recipe"
)

// maltWindows are where a malt's own enzymes work. Beta-amylase from 55 to 65 C
// and half gone in 10 min at 65 (Muller 1991), alpha-amylase from 65 to 75 and
// gone above 80: common practice, see process.md. They draw the reader's eye;
// the model computes with rates (package starch).
var maltWindows = []plan.EnzymeWindow{
	{Name: "beta-amylase", Malt: true, LowC: 55, HighC: 65, GoneC: 68},
	{Name: "alpha-amylase", Malt: true, LowC: 65, HighC: 75, GoneC: 80},
}

// windows are those of the enzymes in the mash, in the order in which they go
// in: those dosed, and the malt's own with the first malt.
func (c *compiler) windows() []plan.EnzymeWindow {
	out := []plan.EnzymeWindow{}
	seen, malted := map[string]bool{}, false
	for i, s := range c.b.Mash.Steps {
		if i >= len(c.mashed.Steps) {
			break
		}
		from := c.mashed.Steps[i].StartS / minute
		switch e := s.Enzyme; {
		case s.Verb == recipe.MashAdd && !malted && c.brings(s):
			malted = true
			for _, w := range maltWindows {
				w.FromMin = from
				out = append(out, w)
			}
		case s.Verb == recipe.MashDose && e != nil && !seen[e.Name] && e.HighC > e.LowC:
			seen[e.Name] = true
			out = append(out, plan.EnzymeWindow{Name: e.Name, FromMin: from, LowC: e.LowC, HighC: e.HighC, GoneC: e.MostC})
		}
	}
	return out
}

// brings says if a step adds grain with enzymes of its own.
func (c *compiler) brings(s recipe.MashStep) bool {
	for _, l := range s.Grains {
		if c.b.Bill.Lines[l].Grain.AlphaDU > 0 {
			return true
		}
	}
	return false
}

// adds names what a step of the mash puts in.
func (c *compiler) adds(s recipe.MashStep) []string {
	switch s.Verb {
	case recipe.MashWater, recipe.MashBackset:
		return []string{verbWords[s.Verb]}
	case recipe.MashDose:
		return []string{s.Enzyme.Name}
	case recipe.MashAdd:
		var out []string
		for _, l := range s.Grains {
			out = append(out, c.b.Bill.Lines[l].Grain.Name)
		}
		return out
	}
	return nil
}
