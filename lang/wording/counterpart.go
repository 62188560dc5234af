package wording

import "newmake/lang/quantity"

// InOther writes an SI value in the other system's unit than the one it was written
// in: 640 lb is 290 kg. It is "" where there is no such unit, or where no factor
// leads from one to the other, as from a strength at 20 C to proof.
func InOther(si float64, unit string, k quantity.Kind) string {
	other := Counterpart(si, unit, k)
	if other == "" {
		return ""
	}
	return In(si, other, k)
}

// Counterpart is the other system's unit for an SI value that was written in a unit,
// "" where InOther has nothing to write.
func Counterpart(si float64, unit string, k quantity.Kind) string {
	u, ok := quantity.Lookup(unit)
	shown := unitsShown[k]
	switch {
	case !ok || k == quantity.Strength:
		return ""
	case u.System == quantity.US && len(shown.si) > 0:
		return bestOf(si, k, shown.si)
	case u.System == quantity.SI && len(shown.us) > 0:
		return bestOf(si, k, shown.us)
	}
	return ""
}
