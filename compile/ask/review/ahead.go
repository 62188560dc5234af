package review

import (
	"fmt"
	"math"
	"slices"
	"time"

	"newmake/compile/lot"
	"newmake/compile/made"
	"newmake/compile/numbers"
	"newmake/compile/stage/still"
	"newmake/lang/record"
)

// ahead is what is still to come of a run. It is nil of one that was filled.
func (m *model) ahead(run *record.Run, known state) *Ahead {
	stage, from := reached(run)
	if stage == "" || stage == record.Fill && filled(run) {
		return nil
	}
	n := m.batch(known)
	if n == nil {
		n = m.n
	}
	a := &Ahead{From: from, Casks: n.Filled.Casks}
	middle, slopes := m.slopes(heartsLPA)
	_, a.SD = known.of(middle, slopes)
	a.HeartsLPA, _ = heartsLPA(n)
	a.HeartsPG = lot.Of(n.Distilled.Hearts).ProofGallons
	charge, charges := m.atHand(run, stage)
	for _, e := range events {
		if e.stage != stage || seen(run, stage, charge, e.word, e.of) || seen(run, stage, charge, "off", "") || slices.ContainsFunc(a.Coming, func(c Coming) bool { return c.Words == e.called(charge, charges) }) {
			continue
		}
		begun, written := made.WhenDoneOf(run, stage, charge, e.since)
		if !written {
			continue
		}
		says := func(n *numbers.Batch) (float64, bool) { return e.after(n, charge) }
		after, ok := says(n)
		if !ok {
			continue
		}
		mid, slopes := m.slopes(says)
		_, sd := known.of(mid, slopes)
		a.Coming = append(a.Coming, Coming{Words: e.called(charge, charges), At: begun.Add(time.Duration(after * float64(time.Second))).Round(time.Minute), SD: sd})
	}
	return a
}

// atHand is which charge of a still a run has come to, and of how many; 0 of what has none.
func (m *model) atHand(run *record.Run, stage record.StageName) (charge, of int) {
	for i := range run.Visits {
		if v := &run.Visits[i]; run.Stages[v.Stage].Name == stage && !v.None && made.Written(v) {
			charge = max(charge, v.Charge)
		}
	}
	switch stage {
	case record.Strip:
		of = m.n.Stripped.Charges
	case record.Spirit:
		of = m.n.Distilled.Charges
	}
	return charge, of
}

// event is something that a run comes to, by the moment from which it is reckoned.
type event struct {
	stage record.StageName
	since string // the word of the line that it is reckoned from
	word  string // the word of the line that says it has come
	of    string
	words string
	after func(n *numbers.Batch, charge int) (s float64, ok bool) // since; charge counts from 1
}

// called is the event in words; where there are several charges it says of which.
func (e *event) called(charge, of int) string {
	if of > 1 {
		return fmt.Sprintf("%s, charge %d", e.words, charge)
	}
	return e.words
}

// events are those that somebody waits for. What is reckoned from a nearer moment stands first.
var events = []event{
	{record.Ferment, "pitch", "", "", "the wash is dry", func(n *numbers.Batch, _ int) (float64, bool) {
		return n.Fermented.DryS, n.Fermented.DryS > 0
	}},
	{record.Strip, "fire", "first-drop", "", "first drop of the wash run", of(wash, firstDrop)},
	{record.Strip, "first-drop", "off", "", "end of the wash run", of(wash, endSinceFirstDrop)},
	{record.Strip, "fire", "off", "", "end of the wash run", of(wash, func(r still.Run) (float64, bool) { return r.DurationS, r.DurationS > 0 })},
	{record.Spirit, "fire", "first-drop", "", "first drop of the spirit run", of(spirit, firstDrop)},
	{record.Spirit, "first-drop", "to", "hearts", "hearts begin", of(spirit, func(r still.Run) (float64, bool) {
		f := r.Fraction(still.Hearts)
		return f.StartS - r.HeatUpS, f.EndS > f.StartS
	})},
	{record.Spirit, "first-drop", "to", "tails", "hearts end: tails", of(spirit, func(r still.Run) (float64, bool) {
		f := r.Fraction(still.Hearts)
		return f.EndS - r.HeatUpS, f.EndS > f.StartS
	})},
	{record.Spirit, "first-drop", "off", "", "end of the spirit run", of(spirit, endSinceFirstDrop)},
}

func firstDrop(r still.Run) (float64, bool)         { return r.HeatUpS, r.HeatUpS > 0 }
func endSinceFirstDrop(r still.Run) (float64, bool) { return r.DurationS - r.HeatUpS, r.DurationS > 0 }

// wash and spirit are a charge of a still, from 1; nil of one that is not foretold.
func wash(n *numbers.Batch, charge int) *still.Run {
	if s := n.Stripped; charge >= 1 && charge <= s.Charges {
		r := s.ChargeRun(charge - 1)
		return &r
	}
	return nil
}

func spirit(n *numbers.Batch, charge int) *still.Run {
	if s := n.Distilled; charge >= 1 && charge <= s.Charges {
		r := s.ChargeRun(charge - 1)
		return &r
	}
	return nil
}

// of asks a charge of a still.
func of(run func(n *numbers.Batch, charge int) *still.Run, after func(still.Run) (float64, bool)) func(*numbers.Batch, int) (float64, bool) {
	return func(n *numbers.Batch, charge int) (float64, bool) {
		r := run(n, charge)
		if r == nil {
			return 0, false
		}
		return after(*r)
	}
}

