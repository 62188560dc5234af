package compile

import (
	"fmt"

	"newmake/compile/matter/fluid"
	"newmake/compile/matter/stream"
	"newmake/compile/plan"
	"newmake/lang/recipe"
)

const (
	referenceC   = 20.0 // volumes and strengths in SI
	kgPerBushel  = 56 * fluid.PoundKg
	litresPerM3  = 1000.0
	joulesPerKWh = 3.6e6
	secondsPerH  = 3600.0
)

// lotOf counts a stream both ways: at 20 C, and at 60 F as the US gauger does.
// Solids take part in the volume, and so thin the strength, as they do in a
// wash: volume times strength is the alcohol.
func lotOf(s stream.Stream) plan.Lot {
	if s.WaterKg+s.EthanolKg <= 0 {
		return plan.Lot{}
	}
	v20 := s.VolumeAtM3(referenceC)
	v60 := s.VolumeAtM3(fluid.SixtyF)
	share60 := s.EthanolKg / fluid.Density(1, fluid.SixtyF) / v60
	l := plan.Lot{
		VolumeL: v20 * litresPerM3,
		AbvPct:  100 * s.PureAlcoholM3() / v20,
		PureL:   s.PureAlcoholM3() * litresPerM3,
		MassKg:  s.MassKg(),

		WineGallons: v60 / fluid.USGallonM3,
		Proof:       200 * share60,
	}
	l.ProofGallons = l.WineGallons * l.Proof / 100
	return l
}

// massFrac brings a strength, whatever its basis, to a mass fraction.
func massFrac(s recipe.Strength) (float64, error) {
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

// strength says a strength both ways. One that is out of range, which the
// checker refuses, comes out as nothing.
func strength(s recipe.Strength) plan.Strength {
	w, err := massFrac(s)
	if err != nil {
		return plan.Strength{}
	}
	return strengthOf(w)
}

func strengthOf(massFrac float64) plan.Strength {
	return plan.Strength{AbvPct: 100 * fluid.ABVFromMassFrac(massFrac), Proof: fluid.ProofFromMassFrac(massFrac)}
}

// strengthAbv says a volume fraction at 20 C both ways.
func strengthAbv(abv float64) plan.Strength {
	w, err := fluid.MassFracFromABV(min(max(abv, 0), 1))
	if err != nil {
		return plan.Strength{}
	}
	return strengthOf(w)
}

func minuteOfDay(m int) string { return fmt.Sprintf("%02d:%02d", m/60%24, m%60) }

func shiftDays(s recipe.Shift) []string {
	var out []string
	for i := 1; i <= 7; i++ { // Monday first
		if day := i % 7; s.Days[day] {
			out = append(out, dayNames[day])
		}
	}
	return out
}

var dayNames = [7]string{"Sunday", "Monday", "Tuesday", "Wednesday", "Thursday", "Friday", "Saturday"}
