// Package trial shows a batch and its variants side by side.
package trial

import (
	"fmt"
	"newmake/lang/words"
	"slices"
	"strings"

	"newmake/compile/measure"
	"newmake/compile/plan"
)

// Trial is a batch and its variants, to be read side by side: the batch first.
type Trial []*plan.Plan

// trialRow is one number of each plan, as it is said to a reader. What is said
// otherwise than of the first plan is marked.
type trialRow struct {
	what  string
	cells []string
}

func (r trialRow) differs(i int) bool { return r.cells[i] != r.cells[0] }

// rows are the numbers that a trial is about.
func (t Trial) rows(u measure.Units) []trialRow {
	var out []trialRow
	add := func(what string, say func(p *plan.Plan) string) {
		r := trialRow{what: what}
		for _, p := range t {
			r.cells = append(r.cells, say(p))
		}
		out = append(out, r)
	}
	add("grain", func(p *plan.Plan) string { return u.Mass(p.Bill.TotalKg) })
	for _, grain := range t.grains() {
		add("  "+grain, func(p *plan.Plan) string { return share(p, grain) })
	}
	add("gravity at pitch", func(p *plan.Plan) string { return measure.Gravity(p.Mash.HydrometerSG) })
	add("final gravity", func(p *plan.Plan) string { return measure.Gravity(p.Summary.FinalGravitySG) })
	add("wash", func(p *plan.Plan) string { return u.Volume(p.Ferment.Wash) })
	add("  strength", func(p *plan.Plan) string { return u.LotAbv(p.Ferment.Wash) })
	add("low wines", func(p *plan.Plan) string { return u.Volume(p.Strip.Fraction("low wines").Lot) })
	add("  strength", func(p *plan.Plan) string { return u.LotAbv(p.Strip.Fraction("low wines").Lot) })
	add("hearts", func(p *plan.Plan) string { return u.Volume(hearts(p)) })
	add("  strength", func(p *plan.Plan) string { return strengthOf(u, hearts(p)) })
	add("  alcohol", func(p *plan.Plan) string { return pureOf(u, hearts(p)) })
	add("feints", func(p *plan.Plan) string {
		if p.Spirit.Feints == nil {
			return "none"
		}
		return u.Volume(*p.Spirit.Feints)
	})
	add("casks", func(p *plan.Plan) string { return fmt.Sprint(p.Cask.Casks) })
	add("left over", func(p *plan.Plan) string { return u.Volume(p.Cask.Leftover) })
	add("yield", func(p *plan.Plan) string {
		if u == measure.US {
			return measure.Number(p.Yield.HeartsPGPerBushel, 2) + " PG" + measure.PerBushel
		}
		return measure.Number(p.Yield.HeartsLPAPerTonne, 0) + " LPA/t"
	})
	add("mash", func(p *plan.Plan) string { return measure.Duration(60 * p.Summary.MashHours) })
	add("ferment", func(p *plan.Plan) string { return measure.Duration(60 * p.Summary.FermentHours) })
	add("  dry after", func(p *plan.Plan) string {
		if p.Ferment.DryHours == 0 {
			return "never"
		}
		return measure.Duration(60 * p.Ferment.DryHours)
	})
	add("stripping run", func(p *plan.Plan) string { return measure.Duration(60 * p.Summary.StripHours) })
	add("spirit run", func(p *plan.Plan) string { return measure.Duration(60 * p.Summary.SpiritHours) })
	if t[0].Cost != nil {
		add("cost", func(p *plan.Plan) string {
			if p.Cost == nil {
				return "none"
			}
			return measure.Number(p.Cost.Total, 0) + " " + p.Cost.Currency
		})
		add("  a bottle", func(p *plan.Plan) string {
			if p.Cost == nil || p.Cost.PerBottle == 0 {
				return "none"
			}
			return measure.Number(p.Cost.PerBottle, plan.MoneyPlaces(p.Cost.Currency)) + " " + p.Cost.Currency
		})
		add("  has no price", func(p *plan.Plan) string {
			if p.Cost == nil || len(p.Cost.Unpriced) == 0 {
				return "none"
			}
			return words.Count(len(p.Cost.Unpriced), "thing")
		})
	}
	add("promises broken", func(p *plan.Plan) string { return fmt.Sprint(broken(p)) })
	add("warnings", func(p *plan.Plan) string { return fmt.Sprint(warned(p)) })
	return out
}

// grains lists every grain of the bills, those of the first plan first.
func (t Trial) grains() []string {
	var out []string
	seen := map[string]bool{}
	for _, p := range t {
		for _, l := range p.Bill.Lines {
			if !seen[l.Name] {
				seen[l.Name] = true
				out = append(out, l.Name)
			}
		}
	}
	return out
}

func share(p *plan.Plan, grain string) string {
	for _, l := range p.Bill.Lines {
		if l.Name == grain {
			return measure.Number(l.SharePct, 1) + " %"
		}
	}
	return "none"
}

func hearts(p *plan.Plan) plan.Lot { return p.Spirit.Fraction("hearts").Lot }

func strengthOf(u measure.Units, l plan.Lot) string {
	if u == measure.US {
		return measure.Number(l.Proof, 1) + " proof"
	}
	return u.Abv(l.AbvPct)
}

func pureOf(u measure.Units, l plan.Lot) string {
	if u == measure.US {
		return measure.Number(l.ProofGallons, 1) + " PG"
	}
	return measure.Number(l.PureL, 1) + " LPA"
}

func broken(p *plan.Plan) int {
	n := 0
	for _, promise := range p.Promises {
		if promise.Stands() == plan.PromiseBroken {
			n++
		}
	}
	return n
}

func warned(p *plan.Plan) int {
	n := 0
	for _, notice := range p.Notices {
		if notice.Severity == "warning" {
			n++
		}
	}
	return n
}

// letter is how a plan of a trial is called in its table.
func letter(i int) string {
	if i < 26 {
		return string(rune('A' + i))
	}
	return letter(i/26-1) + letter(i%26)
}

// legend says which plan a letter is, and what it has other than its parent.
func (t Trial) legend(i int) string {
	p := t[i]
	text := p.Batch.Name
	if i == 0 || len(p.Batch.Changes) == 0 {
		return text
	}
	if p.Batch.Parent != t[0].Batch.Name {
		text += ", from " + p.Batch.Parent
	}
	return text + ": " + strings.Join(p.Batch.Changes, "; ")
}

// unpriced says of each plan what has no price in it, and so counts as nothing: of the first
// all of it, of the others what is more.
func (t Trial) unpriced() []string {
	var out []string
	for i, p := range t {
		if p.Cost == nil {
			continue
		}
		var more []string
		for _, what := range p.Cost.Unpriced {
			if i == 0 || t[0].Cost == nil || !slices.Contains(t[0].Cost.Unpriced, what) {
				more = append(more, what)
			}
		}
		if len(more) > 0 {
			also := ""
			if i > 0 {
				also = " also"
			}
			out = append(out, letter(i)+" has"+also+" no price for "+words.And(more)+", counted as nothing.")
		}
	}
	return out
}
