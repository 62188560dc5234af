package check

import (
	"fmt"
	"slices"

	"newmake/lang/check/internal/runs"
	"newmake/lang/check/internal/seasons"
	"newmake/lang/check/internal/tastings"
	"newmake/lang/diag"
	"newmake/lang/house"
	"newmake/lang/inventory"
	"newmake/lang/parallel"
	"newmake/lang/recipe"
	"newmake/lang/record"
	"newmake/lang/schema"
	"newmake/lang/season"
	"newmake/lang/spelling"
	"newmake/lang/tree"
	"newmake/lang/wording"
	"newmake/lang/words"
)

// Run gives a run by its number, read as far as it can be, with its diagnostics; nil if
// there is none of that number.
func (h *House) Run(number string) (*record.Run, diag.List) {
	d := h.PastNamed(schema.Run, number)
	if d == nil {
		return nil, h.noSuch("run", number, h.RunNumbers(), "`newmake record` opens one")
	}
	r := h.run(d)
	return r.Run, h.Ordered(slices.Concat(d.Said(), r.Diags))
}

// Season gives a season by its name, with its diagnostics; nil if there is none of that
// name.
func (h *House) Season(name string) (*season.Season, diag.List) {
	d := h.PastNamed(schema.Season, name)
	if d == nil {
		return nil, h.noSuch("season", name, h.SeasonNames(), "`newmake explain season` shows how one is written")
	}
	s := h.season(d)
	return s.Season, h.Ordered(slices.Concat(d.Said(), s.Diags))
}

// Trial gives a trial by its name, and what is to be said of it. It is nil if there is
// none of that name.
func (h *House) Trial(name string) (*record.Trial, diag.List) {
	d := h.PastNamed(schema.Trial, name)
	if d == nil {
		return nil, h.noSuch("trial", name, h.TrialNames(), "`newmake explain trial` shows how one is written")
	}
	t := h.trial(d)
	return t.Trial, h.Ordered(slices.Concat(d.Said(), t.Diags))
}

// noSuch says that there is nothing of a sort by a name, and what there is.
func (h *House) noSuch(sort, name string, all []string, first string) diag.List {
	said := diag.Diagnostic{Code: diag.CodeUnknownName, Summary: fmt.Sprintf("there is no %s %q in %s", sort, name, h.Root)}
	switch near := spelling.Nearest(name, all); {
	case near != "":
		said.Help = "did you mean `" + near + "`?"
	case len(all) == 0:
		said.Help = "the house has no " + sort + "s yet: " + first
	default:
		said.Help = "the house has " + words.And(wording.Quoted(all))
	}
	return diag.List{said}
}

// RunNumbers lists the numbers of all runs, in the order of the files and lines.
func (h *House) RunNumbers() []string { return h.pastNames(schema.Run) }

// SeasonNames lists the names of all seasons, in the order of the files and lines.
func (h *House) SeasonNames() []string { return h.pastNames(schema.Season) }

// TrialNames lists the names of all trials, in the order of the files and lines.
func (h *House) TrialNames() []string { return h.pastNames(schema.Trial) }

func (h *House) pastNames(f *schema.Field) []string {
	var out []string
	for _, d := range h.Past(f) {
		out = append(out, d.Name)
	}
	return out
}

// RunsOf lists the numbers of the runs of a batch. Their texts are not read for it.
func (h *House) RunsOf(batch string) []string {
	var out []string
	for _, d := range h.Runs {
		if tree.Key(d.Of) == tree.Key(batch) {
			out = append(out, d.Name)
		}
	}
	return out
}

// RunsAtOnce are the runs that were in a vessel together with another, by their keys: one of
// the two is not as it is written, and nobody knows which.
func (h *House) RunsAtOnce() map[string]bool { return runs.KeysAtOnce(h.allRuns(), h.aroundRuns()) }

// BehindRuns are the errors of runs, and of the batches that they are of, with those of their
// plants and of the library that they use. What a run filled is not known without them.
func (h *House) BehindRuns() diag.List {
	var list diag.List
	seen := map[string]bool{}
	for _, d := range h.Runs {
		list = append(list, h.run(d).Diags...)
		if key := tree.Key(d.Of); !seen[key] && h.Find(d.Of) != nil {
			seen[key] = true
			_, said := h.bare(d.Of)
			list = append(list, said...)
		}
	}
	if len(h.Runs) == 0 && h.BatchOfBooks(&inventory.Inventory{}) == nil { // whose books they are stands in what a batch uses
		for _, name := range h.Batches() {
			_, said := h.bare(name)
			list = append(list, said...)
		}
	}
	return h.Ordered(slices.DeleteFunc(list, func(o diag.Diagnostic) bool { return o.Severity != diag.Error }))
}

