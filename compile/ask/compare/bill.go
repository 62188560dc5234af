package compare

import (
	"fmt"
	"math"
	"slices"

	"newmake/compile/plan"
	"newmake/lang/recipe"
)

// billMix is the bill between old and new: which edit changes which grain.
type billMix struct {
	order          []string // the new bill's, then what only the old one had
	old, new       map[string]recipe.BillLine
	oldKg, newKg   float64
	total          int            // the edit of the total; -1 if it stays
	weights        map[string]int // by weight: the edit of each grain
	shifts         []shift        // by share
	byWeight, same bool
}

// shift is share that an edit moves between grains.
type shift struct {
	edit int
	by   map[string]float64
}

// Weights and shares closer than these are the same: a bill's own sum may be off
// by half a part in a thousand.
const (
	sameKg    = 1e-6
	sameShare = 1e-6
)

// findBill finds the edits of the bill. A bill is looked at by weight when fewer
// grains changed in weight than in share (one grain more, the rest as it was),
// and else by share: the total, and share that went from one grain to another.
func (d *Difference) findBill() {
	m := &d.bill
	m.total = -1
	m.old, m.new = byGrain(d.Old.Bill), byGrain(d.New.Bill)
	m.oldKg, m.newKg = d.Old.Bill.TotalKg, d.New.Bill.TotalKg
	for _, l := range d.New.Bill.Lines {
		m.order = append(m.order, l.Grain.Name)
	}
	for _, l := range d.Old.Bill.Lines {
		if _, ok := m.new[l.Grain.Name]; !ok {
			m.order = append(m.order, l.Grain.Name)
		}
	}
	var kg, shares []string
	for _, g := range m.order {
		o, n := m.old[g], m.new[g]
		d.Bill = append(d.Bill, BillRow{
			Grain: g, OldKg: plan.RoundTo(o.MassKg, 3), NewKg: plan.RoundTo(n.MassKg, 3),
			OldPct: plan.RoundTo(100*o.Share, 4), NewPct: plan.RoundTo(100*n.Share, 4), Points: plan.RoundTo(100*(n.Share-o.Share), 4),
		})
		if math.Abs(n.MassKg-o.MassKg) > sameKg*m.oldKg {
			kg = append(kg, g)
		}
		if math.Abs(n.Share-o.Share) > sameShare {
			shares = append(shares, g)
		}
	}
	total := math.Abs(m.newKg-m.oldKg) > sameKg*m.oldKg
	switch {
	case len(kg) == 0 && len(shares) == 0 && !total:
		m.same = true
		d.reordered()
	case total && len(kg) < len(shares):
		m.byWeight = true
		m.weights = map[string]int{}
		for _, g := range kg {
			m.weights[g] = d.add(d.billLine(g))
		}
	default:
		if total {
			m.total = d.add(Edit{Part: OfBill, Kind: Changed, Path: recipe.PathBill, Counts: true,
				What:  "bill " + moreOrLess(m.newKg-m.oldKg, d.say.mass),
				Lines: []Line{{Name: "bill", Old: d.say.mass(m.oldKg), New: d.say.mass(m.newKg)}}})
		}
		d.shares(shares)
	}
}

func byGrain(b recipe.Bill) map[string]recipe.BillLine {
	out := make(map[string]recipe.BillLine, len(b.Lines))
	for _, l := range b.Lines {
		out[l.Grain.Name] = l
	}
	return out
}

// reordered notes lines of the bill in another order.
func (d *Difference) reordered() {
	same := slices.EqualFunc(d.Old.Bill.Lines, d.New.Bill.Lines, func(a, b recipe.BillLine) bool { return a.Grain.Name == b.Grain.Name })
	if !same {
		d.note("the lines of the bill stand in another order, which has no effect")
	}
}

