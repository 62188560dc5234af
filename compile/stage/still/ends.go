package still

import (
	"fmt"
	"slices"
)

// longestRunS is the longest that a run is followed, from the fire to the stop: a week.
// Runs take hours (common practice), and of one that takes months nobody reads the
// spout each quarter of an hour.
const longestRunS = 7 * 86400.0

// ends gives an error for a run that comes to no end in that time, and for one that a
// pace gives too little heat to bring anything over.
func (r *runner) ends() error {
	for k, f := range slices.Backward(r.fractions) { // heads come as the hearts do, which are what is written
		if k < len(r.drives) && r.drives[k].heatW > 0 && (r.drives[k].heatW <= r.p.lossW || f.EndS < f.StartS) {
			return fmt.Errorf("the %s have %.3f kW, which does not make up the still's losses of %.3f kW at the boil: give more heat in `pace`", f.Name, r.drives[k].heatW/1000, r.p.lossW/1000)
		}
	}
	if lastS := r.lastS(); !(lastS <= longestRunS) {
		return fmt.Errorf("it takes %.0f h, and a run is followed for a week, %.0f h: bring it over sooner, in `pace`, give more heat, or charge less", lastS/3600, longestRunS/3600)
	}
	return nil
}
