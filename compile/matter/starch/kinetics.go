package starch

import (
	"math"

	"newmake/compile/matter/exponential"

	"newmake/compile/matter/ode"
	"newmake/lang/recipe"
)

// The vector in which starch and enzymes are integrated: masses in kg, then of
// each enzyme that only dies the logarithm of the share left (0 at first: so
// its death is followed exactly while the temperature holds, and it never falls
// below nothing), then the starch still in each grain's granules. A stage may
// embed it in its own.
const (
	Water = iota
	Gel
	Dextrin // straight
	LimitDextrin
	Maltotriose
	Maltose
	Glucose
	Alpha // from here on, logarithms of what is left
	Beta
	Limit
	added // the first preparation
)

// Kinetics is starch and enzymes ready to be integrated: which preparations and
// which grains there are, and what temperature and acidity make of the rates.
// It is a system of package ode at a temperature that TempC gives.
type Kinetics struct {
	TempC func(timeS float64) float64 // nil: as SetTemp left it

	k     *Constants
	added []Added
	grain []Granules
	start []float64 // activity of each enzyme at the beginning

	tempC   float64
	acidity []float64 // factor of each enzyme at pH: alpha, beta, limit, preparations
	warmth  []float64 // factor of each at tempC
	death   []float64
	left    []float64 // logarithms for which alive was reckoned
	alive   []float64 // activity left
	gel     []float64 // rate at which ready granules gelatinize
	stays   []float64 // kg that cannot at this temperature
}

// NewKinetics is for the preparations of e and the grains of s; what is left of
// each is the vector's business.
func NewKinetics(k *Constants, s *State, e *Enzymes, tempC, pH float64) *Kinetics {
	n, g := 3+len(e.Added), len(s.Raw)
	room := make([]float64, 6*n+2*g)
	r := &Kinetics{k: k, added: e.Added, grain: s.Raw, tempC: math.NaN()}
	r.acidity, r.warmth, r.death, r.start = room[:n], room[n:2*n], room[2*n:3*n], room[3*n:4*n]
	r.left, r.alive = room[4*n:5*n], room[5*n:6*n]
	r.gel, r.stays = room[6*n:6*n+g], room[6*n+g:]
	r.start[0], r.start[1], r.start[2] = e.Alpha, e.Beta, e.Limit
	for i := range e.Added {
		r.start[3+i] = e.Added[i].Activity
	}
	for i := range r.left {
		r.left[i] = math.NaN()
	}
	r.AcidityAt(pH, r.acidity)
	r.SetTemp(tempC)
	return r
}

// Size is the length of the vector.
func (r *Kinetics) Size() int { return added + len(r.added) + len(r.grain) }

// granules is where the first grain's stand.
func (r *Kinetics) granules() int { return added + len(r.added) }

// SetAcidity takes the factors a share f of the way from one set to another, as
// AcidityAt writes them.
func (r *Kinetics) SetAcidity(from, to []float64, f float64) {
	for i := range r.acidity {
		r.acidity[i] = from[i] + f*(to[i]-from[i])
	}
}

// Enzymes is how many factors of acidity there are.
func (r *Kinetics) Enzymes() int { return len(r.start) }

// AcidityAt writes the share of its activity that each enzyme shows at a pH:
// alpha, beta, limit, preparations.
func (r *Kinetics) AcidityAt(pH float64, out []float64) {
	k := r.k
	out[0] = acidityFactor(pH, k.AlphaPHLow, k.AlphaPHHigh)
	out[1] = acidityFactor(pH, k.BetaPHLow, k.BetaPHHigh)
	out[2] = acidityFactor(pH, k.LimitPHLow, k.LimitPHHigh)
	for i := range r.added {
		z := r.added[i].Enzyme
		out[3+i] = acidityFactor(pH, z.PHLow, z.PHHigh)
	}
}

// SetTemp makes the rates at a temperature, unless they are made.
func (r *Kinetics) SetTemp(tempC float64) {
	if tempC == r.tempC {
		return
	}
	r.tempC = tempC
	k := r.k
	r.warmth[0] = arrhenius(k.AlphaJMol, k.ReferenceC, tempC)
	r.warmth[1] = arrhenius(k.BetaJMol, k.ReferenceC, tempC)
	r.warmth[2] = arrhenius(k.LimitJMol, k.ReferenceC, tempC)
	r.death[0], r.death[1], r.death[2] = k.DeathRates(tempC)
	for i := range r.added {
		z := r.added[i].Enzyme
		r.warmth[3+i] = k.addedWarmth(z, tempC)
		r.death[3+i] = AddedDeathRate(z, tempC)
	}
	for i := range r.grain {
		g := &r.grain[i]
		r.gel[i], r.stays[i] = 0, g.TotalKg
		if tempC > g.LowC {
			r.gel[i] = k.GelRateAt(g, tempC)
			r.stays[i] = g.TotalKg * (1 - k.Gelatinizable(g, tempC))
		}
	}
}

