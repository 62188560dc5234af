package lot

import (
	"newmake/compile/matter/fluid"
	"newmake/compile/plan"
	"newmake/lang/recipe"
)

// OnBasis is a batch with every strength on the basis on which it is meant. Where
// gallons are written % abv is half the proof, and so at 60 F (27 CFR 19.1);
// where litres are, it is at 20 C (OIML R 22). Promises keep the basis in which
// they are written, to be answered in it.
func OnBasis(b *recipe.Batch) *recipe.Batch {
	if b.Gauge != recipe.US {
		return b
	}
	c := *b
	for _, s := range []*recipe.Strength{
		&c.Strip.StopAt, &c.Spirit.Stop, &c.Spirit.HeartsFrom.Strength, &c.Spirit.HeartsTo.Strength, &c.Spirit.WaterTo, &c.Today.FeintsAt, &c.Cask.Entry, &c.Cask.BottleAt,
	} {
		if s.Basis == recipe.ABV {
			s.Basis = recipe.Proof
		}
	}
	return &c
}

// GaugeC is the temperature at which a written volume of spirit is meant.
func GaugeC(gauge recipe.System) float64 {
	if gauge == recipe.US {
		return fluid.SixtyF
	}
	return ReferenceC
}

// BottleC is the temperature at which a bottle holds what its label says. In the United
// States a liter of distilled spirits is 1,000 cubic centimeters of them at 15.56 C, 60 F
// (27 CFR 5.1, and 5.11 until 2022; from memory: 27 CFR 19.1 names no temperature); in
// Europe the nominal volume is that at 20 C (Directive 76/211/EEC, annex I, from memory).
func BottleC(gauge recipe.System) float64 { return GaugeC(gauge) }

// Bottles is how many bottles of a size a lot fills, as they are measured at BottleC.
func Bottles(gauge recipe.System, l plan.Lot, eachL float64) float64 {
	return VolumeM3(gauge, l) * LitresPerM3 / eachL
}

// Written gives a written volume of a lot's spirit, counted both ways.
func Written(gauge recipe.System, m3 float64, l plan.Lot) plan.Quantity {
	if l.VolumeL <= 0 {
		return plan.Of(m3*LitresPerM3, plan.Litre)
	}
	share := m3 * LitresPerM3 / l.VolumeL
	if gauge == recipe.US {
		share = m3 / fluid.USGallonM3 / l.WineGallons
	}
	return l.Times(share).Volume()
}

// VolumeM3 is a lot's volume as the batch would write it.
func VolumeM3(gauge recipe.System, l plan.Lot) float64 {
	if gauge == recipe.US {
		return l.WineGallons * fluid.USGallonM3
	}
	return l.VolumeL / LitresPerM3
}

// seenShort is the share of a cask by which one has to be short to look it: half of what
// a dipstick is good for (common practice).
const seenShort = 0.005

// SeenShort reports whether a cask with a lot in it is short by more than a hand would see.
func SeenShort(b *recipe.Batch, l plan.Lot) bool {
	return VolumeM3(b.Gauge, l) < b.Cask.SizeM3*(1-seenShort)
}
