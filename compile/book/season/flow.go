package season

import (
	"math"
	"slices"

	"newmake/compile/lot"
	"newmake/compile/matter/stream"
	"newmake/compile/numbers"
	"newmake/lang/recipe"
)

// way is a run on the clock, in minutes: what flows goes by it.
type way struct {
	batch           *recipe.Batch // as written
	mash, pitched   int
	charged         int // the wash still is charged
	stripped        int // its run has stopped: there is pot ale
	spirit, spirits int // the first charge of the spirit still, the end of the last run
	filled          int
	stands          float64 // s from the pitch to the charge
}

// flowed is a run with what came into it and what it left.
type flowed struct {
	n          *numbers.Batch
	err        error
	feintsFrom []int // runs; -1: what was there on the first day
	feintsTo   []int
	other      bool // feints of another kind went in
	feintsIn   stream.Stream
	feintsOut  stream.Stream
	backset    int // the run that it comes from; -1 the first day, -2 none
	backsetTo  []int
	backsetM3  float64
	backsetMin int  // age
	noKept     bool // none of the last water of the mash before, where the recipe takes it
	noPotAle   bool // the still's preheater finds no hot pot ale
	casks      int
	before     int           // the run that left spirit which is filled with this one's; none: -2
	leftOf     stream.Stream // of this batch's spirit, at entry strength, with what was left before
}

// Where something comes from that no run left.
const (
	opening = -1 // it was there on the first day
	none    = -2 // nowhere: water goes in place of backset
)

// level is a change of what a tank holds.
type level struct {
	at  int
	m3  float64 // after it, at 20 C
	run int
}

// flows are all runs of a season, each computed from what those before it left.
type flows struct {
	runs   []*flowed
	feints map[string][]level // by the tank, or the family where there is none
	left   map[string]stream.Stream
	spirit map[string]stream.Stream // left over of each batch, at entry strength
}

// family is the batch of which one is a variant, or itself: their feints are of a kind.
func family(b *recipe.Batch) string {
	if n := len(b.Chain); n > 0 {
		return b.Chain[n-1]
	}
	return b.Name
}

// flow computes the runs in the order in which things happen. steady is the feints that a
// house at work has, by batch.
func flow(ways []way, today recipe.Today, steady func(b *recipe.Batch) stream.Stream, memo *numbers.Memo, axis *axis, plant *recipe.Plant) *flows {
	f := &flows{runs: make([]*flowed, len(ways)), feints: map[string][]level{}, left: map[string]stream.Stream{}, spirit: map[string]stream.Stream{}}
	order := func(by func(w way) int) []int {
		out := make([]int, len(ways))
		for i := range out {
			out[i] = i
		}
		slices.SortStableFunc(out, func(a, b int) int { return by(ways[a]) - by(ways[b]) })
		return out
	}
	f.mashes(ways, order(func(w way) int { return w.mash }), today, memo, axis)
	f.spirits(ways, order(func(w way) int { return w.spirit }), today, steady, memo, plant)
	f.casks(ways, order(func(w way) int { return w.filled }))
	return f
}

// keeps says that what is there from one minute on is there at another, and not too old.
func keeps(from, at int) bool { return from <= at && at-from <= keepsS/60 }

