package cask

import (
	"math"

	"newmake/compile/matter/fluid"
)

// rates are the shares of ethanol and water that evaporate in a year from a full cask of
// the reference strength.
type rates struct{ ethanol, water float64 }

// air is what takes spirit from a full cask, in kg a year: ethanol by its activity, since
// the air holds none, and water by how far its activity is above the humidity.
type air struct {
	ethanolKg float64 // at an activity of 1
	waterKg   float64 // at an activity of 1 above the humidity
	humidity  float64
}

// cask is one cask and all that acts on it. Time is in years.
type cask struct {
	fillKg, w0 float64
	sizeM3     float64
	soakKg     float64 // that the wood takes up for good, before its own water
	waterKg    float64 // that the wood gives
	soakYears  float64
	first      air // in the first year
	later      air
	late       air
	yearlyRate rates // of a later year
	near       near
	lateYears  float64
	leastKg    float64
	reference  float64 // mass fraction for which losses are stated
	season     *season // nil: the same all the year
	clipped    bool
	dry        bool
}

func newCask(in Input, k constants) (*cask, error) {
	cl, err := climate(in.Climate, in.Model)
	if err != nil {
		return nil, err
	}
	w := in.SpiritEthanolKg / (in.SpiritEthanolKg + in.SpiritWaterKg)
	c := &cask{w0: w, fillKg: in.SizeM3 * fluid.Density(w, referenceC), soakYears: k.soakS / YearS, lateYears: k.lateS / YearS}
	soak := k.defaultKind
	if in.Kind != nil {
		soak = in.Kind.SoakFrac
	}
	surface := math.Pow(k.sizeM3/in.SizeM3, k.sizePower)
	// The first year's evaporation is that of a new cask whatever this one is:
	// only the soak differs.
	soaked := soak * -math.Expm1(-1/c.soakYears) // in that year
	firstYear := math.Max(1-(1-cl.LossFirstYear)/(1-soaked), cl.LossYearly)
	share := surface
	if in.Used {
		share *= k.usedSoak
	}
	c.soakKg = math.Min(soak*share, 0.9) * c.fillKg
	c.waterKg = math.Min(k.woodWater*share, 0.5) * c.fillKg
	c.leastKg = k.leastContent * c.fillKg
	if c.reference, err = fluid.MassFracFromProof(k.proof); err != nil {
		return nil, err
	}
	c.sizeM3, c.near = in.SizeM3, nearTo(w)
	c.yearlyRate = c.rates(cl.LossYearly, cl.ProofPerYear, surface)
	c.first = c.air(c.rates(firstYear, cl.ProofPerYear, surface), firstFull, k.pivot)
	c.later = c.air(c.yearlyRate, laterFull, k.pivot)
	c.late = c.air(c.rates(cl.LossYearly*k.lateShare, cl.ProofPerYear, surface), lateFull, k.pivot)
	c.inAir(in)
	return c, nil
}

// rates solves for the two rates that give, at the reference strength, a loss
// of volume a year and a change of proof a year:
//
//	d ln M/dt = -(w kE + (1-w) kW)    dw/dt = w (1-w) (kW - kE)
//
// with volume M/rho(w) and proof a function of w alone.
func (c *cask) rates(lossYearly, proofPerYear, surface float64) rates {
	const h = 1e-5
	w := c.reference
	proofSlope := (fluid.ProofFromMassFrac(w+h) - fluid.ProofFromMassFrac(w-h)) / (2 * h)
	lnRhoSlope := math.Log(fluid.Density(w+h, referenceC)/fluid.Density(w-h, referenceC)) / (2 * h)
	dw := proofPerYear / proofSlope
	mass := -math.Log1p(-lossYearly) - lnRhoSlope*dw // w kE + (1-w) kW
	apart := dw / (w * (1 - w))                      // kW - kE
	r := rates{ethanol: mass - (1-w)*apart, water: mass + w*apart}
	if r.ethanol < 0 {
		c.clipped = true
		r = rates{ethanol: 0, water: mass / (1 - w)}
	}
	return rates{ethanol: r.ethanol * surface, water: r.water * surface}
}

// How full a cask is in the years for which losses are stated, by the published rule of
// losses: 10 % in the first year, 4 % a year for eight, then 3. A loss a year is of what is
// there, and spirit evaporates by its surface; so the two agree at one content.
const (
	firstFull = 0.95
	laterFull = 0.77
	lateFull  = 0.60
)

