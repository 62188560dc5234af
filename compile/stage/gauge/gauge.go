package gauge

import (
	"fmt"

	"newmake/compile/matter/fluid"
)

// referenceC is the temperature at which volumes and % vol are stated.
const referenceC = 20

// Reduce gives the water that brings spirit down to mass fraction toMassFrac,
// and what comes of it. Spirit and water are both at tempC, and the mixture
// warms from there by TempRiseC; all volumes are at 20 C. It reports an error
// when the spirit is not as strong as that, or there is none.
func Reduce(ethanolKg, waterKg, toMassFrac, tempC float64) (Reduction, error) {
	spirit, err := lot(ethanolKg, waterKg, tempC)
	if err != nil {
		return Reduction{}, err
	}
	r, err := fluid.Reduce(spirit, toMassFrac, tempC)
	if err != nil {
		return Reduction{}, err
	}
	return reduction(r), nil
}

func reduction(r fluid.Reduction) Reduction {
	from, to := r.Spirit.EthanolMassFrac, r.Result.EthanolMassFrac
	out := Reduction{
		FromABV: fluid.ABVFromMassFrac(from), ToABV: fluid.ABVFromMassFrac(to),
		FromProof: fluid.ProofFromMassFrac(from), ToProof: fluid.ProofFromMassFrac(to),
		SpiritM3: r.Spirit.VolumeAtM3(referenceC), SpiritKg: r.Spirit.MassKg,
		WaterM3: r.Water.VolumeAtM3(referenceC), WaterKg: r.Water.MassKg,
		ResultM3: r.Result.VolumeAtM3(referenceC), ResultKg: r.Result.MassKg,
		TempRiseC:     r.Result.TempC - r.Spirit.TempC,
		ProofGallons:  fluid.ProofGallonsFromKg(r.Spirit.MassKg, from),
		PureAlcoholM3: fluid.PureAlcoholLitres(r.Spirit.MassKg, from) / 1000,
	}
	out.ContractionM3 = out.SpiritM3 + out.WaterM3 - out.ResultM3
	return out
}

// Lot is an amount of spirit, counted every way that the trade and the revenue
// do. Masses are true (in vacuum); WeightKg is what a balance shows.
type Lot struct {
	EthanolKg, WaterKg float64
	MassKg, WeightKg   float64
	VolumeM3           float64 // at 20 C
	ABV                float64 // 20 C
	Proof              float64 // at 60 F
	WineGallons        float64 // US gallons at 60 F
	ProofGallons       float64
	PureAlcoholM3      float64 // at 20 C
	TempC              float64
}

// fromMasses counts a lot of so much alcohol and water.
func fromMasses(ethanolKg, waterKg, tempC float64) (Lot, error) {
	l, err := lot(ethanolKg, waterKg, tempC)
	if err != nil {
		return Lot{}, err
	}
	return count(l), nil
}

// FromVolume counts spirit of a mass fraction of which volumeM3 was measured
// at tempC.
func FromVolume(volumeM3, massFrac, tempC float64) (Lot, error) {
	if !(volumeM3 >= 0 && massFrac >= 0 && massFrac <= 1) {
		return Lot{}, fmt.Errorf("a lot needs a volume from 0 up and a strength from 0 to 100 %%")
	}
	massKg := volumeM3 * fluid.Density(massFrac, tempC)
	return fromMasses(massKg*massFrac, massKg*(1-massFrac), tempC)
}

// FromWeight counts spirit of a mass fraction that weighed weightKg on a
// balance, in air of 20 C and 1.2 kg/m3, as 27 CFR part 30 tables 4 and 5 take
// weights; the buoyancy is that of spirit at 60 F.
func FromWeight(weightKg, massFrac, tempC float64) (Lot, error) {
	if !(weightKg >= 0 && massFrac >= 0 && massFrac <= 1) {
		return Lot{}, fmt.Errorf("a lot needs a weight from 0 up and a strength from 0 to 100 %%")
	}
	massKg := weightKg / fluid.MassInAirKg(1, fluid.Density(massFrac, fluid.SixtyF))
	return fromMasses(massKg*massFrac, massKg*(1-massFrac), tempC)
}

func count(l fluid.Lot) Lot {
	w := l.EthanolMassFrac
	c := Lot{
		EthanolKg: l.MassKg * w, WaterKg: l.MassKg * (1 - w), MassKg: l.MassKg, TempC: l.TempC,
		WeightKg: fluid.MassInAirKg(l.MassKg, fluid.Density(w, fluid.SixtyF)),
		VolumeM3: l.VolumeAtM3(referenceC), ABV: fluid.ABVFromMassFrac(w), Proof: fluid.ProofFromMassFrac(w),
		WineGallons:  l.VolumeAtM3(fluid.SixtyF) / fluid.USGallonM3,
		ProofGallons: fluid.ProofGallonsFromKg(l.MassKg, w), PureAlcoholM3: fluid.PureAlcoholLitres(l.MassKg, w) / 1000,
	}
	return c
}

// Blended is two or more lots in one vat.
type Blended struct {
	Lot
	ContractionM3 float64 // the lots' volumes less the blend's, at 20 C
	TempRiseC     float64 // by the heat of mixing, above what the lots' own warmth gives
}

// Blend mixes lots, each as this package counts it.
func Blend(lots ...Lot) (Blended, error) {
	if len(lots) == 0 {
		return Blended{}, fmt.Errorf("there is nothing to blend")
	}
	var sum fluid.Lot
	var out Blended
	for i, l := range lots {
		next, err := lot(l.EthanolKg, l.WaterKg, l.TempC)
		if err != nil {
			return Blended{}, err
		}
		out.ContractionM3 += next.VolumeAtM3(referenceC)
		if i == 0 {
			sum = next
			continue
		}
		mixed, err := fluid.Blend(sum, next)
		if err != nil {
			return Blended{}, err
		}
		// The rise so far spreads over the larger lot.
		out.TempRiseC = out.TempRiseC*sum.MassKg/mixed.MassKg + mixed.RiseC
		sum = mixed.Lot
	}
	out.Lot = count(sum)
	out.ContractionM3 -= out.VolumeM3
	return out, nil
}

func lot(ethanolKg, waterKg, tempC float64) (fluid.Lot, error) {
	if !(ethanolKg >= 0 && waterKg >= 0) || !(ethanolKg+waterKg > 0) {
		return fluid.Lot{}, fmt.Errorf("a lot of %g kg of ethanol and %g kg of water cannot be gauged", ethanolKg, waterKg)
	}
	m := ethanolKg + waterKg
	return fluid.Lot{MassKg: m, EthanolMassFrac: ethanolKg / m, TempC: tempC}, nil
}