// mashes computes the runs up to their low wines. The backset of each is of the last wash
// still run before it that left enough, and not too long ago.
func (f *flows) mashes(ways []way, order []int, today recipe.Today, memo *numbers.Memo, axis *axis) {
	used := map[int]float64{}
	for n, i := range order {
		w := ways[i]
		r := &flowed{backset: none, before: none}
		f.runs[i] = r
		b := *w.batch
		b.Today = recipe.Today{}
		at := axis.time(w.mash)
		b.Start = recipe.Start{Year: at.Year(), Month: int(at.Month()), Day: at.Day(), Hour: at.Hour(), Minute: at.Minute()}
		if usesKept(w.batch) { // it is of the mash before, whichever that was
			r.noKept = today.NoKept || !keeps(0, w.mash)
			if n > 0 {
				before := ways[order[n-1]]
				r.noKept = !leavesKept(before.batch) || !keeps(before.pitched, w.mash)
			}
			b.Today.NoKept = r.noKept
		}
		if w.batch.Strip.Still.Preheater.PotAleC > 0 {
			r.noPotAle = (today.NoPotAle || !keeps(0, w.charged)) && !slices.ContainsFunc(ways, func(o way) bool {
				return o.batch.Strip.Still == w.batch.Strip.Still && o.charged < w.charged && keeps(o.stripped, w.charged)
			})
			b.Today.NoPotAle = r.noPotAle
		}
		if want := wantsBackset(w.batch); want > 0 {
			for k, o := range ways {
				if f.runs[k] == nil || f.runs[k].n == nil || !keeps(o.stripped, w.mash) {
					continue
				}
				potAle := f.runs[k].n.Stripped.PotAle()
				if potAle.VolumeAtM3(lot.ReferenceC)-used[k] >= want && (r.backset < 0 || o.stripped > ways[r.backset].stripped) {
					r.backset, r.backsetMin = k, w.mash-o.stripped
				}
			}
			if r.backset == none && !today.NoBackset && keeps(0, w.mash) {
				r.backset = opening
			}
			switch {
			case r.backset == none:
				b.Today.NoBackset = true
			case r.backset >= 0:
				used[r.backset] += want
				f.runs[r.backset].backsetTo = append(f.runs[r.backset].backsetTo, i)
			}
			if r.backset != none {
				r.backsetM3 = want
			}
		}
		r.n = &numbers.Batch{Batch: lot.OnBasis(b.AsToday())}
		if r.n.Mashed, r.err = numbers.Mash(memo, r.n.Batch); r.err != nil {
			continue
		}
		if r.n.Fermented, r.err = numbers.Fermented(memo, r.n.Batch, r.n.Mashed, w.stands); r.err != nil {
			continue
		}
		r.n.Stripped, r.err = numbers.Stripped(memo, r.n.Batch, r.n.Fermented.Wash)
	}
}

// spirits computes the spirit runs in their order, each with the feints that are there.
func (f *flows) spirits(ways []way, order []int, today recipe.Today, steady func(b *recipe.Batch) stream.Stream, memo *numbers.Memo, plant *recipe.Plant) {
	t := &feintsTanks{flows: f, ways: ways, today: today, steady: steady, tanks: plant.TanksFor(recipe.OfFeints), of: map[string]*store{}}
	for _, i := range order {
		w, r := ways[i], f.runs[i]
		if r.err != nil {
			continue
		}
		t.settle(w.spirit)
		b := *r.n.Batch
		s := t.store(family(w.batch))
		if !s.begun {
			t.begin(s, &b, w.batch)
		}
		b.Today.FeintsSaid = true
		if b.Spirit.Feints && s.held.MassKg() > 0 {
			t.charge(s, &b, i)
		}
		r.n.Batch = &b
		if r.n.Distilled, r.err = numbers.Distilled(memo, &b, r.n.Stripped.LowWines); r.err != nil {
			continue
		}
		r.n.Reduced = numbers.Reduced(&b, r.n.Distilled.Hearts)
		r.feintsOut = r.n.Distilled.Feints().Scale(float64(r.n.Distilled.Charges))
		if b.Spirit.Feints {
			t.running = append(t.running, stop{w.spirits, i})
		}
	}
	t.settle(math.MaxInt)
	for _, s := range t.all {
		if s.held.MassKg() > 0 {
			f.left[s.name] = s.held
		}
	}
}

func volume(s stream.Stream) float64 { return lot.Of(s).VolumeL / lot.LitresPerM3 }

// leastLeftM3 is the least spirit that is kept for a cask: less stays in pipe and hose.
const leastLeftM3 = 0.05e-3

// casks fills them in the order of the fills: what is too little for one waits for the
// next run of its batch.
func (f *flows) casks(ways []way, order []int) {
	last := map[string]int{} // the run that left what waits
	for _, i := range order {
		r := f.runs[i]
		if r.err != nil {
			continue
		}
		b := *r.n.Batch
		r.n.Batch = &b
		name := ways[i].batch.Name
		if left := f.spirit[name]; volume(left) >= leastLeftM3 {
			r.before = last[name]
			b.Today.Spirit = recipe.Before{EthanolKg: left.EthanolKg, WaterKg: left.WaterKg}
		}
		if r.n.Filled, r.err = numbers.Filled(&b, r.n.Reduced); r.err != nil || !r.n.Filled.Done {
			continue
		}
		r.casks = r.n.Filled.Casks
		pool, share := r.n.Filled.Spirit, 0.0
		if v := volume(pool); v > 0 {
			share = r.n.Filled.LeftoverM3 / v
		}
		f.spirit[name], last[name] = pool.Scale(share), i
		r.leftOf = f.spirit[name]
	}
}

// fill is how full the spirit still was at most, of what it takes.
func (r *flowed) fill() (pct float64, over bool) {
	v := r.n.Spirit.Still
	return 100 * r.n.Distilled.MostFill, r.n.Distilled.MostFill > numbers.FillMost(v)+1e-9
}