// air finds what takes spirit away at the rates of the reference strength. Both
// substances go through the same wood, so that one constant follows from the other: at the
// pivot's humidity strength stands still. What humidity the rates then imply is the
// climate's.
func (c *cask) air(r rates, full, pivot float64) air {
	w := c.reference
	kg := c.sizeM3 * fluid.Density(w, referenceC) * math.Cbrt(full)
	ref := spiritOf(w)
	a := air{ethanolKg: r.ethanol * w * kg / ref.ethanol}
	lossKg := r.water * (1 - w) * kg
	if r.ethanol == 0 || ref.water <= pivot {
		a.waterKg = lossKg / ref.water
		return a
	}
	a.waterKg = r.ethanol * (1 - w) * kg / (ref.water - pivot)
	a.humidity = ref.water - lossKg/a.waterKg
	return a
}

// spirit is what evaporation needs of spirit of a mass fraction: the activities of ethanol
// and water at the reference temperature (their ratio hardly changes with it), and its
// density.
type spirit struct{ ethanol, water, density float64 }

func spiritOf(w float64) spirit {
	x := fluid.MoleFrac(w)
	ge, gw := fluid.ActivityCoefficients(x, referenceC)
	return spirit{ge * x, gw * (1 - x), fluid.Density(w, referenceC)}
}

// near is spirit by a cubic through four strengths about that of the fill: a cask's
// strength moves by a few hundredths in its years, and the forecast asks for it some
// hundred times. Beyond it, it is computed.
type near struct {
	mid   float64
	coeff [4]spirit // of the powers of (w-mid)/nearStep
}

// nearStep is a third of the distance that the cubic spans to each side; within it the
// activities are met to 1e-4 (TestNear).
const nearStep = 0.03

func nearTo(w float64) near {
	w = math.Min(math.Max(w, 3*nearStep), 1-3*nearStep)
	n := near{mid: w}
	at := func(i float64) spirit { return spiritOf(w + i*nearStep) }
	a, b, c, d := at(-3), at(-1), at(1), at(3)
	for _, f := range [...]func(*spirit) *float64{
		func(s *spirit) *float64 { return &s.ethanol }, func(s *spirit) *float64 { return &s.water }, func(s *spirit) *float64 { return &s.density },
	} {
		a, b, c, d := *f(&a), *f(&b), *f(&c), *f(&d)
		*f(&n.coeff[0]) = (9*(b+c) - a - d) / 16
		*f(&n.coeff[1]) = (27*(c-b) - (d - a)) / 48
		*f(&n.coeff[2]) = (a + d - b - c) / 16
		*f(&n.coeff[3]) = (d - a - 3*(c-b)) / 48
	}
	return n
}

func (n *near) at(w float64) spirit {
	u := (w - n.mid) / nearStep
	if u < -3 || u > 3 {
		return spiritOf(w)
	}
	c := &n.coeff
	return spirit{
		c[0].ethanol + u*(c[1].ethanol+u*(c[2].ethanol+u*c[3].ethanol)),
		c[0].water + u*(c[1].water+u*(c[2].water+u*c[3].water)),
		c[0].density + u*(c[1].density+u*(c[2].density+u*c[3].density)),
	}
}

// yearly is what a cask of this size loses in a later year at the reference
// strength, and by how much its proof changes.
func (c *cask) yearly() (lossFrac, proof float64) {
	w := c.reference
	ethanol, water := w*math.Exp(-c.yearlyRate.ethanol), (1-w)*math.Exp(-c.yearlyRate.water)
	after := ethanol / (ethanol + water)
	lossFrac = 1 - (ethanol+water)/fluid.Density(after, referenceC)*fluid.Density(w, referenceC)
	return lossFrac, fluid.ProofFromMassFrac(after) - fluid.ProofFromMassFrac(w)
}

func (c *cask) airAt(age float64) air {
	switch {
	case age < 1:
		return c.first
	case age < c.lateYears:
		return c.later
	default:
		return c.late
	}
}

// content is the ethanol and water in the cask, in the wood and in the air.
type content [6]float64

const (
	inEthanol = iota
	inWater
	woodEthanol
	woodWater
	lostEthanol
	lostWater
)

// steps are how many are taken in the first year, in the next and so on, the last in all
// that follow: fewer and fewer, as the wood is soaked. They keep the forecast within
// 1e-6 of its limit (TestSteps). Where the air changes with the month, a step is no longer
// than from the middle of one to that of the next, for there the change bends.
var steps = [...]int{12, 6, 3, 2}

