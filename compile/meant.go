package compile

import (
	"newmake/compile/matter/fluid"
	"newmake/compile/plan"
	"newmake/lang/recipe"
)

// meant is a batch with every strength on the basis on which it is meant. Where
// gallons are written % abv is half the proof, and so at 60 F (27 CFR 19.1);
// where litres are, it is at 20 C (OIML R 22). Promises keep the basis in which
// they are written, to be answered in it.
func meant(b *recipe.Batch) *recipe.Batch {
	if b.Gauge != recipe.US {
		return b
	}
	c := *b
	for _, s := range []*recipe.Strength{
		&c.Strip.StopAt, &c.Spirit.Stop, &c.Spirit.HeartsFrom.Strength, &c.Spirit.HeartsTo.Strength, &c.Cask.Entry, &c.Cask.BottleAt,
	} {
		if s.Basis == recipe.ABV {
			s.Basis = recipe.Proof
		}
	}
	return &c
}

// gaugeC is the temperature at which a written volume of spirit is meant.
func (c *compiler) gaugeC() float64 {
	if c.b.Gauge == recipe.US {
		return fluid.SixtyF
	}
	return referenceC
}

// ofLot is a written volume of a lot's spirit, counted both ways.
func (c *compiler) ofLot(m3 float64, l plan.Lot) plan.Quantity {
	if l.VolumeL <= 0 {
		return plan.Of(m3*litresPerM3, plan.Litre)
	}
	share := m3 * litresPerM3 / l.VolumeL
	if c.b.Gauge == recipe.US {
		share = m3 / fluid.USGallonM3 / l.WineGallons
	}
	return l.Times(share).Volume()
}

// volumeOf is a lot's volume as the batch would write it, in m3.
func (c *compiler) volumeOf(l plan.Lot) float64 {
	if c.b.Gauge == recipe.US {
		return l.WineGallons * fluid.USGallonM3
	}
	return l.VolumeL / litresPerM3
}

// byVolume says a strength at 20 C, as a fraction, in % abv alone.
func (c *compiler) byVolume(abv float64) string { return c.say.StrengthAbv(strengthAbv(abv)) }
