package gauge

import (
	"fmt"
	"math"

	"newmake/compile/matter/fluid"
)

// The tables of 27 CFR part 30 have these limits.
const (
	Table1MinF, Table1MaxF = 0.0, 100.0
	Table7MinF, Table7MaxF = 18.0, 100.0
)

// Row is what tables 4, 5 and 6 of 27 CFR part 30 say of spirit of one proof,
// by the model and rounded to the places that the tables print: a person with
// the table open should find the same figure, or one that differs in the last
// place.
type Row struct {
	Proof                float64
	GallonsPerPound      float64 // Table 4: wine gallons at 60 F, 5 places
	ProofGallonsPerPound float64 // Table 4, 5 places
	PoundsPerGallon      float64 // Table 5: at 60 F in air, 5 places
	AlcoholParts         float64 // Table 6: volumes in 100 of the spirit, 2 places
	WaterParts           float64
}

// TableRow is the row of a proof, which is recorded to 0.1.
func TableRow(proof float64) (Row, error) {
	at, err := fluid.AtProof(proof)
	if err != nil {
		return Row{}, err
	}
	return Row{
		Proof:           proof,
		GallonsPerPound: Places(at.GallonsPerPound, 5), ProofGallonsPerPound: Places(at.ProofGallonsPerPound, 5),
		PoundsPerGallon: Places(at.PoundsPerGallon, 5),
		AlcoholParts:    Places(at.AlcoholParts, 2), WaterParts: Places(at.WaterParts, 2),
	}, nil
}

// TableVolumeFactor is Table 7, to its three places.
func TableVolumeFactor(proof, tempF float64) (float64, error) {
	if !(tempF >= Table7MinF && tempF <= Table7MaxF) {
		return 0, fmt.Errorf("%g F is outside Table 7, which runs from 18 to 100 F", tempF)
	}
	f, err := fluid.VolumeFactor(proof, tempF)
	return Places(f, 3), err
}

// glassPerC is the cubic expansion of soda-lime glass, as in fluid.
const glassPerC = 25e-6

// TrueABV is the strength at 20 C, 0..1, of spirit in which a glass
// alcoholometer marked in % vol at 20 C reads indication at tempC: OIML R 22
// densities, and glass that grows with warmth as under fluid.TrueProof. It
// needs -20 to 40 C.
func TrueABV(indication, tempC float64) (float64, error) {
	if !(tempC >= -20 && tempC <= 40) {
		return 0, fmt.Errorf("%g C is outside the alcoholometric tables, -20 to 40 C: bring the sample nearer 20 C", tempC)
	}
	w, err := fluid.MassFracFromABV(indication)
	if err != nil {
		return 0, err
	}
	mark := fluid.Density(w, referenceC)
	true20, err := fluid.MassFracFromDensity(mark*(1-glassPerC*(tempC-referenceC)), tempC)
	if err != nil {
		return 0, fmt.Errorf("no spirit reads %.4g %% vol at %.4g C: %w", 100*indication, tempC, err)
	}
	return fluid.ABVFromMassFrac(true20), nil
}

// Places rounds half up to decimals, as 27 CFR 30.64 rounds. The nudge takes a
// value that lies on a half but for its last bits the same way on every
// processor.
func Places(x float64, decimals int) float64 {
	scale := math.Pow10(decimals)
	return math.Round(x*scale*(1+1e-12)) / scale
}
