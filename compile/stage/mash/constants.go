package mash

import (
	"math"

	"newmake/lang/recipe"
)

const (
	waterJKgK   = 4186.8 // 1 Btu/(lb F), as the table of malt heat in package fluid
	backsetJKgK = 0.38 * waterJKgK
	metalJKgK   = 480 // between copper (385) and stainless steel (500)

	// Default rules for a vessel that does not say (common practice): 350 kg
	// of metal per m3 that it holds; a wall of an upright cylinder as high as
	// wide, 5.54 V^(2/3), that loses 8 W/(m2 K), lagged in part.
	metalKgPerM3   = 350
	wallAreaFactor = 5.536
	wallWM2K       = 8

	// A usual grist, a kg of it to 4 L of cooker: by this the pace of grain-in goes
	// with the size of the house where it does not say (common practice).
	gristKgM3 = 250

	// Live steam is dry and saturated at 1 bar above the air (common practice).
	steamGaugePa = 100e3
)

// constants are those of `model mash` that this package needs beside starch's.
type constants struct {
	waterInS, grainInS                 float64 // of a whole cooker
	drainS                             float64
	draffHoldsM3Kg                     float64
	coolFullK, coolLeastK, coolRise    float64
	jacketWM2K, coilWM2K               float64
	wortCoolerWM2K, wortCoolerLeastK   float64
	maltPH, rawPH, roastedPH           float64
	maltBuffer, rawBuffer, roastBuffer float64
	backsetPH, backsetBuffer           float64
	backsetSolids                      float64
	hardnessToAlkali                   float64
}

func (c *constants) fields() []recipe.Constant {
	return []recipe.Constant{
		{Name: "water-in", To: &c.waterInS},
		{Name: "grain-in", To: &c.grainInS},
		{Name: "drain-time", To: &c.drainS},
		{Name: "draff-holds", To: &c.draffHoldsM3Kg},
		{Name: "cooling-full", To: &c.coolFullK},
		{Name: "cooling-least", To: &c.coolLeastK},
		{Name: "cooling-rise", To: &c.coolRise},
		{Name: "jacket-transfer", To: &c.jacketWM2K},
		{Name: "coil-transfer", To: &c.coilWM2K},
		{Name: "wort-cooler-transfer", To: &c.wortCoolerWM2K},
		{Name: "wort-cooler-least", To: &c.wortCoolerLeastK},
		{Name: "malt-pH", To: &c.maltPH},
		{Name: "malt-buffer", To: &c.maltBuffer},
		{Name: "raw-pH", To: &c.rawPH},
		{Name: "raw-buffer", To: &c.rawBuffer},
		{Name: "roasted-pH", To: &c.roastedPH},
		{Name: "roasted-buffer", To: &c.roastBuffer},
		{Name: "backset-pH", To: &c.backsetPH},
		{Name: "backset-buffer", To: &c.backsetBuffer},
		{Name: "backset-solids", To: &c.backsetSolids},
		{Name: "hardness-to-alkali", To: &c.hardnessToAlkali},
	}
}

func constantsFrom(m *recipe.Model) (constants, error) {
	var c constants
	err := m.Read("mash", c.fields())
	return c, err
}

// MetalKg is the vessel's metal, by the default rule where it does not say.
func MetalKg(v recipe.Vessel) float64 {
	if v.MetalKg > 0 {
		return v.MetalKg
	}
	return metalKgPerM3 * v.HoldsM3
}

// lossW is the heat that a vessel loses at boilC, by the default rule where it
// does not say.
func lossW(v recipe.Vessel, boilC, ambientC float64) float64 {
	if v.LossW > 0 {
		return v.LossW
	}
	return wallWM2K * wallAreaFactor * math.Pow(v.HoldsM3, 2.0/3) * max(0, boilC-ambientC)
}
