package starch

import (
	"fmt"
	"strings"

	"newmake/lang/recipe"
)

const (
	gasJMolK = 8.314462618 // CODATA 2018
	zeroC    = 273.15
)

// Constants are those of the stock entry `model mash` that kinetics needs, in
// SI. Rates are per second: of the malt's enzymes at ReferenceC, per unit of
// activity in 1 kg of water. A preparation's activity is itself a rate, so no
// constant stands for it.
type Constants struct {
	ReferenceC float64 // at which rates and half-lives of the malt's enzymes are given

	// Gelatinization. Positions are in a grain's range, 0 at its low end and 1
	// at its high one: where the slope of the Arrhenius law changes, and from
	// where all granules can gelatinize.
	GelSplitPosition float64
	GelDonePosition  float64
	GelRate          float64 // at the split
	GelBelowJMol     float64
	GelAboveJMol     float64
	AccessRaw        float64 // share of the starch of raw grain that water reaches
	AccessMalt       float64

	// Hydrolysis.
	BranchedShare     float64 // of starch split, left as limit dextrins
	AlphaOnStarch     float64
	AlphaOnDextrin    float64
	AlphaToGlucose    float64 // shares of straight dextrin that alpha-amylase splits
	AlphaToMaltose    float64
	BetaOnDextrin     float64
	BetaToMaltotriose float64 // odd ends; the rest is maltose
	LimitOnBranch     float64
	GlucoOnMaltose    float64 // glucoamylase, against straight dextrin as 1
	GlucoOnBranch     float64
	AlphaJMol         float64 // of the rates
	BetaJMol          float64
	LimitJMol         float64
	AddedJMol         float64

	// Death of the malt's enzymes.
	AlphaHalfLifeS, AlphaDeathJMol float64
	BetaHalfLifeS, BetaDeathJMol   float64
	LimitHalfLifeS, LimitDeathJMol float64

	// Acidity: the window in which each works at nine tenths or better.
	AlphaPHLow, AlphaPHHigh float64
	BetaPHLow, BetaPHHigh   float64
	LimitPHLow, LimitPHHigh float64
}

// fields pairs each constant with its name in the stock, in the order of the
// stock entry.
func (c *Constants) fields() []struct {
	Name  string
	Value *float64
} {
	return []struct {
		Name  string
		Value *float64
	}{
		{"reference", &c.ReferenceC},
		{"gel-split", &c.GelSplitPosition},
		{"gel-done", &c.GelDonePosition},
		{"gel-rate", &c.GelRate},
		{"gel-energy-below", &c.GelBelowJMol},
		{"gel-energy-above", &c.GelAboveJMol},
		{"access-raw", &c.AccessRaw},
		{"access-malt", &c.AccessMalt},
		{"branched", &c.BranchedShare},
		{"alpha-on-starch", &c.AlphaOnStarch},
		{"alpha-on-dextrin", &c.AlphaOnDextrin},
		{"alpha-to-glucose", &c.AlphaToGlucose},
		{"alpha-to-maltose", &c.AlphaToMaltose},
		{"beta-on-dextrin", &c.BetaOnDextrin},
		{"beta-to-maltotriose", &c.BetaToMaltotriose},
		{"limit-on-branch", &c.LimitOnBranch},
		{"gluco-on-maltose", &c.GlucoOnMaltose},
		{"gluco-on-branch", &c.GlucoOnBranch},
		{"alpha-energy", &c.AlphaJMol},
		{"beta-energy", &c.BetaJMol},
		{"limit-energy", &c.LimitJMol},
		{"added-energy", &c.AddedJMol},
		{"alpha-half-life", &c.AlphaHalfLifeS},
		{"alpha-death-energy", &c.AlphaDeathJMol},
		{"beta-half-life", &c.BetaHalfLifeS},
		{"beta-death-energy", &c.BetaDeathJMol},
		{"limit-half-life", &c.LimitHalfLifeS},
		{"limit-death-energy", &c.LimitDeathJMol},
		{"alpha-acidity-low", &c.AlphaPHLow},
		{"alpha-acidity-high", &c.AlphaPHHigh},
		{"beta-acidity-low", &c.BetaPHLow},
		{"beta-acidity-high", &c.BetaPHHigh},
		{"limit-acidity-low", &c.LimitPHLow},
		{"limit-acidity-high", &c.LimitPHHigh},
	}
}

// Names are the constants that `model mash` must hold for this package.
func Names() []string {
	var c Constants
	var names []string
	for _, f := range c.fields() {
		names = append(names, f.Name)
	}
	return names
}

// ConstantsFrom reads the constants of a model. The error names every one that
// is missing.
func ConstantsFrom(m *recipe.Model) (Constants, error) {
	var c Constants
	if m == nil {
		return c, fmt.Errorf("there is no model of the mash: the stock entry `model mash` is missing")
	}
	var missing []string
	for _, f := range c.fields() {
		v, ok := m.Values[f.Name]
		if !ok {
			missing = append(missing, f.Name)
			continue
		}
		*f.Value = v
	}
	if len(missing) > 0 {
		return Constants{}, fmt.Errorf("model %s lacks %s", m.Name, strings.Join(missing, ", "))
	}
	return c, nil
}
