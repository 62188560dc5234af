package house

import (
	"slices"

	"newmake/lang/diag"
	"newmake/lang/schema"
	"newmake/lang/tree"
)

// BatchIndex finds batches, and what each varies.
type BatchIndex struct {
	batches []*Decl          // in the order of the files and lines
	byName  map[string]*Decl // by their keys
	all     func() []string  // their names
	lost    func(*schema.Field, string) bool
}

// BatchDecls lists the declarations of batches, in the order of the files and
// lines, those whose name is another's too.
func (x *BatchIndex) BatchDecls() []*Decl { return x.batches }

// Find finds a batch by its name, nil if there is none.
func (x *BatchIndex) Find(name string) *Decl { return x.byName[tree.Key(name)] }

// Batches lists the names of all batches, in the order of the files and lines.
func (x *BatchIndex) Batches() []string { return x.all() }

// add enters a batch. Two of one name are reported at both, since nobody knows which of
// them is meant when the name is asked for.
func (x *BatchIndex) add(d *Decl, diags *diag.List) {
	x.batches = append(x.batches, d)
	first := x.byName[tree.Key(d.Name)]
	if first == nil {
		x.byName[tree.Key(d.Name)] = d
		return
	}
	d.Taken = true
	if !first.Shared {
		first.Shared = true
		said := Duplicate("batch", first.Name, first.NameAt, d.NameAt)
		said.Related[0].Text = "the other one is here"
		diags.Add(said)
	}
	diags.Add(Duplicate("batch", d.Name, d.NameAt, first.NameAt))
}

// Variants lists the batches that vary a batch, directly or through others, in
// the order of the files.
func (x *BatchIndex) Variants(name string) []string {
	var out []string
	for _, d := range x.batches {
		if !d.Taken && slices.ContainsFunc(x.Chain(d)[1:], func(a *Decl) bool { return a.Name == name }) {
			out = append(out, d.Name)
		}
	}
	return out
}
