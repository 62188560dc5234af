package fluid

import (
	"fmt"
	"math"
)

// US gauging, 27 CFR parts 19 and 30, by the model: OIML R 22 densities at
// 60 F. It follows the published rows of the official tables to their print
// rounding or close to it; official gauging follows the tables themselves.
const (
	// WaterPoundsPerGallon is the weight of a US gallon of water at 60 F in
	// air (27 CFR 21.161 and 30.41).
	WaterPoundsPerGallon = 8.32823
	// USGallonM3 and PoundKg are exact by definition.
	USGallonM3 = 0.003785411784
	PoundKg    = 0.45359237
	// glassPerC is the cubic expansion of soda-lime glass, of which
	// hydrometers are made.
	glassPerC = 25e-6
)

// FahrenheitToC turns a point on the Fahrenheit scale into Celsius.
func FahrenheitToC(tempF float64) float64 { return (tempF - 32) / 1.8 }

// ProofFromMassFrac is the US proof, twice the percent by volume at 60 F.
func ProofFromMassFrac(w float64) float64 { return 200 * ABV60FFromMassFrac(w) }

// MassFracFromProof is the inverse of ProofFromMassFrac, for 0 to 200 proof.
func MassFracFromProof(proof float64) (float64, error) {
	if !(proof >= 0 && proof <= 200) {
		return 0, fmt.Errorf("%g proof is not possible: proof runs from 0 to 200", proof)
	}
	return MassFracFromABV60F(proof / 200)
}

// proofDensity is the density at 60 F that a hydrometer's mark stands for.
// Hydrometers are marked to 206, since warm strong spirit reads above 200;
// there the scale goes on straight from 200.
func proofDensity(proof float64) (float64, error) {
	if proof <= 200 {
		w, err := MassFracFromProof(proof)
		return Density(w, SixtyF), err
	}
	if !(proof <= 206) {
		return 0, fmt.Errorf("a reading of %g proof is off the hydrometer's scale, 0 to 206", proof)
	}
	rho, slope := oiml(1, SixtyF)
	// d(proof)/dw at w = 1 is 200 (1 + slope/rho).
	return rho + (proof-200)*slope/(200*(1+slope/rho)), nil
}

// TrueProof is the proof at 60 F of spirit in which a glass proof hydrometer
// reads indication at tempF (27 CFR part 30, Table 1): the density read is
// rho(indication, 60 F) [1 - 25e-6 (tC - 15.556)], the glass having grown with
// warmth, and the strength is that of spirit of this density at tempF.
// It needs 0 to 206 proof and 0 to 100 F, the range of the table.
func TrueProof(indication, tempF float64) (float64, error) {
	if !(tempF >= 0 && tempF <= 100) {
		return 0, fmt.Errorf("%g F is outside the gauging tables, 0 to 100 F: bring the sample nearer 60 F", tempF)
	}
	mark, err := proofDensity(indication)
	if err != nil {
		return 0, err
	}
	tempC := FahrenheitToC(tempF)
	w, err := MassFracFromDensity(mark*(1-glassPerC*(tempC-SixtyF)), tempC)
	if err != nil {
		return 0, fmt.Errorf("no spirit reads %g proof at %g F: %w", indication, tempF, err)
	}
	return ProofFromMassFrac(w), nil
}

// HydrometerReading is the inverse of TrueProof: what a glass hydrometer shows
// at tempF in spirit of a true proof.
func HydrometerReading(trueProof, tempF float64) (float64, error) {
	w, err := MassFracFromProof(trueProof)
	if err != nil {
		return 0, err
	}
	tempC := FahrenheitToC(tempF)
	mark := Density(w, tempC) / (1 - glassPerC*(tempC-SixtyF))
	rho1, slope := oiml(1, SixtyF)
	if mark < rho1 {
		return 200 + (mark-rho1)/slope*200*(1+slope/rho1), nil
	}
	at60, err := MassFracFromDensity(mark, SixtyF)
	if err != nil {
		return 0, fmt.Errorf("%g proof at %g F is off the hydrometer's scale: %w", trueProof, tempF, err)
	}
	return ProofFromMassFrac(at60), nil
}

