package logbook

import (
	"fmt"

	"newmake/lang/diag"
	"newmake/lang/quantity"
	"newmake/lang/record"
	"newmake/lang/wording"
)

// doubts looks at what was read for what is hard to believe, says so, and keeps it.
func doubts(run *record.Run, diags *diag.List) {
	shared := map[diag.Span]bool{} // one sample of several readings is one doubt
	for i := range run.Visits {
		v := &run.Visits[i]
		for j := range v.Read {
			o := &v.Read[j]
			o.Doubt = doubt(run, i, o)
			now, _ := o.Holds()
			at, shown := o.Place, now
			if o.Corrected != nil {
				at = o.Corrected.Place
			}
			if o.Doubt == "" {
				if o.Doubt = sampleDoubt(o); o.Doubt == "" {
					continue
				}
				at, shown = o.AtCorrected.Place, o.AtCorrected.New
			}
			if shared[at] {
				continue
			}
			shared[at] = true
			diags.Add(diag.Diagnostic{Code: diag.CodeImprobable, Severity: diag.Warning, At: at,
				Summary: fmt.Sprintf("`%s` is hard to believe: %s", shown, o.Doubt),
				Help:    "if it was read so, leave it: it is kept; a slip of the pen is put right beside it, with `corrected`"})
		}
	}
}

// follows are pairs of lines of which one cannot have been before the other. The mash is cool
// when its last cool is written down; of a still with several charges the first will do.
var follows = []struct {
	first      record.StageName
	done       string
	last       bool
	then       record.StageName
	begun, why string
}{
	{record.Mash, "cool", true, record.Ferment, "pump", "the mash was not cool"},
	{record.Ferment, "pitch", false, record.Strip, "charge", "the yeast was not in"},
	{record.Strip, "off", false, record.Spirit, "charge", "there were no low wines"},
}

// outOfTurn speaks of a stage that was begun before the one before it had come so far.
func outOfTurn(run *record.Run, diags *diag.List) {
	for _, f := range follows {
		var done, begun *record.Visit
		for i := range run.Visits {
			v := &run.Visits[i]
			stage := run.Stages[v.Stage].Name
			switch {
			case v.None || !v.When.Known():
			case stage == f.first && v.Word == f.done && (done == nil || f.last):
				done = v
			case stage == f.then && v.Word == f.begun && begun == nil:
				begun = v
			}
		}
		if done == nil || begun == nil || !begun.When.Time.Before(done.When.Time) {
			continue
		}
		diags.Add(diag.Diagnostic{Code: diag.CodeImprobable, Severity: diag.Warning, At: begun.At,
			Summary: fmt.Sprintf("`%s` of %s is hard to believe: %s before `%s` of %s", f.begun, begun.When.Time.Format("15:04 on 2006-01-02"), f.why, f.done, done.When.Time.Format("15:04 on 2006-01-02")),
			Related: []diag.Related{{At: done.At, Text: "this was later"}},
			Help:    "if both clocks were read so, leave them: they are kept; a slip of the pen is put right beside it, with `corrected`"})
	}
}

// begunLate is by how many days the beginning of a run may be later than its day: one, of a mash
// that was drawn out past midnight before anything was written down, and one more of a wort that
// stands in the fermenter until the yeast is there (common practice: hours).
var begunLate = []struct {
	stage record.StageName
	word  string // "" is any line
	begun string
	days  int
}{
	{record.Mash, "", "the mash begins", 1},
	{record.Ferment, "pump", "the mash is pumped over", 2},
	{record.Ferment, "pitch", "the yeast is pitched", 2},
}

// begunLater speaks of a run that, by its clocks, begins days after its own day: with the day the
// grain goes out of the store, and the law counts from it.
func begunLater(run *record.Run, diags *diag.List) {
	for _, first := range begunLate {
		for i := range run.Visits {
			v := &run.Visits[i]
			if run.Stages[v.Stage].Name != first.stage || first.word != "" && v.Word != first.word || v.None || v.When.Date.IsZero() {
				continue
			}
			if late := run.Date.DaysTo(v.When.Date); late > first.days {
				diags.Add(diag.Diagnostic{Code: diag.CodeImprobable, Severity: diag.Warning, At: v.At,
					Summary: fmt.Sprintf("%s on %s, %d days after the day of this run, %s", first.begun, v.When.Date, late, run.Date),
					Help:    "look at the two days: a run is of the day of its mash"})
				return
			}
			break
		}
	}
}