// rest follows the cask to the end of its rest, noting each year.
func (c *cask) rest(restS float64) []Year {
	end := restS / YearS
	s := content{inEthanol: c.fillKg * c.w0, inWater: c.fillKg * (1 - c.w0)}
	years := make([]Year, 0, int(end)+2)
	years = append(years, s.year(0))
	for age := 0.0; age < end; {
		next := math.Min(math.Floor(age+1e-9)+1, end)
		if next < end && end-next < 1e-9 {
			next = end
		}
		s = c.pass(s, age, next)
		if s[inEthanol]+s[inWater] <= c.leastKg {
			c.dry = true
			break
		}
		age = next
		years = append(years, s.year(age))
	}
	return years
}

// pass integrates over at most a year in which the air stays the same, by the
// classical Runge-Kutta method. A year in which `late-after` falls keeps the
// rates it began with.
func (c *cask) pass(s content, from, to float64) content {
	k := c.airAt(from + 1e-9)
	yearly := steps[min(int(from+1e-9), len(steps)-1)]
	longest := (to - from) / max(1, math.Ceil(float64(yearly)*(to-from)-1e-9))
	begin := c.outsideAt(from)
	for t := from; t < to; {
		next := t + longest
		if c.season != nil {
			next = min(next, c.season.bends(t))
		}
		if to-next < 1e-9 {
			next = to
		}
		h := next - t
		middle, end := c.outsideAt(t+h/2), c.outsideAt(next)
		k1 := c.slope(&s, &begin, &k)
		x := s.plus(h/2, &k1)
		k2 := c.slope(&x, &middle, &k)
		x = s.plus(h/2, &k2)
		k3 := c.slope(&x, &middle, &k)
		x = s.plus(h, &k3)
		k4 := c.slope(&x, &end, &k)
		for j := range s {
			s[j] += h / 6 * (k1[j] + 2*k2[j] + 2*k3[j] + k4[j])
		}
		t, begin = next, end
	}
	return s
}

// outside is what acts on a cask at an age whatever it holds: how fast the wood soaks, as a
// share of its soak a year, and the month's air.
type outside struct{ soaking, ethanol, water, moisture float64 }

func (c *cask) outsideAt(age float64) outside {
	o := outside{soaking: math.Exp(-age/c.soakYears) / c.soakYears}
	if c.season != nil {
		o.ethanol, o.water, o.moisture = c.season.at(age)
	}
	return o
}

// slope is the change of each content a year.
func (c *cask) slope(s *content, o *outside, k *air) (d content) {
	m := max(s[inEthanol]+s[inWater], 1e-12)
	given := c.waterKg * o.soaking
	taken := (c.soakKg + c.waterKg) * o.soaking / m
	d[woodEthanol], d[woodWater] = taken*s[inEthanol], taken*s[inWater]
	now := c.near.at(s[inEthanol] / m)
	full := m / now.density / c.sizeM3
	surface := math.Cbrt(full * full)
	if c.season == nil {
		d[lostEthanol], d[lostWater] = k.ethanolKg*now.ethanol*surface, k.waterKg*(now.water-k.humidity)*surface
	} else {
		d[lostEthanol], d[lostWater] = k.ethanolKg*now.ethanol*o.ethanol*surface, k.waterKg*(now.water*o.water-o.moisture)*surface
	}
	d[inEthanol] = -d[woodEthanol] - d[lostEthanol]
	d[inWater] = given - d[woodWater] - d[lostWater]
	d[woodWater] -= given
	return d
}

func (s content) plus(h float64, d *content) content {
	for j := range s {
		s[j] += h * d[j]
	}
	return s
}

func (s content) year(age float64) Year {
	m := s[inEthanol] + s[inWater]
	w := s[inEthanol] / m
	return Year{
		AgeYears: age, VolumeM3: m / fluid.Density(w, referenceC),
		ABV: fluid.ABVFromMassFrac(w), Proof: fluid.ProofFromMassFrac(w), ProofGallons: fluid.ProofGallonsFromKg(m, w),
		EthanolKg: s[inEthanol], WaterKg: s[inWater],
		WoodEthanolKg: s[woodEthanol], WoodWaterKg: s[woodWater],
		LostEthanolKg: s[lostEthanol], LostWaterKg: s[lostWater],
	}
}
