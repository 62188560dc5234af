package house

import (
	"strconv"
	"strings"

	"newmake/lang"
	"newmake/lang/quantity"
	"newmake/lang/tree"
	"newmake/lang/wording"
)

// Spoken is a line as written, with its quantities in the units of a system.
func Spoken(n *tree.Node, units quantity.System) string {
	var b strings.Builder
	items := n.Stmt.Items
	for i := range items {
		if i > 0 && items[i].Kind != lang.Comma {
			b.WriteByte(' ')
		}
		f := restated(n, &items[i], units)
		switch {
		case f == nil:
			b.WriteString(writtenItems(items[i : i+1]))
		case items[i].Kind == lang.Range:
			b.WriteString(wording.Decimal(f.Low) + ".." + wording.Decimal(f.High) + " " + f.Unit)
		default:
			b.WriteString(wording.Decimal(f.Low) + " " + f.Unit)
		}
	}
	return b.String()
}

// restated is a quantity of a line in the units of a system, to three or four figures;
// nil where it is in them as it is written.
func restated(n *tree.Node, it *lang.Item, units quantity.System) *Figure {
	if it.Kind != lang.Number && it.Kind != lang.Range {
		return nil
	}
	u, known := quantity.Lookup(it.Unit)
	if !known || units == quantity.Both || u.System == quantity.Both || u.System == units {
		return nil
	}
	kind := u.Measures[0].Kind
	for i := range n.Match.Caps {
		if c := &n.Match.Caps[i]; c.Item == it && c.Kind != quantity.None {
			kind = c.Kind
		}
	}
	low, ok := tree.ToSI(it.Value, it.Unit, kind)
	if !ok {
		return nil
	}
	high := low
	if it.Kind == lang.Range {
		high, _ = tree.ToSI(it.High, it.Unit, kind)
	}
	unit := wording.Counterpart(high, it.Unit, kind)
	if unit == "" {
		return nil
	}
	return &Figure{Low: shownIn(low, unit, kind), High: shownIn(high, unit, kind), Unit: unit}
}

// shownIn is an SI value in a unit, rounded as it is shown.
func shownIn(si float64, unit string, kind quantity.Kind) float64 {
	v, err := quantity.FromSI(si, unit, kind)
	if err != nil {
		return si
	}
	shown, err := strconv.ParseFloat(strings.ReplaceAll(wording.Decimal(v), ",", ""), 64)
	if err != nil {
		return v
	}
	return shown
}
