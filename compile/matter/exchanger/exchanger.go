// Package exchanger says what heat passes from a liquid to the water that cools it,
// by effectiveness and number of transfer units (Kays and London, Compact Heat
// Exchangers, from memory; the same in Incropera and DeWitt, Fundamentals of Heat
// and Mass Transfer, ch. 11).
//
// A stirred vessel has one temperature throughout, and water runs once through its
// jacket or coil. A plate or tube cooler works in counter-current. The coefficient
// of heat transfer and all heat capacities hold constant along the surface, and
// nothing is lost to the room.
package exchanger

import (
	"math"

	"newmake/compile/matter/fluid"
)

// Water is a flow of cooling water.
type Water struct {
	InC   float64
	M3S   float64
	capWK float64
}

// WaterOf is a flow of water that comes in at inC.
func WaterOf(inC, m3S float64) Water {
	return Water{inC, m3S, m3S * fluid.WaterDensity(inC) * fluid.WaterHeatCapacity(inC)}
}

// Vessel is the conductance in W/K between the water as it comes in and contents of
// one temperature: heat over (T - inC). surfaceWK is area times coefficient.
func (w Water) Vessel(surfaceWK float64) float64 {
	if !(w.capWK > 0) {
		return 0
	}
	return -math.Expm1(-surfaceWK/w.capWK) * w.capWK
}

// OutC is the temperature at which the water leaves when heatW has gone into it.
func (w Water) OutC(heatW float64) float64 { return w.InC + heatW/w.capWK }

// Counter is a liquid of capWK (flow times heat capacity, W/K) that comes to a
// counter-current cooler at hotC: where it leaves, and the heat that the water takes.
func (w Water) Counter(surfaceWK, capWK, hotC float64) (outC, heatW float64) {
	if !(capWK > 0) {
		return hotC, 0
	}
	least, most := math.Min(capWK, w.capWK), math.Max(capWK, w.capWK)
	if !(least > 0) {
		return hotC, 0
	}
	heatW = effectiveness(surfaceWK/least, least/most) * least * (hotC - w.InC)
	return hotC - heatW/capWK, heatW
}

// effectiveness of counter-current flow, with n transfer units and a ratio of heat
// capacities from 0 to 1.
func effectiveness(n, ratio float64) float64 {
	if 1-ratio < 1e-9 {
		return n / (1 + n)
	}
	e := math.Exp(-n * (1 - ratio))
	return (1 - e) / (1 - ratio*e)
}
