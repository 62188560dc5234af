package season

import (
	"cmp"
	"math"
	"slices"

	"newmake/compile/numbers"
	"newmake/lang/recipe"
	"newmake/lang/record"
	"newmake/lang/sorting"
)

// Kinds of what is bought.
const (
	BuyGrain    = "grain"
	BuyYeast    = "yeast"
	BuyEnzyme   = "enzyme"
	BuyChemical = "chemical"
	BuyCask     = "cask"
)

// Bags of grain, and how many lie on a pallet, where the costs of the house say nothing
// (common practice).
const (
	bagSIKg   = 25.0
	bagUSKg   = 50 * 0.45359237
	bagsLayed = 40
)

// antifoamKgM3 is the density of an emulsion, mostly water (from memory).
const antifoamKgM3 = 1000

// need is something that a run uses.
type need struct {
	what, kind, unit string
	amount           float64
	by               record.Date
	run              string
	price            float64 // of a unit; 0: not said
	bag              float64 // of what comes in bags: what one holds
	stacked          int     // of them on a pallet
}

// buy is what has to be there, on the last day of work before it is used, week by week. What is in store
// goes first.
func (s *answer) buy() *BuyList {
	list := &BuyList{Lines: []Buy{}, Weeks: []WeekBuy{}, Unpriced: []string{}}
	var needs []need
	for i, j := range s.order {
		if s.list[j].done != nil && s.list[j].done.filled >= 0 {
			continue
		}
		r, f := s.out.Runs[i], s.flows.runs[i]
		if f.err != nil {
			continue
		}
		if k := f.n.Costs.Currency; list.Currency == "" {
			list.Currency = k
		}
		needs = append(needs, s.needs(r, f, s.list[j])...)
	}
	sorting.Stable(needs, func(a, b need) int {
		return cmp.Or(cmp.Compare(a.kind, b.kind), cmp.Compare(a.what, b.what), a.by.Compare(b.by))
	})
	store := map[string]float64{}
	for what, amount := range s.Store {
		store[what] = amount
	}
	weeks := map[record.Date]float64{}
	stacked, prices := map[string]int{}, map[string]float64{}
	for _, n := range needs {
		stacked[n.what] = n.stacked
		monday := mondayOf(n.by)
		k := len(list.Lines) - 1
		if k < 0 || list.Lines[k].What != n.what || list.Lines[k].Kind != n.kind || mondayOf(record.ReadDate(list.Lines[k].By)) != monday {
			list.Lines = append(list.Lines, Buy{What: n.what, Kind: n.kind, By: n.by.String(), Unit: n.unit, Priced: n.price > 0, PackOf: n.bag, Runs: []string{}})
			k++
		}
		b := &list.Lines[k]
		b.Need += n.amount
		prices[n.what] = n.price
		if !slices.Contains(b.Runs, n.run) {
			b.Runs = append(b.Runs, n.run)
		}
		if n.price == 0 && !slices.Contains(list.Unpriced, n.what) {
			list.Unpriced = append(list.Unpriced, n.what)
		}
	}
	for i := range list.Lines {
		b := &list.Lines[i]
		b.Store = min(store[b.What], b.Need)
		b.Buy = b.Need - b.Store
		bought := b.Buy
		if bag := b.PackOf; bag > 0 && b.Buy > 0 {
			// Whole bags are paid for, and what is over lies in store for the weeks to come.
			b.Packs = int(math.Ceil(b.Buy/bag - 1e-9))
			bought = float64(b.Packs) * bag
			if n := stacked[b.What]; n > 0 {
				b.Pallets = to(float64(b.Packs)/float64(n), 1)
			}
		}
		store[b.What] += bought - b.Buy - b.Store
		b.Cost = bought * prices[b.What]
		weeks[mondayOf(record.ReadDate(b.By))] += b.Cost
		b.Need, b.Store, b.Buy, b.Cost = to(b.Need, 3), to(b.Store, 3), to(b.Buy, 3), to(b.Cost, 2)
		b.PackOf = to(b.PackOf, 3)
		if b.Packs == 0 {
			b.PackOf = 0
		}
	}
	var mondays []record.Date
	for m := range weeks {
		mondays = append(mondays, m)
	}
	slices.SortFunc(mondays, record.Date.Compare)
	for _, m := range mondays {
		list.Cost += weeks[m]
		list.Weeks = append(list.Weeks, WeekBuy{Monday: m.String(), Cost: to(weeks[m], 2), Sum: to(list.Cost, 2)})
	}
	list.Cost = to(list.Cost, 2)
	return list
}

