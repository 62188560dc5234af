package proofing

import (
	"fmt"
	"math"

	"newmake/compile/matter/fluid"
	"newmake/compile/stage/gauge"
	"newmake/lang/diag"
	"newmake/lang/quantity"
	"newmake/lang/wording"
)

// Solids hide proof from the hydrometer; above the limit the regulation has
// spirit distilled before it is proofed (27 CFR 30.31).
const maxSolidsGPerL = 6

// check finds what is missing from a question that was read, and what no
// spirit can be.
func (q Question) check() diag.List {
	var list diag.List
	q.Lot.check(&list)
	q.checkScales(&list)
	for i, s := range q.Steps {
		switch s := s.(type) {
		case reduce:
			strength(&list, s.To)
			if s.Water != nil {
				within(&list, *s.Water, 0, 100, "water")
			}
			if q.Lot.Amount == nil && i == 0 {
				noAmount(&list, q.Lot, "reduce to 114 proof")
			}
		case fill:
			strength(&list, s.To)
			positive(&list, s.Volume)
		case blend:
			s.With.check(&list)
			if s.With.Amount == nil {
				noAmount(&list, s.With, "")
			}
			if q.Lot.Amount == nil && i == 0 {
				noAmount(&list, q.Lot, "blend with 5 gal at 100 proof")
			}
		}
	}
	return list
}

// checkScales asks which scale a reading without a unit is of where the question
// is in litres or C: there both kinds of hydrometer are at hand, and 63.5 may
// stand on either.
func (q Question) checkScales(list *diag.List) {
	if q.system() != quantity.SI {
		return
	}
	readings := []*Value{q.Lot.Reading}
	for _, s := range q.Steps {
		if b, ok := s.(blend); ok {
			readings = append(readings, b.With.Reading)
		}
	}
	for _, r := range readings {
		if r == nil || r.unit() != "" {
			continue
		}
		d := diag.Diagnostic{Code: diag.CodeNoUnit, At: r.Item.At,
			Summary: fmt.Sprintf("is `%s` read in %% vol or in US proof?", r.Item.Num),
			Help:    fmt.Sprintf("write `reading %s %% vol` of an alcoholometer marked in %% vol at 20 C, `reading %s proof` of a US proof hydrometer", r.Item.Num, r.Item.Num)}
		if r.Item.Value > 100 {
			d.Help = fmt.Sprintf("nothing is above 100 %% vol: of a US proof hydrometer write `reading %s proof`", r.Item.Num)
			d.Fix = &diag.Fix{At: r.Item.At, Text: r.Item.Num + " proof", Label: "write the unit"}
		}
		list.Add(d)
	}
}

func noAmount(list *diag.List, l Lot, step string) {
	help := "write the amount first, as in " + wording.Example(l.At, "38 gal at 134.1 proof")
	if step != "" {
		help += ", " + wording.Example(l.At, step)
	}
	list.Add(diag.Diagnostic{Code: diag.CodeMissing, At: l.At, Summary: "how much spirit is there?", Help: help})
}

func (l Lot) check(list *diag.List) {
	switch {
	case l.Strength == nil && l.Reading == nil:
		list.Add(diag.Diagnostic{Code: diag.CodeMissing, At: l.At, Summary: "how strong is the spirit?",
			Help: howStrong(l.At.Units())})
	case l.Strength != nil && l.Reading != nil:
		list.Add(diag.Diagnostic{Code: diag.CodeTwice, At: l.Reading.Item.At, Summary: "a lot has its true strength or a reading, not both",
			Related: []diag.Related{{At: l.Strength.Item.At, Text: "the true strength stands here"}},
			Help:    "take one of them out: a reading is what the hydrometer shows, before it is corrected for temperature"})
	case l.Strength != nil:
		strength(list, *l.Strength)
		for _, v := range []*Value{l.Hydrometer, l.Thermometer, l.Solids} {
			if v != nil {
				list.Add(diag.Diagnostic{Code: diag.CodeShape, At: v.Item.At, Summary: "this corrects a reading, and a true strength is given",
					Help: "write what the hydrometer shows, as in " + wording.Example(v.Item.At, "reading 78.4 proof at 60 F, solids 5 g/L")})
			}
		}
	case l.Temp == nil:
		list.Add(diag.Diagnostic{Code: diag.CodeMissing, At: l.Reading.Item.At, Summary: "a reading needs the temperature at which it was taken",
			Help: howWarm(l.Reading)})
	default:
		l.checkReading(list)
	}
	if l.Amount != nil {
		positive(list, *l.Amount)
	}
	if l.Temp != nil && l.Reading == nil {
		high := 40.0 // of OIML R 22
		if l.Temp.unit() == "F" {
			high = fluid.FahrenheitToC(gauge.Table7MaxF)
		}
		within(list, *l.Temp, fluid.FahrenheitToC(gauge.Table7MinF), high, "spirit")
	}
}

// howStrong says how a strength is written by whoever counts in a system.
func howStrong(reader quantity.System) string {
	if reader == quantity.SI {
		return "write its true strength at 20 C, `at 67 % vol`, or what the alcoholometer shows, `reading 68.2 % vol at 18 C`"
	}
	return "write its true strength, `at 134.1 proof` or `at 67 % abv`, or what the hydrometer shows, `reading 136 at 66 F`"
}

// howWarm says how a reading is written that has no temperature.
func howWarm(r *Value) string {
	num := r.Item.Num
	if r.Item.At.Units() == quantity.SI {
		return fmt.Sprintf("write `reading %s %% vol at 18 C`; if it is the true strength, write `%s %% vol`", num, num)
	}
	return fmt.Sprintf("write `reading %s at 66 F`; if it is the true proof, write `%s proof`", num, num)
}

