package glance

import (
	"fmt"
	"io"
	"strings"

	"newmake/compile/measure"
	"newmake/compile/plan"
	"newmake/compile/show/columns"
	"newmake/lang/diag"
	"newmake/lang/words"
)

// One is a batch among several: its plan, or why there is none.
type One struct {
	Name   string
	Plan   *plan.Plan // nil where its text has errors
	Errors int
}

// Several writes batches one line each, in at most Rows lines of columns.Page.
func Several(w io.Writer, title string, all []One, o Options) error {
	g := &screen{Options: o}
	out := []string{g.paint(strong, columns.Cut(diag.Safe(title), columns.Page)), ""}
	notes := g.notes(2)
	room := rows - len(out) - len(notes) - 3
	shown := all
	if len(all) > room {
		shown = all[:room-1]
	}
	var rows [][]string
	dates := dateForm(all)
	for _, b := range shown {
		row := g.row(b, dates)
		for i := 1; i < len(row); i++ {
			row[i] = columns.Cut(row[i], mostCell)
		}
		rows = append(rows, row)
	}
	var widths [6]int
	for _, r := range rows {
		for i := 1; i < len(widths); i++ {
			widths[i] = max(widths[i], columns.Width(r[i]))
		}
	}
	rest := 2 + 2*len(widths)
	for _, w := range widths {
		rest += w
	}
	states, names := 0, 0
	for i, b := range shown {
		word, _ := stateOf(b)
		states, names = max(states, columns.Width(word)), max(names, columns.Width(rows[i][0]))
	}
	widths[0] = min(names, max(columns.Page-rest-states, leastName))
	for i, r := range rows {
		line := "  " + columns.Fill(columns.Cut(r[0], widths[0]), widths[0])
		for k := 1; k < len(widths); k++ {
			line += "  " + columns.Right(r[k], widths[k])
		}
		word, how := stateOf(shown[i])
		out = append(out, strings.TrimRight(line+"  "+g.paint(how, word), " "))
	}
	if len(shown) < len(all) {
		out = append(out, fmt.Sprintf("  and %d more", len(all)-len(shown)))
	}
	out = append(append(out, ""), notes...)
	more := "One of them: newmake plan \"" + diag.Safe(all[len(all)-1].Name) + "\" · what is wrong: newmake check"
	out = append(out, "  "+g.paint(faint, columns.Cut(more, columns.Page-2)))
	_, err := io.WriteString(w, strings.Join(out, "\n")+"\n")
	return err
}

const (
	leastName = 12 // the least room of a name
	mostCell  = 12 // the most of a figure
)

// dateForm is how the starts of batches are written: without the year where it is one.
func dateForm(all []One) string {
	year := 0
	for _, b := range all {
		if b.Plan == nil {
			continue
		}
		of := plan.Moment(b.Plan.Batch.Start).Year()
		if year != 0 && of != year {
			return "_2 Jan 06"
		}
		year = of
	}
	return "_2 Jan"
}

// row is a batch in cells: name, start, grain, hearts, casks, cost.
func (g *screen) row(b One, dates string) []string {
	name := diag.Safe(b.Name)
	p := b.Plan
	if p == nil {
		return []string{name, "", "", "", "", ""}
	}
	g.Units = measure.US
	if p.Batch.Units == "si" {
		g.Units = measure.SI
	}
	hearts := p.Spirit.Fraction("hearts").Lot
	casks, cost := words.Count(p.Cask.Casks, "cask"), ""
	switch {
	case p.Cask.SizeL == 0 && p.Cask.Bottles > 0:
		casks = words.Count(p.Cask.Bottles, "bottle")
	case p.Cask.SizeL == 0:
		casks = "no wood"
	}
	if p.Cost != nil {
		cost = measure.Number(p.Cost.Total, 0) + " " + diag.Safe(p.Cost.Currency)
	}
	return []string{name, plan.Moment(p.Batch.Start).Format(dates), g.Brief(plan.Of(p.Bill.TotalKg, plan.Kilogram)), g.Brief(hearts.Volume()), casks, cost}
}

// stateOf is how a batch stands, in a word or two, and its colour.
func stateOf(b One) (word, how string) {
	if b.Plan == nil {
		return words.Count(max(b.Errors, 1), "error"), bad
	}
	broken, errors, warnings := 0, 0, 0
	for _, n := range b.Plan.Notices {
		switch {
		case n.Code == string(diag.CodePromiseBroken):
			broken++
		case n.Severity == "error":
			errors++
		case n.Severity == "warning":
			warnings++
		}
	}
	switch {
	case errors > 0:
		return words.Count(errors, "error"), bad
	case broken > 0:
		return "BROKEN", bad
	case warnings > 0:
		return words.Count(warnings, "warning"), warn
	}
	return "good", good
}
