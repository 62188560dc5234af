// Package law holds a batch against the standard of identity that it names.
package law

import (
	"fmt"
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
	"newmake/lang/words"
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
// a still to the last stop, filled how it is casked and bottled. What the text alone shows, the checker has tested already; here every
// condition is listed, and those that need the computed spirit are tested.
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

// OneSeason says if both days lie in one distilling season: January to June, or July
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

// condition says one condition in words, and whether the plan meets it.
func (c batch) condition(k *recipe.Condition) plan.Condition {
	hearts := c.hearts
	said := c.limit(k.Strength)
	held := func(asks, found string, ok bool) plan.Condition {
		if ok {
			return plan.Condition{Asks: asks, Found: found, Met: Met}
		}
		return plan.Condition{Asks: asks, Found: found, Met: NotMet}
	}
	grains := func(asks string) plan.Condition {
		share := k.GrainShare(&c.Bill)
		return held(asks, fmt.Sprintf("%.1f %%", 100*share), k.GrainsDo(share))
	}
	switch k.Test {
	case recipe.GrainLeast:
		return grains(fmt.Sprintf("%s at least %.0f %%", k.GrainText(), 100*k.Share))
	case recipe.GrainMost:
		return grains(fmt.Sprintf("%s at most %.0f %%", k.GrainText(), 100*k.Share))
	case recipe.GrainSome:
		return grains("some " + k.GrainText())
	case recipe.EnzymesOwn:
		found := "none added"
		var added []string
		for _, z := range c.Enzymes() {
			added = append(added, z.Name)
		}
		if len(added) > 0 {
			found = strings.Join(added, ", ") + " added"
		}
		return held("no enzymes but the grain's own", found, len(added) == 0)
	case recipe.OffStillUnder:
		return c.offStill(held, "off the still under "+said, below(hearts, k.Strength, false))
	case recipe.OffStillMost:
		return c.offStill(held, "off the still at most "+said, below(hearts, k.Strength, true))
	case recipe.OffStillOver:
		return c.offStill(held, "off the still over "+said, !below(hearts, k.Strength, true))
	case recipe.EntryMost:
		if !numbers.InWood(c.Batch) {
			return held("into wood at most "+said, "not in wood", true)
		}
		entry := c.Cask.Entry
		if entry.Value == 0 {
			return plan.Condition{Asks: "into wood at most " + said, Found: Unwritten, Met: Stated}
		}
		return held("into wood at most "+said, c.say.Strength(lot.Strength(entry)), !k.Strength.Weaker(alike(entry, k.Strength)))
	case recipe.WoodIs:
		wooded := k.NoWoodDoes()
		if numbers.InWood(c.Batch) {
			wooded = k.WoodDoes(&c.Cask) && k.SizeDoes(&c.Cask)
		}
		return held(c.woodWords(k), c.caskWords(), wooded)
	case recipe.AgeLeast:
		if !numbers.InWood(c.Batch) {
			return held("in wood at least "+ageWords(k.AgeS), "not in wood", false)
		}
		return held("in wood at least "+ageWords(k.AgeS), ageWords(c.Cask.RestS), k.Rested(c.Cask.RestS))
	case recipe.BottledLeast:
		return c.bottled(k, "bottled at least "+said, held, func(at recipe.Strength) bool { return !at.Weaker(k.Strength) })
	case recipe.BottledAt:
		return c.bottled(k, "bottled at exactly "+said, held, func(at recipe.Strength) bool { return !at.Weaker(k.Strength) && !k.Strength.Weaker(at) })
	case recipe.StillIs:
		return held(k.Text+" still", "pot still", k.Text == "pot")
	case recipe.LabelUnder:
		asks := "label, if under " + ageWords(k.AgeS) + " in wood: " + k.Text
		switch {
		case !numbers.InWood(c.Batch):
			return plan.Condition{Asks: asks, Found: "not in wood", Met: Stated}
		case !k.Rested(c.Cask.RestS):
			return plan.Condition{Asks: asks, Found: ageWords(c.Cask.RestS) + ": say so", Met: Stated}
		}
		return held(asks, ageWords(c.Cask.RestS), true)
	case recipe.LabelUsed:
		asks := "label, if it rests in used wood: " + k.Text
		if !numbers.InWood(c.Batch) || c.Cask.New {
			return held(asks, c.caskWords(), true)
		}
		return plan.Condition{Asks: asks, Found: c.caskWords() + ": say so", Met: Stated}
	case recipe.OneSeason:
		asks := "distilled in one season, January to June or July to December"
		if c.distilled.From.IsZero() {
			return plan.Condition{Asks: asks, Met: Stated}
		}
		return held(asks, c.distilled.Words(), c.distilled.OneSeason())
	case recipe.IsNot:
		asks := "not " + k.Other.Title
		for i := range k.Other.Conditions {
			if p := c.condition(&k.Other.Conditions[i]); p.Met == NotMet {
				return held(asks, p.Asks+": "+p.Found, true)
			}
		}
		return held(asks, "it is that, as far as can be tested", false)
	case recipe.PartsLeast: // a batch is one part: what it is mixed with, its records tell
		return plan.Condition{Asks: PartsAsk(k), Found: "by the records of what is mixed", Met: Stated}
	case recipe.MadeIn:
		return plan.Condition{Asks: "made in " + k.Text, Met: Stated}
	}
	return plan.Condition{Asks: string(k.Test), Met: Stated}
}

// Parts holds the share of a mixture that meets one of the standards of a condition against
// what it asks.
func Parts(k *recipe.Condition, share float64) plan.Condition {
	p := plan.Condition{Asks: PartsAsk(k), Found: fmt.Sprintf("%.1f %%", 100*share), Met: Met, Section: k.Law}
	if share < k.Share-partsSlack {
		p.Met = NotMet
	}
	return p
}

// PartsAsk is what a condition asks of the parts of a mixture.
func PartsAsk(k *recipe.Condition) string {
	return fmt.Sprintf("at least %.0f %% of the alcohol %s", 100*k.Share, words.Or(k.Others))
}

// partsSlack is of a share of alcohol, which is a sum of rounded gauges.
const partsSlack = 1e-6

// offStill says how the spirit came off the still: of a run that was made nobody may have
// written it.
func (c batch) offStill(held func(asks, found string, ok bool) plan.Condition, asks string, ok bool) plan.Condition {
	if c.hearts == (plan.Lot{}) {
		return plan.Condition{Asks: asks, Found: Unwritten, Met: Stated}
	}
	return held(asks, c.say.Strength(c.hearts.Strength()), ok)
}

// bottled tests the bottling strength: as the batch writes it, or the cask's own
// where that is weaker. A batch that writes none promises none.
func (c batch) bottled(k *recipe.Condition, asks string, held func(asks, found string, ok bool) plan.Condition, allowed func(recipe.Strength) bool) plan.Condition {
	at := c.Cask.BottleAt
	switch {
	case at.Value == 0:
		return plan.Condition{Asks: asks, Found: "not stated", Met: Stated}
	case c.cask.BottleAsked != nil:
		own := c.cask.BottleAt
		at = recipe.Strength{Value: own.AbvPct / 100, Basis: recipe.ABV}
		if k.Strength.Basis == recipe.Proof {
			at = recipe.Strength{Value: own.Proof / 200, Basis: recipe.Proof}
		}
	}
	return held(asks, c.say.Strength(lot.Strength(at)), allowed(alike(at, k.Strength)))
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

// below says if a lot is under a strength, in the basis in which the law says
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
