package trade

import (
	"math"
)

// boilC is the temperature at which water boils at an elevation, good to 0.1 C up
// to 3,000 m. The checker needs it before anything is computed, so it stands here
// in a short form: air pressure by the US Standard Atmosphere 1976 (troposphere),
// and the vapour pressure of water by the Antoine equation with the constants for
// 1 to 100 C, log10(p/mmHg) = 8.07131 - 1730.63/(233.426 + t) (from memory). The
// plan uses package compile/matter/fluid.
func boilC(elevationM float64) float64 {
	mmHg := 760 * math.Pow(1-2.25577e-5*elevationM, 5.25588)
	return 1730.63/(8.07131-math.Log10(mmHg)) - 233.426
}

// boilMargin is how far above that a mash may be asked to go: sugars raise its
// boil by some tenths of a degree, and thermometers differ.
const boilMargin = 0.6
