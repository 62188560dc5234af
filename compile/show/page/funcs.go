package page

import (
	"encoding/json"
	"html/template"
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

// funcs are what the template says numbers with, in the reader's units.
func funcs(u measure.Units) template.FuncMap {
	return template.FuncMap{
		"us":     func() bool { return u == measure.US },
		"mass":   u.Mass,
		"volume": u.Volume, "said": u.Quantity, "phrase": u.Phrase, "litres": u.Litres,
		"strength": u.Strength, "lotabv": u.LotAbv, "gravity": measure.Gravity,
		"off":      func(q plan.Quantity) string { return strings.Replace(u.Tolerance(q), "+/-", "±", 1) },
		"id":       id,
		"hm":       measure.Clock,
		"date":     measure.LongDate,
		"duration": measure.Duration,
		"num":      measure.Number,
		"float":    func(v float64) string { return strconv.FormatFloat(v, 'f', -1, 64) },
		"count":    words.Count,
		"safe":     func(s string) string { return diag.Safe(s, false) },
		"touch":    touch,
		"tempunit": func() string { _, w := u.Value(plan.Of(0, plan.Celsius)); return w },
		"outcome":  outcome,
		"changed":  func(c *compare.Comparison) []compare.Outcome { return c.Changed() },
		"at":       func(t time.Time) string { return t.Format(time.RFC3339) },
		"clockOf":  func(t time.Time) string { return t.Format("Mon 15:04") },
		"clock":    func(t time.Time) string { return t.Format("15:04") },
		"give":     func(sdS float64) string { return measure.Duration(math.Max(1, math.Round(sdS/60))) },
		"hearts":   func(a *review.Ahead) string { return hearts(a, u) },
		"pure":     func(l plan.Lot) string { return pure(l, u) },
	}
}

// touch is what a picture's curves say, for the script.
func touch(c chart.Chart) (string, error) {
	text, err := json.Marshal(c.Touch)
	return string(text), err
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
