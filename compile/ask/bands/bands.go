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
	put(p, newBench(b))
}

// Kept puts the bands of one batch again and again, as for a page that is made anew
// whenever a reading is typed in.
type Kept struct {
	of    [32]byte
	bench *bench
}

// Put is Put of a batch. The digest is of all that the batch was read from: while it is
// as it was, nothing is computed.
func (kept *Kept) Put(p *plan.Plan, b *recipe.Batch, of [32]byte) {
	if p == nil || p.Bands != nil {
		return
	}
	if kept.bench == nil || kept.of != of {
		kept.of, kept.bench = of, newBench(b)
	}
	put(p, kept.bench)
}

func put(p *plan.Plan, k *bench) {
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
