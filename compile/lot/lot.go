// Package lot counts what flows the way a plan shows it: volumes and strengths
// at 20 C, and beside them what the US gauger counts at 60 F.
package lot

import (
	"fmt"

	"newmake/compile/matter/fluid"
	"newmake/compile/matter/stream"
	"newmake/compile/plan"
	"newmake/lang/recipe"
)

// Of counts a stream both ways: at 20 C, and at 60 F as the US gauger does.
// Solids take part in the volume, and so thin the strength, as they do in a
// wash: volume times strength is the alcohol.
func Of(s stream.Stream) plan.Lot {
	if s.WaterKg+s.EthanolKg <= 0 {
		return plan.Lot{}
	}
	v20 := s.VolumeAtM3(ReferenceC)
	v60 := s.VolumeAtM3(fluid.SixtyF)
	share60 := s.EthanolKg / fluid.Density(1, fluid.SixtyF) / v60
	l := plan.Lot{
		VolumeL: v20 * LitresPerM3,
		AbvPct:  100 * s.PureAlcoholM3() / v20,
		PureL:   s.PureAlcoholM3() * LitresPerM3,
		MassKg:  s.MassKg(),

		WineGallons: v60 / fluid.USGallonM3,
		Proof:       200 * share60,
	}
	l.ProofGallons = l.WineGallons * l.Proof / 100
	return l
}

// MassFrac brings a strength, whatever its basis, to a mass fraction.
func MassFrac(s recipe.Strength) (float64, error) {
	switch s.Basis {
	case recipe.Proof:
		return fluid.MassFracFromABV60F(s.Value)
	case recipe.ABW:
		if s.Value < 0 || s.Value > 1 {
			return 0, fmt.Errorf("%.0f %% by weight is not possible", 100*s.Value)
		}
		return s.Value, nil
	default:
		return fluid.MassFracFromABV(s.Value)
	}
}

// Strength gives a strength both ways. One that is out of range, which the
// checker refuses, comes out as nothing.
func Strength(s recipe.Strength) plan.Strength {
	w, err := MassFrac(s)
	if err != nil {
		return plan.Strength{}
	}
	return AtMassFrac(w)
}

// AtMassFrac gives the strength of a mass fraction of ethanol both ways.
func AtMassFrac(massFrac float64) plan.Strength {
	return plan.Strength{AbvPct: 100 * fluid.ABVFromMassFrac(massFrac), Proof: fluid.ProofFromMassFrac(massFrac)}
}

// AtABV gives the strength of a volume fraction at 20 C both ways.
func AtABV(abv float64) plan.Strength {
	w, err := fluid.MassFracFromABV(min(max(abv, 0), 1))
	if err != nil {
		return plan.Strength{}
	}
	return AtMassFrac(w)
}

// Liquid is the strength of what runs through a sieve.
func Liquid(s stream.Stream) plan.Strength {
	at := func(tempC float64) float64 {
		return s.EthanolKg / fluid.Density(1, tempC) / s.LiquidVolumeM3(tempC)
	}
	if s.LiquidKg() <= 0 {
		return plan.Strength{}
	}
	return plan.Strength{AbvPct: 100 * at(ReferenceC), Proof: 200 * at(fluid.SixtyF)}
}