// Slopes is ode.System.
func (r *Kinetics) Slopes(t float64, y, d []float64) {
	if r.TempC != nil {
		r.SetTemp(r.TempC(t))
	}
	r.Flow(y, d)
}

// Flow writes the change of each quantity a second, at the temperature and pH
// that are set.
func (r *Kinetics) Flow(y, d []float64) {
	k := r.k
	perKg := 0.0
	if y[Water] > 0 {
		perKg = 1 / y[Water]
	}
	alpha := r.rate(0, y[Alpha]) * perKg
	beta := k.BetaOnDextrin * r.rate(1, y[Beta]) * perKg
	limit := k.LimitOnBranch * r.rate(2, y[Limit]) * perKg
	d[Alpha], d[Beta], d[Limit] = -r.death[0], -r.death[1], -r.death[2]
	liquefying, gluco := k.AlphaOnStarch*alpha, 0.0
	for i := range r.added {
		d[added+i] = -r.death[3+i]
		switch r.added[i].Enzyme.Does {
		case recipe.Liquefying:
			liquefying += r.rate(3+i, y[added+i]) * perKg
		case recipe.Saccharifying:
			gluco += r.rate(3+i, y[added+i]) * perKg
		}
	}
	d[Gel] = 0
	for i := range r.grain {
		j := r.granules() + i
		x := 0.0
		if ready := y[j] - r.stays[i]; ready > 0 {
			x = r.gel[i] * ready
		}
		d[j] = -x
		d[Gel] += x
	}

	// Each reaction, as starch taken from its pool.
	split, starchToGlucose := liquefying*y[Gel], gluco*y[Gel]
	opened, limitToGlucose := limit*y[LimitDextrin], k.GlucoOnBranch*gluco*y[LimitDextrin]
	straight := y[Dextrin] / PerDextrin
	byAlpha, byBeta, dextrinToGlucose := k.AlphaOnDextrin*alpha*straight, beta*straight, gluco*y[Dextrin]
	threeToGlucose, twoToGlucose := k.GlucoOnMaltose*gluco*y[Maltotriose], k.GlucoOnMaltose*gluco*y[Maltose]

	glucose := byAlpha * k.AlphaToGlucose
	three := byAlpha*(1-k.AlphaToGlucose-k.AlphaToMaltose) + byBeta*k.BetaToMaltotriose
	two := byAlpha + byBeta - glucose - three
	d[Gel] -= split + starchToGlucose
	d[LimitDextrin] = PerDextrin*k.BranchedShare*split - opened - limitToGlucose
	d[Dextrin] = PerDextrin*(1-k.BranchedShare)*split + opened - PerDextrin*(byAlpha+byBeta) - dextrinToGlucose
	d[Maltotriose] = PerMaltotriose*three - threeToGlucose
	d[Maltose] = PerMaltose*two - twoToGlucose
	d[Glucose] = PerGlucose*(glucose+starchToGlucose+threeToGlucose/PerMaltotriose+twoToGlucose/PerMaltose) +
		(limitToGlucose+dextrinToGlucose)*(PerGlucose/PerDextrin)
	d[Water] = split + starchToGlucose - // what was starch, less what it has become
		PerDextrin*split - PerGlucose*starchToGlucose +
		PerDextrin*(byAlpha+byBeta) - PerGlucose*glucose - PerMaltose*two - PerMaltotriose*three -
		(limitToGlucose+dextrinToGlucose)*(PerGlucose/PerDextrin-1) -
		threeToGlucose*(PerGlucose/PerMaltotriose-1) - twoToGlucose*(PerGlucose/PerMaltose-1)
}

// rate is that which an enzyme has in a kg of water.
func (r *Kinetics) rate(i int, left float64) float64 {
	if left != r.left[i] {
		r.left[i] = left
		r.alive[i] = r.start[i] * exponential.Exp(left)
	}
	return r.alive[i] * r.warmth[i] * r.acidity[i]
}

// Left is the activity left of an enzyme: alpha, beta, limit, preparations.
func (r *Kinetics) Left(y []float64, i int) float64 { return r.start[i] * exponential.Exp(y[Alpha+i]) }

