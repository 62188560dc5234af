// Package house finds a folder of recipes, indexes what its files declare, and
// makes one tree of each declaration that is asked for: a batch laid over those it
// varies, an entry of the library over that which it changes. It makes no recipes;
// package check reads the trees.
//
// Loading a house reads every text, but of most only the first lines of the
// declarations (see lang.Outline). So what a command has to do with one batch costs
// the same whatever else the house keeps.
package house

import (
	"slices"
	"strings"
	"sync"

	"newmake/lang/diag"
	"newmake/lang/schema"
	"newmake/lang/tree"
)

// House is a folder of recipes, indexed.
type House struct {
	Root     string  // the folder as the user knows it
	Files    []*File // in order of their paths
	Edition  int     // of the language, as house.batch says
	batches  []*Decl // in the order of the files and lines
	Plants   []*Decl // those whose name is their own
	Runs     []*Decl // those whose number is their own, in the order of the files and lines
	Tastings []*Decl // in the order of the files and lines; several may be of one thing
	Trials   []*Decl // those whose name is their own, in the order of the files and lines

	instruments *index
	learned     *index // what was learned of the plants, by their names

	base    *House                   // whose library lies under this one; nil for the built-in library
	byName  map[string]*Decl         // batches
	library map[*schema.Field]*index // entries of its own
	loading diag.List                // files that were not read
	general diag.List                // of names and the edition
	losses  func() losses
	known   map[*schema.Field]func() []string // names of entries, its own first
	all     func() []string                   // names of batches

	mu      sync.Mutex
	entries map[entryKey]*Entry
}

// newHouse indexes files.
func newHouse(root string, files []*File, loading diag.List, base *House) *House {
	h := &House{
		Root: root, Files: files, base: base, loading: loading,
		byName: map[string]*Decl{}, library: map[*schema.Field]*index{}, entries: map[entryKey]*Entry{},
	}
	h.losses, h.known = sync.OnceValue(h.lostNames), h.knownNames()
	h.all = sync.OnceValue(func() []string { return slices.Clip(names(h.batches)) })
	plants, runs, trials := newIndex("plant"), newIndex("run"), newIndex("trial")
	h.instruments = newIndex("instrument")
	h.learned = newIndex("learned plant")
	for _, f := range schema.Library {
		h.library[f] = newIndex(f.Name)
	}
	for _, f := range files {
		for _, d := range f.Decls {
			switch {
			case d.NameAt.IsZero():
			case d.Field == schema.Plant:
				plants.add(d, &h.general)
			case d.Field == schema.Run:
				runs.add(d, &h.general)
			case d.Field == schema.Tasting:
				h.Tastings = append(h.Tastings, d)
			case d.Field == schema.Trial:
				trials.add(d, &h.general)
			case d.Field == schema.Instrument:
				h.instruments.add(d, &h.general)
			case d.Field == schema.Batch:
				h.addBatch(d)
			case d.Field == schema.Learned:
				h.learned.add(d, &h.general)
			case h.library[d.Field] != nil:
				h.library[d.Field].add(d, &h.general)
			}
		}
	}
	h.Plants, h.Runs, h.Trials = plants.order, runs.order, trials.order
	if base != nil {
		h.edition(&h.general)
	}
	return h
}

// addBatch enters a batch. Two of one name are said at both: whichever is asked
// for, nobody knows which was meant.
func (h *House) addBatch(d *Decl) {
	h.batches = append(h.batches, d)
	first := h.byName[tree.Key(d.Name)]
	if first == nil {
		h.byName[tree.Key(d.Name)] = d
		return
	}
	d.Taken = true
	if !first.Shared {
		first.Shared = true
		said := Duplicate("batch", first.Name, first.NameAt, d.NameAt)
		said.Related[0].Text = "the other one is here"
		h.general.Add(said)
	}
	h.general.Add(Duplicate("batch", d.Name, d.NameAt, first.NameAt))
}

// Find finds a batch by its name, nil if there is none.
func (h *House) Find(name string) *Decl { return h.byName[tree.Key(name)] }

// Instruments are those of the house whose name is their own.
func (h *House) Instruments() []*Decl { return h.instruments.order }

// Run finds a run by its number, nil if there is none.
func (h *House) Run(number string) *Decl {
	for _, d := range h.Runs {
		if tree.Key(d.Name) == tree.Key(number) {
			return d
		}
	}
	return nil
}