// BatchOfBooks is the batch of the first run that has one, else the first of the house that can be
// read; nil if none can. Its plant and its units are those of the house's books.
func (h *House) BatchOfBooks(c *inventory.Inventory) *recipe.Batch {
	for _, r := range c.Runs {
		if b, _ := h.Batch(r.Batch); b != nil && b.Plant != nil {
			return b
		}
	}
	for _, name := range h.Batches() {
		if b, _ := h.Batch(name); b != nil && b.Plant != nil {
			return b
		}
	}
	return nil
}

// Instrument gives an instrument by its name, nil if the house declares none.
func (h *House) Instrument(name string) *record.Instrument { return h.instruments().Named(name) }

// Tastings gives all tastings of the house that can be read, in the order of the files
// and lines, with their diagnostics.
func (h *House) Tastings() ([]*record.Tasting, diag.List) {
	var out []*record.Tasting
	list := h.unread()
	for _, d := range h.Past(schema.Tasting) {
		t := h.tasting(d)
		list = append(append(list, d.Said()...), t.Diags...)
		if !d.Node().Bad {
			out = append(out, t.Tasting)
		}
	}
	return out, h.Ordered(list)
}

// Inventory reads runs, casks, rounds, vats, bottlings and stores, with their diagnostics.
func (h *House) Inventory() (*inventory.Inventory, diag.List) {
	c := h.inventory()
	list := append(slices.Clone(c.diags), h.unread()...)
	for _, f := range inventory.Declares {
		for _, d := range h.Past(f) {
			list = append(list, d.Said()...)
		}
	}
	return c.Inventory, h.Ordered(list)
}

// unread is what there is to say of texts of which parts, or all, could not be read: what
// happened may stand there.
func (h *House) unread() diag.List {
	list := slices.Concat(h.Loading(), h.General())
	for _, f := range h.Files {
		list = append(list, f.Loose()...)
	}
	return list
}

// run gives a run, read.
func (h *House) run(d *house.Decl) *runs.Run {
	return h.runs.Get(d, func() *runs.Run { return runs.Read(d, h.aroundRuns()) })
}

func (h *House) aroundRuns() runs.Around {
	return runs.Around{House: h.House, Batch: h.recipeOf, Plant: h.firstPlant, Instruments: h.instruments(), Stores: h.Stores}
}

// allRuns are those of the house, read, in the order of the files and lines.
func (h *House) allRuns() []*record.Run {
	out := make([]*record.Run, len(h.Runs))
	parallel.Each(len(out), func(i int) { out[i] = h.run(h.Runs[i]).Run })
	return out
}

func (h *House) season(d *house.Decl) *seasons.Season {
	return h.seasons.Get(d, func() *seasons.Season {
		return seasons.Read(d, seasons.Around{House: h.House, Batch: h.recipeOf, Plant: h.firstPlant})
	})
}

func (h *House) tasting(d *house.Decl) *tastings.Tasting {
	return h.tastings.Get(d, func() *tastings.Tasting { return tastings.Read(d, tastings.Tasted(h.House, h.filled), h.vocabulary) })
}

func (h *House) trial(d *house.Decl) *tastings.Trial {
	return h.trials.Get(d, func() *tastings.Trial { return tastings.ReadTrial(d, tastings.Tasted(h.House, h.filled)) })
}

// inventoryRead is the inventory, and what there is to say of it.
type inventoryRead struct {
	*inventory.Inventory
	diags diag.List
}

func (h *House) readInventory() *inventoryRead {
	a := inventory.Around{House: h.House, Runs: h.allRuns(), Instrument: h.Instrument, Batch: h.recipeOf, Stores: h.Stores}
	for _, d := range h.Plants {
		a.Plants = append(a.Plants, h.plant(d).Plant)
	}
	c, said := inventory.Read(a)
	return &inventoryRead{c, said}
}
