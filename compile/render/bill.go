package render

func (t *text) bill() {
	b := t.p.Bill
	t.heading("GRAIN BILL")
	tab := table{indent: 2}
	tab.row("grain", "weigh out", "share", "extract expected", "goes in at")
	for _, l := range b.Lines {
		tab.row(safe(l.Name), t.Units.mass(l.MassKg), number(l.SharePct, 1)+" %", t.Units.mass(l.ExtractKg), t.clock.start(l.AddedIn))
	}
	tab.row("in all", t.Units.mass(b.TotalKg), "100.0 %", t.Units.mass(b.ExtractKg), "")
	tab.write(&t.page)
	t.para(2, 4, number(b.Bushels, 2)+" distiller's bushels (56 lb of any grain); diastatic power of the grist "+
		number(b.LintnerDeg, 0)+" deg Lintner.")

	if len(b.Additions) == 0 {
		return
	}
	t.gap()
	tab = table{indent: 2, left: map[int]bool{2: true}}
	tab.row("liquor and additions", "measure out", "", "goes in at")
	for _, a := range b.Additions {
		at := ""
		if a.At != nil {
			at = "at " + t.quantity(*a.At)
		}
		tab.row(safe(a.Name), t.quantity(a.Amount), at, t.clock.start(a.Step))
	}
	tab.write(&t.page)
}
