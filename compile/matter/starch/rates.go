package starch

import (
	"math"

	"newmake/compile/matter/exponential"
	"newmake/lang/recipe"
)

// window is the share of its full activity that an enzyme shows at a pH: the
// diprotic (Michaelis) form 1/(1 + 10^(pK1-pH) + 10^(pH-pK2)) with each pK one unit
// outside the window, so that the window's ends stand near 0.9, and 1 at its best.
type window struct{ best, acid, base float64 }

func windowOf(low, high float64) window {
	return window{1 + 2*tenTo((low-high)/2-1), tenTo(low - 1), tenTo(-high - 1)}
}

// at is the share at a pH, given as 10^pH and 10^-pH.
func (w window) at(up, down float64) float64 { return w.best / (1 + w.acid*down + w.base*up) }

func tenTo(x float64) float64 { return exponential.Exp(math.Ln10 * x) }

// GelRateAt is the rate at which granules that can gelatinize do so, per
// second: Brandam's two Arrhenius regimes, moved to the grain's range.
func (c *Constants) GelRateAt(g *Granules, tempC float64) float64 {
	split := g.LowC + c.GelSplitPosition*(g.HighC-g.LowC)
	energy := c.GelAboveJMol
	if tempC < split {
		energy = c.GelBelowJMol
	}
	return c.GelRate * exponential.ArrheniusOf(energy, split).At(exponential.PerKelvin(tempC))
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

// laws are those of the malt's enzymes.
type laws struct {
	alpha, beta, limit, release    exponential.Arrhenius
	alphaDies, betaDies, limitDies exponential.Arrhenius
	alphaPH, betaPH, limitPH       window
}

func (c *Constants) laws() laws {
	return laws{
		exponential.ArrheniusOf(c.AlphaJMol, c.ReferenceC), exponential.ArrheniusOf(c.BetaJMol, c.ReferenceC), exponential.ArrheniusOf(c.LimitJMol, c.ReferenceC), exponential.ArrheniusOf(c.LimitReleaseJMol, c.ReferenceC),
		exponential.ArrheniusOf(c.AlphaDeathJMol, c.ReferenceC), exponential.ArrheniusOf(c.BetaDeathJMol, c.ReferenceC), exponential.ArrheniusOf(c.LimitDeathJMol, c.ReferenceC),
		windowOf(c.AlphaPHLow, c.AlphaPHHigh), windowOf(c.BetaPHLow, c.BetaPHHigh), windowOf(c.LimitPHLow, c.LimitPHHigh),
	}
}

// Deaths are the rates at which the malt's enzymes die, per second.
type Deaths struct{ Alpha, Beta, BetaTail, LimitBound, Limit float64 }

func (c *Constants) deathRates(l *laws, perK float64) Deaths {
	beta, limit := math.Ln2*l.betaDies.At(perK), math.Ln2*l.limitDies.At(perK)
	return Deaths{
		Alpha:      math.Ln2 * l.alphaDies.At(perK) / c.AlphaHalfLifeS,
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
	return tenTo(c.LimitReleasePH - pH)
}

// preparation is what temperature and acidity make of one that is added.
type preparation struct {
	work, dies exponential.Arrhenius
	bestPerK   float64 // above the optimum it is no faster, and dying
	deathPerS  float64 // at the temperature of its half-life; 0: its library entry gives none
	ph         window
}

func (c *Constants) preparation(z *recipe.Enzyme) preparation {
	p := preparation{
		work: exponential.ArrheniusOf(c.AddedJMol, z.OptimumC), bestPerK: exponential.PerKelvin(z.OptimumC), ph: windowOf(z.PHLow, z.PHHigh),
	}
	if z.HalfLifeS > 0 {
		p.dies, p.deathPerS = exponential.ArrheniusOf(z.DeathJMol, z.HalfLifeC), math.Ln2/z.HalfLifeS
	}
	return p
}
