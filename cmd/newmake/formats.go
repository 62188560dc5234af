package main

import (
	"bytes"
	"slices"

	"newmake/compile/measure"
	"newmake/compile/plan"
	"newmake/compile/show/csv"
	"newmake/compile/show/ics"
	"newmake/compile/show/json"
	"newmake/compile/show/md"
	"newmake/compile/show/sheet"
	"newmake/compile/show/text"
	"newmake/lang/words"
)

// renderPlan writes a plan in a format.
func (a *app) renderPlan(p *plan.Plan, format string, f planFlags) ([]byte, error) {
	var out bytes.Buffer
	var err error
	u := unitsOf(p)
	switch format {
	case "json":
		err = json.Write(&out, p)
	case "html":
		err = sheet.HTML(&out, p, sheet.Options{Units: u})
	case "csv":
		if !slices.Contains(csv.Tables, f.table) {
			return nil, usage("there is no table %q: --table is %s", f.table, words.Or(csv.Tables))
		}
		err = csv.Write(&out, p, f.table, u)
	case "ics":
		err = ics.Write(&out, p, u)
	case "md":
		err = md.Write(&out, p, u)
	default:
		bold := a.colour(a.outTerminal) && toTerminal(f.output)
		err = text.Write(&out, p, text.Options{Units: u, Bold: bold})
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
