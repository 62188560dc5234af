package season

import (
	"cmp"
	"math"
	"slices"

	"newmake/compile/numbers"
	"newmake/lang/recipe"
	"newmake/lang/record"
)

// Kinds of what is bought.
const (
	BuyGrain    = "grain"
	BuyYeast    = "yeast"
	BuyEnzyme   = "enzyme"
	BuyChemical = "chemical"
	BuyCask     = "cask"
)

// Bags of grain, and how many lie on a pallet (common practice).
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
}

// buy is what has to be there, on the day before it is used, week by week. What is in store
// goes first.
func (s *solver) buy(out *Season) *BuyList {
	list := &BuyList{Lines: []Buy{}, Weeks: []WeekBuy{}, Unpriced: []string{}}
	var needs []need
	for i, j := range s.present() {
		if s.list[j].done != nil && s.list[j].done.filled >= 0 {
			continue
		}
		r, f := out.Runs[i], s.flows.runs[i]
		if f.err != nil {
			continue
		}
		if k := f.n.Costs.Currency; list.Currency == "" {
			list.Currency = k
		}
		needs = append(needs, s.needs(r, f, s.list[j])...)
	}
	slices.SortStableFunc(needs, func(a, b need) int {
		return cmp.Or(cmp.Compare(a.kind, b.kind), cmp.Compare(a.what, b.what), a.by.Compare(b.by))
	})
	store := map[string]float64{}
	for what, amount := range s.Store {
		store[what] = amount
	}
	weeks := map[record.Date]float64{}
	for _, n := range needs {
		monday := mondayOf(n.by)
		k := len(list.Lines) - 1
		if k < 0 || list.Lines[k].What != n.what || list.Lines[k].Kind != n.kind || mondayOf(record.ReadDate(list.Lines[k].By)) != monday {
			list.Lines = append(list.Lines, Buy{What: n.what, Kind: n.kind, By: n.by.String(), Unit: n.unit, Priced: n.price > 0, Runs: []string{}})
			k++
		}
		b := &list.Lines[k]
		b.Need += n.amount
		from := min(store[n.what], n.amount)
		store[n.what] -= from
		b.Store += from
		b.Buy += n.amount - from
		b.Cost += (n.amount - from) * n.price
		weeks[monday] += (n.amount - from) * n.price
		if !slices.Contains(b.Runs, n.run) {
			b.Runs = append(b.Runs, n.run)
		}
		if n.price == 0 && !slices.Contains(list.Unpriced, n.what) {
			list.Unpriced = append(list.Unpriced, n.what)
		}
	}
	bag := bagUSKg
	if out.Units == "si" {
		bag = bagSIKg
	}
	for i := range list.Lines {
		b := &list.Lines[i]
		b.Need, b.Store, b.Buy, b.Cost = to(b.Need, 3), to(b.Store, 3), to(b.Buy, 3), to(b.Cost, 2)
		if b.Kind == BuyGrain && b.Buy > 0 {
			b.Packs, b.PackOf = int(math.Ceil(b.Buy/bag-1e-9)), to(bag, 3)
			b.Pallets = to(float64(b.Packs)/bagsLayed, 1)
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
func (s *solver) needs(r Run, f *flowed, w *want) []need {
	var out []need
	b := f.n.Batch
	mash := record.DateOf(moment(r.Mash)).After(-1)
	add := func(what, kind string, kg float64, by record.Date) {
		if kg > 0 {
			out = append(out, need{what, kind, "kg", kg, by, r.Number, b.Costs.PerKg[what]})
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
		out = append(out, need{what, BuyCask, "each", float64(r.Casks), record.DateOf(moment(soak)).After(-1), r.Number, price})
	}
	return out
}

// Casks as the list calls them.
const (
	CaskNew  = "new cask"
	CaskUsed = "used cask"
)

func mondayOf(d record.Date) record.Date { return d.After(-((int(d.Weekday()) + 6) % 7)) }
