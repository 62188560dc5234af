package numbers

import (
	"newmake/compile/lot"
	"newmake/compile/matter/stream"
	"newmake/compile/stage/still"
	"newmake/lang/diag"
	"newmake/lang/recipe"
)

// Strip is the wash run: the wash in equal charges.
type Strip struct {
	still.Run // one charge
	Charges   int
	LowWines  stream.Stream // of all charges
}

// Spirit is the spirit run: the steady state if feints return, else the first
// batch.
type Spirit struct {
	still.Run // one charge
	Charges   int
	Returned  stream.Stream // feints in that charge
	Hearts    stream.Stream // of all charges
	Tried     int           // runs until it repeated itself
}

// First is the spirit run of a house that has no feints yet: its charges hand
// theirs on.
type First struct {
	Charge         stream.Stream // the first
	Hearts, Feints stream.Stream // of all charges, and what the last one leaves
	DurationS      float64
}

// Stripped runs the wash still.
func Stripped(memo *Memo, b *recipe.Batch, wash stream.Stream) (Strip, error) {
	s := Strip{Charges: max(b.Strip.Charges, 1)}
	n := float64(s.Charges)
	var err error
	s.Run, err = memo.strip(still.StripInput{
		Setting: setting(memo, b, b.Strip.Still), Wash: wash.Scale(1 / n), Stop: b.Strip.StopAt,
	})
	s.LowWines = s.Fraction(still.LowWines).Scale(n)
	return s, ended(Stripping, err, &s)
}

// Distilled runs the spirit still.
func Distilled(memo *Memo, b *recipe.Batch, lowWines stream.Stream) (Spirit, error) {
	in := spiritInput(memo, b, lowWines)
	s := Spirit{Charges: max(b.Spirit.Charges, 1)}
	var err error
	if b.Spirit.Feints {
		s.Run, s.Tried, err = memo.steady(in)
		s.Returned = s.Charge.Minus(in.LowWines)
		s.Returned.TempC = in.LowWines.TempC
	} else {
		s.Run, err = memo.spirit(in)
	}
	s.Hearts = s.Fraction(still.Hearts).Scale(float64(s.Charges))
	return s, ended(Distilling, err, &s)
}

// FirstBatch runs the spirit still of a house that has no feints yet.
func FirstBatch(memo *Memo, b *recipe.Batch, lowWines stream.Stream) (*First, error) {
	in := spiritInput(memo, b, lowWines)
	first := &First{}
	for i := range max(b.Spirit.Charges, 1) {
		in.Feints = first.Feints
		run, err := memo.first(in)
		if err != nil {
			return nil, failed(FirstSpirit, err)
		}
		if i == 0 {
			first.Charge = run.Charge
		}
		first.Feints = run.Feints()
		first.Hearts = first.Hearts.Plus(run.Fraction(still.Hearts).Stream)
		first.DurationS += run.DurationS
	}
	return first, ended(FirstSpirit, nil, first)
}

// Volatile reads what is known of the congeners, which may be wrong; none without
// a model.
func Volatile(b *recipe.Batch) (still.Volatilities, error) {
	if b.Models["congener"] == nil {
		return still.Volatilities{}, nil
	}
	v, err := still.ReadVolatilities(b.Models["congener"])
	return v, failed(Following, err)
}

// Followed follows the congeners through a spirit run; none without a model.
func Followed(b *recipe.Batch, run still.Run) ([]still.Congener, error) {
	volatile, err := Volatile(b)
	if err != nil || b.Models["congener"] == nil {
		return nil, err
	}
	all := still.Congeners(run, volatile)
	return all, ended(Following, nil, all)
}

// setting is a still in its place.
func setting(memo *Memo, b *recipe.Batch, v *recipe.Vessel) still.Setting {
	p := b.Plant
	return still.Setting{
		Still: *v, PressurePa: PressurePa(b), AmbientC: p.AmbientC, WaterC: p.WaterC, BoilerW: p.BoilerW, Boils: memo.boiling(),
	}
}

// spiritInput is one charge of the spirit run, before feints are returned to it.
func spiritInput(memo *Memo, b *recipe.Batch, lowWines stream.Stream) still.SpiritInput {
	s := b.Spirit
	return still.SpiritInput{
		Setting: setting(memo, b, s.Still), LowWines: lowWines.Scale(1 / float64(max(s.Charges, 1))),
		ForeshotsM3: s.ForeshotsM3, GaugeC: lot.GaugeC(b.Gauge),
		HeartsFrom: cutAlone(s.HeartsFrom), HeartsTo: cutAlone(s.HeartsTo), Stop: s.Stop,
	}
}

func cutAlone(c recipe.Cut) recipe.Cut {
	c.At = diag.Span{}
	return c
}
