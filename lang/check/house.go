// Package check turns the texts of a house into recipes, and says what is wrong
// with them.
//
// A text goes through five hands. The table of the language (package schema) says
// what may stand where; a shaper holds every line against its shape and makes a
// tree of nodes. Variants are laid over what they vary, and the house's stock over
// the built-in one, as nodes (overlay.go). Names are found (names.go) and a tree is
// read for its meaning into a recipe, plain data in SI. Last, the trade's rules and
// the law are held against the recipe (package trade).
//
//	h, err := check.Load("examples/lantern-hollow/ferry-landing.batch", check.Options{})
//	diags := h.Check()
//	batch, diags := h.Batch("Ferry Landing")
package check

import (
	"path/filepath"
	"slices"
	"sync"

	"newmake/lang"
	"newmake/lang/diag"
	"newmake/lang/recipe"
	"newmake/lang/schema"
	"newmake/lang/spelling"
	"newmake/lang/wording"
	"newmake/lang/words"
)

// House is a folder of recipes, loaded.
type House struct {
	Root    string       // the folder as the user knows it
	Files   []*lang.File // in order of their paths
	Edition int          // of the language, as house.batch says
	Plants  []*recipe.Plant
	Stock   recipe.Stock // the built-in one with the house's own over it

	library *Library
	files   []*file
	loading diag.List // files that were not read
	general diag.List // of declarations: names, plants, stock
	stock   *stockBuilder
	said    func() []remarks // of the files, once all declarations are known
	plants  map[string]plantEntry
	batches []*entry
	byName  map[string]*entry
	known   knownSorts
	losses  func() losses
}

type plantEntry struct {
	plant *recipe.Plant
	node  *node
	whole bool // it has all that a batch needs of it
}

// entry is one batch of the house.
type entry struct {
	name   string
	file   *file
	node   *node
	broken bool // it has no place in the house: its name is taken
	shared bool // another batch has its name

	laid   sync.Once
	merged *node     // laid over what it varies
	over   diag.List // what laying it has shown

	once  sync.Once
	batch *recipe.Batch
	diags diag.List
}

// assemble makes a house of its files.
func (h *House) assemble(files []*file) {
	h.files = files
	h.plants, h.byName = map[string]plantEntry{}, map[string]*entry{}
	plants := newIndex("plant")
	stock := newStockBuilder(h.library)
	for _, f := range files {
		h.Files = append(h.Files, f.File)
		for _, n := range f.decls {
			switch {
			case n.field == schema.Plant:
				plants.add(n, &h.general)
			case n.field == schema.Batch:
				h.addBatch(f, n)
			case stock.takes(n):
				stock.add(n, &h.general)
			}
		}
	}
	h.said, h.losses, h.known = sync.OnceValue(h.remarked), sync.OnceValue(h.lostNames), h.knownNames()
	h.edition(&h.general)
	h.Stock, h.stock = stock.build(&h.general), stock
	for _, name := range plants.order {
		n := plants.find(name)
		p, whole := h.plant(n, &h.general)
		h.Plants = append(h.Plants, p)
		h.plants[nameKey(name)] = plantEntry{p, n, whole}
	}
}

// addBatch enters a batch. Two of one name are said at both: whichever is asked
// for, nobody knows which was meant.
func (h *House) addBatch(f *file, n *node) {
	c := n.get("name")
	if c == nil {
		return
	}
	e := &entry{name: c.text(), file: f, node: n}
	h.batches = append(h.batches, e)
	first := h.byName[nameKey(e.name)]
	if first == nil {
		h.byName[nameKey(e.name)] = e
		return
	}
	e.broken = true
	before := first.node.get("name").at()
	if !first.shared {
		first.shared = true
		d := duplicate("batch", first.name, before, c.at())
		d.Related[0].Text = "the other one is here"
		h.general.Add(d)
	}
	h.general.Add(duplicate("batch", e.name, c.at(), before))
}

// losses is what may be declared in texts that could not be read.
type losses struct {
	names    map[string]bool        // in lines that are no declaration
	nameless map[*schema.Field]bool // sorts of which a declaration lacks its name
}

func (h *House) lostNames() losses {
	l := losses{map[string]bool{}, map[*schema.Field]bool{}}
	for _, file := range h.files {
		for _, n := range file.decls {
			if n.bad && n.get("name") == nil {
				l.nameless[n.field] = true
			}
		}
		for _, st := range file.lost {
			for i := range st.Items {
				l.names[nameKey(st.Items[i].Text)] = true
			}
		}
	}
	return l
}

// lost says that something of a name may be declared in a text that could not be
// read: its name stands in a line that is no declaration, or there is a
// declaration of its sort that lacks its name. That is said, and is enough.
func (h *House) lost(f *schema.Field, name string) bool {
	l := h.losses()
	return l.nameless[f] || l.names[nameKey(name)]
}

// knownSorts lists the names of a house by what they name, each list made once.
type knownSorts struct {
	batches, plants, grains, yeasts, enzymes, casks, standards func() []string
}

func (h *House) knownNames() knownSorts {
	once := sync.OnceValue[[]string]
	return knownSorts{
		batches: once(h.Batches),
		plants: once(func() []string {
			var names []string
			for _, p := range h.Plants {
				names = append(names, p.Name)
			}
			return names
		}),
		grains:    once(func() []string { return sortedKeys(h.Stock.Grains) }),
		yeasts:    once(func() []string { return sortedKeys(h.Stock.Yeasts) }),
		enzymes:   once(func() []string { return sortedKeys(h.Stock.Enzymes) }),
		casks:     once(func() []string { return sortedKeys(h.Stock.Casks) }),
		standards: once(func() []string { return sortedKeys(h.Stock.Standards) }),
	}
}

