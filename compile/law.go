package compile

import (
	"fmt"
	"strings"

	"newmake/compile/cask"
	"newmake/compile/plan"
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
	said := c.say.Strength(strength(k.Strength))
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
		entry := strength(c.b.Cask.Entry)
		return held("into wood at most "+said, c.say.Strength(entry), entry.AbvPct <= strength(k.Strength).AbvPct+1e-6)
	case recipe.WoodIs:
		return held(c.woodWords(k), c.caskWords(), c.woodAllowed(k))
	case recipe.AgeLeast:
		return held("in wood at least "+ageWords(k.AgeS), ageWords(c.b.Cask.RestS), c.b.Cask.RestS >= k.AgeS-dayS)
	case recipe.BottledLeast:
		at := strengthAbv(c.bottleABV())
		return held("bottled at least "+said, c.say.Strength(at), at.AbvPct >= strength(k.Strength).AbvPct-1e-6)
	case recipe.MadeIn:
		return plan.Condition{Asks: "made in " + k.Text, Met: lawStated}
	}
	return plan.Condition{Asks: string(k.Test), Met: lawStated}
}

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
		if w.None {
			if c.b.Cask.RestS == 0 {
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
