package front

import (
	"path/filepath"
	"slices"

	"newmake/compile"
	"newmake/compile/made"
	"newmake/compile/notice"
	"newmake/lang/check"
	"newmake/lang/diag"
	"newmake/lang/house"
	"newmake/lang/parallel"
	"newmake/lang/schema"
)

// Check is the work of one check: houses, and the batches in them that were asked
// for.
type Check struct {
	Batches int // to be computed
	Files   int // that were asked for

	houses  []*checkedHouse
	batches []*checkedBatch
}

// checkedHouse is one house, read once however many of its files are asked for.
type checkedHouse struct {
	house *check.House
	root  string
	paths []string
	diags diag.List // of a path that has no house
}

// checkedBatch is one batch, and what computing it has shown.
type checkedBatch struct {
	house *check.House
	name  string
	diags diag.List
}

// NewCheck reads the houses of some places and finds the batches that are meant. A
// folder that is of no house, and has houses below it, stands for all of them.
func NewCheck(places []Place) (*Check, error) {
	w := &Check{}
	for _, p := range spread(places) {
		h, err := w.houseOf(p)
		if err != nil {
			return nil, err
		}
		if h.house == nil {
			continue
		}
		src := &Source{House: h.house, Path: h.paths[len(h.paths)-1], Label: p.Label}
		if src.Label == "" {
			src.Label = p.Path
		}
		if len(h.house.BatchesIn(src.Path)) == 0 && !h.house.CheckIn(src.Path).HasErrors() && !declares(h.house, src.Path) {
			h.diags.Add(src.noBatch())
		}
	}
	for _, h := range w.houses {
		if h.house == nil {
			continue
		}
		seen, read := map[string]bool{}, map[string]bool{}
		for _, path := range h.paths {
			for _, f := range h.house.FilesIn(path) {
				read[f.Source.Name] = true
			}
			for _, name := range h.house.BatchesIn(path) {
				if !seen[name] {
					seen[name] = true
					w.batches = append(w.batches, &checkedBatch{house: h.house, name: name})
				}
			}
		}
		w.Files += len(read)
	}
	w.Batches = len(w.batches)
	return w, nil
}

// Houses are those that are checked.
func (w *Check) Houses() []*check.House {
	var out []*check.House
	for _, h := range w.houses {
		if h.house != nil {
			out = append(out, h.house)
		}
	}
	return out
}

// spread puts the houses below a folder in its place.
func spread(places []Place) []Place {
	var out []Place
	for _, p := range places {
		below := []string(nil)
		if p.FS == nil && len(p.Overlay) == 0 {
			below = Below(p.Path)
		}
		if len(below) == 0 {
			out = append(out, p)
			continue
		}
		for _, at := range below {
			out = append(out, Place{Path: at})
		}
	}
	return out
}

// declares reports whether a file, or one below a folder, has anything in it: what is
// of the house alone, or its library, need not hold a batch.
func declares(h *check.House, path string) bool {
	for _, f := range h.FilesIn(path) {
		if len(f.Heads()) > 0 {
			return true
		}
	}
	return false
}

// houseOf gives the house of a place, which may be there already. A text that
// stands for a file is of a house of its own: others may want the file as it is.
func (w *Check) houseOf(p Place) (*checkedHouse, error) {
	plain := len(p.Overlay) == 0 && p.FS == nil
	if plain {
		if at, err := filepath.Abs(p.Path); err == nil {
			for _, h := range w.houses {
				rel, err := filepath.Rel(h.root, at)
				if h.house != nil && err == nil && filepath.IsLocal(rel) && h.knows(p.Path) {
					h.paths = append(h.paths, p.Path)
					return h, nil
				}
			}
		}
	}
	h := &checkedHouse{}
	src, err := Load(p)
	if list, ok := err.(diag.List); ok {
		h.diags = list
	} else if err != nil {
		return nil, err
	} else {
		h.house, h.paths = src.House, []string{src.Path}
		if plain {
			h.root, _ = filepath.Abs(src.House.Root)
		}
	}
	w.houses = append(w.houses, h)
	return h, nil
}

// knows reports whether a path holds files of the house: it could be a file of another
// kind, a house of its own, or nothing at all.
func (h *checkedHouse) knows(path string) bool {
	return h.root != "" && len(h.house.FilesIn(path)) > 0
}

// Run checks the texts and computes every batch, side by side, and gives all that
// is to be said in the order of the files.
func (w *Check) Run() diag.List {
	checks := compile.NewChecks()
	parallel.Each(len(w.batches), func(i int) { w.batches[i].run(checks) })
	var all diag.List
	for _, h := range w.houses {
		list := h.diags
		if h.house != nil {
			for _, path := range h.paths {
				list = append(list, h.house.CheckIn(path)...)
				list = append(list, ofRuns(h.house, h.house.FilesIn(path))...)
				list = append(list, ofBottlings(h.house, h.house.FilesIn(path))...)
			}
			of := map[string]diag.List{}
			for _, b := range w.batches {
				if b.house == h.house {
					of[b.name] = b.diags
				}
			}
			for _, b := range w.batches {
				if b.house == h.house {
					for _, varied := range h.house.Chain(h.house.Find(b.name))[1:] {
						of[varied.Name].AlsoIn(b.diags)
					}
				}
			}
			for _, b := range w.batches {
				if b.house == h.house {
					list = append(list, beyondParents(h.house, b.name, of)...)
				}
			}
			list = h.house.Ordered(list)
		}
		all = append(all, list...)
	}
	return all.Dedup()
}

func (b *checkedBatch) run(checks *compile.Checks) {
	ready, checked := b.house.Ready(b.name)
	defer func() {
		for i := range b.diags {
			b.diags[i].Batches = []string{b.name}
		}
	}()
	b.diags = slices.Clone(checked) // with what stops it, wherever in the house that stands
	if ready == nil {
		return
	}
	list := checks.Check(ready)
	if ready.Parent != "" { // the place may lie in what it varies: say whose it is
		for i := range list {
			list[i].Summary = ready.Name + ": " + list[i].Summary
		}
	}
	b.diags = notice.Together(checked, list)
}

// ofRuns is what computing shows of the runs in some files.
func ofRuns(h *check.House, files []*house.File) (list diag.List) {
	for _, f := range files {
		for _, d := range f.Decls {
			if d.Field != schema.Run {
				continue
			}
			if r, _ := h.Run(d.Name); r != nil && r.At.Src == f.Source {
				list = append(list, made.Truly(r)...)
			}
		}
	}
	return list
}

// beyondParents is what is said of a batch and not of any that it varies: one
// mistake is one error, however many batches have the line. of has what is said of
// each batch, by its name.
func beyondParents(h *check.House, name string, of map[string]diag.List) diag.List {
	list := of[name]
	for _, a := range h.Chain(h.Find(name))[1:] {
		list = list.Beyond(of[a.Name])
	}
	return list
}

// All is everything that there is to say about a house: of its texts, and of each
// batch when it is computed.
func All(h *check.House) diag.List {
	list := append(h.Check(), ofRuns(h, h.Files)...)
	list = append(list, ofBottlings(h, h.Files)...)
	of := map[string]diag.List{}
	for _, name := range h.Batches() {
		if b, checked := h.Batch(name); b != nil {
			_, more := compile.Compile(b)
			of[name] = notice.Together(checked, more)
		}
	}
	for _, name := range h.Batches() {
		list = append(list, beyondParents(h, name, of)...)
	}
	return list.Dedup()
}
