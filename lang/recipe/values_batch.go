package recipe

import (
	"slices"
	"strconv"

	"newmake/lang/diag"
	"newmake/lang/quantity"
)

// batchRows are the values of a batch that stand once.
var batchRows = []row[Batch]{
	{Row{Path: PathAt, Name: "plant", Idle: true}, func(b *Batch) []Cell {
		if b.Plant == nil {
			return nil
		}
		return cells(datum(&b.Plant.Name).apart())
	}},
	{Row{Path: PathUnits, Name: "gauged"}, func(b *Batch) []Cell { return cells(datum(&b.Gauge)) }},
	{Row{Path: PathStart}, func(b *Batch) []Cell { return cells(datum(&b.Start)) }},
	{Row{Path: PathFeints, Name: "feints in the house"}, func(b *Batch) []Cell {
		return cells(datum(&b.Today.FeintsSaid).apart(), volume(&b.Today.FeintsM3).apart(), datum(&b.Today.FeintsAt))
	}},
	{Row{Path: PathNoKept, Name: "kept water in the house"}, func(b *Batch) []Cell { return cells(datum(&b.Today.NoKept).apart()) }},
	{Row{Path: PathNoPotAle, Name: "hot pot ale in the house"}, func(b *Batch) []Cell { return cells(datum(&b.Today.NoPotAle).apart()) }},
	{Row{Path: PathNoBackset, Name: "backset in the house"}, func(b *Batch) []Cell { return cells(datum(&b.Today.NoBackset).apart()) }},
	{Row{Path: PathStandard}, func(b *Batch) []Cell { return cells(datum(&b.Standard)) }},

	{Row{Path: PathBill, As: "all the grain, same liquor", Grows: true}, func(b *Batch) []Cell {
		out := cells(mass(&b.Bill.TotalKg).apart())
		for i := range b.Bill.Lines {
			out = append(out, mass(&b.Bill.Lines[i].MassKg).apart())
		}
		return out
	}},

	{Row{Path: PathMash, Name: "cooker"}, func(b *Batch) []Cell { return cells(datum(&b.Mash.Cooker)) }},
	{Row{Path: PathBacksetPH, Name: "backset pH", As: "pH of the backset", Maybe: true, Beside: PathBackset}, func(b *Batch) []Cell { return cells(number(&b.Mash.BacksetPH)) }},
	{Row{Path: PathBacksetSolids, Name: "backset solids"}, func(b *Batch) []Cell { return cells(number(&b.Mash.BacksetSolidsFrac)) }},

	{Row{Path: PathAcid, Name: "kind of acid"}, func(b *Batch) []Cell { return cells(datum(&b.Mash.Treatment.Acid)) }},
	{Row{Path: PathAcid, Name: "acid", Vary: true, Maybe: true, Grows: true}, func(b *Batch) []Cell { return cells(number(&b.Mash.Treatment.AcidM3).from("volume")) }},
	{Row{Path: PathAcid, Name: "pH by acid", Vary: true, Maybe: true}, func(b *Batch) []Cell { return cells(number(&b.Mash.Treatment.AcidToPH).from("ph")) }},
	{Row{Path: PathGypsum, Vary: true, Maybe: true, Grows: true}, func(b *Batch) []Cell { return cells(number(&b.Mash.Treatment.GypsumKg)) }},
	{Row{Path: PathLime, Vary: true, Maybe: true, Grows: true}, func(b *Batch) []Cell { return cells(number(&b.Mash.Treatment.LimeKg)) }},

	{Row{Path: PathNutrient, Grows: true}, func(b *Batch) []Cell {
		return cells(number(&b.Ferm.Nutrient.MassKg).from("mass"), number(&b.Ferm.Nutrient.KgM3).from("conc"))
	}},
	{Row{Path: PathAntifoam, Grows: true}, func(b *Batch) []Cell { return cells(number(&b.Ferm.AntifoamM3)) }},
	{Row{Path: PathRehydrate, Name: "water for the yeast", Grows: true}, func(b *Batch) []Cell {
		return cells(number(&b.Ferm.Rehydrate.VolumeM3).from("volume"), number(&b.Ferm.Rehydrate.TempC).from("temp"), number(&b.Ferm.Rehydrate.DurationS).from("duration"))
	}},
	{Row{Path: PathFerm, Name: "fermenter"}, func(b *Batch) []Cell { return cells(datum(&b.Ferm.Vessels)) }},
	{Row{Path: PathPitch, Name: "yeast"}, func(b *Batch) []Cell { return cells(datum(&b.Ferm.Yeast)) }},
	{Row{Path: PathPitch, Name: "pitch", As: "yeast pitched", Grows: true}, func(b *Batch) []Cell { return cells(mass(&b.Ferm.PitchKg).apart(), conc(&b.Ferm.PitchKgM3).apart()) }},
	{Row{Path: PathPitch, Name: "pitched as it fills"}, func(b *Batch) []Cell { return cells(datum(&b.Ferm.AsItFills).apart()) }},
	{Row{Path: PathHold, Name: "hold", Vary: true, Maybe: true}, func(b *Batch) []Cell {
		return cells(number(&b.Ferm.HoldLowC), number(&b.Ferm.HoldHighC))
	}},
	{Row{Path: PathFermentFor, Name: "ferment", As: "time of the ferment"}, func(b *Batch) []Cell { return cells(number(&b.Ferm.DurationS)) }},

	{Row{Path: PathStrip, Name: "wash still"}, func(b *Batch) []Cell { return cells(datum(&b.Strip.Still)) }},
	{Row{Path: PathStripCharges, Name: "stripping run", Counts: "charge"}, func(b *Batch) []Cell { return cells(datum(&b.Strip.Charges).apart()) }},
	{Row{Path: PathHeatUp, Name: "heat-up of the wash", Vary: true, Maybe: true}, func(b *Batch) []Cell { return cells(datum(&b.Strip.HeatUp)) }},
	{Row{Path: PathStripStop, Name: "stripping run's stop", As: "stripping run to"}, func(b *Batch) []Cell { return cells(datum(&b.Strip.StopAt)) }},
	{Row{Path: PathStripPace, Name: "pace of the stripping run", Vary: true, Maybe: true}, func(b *Batch) []Cell { return cells(datum(&b.Strip.Pace)) }},

	{Row{Path: PathSpirit, Name: "spirit still"}, func(b *Batch) []Cell { return cells(datum(&b.Spirit.Still)) }},
	{Row{Path: PathCharge}, func(b *Batch) []Cell { return cells(datum(&b.Spirit.Feints).apart(), datum(&b.Spirit.WaterTo)) }},
	{Row{Path: PathSpiritCharges, Name: "spirit run", Counts: "charge"}, func(b *Batch) []Cell { return cells(datum(&b.Spirit.Charges).apart()) }},
	{Row{Path: PathForeshots, Vary: true, Grows: true}, func(b *Batch) []Cell { return cells(number(&b.Spirit.ForeshotsM3)) }},
	{Row{Path: PathHeartsFrom, Name: "hearts from", Vary: true, Grows: true}, func(b *Batch) []Cell { return cells(datum(&b.Spirit.HeartsFrom)) }},
	{Row{Path: PathHeartsTo, Name: "hearts to", Vary: true, Grows: true}, func(b *Batch) []Cell { return cells(datum(&b.Spirit.HeartsTo)) }},
	{Row{Path: PathPaceForeshots, Name: "pace of the foreshots", Vary: true, Maybe: true}, func(b *Batch) []Cell { return cells(datum(&b.Spirit.Pace.Foreshots)) }},
	{Row{Path: PathPaceHeads, Name: "pace of the heads", Vary: true, Maybe: true}, func(b *Batch) []Cell { return cells(datum(&b.Spirit.Pace.Heads)) }},
	{Row{Path: PathPaceHearts, Name: "pace of the hearts", Vary: true, Maybe: true}, func(b *Batch) []Cell { return cells(datum(&b.Spirit.Pace.Hearts)) }},
	{Row{Path: PathPaceTails, Name: "pace of the tails", Vary: true, Maybe: true}, func(b *Batch) []Cell { return cells(datum(&b.Spirit.Pace.Tails)) }},
	{Row{Path: PathSpiritStop, Name: "spirit run's stop", As: "spirit run to"}, func(b *Batch) []Cell { return cells(datum(&b.Spirit.Stop)) }},

	{Row{Path: PathEntry, As: "entry at"}, func(b *Batch) []Cell { return cells(datum(&b.Cask.Entry)) }},
	{Row{Path: PathFill, Name: "cask", As: "size of the cask"}, func(b *Batch) []Cell {
		return cells(number(&b.Cask.SizeM3).from("volume"), datum(&b.Cask.New).apart(), datum(&b.Cask.Kind), datum(&b.Cask.Char).apart())
	}},
	{Row{Path: PathTare, Name: "tare of the cask"}, func(b *Batch) []Cell { return cells(number(&b.Cask.TareKg)) }},
	{Row{Path: PathRest, Name: "rest in wood", Vary: true}, func(b *Batch) []Cell { return cells(number(&b.Cask.RestS)) }},
	{Row{Path: PathBottle}, func(b *Batch) []Cell { return cells(volume(&b.Cask.BottleM3).apart(), datum(&b.Cask.BottleAt)) }},
	{Row{Path: PathBottleAt, As: "bottled at", Maybe: true, Part: true}, func(b *Batch) []Cell { return cells(datum(&b.Cask.BottleAt)) }},
	{Row{Path: PathClimate}, func(b *Batch) []Cell { return cells(datum(&b.Cask.Climate)) }},
	{Row{Path: PathLossFirst, As: lossFirstYear, Maybe: true, Part: true}, func(b *Batch) []Cell { return cells(share(&b.Cask.Climate.LossFirstYear)) }},
	{Row{Path: PathLoss, As: lossYearly, Maybe: true, Part: true}, func(b *Batch) []Cell { return cells(share(&b.Cask.Climate.LossYearly)) }},
}

