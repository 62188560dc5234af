package constants

import "math"

// OffBy is what an instrument of a kind that nobody has checked is always off by, as one
// standard deviation of a value in SI; none of a kind that the table has not.
func OffBy(kind string, si float64) float64 {
	for i := range table {
		r := &table[i]
		switch {
		case r.id != kind || r.owner != Instrument:
		case r.form == Times:
			return r.sd * math.Abs(si)
		default:
			return r.sd
		}
	}
	return 0
}
