package ledger

import (
	"newmake/lang/inventory"
	"newmake/lang/record"
)

// InStore is what lies in the stores of a house at the end of a day, by its name: kg of
// what is weighed, a number of what is counted. What came and was used by then is counted
// in, casks that were filled and bottles too; what is measured by volume is not here. Less than nothing is nothing.
func InStore(t *inventory.Inventory, bushelKg func(grain string) float64, on record.Date) map[string]float64 {
	s := storesOf(t, bushelKg, on, on)
	whole := map[string]int64{}
	gram := map[string]bool{}
	for _, p := range s.piles {
		if p.Unit == "mL" {
			continue
		}
		whole[p.What] += p.there
		gram[p.What] = p.Unit == "g"
	}
	out := map[string]float64{}
	for what, n := range whole {
		switch {
		case n <= 0:
		case gram[what]:
			out[what] = float64(n) / 1000
		default:
			out[what] = float64(n)
		}
	}
	return out
}
