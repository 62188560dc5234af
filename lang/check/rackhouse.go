package check

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"newmake/lang/diag"
	"newmake/lang/house"
	"newmake/lang/recipe"
	"newmake/lang/record"
	"newmake/lang/tree"
	"newmake/lang/words"
)

// rackHouse reads one rack house. Its name is among those of the vessels.
func rackHouse(p *recipe.Plant, n *tree.Node, seen map[string]diag.Span, diags *diag.List) {
	h := &recipe.RackHouse{Name: n.Text("name"), Where: make(map[string]diag.Span, len(n.Lines)), At: n.At()}
	h.Read(lines{in: n})
	for _, l := range n.Lines {
		h.Where[l.Field.Name] = l.At()
	}
	h.Air = air(n, diags)
	if at, twice := seen[tree.Key(h.Name)]; twice {
		diags.Add(house.Duplicate("rack house", h.Name, h.At, at))
		return
	}
	seen[tree.Key(h.Name)] = h.At
	p.RackHouses = append(p.RackHouses, h)
}

// air reads the months of a rack house: one line for all of them, or one for each.
func air(n *tree.Node, diags *diag.List) recipe.YearOfAir {
	var y recipe.YearOfAir
	at := [len(months)]*tree.Node{}
	var whole *tree.Node
	for _, l := range n.All("air") {
		a := recipe.Air{TempC: l.Num("temp"), Humidity: l.Num("share")}
		i := slices.IndexFunc(months[:], l.Has)
		var before *tree.Node
		if i < 0 {
			before, whole = whole, l
			for i := range y.Months {
				y.Months[i] = a
			}
		} else {
			before, at[i] = at[i], l
			y.Months[i] = a
		}
		if before != nil {
			which := "all the year"
			if i >= 0 {
				which = months[i]
			}
			diags.Add(diag.Diagnostic{Code: diag.CodeMonths, At: l.At(), Summary: "the air of " + which + " is written twice", Help: "keep one of the lines", Related: []diag.Related{{At: before.At(), Text: "here first"}}})
		}
	}
	var lacks []string
	for i, l := range at {
		if l == nil {
			lacks = append(lacks, months[i])
		}
	}
	switch last := n.Line("air"); {
	case last == nil, n.Gaps:
		return recipe.YearOfAir{}
	case whole != nil && len(lacks) < len(months):
		diags.Add(diag.Diagnostic{Code: diag.CodeMonths, At: whole.At(), Summary: "the air is written for all the year and for months too", Help: "write it for all twelve months, or in one line without a month"})
		return recipe.YearOfAir{}
	case whole == nil && len(lacks) > 0:
		diags.Add(diag.Diagnostic{Code: diag.CodeMonths, At: last.At(), Summary: fmt.Sprintf("the air of %s is not written", words.And(lacks)),
			Help: "write it for all twelve months, or for the year in one line without a month"})
		return recipe.YearOfAir{}
	}
	y.Said = true
	return y
}

// inRack holds where casks lie against the rack houses of the plants, as far as any is
// declared.
func (h *House) inRack(casks []*record.Cask, diags *diag.List) {
	all := map[string]*recipe.RackHouse{}
	var names []string
	for _, d := range h.Plants {
		for _, r := range h.plant(d).plant.RackHouses {
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
