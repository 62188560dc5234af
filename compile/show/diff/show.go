// Package show prints a comparison: as text of 80 columns, as Markdown for a
// pull request, as a page of HTML, as JSON. It computes nothing. In each of them
// the change in outcome stands first, and in text last as well.
package diff

import (
	"io"
	"slices"
	"strings"

	"newmake/compile/ask/compare"
	"newmake/compile/measure"
	"newmake/compile/plan"
	"newmake/lang/diag"
)

// Options say how a comparison is shown.
type Options struct {
	Bold   bool // headings in bold, for a terminal
	AllWhy bool // every outcome taken apart, not the main ones alone
}

// JSON writes the document as it is.
func JSON(w io.Writer, d *compare.Document) error { return diag.EncodeJSON(w, "", d) }

// marks stand before an edit.
var marks = map[compare.Kind]string{
	compare.Changed: "~", compare.Added: "+", compare.Removed: "-", compare.Moved: ">", compare.Renamed: "=",
}

// signed writes a change with its sign; none is a bare 0, which stands out less.
func signed(x float64, places int) string {
	s := measure.Number(x, places)
	switch {
	case x == 0:
		return "0"
	case x > 0:
		return "+" + s
	}
	return s
}

func number(o compare.Outcome, x float64) string { return measure.Number(x, o.Places) }

// withUnit puts the unit after a number, if there is one.
func withUnit(n, unit string) string { return strings.TrimSpace(n + " " + unit) }

func mass(units string, kg float64) string {
	if units == "si" {
		return measure.Number(kg, 1) + " kg"
	}
	return measure.Number(kg/0.45359237, 1) + " lb"
}

func clock(rfc3339 string) string {
	t := plan.Moment(rfc3339)
	if t.IsZero() {
		return "-"
	}
	return t.Format("Mon 2 Jan 15:04")
}

// soon is how far a moment has to move, in hours, for a person to mind.
const soon = 5.0 / 60

// moved lists the moments that a person would mind.
func moved(c *compare.Comparison) []compare.Moment {
	var out []compare.Moment
	for _, m := range c.Moments {
		if m.Old == "" || m.New == "" || m.Hours >= soon || m.Hours <= -soon {
			out = append(out, m)
		}
	}
	return out
}

// hours says how much later or earlier something is.
func hours(m compare.Moment) string {
	h, word := m.Hours, " later"
	switch {
	case m.Old == "":
		return "is new"
	case m.New == "":
		return "is gone"
	case h < 0:
		h, word = -h, " earlier"
	}
	return measure.Duration(h*60) + word
}

// line is one value of an edit: what it was, and what it is. A word that both
// begin with, as a step does, is said once.
func line(l compare.Line) string {
	old, new := diag.Safe(l.Old), diag.Safe(l.New)
	switch {
	case old == "" && new == "":
		return diag.Safe(l.Name)
	case old == "":
		return new
	case new == "":
		return old
	}
	if name := diag.Safe(l.Name) + " "; strings.HasPrefix(old, name) && strings.HasPrefix(new, name) {
		old, new = strings.TrimPrefix(old, name), strings.TrimPrefix(new, name)
	}
	return old + " -> " + new
}

// words are what was edited, and each value before and after where that says
// more.
func words(e compare.Edit) (head string, values []string) {
	head = diag.Safe(e.What)
	if e.Kind == compare.Renamed {
		return head + ", without effect: " + line(e.Lines[0]), nil
	}
	telling := len(e.Lines) > 1 || len(e.Lines) == 1 && e.Lines[0].Old != "" && e.Lines[0].New != ""
	if e.Part == compare.OfBill || !telling { // the bill has a table
		return head, nil
	}
	if len(e.Lines) > 1 {
		for _, l := range e.Lines {
			values = append(values, diag.Safe(l.Name)+" "+line(l))
		}
		return head, values
	}
	l := e.Lines[0]
	switch {
	case e.Kind == compare.Moved:
		return head + ": " + line(l), nil
	case e.What == l.Name+" "+l.New:
		return diag.Safe(l.Name) + " " + line(l), nil
	}
	return head + ": " + line(l), nil
}

// mainKeys are the outcomes that are taken apart unless all are asked for, as far
// as they changed, the first of them.
var mainKeys = []string{
	"heartsVolumeL", "heartsAbvPct", "heartsProofGallons", "pureAlcoholL", "originalGravitySG", "leftoverL", "costTotal", "costPerBottle", "elapsedHours", "mashHours", "spiritHours",
	"washVolumeL", "heatKWh", "bottles",
}

const mainMost = 4

func mainWhy(c *compare.Comparison, all bool) []compare.WhyOutcome {
	w := *c.Why
	w.Each = slices.DeleteFunc(slices.Clone(w.Each), func(o compare.WhyOutcome) bool { return !reader(c).Counts(o.Key) })
	if all {
		return w.Each
	}
	var out []compare.WhyOutcome
	for _, k := range mainKeys {
		for _, o := range w.Each {
			if o.Key == k && len(out) < mainMost {
				out = append(out, o)
			}
		}
	}
	if len(out) == 0 {
		return w.Each[:min(len(w.Each), mainMost)]
	}
	return out
}
