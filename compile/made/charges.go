package made

import (
	"math"
	"slices"

	"newmake/compile/lot"
	"newmake/compile/matter/fluid"
	"newmake/lang/recipe"
	"newmake/lang/record"
)

// stripped puts in the charges of the wash still as they were run.
func stripped(b *recipe.Batch, r *record.Run) {
	s := &b.Strip
	s.Charges = chargesOf(s.Charges, r, record.Strip)
	all := shared(r, record.Strip, s.Charges)
	for i := range all {
		all[i].Stop = stopOf(r, record.Strip, i+1, s.StopAt)
	}
	s.StopAt = all[0].Stop
	s.Apart = unlike(all)
}

// distilled puts in the charges of the spirit still as they were run: with the feints that
// there were, and the cuts where they were made.
func distilled(b *recipe.Batch, r *record.Run) {
	s := &b.Spirit
	s.Charges = chargesOf(s.Charges, r, record.Spirit)
	all := shared(r, record.Spirit, s.Charges)
	feintsIn(b, r, all)
	for i := range all {
		c := &all[i]
		c.ForeshotsM3, c.HeartsFrom, c.HeartsTo = s.ForeshotsM3, s.HeartsFrom, s.HeartsTo
		c.Stop = stopOf(r, record.Spirit, i+1, s.Stop)
		cuts(r, i+1, c)
	}
	s.ForeshotsM3, s.HeartsFrom, s.HeartsTo, s.Stop = all[0].ForeshotsM3, all[0].HeartsFrom, all[0].HeartsTo, all[0].Stop
	s.Apart = unlike(all)
}

// chargesOf is in how many charges a still was run: so many as were begun. Before the next stage
// has begun there may be others to come; a line of one that waits to be filled in was planned.
func chargesOf(planned int, r *record.Run, stage record.StageName) int {
	planned = max(planned, 1)
	begun, open, later := 0, 0, false
	for i := range r.Visits {
		v := &r.Visits[i]
		switch at := r.Stages[v.Stage].Name; {
		case slices.Index(record.StageNames, at) > slices.Index(record.StageNames, stage):
			later = later || done(v)
		case at != stage:
		case done(v):
			begun = max(begun, v.Charge)
		case !v.None:
			open = max(open, v.Charge)
		}
	}
	if begun > planned || begun > 0 && later && begun >= open && charged(r, stage) {
		return begun
	}
	return planned
}

// done reports whether a line tells of something that was done.
func done(v *record.Visit) bool { return !v.None && Written(v) }

// charged reports whether somebody wrote down that a still was charged.
func charged(r *record.Run, stage record.StageName) bool {
	return slices.ContainsFunc(r.Visits, func(v record.Visit) bool {
		return r.Stages[v.Stage].Name == stage && v.Word == "charge" && done(&v)
	})
}

// evenShare is by what part of itself a charge may be read larger than another for the two to
// be the same: about what two dips differ by.
const evenShare = 0.03

// shared are the charges of a still, each with its share of what was charged: by what was read
// of the wash, the low wines, or all that was in the still. They are equal where not all were
// read, or where they differ by no more than readings do.
func shared(r *record.Run, stage record.StageName, n int) []recipe.Charge {
	out := make([]recipe.Charge, n)
	for i := range out {
		out[i].Share, out[i].FeintsShare = 1/float64(n), 1/float64(n)
	}
	for _, of := range [][]string{{"low-wines"}, {"", "wash"}} {
		m3, all := make([]float64, n), 0.0
		for i := range m3 {
			m3[i] = wentInto(r, stage, i+1, of...)
			all += m3[i]
		}
		if !(all > 0) || slices.Max(m3)-slices.Min(m3) <= evenShare*all/float64(n) {
			continue
		}
		for i := range out {
			out[i].Share, out[i].FeintsShare = m3[i]/all, m3[i]/all
		}
		break
	}
	return out
}

// wentInto is how much of something a charge took; NaN where not all of it was read, or none
// of it was written down.
func wentInto(r *record.Run, stage record.StageName, charge int, of ...string) float64 {
	sum, any := 0.0, false
	for i := range r.Visits {
		v := &r.Visits[i]
		if r.Stages[v.Stage].Name != stage || v.Charge != charge || v.Word != "charge" || v.None || !slices.Contains(of, v.Of) {
			continue
		}
		m3, ok := held(v, record.Volume)
		if !ok {
			return math.NaN()
		}
		sum, any = sum+m3.SI, true
	}
	if !any {
		return math.NaN()
	}
	return sum
}

// unlike are charges that differ; nil where they are all one.
func unlike(all []recipe.Charge) []recipe.Charge {
	for _, c := range all[1:] {
		if c != all[0] {
			return all
		}
	}
	return nil
}

