// Package reviewed shows a review of a run: as text for a person, and as JSON.
package reviewed

import (
	"fmt"
	"io"
	"math"
	"strings"

	"newmake/compile/ask/review"
	"newmake/compile/measure"
	"newmake/compile/show/columns"
	"newmake/lang/diag"
	"newmake/lang/words"
)

// Options of Text.
type Options struct {
	Full bool // all of it, not twenty lines
	Bold bool
}

// mostLines is how many readings, causes and parts are shown unless all is asked for.
const (
	mostReadings = 5
	mostCauses   = 4
	mostParts    = 3
)

// Text writes a review, the verdict first.
func Text(w io.Writer, a *review.Answer, o Options) error {
	t := text{w: &columns.Writer{Bold: o.Bold}, u: a.Units, Options: o}
	t.w.Strong(fmt.Sprintf("Run %s of %s, %s", diag.Safe(a.Run, false), diag.Safe(a.Batch, false), a.Day))
	t.w.Gap()
	t.verdict(a)
	t.gaps(a)
	t.balance(a.Balance)
	t.why(a)
	t.readings(a)
	t.ahead(a)
	t.untold(a)
	_, err := io.WriteString(w, strings.TrimRight(t.w.String(), "\n")+"\n")
	return err
}

type text struct {
	w *columns.Writer
	u measure.Units
	Options
}

func (t *text) line(format string, args ...any) {
	t.w.Para(2, 4, fmt.Sprintf(format, args...))
}

// verdict says in a sentence or two how it went.
func (t *text) verdict(a *review.Answer) {
	off := 0
	for _, l := range a.Lines {
		if !l.Within() {
			off++
		}
	}
	switch {
	case len(a.Lines) == 0:
		t.line("Nothing that a plan speaks of was read yet.")
	case off == 0:
		t.line("%s, all as they should be.", words.Count(len(a.Lines), "reading"))
	default:
		t.line("%s, %d of them not as they should be, for what was done.", words.Count(len(a.Lines), "reading"), off)
	}
	switch b := a.Balance; {
	case b == nil:
		t.line("The alcohol cannot be balanced: too little was gauged.")
	case b.Balanced():
		t.line("The alcohol balances.")
	default:
		t.line("The alcohol does not balance.")
	}
	t.w.Gap()
}

// gaps are what the house lives by.
func (t *text) gaps(a *review.Answer) {
	if len(a.Gaps) == 0 {
		return
	}
	var rows columns.Table
	rows.Row("", "said", "plan", "as done", "unexplained")
	for _, g := range a.Gaps {
		rows.Row(g.Words, t.value(g.Kind, g.Said), t.value(g.Kind, g.Plan), t.value(g.Kind, g.Made), t.difference(g.Kind, g.Said-g.Made))
	}
	rows.Write(t.w)
	t.w.Gap()
}

// balance says what does not balance, and all that would explain it.
func (t *text) balance(b *review.Balance) {
	if b == nil || b.Balanced() && !t.Full {
		return
	}
	if len(b.Gross) == 0 && !b.Balanced() {
		t.line("No single reading and no single loss explains why.")
	}
	for _, f := range b.Gross {
		t.line("The alcohol is out of balance. What would explain it about as well:")
		causes := f.Causes
		if !t.Full {
			causes = causes[:min(len(causes), mostCauses)]
		}
		for _, c := range causes {
			t.line("- %s", t.cause(c))
		}
		if more := len(f.Causes) - len(causes); more > 0 {
			t.line("- and %s: --full", words.Count(more, "cause")+" more")
		}
	}
	if t.Full {
		t.line("Of %s, chi-square %s, with %s in one run of twenty.", words.Count(b.Checks, "balance"), measure.Number(b.Scatter, 1), "more than "+measure.Number(b.Limit, 1))
		var rows columns.Table
		rows.Row("", "said", "in accord")
		for _, f := range b.Flows {
			rows.Row(f.Words, t.flow(f.Unit, f.Said), t.flow(f.Unit, f.Best))
		}
		rows.Write(t.w)
	}
	t.w.Gap()
}

// cause says one thing that would explain a break.
func (t *text) cause(c review.Cause) string {
	if c.Flow != "" {
		way := "high"
		if c.By < 0 {
			way = "low"
		}
		return fmt.Sprintf("%s was read %s too %s", c.Words, t.flow(c.Unit, math.Abs(c.By)), way)
	}
	if c.By < 0 {
		return fmt.Sprintf("%s more than was written down came in %s", t.lost(c), strings.TrimPrefix(c.Place, "in "))
	}
	return fmt.Sprintf("%s were lost, or not written down, %s", t.lost(c), c.Place)
}

func (t *text) lost(c review.Cause) string {
	if c.Litres == 0 {
		return t.flow(review.LPA, math.Abs(c.By)) + " of alcohol"
	}
	return "about " + t.u.Litres(math.Abs(c.Litres)) + " of " + c.Of
}

