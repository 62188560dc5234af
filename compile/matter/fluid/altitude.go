package fluid

import "math"

// StandardPressurePa is one standard atmosphere.
const StandardPressurePa = 101325.0

// PressureAtElevation is the mean air pressure at a height above sea level:
// U.S. Standard Atmosphere, 1976, troposphere (-610 to 11,000 m, held at the
// ends).
func PressureAtElevation(elevationM float64) (pressurePa float64) {
	const (
		earthRadiusM = 6356766.0
		seaLevelK    = 288.15
		lapseKPerM   = 0.0065
		exponent     = 9.80665 * 0.0289644 / (8.31432 * lapseKPerM)
	)
	z := clamp(elevationM, -610, 11000)
	geopotentialM := earthRadiusM * z / (earthRadiusM + z)
	return StandardPressurePa * math.Pow(1-lapseKPerM*geopotentialM/seaLevelK, exponent)
}
