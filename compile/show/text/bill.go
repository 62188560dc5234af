package text

import (
	"strings"

	"newmake/compile/measure"
	"newmake/compile/show/columns"
	"newmake/lang/diag"
)

func (t *text) bill() {
	b := t.p.Bill
	t.Heading("GRAIN BILL")
	tab := columns.Table{}
	tab.Row("grain", "weigh out", "share", "extract expected", "goes in at")
	for _, l := range b.Lines {
		tab.Row(diag.Safe(l.Name), t.Mass(l.MassKg), measure.Number(l.SharePct, 1)+" %", t.Mass(l.ExtractKg), t.clock.start(l.AddedIn))
	}
	tab.Row("in all", t.Mass(b.TotalKg), "100.0 %", t.Mass(b.ExtractKg), "")
	tab.Write(&t.page)
	power := "diastatic power of the grist " + measure.Number(b.LintnerDeg, 0) + " deg Lintner."
	if t.Units == measure.US {
		t.Para(2, 4, measure.Number(b.Bushels, 2)+" distiller's bushels (56 lb of any grain); "+power)
	} else {
		t.Para(2, 4, "Diastatic"+strings.TrimPrefix(power, "diastatic"))
	}

	if len(b.Additions) == 0 {
		return
	}
	t.Gap()
	tab = columns.Table{Left: map[int]bool{2: true}}
	tab.Row(t.Words("liquor and additions"), "measure out", "", "goes in at")
	for _, a := range b.Additions {
		at := ""
		if a.At != nil {
			at = "at " + t.Quantity(*a.At)
		}
		tab.Row(diag.Safe(a.Name), t.Quantity(a.Amount), at, t.clock.start(a.Step))
	}
	tab.Write(&t.page)
}