// billLine is one grain's weight changed.
func (d *Difference) billLine(g string) Edit {
	o, n := d.bill.old[g].MassKg, d.bill.new[g].MassKg
	e := Edit{Part: OfBill, Kind: Changed, Path: recipe.PathBill.Child(g), Counts: true,
		What:  g + " " + moreOrLess(n-o, d.say.mass),
		Lines: []Line{{Name: g, Old: d.say.mass(o), New: d.say.mass(n)}}}
	switch {
	case o == 0:
		e.Kind, e.Lines[0].Old = Added, ""
	case n == 0:
		e.Kind, e.Lines[0].New = Removed, ""
	}
	return e
}

// moreOrLess says a difference: "50 lb more".
func moreOrLess(by float64, words func(float64) string) string {
	if by < 0 {
		return words(-by) + " less"
	}
	return words(by) + " more"
}

// shares finds which grain gave way to which. Where several gave and several
// took, who gave to whom is nobody's to say, and it is one edit.
func (d *Difference) shares(changed []string) {
	m := &d.bill
	var give, take []string
	by := map[string]float64{}
	for _, g := range changed {
		by[g] = m.new[g].Share - m.old[g].Share
		if by[g] < 0 {
			give = append(give, g)
		} else {
			take = append(take, g)
		}
	}
	pair := func(taker, giver string, share float64) {
		e := Edit{Part: OfBill, Kind: Changed, Path: recipe.PathBill.Child(taker), Counts: true,
			What: fmt.Sprintf("%s for %s, %s", taker, giver, points(share))}
		e.Lines = append(e.Lines, d.shareLine(taker), d.shareLine(giver))
		m.shifts = append(m.shifts, shift{d.add(e), map[string]float64{taker: share, giver: -share}})
	}
	switch {
	case len(changed) == 0:
	case len(give) == 1:
		for _, t := range take {
			pair(t, give[0], by[t])
		}
	case len(take) == 1:
		for _, g := range give {
			pair(take[0], g, -by[g])
		}
	default:
		e := Edit{Part: OfBill, Kind: Changed, Path: recipe.PathBill, What: "the shares of the bill", Counts: true}
		for _, g := range changed {
			e.Lines = append(e.Lines, d.shareLine(g))
		}
		m.shifts = append(m.shifts, shift{d.add(e), by})
	}
}

func points(share float64) string {
	p := number(math.Round(1e6*math.Abs(share)) / 1e4)
	if p == "1" {
		return "1 point"
	}
	return p + " points"
}

func (d *Difference) shareLine(g string) Line {
	l := Line{Name: g}
	if o, ok := d.bill.old[g]; ok {
		l.Old = d.say.share(math.Round(1e6*o.Share) / 1e6)
	}
	if n, ok := d.bill.new[g]; ok {
		l.New = d.say.share(math.Round(1e6*n.Share) / 1e6)
	}
	return l
}

func (m *billMix) renumber(to []int) {
	m.total = at(to, m.total)
	for g, e := range m.weights {
		m.weights[g] = to[e]
	}
	for i := range m.shifts {
		m.shifts[i].edit = to[m.shifts[i].edit]
	}
}

// nothing is a share below which a grain is not in the bill.
const nothing = 1e-9

// mix is the bill with some of the edits made.
func (m *billMix) mix(on []bool) recipe.Bill {
	out := recipe.Bill{TotalKg: m.oldKg}
	if m.total >= 0 && on[m.total] {
		out.TotalKg = m.newKg
	}
	kg := make(map[string]float64, len(m.order))
	if m.byWeight {
		out.TotalKg = 0
		for _, g := range m.order {
			kg[g] = m.old[g].MassKg
			if e, ok := m.weights[g]; ok && on[e] {
				kg[g] = m.new[g].MassKg
			}
			out.TotalKg += kg[g]
		}
	} else {
		for _, g := range m.order {
			share := m.old[g].Share
			for _, s := range m.shifts {
				if on[s.edit] {
					share += s.by[g]
				}
			}
			kg[g] = share * out.TotalKg
		}
	}
	for _, g := range m.order {
		if kg[g] <= nothing*out.TotalKg {
			continue
		}
		l, ok := m.old[g]
		if !ok {
			l = m.new[g]
		}
		l.MassKg = kg[g]
		out.Lines = append(out.Lines, l)
	}
	return out
}
