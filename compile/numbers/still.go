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

// Strip is the stripping run: the wash in equal charges, but where a record says otherwise.
type Strip struct {
	still.Run             // one charge
	Apart     []still.Run // each charge, where they were not alike; else nil
	Charges   int
	First     *still.Run     // the first charge, where it goes in cold and the others do not
	Preheat   *still.Preheat // of the charges that the pot ale before them heats; nil: none is
	Idle      bool           // there is a preheater, and no pot ale for it
	LowWines  stream.Stream  // of all charges
}

// ChargeRun is the run of charge i, from 0.
func (s Strip) ChargeRun(i int) still.Run {
	switch {
	case s.Apart != nil:
		return s.Apart[i]
	case i == 0 && s.First != nil:
		return *s.First
	}
	return s.Run
}

// PotAle is what stays of all charges.
func (s Strip) PotAle() stream.Stream {
	if s.Apart != nil {
		return together(s.Apart, func(r still.Run) stream.Stream { return r.Residue })
	}
	all := s.Residue.Scale(float64(s.Charges))
	if s.First != nil {
		all = all.Plus(s.First.Residue).Minus(s.Residue)
	}
	return all
}

// together is what comes of charges that were not alike.
func together(runs []still.Run, of func(still.Run) stream.Stream) stream.Stream {
	all := of(runs[0])
	for _, r := range runs[1:] {
		all = all.Plus(of(r))
	}
	return all
}

// Sum adds up what each charge gives.
func (s Strip) Sum(of func(still.Run) float64) float64 {
	if s.Apart != nil {
		sum := 0.0
		for _, r := range s.Apart {
			sum += of(r)
		}
		return sum
	}
	sum := float64(s.Charges) * of(s.Run)
	if s.First != nil {
		sum += of(*s.First) - of(s.Run)
	}
	return sum
}

// Spirit is the spirit run. If feints return it is the steady state, unless the
// house says what feints it has today.
type Spirit struct {
	still.Run             // one charge
	Apart     []still.Run // each charge, where they were not alike; else nil
	Charges   int
	Returned  stream.Stream // feints in that charge
	Water     stream.Stream // that brought it to its strength
	Hearts    stream.Stream // of all charges
	Tried     int           // runs until it repeated itself; 0 where it need not
}

// ChargeRun is the run of charge i, from 0.
func (s Spirit) ChargeRun(i int) still.Run {
	if s.Apart != nil {
		return s.Apart[i]
	}
	return s.Run
}

// Sum adds up what each charge gives.
func (s Spirit) Sum(of func(still.Run) stream.Stream) stream.Stream {
	if s.Apart != nil {
		return together(s.Apart, of)
	}
	return of(s.Run).Scale(float64(s.Charges))
}

// Stripped runs the wash still.
func Stripped(memo *Memo, b *recipe.Batch, wash stream.Stream) (Strip, error) {
	s := Strip{Charges: max(b.Strip.Charges, 1)}
	n := float64(s.Charges)
	var err error
	in := still.StripInput{Setting: setting(memo, b, b.Strip.Still), Wash: wash.Scale(1 / n), Stop: b.Strip.StopAt, Pace: b.Strip.Pace}
	in.HeatUp = b.Strip.HeatUp
	warm := in
	if s.Run, err = memo.strip(in); err == nil && in.Still.Preheater.AreaM2 > 0 {
		warm, err = s.preheat(memo, b, in)
	}
	if err == nil && b.Strip.Apart != nil {
		s.Apart, err = strippedApart(memo, b, in, warm, s.First != nil)
	}
	s.LowWines = s.Fraction(still.LowWines).Scale(n)
	switch {
	case s.Apart != nil:
		s.LowWines = together(s.Apart, func(r still.Run) stream.Stream { return r.Fraction(still.LowWines).Stream })
	case s.First != nil:
		s.LowWines = s.LowWines.Plus(s.First.Fraction(still.LowWines).Stream).Minus(s.Fraction(still.LowWines).Stream)
	}
	return s, ended(Stripping, err, &s)
}

// preheatRounds is how often a charge is run for the pot ale of the one before to be
// its own. With live steam a warm charge condenses less, and leaves less.
const preheatRounds = 3

// preheat runs the charges that the pot ale of the one before heats, of those that
// are run cold. Where no pot ale is kept hot from batch to batch, or there is none
// yet, the first of them stays cold. It gives the input of one that was warmed.
func (s *Strip) preheat(memo *Memo, b *recipe.Batch, in still.StripInput) (warm still.StripInput, err error) {
	cold, of := s.Run, in.Still.Preheater
	first := of.PotAleC == 0 || b.Today.NoPotAle
	warm = in
	if s.Idle = first && s.Charges == 1; s.Idle {
		return warm, nil
	}
	rounds := 1
	if in.Still.HeatedBy == recipe.Direct {
		rounds = preheatRounds
	}
	var p still.Preheat
	for range rounds {
		ale := s.Residue
		if of.PotAleC > 0 {
			ale.TempC = min(ale.TempC, of.PotAleC)
		}
		p = still.Preheated(still.PreheatInput{Wash: cold.Charge, PotAle: ale, Preheater: of, LastsS: max(cold.ChargeM3/Rates(b).PumpM3S, of.OverS)})
		warm.Wash.TempC, warm.WarmedK = p.ToC, p.ToC-p.FromC
		if s.Run, err = memo.strip(warm); err != nil {
			return warm, err
		}
	}
	p.SavedJ, p.SavedS, p.Charges = cold.HeatJ-s.HeatJ, cold.HeatUpS-s.HeatUpS, s.Charges
	if first {
		s.First = &cold
		p.Charges--
	}
	s.Preheat = &p
	return warm, nil
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
	if err == nil && b.Spirit.Apart != nil {
		if s.Tried > 0 && s.Returned.MassKg() > 0 {
			in.Feints = s.Returned
		}
		s.Apart, err = distilledApart(memo, b, in)
	}
	s.Hearts = s.Sum(func(r still.Run) stream.Stream { return r.Fraction(still.Hearts).Stream })
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

// OwnVolatile reports whether the house has constants of its own for the congeners. The
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
