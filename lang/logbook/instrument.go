package logbook

import (
	"fmt"

	"newmake/lang/diag"
	"newmake/lang/quantity"
	"newmake/lang/record"
	"newmake/lang/tree"
)

// Instrument reads one instrument. It is nil where its scale could not be read.
func Instrument(n *tree.Node) (*record.Instrument, diag.List) {
	var diags diag.List
	if !n.Bad {
		tree.Missing(&diags, n, "the instrument "+n.Text("name"))
	}
	l := n.Line("reads")
	if l == nil {
		return nil, diags
	}
	scale, by := l.Get("quantity"), l.Get("division")
	i := &record.Instrument{Name: n.Text("name"), At: n.At()}
	i.Scale = record.Scale{Low: scale.Item.Value, High: scale.Item.High, Division: by.Item.Value, Unit: scale.Item.Unit, Kind: scale.Kind}
	if c := l.Get("temp"); c != nil {
		i.Scale.AtC, i.Scale.AtSaid = c.SI, true
	}
	d := diag.Diagnostic{Code: diag.CodeScale, At: by.At()}
	switch {
	case scale.Item.Unit == "":
		d.Code, d.At, d.Summary, d.Help = diag.CodeNoUnit, scale.At(), "a scale needs its unit", "write `1.000..1.070 SG by 0.001 SG`, `3..9 pH by 0.1 pH`"
	case by.Item.Unit != scale.Item.Unit:
		d.Summary = fmt.Sprintf("the scale is in `%s`, and its division in `%s`", scale.Item.Unit, by.Item.Unit)
		d.Help = fmt.Sprintf("write both in `%s`", scale.Item.Unit)
	case by.Item.Value <= 0:
		d.Summary, d.Help = "a division is more than nothing", "write how far apart the marks of the scale are"
	case by.Item.Value > scale.Item.High-scale.Item.Value:
		d.Summary, d.Help = "the division is wider than the whole scale", "write how far apart the marks of the scale are"
	}
	if d.Summary != "" {
		diags.Add(d)
		return nil, diags
	}
	if t := n.Line("tolerance").Get("quantity"); t != nil {
		if t.Item.Unit != i.Scale.Unit {
			diags.Add(diag.Diagnostic{Code: diag.CodeScale, At: t.At(), Summary: fmt.Sprintf("the scale is in `%s`, and its tolerance in `%s`", i.Scale.Unit, t.Item.Unit),
				Help: fmt.Sprintf("write both in `%s`", i.Scale.Unit)})
		} else {
			i.ToleranceSI = record.StepSI(i.Scale.Low, t.Item.Value, i.Scale.Unit, i.Scale.Kind)
		}
	}
	for _, c := range n.All("checked") {
		i.Checks = append(i.Checks, check(i, c, &diags))
	}
	return i, diags
}

// check reads one comparison.
func check(i *record.Instrument, l *tree.Node, diags *diag.List) record.Check {
	said := l.Get("said")
	k := record.Check{On: record.ReadDate(l.Text("date")), Said: valueOf(said), Against: l.Text("name"), Place: l.At()}
	wrong := func(c *tree.Capture) {
		if c.Kind != i.Scale.Kind {
			diags.Add(diag.Diagnostic{Code: diag.CodeWrongKind, At: c.At(), Summary: fmt.Sprintf("`%s` is %s, and the instrument reads %s", c.At().Text(), c.Kind, i.Scale.Kind),
				Help: fmt.Sprintf("write what it said in `%s`", i.Scale.Unit)})
		}
	}
	wrong(said)
	switch c := l.Get("true"); {
	case c != nil:
		wrong(c)
		v := valueOf(c)
		k.True = &v
	case k.Against != "": // the other said the same
		k.True = &k.Said
	case i.Scale.Kind == quantity.Gravity:
		k.True = &record.Value{Num: "1.000", Number: 1, Unit: "SG", Kind: quantity.Gravity, SI: 1}
	}
	for _, slot := range []string{"warmth", "temp"} {
		if c := l.Get(slot); c != nil {
			k.AtC, k.AtSaid = c.SI, true
		}
	}
	return k
}
