// Package taught shows what a house's runs have taught.
package taught

import (
	"fmt"
	"io"
	"math"
	"slices"
	"strconv"
	"strings"

	"newmake/compile/ask/learn"
	"newmake/compile/show/columns"
	"newmake/lang/words"
)

// Text writes what was learned for people: what was left out first, then what the runs
// tell and do not tell, and how well each is foretold by the others.
func Text(w io.Writer, d *learn.Document, full bool) error {
	t := &text{d: d}
	t.Para(0, 2, fmt.Sprintf("%s, learned from %s of %s: %s.", d.Plant, words.Count(d.Readings, "reading"), words.Count(len(d.Runs), "run"), span(d.Runs)))
	for _, s := range d.Warnings {
		t.Para(0, 2, "! "+s)
	}
	t.skipped()
	if len(d.Gross) > 0 {
		t.Gap()
		t.Line("Readings that nothing explains, and that were left out:")
		for _, g := range d.Gross {
			t.Item("  "+g.Run, 9, fmt.Sprintf("%s: %s, %s %s", g.Reading, number(g.Said, g.Unit), number(math.Abs(g.Over), g.Unit), high(g.Over)))
		}
	}
	t.eased(full)
	if len(d.Drifts) > 0 {
		t.Gap()
		t.Line("What does not stay:")
		for _, x := range d.Drifts {
			shows := ""
			if x.Shown != x.Since {
				shows = fmt.Sprintf(" (it shows at %s)", x.Shown)
			}
			t.Para(2, 4, fmt.Sprintf("%s: %s %s since run %s%s", x.Words, number(math.Abs(x.By), x.Unit), higher(x.By), x.Since, shows))
		}
	}
	t.constants("house", "The house")
	t.constants("instrument", "Its instruments are off by")
	t.notes()
	t.foretold(full)
	if full {
		t.rest()
	}
	_, err := io.WriteString(w, t.String())
	return err
}

type text struct {
	columns.Writer
	d *learn.Document
}

// mostEased is how many readings that count for less are shown unless all is asked for.
const mostEased = 5

// eased are the readings that count for less.
func (t *text) eased(full bool) {
	if !t.d.Robust {
		return
	}
	t.Gap()
	t.Para(0, 2, fmt.Sprintf("Readings count for less from 1.345 standard deviations on (Huber): %d of %d do.", len(t.d.Eased), t.d.Readings))
	for i, e := range t.d.Eased {
		if i == mostEased && !full {
			t.Line(fmt.Sprintf("  and %d more: --full", len(t.d.Eased)-i))
			break
		}
		t.Item("  "+e.Run, 9, fmt.Sprintf("%s: %s of it", e.Reading, number(100*e.Weight, "%")))
	}
}

// skipped are the runs that nothing is learned from, those with one reason together.
func (t *text) skipped() {
	var whys []string
	of := map[string][]string{}
	for _, s := range t.d.Skipped {
		if !slices.Contains(whys, s.Why) {
			whys = append(whys, s.Why)
		}
		of[s.Why] = append(of[s.Why], s.Run)
	}
	for _, why := range whys {
		t.Para(2, 4, "without "+words.And(of[why])+": "+why)
	}
}

// constants are those of an owner that the runs told.
func (t *text) constants(owner, title string) {
	var rows columns.Table
	n := 0
	for _, c := range t.d.Constants {
		if c.Owner != owner || c.Untold {
			continue
		}
		if n++; n == 1 {
			rows.Row(title, "value", "9 times in 10", "was", "known")
		}
		known := number(c.PriorPct, "%")
		if c.AtItsBound {
			known = "at its bound"
		}
		base := number(c.Base, c.Unit)
		if owner == "instrument" {
			base = ""
		}
		rows.Row(t.name(c), number(c.Value, c.Unit), number(c.Low, "")+" to "+number(c.High, c.Unit), base, known)
	}
	if n > 0 {
		t.Gap()
		rows.Write(&t.Writer)
	}
}

