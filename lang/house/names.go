package house

import (
	"fmt"

	"newmake/lang/diag"
	"newmake/lang/tree"
)

// index is the declarations of one sort by name, in the order they stand.
type index struct {
	sort  string
	byKey map[string]*Decl
	order []*Decl
}

func newIndex(sort string) *index { return &index{sort: sort, byKey: map[string]*Decl{}} }

// add enters a declaration, with a diagnostic if its name is taken. A declaration with
// errors still takes its name, so that it is not reported as missing.
func (x *index) add(d *Decl, diags *diag.List) {
	if before := x.find(d.Name); before != nil {
		d.Taken = true
		diags.Add(Duplicate(x.sort, d.Name, d.NameAt, before.NameAt))
		return
	}
	x.byKey[tree.Key(d.Name)] = d
	x.order = append(x.order, d)
}

func (x *index) find(name string) *Decl { return x.byKey[tree.Key(name)] }

// Duplicate is the diagnostic for a name that is taken.
func Duplicate(sort, name string, at, before diag.Span) diag.Diagnostic {
	return diag.Diagnostic{
		Code: diag.CodeDuplicate, Summary: fmt.Sprintf("the name %q is taken: it is another %s's", name, sort), At: at,
		Help:    "give one of them another name: names are unique in a house, whatever file they stand in",
		Related: []diag.Related{{At: before, Text: "the first one is here"}},
	}
}
