package front

import (
	"newmake/lang/parallel"
	"newmake/lang/recipe"
)

// All finds, reads and computes every batch of a source, in its order.
func (s *Source) All(units *recipe.System) ([]*Plan, error) {
	var out []*Plan
	for _, name := range s.House.BatchesIn(s.Path) {
		b, err := s.Batch(name, units)
		if err != nil {
			return nil, err
		}
		out = append(out, &Plan{Batch: b})
	}
	parallel.Each(len(out), func(i int) { out[i] = out[i].Batch.Plan() })
	return out, nil
}
