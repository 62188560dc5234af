package formats

import (
	"io"
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

var planForms = []form[*plan.Plan, Options]{
	{"text", ".txt", planText},
	{"html", ".html", func(w io.Writer, p *plan.Plan, o Options) error {
		return sheet.HTML(w, p, sheet.Options{Units: UnitsOf(p), Short: o.Short})
	}},
	{"json", ".json", func(w io.Writer, p *plan.Plan, _ Options) error { return json.Write(w, p) }},
	{"csv", ".csv", planTable},
	{"ics", ".ics", func(w io.Writer, p *plan.Plan, _ Options) error { return ics.Write(w, p, UnitsOf(p)) }},
	{"md", ".md", func(w io.Writer, p *plan.Plan, _ Options) error { return md.Write(w, p, UnitsOf(p)) }},
}

// ShortFits reports whether the short sheet of a plan is two pages.
func ShortFits(p *plan.Plan) bool { return sheet.TwoPages(p, UnitsOf(p)) }

// OfPlan is the formats of a plan.
var OfPlan = ways(planForms)

// Plan writes a plan in a format of OfPlan.
func Plan(p *plan.Plan, format string, o Options) ([]byte, error) {
	return written(planForms, format, p, o)
}

func planText(w io.Writer, p *plan.Plan, o Options) error {
	if o.Screen != nil {
		o.Screen.Units = UnitsOf(p)
		return glance.Write(w, p, *o.Screen)
	}
	return text.Write(w, p, text.Options{Units: UnitsOf(p), Bold: o.Bold, Days: o.Days, Part: o.Part})
}

// Table says that csv has a table of this name.
func Table(name string) error {
	if !slices.Contains(csv.Tables, name) {
		return diag.Refuse("there is no table %q: --table is %s", name, words.Or(csv.Tables))
	}
	return nil
}

func planTable(w io.Writer, p *plan.Plan, o Options) error {
	if err := Table(o.Table); err != nil {
		return err
	}
	return csv.Write(w, p, o.Table, UnitsOf(p))
}

var variantForms = []form[trial.Trial, Options]{
	{"text", ".txt", func(w io.Writer, t trial.Trial, o Options) error { return t.Text(w, UnitsOf(t[0]), o.Bold) }},
	{"json", ".json", func(w io.Writer, t trial.Trial, _ Options) error { return t.JSON(w) }},
	{"md", ".md", func(w io.Writer, t trial.Trial, _ Options) error { return t.Markdown(w, UnitsOf(t[0])) }},
}

// OfVariants is the formats of a batch beside its variants.
var OfVariants = ways(variantForms)

// Variants writes a batch beside its variants in a format of OfVariants.
func Variants(t trial.Trial, format string, o Options) ([]byte, error) {
	return written(variantForms, format, t, o)
}

// UnitsOf are those in which a plan is to be read.
func UnitsOf(p *plan.Plan) measure.Units {
	if p.Batch.Units == "si" {
		return measure.SI
	}
	return measure.US
}
