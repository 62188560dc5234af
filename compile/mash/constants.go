package mash

import (
	"fmt"
	"math"
	"strings"

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

	// Live steam is dry and saturated at 1 bar above the air (common practice).
	steamGaugePa = 100e3
)

// constants are those of `model mash` that this package needs beside starch's.
type constants struct {
	waterFlowM3S, grainFlowKgS         float64
	drainS                             float64
	draffHoldsM3Kg                     float64
	coolFullK, coolLeastK, coolRise    float64
	maltPH, rawPH, roastedPH           float64
	maltBuffer, rawBuffer, roastBuffer float64
	backsetPH, backsetBuffer           float64
	backsetSolids                      float64
	hardnessToAlkali                   float64
}

func (c *constants) fields() []struct {
	name  string
	value *float64
} {
	return []struct {
		name  string
		value *float64
	}{
		{"water-flow", &c.waterFlowM3S},
		{"grain-flow", &c.grainFlowKgS},
		{"drain-time", &c.drainS},
		{"draff-holds", &c.draffHoldsM3Kg},
		{"cooling-full", &c.coolFullK},
		{"cooling-least", &c.coolLeastK},
		{"cooling-rise", &c.coolRise},
		{"malt-acidity", &c.maltPH},
		{"malt-buffer", &c.maltBuffer},
		{"raw-acidity", &c.rawPH},
		{"raw-buffer", &c.rawBuffer},
		{"roasted-acidity", &c.roastedPH},
		{"roasted-buffer", &c.roastBuffer},
		{"backset-acidity", &c.backsetPH},
		{"backset-buffer", &c.backsetBuffer},
		{"backset-solids", &c.backsetSolids},
		{"hardness-to-alkali", &c.hardnessToAlkali},
	}
}

func constantsFrom(m *recipe.Model) (constants, error) {
	var c constants
	var missing []string
	for _, f := range c.fields() {
		v, ok := m.Values[f.name]
		if !ok {
			missing = append(missing, f.name)
		}
		*f.value = v
	}
	if len(missing) > 0 {
		return c, fmt.Errorf("model %s lacks %s", m.Name, strings.Join(missing, ", "))
	}
	return c, nil
}

// Names are the constants that `model mash` must hold for this package, beside
// those of package starch.
func Names() []string {
	var c constants
	var names []string
	for _, f := range c.fields() {
		names = append(names, f.name)
	}
	return names
}

// MetalKg is the vessel's metal, by the default rule where it does not say.
func MetalKg(v recipe.Vessel) float64 {
	if v.MetalKg > 0 {
		return v.MetalKg
	}
	return metalKgPerM3 * v.HoldsM3
}

// LossW is the heat that a vessel loses at boilC, by the default rule where it
// does not say.
func LossW(v recipe.Vessel, boilC, ambientC float64) float64 {
	if v.LossW > 0 {
		return v.LossW
	}
	return wallWM2K * wallAreaFactor * math.Pow(v.HoldsM3, 2.0/3) * max(0, boilC-ambientC)
}
