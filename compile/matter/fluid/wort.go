package fluid

// WortDensity is the density in vacuum, in kg/m3, of a liquid with mass
// fractions of ethanol and of dissolved extract, the rest water.
//
// The extract takes the volume that sucrose has in water at the same ratio of
// extract to water; the ethanol and water take the volume of their mixture
// alone. So it is SolutionDensity without ethanol and Density without
// extract, exactly. The two solutes' effect on each other is left out.
func WortDensity(ethanolMassFrac, solidsMassFrac, tempC float64) float64 {
	e, s := clamp(ethanolMassFrac, 0, 1), clamp(solidsMassFrac, 0, maxSugarFrac)
	if e+s > 1 {
		e = 1 - s
	}
	if s == 0 {
		return Density(e, tempC)
	}
	volume := (1-s)/Density(e/(1-s), tempC) + s*extractVolume(s/(1-e), tempC)
	return 1 / volume
}

// extractVolume is the apparent specific volume of sucrose in m3/kg at a mass
// fraction s of a sucrose solution.
func extractVolume(s, tempC float64) float64 {
	s = clamp(s, 0, maxSugarFrac)
	rho, water := SolutionDensity(s, tempC), WaterDensity(tempC)
	return (1/rho - (1-s)/water) / s
}

// GrainDisplacement is the volume that undissolved grain solids displace in a
// mash, in m3 per kg dry: 0.65 to 0.70 L/kg (common practice).
const GrainDisplacement = 0.67e-3

// byproductVolume is the volume that glycerol and organic acids take in water,
// in m3/kg. They weigh far less on a hydrometer than sugar does, 0.615e-3: 1 kg
// of them raises gravity as 0.57 kg of sugar. Glycerol alone takes 0.773e-3 and
// lactic acid 0.795e-3 at 5 % and 20 C (CRC Handbook, 102nd ed., Concentrative
// Properties of Aqueous Solutions, read in a public copy); a ferment makes a
// little more of the first. It is used at every temperature.
const byproductVolume = 0.78e-3

// WashVolumeM3 is the volume of a liquid of water, ethanol, dissolved extract,
// and what a ferment makes besides ethanol, from their masses.
func WashVolumeM3(waterKg, ethanolKg, extractKg, byproductKg, tempC float64) float64 {
	return mashVolumeM3(waterKg, ethanolKg, extractKg, 0, tempC) + byproductKg*byproductVolume
}

// mashVolumeM3 is the volume of a mash or wash from the masses in it: a liquid
// of water, ethanol and dissolved extract by WortDensity, and insoluble solids
// by GrainDisplacement.
func mashVolumeM3(waterKg, ethanolKg, dissolvedKg, insolubleKg, tempC float64) float64 {
	liquid := waterKg + ethanolKg + dissolvedKg
	volume := insolubleKg * GrainDisplacement
	if liquid > 0 {
		volume += liquid / WortDensity(ethanolKg/liquid, dissolvedKg/liquid, tempC)
	}
	return volume
}

// WortHeatCapacity is the heat capacity, in J/(kg K), of a liquid with ethanol
// and dissolved extract: ethanol-water by HeatCapacity, extract by the share
// that SugarHeatCapacity gives sugar.
func WortHeatCapacity(ethanolMassFrac, solidsMassFrac, tempC float64) float64 {
	e, s := clamp(ethanolMassFrac, 0, 1), clamp(solidsMassFrac, 0, 1)
	if s >= 1 {
		return SugarHeatCapacity(1, tempC)
	}
	return (1-s)*HeatCapacity(e/(1-s), tempC) + s*SugarHeatCapacity(1, tempC)
}
