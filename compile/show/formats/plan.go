package formats

import (
	"bytes"
	"slices"

	"newmake/compile/measure"
	"newmake/compile/plan"
	"newmake/compile/show/csv"
	"newmake/compile/show/glance"
	"newmake/compile/show/ics"
	"newmake/compile/show/json"
	"newmake/compile/show/md"
	"newmake/compile/show/sheet"
	"newmake/compile/show/text"
	"newmake/compile/show/trial"
	"newmake/lang/diag"
	"newmake/lang/words"
)

// Options of a rendering.
type Options struct {
	Table string // of csv
	Bold  bool   // text may be bold: it goes to a terminal
	Short bool   // of html: two pages
	// Of text: some days of the plan or a part of it alone, as text.Options has them;
	// or Screen, which is all of it at a glance.
	Days   []string
	Part   string
	Screen *glance.Options
}

// Plan writes a plan in a format of OfPlan.
func Plan(p *plan.Plan, format string, o Options) ([]byte, error) {
	var out bytes.Buffer
	var err error
	u := UnitsOf(p)
	switch format {
	case "json":
		err = json.Write(&out, p)
	case "html":
		err = sheet.HTML(&out, p, sheet.Options{Units: u, Short: o.Short})
	case "csv":
		if !slices.Contains(csv.Tables, o.Table) {
			return nil, diag.Refuse("there is no table %q: --table is %s", o.Table, words.Or(csv.Tables))
		}
		err = csv.Write(&out, p, o.Table, u)
	case "ics":
		err = ics.Write(&out, p, u)
	case "md":
		err = md.Write(&out, p, u)
	default:
		if o.Screen != nil {
			o.Screen.Units = u
			err = glance.Write(&out, p, *o.Screen)
			break
		}
		err = text.Write(&out, p, text.Options{Units: u, Bold: o.Bold, Days: o.Days, Part: o.Part})
	}
	return out.Bytes(), err
}

// Variants writes a batch and its variants in a format of OfVariants.
func Variants(t trial.Trial, format string, o Options) ([]byte, error) {
	var out bytes.Buffer
	var err error
	u := UnitsOf(t[0])
	switch format {
	case "json":
		err = t.JSON(&out)
	case "md":
		err = t.Markdown(&out, u)
	default:
		err = t.Text(&out, u, o.Bold)
	}
	return out.Bytes(), err
}

// UnitsOf are those in which a plan is to be read.
func UnitsOf(p *plan.Plan) measure.Units {
	if p.Batch.Units == "si" {
		return measure.SI
	}
	return measure.US
}