// hand is how far from what was written a strength at the spout may be read for it to be the
// same: a parrot is read to a hundredth.
const hand = 0.01

func elsewhere(abv float64, s recipe.Strength) bool {
	w, err := lot.MassFrac(s)
	return err != nil || math.Abs(abv-fluid.ABVFromMassFrac(w)) > hand
}

// stopOf is where a charge was stopped: as the recipe has it, unless it was read elsewhere.
func stopOf(r *record.Run, stage record.StageName, charge int, should recipe.Strength) recipe.Strength {
	if abv, ok := spoutAt(r, stage, charge, "off", ""); ok && elsewhere(abv, should) {
		return recipe.Strength{Value: abv, Basis: recipe.ABV}
	}
	return should
}

// cuts makes the cuts of a charge where they were made: by what the receiver had, or by the
// strength at the spout, whichever the recipe cuts by.
func cuts(r *record.Run, charge int, as *recipe.Charge) {
	first := whenDone(r, record.Spirit, charge, "first-drop")
	cut := func(c *recipe.Cut, of string, beforeM3, beforePlace float64) {
		v := turned(r, charge, of)
		if v == nil {
			return
		}
		m3, byVolume := held(v, record.Receiver)
		abv, byStrength := spoutAt(r, record.Spirit, charge, "to", of)
		switch {
		case c.By == recipe.ByVolume && byVolume:
			c.VolumeM3, _ = amount{beforeM3 + m3.SI, beforePlace + rounded*m3.PlaceSI()}.of(c.VolumeM3)
		case c.By == recipe.ByTime && first != nil && v.When.Known() && v.When.Time.After(first.When.Time):
			c.TimeS = v.When.Time.Sub(first.When.Time).Seconds()
		case byStrength && (c.By != recipe.ByStrength || v.Why == "nose" || elsewhere(abv, c.Strength)):
			*c = recipe.Cut{By: recipe.ByStrength, Strength: recipe.Strength{Value: abv, Basis: recipe.ABV}, At: c.At}
		}
	}
	place := 0.0
	if v := turned(r, charge, "heads"); v != nil {
		if m3, ok := held(v, record.Receiver); ok {
			place = rounded * m3.PlaceSI()
			as.ForeshotsM3, _ = amount{m3.SI, place}.of(as.ForeshotsM3)
		}
	}
	cut(&as.HeartsFrom, "hearts", as.ForeshotsM3, place)
	cut(&as.HeartsTo, "tails", 0, 0)
}

// feintsIn puts in the feints that were charged, where all that went in were gauged.
func feintsIn(b *recipe.Batch, r *record.Run, charges []recipe.Charge) {
	into := make([]float64, len(charges))
	var m3, pureM3 float64
	lines := 0
	for i := range r.Visits {
		v := &r.Visits[i]
		if r.Stages[v.Stage].Name != record.Spirit || v.Word != "charge" || v.Of != "feints" || v.None || v.Charge < 1 || v.Charge > len(charges) {
			continue
		}
		lines++
		is, ok := held(v, record.Volume)
		st, read := reading(v, record.Strength)
		if !ok || !read {
			return
		}
		abv, ok := Strength(st)
		if !ok {
			return
		}
		m3, pureM3 = m3+is.SI, pureM3+is.SI*abv.SI
		into[v.Charge-1] += is.SI
	}
	if lines == 0 {
		return
	}
	b.Today.FeintsSaid, b.Today.FeintsM3 = true, m3
	if m3 > 0 {
		b.Today.FeintsAt = recipe.Strength{Value: pureM3 / m3, Basis: recipe.ABV}
	}
	if slices.Max(into)-slices.Min(into) <= evenShare*m3/float64(len(into)) {
		return
	}
	for i := range charges {
		charges[i].FeintsShare = into[i] / m3
	}
}

// turned is the line at which the spout of a charge was turned to a fraction.
func turned(r *record.Run, charge int, of string) *record.Visit {
	for i := range r.Visits {
		if v := &r.Visits[i]; r.Stages[v.Stage].Name == record.Spirit && v.Charge == charge && v.Word == "to" && v.Of == of {
			return v
		}
	}
	return nil
}

// spoutAt is the true strength at the spout on a line of a charge, as a fraction at 20 C.
func spoutAt(r *record.Run, stage record.StageName, charge int, word, of string) (float64, bool) {
	for i := range r.Visits {
		v := &r.Visits[i]
		if r.Stages[v.Stage].Name != stage || v.Charge != charge || v.Word != word || v.Of != of {
			continue
		}
		if rd, ok := reading(v, record.Spout); ok {
			abv, ok := Strength(rd)
			return abv.SI, ok
		}
	}
	return 0, false
}
