package check

import (
	"slices"

	"newmake/lang/check/internal/batches"
	"newmake/lang/diag"
	"newmake/lang/house"
	"newmake/lang/learned"
	"newmake/lang/recipe"
	"newmake/lang/schema"
	"newmake/lang/spelling"
	"newmake/lang/wording"
	"newmake/lang/words"
)

// Batch gives one batch ready to be computed, and the diagnostics of it and of what it
// uses. The batch is nil if there is none of that name or it has errors.
func (h *House) Batch(name string) (*recipe.Batch, diag.List) {
	b, list := h.Ready(name)
	return b, h.Ordered(list)
}

// Untaught is Batch without what was learned of its plant: as it was before.
func (h *House) Untaught(name string) (*recipe.Batch, diag.List) {
	b, list := h.bare(name)
	return b, h.Ordered(list)
}

// Ready is Batch for one of many: its list is to go through Ordered, with those of
// others, before it is shown.
func (h *House) Ready(name string) (*recipe.Batch, diag.List) {
	b, list := h.bare(name)
	if b == nil {
		return nil, list
	}
	return h.taught(b, list)
}

// bare is a batch as its texts have it.
func (h *House) bare(name string) (*recipe.Batch, diag.List) {
	d := h.Find(name)
	if d == nil {
		d := diag.Diagnostic{Code: diag.CodeUnknownName, Summary: "there is no batch called " + name + " in " + h.Root}
		if near := spelling.Nearest(name, h.Batches()); near != "" {
			d.Help = "did you mean `" + near + "`?"
		} else {
			d.Help = "the house has " + words.And(wording.Quoted(h.Batches()))
		}
		return nil, diag.List{d}
	}
	b := h.batch(d)
	list := append(h.dependsOn(b), b.Diags...)
	if b.Batch == nil { // a parent is missing, perhaps further up, or there is a circle
		for _, a := range h.Chain(d)[1:] {
			list = append(list, h.batch(a).Diags...)
		}
	}
	if b.Batch == nil && !list.HasErrors() { // what keeps it from being read is said of another part of the text
		for _, a := range h.Chain(d) {
			list = append(list, a.File.Said()...)
		}
	}
	if b.Batch == nil && !list.HasErrors() { // what it varies stands in a line that is no declaration, of any file
		list = append(list, h.LostSaid()...)
	}
	if b.Batch == nil && !list.HasErrors() {
		list.Add(diag.Diagnostic{Code: diag.CodeUnknownName, Summary: name + " varies a batch that cannot be read", At: d.At,
			Help: "`newmake check .` says what is wrong with it"})
	}
	if !list.HasErrors() && b.Batch.Plant == nil { // its plant stands in a line that is no declaration, of any file
		list = append(list, h.LostSaid()...)
	}
	if !list.HasErrors() && b.Batch.Plant == nil {
		list.Add(diag.Diagnostic{
			Code: diag.CodeNoPlant, Summary: name + " has no plant that could be read", At: d.At,
			Help: "`newmake check " + house.FileName + "` says what is wrong with the plant",
		})
	}
	if list.HasErrors() {
		return nil, list
	}
	return b.Batch, list
}

// taught is a batch with what was learned of its plant.
func (h *House) taught(b *recipe.Batch, list diag.List) (*recipe.Batch, diag.List) {
	if h.Teach == nil {
		return b, list
	}
	l, said := learned.Of(h.House, b.Plant.Name)
	list = append(list, said...)
	if said.HasErrors() {
		return nil, list
	}
	if l == nil {
		return b, list
	}
	b, said = h.Teach(b, l)
	return b, append(list, said...)
}

// dependsOn gathers the diagnostics of the texts on which a batch depends: its own
// declaration and those it varies, its plant, and the entries of the library that it
// uses. A fault in anything else does not keep it from being planned.
func (h *House) dependsOn(b *batches.Batch) diag.List {
	list := slices.Clone(h.Loading())
	family := h.Chain(b.Decl)
	list = append(list, slices.DeleteFunc(slices.Clone(h.General()), func(d diag.Diagnostic) bool {
		return slices.ContainsFunc(h.BatchDecls(), func(o *house.Decl) bool { return o.Has(d.At) && !slices.Contains(family, o) })
	})...)
	decls := slices.Clone(family)
	if b.Plant != nil {
		decls, list = append(decls, b.Plant.Decl), append(list, b.Plant.Diags...)
	}
	for _, s := range append(slices.Clip(b.Uses), h.library.All(schema.Model)...) {
		decls, list = append(decls, s.Decls...), append(list, s.Diags...)
	}
	files := []*house.File{h.Main()}
	for _, d := range decls {
		list = append(list, d.Said()...)
		if !slices.Contains(files, d.File) {
			files = append(files, d.File)
		}
	}
	for _, f := range files {
		list = append(list, f.Loose()...)
	}
	return list
}
