package bands

import (
	"newmake/compile/plan"
	"newmake/lang/recipe"
)

// Put puts the bands of a batch into its plan, which may be rounded already. A plan
// that has them stays as it is, and so does one whose batch cannot be computed.
func Put(p *plan.Plan, b *recipe.Batch) {
	if p == nil || p.Bands != nil {
		return
	}
	k := newBench(b)
	if k == nil {
		return
	}
	out := &plan.Bands{
		Computed: k.computed, Failed: k.failed, Numbers: k.summary(), Mash: k.mash(), Ferment: k.ferment(), Strip: k.run(strip), Spirit: k.run(spirit), Cask: k.cask(),
	}
	k.readings(p)
	p.Bands = out
	p.Round()
}
