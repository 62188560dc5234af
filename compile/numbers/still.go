package numbers

import (
	"fmt"

	"newmake/compile/lot"
	"newmake/compile/matter/fluid"
	"newmake/compile/matter/stream"
	"newmake/compile/stage/still"
	"newmake/lang/diag"
	"newmake/lang/recipe"
)

// Strip is the stripping run: the wash in equal charges.
type Strip struct {
	still.Run // one charge
	Charges   int
	LowWines  stream.Stream // of all charges
}

// Spirit is the spirit run. If feints return it is the steady state, unless the
// house says what feints it has today.
type Spirit struct {
	still.Run // one charge
	Charges   int
	Returned  stream.Stream // feints in that charge
	Water     stream.Stream // that brought it to its strength
	Hearts    stream.Stream // of all charges
	Tried     int           // runs until it repeated itself; 0 where it need not
}

// Stripped runs the wash still.
func Stripped(memo *Memo, b *recipe.Batch, wash stream.Stream) (Strip, error) {
	s := Strip{Charges: max(b.Strip.Charges, 1)}
	n := float64(s.Charges)
	var err error
	s.Run, err = memo.strip(still.StripInput{
		Setting: setting(memo, b, b.Strip.Still), Wash: wash.Scale(1 / n), Stop: b.Strip.StopAt, Pace: b.Strip.Pace,
	})
	s.LowWines = s.Fraction(still.LowWines).Scale(n)
	return s, ended(Stripping, err, &s)
}

// Distilled runs the spirit still.
func Distilled(memo *Memo, b *recipe.Batch, lowWines stream.Stream) (Spirit, error) {
	in := spiritInput(memo, b, lowWines)
	s := Spirit{Charges: max(b.Spirit.Charges, 1)}
	var err error
	if b.Spirit.Feints && !b.Today.FeintsSaid {
		s.Run, s.Tried, err = memo.steady(in)
	} else if in.Feints, err = feintsToday(b, in.LowWines.TempC); err == nil {
		s.Run, err = memo.spirit(in)
	}
	s.Water = stream.Stream{WaterKg: s.WaterKg, TempC: in.WaterC}
	s.Returned = s.Charge.Minus(in.LowWines).Minus(s.Water)
	s.Returned.TempC = in.LowWines.TempC
	if !b.Spirit.Feints {
		s.Returned = stream.Stream{}
	}
	s.Hearts = s.Fraction(still.Hearts).Scale(float64(s.Charges))
	return s, ended(Distilling, err, &s)
}

// feintsToday is a charge's share of the feints that the house says it has; none
// where the charge takes none. They stand in the still house as the low wines do.
func feintsToday(b *recipe.Batch, tempC float64) (stream.Stream, error) {
	t := b.Today
	if !b.Spirit.Feints || t.FeintsM3 <= 0 {
		return stream.Stream{}, nil
	}
	w, err := lot.MassFrac(t.FeintsAt)
	if err != nil {
		return stream.Stream{}, fmt.Errorf("the feints of today: %w", err)
	}
	kg := t.FeintsM3 * fluid.Density(w, lot.GaugeC(b.Gauge)) / float64(max(b.Spirit.Charges, 1))
	return stream.Stream{EthanolKg: kg * w, WaterKg: kg * (1 - w), TempC: tempC}, nil
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

// OwnVolatile says that the house has constants of its own for the congeners. The
// numbers may then run away, which the built-in constants never made them do.
func OwnVolatile(b *recipe.Batch) bool { m := b.Models["congener"]; return m != nil && m.House }

// Followed follows the congeners through a spirit run; none without a model.
func Followed(b *recipe.Batch, run still.Run) ([]still.Congener, error) {
	volatile, err := Volatile(b)
	if err != nil || b.Models["congener"] == nil {
		return nil, err
	}
	all := still.Congeners(run, volatile)
	return all, ended(Following, nil, all)
}

// BoilsAhead begins what the runs of a batch need and no stage before them changes.
func BoilsAhead(memo *Memo, b *recipe.Batch) {
	if memo != nil && b.Strip.Still != nil && b.Spirit.Still != nil {
		still.Ahead(setting(memo, b, b.Strip.Still), setting(memo, b, b.Spirit.Still))
	}
}

// setting is a still in its place.
func setting(memo *Memo, b *recipe.Batch, v *recipe.Vessel) still.Setting {
	p := b.Plant
	return still.Setting{
		Still: *v, PressurePa: PressurePa(b), AmbientC: p.AmbientC, WaterC: b.SupplyC(), BoilerW: p.BoilerW, Boils: memo.boiling(),
	}
}

// spiritInput is one charge of the spirit run, before feints are returned to it.
func spiritInput(memo *Memo, b *recipe.Batch, lowWines stream.Stream) still.SpiritInput {
	s := b.Spirit
	return still.SpiritInput{
		Setting: setting(memo, b, s.Still), LowWines: lowWines.Scale(1 / float64(max(s.Charges, 1))),
		ForeshotsM3: s.ForeshotsM3, GaugeC: lot.GaugeC(b.Gauge),
		HeartsFrom: cutAlone(s.HeartsFrom), HeartsTo: cutAlone(s.HeartsTo), Stop: s.Stop, WaterTo: s.WaterTo, Pace: s.Pace,
	}
}

func cutAlone(c recipe.Cut) recipe.Cut {
	c.At = diag.Span{}
	return c
}
