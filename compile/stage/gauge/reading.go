package gauge

import (
	"fmt"

	"newmake/compile/matter/fluid"
)

// ReadingABV is the inverse of TrueABV: what a glass alcoholometer marked in
// % vol at 20 C shows at tempC, -20 to 40 C, in spirit whose strength at 20 C
// is trueABV, 0..1.
func ReadingABV(trueABV, tempC float64) (float64, error) {
	if !(tempC >= -20 && tempC <= 40) {
		return 0, fmt.Errorf("%g C is outside the alcoholometric tables, -20 to 40 C", tempC)
	}
	w, err := fluid.MassFracFromABV(trueABV)
	if err != nil {
		return 0, err
	}
	mark := fluid.Density(w, tempC) / (1 - glassPerC*(tempC-referenceC))
	shown, err := fluid.MassFracFromDensity(mark, referenceC)
	if err != nil {
		return 0, fmt.Errorf("%.4g %% vol at %.4g C is off the alcoholometer's scale: %w", 100*trueABV, tempC, err)
	}
	return fluid.ABVFromMassFrac(shown), nil
}
