package inventory

import (
	"fmt"
	"strconv"
	"strings"

	"newmake/lang/diag"
	"newmake/lang/recipe"
	"newmake/lang/record"
	"newmake/lang/tree"
	"newmake/lang/words"
)

// inRack holds where casks lie against the rack houses of the plants, as far as any is
// declared.
func inRack(casks []*record.Cask, plants []*recipe.Plant, diags *diag.List) {
	all := map[string]*recipe.RackHouse{}
	var names []string
	for _, p := range plants {
		for _, r := range p.RackHouses {
			if all[tree.Key(r.Name)] == nil {
				all[tree.Key(r.Name)] = r
				names = append(names, fmt.Sprintf("%q", r.Name))
			}
		}
	}
	if len(names) == 0 {
		return
	}
	for _, c := range casks {
		for i := range c.Visits {
			v := &c.Visits[i]
			if v.Word != "to" {
				continue
			}
			r := all[tree.Key(v.To)]
			if r == nil {
				diags.Add(diag.Diagnostic{Code: diag.CodeRack, Severity: diag.Warning, At: v.At, Summary: fmt.Sprintf("%q is no rack house of the plant", v.To),
					Help: fmt.Sprintf("it has %s; another is declared in the plant: rack-house %q", words.And(names), v.To)})
				continue
			}
			for _, way := range [...]struct {
				word string
				most int
			}{{"row", r.Rows}, {"tier", r.Tiers}} {
				for _, spot := range v.Names {
					n, ok := strings.CutPrefix(spot, way.word+" ")
					if x, err := strconv.ParseFloat(strings.ReplaceAll(n, ",", ""), 64); ok && err == nil && way.most > 0 && x > float64(way.most) {
						diags.Add(diag.Diagnostic{Code: diag.CodeRack, Severity: diag.Warning, At: v.At, Summary: fmt.Sprintf("%q has %s, and this is %s", r.Name, words.Count(way.most, way.word), spot),
							Help: fmt.Sprintf("look at the number, or at the `%ss` of the rack house", way.word)})
					}
				}
			}
		}
	}
}
