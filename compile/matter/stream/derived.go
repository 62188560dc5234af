package stream

import "newmake/compile/matter/fluid"

// referenceC is the temperature at which strength and gravity are stated.
const referenceC = 20

// VolumeM3 is the volume of all of it, suspended matter included, at its own
// temperature.
func (s Stream) VolumeM3() float64 { return s.VolumeAtM3(s.TempC) }

// VolumeAtM3 is the volume of all of it at tempC.
func (s Stream) VolumeAtM3(tempC float64) float64 {
	return s.LiquidVolumeM3(tempC) + s.SuspendedKg()*fluid.GrainDisplacement
}

// LiquidVolumeM3 is the volume at tempC of what would pass a filter.
func (s Stream) LiquidVolumeM3(tempC float64) float64 {
	fermented := s.FermentedKg()
	return fluid.WashVolumeM3(s.WaterKg, s.EthanolKg, s.DissolvedKg()-fermented, fermented, tempC)
}

// SG is the specific gravity 20/20 C in vacuum of the liquid, as a hydrometer
// reads it: with the alcohol and with the backset's solids.
func (s Stream) SG() float64 {
	if s.LiquidKg() <= 0 {
		return 1
	}
	return fluid.SG(s.LiquidKg() / s.LiquidVolumeM3(referenceC))
}

// ABV is the strength of the liquid, as a fraction of its volume at 20 C.
func (s Stream) ABV() float64 {
	if s.EthanolKg <= 0 {
		return 0
	}
	if s.DissolvedKg() == 0 {
		return fluid.ABVFromMassFrac(s.EthanolKg / (s.EthanolKg + s.WaterKg))
	}
	return s.PureAlcoholM3() / s.LiquidVolumeM3(referenceC)
}

// PureAlcoholM3 is the ethanol as a volume of pure ethanol at 20 C.
func (s Stream) PureAlcoholM3() float64 {
	return s.EthanolKg / fluid.Density(1, referenceC)
}
