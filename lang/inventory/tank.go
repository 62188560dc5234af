//go:build !js

package inventory

import (
	"fmt"

	"newmake/lang/diag"
	"newmake/lang/quantity"
	"newmake/lang/recipe"
	"newmake/lang/record"
	"newmake/lang/spelling"
	"newmake/lang/tree"
	"newmake/lang/wording"
	"newmake/lang/words"
)

// inTank holds the tanks in which vats are made against those of the plants, as far as any
// is declared for spirit: that there is such a tank, and that it holds what was gauged in it.
func inTank(vats []*record.Vat, plants []*recipe.Plant, diags *diag.List) {
	all := map[string]*recipe.Tank{}
	var names, quoted []string
	for _, p := range plants {
		for _, t := range p.Tanks {
			if all[tree.Key(t.Name)] == nil {
				all[tree.Key(t.Name)] = t
				if t.For == 0 || t.For&recipe.OfSpirit != 0 {
					names, quoted = append(names, t.Name), append(quoted, fmt.Sprintf("%q", t.Name))
				}
			}
		}
	}
	for _, v := range vats {
		t := all[tree.Key(v.Tank)]
		switch {
		case v.Tank == "", t == nil && len(names) == 0:
			continue
		case t == nil:
			d := diag.Diagnostic{Code: diag.CodeRack, Severity: diag.Warning, At: v.At, Summary: fmt.Sprintf("%q is no tank of the plant", v.Tank),
				Help: fmt.Sprintf("it has %s; another is declared in the plant: tank %q", words.And(quoted), v.Tank)}
			if near := spelling.Nearest(v.Tank, names); near != "" {
				d.Help = fmt.Sprintf("did you mean %q? ", near) + d.Help
			}
			diags.Add(d)
			continue
		}
		for i := range v.Visits {
			r := readingOf(&v.Visits[i], record.Dip)
			if r == nil || v.Visits[i].Word == "from" {
				continue
			}
			if now, ok := r.Holds(); ok && t.HoldsM3 > 0 && now.SI > t.HoldsM3*Fullest {
				diags.Add(diag.Diagnostic{Code: diag.CodeOverfull, At: r.Place, Summary: fmt.Sprintf("`%s` of vat %s is more than %q holds, %s", now, v.Name, t.Name, wording.In(t.HoldsM3, now.Unit, quantity.Volume)),
					Related: []diag.Related{{At: t.At, Text: "the tank is here"}},
					Help:    "look at the volume and at the tank; a slip of the pen is put right beside it, with `corrected`"})
			}
		}
	}
}
