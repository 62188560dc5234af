package main

import (
	"path/filepath"

	"newmake/compile"
	"newmake/compile/notice"
	"newmake/lang/check"
	"newmake/lang/diag"
)

// checking is the work of one check: houses, and the batches in them that were
// asked for.
type checking struct {
	houses  []*houseWork
	batches []*batchWork
	files   int
}

// houseWork is one house, read once however many of its files are asked for.
type houseWork struct {
	house *check.House
	root  string
	paths []string
	diags diag.List // of a path that has no house
}

// batchWork is one batch, and what computing it has shown.
type batchWork struct {
	house *check.House
	name  string
	diags diag.List
}

// toCheck reads the houses of some paths and finds the batches that are meant.
func (a *app) toCheck(args []string, stdin string) (*checking, error) {
	w := &checking{}
	for _, arg := range args {
		h, err := a.houseFor(w, arg, stdin)
		if err != nil {
			return nil, err
		}
		if h.house == nil {
			continue
		}
		src := &source{house: h.house, path: h.paths[len(h.paths)-1], label: arg}
		if len(h.house.BatchesIn(src.path)) == 0 && !h.house.CheckIn(src.path).HasErrors() && !declares(h.house, src.path) {
			h.diags.Add(noBatch(src))
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
					w.batches = append(w.batches, &batchWork{house: h.house, name: name})
				}
			}
		}
		w.files += len(read)
	}
	return w, nil
}

// declares says that a file, or one below a folder, has anything in it: what is
// of the house alone, or its stock, need not hold a batch.
func declares(h *check.House, path string) bool {
	for _, f := range h.FilesIn(path) {
		if len(f.Heads()) > 0 {
			return true
		}
	}
	return false
}

// houseFor gives the house of a path, which may be there already.
func (a *app) houseFor(w *checking, arg, stdin string) (*houseWork, error) {
	if arg != standardInput {
		if at, err := filepath.Abs(arg); err == nil {
			for _, h := range w.houses {
				rel, err := filepath.Rel(h.root, at)
				if h.house != nil && err == nil && filepath.IsLocal(rel) && h.knows(arg) {
					h.paths = append(h.paths, arg)
					return h, nil
				}
			}
		}
	}
	h := &houseWork{}
	src, err := a.load(arg, stdin)
	if list, ok := err.(diag.List); ok {
		h.diags = list
	} else if err != nil {
		return nil, err
	} else {
		h.house, h.paths = src.house, []string{src.path}
		if arg != standardInput { // which stands for a file that others may want as it is
			h.root, _ = filepath.Abs(src.house.Root)
		}
	}
	w.houses = append(w.houses, h)
	return h, nil
}

// knows says that a path holds files of the house: it could be a file of another
// kind, a house of its own, or nothing at all.
func (h *houseWork) knows(path string) bool { return h.root != "" && len(h.house.FilesIn(path)) > 0 }

// run checks the texts and computes every batch, side by side, and gives all that
// is to be said in the order of the files.
func (w *checking) run() diag.List {
	checks := compile.NewChecks()
	parallel(len(w.batches), func(i int) {
		b := w.batches[i]
		ready, checked := b.house.Ready(b.name)
		b.diags = checked // with what stops it, wherever in the house that stands
		if ready == nil {
			return
		}
		computed := checks.Check(ready)
		if ready.Parent != "" { // the place may lie in what it varies: say whose it is
			for i := range computed {
				computed[i].Summary = ready.Name + ": " + computed[i].Summary
			}
		}
		b.diags = notice.Together(checked, computed)
	})
	var all diag.List
	for _, h := range w.houses {
		list := h.diags
		if h.house != nil {
			for _, path := range h.paths {
				list = append(list, h.house.CheckIn(path)...)
			}
			for _, b := range w.batches {
				if b.house == h.house {
					list = append(list, b.diags...)
				}
			}
			list = h.house.Ordered(list)
			standsFor(list)
		}
		all = append(all, list...)
	}
	return all.Dedup()
}
