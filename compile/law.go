package compile

import (
	"fmt"
	"strconv"
	"strings"

	"newmake/compile/matter/fluid"
	"newmake/compile/plan"
	"newmake/compile/stage/cask"
	"newmake/lang/diag"
	"newmake/lang/recipe"
)

const (
	lawMet    = "met"
	lawNotMet = "NOT met"
	lawStated = "not tested"
)

// law holds the plan against the standard of identity that the batch names.
// What the text alone shows, the checker has tested already; here every
// condition is listed, and those that need the computed spirit are tested.
func (c *compiler) law() bool {
	s := c.b.Style
	if s == nil {
		return true
	}
	l := &plan.Law{Name: s.Name, Title: s.Title, Source: s.Law}
	for _, k := range s.Conditions {
		p := c.condition(k)
		p.Section = k.Law
		l.Conditions = append(l.Conditions, p)
		if p.Met == lawNotMet && isOffStill(k.Test) {
			c.tell(diag.Diagnostic{
				Code: diag.CodeOffStill, At: c.where("spirit.hearts", "spirit", "style"),
				Summary: fmt.Sprintf("%s asks for %s, and the hearts come off the still at %s", s.Title, p.Asks, p.Found),
				Help:    "move the cuts or the reflux, or name another style",
				Reason:  k.Law,
				Related: []diag.Related{{At: c.where("style"), Text: "the style is named here"}},
			})
		}
	}
	for _, n := range s.Notes {
		l.Conditions = append(l.Conditions, plan.Condition{Asks: n, Met: lawStated})
	}
	c.p.Law = l
	return true
}

func isOffStill(t recipe.Test) bool {
	return t == recipe.OffStillUnder || t == recipe.OffStillMost || t == recipe.OffStillOver
}

// condition says one condition in words, and whether the plan meets it.
func (c *compiler) condition(k recipe.Condition) plan.Condition {
	hearts := lotOf(c.hearts)
	said := c.limit(k.Strength)
	held := func(asks, found string, ok bool) plan.Condition {
		met := lawNotMet
		if ok {
			met = lawMet
		}
		return plan.Condition{Asks: asks, Found: found, Met: met}
	}
	switch k.Test {
	case recipe.GrainLeast:
		share := c.grainShare(k)
		return held(fmt.Sprintf("%s at least %.0f %%", grainWords(k), 100*k.Share), fmt.Sprintf("%.1f %%", 100*share), share >= k.Share-1e-9)
	case recipe.GrainSome:
		share := c.grainShare(k)
		return held("some "+grainWords(k), fmt.Sprintf("%.1f %%", 100*share), share > 0)
	case recipe.EnzymesOwn:
		added := c.enzymesAdded()
		found := "none added"
		if len(added) > 0 {
			found = strings.Join(added, ", ") + " added"
		}
		return held("no enzymes but the grain's own", found, len(added) == 0)
	case recipe.OffStillUnder:
		return held("off the still under "+said, c.say.Strength(hearts.Strength()), below(hearts, k.Strength, false))
	case recipe.OffStillMost:
		return held("off the still at most "+said, c.say.Strength(hearts.Strength()), below(hearts, k.Strength, true))
	case recipe.OffStillOver:
		return held("off the still over "+said, c.say.Strength(hearts.Strength()), !below(hearts, k.Strength, true))
	case recipe.EntryMost:
		if !c.inWood() {
			return held("into wood at most "+said, "not in wood", true)
		}
		entry := c.b.Cask.Entry
		return held("into wood at most "+said, c.say.Strength(strength(entry)), !k.Strength.Weaker(alike(entry, k.Strength)))
	case recipe.WoodIs:
		return held(c.woodWords(k), c.caskWords(), c.woodAllowed(k))
	case recipe.AgeLeast:
		if !c.inWood() {
			return held("in wood at least "+ageWords(k.AgeS), "not in wood", false)
		}
		return held("in wood at least "+ageWords(k.AgeS), ageWords(c.b.Cask.RestS), c.b.Cask.RestS >= k.AgeS-dayS)
	case recipe.BottledLeast:
		return c.bottledLeast(k, "bottled at least "+said, held)
	case recipe.MadeIn:
		return plan.Condition{Asks: "made in " + k.Text, Met: lawStated}
	}
	return plan.Condition{Asks: string(k.Test), Met: lawStated}
}