// sampleDoubt says why what the temperature of a sample was corrected to is hard to believe.
// As it was written down first, the language has its limits.
func sampleDoubt(o *record.Reading) string {
	if c := o.AtCorrected; c != nil && !c.Withdrawn && (c.New.SI < sampleLowC || c.New.SI > sampleHighC) {
		return "no sample of the trade is so cold or so hot" + meant(c.New, believed{low: sampleLowC, high: sampleHighC})
	}
	return ""
}

// What a sample may be, in C: spirit in a cold house, and wort at the boil.
const (
	sampleLowC  = -30
	sampleHighC = 105
)

// doubt says why a reading of a visit is hard to believe, beside what was read before
// it in the run; "" if it is not. What it was corrected to counts, of it and of those
// before it.
func doubt(run *record.Run, visit int, o *record.Reading) string {
	now, ok := o.Holds()
	if !ok {
		return ""
	}
	v := &run.Visits[visit]
	stage := run.Stages[v.Stage].Name
	if why := gaugeDoubt(run, visit, o.What, now); why != "" {
		return why
	}
	if ranges := believable[o.What]; ranges != nil {
		b, own := ranges[stage]
		if !own {
			b, own = ranges[""]
		}
		if own && (now.SI < b.low || now.SI > b.high) {
			return b.reason + meant(now, b)
		}
	}
	switch o.What {
	case record.Gravity:
		if before := last(run, visit, o.What); stage == record.Ferment && before != nil && now.SI > before.SI+risesBy {
			return fmt.Sprintf("a gravity falls, and `%s` was read before it", before)
		}
	case record.Receiver:
		if before := last(run, visit, o.What); before != nil && now.SI < before.SI && sameFraction(run, visit) {
			return fmt.Sprintf("a receiver fills, and `%s` was read before it", before)
		}
	case record.Spout:
		if before := last(run, visit, o.What); before != nil && now.Unit == before.Unit && now.SI > before.SI+spoutRisesBy {
			return fmt.Sprintf("the spout weakens as a run goes on, and `%s` was read before it", before)
		}
	case record.Gross:
		if now.SI <= 0 {
			return "a cask weighs something; `none` says that it was not weighed"
		}
		for i := range v.Read {
			if tare, ok := v.Read[i].Holds(); ok && v.Read[i].What == record.Tare && tare.SI >= now.SI {
				return fmt.Sprintf("a full cask weighs more than an empty one, of `%s`", tare)
			}
		}
	}
	return ""
}

// By how much a reading may go the wrong way and still be one of the same: two
// divisions of a hydrometer, and a spout that is read warm and cold.
const (
	risesBy      = 0.002
	spoutRisesBy = 0.05
)

// mixedUp are units of which one is written for the other.
var mixedUp = map[string]string{"F": "C", "C": "F", "proof": "% abv"}

// meant guesses what was meant by a value that cannot be, from the mistakes that people
// make; "" if none of them gives a value that can be.
func meant(v record.Value, b believed) string {
	within := func(si float64) bool { return si >= b.low && si <= b.high }
	if v.Kind == quantity.Gravity {
		if g := 1 + (v.Number-1)/10; v.Number > 1.1 && within(g) { // 1.64
			return ": was it " + wording.In(g, "SG", v.Kind) + "?"
		}
	}
	if to := mixedUp[v.Unit]; to != "" {
		if si, err := quantity.ToSI(v.Number, to, v.Kind); err == nil && within(si) {
			return ": was it " + v.Num + " " + to + "?"
		}
	}
	return ""
}

// last is what was read last of a quantity, before a visit and in its stage.
func last(run *record.Run, visit int, what record.What) *record.Value {
	for i := visit - 1; i >= 0 && run.Visits[i].Stage == run.Visits[visit].Stage; i-- {
		for j := len(run.Visits[i].Read) - 1; j >= 0; j-- {
			o := &run.Visits[i].Read[j]
			if v, ok := o.Holds(); ok && o.What == what {
				return &v
			}
		}
		if w := run.Visits[i].Word; w == "charge" || w == "off" {
			return nil
		}
	}
	return nil
}

// sameFraction reports whether no cut lies between a visit and the reading before it. The
// readings of a cut are of what ends.
func sameFraction(run *record.Run, visit int) bool {
	for i := visit - 1; i >= 0 && run.Visits[i].Stage == run.Visits[visit].Stage; i-- {
		if run.Visits[i].Word == "to" {
			return false
		}
		for j := range run.Visits[i].Read {
			if run.Visits[i].Read[j].What == record.Receiver {
				return true
			}
		}
	}
	return true
}