func (l Lot) checkReading(list *diag.List) {
	r := *l.Reading
	switch {
	case r.unit() == "% abw":
		list.Add(diag.Diagnostic{Code: diag.CodeWrongKind, At: r.Item.UnitAt(), Summary: "hydrometers are marked in proof or by volume",
			Help: "write the reading as " + wording.Example(r.Item.At, "134 proof") + ", by volume"})
	case r.unit() == "% abv":
		strength(list, r)
		within(list, *l.Temp, -20, 40, "spirit")
	case !(r.Item.Value >= 0 && r.Item.Value <= 206):
		list.Add(diag.Diagnostic{Code: diag.CodeOutOfRange, At: r.Item.At, Summary: "a proof hydrometer is marked from 0 to 206", Help: "read it again"})
	default:
		within(list, *l.Temp, fluid.FahrenheitToC(gauge.Table1MinF), fluid.FahrenheitToC(gauge.Table1MaxF), "spirit")
	}
	l.checkCorrections(list)
	switch s := l.Solids; {
	case s != nil && !(s.SI >= 0):
		list.Add(diag.Diagnostic{Code: diag.CodeOutOfRange, At: s.Item.At, Summary: "there is no less than nothing of solids", Help: "write what the residue weighed, from 0 g/L on"})
	case s != nil && !(s.SI <= maxSolidsGPerL):
		list.Add(diag.Diagnostic{Code: diag.CodeOutOfRange, At: s.Item.At, Summary: "the rule for obscuration holds to 6 g/L (600 mg in 100 mL)",
			Help: "distil a sample, make it up to its volume with water, and proof that", Reason: "27 CFR 30.31"})
	}
}

// An instrument that is off by more is broken, or its correction a slip of the pen: those of
// a hydrometer are tenths of a mark, and those of a thermometer tenths of a degree (common
// practice; the bounds are our own).
const (
	mostMarksOff = 5.0
	mostKOff     = 5.0
)

// checkCorrections wants corrections that an instrument in use may have.
func (l Lot) checkCorrections(list *diag.List) {
	if h := l.Hydrometer; h != nil && !(math.Abs(h.Item.Value) <= mostMarksOff) {
		list.Add(diag.Diagnostic{Code: diag.CodeOutOfRange, At: h.Item.At, Summary: "no hydrometer in use is off by more than 5 marks",
			Help: "a correction is small, as in `hydrometer -0.1`; of one that is off by more, take another"})
	}
	if t := l.Thermometer; t != nil && !(math.Abs(t.SI) <= mostKOff) {
		list.Add(diag.Diagnostic{Code: diag.CodeOutOfRange, At: t.Item.At, Summary: "no thermometer in use is off by more than " + wording.Prose("9 F (5 C)", t.Item.At.Units()),
			Help: "a correction is small, as in " + wording.Example(t.Item.At, "thermometer 0.2 F") + "; of one that is off by more, take another"})
	}
}

// strength wants a true strength that spirit can have.
func strength(list *diag.List, v Value) {
	if !(v.SI > 0 && v.SI <= 1) {
		list.Add(diag.Diagnostic{Code: diag.CodeOutOfRange, At: v.Item.At, Summary: "no spirit has this strength",
			Help: "strength is above 0, and at most " + wording.Prose("200 proof (100 % vol)", v.Item.At.Units())})
	}
}

// Below the least amount rounding would eat the answer; above the greatest
// there is no tank.
var amounts = map[quantity.Kind]struct {
	least, most float64 // SI
	say         string
}{
	quantity.Volume:       {0.0001, 1e5, "100 mL to 100,000 m3"},
	quantity.Mass:         {0.1, 1e8, "0.1 kg to 100,000 tonne"},
	quantity.ProofGallons: {0.05, 1e7, "0.05 to 10,000,000 proof gallons"},
	quantity.PureAlcohol:  {0.0001, 2e4, "0.1 to 20,000,000 LPA"},
}

// positive wants an amount that can be gauged.
func positive(list *diag.List, v Value) {
	of := amounts[v.Kind]
	switch {
	case !(v.SI > 0):
		list.Add(diag.Diagnostic{Code: diag.CodeOutOfRange, At: v.Item.At, Summary: "there is nothing of it", Help: "an amount is above 0"})
	case v.SI < of.least*(1-1e-9) || v.SI > of.most:
		list.Add(diag.Diagnostic{Code: diag.CodeOutOfRange, At: v.Item.At, Summary: "this amount cannot be gauged here", Help: "amounts run from " + of.say})
	}
}

// within wants a temperature inside the tables.
func within(list *diag.List, v Value, lowC, highC float64, of string) {
	if v.SI >= lowC-1e-9 && v.SI <= highC+1e-9 {
		return
	}
	low, high, unit := lowC, highC, "C"
	if v.unit() == "F" {
		low, high, unit = quantity.TempC(lowC).F(), quantity.TempC(highC).F(), "F"
	}
	list.Add(diag.Diagnostic{Code: diag.CodeOutOfRange, At: v.Item.At,
		Summary: fmt.Sprintf("%s of %s is outside the tables, which run from %.4g to %.4g %s", of, v.Item.Num+" "+v.Item.Unit, low, high, unit),
		Help:    "bring it nearer the temperature of the tables, " + wording.Prose("60 F (20 C)", v.Item.At.Units()) + ", and measure again"})
}
