// Package taught shows what a house's runs have taught.
package taught

import (
	"fmt"
	"io"
	"math"
	"strconv"
	"strings"

	"newmake/compile/ask/learn"
	"newmake/compile/show/columns"
	"newmake/lang/words"
)

// Text writes what was learned for people: what was left out first, then what the runs
// tell and do not tell, and how well each is foretold by the others.
func Text(w io.Writer, d *learn.Document, full bool) error {
	var b strings.Builder
	p := func(format string, args ...any) { fmt.Fprintf(&b, format, args...) }
	p("%s, learned from %s of %s: %s.\n", d.Plant, words.Count(d.Readings, "reading"), words.Count(len(d.Runs), "run"), span(d.Runs))
	for _, s := range d.Warnings {
		p("! %s\n", s)
	}
	for _, s := range d.Skipped {
		p("  without %s: %s\n", s.Run, s.Why)
	}
	if len(d.Gross) > 0 {
		p("\nReadings that nothing explains, and that were left out:\n")
		for _, g := range d.Gross {
			p("  %s  %s: %s, %s %s\n", g.Run, g.Reading, number(g.Said, g.Unit), number(math.Abs(g.Over), g.Unit), high(g.Over))
		}
	}
	if len(d.Drifts) > 0 {
		p("\nWhat does not stay:\n")
		for _, x := range d.Drifts {
			p("  %s: %s %s since run %s (it shows at %s)\n", x.Words, number(math.Abs(x.By), x.Unit), higher(x.By), x.Since, x.Shown)
		}
	}
	for _, part := range []struct{ owner, title string }{{"house", "The house"}, {"instrument", "What its instruments are off by"}} {
		rows := [][]string{}
		for _, c := range d.Constants {
			if c.Owner != part.owner || c.Untold {
				continue
			}
			bound := ""
			if c.AtItsBound {
				bound = "at its bound"
			}
			base := number(c.Base, c.Unit)
			if part.owner == "instrument" {
				base = ""
			}
			rows = append(rows, []string{name(c), number(c.Value, c.Unit), number(c.Low, "") + " to " + number(c.High, c.Unit), base, number(c.PriorPct, "%"), bound})
		}
		if len(rows) == 0 {
			continue
		}
		p("\n")
		table(&b, append([][]string{{part.title, "value", "9 times in 10", "was", "of it known before", ""}}, rows...))
	}
	var untold []string
	for _, c := range d.Constants {
		if c.Untold {
			untold = append(untold, name(c))
		}
	}
	if len(untold) > 0 {
		p("\n")
		para(&b, "Not told by these readings: "+words.And(untold)+".")
	}
	for _, t := range d.Together {
		para(&b, fmt.Sprintf("Cannot be told apart: %s and %s (correlation %.2f). Read %s.", t.One, t.Two, t.Correlation, t.Read))
	}
	p("\nEach run as all the others foretell it: readings off, in standard deviations\n")
	rows := [][]string{{"run", "by the book", "as learned", ""}}
	for _, r := range d.Foretold {
		var outcomes []string
		for _, o := range r.Outcomes {
			if full || strings.Contains(o.Reading, "volume of the hearts") {
				outcomes = append(outcomes, fmt.Sprintf("%s %s: by the book %s, as learned %s +- %s", o.Reading, number(o.Said, o.Unit), number(o.Before, ""), number(o.After, ""), number(o.Margin, o.Unit)))
			}
		}
		rows = append(rows, []string{r.Run, number(r.Before, ""), number(r.After, ""), strings.Join(outcomes, "; ")})
	}
	table(&b, rows)
	if len(d.Own) > 0 && full {
		p("\nWhat single runs had of their own:\n")
		for _, o := range d.Own {
			p("  %s  %s: %s\n", o.Run, o.Words, signed(o.Amount, o.Unit))
		}
	}
	if len(d.Scatter) > 0 && full {
		p("\nHow much runs differ (one standard deviation; what is usual beside it):\n")
		for _, o := range d.Scatter {
			p("  %s: %s (%s)\n", o.Words, number(o.Amount, o.Unit), number(o.Usual, o.Unit))
		}
	}
	if len(d.Unused) > 0 && full {
		p("\nReadings that the model does not come to:\n")
		for _, g := range d.Unused {
			p("  %s  %s\n", g.Run, g.Reading)
		}
	}
	_, err := io.WriteString(w, b.String())
	return err
}

func name(c learn.Line) string {
	if c.Whose == "" || strings.Contains(c.Words, c.Whose) {
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

// table writes rows in columns, the first row as their heads.
func table(b *strings.Builder, rows [][]string) {
	widths := make([]int, len(rows[0]))
	for _, r := range rows {
		for i, c := range r {
			widths[i] = max(widths[i], columns.Width(c))
		}
	}
	for _, r := range rows {
		var line strings.Builder
		for i, c := range r {
			line.WriteString(columns.Fill(c, widths[i]) + "  ")
		}
		b.WriteString(strings.TrimRight("  "+line.String(), " ") + "\n")
	}
}

func para(b *strings.Builder, text string) {
	for _, l := range columns.Wrap(text, 92) {
		b.WriteString(l + "\n")
	}
}
