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
	GelStarchKg  float64 // gelatinized, not yet hydrolysed
	SolublesKg   float64 // other matter dissolved from grain: protein, gums, minerals, glycerol
	BacksetKg    float64 // dissolved solids that came with backset
	AcidKg       float64 // as lactic acid, made in the ferment
	YeastKg      float64 // dry
	InsolublesKg float64 // husk, fibre, protein that does not dissolve

	TempC float64
}