// needs is what one run uses: of a mash that has begun only its casks are still to come.
func (s *answer) needs(r Run, f *flowed, w *want) []need {
	var out []need
	b := f.n.Batch
	mash := s.there(record.DateOf(moment(r.Mash)))
	add := func(what, kind string, kg float64, by record.Date) {
		if kg > 0 {
			n := need{what: what, kind: kind, unit: "kg", amount: kg, by: by, run: r.Number, price: b.Costs.PerKg[what]}
			n.bag, n.stacked = bagOf(b, what, kind)
			out = append(out, n)
		}
	}
	if w.done == nil {
		for _, l := range b.Bill.Lines {
			add(l.Grain.Name, BuyGrain, l.MassKg, mash)
		}
		for _, x := range b.Mash.Steps {
			if x.Verb == recipe.MashDose && x.Enzyme != nil {
				add(x.Enzyme.Name, BuyEnzyme, x.MassKg, mash)
			}
		}
		for _, d := range b.Ferm.Doses {
			add(d.Enzyme.Name, BuyEnzyme, d.MassKg, mash)
		}
		if b.Ferm.Yeast != nil {
			add(b.Ferm.Yeast.Name, BuyYeast, f.n.Fermented.PitchKg, mash)
		}
		t := b.Mash.Treatment
		add(t.Acid.String()+"-acid", BuyChemical, f.n.Mashed.AcidKg, mash)
		add("gypsum", BuyChemical, t.GypsumKg, mash)
		add("lime", BuyChemical, t.LimeKg, mash)
		add("dap", BuyChemical, f.n.Fermented.NutrientKg, mash)
		add("antifoam", BuyChemical, b.Ferm.AntifoamM3*antifoamKgM3, mash)
	}
	if r.Casks > 0 && numbers.InWood(b) {
		what, price := CaskNew, b.Costs.PerCask
		if !b.Cask.New {
			what, price = CaskUsed, b.Costs.PerUsedCask
		}
		soak := r.Filled
		for _, t := range r.Tasks {
			if t.Key == "fill.soak" {
				soak = t.Start
			}
		}
		out = append(out, need{what: what, kind: BuyCask, unit: "each", amount: float64(r.Casks), by: s.there(record.DateOf(moment(soak))), run: r.Number, price: price})
	}
	return out
}

// mostShut is the longest time without anybody that is looked past.
const mostShut = 31

// there is the day by which what is used on a day has to be there: the last one before it
// on which somebody is, to take it in.
func (s *answer) there(used record.Date) record.Date {
	before := used.After(-1)
	for d, n := before, 0; n < mostShut; d, n = d.After(-1), n+1 {
		if s.works(d) {
			return d
		}
	}
	return before
}

// works says that somebody is in the house on a day, of the season or before it.
func (s *answer) works(d record.Date) bool {
	if on := s.axis.on(d); on != nil {
		return len(on.people) > 0
	}
	return always(s.Plant.Shift) || s.Plant.Shift.Days[d.Weekday()]
}

// bagOf is what a bag of something holds, and how many lie on a pallet: as the costs of the
// house say, and of a grain as is common else. 0: it comes in none.
func bagOf(b *recipe.Batch, what, kind string) (kg float64, stacked int) {
	kg, stacked = b.Costs.BagKg[what], b.Costs.BagsAPallet[what]
	if kind != BuyGrain {
		return kg, stacked
	}
	common := bagUSKg
	if b.Units == recipe.SI {
		common = bagSIKg
	}
	return cmp.Or(kg, common), cmp.Or(stacked, bagsLayed)
}

// Casks as the list calls them.
const (
	CaskNew  = "new cask"
	CaskUsed = "used cask"
)

func mondayOf(d record.Date) record.Date { return d.After(-((int(d.Weekday()) + 6) % 7)) }
