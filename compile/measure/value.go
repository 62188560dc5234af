package measure

import (
	"strings"

	"newmake/compile/plan"
)

// Value gives a quantity's number in the reader's units, and the unit's word:
// for a table to reckon with or a curve to be drawn by, where Quantity makes
// text. Spirit counted both ways gives what its gauge says: wine gallons and
// proof at 60 F, or litres and % vol at 20 C.
func (u Units) Value(q plan.Quantity) (float64, string) {
	us := u == US
	switch q.Unit {
	case plan.Litre:
		switch {
		case us && q.Gallons != 0:
			return q.Gallons, "gal"
		case us:
			return q.Value / litrePerGallon, "gal"
		}
	case plan.Kilogram:
		if us {
			return q.Value / kgPerPound, "lb"
		}
	case plan.Celsius:
		if us {
			return q.Value*1.8 + 32, "F"
		}
	case plan.CelsiusDiff:
		if us {
			return q.Value * 1.8, "F difference"
		}
		return q.Value, "C difference"
	case plan.AbvPct:
		switch {
		case us && q.Proof != 0:
			return q.Proof, "proof"
		case us && q.Abv60F != 0:
			return q.Abv60F, "% abv"
		case us:
			return q.Value, "% abv"
		}
		return q.Value, "% vol"
	case plan.AbvDiff:
		if us && q.Proof != 0 {
			return q.Proof, "proof"
		}
		return q.Value, "% vol"
	case plan.LitrePerH:
		if us {
			return q.Value / litrePerGallon, "gal/h"
		}
	case plan.CubicMetre:
		if us {
			return q.Value / (metrePerFoot * metrePerFoot * metrePerFoot), "cu ft"
		}
	case plan.SGDiff:
		return q.Value, "SG"
	case plan.PlatoDiff:
		return q.Value, "plato"
	}
	return q.Value, string(q.Unit)
}

// counted are the numbers of a plan's summary and cost that the readers of one system
// alone count in.
var counted = map[string]Units{"pureAlcoholL": SI, "costPerLPA": SI, "heartsProofGallons": US, "costPerProofGallon": US}

// Counts reports whether readers of these units count in a number, by its key.
func (u Units) Counts(key string) bool {
	of, foreign := counted[key]
	return !foreign || of == u
}

// Figures is a quantity's number in the unit of Value, for a table, with the decimals with
// which Quantity says it: those that its instrument can be read to.
func (u Units) Figures(q plan.Quantity) string { return u.figures(u.Quantity(q), q) }

// OffFigures is Figures of a tolerance, as Tolerance says it.
func (u Units) OffFigures(q plan.Quantity) string { return u.figures(u.Tolerance(q), q) }

func (u Units) figures(said string, q plan.Quantity) string {
	if q.Unit == plan.Kilogram { // which is said in ounces or grams where it is little
		v, _ := u.Value(q)
		said = Number(v, shown(v, 1))
	}
	for _, word := range strings.Fields(said) {
		if strings.ContainsAny(word, "0123456789") {
			return strings.ReplaceAll(word, ",", "")
		}
	}
	return said
}
