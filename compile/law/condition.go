package law

import (
	"fmt"
	"strings"

	"newmake/compile/lot"
	"newmake/compile/numbers"
	"newmake/compile/plan"
	"newmake/lang/recipe"
	"newmake/lang/words"
)

// condition says one condition in words, and whether the plan meets it.
func (c batch) condition(k *recipe.Condition) plan.Condition {
	switch k.Test {
	case recipe.GrainLeast, recipe.GrainMost, recipe.GrainSome:
		return c.grains(k)
	case recipe.EnzymesOwn:
		return c.ownEnzymes()
	case recipe.OffStillUnder, recipe.OffStillMost, recipe.OffStillOver:
		return c.offStill(k)
	case recipe.EntryMost:
		return c.entry(k)
	case recipe.WoodIs:
		return c.wood(k)
	case recipe.AgeLeast:
		return c.age(k)
	case recipe.BottledLeast, recipe.BottledAt:
		return c.bottled(k)
	case recipe.StillIs:
		return held(k.Text+" still", "pot still", k.Text == "pot")
	case recipe.LabelUnder:
		return c.labelOfAge(k)
	case recipe.LabelUsed:
		return c.labelOfUsedWood(k)
	case recipe.OneSeason:
		return c.oneSeason()
	case recipe.IsNot:
		return c.isNot(k)
	case recipe.PartsLeast: // a batch is one part: what it is mixed with, its records tell
		return stated(PartsAsk(k), "by the records of what is mixed")
	case recipe.MadeIn:
		return stated("made in "+k.Text, "")
	}
	return stated(string(k.Test), "")
}

// held is a condition that was tested.
func held(asks, found string, ok bool) plan.Condition {
	if ok {
		return plan.Condition{Asks: asks, Found: found, Met: Met}
	}
	return plan.Condition{Asks: asks, Found: found, Met: NotMet}
}

// stated is a condition that cannot be tested.
func stated(asks, found string) plan.Condition {
	return plan.Condition{Asks: asks, Found: found, Met: Stated}
}

func (c batch) grains(k *recipe.Condition) plan.Condition {
	var asks string
	switch k.Test {
	case recipe.GrainLeast:
		asks = fmt.Sprintf("%s at least %.0f %%", k.GrainText(), 100*k.Share)
	case recipe.GrainMost:
		asks = fmt.Sprintf("%s at most %.0f %%", k.GrainText(), 100*k.Share)
	default:
		asks = "some " + k.GrainText()
	}
	share := k.GrainShare(&c.Bill)
	return held(asks, fmt.Sprintf("%.1f %%", 100*share), k.GrainsDo(share))
}

func (c batch) ownEnzymes() plan.Condition {
	const asks = "no enzymes but the grain's own"
	var added []string
	for _, z := range c.Enzymes() {
		added = append(added, z.Name)
	}
	if len(added) > 0 {
		return held(asks, strings.Join(added, ", ")+" added", false)
	}
	return held(asks, "none added", true)
}

// offStill says how the spirit came off the still: of a run that was made nobody may have
// written it.
func (c batch) offStill(k *recipe.Condition) plan.Condition {
	var asks string
	var ok bool
	switch k.Test {
	case recipe.OffStillUnder:
		asks, ok = "under", below(c.hearts, k.Strength, false)
	case recipe.OffStillMost:
		asks, ok = "at most", below(c.hearts, k.Strength, true)
	default:
		asks, ok = "over", !below(c.hearts, k.Strength, true)
	}
	asks = "off the still " + asks + " " + c.limit(k.Strength)
	if c.hearts == (plan.Lot{}) {
		return stated(asks, Unwritten)
	}
	return held(asks, c.say.Strength(c.hearts.Strength()), ok)
}

func (c batch) entry(k *recipe.Condition) plan.Condition {
	asks, entry := "into wood at most "+c.limit(k.Strength), c.Cask.Entry
	switch {
	case !numbers.InWood(c.Batch):
		return held(asks, "not in wood", true)
	case entry.Value == 0:
		return stated(asks, Unwritten)
	}
	return held(asks, c.say.Strength(lot.Strength(entry)), !k.Strength.Weaker(alike(entry, k.Strength)))
}

func (c batch) wood(k *recipe.Condition) plan.Condition {
	ok := k.NoWoodDoes()
	if numbers.InWood(c.Batch) {
		ok = k.WoodDoes(&c.Cask) && k.SizeDoes(&c.Cask)
	}
	return held(c.woodWords(k), c.caskWords(), ok)
}

func (c batch) age(k *recipe.Condition) plan.Condition {
	asks := "in wood at least " + ageWords(k.AgeS)
	if !numbers.InWood(c.Batch) {
		return held(asks, "not in wood", false)
	}
	return held(asks, ageWords(c.Cask.RestS), k.Rested(c.Cask.RestS))
}

// bottled tests the bottling strength: as the batch writes it, or the cask's own
// where that is weaker. A batch that writes none promises none.
func (c batch) bottled(k *recipe.Condition) plan.Condition {
	asks, exactly := "bottled at least "+c.limit(k.Strength), k.Test == recipe.BottledAt
	if exactly {
		asks = "bottled at exactly " + c.limit(k.Strength)
	}
	at := c.Cask.BottleAt
	switch {
	case at.Value == 0:
		return stated(asks, "not stated")
	case c.cask.BottleAsked != nil:
		own := c.cask.BottleAt
		at = recipe.Strength{Value: own.AbvPct / 100, Basis: recipe.ABV}
		if k.Strength.Basis == recipe.Proof {
			at = recipe.Strength{Value: own.Proof / 200, Basis: recipe.Proof}
		}
	}
	as := alike(at, k.Strength)
	return held(asks, c.say.Strength(lot.Strength(at)), !as.Weaker(k.Strength) && (!exactly || !k.Strength.Weaker(as)))
}

func (c batch) labelOfAge(k *recipe.Condition) plan.Condition {
	asks := "label, if under " + ageWords(k.AgeS) + " in wood: " + k.Text
	switch {
	case !numbers.InWood(c.Batch):
		return stated(asks, "not in wood")
	case !k.Rested(c.Cask.RestS):
		return stated(asks, ageWords(c.Cask.RestS)+": say so")
	}
	return held(asks, ageWords(c.Cask.RestS), true)
}

func (c batch) labelOfUsedWood(k *recipe.Condition) plan.Condition {
	asks := "label, if it rests in used wood: " + k.Text
	if !numbers.InWood(c.Batch) || c.Cask.New {
		return held(asks, c.caskWords(), true)
	}
	return stated(asks, c.caskWords()+": say so")
}

func (c batch) oneSeason() plan.Condition {
	const asks = "distilled in one season, January to June or July to December"
	if c.distilled.From.IsZero() {
		return stated(asks, "")
	}
	return held(asks, c.distilled.Words(), c.distilled.OneSeason())
}

// isNot is met where one condition of the other standard is not.
func (c batch) isNot(k *recipe.Condition) plan.Condition {
	asks := "not " + k.Other.Title
	for i := range k.Other.Conditions {
		if p := c.condition(&k.Other.Conditions[i]); p.Met == NotMet {
			return held(asks, p.Asks+": "+p.Found, true)
		}
	}
	return held(asks, "it is that, as far as can be tested", false)
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
