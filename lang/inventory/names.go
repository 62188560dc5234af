package inventory

import (
	"slices"

	"newmake/lang/house"
	"newmake/lang/record"
	"newmake/lang/schema"
	"newmake/lang/tree"
)

// names finds and lists the names to which lines of casks and vats refer.
type names struct {
	house  *house.House
	filled []string // the serials of all casks that runs filled
	known  map[string]map[string]bool
}

// of are the names of a sort.
func (n *names) of(sort string) []string {
	past := func(f *schema.Field) []string {
		var out []string
		for _, d := range n.house.Past(f) {
			out = append(out, d.Name)
		}
		return out
	}
	switch sort {
	case "cask":
		return eachOnce(past(schema.OwnCask), n.filled)
	case "run":
		return past(schema.Run)
	case "vat":
		return past(schema.Vat)
	}
	return eachOnce(past(schema.Vat), past(schema.OwnCask), n.filled)
}

// has reports whether a name is of a sort.
func (n *names) has(sort, name string) bool {
	if n.known[sort] == nil {
		if n.known == nil {
			n.known = map[string]map[string]bool{}
		}
		n.known[sort] = map[string]bool{}
		for _, name := range n.of(sort) {
			n.known[sort][tree.Key(name)] = true
		}
	}
	return n.known[sort][tree.Key(name)]
}

// Filled lists the casks that runs filled, each once, in the order of the runs.
func Filled(runs []*record.Run) []string {
	var out []string
	for _, r := range runs {
		for i := range r.Visits {
			if v := &r.Visits[i]; v.Word == "into" && v.To != "" {
				out = append(out, v.To)
			}
		}
	}
	return eachOnce(out)
}

// eachOnce joins lists of names, of which none stands twice.
func eachOnce(lists ...[]string) []string {
	var out []string
	seen := map[string]bool{}
	for _, n := range slices.Concat(lists...) {
		if k := tree.Key(n); !seen[k] {
			seen[k] = true
			out = append(out, n)
		}
	}
	return out
}
