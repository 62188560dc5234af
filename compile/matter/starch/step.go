package starch

import (
	"math"

	"newmake/lang/recipe"
)

// rates are the first-order rates of one step, per second.
type rates struct {
	starchToDextrin float64 // alpha-amylase, liquefying preparations
	dextrinByAlpha  float64
	dextrinByBeta   float64
	openBranch      float64 // limit dextrinase: limit dextrin to straight
	gluco           float64 // glucoamylase on straight dextrin and starch, to glucose
	glucoBranch     float64
	glucoMaltose    float64
}

// Step moves the state and the enzymes on by dtS seconds at a temperature and
// a pH that hold during the step.
//
// Each reaction runs its exact exponential, in order for half the step and in
// the reverse order for the other half, so a step is second order (but for the
// slow loss of water, taken at its start), never makes a negative mass, and
// loses nothing. It does not allocate.
func (c *Constants) Step(s *State, e *Enzymes, tempC, pH, dtS float64) {
	if !(s.WaterKg > 0) || !(dtS > 0) {
		return
	}
	left := e.left(c, tempC, dtS/2)
	e.decay(left, tempC, dtS/2)
	r := c.ratesOf(e, tempC, pH, s.WaterKg)
	c.gelatinize(s, tempC, dtS/2)
	c.hydrolyse(s, &r, dtS/2)
	e.decay(left, tempC, dtS/2)
	c.gelatinize(s, tempC, dtS/2)
}

// maltLeft is how much of the malt's enzymes is left after a time.
type maltLeft struct{ alpha, beta, limit float64 }

func (e *Enzymes) left(c *Constants, tempC, dtS float64) maltLeft {
	if !(e.Alpha > 0 || e.Beta > 0 || e.Limit > 0) {
		return maltLeft{1, 1, 1}
	}
	a, b, l := c.DeathRates(tempC)
	return maltLeft{math.Exp(-a * dtS), math.Exp(-b * dtS), math.Exp(-l * dtS)}
}

func (e *Enzymes) decay(left maltLeft, tempC, dtS float64) {
	e.Alpha *= left.alpha
	e.Beta *= left.beta
	e.Limit *= left.limit
	for i := range e.Added {
		e.Added[i].Activity *= math.Exp(-AddedDeathRate(e.Added[i].Enzyme, tempC) * dtS)
	}
}

func (c *Constants) ratesOf(e *Enzymes, tempC, pH, waterKg float64) rates {
	var r rates
	if e.Alpha > 0 || e.Beta > 0 || e.Limit > 0 {
		alpha := e.Alpha / waterKg * arrhenius(c.AlphaJMol, c.ReferenceC, tempC) *
			acidityFactor(pH, c.AlphaPHLow, c.AlphaPHHigh)
		r.starchToDextrin = c.AlphaOnStarch * alpha
		r.dextrinByAlpha = c.AlphaOnDextrin * alpha
		r.dextrinByBeta = c.BetaOnDextrin * e.Beta / waterKg * arrhenius(c.BetaJMol, c.ReferenceC, tempC) *
			acidityFactor(pH, c.BetaPHLow, c.BetaPHHigh)
		r.openBranch = c.LimitOnBranch * e.Limit / waterKg * arrhenius(c.LimitJMol, c.ReferenceC, tempC) *
			acidityFactor(pH, c.LimitPHLow, c.LimitPHHigh)
	}
	for i := range e.Added {
		a := &e.Added[i]
		switch a.Enzyme.Does {
		case recipe.Liquefying:
			r.starchToDextrin += c.addedRate(a, tempC, pH, waterKg)
		case recipe.Saccharifying:
			gluco := c.addedRate(a, tempC, pH, waterKg)
			r.gluco += gluco
			r.glucoBranch += c.GlucoOnBranch * gluco
			r.glucoMaltose += c.GlucoOnMaltose * gluco
		}
	}
	return r
}

