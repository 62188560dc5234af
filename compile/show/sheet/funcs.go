package sheet

import (
	"html/template"
	"math"
	"strings"

	"newmake/compile/measure"
	"newmake/compile/plan"
	"newmake/lang/record"
	"newmake/lang/words"
)

// funcs are what the templates say numbers with, in the reader's units.
func funcs(u measure.Units, p *plan.Plan) template.FuncMap {
	return template.FuncMap{
		"staleWords": func() string { return "The text has errors since: this is the last good sheet." },
		"us":         func() bool { return u == measure.US },
		"mass":       u.Mass,
		"litres":     u.Litres,
		"volume":     u.Volume,
		"temp":       u.Temp,
		"tempdiff":   u.TempDiff, "length": u.Length, "abv": u.Abv, "power": u.Power,
		"lotabv": u.LotAbv, "spout": u.StrengthAbv,
		"strength":  u.Strength,
		"said":      u.Quantity,
		"off":       func(q plan.Quantity) string { return strings.Replace(u.Tolerance(q), "+/-", "±", 1) },
		"phrase":    u.Phrase,
		"jug":       u.JugPhrase,
		"liquor":    u.LiquorToGrist,
		"should":    func(q plan.Quantity) string { return should(u, q) },
		"bare":      func(c cell) string { return bare(u, c) },
		"other":     func(c cell) string { return other(u, c) },
		"offBare":   func(c cell) string { return offBare(u, c) },
		"unit":      func(q plan.Quantity) string { return unit(u, q) },
		"tempunit":  func() string { _, w := u.Value(plan.Of(0, plan.Celsius)); return w },
		"needsTemp": needsTemp,
		"degrees": func(c float64) string {
			v, _ := u.Value(plan.Of(c, plan.Celsius))
			return measure.Number(v, tempPlaces(v))
		},
		"shown":  func(s plan.Shown) string { return shown(u, s) },
		"gauged": func(s plan.Strength) string { return gauged(u, s) },
		"gaugeTemp": func() string {
			if u == measure.US {
				return "60 F"
			}
			return "20 C"
		},
		"num":         measure.Number,
		"gravity":     measure.Gravity,
		"duration":    measure.Duration,
		"hours":       measure.Hours,
		"months":      func(m float64) string { return measure.Years(m / 12) },
		"clock":       clockRange,
		"hm":          measure.Clock,
		"date":        measure.LongDate,
		"short":       func(s string) string { return plan.Moment(s).Format("2 Jan") },
		"caution":     func(key string) plan.Caution { return caution(p, key) },
		"stepAt":      func(id string) string { return stepAt(p, id) },
		"weekday":     func(s string) string { return plan.Moment(s).Format("Mon 2 Jan") },
		"count":       words.Count,
		"quote":       quote,
		"minutes":     func(h float64) float64 { return h * 60 },
		"millilitres": func(l float64) float64 { return l * 1000 },
		"times":       func(n int) []struct{} { return make([]struct{}, n) },
		"plus":        func(a, b int) int { return a + b },
	}
}

// clockRange is how long a step goes on.
func clockRange(s plan.Step) string {
	if s.DurationMin == 0 {
		return "at once"
	}
	return measure.Duration(s.DurationMin)
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

func caution(p *plan.Plan, key string) plan.Caution {
	for _, c := range p.Cautions {
		if c.Key == key {
			return c
		}
	}
	return plan.Caution{Key: key, Title: key}
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

// unit stands small in a blank, so that nobody wonders what was meant.
func unit(u measure.Units, q plan.Quantity) string {
	_, word := u.Value(q)
	return word
}

// needsTemp says if a reading means nothing without the temperature at which it
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
