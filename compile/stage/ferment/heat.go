package ferment

import (
	"math"

	"newmake/compile/matter/exchanger"
	"newmake/compile/matter/fluid"
	"newmake/lang/recipe"
)

// vessel is the fermenter's side of the heat balance.
type vessel struct {
	heatCapacity   float64 // J/K, wort and metal
	lossWK         float64 // W/K through the wall
	ambientC       float64
	coolW, waterC  float64 // rated, or of the surface at the hold's upper end
	surfaceWK      float64 // of a cooler with its water, per K above the water; 0: by rated power
	warmW          float64
	lowC, highC    float64
	band, approach float64 // K
	held           bool
}

const metalHeatCapacity = 500 // J/(kg K), stainless steel, common practice

func newVessel(in *Input, k *constants) vessel {
	w := in.Wort
	liquid := w.LiquidKg()
	cp := fluid.WortHeatCapacity(w.EthanolKg/liquid, w.DissolvedKg()/liquid, w.TempC)
	v := vessel{
		heatCapacity: liquid*cp + w.SuspendedKg()*fluid.GrainHeatCapacity(0) + in.Vessel.MetalKg*metalHeatCapacity,
		ambientC:     in.AmbientC,
		coolW:        in.CoolW,
		waterC:       in.WaterC,
		warmW:        in.Vessel.HeatsW,
		lowC:         in.HoldLowC,
		highC:        in.HoldHighC,
		band:         k.controlBand,
		approach:     k.coolingApproach,
		held:         in.HoldHighC > 0,
	}
	if in.Vessel.LossW > 0 { // stated at the boil
		v.lossWK = in.Vessel.LossW / (100 - in.AmbientC)
	} else {
		holds := in.Vessel.HoldsM3
		if holds <= 0 {
			holds = w.VolumeM3()
		}
		// A cylinder as high as it is wide, all faces: 1.5 pi (4V/pi)^(2/3).
		v.lossWK = k.wallLoss * 1.5 * math.Pi * math.Pow(4*holds/math.Pi, 2.0/3)
	}
	if s := in.Vessel.Cooler; s.AreaM2 > 0 {
		per := s.WM2K
		if per == 0 {
			per = [...]float64{recipe.JacketSurface: k.jacketWM2K, recipe.CoilSurface: k.coilWM2K}[s.Surface]
		}
		v.surfaceWK = exchanger.VesselWK(in.WaterC, s.WaterM3S, s.AreaM2*per)
		v.coolW = v.surfaceWK * max(0, v.highC-v.waterC)
	}
	// A regulator that acts within a step of the sums would only chatter: at
	// full cooling the wash takes minutes to cross the band.
	const slowestS = 300
	v.band = max(v.band, max(v.coolW, v.warmW)*slowestS/v.heatCapacity)
	return v
}

// cooling is the heat taken out by cooling and the heat put in by warming, W.
// Cooling opens above the hold's upper end and is full a band above it; it
// falls off when the wash comes within the approach of the cooling water, or by a
// surface goes with the difference from the water.
func (v *vessel) cooling(tempC float64) (coolW, warmW float64) {
	if !v.held {
		return 0, 0
	}
	if over := tempC - v.highC; over > 0 && v.surfaceWK > 0 {
		coolW = v.surfaceWK * max(0, tempC-v.waterC) * min(1, over/v.band)
	} else if over > 0 && v.coolW > 0 {
		water := min(1, max(0, (tempC-v.waterC)/v.approach))
		coolW = v.coolW * min(1, over/v.band) * water
	}
	if under := v.lowC - tempC; under > 0 && v.warmW > 0 {
		warmW = v.warmW * min(1, under/v.band)
	}
	return coolW, warmW
}

// open is the share of the cooling in use: how far its valve is open, or of its rated
// power.
func (v *vessel) open(tempC float64) float64 {
	cool, _ := v.cooling(tempC)
	most := v.coolW
	if v.surfaceWK > 0 {
		most = v.surfaceWK * (tempC - v.waterC)
	}
	if cool == 0 || most <= 0 {
		return 0
	}
	return cool / most
}

// vent is what a kg of carbon dioxide carries off, saturated at a temperature
// over a wash with a mole fraction of ethanol: kg of ethanol per mole fraction
// and kg of water, by NRTL activities and vapour pressures of package fluid.
type vent struct{ ethanolPerX, water float64 }

func ventAt(tempC, x, pressurePa float64) vent {
	gE, gW := fluid.ActivityCoefficients(x, tempC)
	pE := gE * fluid.VapourPressureEthanolPa(tempC)
	pW := (1 - x) * gW * fluid.VapourPressureWaterPa(tempC)
	dry := max(pressurePa-x*pE-pW, 0.1*pressurePa)
	return vent{
		ethanolPerX: pE / dry * molEthanol / molCO2,
		water:       pW / dry * molWater / molCO2,
	}
}

// towards is a share f of the way from one to another.
func (v vent) towards(to vent, f float64) vent {
	return vent{v.ethanolPerX + f*(to.ethanolPerX-v.ethanolPerX), v.water + f*(to.water-v.water)}
}

func (y *system) ventOf(s vector) vent {
	moles := s[ethanol] / molEthanol
	return ventAt(s[tempC], moles/(moles+s[water]/molWater), y.pressurePa)
}

// Heats of evaporation at 30 C, J/kg.
var (
	latentEthanol = fluid.LatentHeatEthanol(30)
	latentWater   = fluid.LatentHeatWater(30)
)
