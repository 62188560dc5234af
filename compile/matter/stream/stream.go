// Package stream is matter on its way through the house: what flows from stage
// to stage is mass and temperature; volume, gravity and strength are derived
// from it and never stored.
package stream

// Stream is a quantity of liquor, mash, wash or distillate, by mass.
type Stream struct {
	WaterKg   float64
	EthanolKg float64

	GlucoseKg     float64 // and other monosaccharides
	MaltoseKg     float64
	MaltotrioseKg float64
	DextrinKg     float64 // dissolved, longer than maltotriose

	RawStarchKg  float64 // in the granule, not dissolved
	GelStarchKg  float64 // gelatinized, not yet hydrolysed: held by the liquor
	SolublesKg   float64 // other matter dissolved from grain: protein, gums, minerals
	BacksetKg    float64 // dissolved solids that came with backset
	AcidKg       float64 // made in the ferment by bacteria, as lactic acid
	ByproductsKg float64 // made in the ferment by yeast: glycerol, organic acids
	YeastKg      float64 // dry
	InsolublesKg float64 // husk, fibre, protein that does not dissolve

	TempC float64
}

// SugarKg is what a yeast can take: mono-, di- and trisaccharides.
func (s Stream) SugarKg() float64 {
	return s.GlucoseKg + s.MaltoseKg + s.MaltotrioseKg
}

// ExtractKg is what the grain has given to the liquor.
func (s Stream) ExtractKg() float64 {
	return s.SugarKg() + s.DextrinKg + s.GelStarchKg + s.SolublesKg
}

// FermentedKg is what the ferment has made besides ethanol and left in
// solution.
func (s Stream) FermentedKg() float64 { return s.AcidKg + s.ByproductsKg }

// DissolvedKg is all that is in solution besides ethanol.
func (s Stream) DissolvedKg() float64 {
	return s.ExtractKg() + s.BacksetKg + s.FermentedKg()
}

// SuspendedKg is all that a sieve or a settling would take out.
func (s Stream) SuspendedKg() float64 {
	return s.RawStarchKg + s.YeastKg + s.InsolublesKg
}

// LiquidKg is water, ethanol and what is dissolved in them.
func (s Stream) LiquidKg() float64 {
	return s.WaterKg + s.EthanolKg + s.DissolvedKg()
}

// MassKg is all of it.
func (s Stream) MassKg() float64 {
	return s.LiquidKg() + s.SuspendedKg()
}

// Plus mixes two streams. The temperature is that of the first, for what a
// mixture's temperature is takes a heat balance, which is the stage's business.
func (s Stream) Plus(o Stream) Stream {
	return s.combine(o, 1)
}

// Minus takes o out of s.
func (s Stream) Minus(o Stream) Stream {
	return s.combine(o, -1)
}

func (s Stream) combine(o Stream, sign float64) Stream {
	s.WaterKg += sign * o.WaterKg
	s.EthanolKg += sign * o.EthanolKg
	s.GlucoseKg += sign * o.GlucoseKg
	s.MaltoseKg += sign * o.MaltoseKg
	s.MaltotrioseKg += sign * o.MaltotrioseKg
	s.DextrinKg += sign * o.DextrinKg
	s.RawStarchKg += sign * o.RawStarchKg
	s.GelStarchKg += sign * o.GelStarchKg
	s.SolublesKg += sign * o.SolublesKg
	s.BacksetKg += sign * o.BacksetKg
	s.AcidKg += sign * o.AcidKg
	s.ByproductsKg += sign * o.ByproductsKg
	s.YeastKg += sign * o.YeastKg
	s.InsolublesKg += sign * o.InsolublesKg
	return s
}

// Scale is the share f of a stream, at its temperature.
func (s Stream) Scale(f float64) Stream {
	none := Stream{TempC: s.TempC}
	return none.combine(s, f)
}
