package taste

import (
	"slices"

	"newmake/compile/plan"
)

// Carries puts what the hearts of plans hold beside alcohol side by side, where there
// are several. All of it is an estimate, relative to the charge.
func (f *Found) Carries(plans []*plan.Plan) {
	defer f.planned()
	if len(plans) < 2 {
		return
	}
	for _, p := range plans {
		if p.Congeners == nil {
			continue
		}
		for _, c := range p.Congeners.Each {
			for _, part := range c.Fractions {
				if part.Fraction == "hearts" {
					f.carries(c.Name, Holds{p.Batch.Name, part.Relative.Value, part.Relative.Low, part.Relative.High})
				}
			}
		}
	}
}

func (f *Found) carries(name string, h Holds) {
	i := slices.IndexFunc(f.Carried, func(c Carried) bool { return c.Name == name })
	if i < 0 {
		i = len(f.Carried)
		f.Carried = append(f.Carried, Carried{Name: name})
	}
	c := &f.Carried[i]
	for _, o := range c.Batches {
		c.Differs = c.Differs || o.High < h.Low || h.High < o.Low
	}
	c.Batches = append(c.Batches, h)
}
