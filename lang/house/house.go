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
	"newmake/lang/quantity"
	"newmake/lang/schema"
)

// House is a folder of recipes, indexed.
type House struct {
	Texts
	BatchIndex
	Library

	Edition int     // of the language, as house.batch says
	Plants  []*Decl // those whose name is their own
	Runs    []*Decl // those whose number is their own, in the order of the files and lines

	past    map[*schema.Field]*index  // what happened, by its names
	unnamed map[*schema.Field][]*Decl // what happened and has no name of its own: rounds, tastings
	learned *index                    // what was learned of the plants, by their names

	base    *House    // whose library lies under this one's; nil for the built-in library
	general diag.List // of names and the edition
}

// newHouse indexes files.
func newHouse(root string, files []*File, loading diag.List, base *House) *House {
	h := &House{
		base: base, Texts: Texts{Root: root, Files: files, loading: loading}, BatchIndex: BatchIndex{byName: map[string]*Decl{}},
		past: map[*schema.Field]*index{}, unnamed: map[*schema.Field][]*Decl{},
	}
	for _, f := range files {
		f.house = h
	}
	h.losses, h.lost = sync.OnceValue(h.lostNames), h.Lost
	h.all = sync.OnceValue(func() []string { return slices.Clip(names(h.batches)) })
	h.lay(&h.Texts, base)
	plants := newIndex("plant")
	for _, f := range schema.Language.Fields {
		if f.Past && f.Key != "" {
			h.past[f] = newIndex(f.Name)
		}
	}
	h.learned = newIndex("learned plant")
	for _, f := range files {
		for _, d := range f.Decls {
			switch {
			case d.Field.Past && d.Field.Key == "":
				h.unnamed[d.Field] = append(h.unnamed[d.Field], d)
			case d.NameAt.IsZero():
			case d.Field == schema.Plant:
				plants.add(d, &h.general)
			case h.past[d.Field] != nil:
				h.past[d.Field].add(d, &h.general)
			case d.Field == schema.Batch:
				h.BatchIndex.add(d, &h.general)
			case d.Field == schema.Learned:
				h.learned.add(d, &h.general)
			case h.own[d.Field] != nil:
				h.own[d.Field].add(d, &h.general)
			}
		}
	}
	h.Plants, h.Runs = plants.order, h.past[schema.Run].order
	if base != nil {
		h.edition(&h.general)
	}
	return h
}

// Past are the declarations of one sort of what happened whose name is their own, in the
// order of the files and lines.
func (h *House) Past(f *schema.Field) []*Decl {
	if x := h.past[f]; x != nil {
		return x.order
	}
	return h.unnamed[f]
}

// PastNamed finds a declaration of what happened by its name, nil if there is none.
func (h *House) PastNamed(f *schema.Field, name string) *Decl { return h.past[f].find(name) }

// Units is the system in which the house writes most of its plants; Both where it has
// none, or as much of one as of the other.
func (h *House) Units() quantity.System {
	us, si := 0, 0
	seen := map[*File]bool{}
	for _, d := range h.Plants {
		if !seen[d.File] {
			seen[d.File] = true
			a, b := d.File.Units()
			us, si = us+a, si+b
		}
	}
	return mostOf(us, si)
}

// Learned is what was learned of a plant, nil if nothing was.
func (h *House) Learned(plant string) *Decl { return h.learned.find(plant) }

// Base is the house whose library lies under this one's, nil for the built-in library.
func (h *House) Base() *House { return h.base }

// General is what there is to say of the house's names and its edition.
func (h *House) General() diag.List { return h.general }

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

// sorted lists names in the order of the alphabet, each once.
func sorted(names []string) []string {
	slices.SortFunc(names, strings.Compare)
	return slices.Compact(names)
}
