package made

import (
	"fmt"
	"math"

	"newmake/compile/matter/fluid"
	"newmake/compile/measure"
	"newmake/lang/diag"
	"newmake/lang/record"
)

// trulyWithin is by how much a true strength may be off what comes of the reading, as a
// fraction by volume: a fifth of a degree of proof, since tables are read to tenths and between
// their lines (own rule).
const trulyWithin = 0.001

// Truly holds the true strengths that people worked out against what they read. Where
// nobody wrote how warm the sample was there is nothing to hold them against.
func Truly(r *record.Run) (said diag.List) {
	for i := range r.Visits {
		for k := range r.Visits[i].Read {
			rd := &r.Visits[i].Read[k]
			if _, warm := rd.Sample(); rd.True == nil || !warm {
				continue
			}
			is, ok := Strength(rd)
			worked, known := Strength(&record.Reading{Value: *rd.True, Place: rd.Place, ScaleC: rd.ScaleC})
			if !ok || !known || math.Abs(is.SI-worked.SI) <= trulyWithin {
				continue
			}
			v, _ := rd.Holds()
			at, _ := rd.Sample()
			said.Add(diag.Diagnostic{Code: diag.CodeTrueOther, Severity: diag.Warning, At: rd.Place,
				Summary: fmt.Sprintf("`%s` at %s is %s, and `true %s` stands beside it", v, temperature(rd, at), inUnit(is.SI, rd.True.Unit), rd.True),
				Help:    "what was read counts, and the true strength is not used: work it out again, as `newmake gauge` does, or look at the reading and its temperature"})
		}
	}
	return said
}

// temperature is a sample's as it was written.
func temperature(rd *record.Reading, c float64) string {
	switch {
	case rd.AtCorrected != nil:
		return rd.AtCorrected.New.String()
	case rd.At != nil:
		return rd.At.String()
	}
	return measure.SI.Temp(c)
}

// inUnit is a strength in the unit in which somebody wrote it.
func inUnit(abv float64, unit string) string {
	if w, err := fluid.MassFracFromABV(abv); unit == "proof" && err == nil {
		return measure.Number(fluid.ProofFromMassFrac(w), 1) + " proof"
	}
	return measure.Number(100*abv, 1) + " " + unit
}
