package glance

import (
	"fmt"
	"strings"

	"newmake/compile/measure"
	"newmake/compile/plan"
	"newmake/compile/show/columns"
	"newmake/lang/words"
)

// link is a stage of the chain: how much, and below it how strong.
type link struct{ much, strong string }

// chain is the way from grain to cask: a line of amounts with the strengths below, and
// a line of what is made, what it costs and how the law stands.
func (g *screen) chain() []string {
	links := g.links()
	top, below := "  ", "  "
	for i, l := range links {
		w := max(columns.Width(l.much), columns.Width(l.strong))
		top, below = top+columns.Fill(l.much, w), below+columns.Fill(l.strong, w)
		if i < len(links)-1 {
			top, below = top+" > ", below+"   "
		}
	}
	top, below = strings.TrimRight(top, " "), strings.TrimRight(below, " ")
	out := []string{top, below}
	if columns.Width(top) > columns.Page || columns.Width(below) > columns.Page { // the strength goes beside its amount
		var all []string
		for _, l := range links {
			all = append(all, strings.TrimSpace(l.much+" "+bracketed(l.strong)))
		}
		out = limited(strings.Join(all, " > "), 2, 4, 3)
	}
	for _, line := range g.outcome() {
		out = append(out, limited(line, 2, 4, 1)...)
	}
	return out
}

func bracketed(s string) string {
	if s == "" {
		return ""
	}
	return "(" + s + ")"
}

func (g *screen) links() []link {
	p := g.p
	low, hearts := p.Strip.Fraction("low wines").Lot, p.Spirit.Fraction("hearts").Lot
	amount := func(l plan.Lot) string { return g.Brief(l.Volume()) }
	out := []link{
		{g.Brief(plan.Of(p.Bill.TotalKg, plan.Kilogram)) + " grain", ""},
		{amount(p.Ferment.Wash) + " wash", g.byVolume(p.Ferment.Wash)},
		{amount(low) + " low wines", g.byVolume(low)},
		{amount(hearts) + " hearts", g.strength(hearts.Strength())},
	}
	switch {
	case p.Cask.SizeL == 0 && p.Cask.Bottles > 0:
		out = append(out, link{words.Count(p.Cask.Bottles, "bottle"), g.strength(p.Cask.BottleAt)})
	case p.Cask.SizeL == 0:
	case p.Cask.Casks == 0:
		out = append(out, link{"no cask", ""})
	default:
		out = append(out, link{words.Count(p.Cask.Casks, "cask"), g.strength(p.Cask.Entry)})
	}
	return out
}

func (g *screen) byVolume(l plan.Lot) string {
	if g.Units == measure.SI {
		return g.strength(l.Strength())
	}
	return strings.Replace(g.LotAbv(l), ".0 %", " %", 1) // as the full plan has it
}

// strength is in the measure that spirit is sold by.
func (g *screen) strength(s plan.Strength) string {
	if g.Units == measure.SI {
		return g.Brief(s.ByVolume()) + " vol"
	}
	return g.Brief(s.At())
}

// outcome is a line of what is made, and one of what it costs and how the law stands.
func (g *screen) outcome() []string {
	p := g.p
	hearts := p.Spirit.Fraction("hearts").Lot
	made := measure.Number(hearts.PureL, 1) + " LPA"
	if g.Units == measure.US {
		made = measure.Number(hearts.ProofGallons, 1) + " PG"
	}
	if c := p.Cask; c.SizeL > 0 {
		made += " · casks of " + g.Brief(plan.Of(c.SizeL, plan.Litre))
		if c.Leftover.VolumeL > 0 {
			made += ", " + g.Brief(c.Leftover.Volume()) + " left over"
		}
	}
	var out []string
	if c := p.Cost; c != nil {
		each, unit := c.PerLPA, "LPA"
		if g.Units == measure.US {
			each, unit = c.PerPG, "PG"
		}
		out = append(out, measure.Number(c.Total, 0)+" "+c.Currency+", "+measure.Number(each, plan.MoneyPlaces(c.Currency))+" a "+unit)
	}
	if said := g.law(); said != "" {
		out = append(out, said)
	}
	return []string{made, strings.Join(out, " · ")}
}

// law counts the conditions by how they stand.
func (g *screen) law() string {
	l := g.p.Law
	if l == nil {
		return ""
	}
	count := map[string]int{}
	var order []string
	for _, c := range l.Conditions {
		if count[c.Met] == 0 {
			order = append(order, c.Met)
		}
		count[c.Met]++
	}
	var parts []string
	for _, met := range order {
		parts = append(parts, fmt.Sprintf("%d %s", count[met], met))
	}
	return "law: " + strings.Join(parts, ", ")
}
