package quantity

// Sizes of units that the language and its rules compute with.
const (
	USGallonM3 = 3.785411784e-3 // US gallon, NIST SP 811 (2008)
	PoundKg    = 0.45359237     // NIST SP 811 (2008)
	FootM      = 0.3048         // NIST SP 811 (2008)
	HourS      = 3600.0
	DayS       = 24 * HourS
	YearS      = 365.25 * DayS
)
