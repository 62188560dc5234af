package why

import (
	"math"

	"newmake/compile/matter/fluid"
	"newmake/compile/measure"
	"newmake/compile/plan"
	"newmake/lang/recipe"
)

// asked is one batch with its plan, and the units of whoever asks.
type asked struct {
	b *recipe.Batch
	p *plan.Plan // its numbers not rounded
	inUnits
}

// inUnits says numbers in the units of whoever asks.
type inUnits struct{ u measure.Units }

func (a inUnits) us() bool { return a.u == measure.US }

// number is a quantity in the reader's units, to the places of a plan that is
// printed.
func (a inUnits) number(q plan.Quantity) Number {
	v, unit := a.u.Value(q)
	switch {
	case q.Unit == plan.Each, q.Unit == plan.PH:
		unit = ""
	case q.Unit == litrePerKg && a.us():
		v, unit = gristUS(v), "gal"+measure.PerBushel
	}
	return Number{v, unit, usual(q.Unit, v)}
}

// usual is the places that a plan is printed with.
func usual(unit plan.Unit, v float64) int {
	switch unit {
	case plan.Litre, plan.CubicMetre, plan.LitrePerH:
		return figures(v, 3)
	case plan.SG:
		return 4
	case plan.Hour:
		return min(figures(v, 3), 2)
	case plan.PH, plan.GramPerL, litrePerKg, pgPerBushel:
		return 2
	case plan.Each, plan.Minute:
		return 0
	case plan.Kilogram:
		if math.Abs(v) < 1 {
			return 3
		}
		return 1
	case plan.Celsius, plan.AbvPct, plan.Percent, plan.KilowattH, plan.ProofGallon, plan.PureLitre, lpaPerTonne:
		return 1
	default: // money
		return plan.MoneyPlaces(string(unit))
	}
}

// figures is the decimals at which v shows n figures.
func figures(v float64, n int) int {
	places := n
	for x := math.Abs(v); x >= 1 && places > 0; x /= 10 {
		places--
	}
	return places
}

func (a inUnits) mass(kg float64) Number {
	v, unit := a.u.Value(plan.Of(kg, plan.Kilogram))
	return Number{v, unit, max(figures(v, 4), 1)}
}

// litres is a volume that is no spirit, at the temperature it is said at.
func (a inUnits) litres(l float64) Number {
	v, unit := a.u.Value(plan.Of(l, plan.Litre))
	return Number{v, unit, figures(v, 4)}
}

func (a inUnits) volume(l plan.Lot) Number { return a.quantity(l.Volume()) }

// quantity is a volume counted both ways.
func (a inUnits) quantity(q plan.Quantity) Number {
	v, unit := a.u.Value(q)
	return Number{v, unit, figures(v, 4)}
}

// either is one number or the other, by whose units are asked for.
func (a inUnits) either(us, si Number) Number {
	if a.us() {
		return us
	}
	return si
}

// spout is a strength at the spout: half the proof, or % vol at 20 C.
func (a inUnits) spout(s plan.Strength) Number {
	return a.either(Number{s.Proof / 2, "% abv", 1}, Number{s.AbvPct, "% vol", 1})
}

// pure is alcohol: proof gallons, or litres of pure alcohol.
func (a inUnits) pure(l plan.Lot) Number {
	return a.either(Number{l.ProofGallons, "PG", 2}, Number{l.PureL, "LPA", 2})
}

// strength is proof, or % vol at 20 C.
func (a inUnits) strength(s plan.Strength) Number {
	return a.either(Number{s.Proof, "proof", 1}, Number{s.AbvPct, "% vol", 1})
}

// density is mass by volume.
func (a inUnits) density(kgM3 float64) Number {
	return a.either(Number{kgM3 / fluid.PoundKg * fluid.USGallonM3, "lb/gal", 3}, Number{kgM3 / 1000, "kg/L", 4})
}

// room is volume by mass.
func (a inUnits) room(m3Kg float64) Number {
	return a.either(Number{m3Kg * fluid.PoundKg / fluid.USGallonM3, "gal/lb", 4}, Number{m3Kg * 1000, "L/kg", 3})
}

func percent(x float64, places int) Number { return Number{x, "%", places} }
func bare(x float64, places int) Number    { return Number{x, "", places} }

func hours(h float64) Number   { return Number{h, "h", 2} }
func minutes(m float64) Number { return Number{m, "min", 1} }
func kWh(x float64) Number     { return Number{x, "kWh", 1} }

// gravity is the working's specific gravity: a place more than is printed.
func gravity(sg float64) Number { return Number{sg, "SG", 4} }

// fraction finds what came over between two cuts.
func fraction(r plan.Run, name string) plan.Fraction {
	for _, f := range r.Fractions {
		if f.Name == name {
			return f
		}
	}
	return plan.Fraction{Name: name}
}

// lowWines are those of all charges.
func (a *asked) lowWines() plan.Lot { return fraction(a.p.Strip, plan.StreamLow).Lot }

func (a *asked) hearts() plan.Fraction { return fraction(a.p.Spirit, plan.StreamHearts) }

// charge is all charges of the spirit still together.
func (a *asked) charge() plan.Lot { return a.p.Spirit.Charge.Times(float64(a.p.Spirit.Charges)) }

func (a *asked) feintsReturned() plan.Lot {
	if f := a.p.Spirit.FeintsReturned; f != nil {
		return f.Times(float64(a.p.Spirit.Charges))
	}
	return plan.Lot{}
}

// perHundred turns a share of pure alcohol by volume into the strength's own
// unit: a proof gallon is a gallon of 100 proof.
func perHundred(op string) Term { return fixed(op, 100, "", "") }

// twentyC is the temperature at which volumes and gases are stated, as the reader knows it.
func (a inUnits) twentyC() string {
	if a.us() {
		return "20 C (68 F)"
	}
	return "20 C"
}
