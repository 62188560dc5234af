package why

import (
	"math"

	"newmake/compile/measure"
	"newmake/compile/plan"
)

// Number is a number in the reader's units, with the decimals it is shown to.
type Number struct {
	Value  float64 `json:"value"`
	Unit   string  `json:"unit,omitempty"`
	Places int     `json:"places"`
}

// Text shows the number with its unit.
func (n Number) Text() string {
	if n.Unit == "" {
		return measure.Number(n.Value, n.Places)
	}
	return measure.Number(n.Value, n.Places) + " " + n.Unit
}

// shown is the value that the reader sees.
func (n Number) shown() float64 { return plan.RoundTo(n.Value, n.Places) }

// scaled is the shown value as it is reckoned with: a percentage is a share.
func (n Number) scaled() float64 {
	if n.Unit == "%" {
		return n.shown() / 100
	}
	return n.shown()
}

// to gives the number with other places.
func (n Number) to(places int) Number {
	n.Places = places
	return n
}

// Term is one number in a line of working.
type Term struct {
	Op string `json:"op,omitempty"` // "+", "-", "x", "/"; the first has none
	Number
	What  string `json:"what,omitempty"` // "of corn"
	exact bool
}

// Line is one line of working. It is worked from left to right. With a Table
// its result is what that says of its terms, and with Reads it is no working but
// readings along the way.
type Line struct {
	Says   string    `json:"says"`
	Terms  []Term    `json:"terms,omitempty"`
	Table  string    `json:"table,omitempty"`
	Whole  bool      `json:"whole,omitempty"` // of the result the whole number alone counts
	Result *Number   `json:"result,omitempty"`
	Reads  []Reading `json:"reads,omitempty"`

	look func([]float64) float64 // what Table says, of the terms as shown
}

// Reading is a number at a moment or a place.
type Reading struct {
	At string `json:"at"`
	Number
}

// mostMore is how many places more than usual a term is shown to for a line to
// come out as shown.
const mostMore = 3

// work makes a line. The result is what the plan has; the places of terms and
// result are those at which the line comes out: terms get more places first,
// and then the result loses some.
func work(says string, result Number, terms ...Term) Line {
	return (Line{Says: says, Terms: terms, Result: &result}).fit()
}

// whole makes a line that keeps the whole number of n alone. n gets as many
// places as it takes to show on which side of it it lies.
func whole(says string, n Number, result int) Line {
	return (Line{Says: says, Terms: []Term{of(n, "")}, Whole: true, Result: &Number{Value: float64(result)}}).fit()
}

// look makes a line that is read from a table.
func look(says, table string, result Number, f func([]float64) float64, terms ...Term) Line {
	return (Line{Says: says, Terms: terms, Table: table, Result: &result, look: f}).fit()
}

// reads makes a line of readings.
func reads(says string, all ...Reading) Line {
	for i := range all {
		all[i].Value = all[i].shown()
	}
	return Line{Says: says, Reads: all}
}

func (l Line) fit() Line {
	result, terms := *l.Result, l.Terms
	for less := 0; less <= max(result.Places, 0); less++ {
		for more := 0; more <= mostMore; more++ {
			l.Terms = make([]Term, len(terms))
			for i, t := range terms {
				if !t.exact {
					t.Places += more
				}
				l.Terms[i] = t
			}
			r := result.to(result.Places - less)
			l.Result = &r
			if l.comesOut() {
				return l.rounded()
			}
		}
	}
	l.Terms, l.Result = terms, &result
	return l.rounded()
}

// rounded leaves nothing in a line but what is shown.
func (l Line) rounded() Line {
	for i := range l.Terms {
		l.Terms[i].Value = l.Terms[i].shown()
	}
	l.Result.Value = l.Result.shown()
	return l
}

// comesOut reports whether the numbers as shown give the result as shown.
func (l Line) comesOut() bool {
	r := *l.Result
	if math.IsNaN(r.Value) || math.IsInf(r.Value, 0) {
		return false
	}
	return math.Abs(plan.RoundTo(l.worked(), r.Places)-r.shown()) < 0.01*math.Pow10(-r.Places)
}

// worked is what a calculator shows when the numbers as shown are keyed in, in
// the result's unit.
func (l Line) worked() float64 {
	values := make([]float64, len(l.Terms))
	x := 0.0
	for i, t := range l.Terms {
		v := t.scaled()
		values[i] = t.shown()
		switch t.Op {
		case "":
			x = v
		case "+":
			x += v
		case "-":
			x -= v
		case "x":
			x *= v
		case "/":
			x /= v
		}
	}
	if l.look != nil {
		return l.look(values)
	}
	if l.Whole {
		return math.Floor(x + 1e-9)
	}
	if l.Result.Unit == "%" {
		x *= 100
	}
	return x
}

// Bracketed is how many terms at the beginning need brackets, for the chain to
// be read as it is worked: a sum or a difference that is then multiplied or
// divided. It is 0 if none do.
func (l Line) Bracketed() int {
	n, added := 0, false
	for i, t := range l.Terms {
		switch t.Op {
		case "+", "-":
			added = true
		case "x", "/":
			if added {
				n, added = i, false
			}
		}
	}
	return n
}

// of begins a chain.
func of(n Number, what string) Term { return Term{Number: n, What: what} }

func plus(n Number, what string) Term { return Term{Op: "+", Number: n, What: what} }

// minus takes away; less than nothing is added, for nobody keys in two signs.
func minus(n Number, what string) Term {
	if n.Value < 0 {
		n.Value = -n.Value
		return plus(n, what)
	}
	return Term{Op: "-", Number: n, What: what}
}

func times(n Number, what string) Term { return Term{Op: "x", Number: n, What: what} }
func over(n Number, what string) Term  { return Term{Op: "/", Number: n, What: what} }

// fixed is a number that is known exactly, or is printed in its source as it
// stands: it is shown with no more places than it has.
func fixed(op string, value float64, unit, what string) Term {
	places := 0
	for places < 6 && plan.RoundTo(value, places) != value {
		places++
	}
	return Term{Op: op, Number: Number{Value: value, Unit: unit, Places: places}, What: what, exact: true}
}

// sum chains terms by plus signs, the first one without.
func sum(terms []Term) []Term {
	for i := range terms {
		switch terms[i].Op = "+"; {
		case i == 0:
			terms[i].Op = ""
		case terms[i].Value < 0:
			terms[i] = minus(Number{-terms[i].Value, terms[i].Unit, terms[i].Places}, terms[i].What)
		}
	}
	return terms
}

// adding is a line that adds up what some things have each, in their order; what has
// none is left out.
func adding[T any](says string, result Number, all []T, of func(int, T) Term) Line {
	var terms []Term
	for i, x := range all {
		if t := of(i, x); t.Value != 0 {
			terms = append(terms, t)
		}
	}
	return work(says, result, sum(terms)...)
}
