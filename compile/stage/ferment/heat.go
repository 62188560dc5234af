package ferment

import (
	"math"

	"newmake/compile/matter/fluid"
)

// vessel is the fermenter's side of the heat balance.
type vessel struct {
	heatCapacity   float64 // J/K, wort and metal
	lossWK         float64 // W/K through the wall
	ambientC       float64
	coolW, waterC  float64
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
	// A regulator that acts within a step of the sums would only chatter: at
	// full cooling the wash takes minutes to cross the band.
	const slowestS = 300
	v.band = max(v.band, max(v.coolW, v.warmW)*slowestS/v.heatCapacity)
	return v
}

// cooling is the heat taken out by cooling and the heat put in by warming, W.
// Cooling opens above the hold's upper end and is full a band above it; it
// falls off when the wash comes within the approach of the cooling water.
func (v *vessel) cooling(tempC float64) (coolW, warmW float64) {
	if !v.held {
		return 0, 0
	}
	if over := tempC - v.highC; over > 0 && v.coolW > 0 {
		water := min(1, max(0, (tempC-v.waterC)/v.approach))
		coolW = v.coolW * min(1, over/v.band) * water
	}
	if under := v.lowC - tempC; under > 0 && v.warmW > 0 {
		warmW = v.warmW * min(1, under/v.band)
	}
	return coolW, warmW
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
