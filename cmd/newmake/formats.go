package main

import (
	"bytes"
	"slices"

	"newmake/compile/measure"
	"newmake/compile/plan"
	"newmake/compile/render"
	"newmake/compile/render/sheet"
)

// renderPlan writes a plan in a format.
func (a *app) renderPlan(p *plan.Plan, format string, f planFlags) ([]byte, error) {
	var out bytes.Buffer
	var err error
	o := render.Options{Units: unitsOf(p)}
	switch format {
	case "json":
		err = render.JSON(&out, p)
	case "html":
		err = sheet.HTML(&out, p, sheet.Options{Units: o.Units})
	case "csv":
		if !slices.Contains(render.Tables, f.table) {
			return nil, usage("there is no table %q: --table is %s", f.table, orWords(render.Tables))
		}
		err = render.CSV(&out, p, f.table, o)
	case "ics":
		err = render.Calendar(&out, p, o)
	case "md":
		err = render.Markdown(&out, p, o)
	default:
		o.Bold = a.colour(a.outTerminal) && toTerminal(f.output)
		err = render.Text(&out, p, o)
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
