package numbers

import (
	"math"
	"slices"

	"newmake/compile/lot"
	"newmake/compile/matter/stream"
	"newmake/compile/stage/still"
	"newmake/lang/quantity"
	"newmake/lang/recipe"
)

// Way is another way to write a batch whose feints never settle, and the run that
// it gives. Whether that is one to work is for who reads it to judge. What it
// changes stands in the batch.
type Way struct {
	By     WayBy
	Batch  *recipe.Batch
	Spirit Spirit
}

// WayBy is what a way changes.
type WayBy uint8

const (
	HeartsByVolume WayBy = iota + 1 // the hearts begin at a volume
	WaterInCharge                   // water brings the charge to one strength
	FirstBatch                      // the charge has no feints yet
	SecondBatch                     // it has those that the first batch leaves
)

// Strengths that water is tried at, from the usual one of a pot still's charge down.
var watersTried = []float64{0.28, 0.26, 0.24, 0.22, 0.20, 0.18}

// Ways are all that are tried where the run of a batch is not steady, of each kind
// in the order in which they are to be taken: the one that departs least comes
// first. first is the run without feints.
func Ways(memo *Memo, b *recipe.Batch, lowWines stream.Stream, first still.Run) []Way {
	if !slices.Contains(first.Problems, still.ProblemNotSteady) {
		return nil
	}
	var out []Way
	try := func(by WayBy, change func(b *recipe.Batch)) {
		c := *b
		change(&c)
		if run, err := Distilled(memo, &c, lowWines); err == nil {
			out = append(out, Way{by, &c, run})
		}
	}
	basis := recipe.ABV
	if b.Gauge == recipe.US {
		basis = recipe.Proof // where gallons are written, % abv is half the proof
	}
	for _, m3 := range begins(b, first) {
		try(HeartsByVolume, func(b *recipe.Batch) {
			b.Spirit.HeartsFrom = recipe.Cut{By: recipe.ByVolume, VolumeM3: m3, At: b.Spirit.HeartsFrom.At}
		})
	}
	for _, abv := range watersTried {
		try(WaterInCharge, func(b *recipe.Batch) { b.Spirit.WaterTo = recipe.Strength{Value: abv, Basis: basis} })
	}
	today := func(m3 float64, at recipe.Strength) recipe.Today {
		return recipe.Today{FeintsSaid: true, FeintsM3: m3, FeintsAt: at, NoBackset: b.Today.NoBackset, NoKept: b.Today.NoKept, NoPotAle: b.Today.NoPotAle}
	}
	try(FirstBatch, func(b *recipe.Batch) { b.Today = today(0, recipe.Strength{}) })
	left := lot.Of(first.Feints().Scale(float64(max(b.Spirit.Charges, 1))))
	at := math.Round(left.AbvPct) / 100
	if b.Gauge == recipe.US {
		at = math.Round(left.Proof) / 200
	}
	if m3 := written(b.Gauge, lot.VolumeM3(b.Gauge, left), 0); m3 > 0 && at > 0 {
		try(SecondBatch, func(b *recipe.Batch) { b.Today = today(m3, recipe.Strength{Value: at, Basis: basis}) })
	}
	return out
}

// begins are the volumes at which the hearts of a run might begin: where they do
// now, and sooner.
func begins(b *recipe.Batch, r still.Run) []float64 {
	foreshots := lot.VolumeM3(b.Gauge, lot.Of(r.Fraction(still.Foreshots).Stream))
	heads := lot.VolumeM3(b.Gauge, lot.Of(r.Fraction(still.Heads).Stream))
	var out []float64
	for range 4 {
		m3 := written(b.Gauge, foreshots+heads, foreshots)
		if m3 > 0 && !slices.Contains(out, m3) {
			out = append(out, m3)
		}
		heads /= 2
	}
	return out
}

// written is a volume as a person would write it, to a tenth of a gallon or of a
// litre, and no less than the least.
func written(gauge recipe.System, m3, leastM3 float64) float64 {
	unit := "L"
	if gauge == recipe.US {
		unit = "gal"
	}
	one, _ := quantity.ToSI(1, unit, quantity.Volume)
	n := math.Round(10*m3/one) / 10
	if n*one < leastM3-recipe.SameVolumeM3 {
		n = math.Ceil(10*leastM3/one) / 10
	}
	return n * one
}
