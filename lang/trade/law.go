package trade

import (
	"fmt"
	"slices"
	"strings"

	"newmake/lang/diag"
	"newmake/lang/quantity"
	"newmake/lang/recipe"
	"newmake/lang/wording"
	"newmake/lang/words"
)

// checkLaw holds the batch against its standard of identity, as far as the text tells.
// What only the run can tell, the strength off the still, is for the plan.
func checkLaw(r *rules) {
	s := r.batch.Standard
	if s == nil {
		return
	}
	checkCountry(r, s)
	for i := range s.Conditions {
		c := &s.Conditions[i]
		switch c.Test {
		case recipe.GrainLeast, recipe.GrainMost, recipe.GrainSome:
			if r.can.Bill {
				checkGrains(r, c)
			}
		case recipe.EnzymesOwn:
			checkOwnEnzymes(r, c)
		case recipe.EntryMost:
			if r.can.Cask && below(c.Strength, r.batch.Cask.Entry) {
				unlawful(r, diag.CodeLawEntry, c, r.at(recipe.PathEntry),
					fmt.Sprintf("the entry strength is above %s, the most that %s allows", r.lawful(c.Strength), c.Of),
					"lower the entry strength")
			}
		case recipe.WoodIs:
			switch {
			case r.can.Cask:
				checkWood(r, c)
			case r.can.Unaged && !c.NoWoodDoes():
				unlawful(r, diag.CodeLawWood, c, r.at(recipe.PathBatch), fmt.Sprintf("%s rests in %s, and this batch goes into no wood", c.Of, woodsText(c)),
					"give the batch a `cask`, or another standard")
			}
		case recipe.AgeLeast:
			if r.can.Unaged {
				unlawful(r, diag.CodeLawRest, c, r.at(recipe.PathBatch), fmt.Sprintf("%s rests at least %s in wood, and this batch goes into none", c.Of, durationText(c.AgeS)),
					"give the batch a `cask`, or another standard")
			}
			if r.can.Cask && !c.Rested(r.batch.Cask.RestS) {
				unlawful(r, diag.CodeLawRest, c, r.at(recipe.PathRest),
					fmt.Sprintf("%s rests at least %s in wood", c.Of, durationText(c.AgeS)),
					"let it rest longer, or give it another standard")
			}
		case recipe.BottledAt:
			at := r.batch.Cask.BottleAt
			if (r.can.Cask || r.can.Unaged) && at.Value > 0 && (below(at, c.Strength) || below(c.Strength, at)) {
				unlawful(r, diag.CodeLawBottled, c, r.at(recipe.PathBottleAt),
					fmt.Sprintf("%s is bottled at exactly %s", c.Of, r.lawful(c.Strength)), "bottle it at "+r.lawful(c.Strength))
			}
		case recipe.BottledLeast:
			if at := r.batch.Cask.BottleAt; (r.can.Cask || r.can.Unaged) && at.Value > 0 && below(at, c.Strength) {
				unlawful(r, diag.CodeLawBottled, c, r.at(recipe.PathBottleAt),
					fmt.Sprintf("%s is bottled at %s or more", c.Of, r.lawful(c.Strength)), "raise the bottling strength")
			}
		}
	}
}

// checkCountry notes a standard of another law than that of the house.
func checkCountry(r *rules, s *recipe.Standard) {
	if r.batch.Plant == nil || s.Country == "" {
		return
	}
	if house := r.batch.Plant.Under(); house != "" && house != s.Country {
		r.add(diag.Diagnostic{
			Code: diag.CodeLawAbroad, Severity: diag.Note, At: r.at(recipe.PathStandard),
			Summary: fmt.Sprintf("`%s` is a standard of the country `%s`, and the house stands under the law of `%s`", s.Name, s.Country, house),
			Help:    "leave it if the whisky is made for there; `newmake library standard` lists the others",
			Reason:  s.Law,
		})
	}
}

// unlawful makes the diagnostic of a condition that is not met.
func unlawful(r *rules, code diag.Code, c *recipe.Condition, at diag.Span, summary, help string) {
	r.add(diag.Diagnostic{
		Code: code, At: at, Summary: summary, Help: help, Reason: section(c.OfLaw, c.Law),
		Related: []diag.Related{{At: r.at(recipe.PathStandard), Text: fmt.Sprintf("the standard is named here: %s", r.batch.Standard.Title)}},
	})
}

// section names the law and the section of it that makes a condition.
func section(law, section string) string {
	if strings.HasSuffix(law, section) { // so does none at all
		return law
	}
	return law + "; " + section
}

