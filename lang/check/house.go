// Package check reads the trees of a house into recipes, and says what is wrong
// with them.
//
// A text goes through five hands. The table of the language (package schema) says
// what may stand where; every line is held against its shape, and becomes a node
// (package tree). Variants are laid over what they vary, and the house's library over
// the built-in one, as nodes (package house). Here a tree is read for its meaning
// into a recipe, plain data in SI, and its names are found. Last, the trade's rules
// and the law are held against the recipe (package trade).
//
//	h, err := check.Load("examples/lantern-hollow/ferry-landing.batch", check.Options{})
//	diags := h.Check()
//	batch, diags := h.Batch("Ferry Landing")
package check

import (
	"io/fs"
	"slices"
	"sync"

	"newmake/lang/diag"
	"newmake/lang/house"
	"newmake/lang/learned"
	"newmake/lang/parallel"
	"newmake/lang/recipe"
	"newmake/lang/record"
	"newmake/lang/schema"
	"newmake/lang/spelling"
	"newmake/lang/vocabulary"
	"newmake/lang/wording"
	"newmake/lang/words"
)

// House is a house whose recipes are read as they are asked for, each once.
type House struct {
	*house.House
	library *library

	// Teach puts what was learned of a plant into a batch of it, and says so; nil: what
	// was learned is left out. It is not for this package to know what a constant moves.
	Teach func(*recipe.Batch, *recipe.Learned) (*recipe.Batch, diag.List)

	plants  onceEach[*house.Decl, plant]
	batches onceEach[*house.Decl, batch]
	runs    onceEach[*house.Decl, run]

	tastings onceEach[*house.Decl, tasting]
	trials   onceEach[*house.Decl, trial]
	seasons  onceEach[*house.Decl, seasonRead]

	instruments func() map[string]*instrument
	filled      func() []string // the serials of all casks that runs filled
	vocabulary  func() *vocabulary.Words
	cellar      func() *Cellar
	bought      func() map[string]*record.Lot // by what it is, and its lot
	goods       func() goods                  // what came into the stores, and what runs drew
	stored      func() []*stored              // the lots of the stores, in their order
}

// Options of Load.
type Options = house.Options

// Load finds the house to which a file or folder belongs. See house.Load.
func Load(at string, o Options) (*House, error) { return front(house.Load(at, o)) }

// LoadFS is Load for a file system whose top is the house. See house.LoadFS.
func LoadFS(fsys fs.FS, shown string, o Options) (*House, error) {
	return front(house.LoadFS(fsys, shown, o))
}

func front(h *house.House, err error) (*House, error) {
	if err != nil {
		return nil, err
	}
	out := &House{House: h, library: libraryOf(h)}
	out.instruments = sync.OnceValue(out.readInstruments)
	out.filled = sync.OnceValue(out.serials)
	out.cellar = sync.OnceValue(out.readCellar)
	out.vocabulary = sync.OnceValue(out.readVocabulary)
	out.bought = sync.OnceValue(out.readBought)
	out.goods = sync.OnceValue(out.readGoods)
	out.stored = sync.OnceValue(out.readStored)
	return out, nil
}

// batch is one batch of the house, read.
type batch struct {
	decl *house.Decl

	batch *recipe.Batch
	diags diag.List
	plant *plant
	uses  []*libraryEntry // of the library
}

// batch gives a batch, read.
func (h *House) batch(d *house.Decl) *batch {
	return h.batches.get(d, func() *batch {
		b := &batch{decl: d}
		h.read(b)
		return b
	})
}