// reached is the last stage that a run has come to, and its last moment.
func reached(run *record.Run) (record.StageName, time.Time) {
	var stage record.StageName
	var at time.Time
	for _, v := range run.Visits {
		name := run.Stages[v.Stage].Name
		if !made.Written(&v) {
			continue // a line of the skeleton that waits to be filled in
		}
		if slices.Index(record.StageNames, name) >= slices.Index(record.StageNames, stage) {
			stage = name
		}
		if v.When.Known() && v.When.Time.After(at) {
			at = v.When.Time
		}
	}
	return stage, at
}

func filled(run *record.Run) bool {
	return slices.ContainsFunc(run.Visits, func(v record.Visit) bool {
		return run.Stages[v.Stage].Name == record.Fill && v.Word == "into" && made.Written(&v)
	})
}

func seen(run *record.Run, stage record.StageName, charge int, word, of string) bool {
	return word != "" && slices.ContainsFunc(run.Visits, func(v record.Visit) bool {
		return run.Stages[v.Stage].Name == stage && v.Charge == charge && v.Word == word && v.Of == of && !v.None && made.Written(&v)
	})
}

// askable are readings that every house can take, with how sure they are: those of
// them that a run lacks are weighed.
var askable = []struct {
	words string
	spot  made.Spot
	sd    func(v float64) float64
}{
	{"the volume to the fermenter", made.Spot{Stage: record.Ferment, What: record.Volume}, share(0.018)},
	{"the gravity at the pitch", made.Spot{Stage: record.Ferment, What: record.Gravity, Kind: made.Within}, flat(0.0012)},
	{"the gravity at 12 h", made.Spot{Stage: record.Ferment, What: record.Gravity, Kind: made.Within, AfterS: 12 * 3600}, flat(0.0012)},
	{"the gravity at 24 h", made.Spot{Stage: record.Ferment, What: record.Gravity, Kind: made.Within, AfterS: 24 * 3600}, flat(0.0012)},
	{"the last gravity of the ferment", made.Spot{Stage: record.Ferment, What: record.Gravity, Kind: made.AtEnd}, flat(0.0012)},
	{"the volume of the low wines", made.Spot{Stage: record.Strip, What: record.Volume, Of: "low wines"}, share(0.018)},
	{"the strength of the low wines", made.Spot{Stage: record.Strip, What: record.Strength, Of: "low wines"}, flat(0.004)},
	{"the volume of the hearts", made.Spot{Stage: record.Spirit, What: record.Volume, Of: "hearts"}, share(0.018)},
	{"the strength of the hearts", made.Spot{Stage: record.Spirit, What: record.Strength, Of: "hearts"}, flat(0.004)},
}

func flat(sd float64) func(float64) float64 { return func(float64) float64 { return sd } }

func share(part float64) func(float64) float64 {
	return func(v float64) float64 { return part * math.Abs(v) }
}

// worth is the least part of what is left that a reading must tell to be named.
const worth = 0.03

// untold are the readings that a run lacks, the most telling first: each by how much it
// would narrow what is not known of the hearts once those before it are known. So what
// they would tell together is never more than all there is.
func (m *model) untold(run *record.Run, readings []made.Reading, known state) []Untold {
	middle, hearts := m.slopes(heartsLPA)
	_, sd := known.of(middle, hearts)
	if !(sd > 0) {
		return nil
	}
	type lacking struct {
		Untold
		told
	}
	var left []lacking
	for _, a := range askable {
		if slices.ContainsFunc(readings, func(r made.Reading) bool { return same(r.Spot, a.spot) }) {
			continue
		}
		if v, slopes := m.slopes(a.spot.Says); !math.IsNaN(v) {
			left = append(left, lacking{Untold{Words: a.words, ToCome: m.toCome(run, a.spot)}, told{sd: a.sd(v), slopes: slopes}})
		}
	}
	var out []Untold
	for of := 1.0; len(left) > 0; {
		best, least := 0, math.Inf(1)
		for i, l := range left {
			_, still := known.after([]told{l.told}).of(middle, hearts)
			if part := still * still / (sd * sd); part < least {
				best, least = i, part
			}
		}
		if of-least < worth {
			break
		}
		next := left[best]
		next.Part, of = of-least, least
		out = append(out, next.Untold)
		known = known.after([]told{next.told})
		left = slices.Delete(left, best, best+1)
	}
	return out
}

// toCome reports whether a run has not come to where a reading is taken: of a still, to the end of
// its last charge.
func (m *model) toCome(run *record.Run, spot made.Spot) bool {
	stage, at := reached(run)
	is, of := slices.Index(record.StageNames, stage), slices.Index(record.StageNames, spot.Stage)
	switch {
	case of != is:
		return of > is
	case spot.Stage == record.Ferment && spot.Kind == made.AtEnd:
		return true // until it is charged
	case spot.Stage == record.Ferment:
		pitched, ok := made.WhenDone(run, record.Ferment, "pitch")
		return ok && at.Sub(pitched).Seconds() < spot.AfterS
	}
	_, last := m.atHand(run, stage)
	return !seen(run, stage, last, "off", "")
}

// nearS is within what time of one another two readings of a ferment tell the same.
const nearS = 3 * 3600

func same(a, b made.Spot) bool {
	if a.Stage != b.Stage || a.What != b.What || a.Of != b.Of {
		return false
	}
	return a.Stage != record.Ferment || a.What != record.Gravity || a.Kind != b.Kind && b.Kind == made.AtEnd && a.AfterS > 48*3600 ||
		a.Kind == b.Kind && math.Abs(a.AfterS-b.AfterS) <= nearS
}