func (h *House) file(path string) *file {
	for _, f := range h.files {
		if f.path == path {
			return f
		}
	}
	return nil
}

// Batches lists the names of all batches, in the order of the files and lines.
func (h *House) Batches() []string { return h.names(func(*entry) bool { return true }) }

// BatchesIn lists the batches of one file, or of all files below a folder, in
// order. The path is one as Load takes it.
func (h *House) BatchesIn(path string) []string {
	in := h.within(path)
	return h.names(func(e *entry) bool { return in(e.file) })
}

// within says which files are a file, or lie below a folder. A link stands for
// what it leads to: a house reads a file once, under its own name.
func (h *House) within(path string) func(*file) bool {
	root, at := absolute(h.Root), absolute(path)
	wants := []string{at}
	if real, err := filepath.EvalSymlinks(at); err == nil {
		if top, err := filepath.EvalSymlinks(root); err == nil {
			if rel, err := filepath.Rel(top, real); err == nil && filepath.IsLocal(rel) {
				wants = append(wants, filepath.Join(root, rel))
			}
		}
	}
	return func(f *file) bool {
		name := absolute(f.Source.Name)
		return slices.ContainsFunc(wants, func(want string) bool {
			rel, err := filepath.Rel(want, name)
			return err == nil && filepath.IsLocal(rel)
		})
	}
}

func absolute(path string) string {
	if abs, err := filepath.Abs(path); err == nil {
		return abs
	}
	return filepath.Clean(path)
}

func (h *House) names(want func(*entry) bool) []string {
	var out []string
	for _, e := range h.batches {
		if !e.broken && want(e) {
			out = append(out, e.name)
		}
	}
	return out
}

// Variants lists the batches that vary a batch, directly or through others, in
// the order of the files.
func (h *House) Variants(name string) []string {
	return h.names(func(e *entry) bool {
		return slices.ContainsFunc(h.chain(e)[1:], func(a *entry) bool { return a.name == name })
	})
}

// Batch gives one batch ready to be computed, and what is to be said of it and
// of what it uses. The batch is nil if there is none of that name or it has
// errors.
func (h *House) Batch(name string) (*recipe.Batch, diag.List) {
	b, list := h.Ready(name)
	return b, h.ordered(list)
}

// Ready is Batch for one of many: its list is to go through Ordered, with those of
// others, before it is shown.
func (h *House) Ready(name string) (*recipe.Batch, diag.List) {
	e := h.byName[nameKey(name)]
	if e == nil {
		d := diag.Diagnostic{Code: diag.CodeUnknownName, Summary: "there is no batch called " + name + " in " + h.Root}
		if near := spelling.Nearest(name, h.Batches()); near != "" {
			d.Help = "did you mean `" + near + "`?"
		} else {
			d.Help = "the house has " + words.And(wording.Quoted(h.Batches()))
		}
		return nil, diag.List{d}
	}
	h.make(e)
	list := append(h.bearsOn(e), e.diags...)
	if e.batch == nil { // a parent is missing, perhaps further up, or there is a circle
		for _, a := range h.chain(e)[1:] {
			h.make(a)
			list = append(list, a.diags...)
		}
	}
	if e.batch == nil && !list.HasErrors() { // what keeps it from being read is said of another part of the text
		for _, a := range h.chain(e) {
			list = append(list, a.file.diags...)
		}
	}
	if list.HasErrors() {
		return nil, list
	}
	return e.batch, list
}

// Check says everything there is to say about the house, in the order of the
// files and lines.
func (h *House) Check() diag.List { return h.ordered(h.found()) }

// found is all that there is to say, in no order.
func (h *House) found() diag.List {
	each(len(h.batches), func(i int) { h.make(h.batches[i]) })
	list := slices.Clone(h.loading)
	list = append(list, h.general...)
	for _, f := range h.files {
		list = append(list, f.diags...)
	}
	for _, e := range h.batches {
		list = append(list, e.diags...)
	}
	return list
}

// CheckIn is Check for one file, or for the files below a folder, with what the
// house as a whole has wrong.
func (h *House) CheckIn(path string) diag.List {
	in := h.within(path)
	others := make(map[*diag.Source]bool)
	for _, f := range h.files {
		others[f.Source] = !in(f)
	}
	return h.ordered(slices.DeleteFunc(h.found(), func(d diag.Diagnostic) bool { return others[d.At.Src] }))
}

// FilesIn lists the texts of one file, or of all below a folder, in order.
func (h *House) FilesIn(path string) []*lang.File {
	in := h.within(path)
	var out []*lang.File
	for _, f := range h.files {
		if in(f) {
			out = append(out, f.File)
		}
	}
	return out
}

// Ordered sorts a list by the house's files and by place, and says nothing twice.
func (h *House) Ordered(list diag.List) diag.List { return h.ordered(list) }

// ordered sorts a list by file and place, says nothing twice, and no more than can
// be read (see diag.List.Cap).
func (h *House) ordered(list diag.List) diag.List {
	if len(list) == 0 {
		return nil
	}
	rank := make(map[*diag.Source]int, len(h.files))
	for i, f := range h.files {
		rank[f.Source] = i + 1
	}
	place := func(d diag.Diagnostic) int {
		if r := rank[d.At.Src]; r > 0 {
			return r
		}
		if d.At.Src != nil && len(d.At.Src.Text) == 0 {
			return 0 // a file that was not read
		}
		return len(h.files) + 1
	}
	slices.SortStableFunc(list, func(a, b diag.Diagnostic) int {
		if c := place(a) - place(b); c != 0 {
			return c
		}
		return a.At.Start - b.At.Start
	})
	return list.Dedup().Cap()
}
