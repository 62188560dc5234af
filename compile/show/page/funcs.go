package page

import (
	"encoding/json"
	"math"
	"strconv"
	"strings"
	"time"

	"newmake/compile/ask/compare"
	"newmake/compile/ask/review"
	"newmake/compile/measure"
	"newmake/compile/plan"
	"newmake/compile/show/chart"
	"newmake/lang/diag"
	"newmake/lang/words"
)

// says is what the template says numbers with, in the reader's units: num there is Num
// here.
type says struct{ measure.Units }

func (s says) Said(q plan.Quantity) string                     { return s.Quantity(q) }
func (s says) LotAbv(l plan.Lot) string                        { return s.Units.LotAbv(l) }
func (s says) Trade(text string) string                        { return s.Words(text) }
func (s says) Off(q plan.Quantity) string                      { return strings.Replace(s.Tolerance(q), "+/-", "±", 1) }
func (s says) Id(key string) string                            { return id(key) }
func (s says) Hm(at string) string                             { return measure.Clock(at) }
func (s says) Date(at string) string                           { return measure.LongDate(at) }
func (s says) Duration(min float64) string                     { return measure.Duration(min) }
func (s says) Float(v float64) string                          { return strconv.FormatFloat(v, 'f', -1, 64) }
func (s says) Count(n int, word string) string                 { return words.Count(n, word) }
func (s says) Safe(text string) string                         { return diag.Safe(text) }
func (s says) Touch(all []chart.Touch) string                  { return touch(all) }
func (s says) Outcome(o compare.Outcome) string                { return outcome(o) }
func (s says) Changed(c *compare.Comparison) []compare.Outcome { return c.Changed() }
func (s says) At(t time.Time) string                           { return t.Format(time.RFC3339) }
func (s says) ClockOf(t time.Time) string                      { return t.Format("Mon 15:04") }
func (s says) Clock(t time.Time) string                        { return t.Format("15:04") }
func (s says) Give(sdS float64) string                         { return measure.Duration(math.Max(1, math.Round(sdS/60))) }
func (s says) Hearts(a *review.Ahead) string                   { return hearts(a, s.Units) }
func (s says) Pure(l plan.Lot) string                          { return pure(l, s.Units) }

func (s says) TempUnit() string {
	_, w := s.Value(plan.Of(0, plan.Celsius))
	return w
}

// touch is what a picture's curves say, for the script.
func touch(all []chart.Touch) string {
	text, err := json.Marshal(all)
	if err != nil { // a number that is none: the picture stands, and is not to be touched
		return "[]"
	}
	return string(text)
}

// pure is the alcohol in a lot as it is taxed, or as it is pure.
func pure(l plan.Lot, u measure.Units) string {
	if u == measure.US {
		return measure.Number(l.ProofGallons, 1) + " proof gallons"
	}
	return measure.Number(l.PureL, 1) + " L of pure alcohol"
}

func hearts(a *review.Ahead, u measure.Units) string {
	v, more, unit := a.HeartsLPA, a.SD, "L of pure alcohol"
	if u == measure.US && v > 0 {
		more *= a.HeartsPG / v
		v, unit = a.HeartsPG, "proof gallons"
	}
	return measure.Number(v, 1) + " " + unit + ", give or take " + measure.Number(more, 1)
}

// outcome is a number before and after.
func outcome(o compare.Outcome) string {
	unit := ""
	if o.Unit != "" {
		unit = " " + o.Unit
	}
	return measure.Number(o.Old, o.Places) + " to " + measure.Number(o.New, o.Places) + unit
}

// id makes a key fit for an element's own: there is no space in it.
func id(key string) string { return strings.Join(strings.Fields(key), "_") }