// plant gives a plant, read.
func (h *House) plant(d *house.Decl) *plant {
	return h.plants.get(d, func() *plant {
		p := &plant{decl: d}
		p.read(h.library)
		return p
	})
}

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
	list := append(h.bearsOn(b), b.diags...)
	if b.batch == nil { // a parent is missing, perhaps further up, or there is a circle
		for _, a := range h.Chain(d)[1:] {
			list = append(list, h.batch(a).diags...)
		}
	}
	if b.batch == nil && !list.HasErrors() { // what keeps it from being read is said of another part of the text
		for _, a := range h.Chain(d) {
			list = append(list, a.File.Said()...)
		}
	}
	if b.batch == nil && !list.HasErrors() { // what it varies stands in a line that is no declaration, of any file
		list = append(list, h.LostSaid()...)
	}
	if b.batch == nil && !list.HasErrors() {
		list.Add(diag.Diagnostic{Code: diag.CodeUnknownName, Summary: name + " varies a batch that cannot be read", At: d.At,
			Help: "`newmake check .` says what is wrong with it"})
	}
	if !list.HasErrors() && b.batch.Plant == nil { // its plant stands in a line that is no declaration, of any file
		list = append(list, h.LostSaid()...)
	}
	if !list.HasErrors() && b.batch.Plant == nil {
		list.Add(diag.Diagnostic{
			Code: diag.CodeNoPlant, Summary: name + " has no plant that could be read", At: d.At,
			Help: "`newmake check " + house.FileName + "` says what is wrong with the plant",
		})
	}
	if list.HasErrors() {
		return nil, list
	}
	return b.batch, list
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

// Check says everything there is to say about the house, in the order of the
// files and lines.
func (h *House) Check() diag.List { return h.Ordered(h.found(h.Files)) }

// CheckIn is Check for one file, or for the files below a folder, with what the
// house as a whole has wrong.
func (h *House) CheckIn(path string) diag.List {
	in := h.FilesIn(path)
	others := make(map[*diag.Source]bool)
	for _, f := range h.Files {
		others[f.Source] = !slices.Contains(in, f)
	}
	return h.Ordered(slices.DeleteFunc(h.found(in), func(d diag.Diagnostic) bool { return others[d.At.Src] }))
}

// found is all that there is to say of files, in no order: of what they declare,
// and of what is laid over that.
func (h *House) found(files []*house.File) diag.List {
	in := make(map[*house.File]bool, len(files))
	for _, f := range files {
		in[f] = true
	}
	parallel.Each(len(files), func(i int) { files[i].Said() })
	list := slices.Concat(h.Loading(), h.General())
	for _, f := range files {
		list = append(list, f.Said()...)
	}
	for _, s := range h.library.own(in) {
		list = append(list, s.diags...)
	}
	for _, d := range h.Plants {
		if in[d.File] {
			list = append(list, h.plant(d).diags...)
		}
	}
	list = append(list, h.ofRecords(in)...)
	list = append(list, h.ofTastings(in)...)
	list = append(list, h.ofSeasons(in)...)
	batches := slices.DeleteFunc(slices.Clone(h.BatchDecls()), func(d *house.Decl) bool {
		return !in[d.File] && (d.Parent == "" || !slices.ContainsFunc(h.Chain(d), func(a *house.Decl) bool { return in[a.File] }))
	})
	parallel.Each(len(batches), func(i int) { h.batch(batches[i]) })
	for _, d := range batches {
		said := h.batch(d).diags
		for _, a := range h.Chain(d)[1:] { // one mistake, one error: it is said where it stands
			said = said.Beyond(h.batch(a).diags)
		}
		list = append(list, said...)
	}
	return list
}

// bearsOn gathers the diagnostics of the texts on which a batch depends: its own
// declaration and those it varies, its plant, and the entries of the library that it
// uses. A fault in anything else does not keep it from being planned.
func (h *House) bearsOn(b *batch) diag.List {
	list := slices.Clone(h.Loading())
	family := h.Chain(b.decl)
	list = append(list, slices.DeleteFunc(slices.Clone(h.General()), func(d diag.Diagnostic) bool {
		return slices.ContainsFunc(h.BatchDecls(), func(o *house.Decl) bool { return o.Has(d.At) && !slices.Contains(family, o) })
	})...)
	decls := slices.Clone(family)
	if b.plant != nil {
		decls, list = append(decls, b.plant.decl), append(list, b.plant.diags...)
	}
	for _, s := range append(slices.Clip(b.uses), h.library.all(schema.Model)...) {
		decls, list = append(decls, s.decls...), append(list, s.diags...)
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
