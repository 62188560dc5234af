package cask

import (
	"math"

	"newmake/compile/matter/fluid"
	"newmake/lang/recipe"
)

// season is the air of a rack house over the year, as factors on what the climate says for
// the year. Both substances go by their vapour pressure in the wood; so a month takes by
// its vapour pressure beside the year's mean, and a year of twelve equal months is the
// year's mean itself. Between the middles of months it is a straight line.
//
// That evaporation goes by the difference of vapour pressures is physics (Perry's Chemical
// Engineers' Handbook, mass transfer; from memory), and houses were steered by it
// (Gallagher, Kolachov and Willkie, Ind. Eng. Chem. 34 (1942) 992: heat in winter keeps
// the wood working). That the wood itself passes as much at every temperature is a guess.
type season struct {
	ethanol  [12]float64 // of the vapour pressure of ethanol, about 1
	water    [12]float64 // of that of water
	moisture [12]float64 // of what vapour the air holds: the humidity times water
	humidity float64     // of the year, weighed by vapour pressure
	filled   float64     // when the cask was filled, as a share of the year
}

// seasonOf is nil of air that nobody wrote.
func seasonOf(y recipe.YearOfAir, filled float64) *season {
	if !y.Said {
		return nil
	}
	s := &season{filled: filled}
	var ethanol, water float64
	for i, a := range y.Months {
		s.ethanol[i], s.water[i] = fluid.VapourPressureEthanolPa(a.TempC), fluid.VapourPressureWaterPa(a.TempC)
		ethanol += s.ethanol[i] / 12
		water += s.water[i] / 12
	}
	for i, a := range y.Months {
		s.ethanol[i] /= ethanol
		s.water[i] /= water
		s.moisture[i] = s.water[i] * a.Humidity
		s.humidity += s.moisture[i] / 12
	}
	return s
}

// at gives the factors at an age in years.
func (s *season) at(age float64) (ethanol, water, moisture float64) {
	_, share := math.Modf(s.filled + age + 1 - 0.5/12) // from the middle of January
	month, u := math.Modf(12 * share)
	i, j := int(month)%12, (int(month)+1)%12
	between := func(y *[12]float64) float64 { return y[i] + u*(y[j]-y[i]) }
	return between(&s.ethanol), between(&s.water), between(&s.moisture)
}

// bends is the next age at which a straight line from one month to the next ends.
func (s *season) bends(age float64) float64 {
	return (math.Floor(12*(s.filled+age)+0.5+1e-6)+0.5)/12 - s.filled
}

// mean is the season without its months: what a plan goes by whose fill is on no
// day.
func (s *season) mean() *season {
	if s == nil {
		return nil
	}
	m := &season{humidity: s.humidity}
	for i := range m.ethanol {
		m.ethanol[i], m.water[i], m.moisture[i] = 1, 1, s.humidity
	}
	return m
}

// keepVolume is by how much both rates are to be raised so that the reference spirit loses
// as much volume in air of this humidity as the house has stated. ok is false where the
// air is so damp that no cask loses that: the water that comes in makes up for most of it.
func (c *cask) keepVolume(a air, humidity float64) (by float64, ok bool) {
	was, is := c.volumeRate(a, a.humidity), c.volumeRate(a, humidity)
	if is < was/mostRaised {
		return 1, false
	}
	return was / is, true
}

// mostRaised is how much more than in the humidity of its climate a cask can be taken to
// pass, for a loss of volume that its house states.
const mostRaised = 3

// volumeRate is what share of its volume a full cask of the reference strength loses in a
// year, about: to the first order.
func (c *cask) volumeRate(a air, humidity float64) float64 {
	const h = 1e-5
	w, ref := c.reference, spiritOf(c.reference)
	lnRhoSlope := math.Log(fluid.Density(w+h, referenceC)/fluid.Density(w-h, referenceC)) / (2 * h)
	ethanol, water := a.ethanolKg*ref.ethanol, a.waterKg*(ref.water-humidity)
	kg := c.sizeM3 * ref.density
	return (ethanol+water)/kg + lnRhoSlope*(w*water-(1-w)*ethanol)/kg
}

// inAir puts the cask into the air of its rack house. What goes in a year is still what its
// climate says, with two kinds of saying: a named climate tells what wood lets through, and
// a house that states its own loss has measured a volume, in this very air.
func (c *cask) inAir(in Input) {
	s := seasonOf(in.Air, in.FilledAt)
	if s == nil {
		return
	}
	if in.FilledAt < 0 {
		s = s.mean()
	}
	c.season = s
	for _, x := range [...]struct {
		air    *air
		stated float64
	}{{&c.first, in.Climate.LossFirstYear}, {&c.later, in.Climate.LossYearly}, {&c.late, in.Climate.LossYearly}} {
		if x.stated == 0 {
			continue
		}
		by, ok := c.keepVolume(*x.air, s.humidity)
		x.air.ethanolKg *= by
		x.air.waterKg *= by
		c.clipped = c.clipped || !ok
	}
}
