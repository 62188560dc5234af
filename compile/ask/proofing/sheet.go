package proofing

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"newmake/compile/matter/fluid"
	"newmake/compile/measure"
	"newmake/compile/stage/gauge"
	"newmake/lang/diag"
	"newmake/lang/quantity"
)

// Units is the system in which a question is worked.
type Units = measure.Units

// Solve works a question in a system of units. The list says what cannot be
// done with the spirit there is.
func Solve(q Question, u Units) (Answer, diag.List) {
	s := &sheet{a: Answer{Format: Format, Version: Version, Question: q.Source.Line(1), Units: "us",
		Working: []Work{}, Results: []Result{}, Notes: []string{}, Cautions: cautions},
		usualC: referenceC, usual: "20 C"}
	if q.OwnUnits() == measure.US {
		s.usualC, s.usual = fluid.SixtyF, "60 F"
	}
	if u == measure.SI {
		s.a.Units = "si"
		(&metric{sheet: s}).work(q)
	} else {
		(&customary{sheet: s}).work(q)
	}
	return s.a, s.diags
}

// OwnUnits is the system in which a question was asked.
func (q Question) OwnUnits() Units {
	if q.system() == quantity.SI {
		return measure.SI
	}
	return measure.US
}

var cautions = []string{
	"Spirit vapour burns, and in a closed space it explodes: no flame or spark, earth the vessels, air the room, and follow your local code.",
}

// sheet gathers the working and what comes of it.
type sheet struct {
	a     Answer
	diags diag.List

	// The temperature of spirit and water of which none is given: that of the
	// units in which the question is put, whatever those of the answer.
	usualC float64
	usual  string
}

// assume says that no temperature is given.
func (s *sheet) assume() {
	s.note("No temperature is given: spirit and water are taken to be at " + s.usual + ".")
}

// trueOrRead says of a lot with a temperature whether its strength was taken for true or for
// what a hydrometer showed: one may be meant where the other is written.
func (s *sheet) trueOrRead(l Lot) {
	if l.Temp == nil {
		return
	}
	at := l.Temp.Item.Num + " " + l.Temp.Item.Unit
	if l.Reading != nil {
		s.note(strings.TrimSpace(l.Reading.Item.Num+" "+l.Reading.Item.Unit) + " at " + at + " is taken for what the hydrometer shows: the true strength is worked out from it.")
		return
	}
	is := l.Strength.Item.Num + " " + l.Strength.Item.Unit
	s.note(is + " is taken for the true strength: the " + at + " are those of the volume. What a hydrometer shows at " + at + " is written `reading " + is + " at " + at + "`.")
}

func (s *sheet) step(title, source string, lines ...string) {
	s.a.Working = append(s.a.Working, Work{title, source, lines})
}

// result keeps a result; one of the same name from an earlier step goes.
func (s *sheet) result(name, label string, value float64, places int, unit string) {
	s.a.Results = slices.DeleteFunc(s.a.Results, func(r Result) bool { return r.Name == name })
	s.a.Results = append(s.a.Results, Result{name, label, gauge.Places(value, places), unit, places})
}

// counted keeps an amount as it is recorded: to a tenth (27 CFR 30.64), or to a
// thousandth of a sample below one, of which a tenth would say nothing.
func (s *sheet) counted(name, label string, value float64, unit string) {
	places := 1
	if math.Abs(value) < 1 && value != 0 {
		places = 3
	}
	s.result(name, label, value, places, unit)
}

func (s *sheet) note(text string) {
	if !slices.Contains(s.a.Notes, text) {
		s.a.Notes = append(s.a.Notes, text)
	}
}

func (s *sheet) fail(code diag.Code, at diag.Span, help, format string, args ...any) {
	s.diags.Add(diag.Diagnostic{Code: code, At: at, Summary: fmt.Sprintf(format, args...), Help: help})
}

func (s *sheet) failed() bool { return len(s.diags) > 0 }

// carry rounds an amount to the figures in which it is shown, so that whoever
// goes on from the line with a pencil gets what stands on the next: two
// decimals, three of small amounts.
func carry(x float64) float64 { return gauge.Places(x, carried(x)) }

func carried(x float64) int {
	if math.Abs(x) < 10 {
		return 3
	}
	return 2
}

// say writes a carried amount.
func say(x float64) string { return measure.Number(x, carried(x)) }

// num writes a number to some decimals.
func num(x float64, places int) string { return measure.Number(x, places) }

// exact writes a number as it was given, with no more decimals than it has.
func exact(x float64) string {
	for places := range 6 {
		if gauge.Places(x, places) == x {
			return num(x, places)
		}
	}
	return num(x, 6)
}

// signed writes a correction with its sign and a space, as it stands in a sum.
func signed(x float64) string {
	if x < 0 {
		return "- " + exact(-x)
	}
	return "+ " + exact(x)
}

// drop takes back results that a step has made untrue.
func (s *sheet) drop(names ...string) {
	s.a.Results = slices.DeleteFunc(s.a.Results, func(r Result) bool { return slices.Contains(names, r.Name) })
}