// Obscuration is the proof that dissolved solids hide from the hydrometer:
// 0.4 proof for 0.1 g in 100 mL (27 CFR 30.32). Add it to the proof read.
func Obscuration(solidsGPer100mL float64) float64 { return 4 * solidsGPer100mL }

// VolumeFactor multiplies a volume of spirit at tempF to give its volume at
// 60 F (27 CFR part 30, Table 7).
func VolumeFactor(proof, tempF float64) (float64, error) {
	w, err := MassFracFromProof(proof)
	if err != nil {
		return 0, err
	}
	return Density(w, FahrenheitToC(tempF)) / Density(w, SixtyF), nil
}

// Strength60F describes spirit of one proof at 60 F, by the row.
type Strength60F struct {
	MassFrac float64
	// SpecificGravityAir and SpecificGravityVacuum are 60/60 F (Table 6).
	SpecificGravityAir, SpecificGravityVacuum float64
	// PoundsPerGallon, weighed in air, and its reciprocal (Tables 4 and 5).
	PoundsPerGallon, GallonsPerPound float64
	// ProofGallonsPerPound is Table 4; PoundsPerProofGallon is Table 5 (zero
	// for water).
	ProofGallonsPerPound, PoundsPerProofGallon float64
	// AlcoholParts and WaterParts are the volumes of pure alcohol and of water
	// that make 100 volumes of the spirit (Table 6). They add up to more than
	// 100: the rest is contraction.
	AlcoholParts, WaterParts float64
}

// AtProof is the row of the gauging tables for one proof.
func AtProof(proof float64) (Strength60F, error) {
	w, err := MassFracFromProof(proof)
	if err != nil {
		return Strength60F{}, err
	}
	rho := Density(w, SixtyF)
	s := Strength60F{
		MassFrac:              w,
		SpecificGravityAir:    sg60FAir(rho),
		SpecificGravityVacuum: sg60F(rho),
		AlcoholParts:          proof / 2,
		WaterParts:            100 * (1 - w) * rho / WaterDensity(SixtyF),
	}
	s.PoundsPerGallon = WaterPoundsPerGallon * s.SpecificGravityAir
	s.GallonsPerPound = 1 / s.PoundsPerGallon
	s.ProofGallonsPerPound = s.GallonsPerPound * proof / 100
	if proof > 0 {
		s.PoundsPerProofGallon = 1 / s.ProofGallonsPerPound
	}
	return s, nil
}

// WineGallons is the volume at 60 F, in US gallons, of a mass of spirit.
func WineGallons(massKg, w float64) float64 {
	return massKg / Density(w, SixtyF) / USGallonM3
}

// ProofGallonsFromKg is the proof gallons in a mass of spirit (weighed in
// vacuum, as masses in this package are).
func ProofGallonsFromKg(massKg, w float64) float64 {
	return WineGallons(massKg, w) * ProofFromMassFrac(w) / 100
}

// PureAlcoholLitres is the volume at 20 C, in litres, of the ethanol in a
// mass of spirit.
func PureAlcoholLitres(massKg, w float64) float64 {
	return massKg * w / Density(1, 20) * 1000
}

// MassInAirKg is the reading, in kg, of a balance with weights of density
// 8000 kg/m3, for a mass of liquid (OIML R 111 convention, air of 1.2 kg/m3).
func MassInAirKg(massKg, densityKgM3 float64) float64 {
	return massKg * (1 - airDensity/densityKgM3) / (1 - airDensity/8000)
}

// RoundProof rounds to a tenth, as proof is recorded (27 CFR 30.23).
func RoundProof(proof float64) float64 { return math.Round(proof*10) / 10 }