// bottledLeast tests the bottling strength: as the batch writes it, or the
// cask's own where that is weaker. A batch that writes none promises none.
func (c *compiler) bottledLeast(k recipe.Condition, asks string, held func(asks, found string, ok bool) plan.Condition) plan.Condition {
	at := c.b.Cask.BottleAt
	switch {
	case at.Value == 0:
		return plan.Condition{Asks: asks, Found: "not stated", Met: lawStated}
	case c.p.Cask.BottleAsked != nil:
		own := c.p.Cask.BottleAt
		at = recipe.Strength{Value: own.AbvPct / 100, Basis: recipe.ABV}
		if k.Strength.Basis == recipe.Proof {
			at = recipe.Strength{Value: own.Proof / 200, Basis: recipe.Proof}
		}
	}
	return held(asks, c.say.Strength(strength(at)), !alike(at, k.Strength).Weaker(k.Strength))
}

// alike brings a strength by mass to the basis of a limit. By volume strengths
// are held against one another as they are written: see recipe.Strength.
func alike(s, limit recipe.Strength) recipe.Strength {
	if s.Basis != recipe.ABW || limit.Basis == recipe.ABW {
		return s
	}
	w, err := massFrac(s)
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
func (c *compiler) limit(s recipe.Strength) string {
	unit := " % abv"
	if c.b.Units == recipe.SI {
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

const dayS = 86400.0

// below says if a lot is under a strength, in the basis in which the law says
// it; or at most that, if equal is let pass.
func below(l plan.Lot, s recipe.Strength, equal bool) bool {
	have, limit := l.AbvPct, strength(s).AbvPct
	if s.Basis == recipe.Proof {
		have, limit = l.Proof, 200*s.Value
	}
	return have < limit || equal && have <= limit+1e-9
}

// grainShare is the share of the bill that a condition speaks of.
func (c *compiler) grainShare(k recipe.Condition) float64 {
	share := 0.0
	for _, l := range c.b.Bill.Lines {
		if k.Malted && !l.Grain.Malted {
			continue
		}
		for _, g := range k.Grains {
			if g == "any" || g == l.Grain.Name || g == l.Grain.Cereal {
				share += l.Share
				break
			}
		}
	}
	return share
}

func grainWords(k recipe.Condition) string {
	words := strings.Join(k.Grains, " or ")
	if words == "any" {
		words = "grain"
	}
	if k.Malted {
		words = "malted " + words
	}
	return words
}

func (c *compiler) enzymesAdded() []string {
	var out []string
	for _, s := range c.b.Mash.Steps {
		if s.Verb == recipe.MashDose && s.Enzyme != nil {
			out = append(out, s.Enzyme.Name)
		}
	}
	for _, d := range c.b.Ferm.Doses {
		out = append(out, d.Enzyme.Name)
	}
	return out
}

func (c *compiler) woodAllowed(k recipe.Condition) bool {
	for _, w := range k.Woods {
		if w.None || !c.inWood() {
			if w.None && !c.inWood() {
				return true
			}
			continue
		}
		if c.isWood(w) {
			return k.SizeM3 == 0 || c.b.Cask.SizeM3 <= k.SizeM3+1e-9
		}
	}
	return false
}

func (c *compiler) isWood(w recipe.Wood) bool {
	k := c.b.Cask
	charred := k.Kind.Charred || k.Char > 0
	return (w.Use == "" || (w.Use == "new") == k.New) &&
		(w.Char == "" || (w.Char == "charred") == charred) &&
		(w.Of == "" || w.Of == k.Kind.Wood)
}

func (c *compiler) woodWords(k recipe.Condition) string {
	var all []string
	for _, w := range k.Woods {
		if w.None {
			all = append(all, "none")
			continue
		}
		of := w.Of
		if of == "" {
			of = "wood"
		}
		all = append(all, strings.Join(strings.Fields(w.Use+" "+w.Char+" "+of), " "))
	}
	words := "wood: " + strings.Join(all, " or ")
	if k.SizeM3 > 0 {
		words += " of at most " + c.say.Litres(k.SizeM3*litresPerM3)
	}
	return words
}

func (c *compiler) caskWords() string {
	if !c.inWood() {
		return "none"
	}
	use := "used"
	if c.b.Cask.New {
		use = "new"
	}
	return use + " " + c.b.Cask.Kind.Name + ", " + c.say.Litres(c.b.Cask.SizeM3*litresPerM3)
}

// ageWords says an age in months, or in years when they are whole.
func ageWords(s float64) string {
	months := s / cask.YearS * monthYear
	years := months / monthYear
	if months >= monthYear-0.05 && years-float64(int(years+0.05)) < 0.05 {
		return fmt.Sprintf("%d y", int(years+0.05))
	}
	return fmt.Sprintf("%.0f months", months)
}
