package season

import (
	"slices"

	"newmake/compile/lot"
	"newmake/compile/matter/fluid"
	"newmake/compile/matter/stream"
	"newmake/compile/numbers"
	"newmake/lang/recipe"
	"newmake/lang/sorting"
)

// store is a tank of feints, or several of one kind where the plant has no tank.
type store struct {
	name  string
	held  stream.Stream
	from  []int  // runs; opening for what was there on the first day
	kind  string // "" where it is mingled or not known
	begun bool   // what was there on the first day is in it
}

// stop is the end of a spirit run.
type stop struct{ at, run int }

// feintsTanks are the feints of a house as its runs go by.
type feintsTanks struct {
	*flows
	ways    []way
	today   recipe.Today
	steady  func(b *recipe.Batch) stream.Stream
	tanks   []*recipe.Tank
	of      map[string]*store // by the family of batches
	all     []*store
	running []stop
}

// store is where the feints of a family are kept. Each has a tank of its own as long as
// there are tanks; after that it is mingled with what is in the last.
func (t *feintsTanks) store(kind string) *store {
	if s := t.of[kind]; s != nil {
		return s
	}
	n := len(t.all)
	if m := len(t.tanks); m > 0 && n >= m {
		t.of[kind] = t.all[m-1]
		return t.all[m-1]
	}
	s := &store{name: kind}
	if len(t.tanks) > 0 {
		s.name = t.tanks[n].Name
	}
	t.of[kind], t.all = s, append(t.all, s)
	return s
}

// settle puts the feints of the runs that have stopped by a time into their tanks.
func (t *feintsTanks) settle(at int) {
	sorting.Stable(t.running, func(a, b stop) int { return a.at - b.at })
	for len(t.running) > 0 && t.running[0].at <= at {
		k := t.running[0].run
		t.running = t.running[1:]
		kind := family(t.ways[k].batch)
		s := t.store(kind)
		if s.held.MassKg() <= 0 {
			s.kind = kind
		} else if s.kind != kind {
			s.kind = ""
		}
		s.held = s.held.Plus(t.runs[k].feintsOut)
		s.from = append(s.from, k)
		t.feints[s.name] = append(t.feints[s.name], level{t.ways[k].spirits, volume(s.held), k})
	}
}

// begin fills a tank with what was there on the first day: what the season says of it, and
// where it says nothing what a house at work has.
func (t *feintsTanks) begin(s *store, b, written *recipe.Batch) {
	first := !slices.ContainsFunc(t.all, func(o *store) bool { return o.begun })
	s.begun = true
	switch {
	case t.today.FeintsSaid && first:
		if w, err := lot.MassFrac(feintsAt(b, t.today)); err == nil && t.today.FeintsM3 > 0 {
			kg := t.today.FeintsM3 * fluid.Density(w, lot.GaugeC(b.Gauge))
			s.held, s.from = stream.Stream{EthanolKg: kg * w, WaterKg: kg * (1 - w), TempC: b.Plant.AmbientC}, []int{opening}
		}
	case !t.today.FeintsSaid && b.Spirit.Feints && s.held.MassKg() <= 0:
		s.held, s.from = t.steady(written), []int{opening}
	}
	if s.held.MassKg() > 0 && len(s.from) > 0 && s.from[0] == opening {
		s.kind = family(written)
		t.feints[s.name] = append([]level{{0, volume(s.held), opening}}, t.feints[s.name]...)
	}
}

// charge takes feints out of a tank for a run: all, or as much as its still has room for.
func (t *feintsTanks) charge(s *store, b *recipe.Batch, run int) {
	w, r := t.ways[run], t.runs[run]
	share := room(b, r.n.Stripped.LowWines, s.held)
	r.feintsIn = s.held.Scale(share)
	r.other = s.kind != family(w.batch)
	r.feintsFrom = slices.Clone(s.from)
	for _, k := range s.from {
		if k >= 0 {
			t.runs[k].feintsTo = append(t.runs[k].feintsTo, run)
		}
	}
	s.held = s.held.Scale(1 - share)
	if share == 1 {
		s.held, s.from = stream.Stream{}, nil
	}
	t.feints[s.name] = append(t.feints[s.name], level{w.spirit, volume(s.held), run})
	kg := r.feintsIn.EthanolKg + r.feintsIn.WaterKg
	at := r.feintsIn.EthanolKg / kg
	b.Today.FeintsM3, b.Today.FeintsAt = kg/fluid.Density(at, lot.GaugeC(b.Gauge)), recipe.Strength{Value: at, Basis: recipe.ABW}
}

// feintsAt is the strength of the feints of the first day, on the batch's basis.
func feintsAt(b *recipe.Batch, today recipe.Today) recipe.Strength {
	c := *b
	c.Today = today
	return lot.OnBasis(&c).Today.FeintsAt
}

// room is what share of the feints goes into the charges beside the low wines: all, or as
// much as the still takes.
func room(b *recipe.Batch, lowWines, feints stream.Stream) float64 {
	v := b.Spirit.Still
	takes := v.HoldsM3 * numbers.FillMost(v) * float64(max(b.Spirit.Charges, 1))
	hot := func(share float64) float64 { return lowWines.Plus(feints.Scale(share)).VolumeAtM3(hotC) }
	with, without := hot(1), hot(0)
	if with <= takes {
		return 1
	}
	return max(0, (takes-without)/(with-without))
}

// hotC is about where a charge boils: as full as that it must not be.
const hotC = 92
