package review

import (
	"newmake/compile/lot"
	"newmake/compile/numbers"
	"newmake/compile/stage/still"
)

// expecting is what a balance takes from the numbers of a batch.
func expecting(n *numbers.Batch) Expected {
	e := Expected{
		PotAleLPA: float64(max(n.Stripped.Charges, 1)) * left(n.Stripped.Run),
		LeesLPA:   float64(max(n.Distilled.Charges, 1)) * left(n.Distilled.Run),
		AbvPct:    map[string]float64{},
		VolumeL:   map[string]float64{},
	}
	wash := n.Stripped.Charge
	e.WashL, e.WashAbvPct = lot.LitresPerM3*float64(max(n.Stripped.Charges, 1))*wash.VolumeAtM3(lot.ReferenceC), 100*wash.ABV()
	if wort := n.Mashed.Out.VolumeAtM3(lot.ReferenceC); wort > 0 {
		e.WashShare = float64(max(n.Stripped.Charges, 1)) * wash.VolumeAtM3(lot.ReferenceC) / wort
	}
	if fell := n.Mashed.HydrometerSG - n.Fermented.FinalSG; fell > 0 {
		e.AbvPerSG = 100 * wash.ABV() / fell
	}
	e.FeintsLPA = float64(max(n.Distilled.Charges, 1)) * lot.LitresPerM3 * n.Distilled.Returned.PureAlcoholM3()
	for _, f := range n.Distilled.Fractions {
		e.AbvPct[f.Name] = 100 * f.ABV
		e.VolumeL[f.Name] = lot.LitresPerM3 * f.VolumeM3 * float64(max(n.Distilled.Charges, 1))
	}
	e.AbvPct["feints"] = 100 * n.Distilled.Feints().ABV()
	return e
}

// left is the alcohol, in litres, that a charge leaves in the pot or on the way.
func left(r still.Run) float64 {
	return lot.LitresPerM3 * (r.Residue.PureAlcoholM3() + r.Lost.PureAlcoholM3())
}