func checkGrains(r *rules, c *recipe.Condition) {
	share := c.GrainShare(&r.batch.Bill)
	if c.GrainsDo(share) {
		return
	}
	title, what := c.Of, c.GrainText()
	switch c.Test {
	case recipe.GrainSome:
		unlawful(r, diag.CodeLawGrain, c, r.at(recipe.PathBill), fmt.Sprintf("%s has some %s in its bill, and this has none", title, what), "put some in the bill, or give the batch another standard")
	case recipe.GrainMost:
		unlawful(r, diag.CodeLawGrain, c, r.at(recipe.PathBill), fmt.Sprintf("%s is made of at most %s %s by weight, and this bill has %s", title, percent(c.Share), what, percent(share)),
			fmt.Sprintf("less %s in the bill, or another standard", what))
	case recipe.GrainLeast:
		help := fmt.Sprintf("more %s in the bill, or another standard", what)
		at := r.at(recipe.PathBill)
		odd := slices.IndexFunc(r.batch.Bill.Lines, func(l recipe.BillLine) bool { return !c.Counts(l.Grain) })
		if c.Share > 0.9999 && odd >= 0 {
			odd := r.batch.Bill.Lines[odd].Grain.Name
			help = fmt.Sprintf("`%s` does not count; take it out of the bill, or give the batch another standard", odd)
			at = r.at(recipe.PathBill.Child(odd))
		}
		unlawful(r, diag.CodeLawGrain, c, at, fmt.Sprintf("%s is made of at least %s %s by weight, and this bill has %s", title, percent(c.Share), what, percent(share)), help)
	}
}

func checkOwnEnzymes(r *rules, c *recipe.Condition) {
	say := func(z *recipe.Enzyme, at diag.Span) {
		unlawful(r, diag.CodeLawEnzymes, c, at, fmt.Sprintf("%s is made with the grain's own enzymes alone, and this adds `%s`", c.Of, z.Name),
			"take the dose out, and let malt do its work")
	}
	for _, s := range r.batch.Mash.Steps {
		if s.Enzyme != nil {
			say(s.Enzyme, s.At)
		}
	}
	for _, d := range r.batch.Ferm.Doses {
		say(d.Enzyme, d.At)
	}
}

func checkWood(r *rules, c *recipe.Condition) {
	k := &r.batch.Cask
	title := c.Of
	switch {
	case !c.WoodDoes(k):
		use := "used"
		if k.New {
			use = "new"
		}
		unlawful(r, diag.CodeLawWood, c, r.at(recipe.PathFill), fmt.Sprintf("%s rests in %s, and this is %s `%s`", title, woodsText(c), use, k.Kind.Name), "fill another cask, or give the batch another standard")
	case !c.SizeDoes(k):
		unlawful(r, diag.CodeLawWood, c, r.at(recipe.PathFill), fmt.Sprintf("%s rests in casks of at most %s", title, r.caskLimit(c.SizeM3)), "fill a smaller cask")
	}
}

// caskLimit says a size in litres, as the laws do, and in gallons beside it where the
// batch counts so.
func (r *rules) caskLimit(m3 float64) string {
	litres := wording.Decimal(m3*1000) + " L"
	if r.batch.Units == recipe.US {
		return litres + " (" + r.volume(m3) + ")"
	}
	return litres
}

// woodsText writes the woods that a condition allows.
func woodsText(c *recipe.Condition) string {
	var woods []string
	for _, w := range c.Woods {
		woods = append(woods, woodText(w))
	}
	return words.Or(woods)
}

// below reports whether a strength is under another as the law counts: as written, and
// if one of them is by mass, for certain.
func below(a, b recipe.Strength) bool {
	if (a.Basis == recipe.ABW) != (b.Basis == recipe.ABW) {
		return weaker(a, b)
	}
	return a.Weaker(b)
}

// lawful writes a strength as the law has it, and for a house that counts in litres what a
// proof of the United States is there.
func (r *rules) lawful(s recipe.Strength) string {
	if r.batch.Units == recipe.US || s.Basis != recipe.Proof {
		return strengthText(s)
	}
	return percent(s.Value) + " vol (" + strengthText(s) + ")"
}

func strengthText(s recipe.Strength) string {
	switch s.Basis {
	case recipe.Proof:
		return wording.Decimal(s.Value*200) + " proof"
	case recipe.ABW:
		return wording.Decimal(s.Value*100) + " % abw"
	}
	return wording.Decimal(s.Value*100) + " % abv"
}

func durationText(s float64) string {
	if years := s / quantity.YearS; years >= 1 {
		if years < 1.001 {
			return "1 year"
		}
		return wording.Decimal(years) + " years"
	}
	return wording.Decimal(s/quantity.DayS) + " days"
}

// woodText writes a wood for a reader.
func woodText(w recipe.Wood) string {
	if w.None {
		return "no wood at all"
	}
	return w.Text()
}
