package spelling

import (
	"slices"

	"newmake/lang/sorting"
)

// Ranked are names that may have been meant, each with how far it is from what was
// written.
type Ranked []ranked

type ranked struct {
	name string
	off  int
}

// Add puts in a name. One that is in already stays as it is.
func (r *Ranked) Add(name string, off int) {
	for _, in := range *r {
		if in.name == name {
			return
		}
	}
	*r = append(*r, ranked{name, off})
}

// First gives the nearest names, at most n; of names as near the one that was put in
// first.
func (r Ranked) First(n int) []string {
	r = slices.Clone(r)
	sorting.Stable(r, func(a, b ranked) int { return a.off - b.off })
	var names []string
	for _, in := range r[:min(n, len(r))] {
		names = append(names, in.name)
	}
	return names
}
