package plants

import (
	"fmt"
	"slices"

	"newmake/lang/check/internal/fields"
	"newmake/lang/diag"
	"newmake/lang/house"
	"newmake/lang/recipe"
	"newmake/lang/tree"
	"newmake/lang/words"
)

// rackHouse reads one rack house. Its name is among those of the vessels.
func rackHouse(p *recipe.Plant, n *tree.Node, seen map[string]diag.Span, diags *diag.List) {
	h := &recipe.RackHouse{Name: n.Text("name"), Where: make(map[string]diag.Span, len(n.Lines)), At: n.At()}
	h.Read(fields.Text{In: n})
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