// why takes the gap apart by what was done otherwise.
func (t *text) why(a *review.Answer) {
	if a.Done == nil || a.Done.Same {
		return
	}
	if a.Done.Why != nil {
		for _, o := range a.Done.Why.Each {
			if o.Key != t.lived() && !t.Full {
				continue
			}
			t.line("%s, %s for what was done otherwise:", o.Name, signed(o.Change, o.Places)+" "+o.Unit)
			for i, p := range o.Parts {
				if i == mostParts && !t.Full {
					break
				}
				t.line("  %s  %s", columns.Right(signed(p.Part, o.Places), 8), p.Edit)
			}
		}
	} else {
		for _, e := range a.Done.Edits {
			t.line("done otherwise: %s", e.What)
		}
	}
	if a.Small > 0 {
		t.line("  and %s too small to gauge", words.Count(a.Small, "thing"))
	}
	t.w.Gap()
}

// lived is the outcome by which a house counts its hearts.
func (t *text) lived() string {
	if t.u == measure.SI {
		return "pureAlcoholL"
	}
	return "heartsProofGallons"
}

func signed(v float64, places int) string {
	if v >= 0 {
		return "+" + measure.Number(v, places)
	}
	return measure.Number(v, places)
}

// readings are all of them, or those that are not as they should be.
func (t *text) readings(a *review.Answer) {
	var shown []review.Line
	for _, l := range a.Lines {
		if t.Full || !l.Within() {
			shown = append(shown, l)
		}
	}
	more := 0
	if !t.Full && len(shown) > mostReadings {
		more = len(shown) - mostReadings
		shown = shown[:mostReadings]
	}
	if len(shown) == 0 {
		return
	}
	var rows columns.Table
	rows.Row("", "said", "plan", "as done", "off", "right")
	for _, l := range shown {
		mark := "yes"
		if !l.Within() {
			mark = "no"
		}
		rows.Row(l.Words, t.value(l.Kind, l.Said), t.value(l.Kind, l.Plan), t.value(l.Kind, l.Made), t.difference(l.Kind, l.Off()), mark)
	}
	rows.Write(t.w)
	if more > 0 {
		t.line("and %d more: --full", more)
	}
	t.w.Gap()
}

// ahead is what is to come.
func (t *text) ahead(a *review.Answer) {
	if a.Ahead == nil {
		return
	}
	t.line("From here on, after %s:", a.Ahead.From.Format("Mon 2 Jan 15:04"))
	for _, c := range a.Ahead.Coming {
		t.line("- %s about %s, give or take %s", c.Words, c.At.Format("Mon 15:04"), measure.Duration(math.Max(1, math.Round(c.SD/60))))
	}
	hearts, more := a.Ahead.HeartsLPA, a.Ahead.SD
	unit := "L of pure alcohol"
	if t.u == measure.US && hearts > 0 {
		more *= a.Ahead.HeartsPG / hearts
		hearts, unit = a.Ahead.HeartsPG, "proof gallons"
	}
	t.line("- hearts of %s %s, give or take %s; %s filled", measure.Number(hearts, 1), unit, measure.Number(more, 1), words.Count(a.Ahead.Casks, "cask"))
	t.w.Gap()
}

func (t *text) untold(a *review.Answer) {
	if len(a.Untold) == 0 {
		return
	}
	t.line("Not written down, and it would have told most: %s.", t.first(a.Untold))
}

func (t *text) first(all []review.Untold) string {
	var out []string
	for i, u := range all {
		if i == 3 && !t.Full {
			break
		}
		out = append(out, fmt.Sprintf("%s (%d %% of what is not known of the hearts)", u.Words, int(math.Round(100*u.Part))))
	}
	return words.And(out)
}

// value is a number in the reader's units.
func (t *text) value(k review.Kind, v float64) string {
	switch {
	case math.IsNaN(v):
		return "-"
	case k == review.Temperature:
		return t.u.Temp(v)
	case k == review.Gravity:
		return measure.Gravity(v)
	case k == review.PH:
		return measure.Number(v, 1)
	case k == review.Volume:
		return t.u.Litres(1000 * v)
	case k == review.Strength:
		return measure.Number(100*v, 1) + " % abv"
	case k == review.Rate:
		return t.u.Litres(1000*3600*v) + "/h"
	}
	return measure.Duration(v / 60)
}

// difference is a difference of two numbers, with its sign.
func (t *text) difference(k review.Kind, v float64) string {
	text := t.size(k, math.Abs(v))
	if math.IsNaN(v) || !strings.ContainsAny(text, "123456789") {
		return text
	}
	return sign(v) + text
}

func (t *text) size(k review.Kind, v float64) string {
	switch {
	case math.IsNaN(v):
		return "-"
	case k == review.Temperature:
		return t.u.TempDiff(v)
	case k == review.Gravity:
		return measure.Number(v, 3)
	case k == review.Duration:
		return measure.Duration(math.Round(v / 60))
	}
	return t.value(k, v)
}

func sign(v float64) string {
	if v < 0 {
		return "-"
	}
	return "+"
}

// flow is a number of the balance.
func (t *text) flow(u review.Unit, v float64) string {
	switch {
	case math.IsNaN(v):
		return "-"
	case u == review.Litres:
		return t.u.Litres(v)
	case u == review.AbvPct:
		return measure.Number(v, 1) + " % abv"
	case u == review.LPA:
		return measure.Number(v, 1) + " L"
	case u == review.SG:
		return measure.Number(v, 4)
	}
	return measure.Number(v, 3)
}
