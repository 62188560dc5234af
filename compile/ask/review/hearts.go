package review

import (
	"newmake/compile/lot"
	"newmake/compile/made"
	"newmake/compile/numbers"
	"newmake/lang/record"
)

// gaugedHearts is the alcohol of the hearts as they were gauged, which is what the books
// take for produced; nil where the lines do not say how much, or how strong.
// What was lost of them before that is of what was done: lines are the readings of their volume.
func gaugedHearts(run *record.Run, planned, asMade *numbers.Batch, readings []made.Reading) *Gap {
	_, lines := made.Hearts(run)
	if len(lines) == 0 {
		return nil
	}
	g := &Gap{Words: "alcohol of the hearts", Kind: Alcohol}
	lost := 0.0
	for _, v := range lines {
		strength, volume := find(v.Read, record.Strength), find(v.Read, record.Volume)
		if strength == nil || volume == nil {
			return nil
		}
		abv, ok := made.Strength(strength)
		if !ok {
			return nil
		}
		m3, ok := made.Volume(volume, abv.SI, strength)
		if !ok {
			return nil
		}
		g.Said += m3.SI * abv.SI
		for _, r := range readings {
			if r.Visit == v {
				lost = max(lost, r.LostM3*abv.SI)
			}
		}
	}
	lpa := func(n *numbers.Batch) float64 {
		v, _ := heartsLPA(n)
		return v / lot.LitresPerM3
	}
	g.Plan, g.Made = lpa(planned), lpa(asMade)-lost
	return g
}
