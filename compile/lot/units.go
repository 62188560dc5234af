package lot

import "newmake/compile/matter/fluid"

// What a plan's numbers are turned into from the models' SI.
const (
	ReferenceC     = 20.0 // volumes and strengths in SI
	LitresPerM3    = 1000.0
	JoulesPerKWh   = 3.6e6
	SecondsPerHour = 3600.0
	SecondsPerMin  = 60.0
	MonthsPerYear  = 12.0
	KgPerBushel    = 56 * fluid.PoundKg
	EthanolKgPerL  = 0.78924 // at 20 C (OIML R 22)
)
