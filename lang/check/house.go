// Package check reads the trees of a house into recipes and records, and says what is wrong
// with them.
//
// A text is read in five steps. The table of the language (package schema) says
// what may stand where; every line is held against its shape, and becomes a node
// (package tree). Variants are laid over what they vary, and the house's library over
// the built-in one, as nodes (package house). A tree is then read for its meaning, and its
// names are found, by a package for each kind of declaration: entries, plants, batches and
// seasons give recipes, plain data in SI; runs, tastings and inventory give what happened.
// Each takes what it needs and knows no House. Last, the trade's rules and the law are
// held against the recipe (package trade).
//
//	h, err := check.Load("examples/lantern-hollow/ferry-landing.batch", check.Options{})
//	diags := h.Check()
//	batch, diags := h.Batch("Ferry Landing")
package check

import (
	"io/fs"
	"sync"

	"newmake/lang/check/internal/batches"
	"newmake/lang/check/internal/entries"
	"newmake/lang/check/internal/plants"
	"newmake/lang/check/internal/runs"
	"newmake/lang/check/internal/seasons"
	"newmake/lang/check/internal/tastings"
	"newmake/lang/diag"
	"newmake/lang/house"
	"newmake/lang/inventory"
	"newmake/lang/parallel"
	"newmake/lang/recipe"
	"newmake/lang/vocabulary"
)

// House is a house whose declarations are read as they are asked for, each once. It says
// which reader is given what.
type House struct {
	*house.House
	library *entries.Library
	Stores  *inventory.Stores

	// Teach puts what was learned of a plant into a batch of it, and says so; nil: what
	// was learned is left out. It is not for this package to know what a constant moves.
	Teach func(*recipe.Batch, *recipe.Learned) (*recipe.Batch, diag.List)

	plants   parallel.OnceEach[*house.Decl, *plants.Plant]
	batches  parallel.OnceEach[*house.Decl, *batches.Batch]
	runs     parallel.OnceEach[*house.Decl, *runs.Run]
	tastings parallel.OnceEach[*house.Decl, *tastings.Tasting]
	trials   parallel.OnceEach[*house.Decl, *tastings.Trial]
	seasons  parallel.OnceEach[*house.Decl, *seasons.Season]

	instruments func() *runs.Instruments
	filled      func() []string // the serials of all casks that runs filled
	vocabulary  func() *vocabulary.Words
	inventory   func() *inventoryRead
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
	lib := entries.Of(h)
	out := &House{House: h, library: lib, Stores: inventory.StoresOf(h, lib.BushelKg)}
	out.instruments = sync.OnceValue(func() *runs.Instruments { return runs.InstrumentsOf(h) })
	out.filled = sync.OnceValue(func() []string { return inventory.Filled(out.allRuns()) })
	out.vocabulary = sync.OnceValue(func() *vocabulary.Words { return wordsOf(lib) })
	out.inventory = sync.OnceValue(out.readInventory)
	return out, nil
}

// Base is a library that houses build on.
type Base struct {
	*house.House
	Library recipe.Library
}

// Builtin is the library that comes with the program, all of it.
var Builtin = sync.OnceValue(func() *Base { return &Base{House: house.Builtin(), Library: entries.Builtin().Recipes()} })

// Library gives all of the house's library: the built-in one with its own over it.
func (h *House) Library() recipe.Library { return h.library.Recipes() }

// BushelKg is what a trade bushel of a grain weighs, 0 where the library does not say.
func (h *House) BushelKg(grain string) float64 { return h.library.BushelKg(grain) }

// Vocabulary is the house's words for what is tasted, the library's among them.
func (h *House) Vocabulary() *vocabulary.Words { return h.vocabulary() }

// plant gives a plant, read.
func (h *House) plant(d *house.Decl) *plants.Plant {
	return h.plants.Get(d, func() *plants.Plant { return plants.Read(d, h.library) })
}

// firstPlant is the first of the house, nil where it has none.
func (h *House) firstPlant() *recipe.Plant {
	if len(h.Plants) == 0 {
		return nil
	}
	return h.plant(h.Plants[0]).Plant
}

// batch gives a batch, read.
func (h *House) batch(d *house.Decl) *batches.Batch {
	return h.batches.Get(d, func() *batches.Batch {
		return batches.Read(d, batches.Around{House: h.House, Library: h.library, Plant: h.plant, Stores: h.Stores})
	})
}

// recipeOf is what a batch means, nil where it could not be read.
func (h *House) recipeOf(d *house.Decl) *recipe.Batch { return h.batch(d).Batch }
