package text

import (
	"slices"
	"strings"
	"time"

	"newmake/compile/measure"
	"newmake/compile/plan"
	"newmake/lang/diag"
)

// Parts are those of a plan that can be shown alone.
var Parts = []string{"bill", "mash", "ferment", "strip", "spirit", "fill", "cask", "cost", "law", "steps", "notices", "cautions"}

// part shows one of Parts, with the work that belongs to it.
func (t *text) part(name string) {
	t.partTitle()
	switch name {
	case "bill":
		t.bill()
	case "mash":
		t.bill()
		t.mash()
	case "ferment":
		t.ferment()
	case "strip":
		t.strip()
	case "spirit":
		t.spirit()
		t.congeners()
	case "fill":
		t.cask()
	case "cask":
		t.cask()
		t.forecast()
	case "cost":
		t.yield()
		t.cost()
	case "law":
		t.law()
		t.promises()
	case "steps":
		t.work(t.p.Schedule.Steps)
	case "notices":
		t.promises()
		t.notices()
	case "cautions":
		t.cautions(t.p.Cautions)
	}
	t.work(slices.DeleteFunc(slices.Clone(t.p.Schedule.Steps), func(s plan.Step) bool { return s.Stage != name }))
}

// days shows the work of some days, with what is measured out for it.
func (t *text) days(dates []string) {
	t.partTitle()
	t.work(slices.DeleteFunc(slices.Clone(t.p.Schedule.Steps), func(s plan.Step) bool {
		return !slices.Contains(dates, plan.Moment(s.Start).Format(time.DateOnly))
	}))
}

// partTitle says which batch it is, and what there is to read of it first.
func (t *text) partTitle() {
	t.Strong(diag.Safe(t.p.Batch.Name) + ", " + measure.Date(t.p.Batch.Start))
	if said := t.toRead(); said != "" {
		t.Para(2, 4, said+": "+strings.Join(worst(t.p), "; ")+".")
	}
}

// work is steps with their cautions in full.
func (t *text) work(steps []plan.Step) {
	if len(steps) == 0 {
		return
	}
	var measured []string
	var keys []string
	for _, s := range steps {
		keys = append(keys, s.Cautions...)
		for _, a := range t.p.Bill.Additions {
			if a.Step == s.ID {
				measured = append(measured, t.Quantity(a.Amount)+" of "+diag.Safe(a.Name))
			}
		}
	}
	if len(measured) > 0 {
		t.Gap()
		t.Para(2, 4, "To measure out: "+strings.Join(measured, ", ")+".")
	}
	t.sheet(steps)
	t.cautions(slices.DeleteFunc(slices.Clone(t.p.Cautions), func(c plan.Caution) bool { return !slices.Contains(keys, c.Key) }))
}
