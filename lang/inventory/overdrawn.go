//go:build !js

package inventory

import (
	"fmt"

	"newmake/lang/diag"
	"newmake/lang/quantity"
	"newmake/lang/record"
	"newmake/lang/tree"
	"newmake/lang/wording"
)

// vatHolds is how much more than was gauged in a vat may be found in its bottles, as a share: a tank
// is dipped to about 2 %, and bottles are filled a little over, and warmer (common practice).
const vatHolds = 1.03

// overdrawn holds the bottles of each vat, of all its bottlings together, against its last gauge.
func overdrawn(c *Inventory, diags *diag.List) {
	for _, v := range c.Vats {
		on, m3, gauge := lastGauge(v)
		if m3 == 0 {
			continue
		}
		sum := 0.0
		var first *record.Bottling
		for _, b := range c.Bottlings { // in the order of the texts: which of two is one too many, nobody knows
			if tree.Key(b.Of) != tree.Key(v.Name) || b.On.Compare(on) < 0 {
				continue
			}
			for i := range b.Bottles {
				if w := &b.Bottles[i]; w.Word == "bottles" {
					sum += float64(w.N) * w.EachM3
				}
			}
			if sum <= m3*vatHolds {
				if first == nil {
					first = b
				}
				continue
			}
			unit := "L"
			if gauge.At.Units() == quantity.US {
				unit = "gal"
			}
			d := diag.Diagnostic{Code: diag.CodeOverdrawn, At: b.At,
				Summary: fmt.Sprintf("%s of vat %s are in bottles by here, and it held %s", wording.In(sum, unit, quantity.Volume), v.Name, wording.In(m3, unit, quantity.Volume)),
				Related: []diag.Related{{At: gauge.At, Text: "it was gauged here"}},
				Help:    "look at the vat that is named, at the numbers and at the sizes; what was added to the vat since is gauged anew, with its date"}
			if first != nil {
				d.Related = append(d.Related, diag.Related{At: first.At, Text: "it was bottled here before"})
			}
			diags.Add(d)
			break
		}
	}
}

// lastGauge is when a vat was gauged last by volume, with nothing added since, and what it held; 0
// where it was not.
func lastGauge(v *record.Vat) (on record.Date, m3 float64, at *record.Visit) {
	for i := range v.Visits {
		w := &v.Visits[i]
		switch w.Word {
		case "from", "reduce":
			m3 = 0
		case "gauge":
			for _, r := range w.Read {
				if now, ok := r.Holds(); ok && (r.What == record.Volume || r.What == record.Dip) {
					on, m3, at = w.When.Date, now.SI, w
				}
			}
		}
	}
	if on.IsZero() {
		on = v.On
	}
	return on, m3, at
}
