package ledger

import (
	"cmp"
	"fmt"

	"newmake/compile/matter/fluid"
	"newmake/compile/plan"
	"newmake/lang/recipe"
	"newmake/lang/record"
)

// Money is what things cost the house, by what its records and its prices say. What a lot
// cost is its own price, where its store has it; heat, water and work are those of the plan
// that was kept when the run was opened, else of the batch's plan as it stands. The hearts
// of a run bear all that it cost: its feints count as nothing, since a later run charges
// them again. What is lost, or given as a sample, is borne by what is left: so a cask's
// spirit costs more a proof gallon when it comes out than when it went in.
type Money struct {
	Currency  string       `json:"currency"`
	Runs      []RunCost    `json:"runs"`
	Casks     []CaskCost   `json:"casks"`
	Bottlings []BottleCost `json:"bottlings"`
	Excise    *Due         `json:"excise,omitempty"` // none where no rate is known
	LeftOut   []string     `json:"leftOut"`
}

// RunCost is what a run cost that was produced in the month.
type RunCost struct {
	Run       string  `json:"run"`
	Batch     string  `json:"batch"`
	Materials float64 `json:"materials"`
	ByPlan    bool    `json:"materialsByPlan"` // nobody wrote what went in
	Work      float64 `json:"heatWaterWork"`   // by the plan
	Kept      bool    `json:"planKept"`        // the plan is the one that was kept when the run was opened
	Total     float64 `json:"total"`
	Produced  Amount  `json:"produced"`
	Each      float64 `json:"perUnit"` // of alcohol in the hearts, in the unit of the law; feints count as nothing
}

// CaskCost is what a cask cost that was filled or emptied in the month.
type CaskCost struct {
	Serial   string  `json:"serial"`
	Filled   string  `json:"filled"`
	Years    float64 `json:"years"`
	Spirit   float64 `json:"spirit"`
	Wood     float64 `json:"wood"`
	Carrying float64 `json:"carrying"` // of money that lies in it, simple, by the house's rate
	Total    float64 `json:"total"`
	In       Amount  `json:"in"`
	Left     Amount  `json:"left"` // in it, or drawn from it
	EachIn   float64 `json:"perUnitIn"`
	EachLeft float64 `json:"perUnitLeft"` // more by what evaporated
}

// BottleCost is what a bottle cost of a bottling of the month.
type BottleCost struct {
	Lot           string  `json:"lot"`
	Bottles       int     `json:"bottles"`         // that can be sold
	Glass         float64 `json:"glass,omitempty"` // of all that were filled, with closures and labels
	Total         float64 `json:"total"`
	Each          float64 `json:"perBottle"`
	ExciseReduced float64 `json:"excisePerBottle"` // with the reduced rates, where the law has such
	ExciseFull    float64 `json:"fullExcisePerBottle"`
	Margin        float64 `json:"marginPct,omitempty"`
	Price         float64 `json:"price,omitempty"` // that leaves the margin, before tax on sales
	PriceFull     float64 `json:"priceAtFullExcise,omitempty"`
}

// Due is the excise on what was withdrawn in the month.
type Due struct {
	Withdrawn Amount   `json:"withdrawn"`
	YearToDay Amount   `json:"yearBefore"` // withdrawn in the calendar year, before the month
	Reduced   float64  `json:"withReducedRates"`
	Full      float64  `json:"atTheFullRate"`
	Sources   []string `json:"sources"`
}

// Prices is what money asks of a house.
type Prices struct {
	recipe.Costs
	// Plan is what a run costs by its plan, nil if nobody knows. It is kept where it is the
	// plan that was kept when the run was opened, and not what its batch gives today.
	Plan func(run *record.Run) (cost *plan.Cost, kept bool)
	// New says that a batch fills new casks.
	New    func(batch string) bool
	Margin float64 // of the price, as a share; 0: no price is asked for
}

// costing follows money through the holders.
type costing struct {
	p       *Prices
	law     Law
	in, out map[*holder][]movement
	own     map[*holder]float64
	known   map[*holder]*worth
	until   record.Date
	lives   map[*holder]*record.Life
	runs    map[string]*RunCost
}