// Learned is what was learned of a plant, nil if nothing was.
func (h *House) Learned(plant string) *Decl { return h.learned.find(plant) }

// Loading is what there is to say of files that were not read.
func (h *House) Loading() diag.List { return h.loading }

// General is what there is to say of the house's names and its edition.
func (h *House) General() diag.List { return h.general }

// Batches lists the names of all batches, in the order of the files and lines.
func (h *House) Batches() []string { return h.all() }

// PlantNames lists the names of all plants, in the order of the files and lines.
func (h *House) PlantNames() []string { return names(h.Plants) }

// names lists names, each once.
func names(decls []*Decl) []string {
	var out []string
	for _, d := range decls {
		if !d.Taken {
			out = append(out, d.Name)
		}
	}
	return out
}

// BatchesIn lists the batches of one file, or of all files below a folder, in
// order. The path is one as Load takes it.
func (h *House) BatchesIn(path string) []string {
	var out []string
	for _, f := range h.FilesIn(path) {
		for _, d := range f.Decls {
			if d.Field == schema.Batch && !d.NameAt.IsZero() && !d.Taken {
				out = append(out, d.Name)
			}
		}
	}
	return out
}

// Variants lists the batches that vary a batch, directly or through others, in
// the order of the files.
func (h *House) Variants(name string) []string {
	var out []string
	for _, d := range h.batches {
		if !d.Taken && slices.ContainsFunc(h.Chain(d)[1:], func(a *Decl) bool { return a.Name == name }) {
			out = append(out, d.Name)
		}
	}
	return out
}

// losses is what may be declared in texts that could not be read.
type losses struct {
	any      bool
	names    map[string]bool        // in lines that are no declaration
	nameless map[*schema.Field]bool // sorts of which a declaration lacks its name
}

func (h *House) lostNames() losses {
	l := losses{false, map[string]bool{}, map[*schema.Field]bool{}}
	for _, file := range h.Files {
		for _, d := range file.Decls {
			if d.nameless() {
				l.nameless[d.Field] = true
			}
		}
		for _, st := range file.lost {
			l.any = true
			for i := range st.Items {
				l.names[tree.Key(st.Items[i].Text)] = true
			}
		}
	}
	return l
}

// Lost says that something of a name may be declared in a text that could not be
// read: its name stands in a line that is no declaration, or there is a
// declaration of its sort that lacks its name. That is said, and is enough.
func (h *House) Lost(f *schema.Field, name string) bool {
	l := h.losses()
	return l.nameless[f] || l.names[tree.Key(name)]
}

// LostAny says that there are lines that are no declaration.
func (h *House) LostAny() bool { return h.losses().any }

// LostSaid is what there is to say of the lines for which Lost and LostAny say
// that something may be there.
func (h *House) LostSaid() diag.List {
	var list diag.List
	for _, f := range h.Files {
		for _, d := range f.Decls {
			if d.nameless() {
				list = append(list, d.Said()...)
			}
		}
		if len(f.lost) > 0 {
			list = append(list, f.Loose()...)
		}
	}
	return list
}

// Ordered sorts a list by the house's files and by place, says nothing twice, and
// no more than can be read (see diag.List.Cap).
func (h *House) Ordered(list diag.List) diag.List {
	if len(list) == 0 {
		return nil
	}
	rank := make(map[*diag.Source]int, len(h.Files))
	for i, f := range h.Files {
		rank[f.Source] = i + 1
	}
	place := func(d diag.Diagnostic) int {
		if r := rank[d.At.Src]; r > 0 {
			return r
		}
		if d.At.Src != nil && len(d.At.Src.Text) == 0 {
			return 0 // a file that was not read
		}
		return len(h.Files) + 1
	}
	slices.SortStableFunc(list, func(a, b diag.Diagnostic) int {
		if c := place(a) - place(b); c != 0 {
			return c
		}
		return a.At.Start - b.At.Start
	})
	return list.Dedup().Cap()
}

// Main is the file that makes the folder a house, nil if there is none.
func (h *House) Main() *File {
	i := slices.IndexFunc(h.Files, func(f *File) bool { return f.Path == FileName })
	if i < 0 {
		return nil
	}
	return h.Files[i]
}

// sorted lists names in the order of the alphabet, each once.
func sorted(names []string) []string {
	slices.SortFunc(names, strings.Compare)
	return slices.Compact(names)
}
