package tree

import (
	"slices"

	"newmake/lang"
	"newmake/lang/diag"
	"newmake/lang/quantity"
	"newmake/lang/wording"
)

// hoursAndMinutes makes one length of time of `4 h 20 min`, which is how a plan
// prints one. Minutes from 60 up are left alone: they are a mistake, and reported as one.
func hoursAndMinutes(items []lang.Item) []lang.Item {
	for i := 0; i+1 < len(items); i++ {
		h, m := &items[i], &items[i+1]
		if !isUnit(h, "h") || !isUnit(m, "min") || m.Value >= 60 || m.Value < 0 || h.Value < 0 || h.Value != float64(int(h.Value)) {
			continue
		}
		minutes := 60*h.Value + m.Value
		both := lang.Item{
			Kind: lang.Number, Num: wording.Decimal(minutes), Value: minutes, Unit: m.Unit,
			At: diag.Span{Src: h.At.Src, Start: h.At.Start, End: m.At.End},
		}
		return slices.Concat(items[:i], []lang.Item{both}, items[i+2:])
	}
	return items
}

func isUnit(it *lang.Item, name string) bool {
	if it.Kind != lang.Number {
		return false
	}
	u, ok := quantity.Lookup(it.Unit)
	return ok && u.Name == name
}
