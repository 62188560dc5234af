package compile

import (
	"math"
	"newmake/compile/plan"
	"newmake/lang/recipe"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
)

func TestTheBillAddsUpToTheCent(t *testing.T) {
	for _, name := range []string{ferry, "Stone Ferry", "Toll Road", "Low Bridge"} {
		p := planned(t, batch(t, lantern, name))
		cents := 0.0
		for _, l := range p.Cost.Lines {
			cents += math.Round(100 * l.Cost)
		}
		assert.Equal(t, cents, math.Round(100*p.Cost.Total), name)
	}
	line := func(name string) plan.CostLine {
		for _, l := range planned(t, batch(t, lantern, name)).Cost.Lines {
			if strings.HasSuffix(l.What, "casks") {
				return l
			}
		}
		return plan.CostLine{}
	}
	assert.Equal(t, plan.CostLine{What: "casks", Amount: plan.Of(1, plan.Each), Cost: 330}, line(ferry))
	assert.Equal(t, plan.CostLine{What: "used casks", Amount: plan.Of(1, plan.Each), Cost: 85}, line("Stone Ferry"))
	p := planned(t, edited(t, func(b *recipe.Batch) { b.Cask.New, b.Costs.PerUsedCask = false, 0 }))
	assert.Contains(t, p.Cost.Unpriced, "used casks")
}