// billRows are the values of a line of the bill. Its share is worked out of the
// weights, see Resolve.
var billRows = []row[BillLine]{
	{Row{Name: "weight", As: "share", Part: true}, func(l *BillLine) []Cell { return cells(mass(&l.MassKg)) }},
}

// stepRows are the values of a step of the mash. Which of them it has goes by
// what it does.
var stepRows = []row[MashStep]{
	{Row{Path: PathOf("volume"), Grows: true}, func(s *MashStep) []Cell { return cells(volume(&s.VolumeM3)) }},
	{Row{Path: PathOf("share"), Maybe: true}, func(s *MashStep) []Cell {
		if s.Verb == MashDose {
			return cells(dosed(&s.Share))
		}
		return cells(share(&s.Share))
	}},
	{Row{Path: PathOf("enzyme")}, func(s *MashStep) []Cell { return cells(datum(&s.Enzyme)) }},
	{Row{Path: PathOf("mass"), Grows: true}, func(s *MashStep) []Cell { return cells(mass(&s.MassKg)) }},
	{Row{Path: PathOf("to")}, func(s *MashStep) []Cell { return cells(temperature(&s.TempC)) }},
	{Row{Path: PathOf("for")}, func(s *MashStep) []Cell { return cells(duration(&s.DurationS)) }},
	{Row{Path: PathOf("kept"), Maybe: true, Grows: true}, func(s *MashStep) []Cell { return cells(volume(&s.KeptM3)) }},
	{Row{Path: PathOf("cooled"), Maybe: true}, func(s *MashStep) []Cell { return cells(temperature(&s.CooledC)) }},
	{Row{Path: PathOf("next-mash")}, func(s *MashStep) []Cell { return cells(datum(&s.NextMash)) }},
}

