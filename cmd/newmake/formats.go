package main

import (
	"bytes"
	"slices"

	"newmake/compile/measure"
	"newmake/compile/plan"
	"newmake/compile/show"
	"newmake/compile/show/sheet"
)

// renderPlan writes a plan in a format.
func (a *app) renderPlan(p *plan.Plan, format string, f planFlags) ([]byte, error) {
	var out bytes.Buffer
	var err error
	o := show.Options{Units: unitsOf(p)}
	switch format {
	case "json":
		err = show.JSON(&out, p)
	case "html":
		err = sheet.HTML(&out, p, sheet.Options{Units: o.Units})
	case "csv":
		if !slices.Contains(show.Tables, f.table) {
			return nil, usage("there is no table %q: --table is %s", f.table, orWords(show.Tables))
		}
		err = show.CSV(&out, p, f.table, o)
	case "ics":
		err = show.Calendar(&out, p, o)
	case "md":
		err = show.Markdown(&out, p, o)
	default:
		o.Bold = a.colour(a.outTerminal) && toTerminal(f.output)
		err = show.Text(&out, p, o)
	}
	return out.Bytes(), err
}

// unitsOf are those in which a plan is to be read.
func unitsOf(p *plan.Plan) measure.Units {
	if p.Batch.Units == "si" {
		return measure.SI
	}
	return measure.US
}
