// Package law holds a batch against the standard of identity that it names.
package law

import (
	"strconv"
	"strings"
	"time"

	"newmake/compile/lot"
	"newmake/compile/matter/fluid"
	"newmake/compile/measure"
	"newmake/compile/numbers"
	"newmake/compile/plan"
	"newmake/compile/stage/cask"
	"newmake/lang/recipe"
)

// How a batch stands against a condition.
const (
	Met    = "met"
	NotMet = "NOT met"
	Stated = "not tested"
)

// Unwritten is what was found where a run's records do not tell.
const Unwritten = "not written"

// Held lists the conditions of the standard of identity that the batch names, and
// which of them it meets; nil if it names none. distilled is from the first charge of
// a still to the last stop, filled how it is casked and bottled. What the text alone
// shows, the checker has tested already; here every condition is listed, and those that
// need the computed spirit are tested.
func Held(b *recipe.Batch, hearts plan.Lot, distilled Days, filled plan.Cask) *plan.Law {
	s := b.Standard
	if s == nil {
		return nil
	}
	c := batch{b, measure.UnitsOf(b.Units), hearts, distilled, filled}
	l := &plan.Law{Standards: s.Parts, Title: s.Title, Source: s.Law}
	if len(l.Standards) == 0 {
		l.Standards = []string{s.Name}
	}
	for i := range s.Conditions {
		k := &s.Conditions[i]
		p := c.condition(k)
		p.Section = k.Law
		l.Conditions = append(l.Conditions, p)
	}
	for _, n := range s.Notes {
		l.Conditions = append(l.Conditions, plan.Condition{Asks: n, Met: Stated})
	}
	return l
}

// One holds a batch against one condition: filled and the rest as Held has them.
func One(b *recipe.Batch, k *recipe.Condition, hearts plan.Lot, distilled Days, filled plan.Cask) plan.Condition {
	p := batch{b, measure.UnitsOf(b.Units), hearts, distilled, filled}.condition(k)
	p.Section = k.Law
	return p
}

// Days is from when to when something is done, in the plant's zone.
type Days struct{ From, To time.Time }

// OneSeason reports whether both days lie in one distilling season: January to June, or July
// to December (27 CFR 5.1, from memory).
func (d Days) OneSeason() bool {
	season := func(t time.Time) [2]int { return [2]int{t.Year(), int(t.Month()-1) / 6} }
	return season(d.From) == season(d.To)
}

// Words are the days for a reader.
func (d Days) Words() string {
	from, to := d.From.Format("2 January 2006"), d.To.Format("2 January 2006")
	if from == to {
		return from
	}
	return from + " to " + to
}

// batch is what the conditions speak of.
type batch struct {
	*recipe.Batch
	say       measure.Units
	hearts    plan.Lot
	distilled Days
	cask      plan.Cask
}

// alike brings a strength by mass to the basis of a limit. By volume strengths
// are held against one another as they are written: see recipe.Strength.
func alike(s, limit recipe.Strength) recipe.Strength {
	if s.Basis != recipe.ABW || limit.Basis == recipe.ABW {
		return s
	}
	w, err := lot.MassFrac(s)
	if err != nil {
		return s
	}
	if limit.Basis == recipe.Proof {
		return recipe.Strength{Value: fluid.ABV60FFromMassFrac(w), Basis: recipe.Proof}
	}
	return recipe.Strength{Value: fluid.ABVFromMassFrac(w)}
}

// limit says a strength as the law states it: 80 proof is 40 % whatever the
// reader's units.
func (c batch) limit(s recipe.Strength) string {
	unit := " % abv"
	if c.Units == recipe.SI {
		unit = " % vol"
	}
	pct := shortest(100 * s.Value)
	switch s.Basis {
	case recipe.Proof:
		return shortest(200*s.Value) + " proof (" + pct + unit + ")"
	case recipe.ABW:
		return pct + " % by weight"
	default:
		return pct + unit
	}
}

// shortest writes a number as a person would: no more decimals than it has.
func shortest(x float64) string { return strconv.FormatFloat(plan.RoundTo(x, 4), 'f', -1, 64) }

// below reports whether a lot is under a strength, in the basis in which the law says
// it; or at most that, if equal is let pass. Equal is what differs by rounding
// alone.
func below(l plan.Lot, s recipe.Strength, equal bool) bool {
	have, limit := l.AbvPct, lot.Strength(s).AbvPct
	if s.Basis == recipe.Proof {
		have, limit = l.Proof, 200*s.Value
	}
	const rounding = 1e-9
	if equal {
		return have <= limit+rounding
	}
	return have < limit-rounding
}

func (c batch) woodWords(k *recipe.Condition) string {
	var all []string
	for _, w := range k.Woods {
		if w.None {
			all = append(all, "none")
			continue
		}
		all = append(all, w.Text())
	}
	words := "wood: " + strings.Join(all, " or ")
	if k.SizeM3 > 0 {
		words += " of at most " + c.size(k.SizeM3*lot.LitresPerM3)
	}
	return words
}

// size says the greatest cask in litres, as every law here does, and in the
// reader's gallons beside it.
func (c batch) size(litres float64) string {
	asked := shortest(litres) + " L"
	if c.Units == recipe.SI {
		return asked
	}
	return asked + " (" + c.say.Litres(litres) + ")"
}

func (c batch) caskWords() string {
	if !numbers.InWood(c.Batch) {
		return "none"
	}
	use := "used"
	if c.Cask.New {
		use = "new"
	}
	return use + " " + c.Cask.Kind.Name + ", " + c.say.Litres(c.Cask.SizeM3*lot.LitresPerM3)
}

// ageWords says an age.
func ageWords(s float64) string { return measure.Years(s / cask.YearS) }