// Settle gives back what a step took too much, less than its tolerance, out of
// a pool that it emptied.
func (r *Kinetics) Settle(y []float64) {
	for j := r.granules(); j < len(y); j++ {
		if y[j] < 0 {
			y[Gel] += y[j]
			y[j] = 0
		}
	}
	for _, p := range [...]struct {
		from, to int
		per      float64 // kg of the second from a kg of the first
	}{
		{Gel, Dextrin, PerDextrin}, {LimitDextrin, Dextrin, 1}, {Dextrin, Maltose, PerMaltose / PerDextrin},
		{Maltotriose, Glucose, PerGlucose / PerMaltotriose}, {Maltose, Glucose, PerGlucose / PerMaltose},
	} {
		if x := y[p.from]; x < 0 {
			y[p.from] = 0
			y[p.to] += p.per * x
			y[Water] -= (p.per - 1) * x
		}
	}
}

// Fast are the quantities that may answer quickly.
func (r *Kinetics) Fast() []int {
	fast := make([]int, 0, 4+len(r.grain))
	for i := range r.grain {
		fast = append(fast, r.granules()+i)
	}
	return append(fast, Gel, LimitDextrin, Dextrin)
}

// Put writes a state and its enzymes into a vector, and Take reads them back.
func (r *Kinetics) Put(y []float64, s *State, e *Enzymes) {
	y[Water], y[Gel], y[Dextrin], y[LimitDextrin] = s.WaterKg, s.GelKg, s.DextrinKg, s.LimitDextrinKg
	y[Maltotriose], y[Maltose], y[Glucose] = s.MaltotrioseKg, s.MaltoseKg, s.GlucoseKg
	for i := range 3 + len(e.Added) {
		y[Alpha+i] = 0
	}
	for i := range s.Raw {
		y[r.granules()+i] = s.Raw[i].RawKg
	}
}

// Take is the reverse of Put.
func (r *Kinetics) Take(y []float64, s *State, e *Enzymes) {
	s.WaterKg, s.GelKg, s.DextrinKg, s.LimitDextrinKg = y[Water], y[Gel], y[Dextrin], y[LimitDextrin]
	s.MaltotrioseKg, s.MaltoseKg, s.GlucoseKg = y[Maltotriose], y[Maltose], y[Glucose]
	e.Alpha, e.Beta, e.Limit = r.Left(y, 0), r.Left(y, 1), r.Left(y, 2)
	for i := range e.Added {
		e.Added[i].Activity = r.Left(y, 3+i)
	}
	for i := range s.Raw {
		s.Raw[i].RawKg = y[r.granules()+i]
	}
}

// Floors writes below which each quantity counts no less for the error of a
// step: a tenth of all the starch, and a factor of e in an enzyme.
func (r *Kinetics) Floors(y, floors []float64) {
	carbohydrate := 0.0
	for _, j := range [...]int{Gel, Dextrin, LimitDextrin, Maltotriose, Maltose, Glucose} {
		carbohydrate += y[j]
	}
	for j := r.granules(); j < r.Size(); j++ {
		carbohydrate += y[j]
	}
	floor := max(0.1*carbohydrate, 1e-9)
	for j := range floors[:r.Size()] {
		floors[j] = floor
	}
	for j := Alpha; j < r.granules(); j++ {
		floors[j] = 3
	}
}

// Tolerance is the error of a step, as a share of a quantity or of its floor,
// that mash and ferment allow.
const Tolerance = 1e-4

// Run moves the state and the enzymes on by dtS seconds at a temperature and a
// pH that hold.
func (c *Constants) Run(s *State, e *Enzymes, tempC, pH, dtS float64) {
	c.RunTo(Tolerance, s, e, tempC, pH, dtS)
}

// RunTo is Run to another tolerance, to see what the error of the steps is.
func (c *Constants) RunTo(tolerance float64, s *State, e *Enzymes, tempC, pH, dtS float64) {
	if !(s.WaterKg > 0) || !(dtS > 0) {
		return
	}
	r := NewKinetics(c, s, e, tempC, pH)
	floors := make([]float64, r.Size())
	y := make([]float64, r.Size())
	r.Put(y, s, e)
	r.Floors(y, floors)
	solver := ode.New(r, r.Size(), ode.Options{Base: 60, Most: 20, Tolerance: tolerance, Floors: floors, Fast: r.Fast()})
	copy(solver.Y(), y)
	solver.Span(0, dtS, nil)
	r.Take(solver.Y(), s, e)
}
