package starch

import (
	"math"

	"newmake/compile/matter/exponential"

	"newmake/lang/recipe"
)

// arrhenius is the factor by which a rate at refC changes at tempC.
func arrhenius(energyJMol, refC, tempC float64) float64 {
	return exponential.Exp(energyJMol / gasJMolK * (1/(refC+zeroC) - 1/(tempC+zeroC)))
}

// acidityFactor is the share of its full activity that an enzyme shows at a
// pH: the diprotic (Michaelis) form 1/(1 + 10^(pK1-pH) + 10^(pH-pK2)) with each
// pK one unit outside the window, so that the window's ends stand near 0.9,
// and 1 at its best.
func acidityFactor(pH, low, high float64) float64 {
	form := func(pH float64) float64 {
		return 1 / (1 + exponential.Exp(math.Ln10*(low-1-pH)) + exponential.Exp(math.Ln10*(pH-high-1)))
	}
	return form(pH) / form((low+high)/2)
}

// GelRateAt is the rate at which granules that can gelatinize do so, per
// second: Brandam's two Arrhenius regimes, moved to the grain's range.
func (c *Constants) GelRateAt(g *Granules, tempC float64) float64 {
	split := g.LowC + c.GelSplitPosition*(g.HighC-g.LowC)
	energy := c.GelAboveJMol
	if tempC < split {
		energy = c.GelBelowJMol
	}
	return c.GelRate * arrhenius(energy, split, tempC)
}

// Gelatinizable is the share of a grain's granules that gelatinize at all at
// tempC, however long: nothing at the low end of its range, all from
// GelDonePosition on, with most granules melting half way between. That a
// distribution of granules stands beside first-order kinetics is after Potter
// and Coulter ("The rate at which starch becomes susceptible to hydrolysis by
// enzymes", malt; abstract read), who use a cumulative normal distribution; a
// cubic of the same shape has ends, and needs no more than the grain's range.
func (c *Constants) Gelatinizable(g *Granules, tempC float64) float64 {
	switch x := (tempC - g.LowC) / (c.GelDonePosition * (g.HighC - g.LowC)); {
	case !(tempC > g.LowC):
		return 0
	case x >= 1:
		return 1
	default:
		return x * x * (3 - 2*x)
	}
}

// Deaths are the rates at which the malt's enzymes die, per second.
type Deaths struct{ Alpha, Beta, BetaTail, LimitBound, Limit float64 }

// DeathRates are those at tempC; of the amylases, in a wort as thick as their
// half-lives are given for.
func (c *Constants) DeathRates(tempC float64) Deaths {
	beta := math.Ln2 * arrhenius(c.BetaDeathJMol, c.ReferenceC, tempC)
	limit := math.Ln2 * arrhenius(c.LimitDeathJMol, c.ReferenceC, tempC)
	return Deaths{
		Alpha:      math.Ln2 * arrhenius(c.AlphaDeathJMol, c.ReferenceC, tempC) / c.AlphaHalfLifeS,
		Beta:       beta / c.BetaHalfLifeS,
		BetaTail:   beta / c.BetaTailHalfLifeS,
		LimitBound: limit / c.LimitBoundHalfLifeS,
		Limit:      limit / c.LimitHalfLifeS,
	}
}

// Exposure is the share of their death rate at which the amylases die in a wort
// with so much extract, as a share of it: what is dissolved protects them.
func (c *Constants) Exposure(extract float64) float64 {
	return exponential.Exp((c.ProtectExtract - extract) / c.ProtectFold)
}

// GelRiseK is by how much granules gelatinize hotter than their range says in a
// wort with so much extract, as a share of it.
func (c *Constants) GelRiseK(g *Granules, extract float64) float64 {
	return c.GelPerExtractK * (extract - g.Extract)
}

// release is the factor by which bound limit dextrinase is set free at a pH.
func (c *Constants) release(pH float64) float64 {
	return exponential.Exp(math.Ln10 * (c.LimitReleasePH - pH))
}

// addedDeathRate is that of a preparation at tempC, per second; 0 for one whose
// library entry gives no half-life.
func addedDeathRate(z *recipe.Enzyme, tempC float64) float64 {
	if !(z.HalfLifeS > 0) {
		return 0
	}
	return math.Ln2 / z.HalfLifeS * arrhenius(z.DeathJMol, z.HalfLifeC, tempC)
}

// addedWarmth is the share of its rate at the optimum that a preparation has at
// tempC. Above the optimum it is no faster, and dying.
func (c *Constants) addedWarmth(z *recipe.Enzyme, tempC float64) float64 {
	return arrhenius(c.AddedJMol, z.OptimumC, min(tempC, z.OptimumC))
}
