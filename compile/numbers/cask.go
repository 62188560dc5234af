package numbers

import (
	"time"

	"newmake/compile/lot"
	"newmake/compile/matter/fluid"
	"newmake/compile/matter/stream"
	"newmake/compile/stage/cask"
	"newmake/compile/stage/gauge"
	"newmake/lang/recipe"
	"newmake/lang/record"
)

// Reduction is the hearts brought to strength with water.
type Reduction struct {
	gauge.Reduction
	Done       bool          // false: nothing asks for it, or the hearts are weaker than that
	Weak       bool          // the hearts are weaker than what is asked
	ToMassFrac float64       // what is asked
	Err        error         // it cannot be computed; the plan goes on without
	Spirit     stream.Stream // what there is then; the hearts, if they are not reduced
}

// Cask is the spirit in wood.
type Cask struct {
	In cask.Input
	cask.Result
	Done   bool          // false: it goes into no wood
	Before stream.Stream // of the spirit, what a run before it left over
	Spirit stream.Stream // all that there is for casks
}

// Reduced brings the hearts to the strength at which they go into wood, or into
// bottles if they go into none.
func Reduced(b *recipe.Batch, hearts stream.Stream) Reduction {
	r := Reduction{Spirit: hearts}
	to := b.Cask.Entry
	if !InWood(b) {
		to = b.Cask.BottleAt
	}
	if hearts.MassKg() <= 0 || !InWood(b) && to.Value <= 0 {
		return r // the run has said why, or the spirit is kept as it comes
	}
	var err error
	if r.ToMassFrac, err = lot.MassFrac(to); err != nil {
		r.Err = failed(Reducing, err)
		return r
	}
	if r.Weak = hearts.EthanolKg/(hearts.EthanolKg+hearts.WaterKg) < r.ToMassFrac; r.Weak {
		return r
	}
	if r.Reduction, err = gauge.Reduce(hearts.EthanolKg, hearts.WaterKg, r.ToMassFrac, b.Plant.AmbientC); err != nil {
		r.Err = failed(Reducing, err)
		return r
	}
	r.Spirit.WaterKg += r.WaterKg
	r.Done = true
	return r
}

// Filled puts the reduced spirit into casks, with what a run before it left over, and
// foretells their years.
func Filled(b *recipe.Batch, r Reduction) (Cask, error) {
	if !InWood(b) || !r.Done {
		return Cask{}, nil
	}
	k := b.Cask
	before := stream.Stream{EthanolKg: b.Today.Spirit.EthanolKg, WaterKg: b.Today.Spirit.WaterKg, TempC: r.Spirit.TempC}
	all := r.Spirit.Plus(before)
	c := Cask{Done: true, Before: before, Spirit: all, In: cask.Input{
		SpiritEthanolKg: all.EthanolKg, SpiritWaterKg: all.WaterKg, SizeM3: CaskM3(b, all), Kind: k.Kind, Used: !k.New,
		Climate: k.Climate, Air: k.Air, FilledAt: filledAt(b), RestS: k.RestS, BottleM3: BottleM3(b), BottleC: lot.BottleC(b.Gauge), BottleABV: BottleABV(b), Model: b.Models["cask"],
	}}
	var err error
	c.Result, err = cask.Forecast(c.In)
	return c, ended(Filling, err, &c.Result)
}

// CaskM3 is what a cask takes of the spirit, counted at 20 C: the written size
// is that of the spirit as it is gauged, so that casks and what is left over
// come to the whole.
func CaskM3(b *recipe.Batch, spirit stream.Stream) float64 {
	return b.Cask.SizeM3 * spirit.VolumeAtM3(lot.ReferenceC) / spirit.VolumeAtM3(lot.GaugeC(b.Gauge))
}

// Usual bottles (27 CFR 5.203; Directive 2007/45/EC), and the strength where
// neither the batch nor its standard says.
const (
	bottleUSM3 = 0.750e-3
	bottleSIM3 = 0.700e-3
	bottledABV = 0.40
)

// BottleM3 is the bottle that is counted, the usual one if none is written.
func BottleM3(b *recipe.Batch) float64 {
	switch {
	case b.Cask.BottleM3 > 0:
		return b.Cask.BottleM3
	case b.Units == recipe.SI:
		return bottleSIM3
	default:
		return bottleUSM3
	}
}

// BottleABV is the bottling strength, by volume at 20 C: as written, or the
// least that the standard allows, or 40 %.
func BottleABV(b *recipe.Batch) float64 {
	s := b.Cask.BottleAt
	if s.Value == 0 {
		s = b.Standard.BottledAt()
	}
	if s.Value == 0 {
		s.Value = bottledABV
		if b.Gauge == recipe.US {
			s.Basis = recipe.Proof
		}
	}
	w, err := lot.MassFrac(s)
	if err != nil {
		return bottledABV
	}
	return fluid.ABVFromMassFrac(w)
}

// filledAt is when in the year a batch goes into wood, as a share of the year: within some
// ten days of its mash. Below 0 it is planned for no day.
func filledAt(b *recipe.Batch) float64 {
	if b.Start.Assumed || b.Start.Month == 0 {
		return -1
	}
	return cask.ShareOfYear(record.Date{Year: b.Start.Year, Month: time.Month(b.Start.Month), Day: b.Start.Day}.After(mashToWoodDays))
}

// mashToWoodDays is how long it takes from the mash to the cask, about (common practice: a
// ferment of three to five days, and a week for two distillations and the reduction).
const mashToWoodDays = 10
