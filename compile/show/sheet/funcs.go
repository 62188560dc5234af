package sheet

import (
	"math"
	"strings"
	"time"

	"newmake/compile/measure"
	"newmake/compile/plan"
	"newmake/compile/show/markup"
	"newmake/lang/record"
	"newmake/lang/words"
)

// says is what the templates say numbers with, in the reader's units: num there is Num
// here.
type says struct {
	measure.Units
	p *plan.Plan
}

func (s says) StaleWords() string               { return "The text has errors since: this is the last good sheet." }
func (s says) Us() bool                         { return s.Units == measure.US }
func (s says) LotAbv(l plan.Lot) string         { return s.Units.LotAbv(l) }
func (s says) Spout(q plan.Strength) string     { return s.StrengthAbv(q) }
func (s says) Said(q plan.Quantity) string      { return s.Quantity(q) }
func (s says) Off(q plan.Quantity) string       { return strings.Replace(s.Tolerance(q), "+/-", "±", 1) }
func (s says) Jug(p plan.Phrase) string         { return s.JugPhrase(p) }
func (s says) Liquor(lPerKg float64) string     { return s.LiquorToGrist(lPerKg) }
func (s says) Should(q plan.Quantity) string    { return should(s.Units, q) }
func (s says) Bare(c cell) string               { return bare(s.Units, c) }
func (s says) Other(c cell) string              { return other(s.Units, c) }
func (s says) OffBare(c cell) string            { return offBare(s.Units, c) }
func (s says) NeedsTemp(q plan.Quantity) bool   { return needsTemp(q) }
func (s says) Shown(x plan.Shown) string        { return shown(s.Units, x) }
func (s says) Gauged(x plan.Strength) string    { return gauged(s.Units, x) }
func (s says) Num(v float64, places int) string { return measure.Number(v, places) }
func (s says) Gravity(sg float64) string        { return measure.Gravity(sg) }
func (s says) Duration(min float64) string      { return measure.Duration(min) }
func (s says) Hours(h float64) string           { return measure.Hours(h) }
func (s says) Months(m float64) string          { return measure.Years(m / 12) }
func (s says) Years(y float64) string           { return measure.Years(y) }
func (s says) Day(on string) string             { return dayOf(on) }
func (s says) Trade(text string) string         { return s.Words(text) }
func (s says) Hm(at string) string              { return measure.Clock(at) }
func (s says) Date(at string) string            { return measure.LongDate(at) }
func (s says) Short(at string) string           { return plan.Moment(at).Format("2 Jan") }
func (s says) Weekday(at string) string         { return plan.Moment(at).Format("Mon 2 Jan") }
func (s says) StepAt(id string) string          { return stepAt(s.p, id) }
func (s says) Count(n int, word string) string  { return words.Count(n, word) }
func (s says) Quote(texts ...string) markup.CSS { return quote(texts...) }
func (s says) Minutes(h float64) float64        { return h * 60 }
func (s says) Millilitres(l float64) float64    { return l * 1000 }
func (s says) Times(n int) []struct{}           { return make([]struct{}, n) }
func (s says) Plus(a, b int) int                { return a + b }

// dayOf is a day without a clock, as 12 Sep 2026.
func dayOf(on string) string {
	t, err := time.Parse(time.DateOnly, on)
	if err != nil {
		return on
	}
	return t.Format("2 Jan 2006")
}

func (s says) TempUnit() string {
	_, w := s.Value(plan.Of(0, plan.Celsius))
	return w
}

func (s says) Degrees(c float64) string {
	v, _ := s.Value(plan.Of(c, plan.Celsius))
	return measure.Number(v, tempPlaces(v))
}

func (s says) GaugeTemp() string {
	if s.Units == measure.US {
		return "60 F"
	}
	return "20 C"
}

// by is when a reading is due: its own time, or the end of the step.
func by(s plan.Step, r plan.Reading) string {
	if r.At != "" {
		return measure.Clock(r.At)
	}
	return measure.Clock(s.End)
}

func stepAt(p *plan.Plan, id string) string {
	for _, s := range p.Schedule.Steps {
		if s.ID == id {
			return plan.Moment(s.Start).Format("Mon 15:04")
		}
	}
	return ""
}

// should is a reading as its instrument shows it: a spirit's strength in proof
// alone where proof is spoken.
func should(u measure.Units, q plan.Quantity) string {
	if q.Unit == plan.AbvPct && q.Proof != 0 && u == measure.US {
		return measure.Number(q.Proof, 1) + " proof"
	}
	return u.Quantity(q)
}

// bare is the number that a cell should say, without a unit.
func bare(u measure.Units, c cell) string {
	number, _ := saidIn(u, c)
	return number
}

// other is the unit of a cell where it is not what the head of its column says.
func other(u measure.Units, c cell) string {
	if _, unit := saidIn(u, c); unit != c.Unit && unit != string(plan.SG) {
		return unit
	}
	return ""
}

func saidIn(u measure.Units, c cell) (number, unit string) {
	said := should(u, c.Should)
	if c.Jug {
		said = u.Jug(c.Should)
	}
	if c.Reading.Kind == record.PH {
		return strings.TrimPrefix(said, "pH "), ""
	}
	number, unit, _ = strings.Cut(said, " ")
	return number, unit
}

// offBare is what a reading may be off by without its unit, which stands with the value:
// a tolerance, or from a low to a high where one tolerance would not be true of both.
func offBare(u measure.Units, c cell) string {
	if c.Lopsided() {
		number := func(q plan.Quantity) string {
			r := *c.Reading
			r.Should = q
			c.Reading = &r
			said, _ := saidIn(u, c)
			return said
		}
		return number(*c.Low) + "–" + number(*c.High)
	}
	said := strings.TrimPrefix(u.Tolerance(c.Tolerance), "+/- ")
	if number, _, found := strings.Cut(said, " "); found {
		said = number
	}
	return "±" + said
}

// needsTemp reports whether a reading means nothing without the temperature at which it
// was taken.
func needsTemp(q plan.Quantity) bool {
	switch q.Unit {
	case plan.SG, plan.AbvPct:
		return true
	}
	return false
}

func tempPlaces(v float64) int {
	if math.Abs(v-math.Round(v)) < 0.05 {
		return 0
	}
	return 1
}

func shown(u measure.Units, s plan.Shown) string {
	if u == measure.US {
		return measure.Number(s.Proof, 1)
	}
	return measure.Number(s.AbvPct, 1)
}

func gauged(u measure.Units, s plan.Strength) string {
	if u == measure.US {
		return measure.Number(s.Proof, 1)
	}
	return measure.Number(s.AbvPct, 1)
}