// Values are those of a step.
func (s *MashStep) Values() []Value {
	v := &values{}
	gather(v, owner{path: s.Path, where: func(Path) diag.Span { return s.At }}, nil, stepRows, s)
	return v.out
}

// doseRows are the values of an enzyme in the fermenter.
var doseRows = []row[Dose]{
	{Row{Name: "amount", As: "dose", Grows: true}, func(d *Dose) []Cell { return cells(mass(&d.MassKg), dosed(&d.Share)) }},
}

// Values are those of a dose.
func (d *Dose) Values() []Value {
	v := &values{}
	gather(v, owner{path: PathDose.Child(d.Enzyme.Name), name: d.Enzyme.Name, of: d.Enzyme.Name, where: func(Path) diag.Span { return d.At }}, nil, doseRows, d)
	return v.out
}

// promiseRows are the values of a promise.
var promiseRows = []row[Promise]{
	{Row{Name: "promise", Idle: true}, func(e *Promise) []Cell {
		return cells(datum(&e.What), datum(&e.Kind), datum(&e.Unit), datum(&e.Value), datum(&e.Strength), datum(&e.Tolerance), datum(&e.OfRuns), datum(&e.InRuns))
	}},
}

// lists gathers the values of what a batch has several of.
func (v *values) lists() {
	b := v.batch
	at := func(at diag.Span) func(Path) diag.Span { return func(Path) diag.Span { return at } }
	for i := range b.Bill.Lines {
		l := &b.Bill.Lines[i]
		gather(v, owner{path: PathBill.Child(l.Grain.Name), name: l.Grain.Name, of: l.Grain.Name, where: at(l.At)}, nil, billRows, l)
		if v.beside == nil || !slices.ContainsFunc(v.beside.Bill.Lines, func(x BillLine) bool { return x.Grain == l.Grain }) {
			gather(v, l.Grain.owner("grain", l.Grain.Name), grainKinds, grainRows, l.Grain)
		}
	}
	for i := range b.Mash.Steps {
		v.out = append(v.out, b.Mash.Steps[i].Values()...)
	}
	for i := range b.Ferm.Doses {
		v.out = append(v.out, b.Ferm.Doses[i].Values()...)
	}
	for i := range b.Promises {
		e := &b.Promises[i]
		gather(v, owner{path: PathPromise.Child(strconv.Itoa(i + 1)), where: at(e.At)}, nil, promiseRows, e)
	}
}

// Scale is a batch f times as large: all that is an amount, as it is written.
// Shares, strengths, temperatures, times and vessels stay.
func (b *Batch) Scale(f float64) *Batch {
	out := b.Clone()
	for _, v := range out.Values() {
		if !v.Grows {
			continue
		}
		for _, c := range v.Cells {
			switch x := c.Is().(type) {
			case float64:
				if c.Kind == quantity.Mass || c.Kind == quantity.Volume {
					c.Set(x * f)
				}
			case Cut:
				x.VolumeM3 *= f
				c.Set(x)
			}
		}
	}
	out.Resolve()
	return out
}
