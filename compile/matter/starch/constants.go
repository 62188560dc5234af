package starch

import (
	"newmake/lang/recipe"
)

// Constants are those of the library entry `model mash` that kinetics needs, in
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
	GelExtract       float64 // extract, share of the wort, in which a malt's range is measured
	GelPerExtractK   float64 // by which they rise with the share
	GelRate          float64 // at the split
	GelBelowJMol     float64
	GelAboveJMol     float64
	AccessRaw        float64 // share of the starch of raw grain that water reaches
	AccessMalt       float64

	// Hydrolysis.
	BranchedShare     float64 // of starch split, left as limit dextrins
	ClosedShare       float64 // of those, that limit dextrinase does not open
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
	BetaTail                       float64 // share of it that outlasts the rest
	BetaTailHalfLifeS              float64
	ProtectExtract                 float64 // extract, share of the wort, at which the amylases' half-lives hold
	ProtectFold                    float64 // so much more makes them e times as long

	// Limit dextrinase: what a malt holds, and how it is set free.
	LimitFree, LimitHeld                float64 // shares: free, and bound in the grist; the rest is bound and dissolved
	LimitHalfLifeS, LimitBoundHalfLifeS float64
	LimitDeathJMol                      float64
	LimitDissolves                      float64 // rate at which the grist gives up what it holds
	LimitRelease, LimitReleaseJMol      float64 // rate at which the bound is set free
	LimitReleasePH                      float64 // at which it is so; ten times as much a pH below

	// Acidity: the window in which each works at nine tenths or better.
	AlphaPHLow, AlphaPHHigh float64
	BetaPHLow, BetaPHHigh   float64
	LimitPHLow, LimitPHHigh float64
}

// fields pairs each constant with its name in the library, in the order of the
// library entry.
func (c *Constants) fields() []recipe.Constant {
	return []recipe.Constant{
		{Name: "reference", To: &c.ReferenceC},
		{Name: "gel-split", To: &c.GelSplitPosition},
		{Name: "gel-done", To: &c.GelDonePosition},
		{Name: "gel-rate", To: &c.GelRate},
		{Name: "gel-energy-below", To: &c.GelBelowJMol},
		{Name: "gel-energy-above", To: &c.GelAboveJMol},
		{Name: "access-raw", To: &c.AccessRaw},
		{Name: "access-malt", To: &c.AccessMalt},
		{Name: "gel-extract", To: &c.GelExtract},
		{Name: "gel-by-extract", To: &c.GelPerExtractK},
		{Name: "branched", To: &c.BranchedShare},
		{Name: "closed", To: &c.ClosedShare},
		{Name: "alpha-on-starch", To: &c.AlphaOnStarch},
		{Name: "alpha-on-dextrin", To: &c.AlphaOnDextrin},
		{Name: "alpha-to-glucose", To: &c.AlphaToGlucose},
		{Name: "alpha-to-maltose", To: &c.AlphaToMaltose},
		{Name: "beta-on-dextrin", To: &c.BetaOnDextrin},
		{Name: "beta-to-maltotriose", To: &c.BetaToMaltotriose},
		{Name: "limit-on-branch", To: &c.LimitOnBranch},
		{Name: "gluco-on-maltose", To: &c.GlucoOnMaltose},
		{Name: "gluco-on-branch", To: &c.GlucoOnBranch},
		{Name: "alpha-energy", To: &c.AlphaJMol},
		{Name: "beta-energy", To: &c.BetaJMol},
		{Name: "limit-energy", To: &c.LimitJMol},
		{Name: "added-energy", To: &c.AddedJMol},
		{Name: "alpha-half-life", To: &c.AlphaHalfLifeS},
		{Name: "alpha-death-energy", To: &c.AlphaDeathJMol},
		{Name: "beta-half-life", To: &c.BetaHalfLifeS},
		{Name: "beta-death-energy", To: &c.BetaDeathJMol},
		{Name: "beta-tail", To: &c.BetaTail},
		{Name: "beta-tail-half-life", To: &c.BetaTailHalfLifeS},
		{Name: "protect-extract", To: &c.ProtectExtract},
		{Name: "protect-fold", To: &c.ProtectFold},
		{Name: "limit-free", To: &c.LimitFree},
		{Name: "limit-in-grist", To: &c.LimitHeld},
		{Name: "limit-half-life", To: &c.LimitHalfLifeS},
		{Name: "limit-bound-half-life", To: &c.LimitBoundHalfLifeS},
		{Name: "limit-death-energy", To: &c.LimitDeathJMol},
		{Name: "limit-dissolves", To: &c.LimitDissolves},
		{Name: "limit-release", To: &c.LimitRelease},
		{Name: "limit-release-energy", To: &c.LimitReleaseJMol},
		{Name: "limit-release-pH", To: &c.LimitReleasePH},
		{Name: "alpha-pH-low", To: &c.AlphaPHLow},
		{Name: "alpha-pH-high", To: &c.AlphaPHHigh},
		{Name: "beta-pH-low", To: &c.BetaPHLow},
		{Name: "beta-pH-high", To: &c.BetaPHHigh},
		{Name: "limit-pH-low", To: &c.LimitPHLow},
		{Name: "limit-pH-high", To: &c.LimitPHHigh},
	}
}

// Names are the constants that `model mash` must hold for this package.
func Names() []string {
	var c Constants
	return recipe.Names(c.fields())
}

// ConstantsFrom reads the constants of a model. The error names every one that
// is missing.
func ConstantsFrom(m *recipe.Model) (Constants, error) {
	var c Constants
	if err := m.Read("mash", c.fields()); err != nil {
		return Constants{}, err
	}
	return c, nil
}
