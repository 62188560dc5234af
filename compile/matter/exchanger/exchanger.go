// Package exchanger says what heat passes from a liquid to the water that cools it,
// by effectiveness and number of transfer units (Kays and London, Compact Heat
// Exchangers, from memory; the same in Incropera and DeWitt, Fundamentals of Heat
// and Mass Transfer, ch. 11).
//
// A stirred vessel has one temperature throughout, and water runs once through its
// jacket or coil. The coefficient of heat transfer and the heat capacity of the water
// hold constant along the surface, and nothing is lost to the room.
package exchanger

import (
	"math"

	"newmake/compile/matter/fluid"
)

// VesselWK is the conductance in W/K between water that comes in at inC and flows at
// m3S, and contents of one temperature: heat over (T - inC). surfaceWK is area times
// coefficient.
func VesselWK(inC, m3S, surfaceWK float64) float64 {
	return conductance(surfaceWK, m3S*fluid.WaterDensity(inC)*fluid.WaterHeatCapacity(inC))
}

// conductance is that of a surface to a flow of so much heat capacity.
func conductance(surfaceWK, flowWK float64) float64 {
	if !(flowWK > 0) {
		return 0
	}
	return -math.Expm1(-surfaceWK/flowWK) * flowWK
}