// worth is what a holder's content cost, together and a hundredth of a proof gallon.
type worth struct {
	spirit, wood, carrying float64
	in, good               int64 // alcohol that came, and that bears the cost
}

func (w *worth) total() float64 { return w.spirit + w.wood + w.carrying }

func (w *worth) each() float64 {
	if w.good <= 0 {
		return 0
	}
	return w.total() / float64(w.good)
}

// bears says that what goes to an account is there, or was sold. What is lost, left in the
// stills or tasted is none of it.
func bears(a Account) bool {
	return a != Losses && a != Stills && a != Samples && a != Destroyed
}

// pays says that what moved takes its cost with it. What is lost, left in the stills or
// tasted is paid for by the rest, and so are feints, that a later run charges again.
func pays(m *movement) bool {
	return bears(m.to.account) && !(m.from.account == Unfinished && m.to.account == Unfinished)
}

// worth is what a holder's content cost. A circle, two tanks pumped to and fro, is cut
// where it closes.
func (c *costing) worth(h *holder) *worth {
	if w := c.known[h]; w != nil {
		return w
	}
	w := &worth{}
	c.known[h] = w
	if h.name == "" {
		return w
	}
	spirit := c.own[h]
	for _, m := range c.in[h] {
		if pays(&m) {
			spirit += float64(m.amount.pg) * c.worth(m.from).each()
		}
		if m.from.name != "" {
			w.in += m.amount.pg
		}
	}
	for _, m := range c.out[h] {
		if pays(&m) {
			w.good += m.amount.pg
		}
	}
	w.good += max(0, h.balance.pg)
	w.spirit = spirit
	if l := c.lives[h]; l != nil {
		c.wood(w, l)
	}
	return w
}

// wood adds the cask and what its money costs while it lies.
func (c *costing) wood(w *worth, l *record.Life) {
	used := l.Cask != nil && l.Cask.Used
	if l.Cask == nil || l.Cask.SizeM3 == 0 {
		used = len(l.Fills) > 0 && !c.p.New(l.Fills[0].Run.Batch)
	}
	w.wood = c.p.PerCask
	if used {
		w.wood = c.p.PerUsedCask
	}
	w.carrying = (w.spirit + w.wood) * c.p.CarryingPerYear * c.years(l)
}

// years is how long a cask has lain, by the end of the month.
func (c *costing) years(l *record.Life) float64 {
	if l.Filled().IsZero() {
		return 0
	}
	until := c.until
	if end := l.Over(); end != nil && end.On.Compare(until) < 0 {
		until = end.On
	}
	return max(0, float64(l.Filled().DaysTo(until))/365.25)
}

// ofRun is what a run cost.
func (c *costing) ofRun(r *record.Run, uses []use) *RunCost {
	o := &RunCost{Run: r.Number, Batch: r.Batch}
	for _, u := range uses {
		switch {
		case u.of.price > 0:
			o.Materials += u.of.price * float64(u.amount)
		case u.of.Unit == "g":
			o.Materials += c.p.PerKg[u.of.What] * float64(u.amount) / 1000
		}
	}
	p, kept := c.p.Plan(r)
	if p != nil {
		o.Kept = kept
		for _, l := range p.Lines {
			switch {
			case l.What == "heat" || l.What == "water" || l.What == "work":
				o.Work += l.Cost
			case l.What == "casks" || l.What == "used casks":
			case len(uses) == 0:
				o.Materials, o.ByPlan = o.Materials+l.Cost, true
			}
		}
	}
	o.Total = o.Materials + o.Work
	return o
}

