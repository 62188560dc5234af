package starch

import (
	"math"

	"newmake/compile/matter/exponential"

	"newmake/compile/matter/ode"
	"newmake/lang/recipe"
)

// The vector in which starch and enzymes are integrated: masses in kg, then of
// each enzyme the logarithm of the share left (0 at first: so its death is
// followed closely, and it never falls below nothing), of free limit dextrinase
// the share of all that there was, then the starch still in each grain's
// granules. A stage may embed it in its own.
const (
	Water = iota
	Gel
	Dextrin // straight
	LimitDextrin
	Closed
	Maltotriose
	Maltose
	Glucose
	Alpha // from here on, logarithms of what is left
	Beta
	BetaTail
	LimitHeld
	LimitBound
	Limit // free: a share
	added // the first preparation

	ofMalt    = added - Alpha
	limitHeld = LimitHeld - Alpha // the amylases come before it
)

// Kinetics is starch and enzymes ready to be integrated: which preparations and
// which grains there are, and what temperature and acidity make of the rates.
// It is a system of package ode at a temperature that TempC gives.
type Kinetics struct {
	TempC func(timeS float64) float64 // nil: as SetTemp left it

	k      *Constants
	laws   laws
	added  []Added
	of     []preparation // what is added
	grain  []Granules
	start  []float64 // activity of each enzyme at the beginning; of free limit dextrinase, of all of it
	free   float64   // share of limit dextrinase free at the beginning
	beside float64   // kg dissolved that is not of starch

	tempC   float64
	acidity []float64 // factor of each enzyme at pH, in the vector's order; of what is bound, of its release
	warmth  []float64 // factor of each at tempC
	death   []float64
	left    []float64 // logarithms for which alive was reckoned
	alive   []float64 // activity left
}