// notes are what the readings do not tell, or tell together only, and where an interval
// is not what the curvature has.
func (t *text) notes() {
	t.Gap()
	t.Para(0, 0, "known: how much of the value was known before these runs.")
	var untold []string
	for _, c := range t.d.Constants {
		switch {
		case c.Untold:
			untold = append(untold, t.name(c))
		case c.Uneven:
			t.Para(0, 0, fmt.Sprintf("Tried value by value, the readings put %s elsewhere than the quick estimate of their spread, which has %s to %s.", t.name(c), number(c.CurveLow, ""), number(c.CurveHigh, c.Unit)))
		}
	}
	if len(untold) > 0 {
		t.Para(0, 0, "Not told by these readings: "+words.And(untold)+".")
	}
	for _, p := range t.d.Together {
		t.Para(0, 0, fmt.Sprintf("Cannot be told apart: %s and %s (correlation %.2f). Read %s.", p.One, p.Two, p.Correlation, p.Read))
	}
}

// foretold is how well each run is foretold by all others.
func (t *text) foretold(full bool) {
	if len(t.d.Runs) < 2 {
		return // there are no others
	}
	t.Gap()
	how := ""
	if t.d.Exact {
		how = ", the constants found anew without it"
	}
	t.Para(0, 0, "Each run as all the others foretell it"+how+": how far its readings are off, in standard deviations, by the book and as learned; and what came, beside what was to come, 9 times in 10.")
	var rows columns.Table
	rows.Row("run", "book", "learned", "", "came", "book", "learned")
	for _, r := range t.d.Foretold {
		head := []string{r.Run, number(r.Before, ""), number(r.After, "")}
		for _, o := range r.Outcomes {
			if !full && !strings.Contains(o.Reading, "volume of the hearts") {
				continue
			}
			rows.Row(append(head, outcome(o.Reading), number(o.Said, o.Unit), number(o.Before, ""), number(o.After, "")+" +- "+number(o.Margin, o.Unit))...)
			head = []string{"", "", ""}
		}
		if head[0] != "" {
			rows.Row(head...)
		}
	}
	rows.Write(&t.Writer)
}

// outcome is a reading as its fraction is called.
func outcome(reading string) string {
	if of, ok := strings.CutPrefix(reading, "volume of the "); ok {
		return of
	}
	if of, ok := strings.CutPrefix(reading, "strength of the "); ok {
		return of + ", strength"
	}
	return reading
}

// rest is what is told where all of it is asked for.
func (t *text) rest() {
	list := func(title string, n int, line func(i int) string) {
		if n == 0 {
			return
		}
		t.Gap()
		t.Line(title)
		for i := range n {
			t.Para(2, 4, line(i))
		}
	}
	list("What single runs had of their own:", len(t.d.Own), func(i int) string {
		o := t.d.Own[i]
		return fmt.Sprintf("%s  %s: %s", o.Run, o.Words, signed(o.Amount, o.Unit))
	})
	list("How much runs differ (one standard deviation; what is usual beside it):", len(t.d.Scatter), func(i int) string {
		o := t.d.Scatter[i]
		return fmt.Sprintf("%s: %s (%s)", o.Words, number(o.Amount, o.Unit), number(o.Usual, o.Unit))
	})
	list("Readings that the model does not come to:", len(t.d.Unused), func(i int) string {
		return t.d.Unused[i].Run + "  " + t.d.Unused[i].Reading
	})
}

// name is a constant as it is called, with whose it is where another is called the same.
func (t *text) name(c learn.Line) string {
	same := slices.ContainsFunc(t.d.Constants, func(o learn.Line) bool { return o.Words == c.Words && o.Whose != c.Whose })
	if c.Whose == "" || !same {
		return c.Words
	}
	return c.Words + ", " + c.Whose
}

func span(runs []string) string {
	if len(runs) > 3 {
		return runs[0] + " to " + runs[len(runs)-1]
	}
	return words.And(runs)
}

func number(v float64, unit string) string {
	s := strconv.FormatFloat(v, 'f', -1, 64)
	if unit == "" {
		return s
	}
	return s + " " + unit
}

func signed(v float64, unit string) string {
	if v > 0 {
		return "+" + number(v, unit)
	}
	return number(v, unit)
}

func high(over float64) string {
	if over < 0 {
		return "too low"
	}
	return "too high"
}

func higher(by float64) string {
	if by < 0 {
		return "lower"
	}
	return "higher"
}