// cost is what things cost.
func (m *monthly) cost(b *books, p *Prices) *Money {
	c := &costing{p: p, law: m.Law, in: map[*holder][]movement{}, out: map[*holder][]movement{}, own: map[*holder]float64{}, known: map[*holder]*worth{}, until: m.last, lives: map[*holder]*record.Life{}, runs: map[string]*RunCost{}}
	for _, v := range m.now.moves {
		c.in[v.to] = append(c.in[v.to], v)
		c.out[v.from] = append(c.out[v.from], v)
	}
	uses := map[*record.Run][]use{}
	for _, u := range m.stores.uses {
		uses[u.run] = append(uses[u.run], u)
	}
	for _, r := range m.Texts.Runs {
		if h := m.now.hold[string(Unfinished)+"\x00"+stillsOf(r.Number)]; h != nil {
			o := c.ofRun(r, uses[r])
			c.runs[r.Number], c.own[h] = o, o.Total
		}
	}
	for _, l := range m.Texts.Lives {
		if h := m.now.hold[string(Wood)+"\x00"+b.names[l]]; h != nil {
			c.lives[h] = l
		}
	}
	o := &Money{Currency: p.Currency, Runs: []RunCost{}, Casks: []CaskCost{}, Bottlings: []BottleCost{}, LeftOut: []string{"rent, insurance and other overheads"}}
	if p.PerBottle == 0 {
		o.LeftOut = append(o.LeftOut, fmt.Sprintf("bottles, closures and labels: `bottle 2.40 %s` in the costs of the house", cmp.Or(o.Currency, "EUR")))
	}
	if p.CarryingPerYear == 0 {
		o.LeftOut = append(o.LeftOut, "what money costs that lies in casks: `carrying 6 %/year` in the costs of the house")
	}
	m.runCosts(c, o)
	m.caskCosts(c, b, o)
	m.bottleCosts(c, o)
	m.excise(o)
	return o
}

// each is money a hundredth of a proof gallon, turned into that of a unit of the law.
func (c *costing) each(perCent float64) float64 {
	per := perCent * 100 // a proof gallon
	if c.law.US {
		return to(per, 2)
	}
	return to(per*pgInLitre*c.law.Each, 2)
}

// pgInLitre is how many proof gallons a litre of pure alcohol at 20 C is.
var pgInLitre = fluid.Density(1, referenceC) / 1000 * 2 / fluid.Density(1, fluid.SixtyF) / fluid.USGallonM3

func (m *monthly) runCosts(c *costing, o *Money) {
	for _, r := range m.Texts.Runs {
		rc := c.runs[r.Number]
		if rc == nil {
			continue
		}
		var made cents
		inMonth, feints := false, false
		for _, v := range m.now.moves {
			switch {
			case v.from.name != stillsOf(r.Number):
			case v.to.account == Tanks:
				made = made.plus(v.amount)
				inMonth = inMonth || v.on.Compare(m.first) >= 0
			case v.to.account == Unfinished:
				feints = feints || v.on.Compare(m.first) >= 0
			}
		}
		if !inMonth {
			if feints && made.zero() && rc.Total > 0 {
				o.LeftOut = append(o.LeftOut, fmt.Sprintf("run %s, %.2f %s: feints came of it and no hearts, feints count as nothing, and so nothing bears its cost", r.Number, rc.Total, o.Currency))
			}
			continue
		}
		x := *rc
		x.Produced = made.amount()
		x.Each = c.each(c.worth(m.now.hold[string(Unfinished)+"\x00"+stillsOf(r.Number)]).each())
		x.Materials, x.Work, x.Total = to(x.Materials, 2), to(x.Work, 2), to(x.Total, 2)
		o.Runs = append(o.Runs, x)
	}
}

func (m *monthly) caskCosts(c *costing, b *books, o *Money) {
	for _, l := range m.Texts.Lives {
		h := m.now.hold[string(Wood)+"\x00"+b.names[l]]
		end := l.Over()
		filled := l.Filled().Compare(m.first) >= 0 && l.Filled().Compare(m.last) <= 0
		if h == nil || !filled && (end == nil || end.On.Compare(m.first) < 0 || end.On.Compare(m.last) > 0) {
			continue
		}
		w := c.worth(h)
		x := CaskCost{Serial: l.Serial, Filled: l.Filled().String(), Years: to(c.years(l), 2), Spirit: to(w.spirit, 2), Wood: to(w.wood, 2), Carrying: to(w.carrying, 2), Total: to(w.total(), 2)}
		var in, left cents
		for _, v := range c.in[h] {
			in = in.plus(v.amount)
		}
		left = h.balance
		for _, v := range c.out[h] {
			if bears(v.to.account) {
				left = left.plus(v.amount)
			}
		}
		x.In, x.Left = in.amount(), left.amount()
		if in.pg > 0 {
			x.EachIn = c.each(w.spirit / float64(in.pg))
		}
		x.EachLeft = c.each(w.each())
		o.Casks = append(o.Casks, x)
	}
}