// NewKinetics is for the preparations of e and the grains of s; what is left of
// each is the vector's business.
func NewKinetics(k *Constants, s *State, e *Enzymes, tempC, pH float64) *Kinetics {
	n := ofMalt + len(e.Added)
	room := make([]float64, 6*n)
	r := &Kinetics{k: k, laws: k.laws(), added: e.Added, grain: s.Raw, beside: s.BesideKg, tempC: math.NaN()}
	r.acidity, r.warmth, r.death, r.start = room[:n], room[n:2*n], room[2*n:3*n], room[3*n:4*n]
	r.left, r.alive = room[4*n:5*n], room[5*n:]
	for i, of := range e.ofMalt() {
		r.start[i] = *of
	}
	if all := e.LimitAll(); all > 0 {
		r.free = e.Limit / all
		r.start[Limit-Alpha] = all
	}
	for i := range e.Added {
		r.start[ofMalt+i] = e.Added[i].Activity
		r.of = append(r.of, k.preparation(e.Added[i].Enzyme))
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

// Enzymes is how many there are, and how many factors of acidity.
func (r *Kinetics) Enzymes() int { return len(r.start) }

// AcidityAt writes the share of its activity that each enzyme shows at a pH, in
// the vector's order; of bound limit dextrinase, how fast it is set free.
func (r *Kinetics) AcidityAt(pH float64, out []float64) {
	down := tenTo(-pH)
	up := 1 / down
	l := &r.laws
	beta := l.betaPH.at(up, down)
	copy(out, []float64{l.alphaPH.at(up, down), beta, beta, 1, r.k.release(pH), l.limitPH.at(up, down)})
	for i := range r.of {
		out[ofMalt+i] = r.of[i].ph.at(up, down)
	}
}

// SetTemp makes the rates at a temperature, unless they are made.
func (r *Kinetics) SetTemp(tempC float64) {
	if tempC == r.tempC {
		return
	}
	r.tempC = tempC
	perK := exponential.PerKelvin(tempC)
	l := &r.laws
	beta := l.beta.At(perK)
	*(*[ofMalt]float64)(r.warmth) = [ofMalt]float64{l.alpha.At(perK), beta, beta, 1, l.release.At(perK), l.limit.At(perK)}
	d := r.k.deathRates(l, perK)
	*(*[ofMalt]float64)(r.death) = [ofMalt]float64{d.Alpha, d.Beta, d.BetaTail, d.LimitBound, d.LimitBound, d.Limit}
	for i := range r.of {
		p := &r.of[i]
		r.warmth[ofMalt+i], r.death[ofMalt+i] = p.work.At(max(perK, p.bestPerK)), 0
		if p.deathPerS > 0 {
			r.death[ofMalt+i] = p.deathPerS * p.dies.At(perK)
		}
	}
}

// extract is what is dissolved, as a share of the wort.
func (r *Kinetics) extract(y []float64) float64 {
	dissolved := r.beside
	for _, v := range y[Dextrin:Alpha] {
		dissolved += v
	}
	if all := dissolved + y[Water]; all > 0 {
		return dissolved / all
	}
	return 0
}

// Slopes is ode.System.
func (r *Kinetics) Slopes(t float64, y, d []float64) {
	if r.TempC != nil {
		r.SetTemp(r.TempC(t))
	}
	r.Flow(y, d)
}

// done is the share of a grain's starch that is not worth a rate.
const done = 1e-10

// Flow writes the change of each quantity a second, at the temperature and pH
// that are set.
func (r *Kinetics) Flow(y, d []float64) {
	k := r.k
	perKg := 0.0
	if y[Water] > 0 {
		perKg = 1 / y[Water]
	}
	alpha := r.rate(Alpha, y) * perKg
	beta := k.BetaOnDextrin * (r.rate(Beta, y) + r.rate(BetaTail, y)) * perKg
	extract := r.extract(y)
	exposed := k.Exposure(extract)
	for i := range limitHeld { // the amylases; what is not there does not die
		d[Alpha+i] = 0
		if r.start[i] > 0 {
			d[Alpha+i] = -exposed * r.death[i]
		}
	}
	limit := k.LimitOnBranch * r.setFree(y, d) * perKg
	liquefying, gluco := k.AlphaOnStarch*alpha, 0.0
	for i := range r.added {
		d[added+i] = -r.death[ofMalt+i]
		switch r.added[i].Enzyme.Does {
		case recipe.Liquefying:
			liquefying += r.rate(added+i, y) * perKg
		case recipe.Saccharifying:
			gluco += r.rate(added+i, y) * perKg
		}
	}
	d[Gel] = 0
	for i := range r.grain {
		// To granules in a thick wort it is as much colder.
		g, j := &r.grain[i], r.granules()+i
		x, toThem := 0.0, r.tempC-k.GelRiseK(g, extract)
		if toThem > g.LowC {
			if ready := y[j] - g.TotalKg*(1-k.Gelatinizable(g, toThem)); ready > done*g.TotalKg {
				x = k.GelRateAt(g, toThem) * ready
			}
		}
		d[j] = -x
		d[Gel] += x
	}

	// Each reaction, as starch taken from its pool.
	split, starchToGlucose := liquefying*y[Gel], gluco*y[Gel]
	opened, limitToGlucose, closedToGlucose := limit*y[LimitDextrin], k.GlucoOnBranch*gluco*y[LimitDextrin], k.GlucoOnBranch*gluco*y[Closed]
	straight := y[Dextrin] / PerDextrin
	byAlpha, byBeta, dextrinToGlucose := k.AlphaOnDextrin*alpha*straight, beta*straight, gluco*y[Dextrin]
	threeToGlucose, twoToGlucose := k.GlucoOnMaltose*gluco*y[Maltotriose], k.GlucoOnMaltose*gluco*y[Maltose]

	glucose := byAlpha * k.AlphaToGlucose
	three := byAlpha*(1-k.AlphaToGlucose-k.AlphaToMaltose) + byBeta*k.BetaToMaltotriose
	two := byAlpha + byBeta - glucose - three
	d[Gel] -= split + starchToGlucose
	branched := PerDextrin * k.BranchedShare * split
	d[LimitDextrin] = (1-k.ClosedShare)*branched - opened - limitToGlucose
	d[Closed] = k.ClosedShare*branched - closedToGlucose
	limitToGlucose += closedToGlucose
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

// setFree writes what becomes of limit dextrinase and gives the activity of that
// which is free.
func (r *Kinetics) setFree(y, d []float64) float64 {
	const held, bound, free = limitHeld, LimitBound - Alpha, Limit - Alpha
	d[LimitHeld], d[LimitBound], d[Limit] = 0, 0, 0
	all := r.start[free]
	if all == 0 {
		return 0
	}
	k := r.k
	released := k.LimitRelease * r.warmth[bound] * r.acidity[bound]
	idle := r.activity(bound, y[LimitBound])
	if r.start[held] > 0 {
		d[LimitHeld] = -k.LimitDissolves - r.death[held]
	}
	if idle > 0 {
		d[LimitBound] = -released - r.death[bound] + k.LimitDissolves*r.activity(held, y[LimitHeld])/idle
	}
	d[Limit] = released*idle/all - r.death[free]*y[Limit]
	return all * max(0, y[Limit]) * r.warmth[free] * r.acidity[free]
}

// rate is that which an enzyme has in a kg of water.
func (r *Kinetics) rate(j int, y []float64) float64 {
	i := j - Alpha
	return r.activity(i, y[j]) * r.warmth[i] * r.acidity[i]
}

// activity is the activity of an enzyme of whose logarithm so much is left.
func (r *Kinetics) activity(i int, left float64) float64 {
	if left != r.left[i] && r.start[i] != 0 {
		r.left[i] = left
		r.alive[i] = r.start[i] * exponential.Exp(left)
	}
	return r.alive[i]
}

// activityAt is what is left of an enzyme: those of the malt and then the
// preparations, in the vector's order.
func (r *Kinetics) activityAt(y []float64, i int) float64 {
	if Alpha+i == Limit {
		return r.start[i] * max(0, y[Limit])
	}
	return r.start[i] * exponential.Exp(y[Alpha+i])
}

// Settle gives back what a step took too much, less than its tolerance, out of
// a pool that it emptied.
func (r *Kinetics) Settle(y []float64) {
	for j := r.granules(); j < len(y); j++ {
		if y[j] < 0 {
			y[Gel] += y[j]
			y[j] = 0
		}
	}
	y[Limit] = max(0, y[Limit])
	for _, p := range [...]struct {
		from, to int
		per      float64 // kg of the second from a kg of the first
	}{
		{Gel, Dextrin, PerDextrin}, {Closed, LimitDextrin, 1}, {LimitDextrin, Dextrin, 1}, {Dextrin, Maltose, PerMaltose / PerDextrin},
		{Maltotriose, Glucose, PerGlucose / PerMaltotriose}, {Maltose, Glucose, PerGlucose / PerMaltose},
	} {
		if x := y[p.from]; x < 0 {
			y[p.from] = 0
			y[p.to] += p.per * x
			y[Water] -= (p.per - 1) * x
		}
	}
}

// hotC is from where free limit dextrinase dies within less than a step of the
// integrator.
const hotC = 68

// Fast are the quantities that may answer quickly up to a temperature: among
// them, in a hot mash, free limit dextrinase, which dies as fast as it is set free.
func (r *Kinetics) Fast(mostC float64) []int {
	fast := make([]int, 0, 5+len(r.grain))
	for i := range r.grain {
		fast = append(fast, r.granules()+i)
	}
	if r.start[Limit-Alpha] > 0 && mostC > hotC {
		fast = append(fast, Limit)
	}
	return append(fast, Gel, LimitDextrin, Dextrin)
}

// Put writes a state and its enzymes into a vector, and Take reads them back.
func (r *Kinetics) Put(y []float64, s *State) {
	y[Water], y[Gel], y[Dextrin], y[LimitDextrin], y[Closed] = s.WaterKg, s.GelKg, s.DextrinKg, s.LimitDextrinKg, s.ClosedKg
	y[Maltotriose], y[Maltose], y[Glucose] = s.MaltotrioseKg, s.MaltoseKg, s.GlucoseKg
	r.PutEnzymes(y[Alpha:r.granules()])
	for i := range s.Raw {
		y[r.granules()+i] = s.Raw[i].RawKg
	}
}

// PutEnzymes writes the enzymes' part of the vector as it is at first.
func (r *Kinetics) PutEnzymes(y []float64) {
	clear(y)
	y[Limit-Alpha] = r.free
}

// Take is the reverse of Put.
func (r *Kinetics) Take(y []float64, s *State, e *Enzymes) {
	s.WaterKg, s.GelKg, s.DextrinKg, s.LimitDextrinKg, s.ClosedKg = y[Water], y[Gel], y[Dextrin], y[LimitDextrin], y[Closed]
	s.MaltotrioseKg, s.MaltoseKg, s.GlucoseKg = y[Maltotriose], y[Maltose], y[Glucose]
	r.TakeEnzymes(y, e)
	for i := range s.Raw {
		s.Raw[i].RawKg = y[r.granules()+i]
	}
}

// TakeEnzymes reads back the enzymes alone.
func (r *Kinetics) TakeEnzymes(y []float64, e *Enzymes) {
	for i, of := range e.ofMalt() {
		*of = r.activityAt(y, i)
	}
	for i := range e.Added {
		e.Added[i].Activity = r.activityAt(y, ofMalt+i)
	}
}

// Floors writes below which each quantity counts no less for the error of a
// step: a tenth of all the starch, and for an enzyme what EnzymeFloors says.
func (r *Kinetics) Floors(y, floors []float64) {
	carbohydrate := 0.0
	for j := Gel; j < Alpha; j++ {
		carbohydrate += y[j]
	}
	for j := r.granules(); j < r.Size(); j++ {
		carbohydrate += y[j]
	}
	floor := max(0.1*carbohydrate, 1e-9)
	for j := range floors[:r.Size()] {
		floors[j] = floor
	}
	r.EnzymeFloors(floors[Alpha:r.granules()])
}

// EnzymeFloors writes those of the enzymes: three factors of e, one for a
// preparation, which works in the hot mash where nothing else asks for short
// steps, and a tenth of all limit dextrinase.
func (r *Kinetics) EnzymeFloors(floors []float64) {
	for j := range floors {
		floors[j] = 3
	}
	floors[Limit-Alpha] = 0.1
	for j := ofMalt; j < len(floors); j++ {
		floors[j] = 1
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
	r.Put(y, s)
	r.Floors(y, floors)
	solver := ode.New(r, r.Size(), ode.Options{Base: 60, Most: 40, Tolerance: tolerance, Floors: floors, Fast: r.Fast(tempC)})
	copy(solver.Y(), y)
	solver.Span(0, dtS, nil)
	r.Take(solver.Y(), s, e)
}
