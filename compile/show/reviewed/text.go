// Package reviewed shows a review of a run: as text for a person, as a page with the
// pictures of the plan, and as JSON.
package reviewed

import (
	"fmt"
	"io"
	"strings"

	"newmake/compile/ask/review"
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
	mostUntold   = 3
	mostSmall    = 4
)

// Text writes a review, the verdict first.
func Text(w io.Writer, a *review.Answer, o Options) error {
	t := text{w: &columns.Writer{Bold: o.Bold}, say: say{a.Units}, Options: o}
	t.w.Strong(fmt.Sprintf("Run %s of %s, %s", diag.Safe(a.Run), diag.Safe(a.Batch), a.Day))
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
	say
	Options
}

func (t *text) line(format string, args ...any) {
	t.w.Para(2, 4, fmt.Sprintf(format, args...))
}

// verdict says in a sentence or two how it went.
func (t *text) verdict(a *review.Answer) {
	for _, sentence := range verdict(a) {
		t.line("%s", sentence)
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
		rows.Row(g.Words, t.value(g.Kind, g.Said, g.ABV), t.value(g.Kind, g.Plan, g.ABV), t.value(g.Kind, g.Made, g.ABV), t.difference(g.Kind, g.Said-g.Made, g.ABV))
	}
	rows.Write(t.w)
	t.line("%s", t.counted())
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
	for i, f := range b.Gross {
		t.line("%s %s", broken(i), explains)
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
		t.line("%s", t.checks(b))
		var rows columns.Table
		rows.Row("", "said", "in accord")
		for _, f := range b.Flows {
			rows.Row(f.Words, t.flow(f.Unit, f.Said, f.ABV), t.flow(f.Unit, f.Best, f.ABV))
		}
		rows.Write(t.w)
	}
	t.w.Gap()
}

// why takes the gap apart by what was done otherwise.
func (t *text) why(a *review.Answer) {
	if a.Done == nil || a.Done.Same && len(a.Small) == 0 {
		return
	}
	if a.Done.Why != nil && !a.Done.Same {
		for _, o := range a.Done.Why.Each {
			if o.Key != t.lived() && !t.Full || !t.u.Counts(o.Key) {
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
	if shown := mostSmall; len(a.Small) > 0 {
		if t.Full {
			shown = len(a.Small)
		}
		t.line("%s.", small(a.Small, shown))
	}
	t.w.Gap()
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
		rows.Row(l.Words, t.value(l.Kind, l.Said, l.ABV), t.value(l.Kind, l.Plan, l.ABV), t.value(l.Kind, l.Made, l.ABV), t.difference(l.Kind, l.Off(), l.ABV), mark)
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
	t.line("%s", from(a.Ahead))
	for _, l := range t.say.ahead(a) {
		t.line("- %s", l)
	}
	t.w.Gap()
}

// untold is what would have told most, or will.
func (t *text) untold(a *review.Answer) {
	shown := a.Untold
	if !t.Full {
		shown = shown[:min(len(shown), mostUntold)]
	}
	for _, l := range untold(shown) {
		t.line("%s: %s.", l.Head, words.And(l.Parts))
	}
}