// gelatinize moves towards the share that can gelatinize at this temperature;
// what has gelatinized stays so when it cools.
func (c *Constants) gelatinize(s *State, tempC, dtS float64) {
	for i := range s.Raw {
		g := &s.Raw[i]
		if g.RawKg <= 0 || tempC <= g.LowC {
			continue
		}
		stays := g.TotalKg * (1 - c.Gelatinizable(g, tempC))
		ready := g.RawKg - stays
		if ready <= 0 {
			continue
		}
		x := -ready * math.Expm1(-c.GelRateAt(g, tempC)*dtS)
		g.RawKg -= x
		s.GelKg += x
	}
}

// hydrolyse runs the reactions down the chain for dtS, then up it for dtS.
func (c *Constants) hydrolyse(s *State, r *rates, dtS float64) {
	starch := part{r.starchToDextrin, r.gluco}.over(dtS)
	branch := part{r.openBranch, r.glucoBranch}.over(dtS)
	alphaBeta := r.dextrinByAlpha + r.dextrinByBeta
	straight := part{alphaBeta, r.gluco}.over(dtS)
	byAlpha := 0.0
	if alphaBeta > 0 {
		byAlpha = r.dextrinByAlpha / alphaBeta
	}
	sugar := part{0, r.glucoMaltose}.over(dtS)

	c.splitStarch(s, starch)
	splitBranch(s, branch)
	c.splitStraight(s, straight, byAlpha)
	splitSugar(s, sugar)
	splitSugar(s, sugar)
	c.splitStraight(s, straight, byAlpha)
	splitBranch(s, branch)
	c.splitStarch(s, starch)
}

// part is how much of a pool goes by the amylases (or limit dextrinase) and
// how much by glucoamylase: rates first, then, over a time, shares.
type part struct{ own, gluco float64 }

func (p part) over(dtS float64) part {
	rate := p.own + p.gluco
	if rate <= 0 {
		return part{}
	}
	gone := -math.Expm1(-rate * dtS)
	return part{gone * p.own / rate, gone * p.gluco / rate}
}

func (c *Constants) splitStarch(s *State, p part) {
	own, gluco := s.GelKg*p.own, s.GelKg*p.gluco
	s.GelKg -= own + gluco
	branched := own * c.BranchedShare
	s.LimitDextrinKg += PerDextrin * branched
	s.DextrinKg += PerDextrin * (own - branched)
	s.GlucoseKg += PerGlucose * gluco
	s.WaterKg -= (PerDextrin-1)*own + (PerGlucose-1)*gluco
}

func splitBranch(s *State, p part) {
	own, gluco := s.LimitDextrinKg*p.own, s.LimitDextrinKg*p.gluco
	s.LimitDextrinKg -= own + gluco
	s.DextrinKg += own
	s.toGlucose(gluco, PerDextrin)
}

func (c *Constants) splitStraight(s *State, p part, byAlpha float64) {
	own, gluco := s.DextrinKg*p.own, s.DextrinKg*p.gluco
	s.DextrinKg -= own + gluco
	s.toGlucose(gluco, PerDextrin)

	starch := own / PerDextrin
	alpha := starch * byAlpha
	beta := starch - alpha
	glucose := alpha * c.AlphaToGlucose
	maltotriose := alpha*(1-c.AlphaToGlucose-c.AlphaToMaltose) + beta*c.BetaToMaltotriose
	maltose := starch - glucose - maltotriose
	s.GlucoseKg += PerGlucose * glucose
	s.MaltoseKg += PerMaltose * maltose
	s.MaltotrioseKg += PerMaltotriose * maltotriose
	s.WaterKg -= PerGlucose*glucose + PerMaltose*maltose + PerMaltotriose*maltotriose - own
}

func splitSugar(s *State, p part) {
	if p.gluco == 0 {
		return
	}
	three, two := s.MaltotrioseKg*p.gluco, s.MaltoseKg*p.gluco
	s.MaltotrioseKg -= three
	s.MaltoseKg -= two
	s.toGlucose(three, PerMaltotriose)
	s.toGlucose(two, PerMaltose)
}

// toGlucose books kg taken from a pool, which holds per kg for 1 kg of starch,
// as glucose.
func (s *State) toGlucose(kg, per float64) {
	glucose := kg * PerGlucose / per
	s.GlucoseKg += glucose
	s.WaterKg -= glucose - kg
}
