package review

import (
	"newmake/compile/lot"
	"newmake/compile/matter/stream"
	"newmake/compile/numbers"
	"newmake/compile/stage/still"
)

// expecting is what a balance takes from the numbers of a batch.
func expecting(n *numbers.Batch) Expected {
	e := Expected{
		StripCharges: n.Stripped.Charges, SpiritCharges: n.Distilled.Charges,
		PotAleLPA: n.Stripped.Sum(leftBy),
		LeesLPA:   pureL(n.Distilled.Sum(left)),
		AbvPct:    map[string]float64{},
		VolumeL:   map[string]float64{},
	}
	wash, charges := n.Stripped.Charge, float64(max(n.Stripped.Charges, 1)) // Charge is that of the mean
	e.WashL, e.WashAbvPct = lot.LitresPerM3*charges*wash.VolumeAtM3(lot.ReferenceC), 100*wash.ABV()
	if wort := n.Mashed.Out.VolumeAtM3(lot.ReferenceC); wort > 0 {
		e.WashShare = charges * wash.VolumeAtM3(lot.ReferenceC) / wort
	}
	if fell := n.Mashed.HydrometerSG - n.Fermented.FinalSG; fell > 0 {
		e.AbvPerSG = 100 * wash.ABV() / fell
	}
	e.FeintsLPA = float64(max(n.Distilled.Charges, 1)) * pureL(n.Distilled.Returned)
	for _, f := range n.Distilled.Fractions {
		all := n.Distilled.Sum(func(r still.Run) stream.Stream { return r.Fraction(f.Name).Stream })
		e.AbvPct[f.Name] = 100 * all.ABV()
		e.VolumeL[f.Name] = lot.LitresPerM3 * all.VolumeAtM3(lot.ReferenceC)
	}
	all := n.Distilled.Sum(still.Run.Feints)
	e.AbvPct["feints"], e.VolumeL["feints"] = 100*all.ABV(), lot.LitresPerM3*all.VolumeAtM3(lot.ReferenceC)
	return e
}

func pureL(s stream.Stream) float64 { return lot.LitresPerM3 * s.PureAlcoholM3() }

// left is what a charge leaves in the pot or on the way, and leftBy its alcohol, in litres.
func left(r still.Run) stream.Stream { return r.Residue.Plus(r.Lost) }

func leftBy(r still.Run) float64 { return pureL(left(r)) }