func (m *monthly) bottleCosts(c *costing, o *Money) {
	for _, t := range m.Texts.Bottlings {
		h := m.now.hold[string(Bottles)+"\x00"+t.Lot]
		if h == nil || t.On.Compare(m.first) < 0 || t.On.Compare(m.last) > 0 {
			continue
		}
		n, filled := 0, 0
		for _, w := range t.Bottles {
			switch w.Word {
			case "bottles":
				n += w.N
				filled += w.N
			case "broken", "samples":
				n -= w.N
			}
		}
		w := c.worth(h)
		if n <= 0 {
			continue
		}
		glass := c.p.PerBottle * float64(filled)
		total := w.total() + glass
		x := BottleCost{Lot: t.Lot, Bottles: n, Glass: to(glass, 2), Total: to(total, 2), Each: to(total/float64(n), 2)}
		units := m.units(float64(w.good)/float64(n), float64(m.lpaOf(h))/float64(n))
		if reduced, full, known := dueOn(m.Law.Country, t.On, m.withdrawn(record.Date{Year: t.On.Year, Month: 1, Day: 1}, t.On.After(-1)), units); known && taxedIn(m.Law.Country, o.Currency) {
			x.ExciseReduced, x.ExciseFull = to(reduced, 2), to(full, 2)
		}
		if p := c.p.Margin; p > 0 && p < 1 {
			x.Margin = to(100*p, 2)
			x.Price, x.PriceFull = to((x.Each+x.ExciseReduced)/(1-p), 2), to((x.Each+x.ExciseFull)/(1-p), 2)
		}
		o.Bottlings = append(o.Bottlings, x)
	}
}

// lpaOf is what of a bottling can be sold, in hundredths of a litre of pure alcohol.
func (m *monthly) lpaOf(h *holder) int64 {
	n := h.balance.lpa
	for _, v := range m.now.moves {
		if v.from == h && bears(v.to.account) {
			n += v.amount.lpa
		}
	}
	return n
}

// units is alcohol in the units that excise is counted in: proof gallons, or litres.
func (m *monthly) units(pg, lpa float64) float64 {
	if m.Law.US {
		return pg / 100
	}
	return lpa / 100
}

// withdrawn is what was withdrawn between two days, both counted, in the units of excise.
func (m *monthly) withdrawn(from, until record.Date) float64 {
	var sum cents
	for _, v := range m.now.moves {
		if v.to.account == Withdrawn && v.on.Compare(from) >= 0 && v.on.Compare(until) <= 0 {
			sum = sum.plus(v.amount)
		}
	}
	return m.units(float64(sum.pg), float64(sum.lpa))
}

func (m *monthly) excise(o *Money) {
	defer func() { o.LeftOut = append(o.LeftOut, m.Law.Notes...) }()
	var now, before cents
	year := record.Date{Year: m.first.Year, Month: 1, Day: 1}
	for _, v := range m.now.moves {
		switch {
		case v.to.account != Withdrawn || v.on.Compare(year) < 0:
		case v.on.Compare(m.first) < 0:
			before = before.plus(v.amount)
		default:
			now = now.plus(v.amount)
		}
	}
	reduced, full, known := dueOn(m.Law.Country, m.last, m.units(float64(before.pg), float64(before.lpa)), m.units(float64(now.pg), float64(now.lpa)))
	if !known || !taxedIn(m.Law.Country, o.Currency) {
		o.LeftOut = append(o.LeftOut, fmt.Sprintf("excise: no rate of %s is known here for that month, in the currency of the house; the one in force is written `country %s { excise 40.00 %s from %s }`, in a file of the house", m.Law.Title, m.Law.Name, cmp.Or(o.Currency, "EUR"), m.first))
		return
	}
	o.Excise = &Due{now.amount(), before.amount(), to(reduced, 2), to(full, 2), sources(m.Law.Country, m.last)}
}
