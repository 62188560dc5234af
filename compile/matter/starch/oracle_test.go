package starch

import "newmake/compile/matter/exponential"

// DeathRates are those at tempC; of the amylases, in a wort as thick as their
// half-lives are given for.
func (c *Constants) DeathRates(tempC float64) Deaths {
	l := c.laws()
	return c.deathRates(&l, exponential.PerKelvin(tempC))
}

// FermentableKg is the sugar that yeast can take.
func (s *State) FermentableKg() float64 { return s.MaltotrioseKg + s.MaltoseKg + s.GlucoseKg }

// Scale is the share f of them: what runs off with that share of the liquor.
func (e Enzymes) Scale(f float64) Enzymes {
	e = e.Clone()
	for _, p := range e.ofMalt() {
		*p *= f
	}
	for i := range e.Added {
		e.Added[i].Activity *= f
		e.Added[i].Dosed *= f
	}
	return e
}
