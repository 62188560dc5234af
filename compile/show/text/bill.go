package text

import (
	"strings"

	"newmake/compile/measure"
	"newmake/compile/plan"
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

	t.lots()
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

// lots are those that are next, first in, first out, and what the certificate of one says
// otherwise than the plan. Those that the bill names are planned with.
func (t *text) lots() {
	var all []string
	own := ""
	for _, g := range t.p.Bill.Lines {
		if len(g.Lots) == 0 {
			continue
		}
		said := diag.Safe(g.Name) + " " + diag.Safe(t.Lots(g))
		for _, l := range g.Lots {
			if l.Named {
				said += ", as the bill names it"
			} else if off := certified(t.Units, l); off != "" {
				said, own = said+" ("+off+")", g.Name+" … lot \""+l.Lot+"\""
			}
		}
		all = append(all, said)
	}
	if len(all) == 0 {
		return
	}
	t.Para(2, 4, "From the stores, first in, first out: "+strings.Join(all, "; ")+".")
	if own != "" {
		t.Para(2, 4, "A lot is planned with once the bill names it, `"+diag.Safe(own)+"`; which one is next changes no number here.")
	}
}

// certified is what the certificate of a lot says, and what it would change; "" where it has none.
func certified(u measure.Units, l plan.GrainLot) string {
	var out []string
	if l.MoisturePct > 0 {
		out = append(out, "moisture "+measure.Number(l.MoisturePct, 1)+" %")
	}
	if l.StarchPct > 0 {
		out = append(out, "starch "+measure.Number(l.StarchPct, 1)+" %")
	}
	if len(out) == 0 {
		return ""
	}
	switch {
	case l.StarchKg > 0:
		out = append(out, u.Mass(l.StarchKg)+" more starch than planned")
	case l.StarchKg < 0:
		out = append(out, u.Mass(-l.StarchKg)+" less starch than planned")
	}
	return strings.Join(out, ", ")
}
