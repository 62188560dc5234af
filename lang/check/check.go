package check

import (
	"slices"

	"newmake/lang/check/internal/runs"
	"newmake/lang/diag"
	"newmake/lang/house"
	"newmake/lang/inventory"
	"newmake/lang/parallel"
	"newmake/lang/schema"
)

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
	for _, s := range h.library.OwnIn(in) {
		list = append(list, s.Diags...)
	}
	for _, d := range h.Plants {
		if in[d.File] {
			list = append(list, h.plant(d).Diags...)
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
		said := h.batch(d).Diags
		for _, a := range h.Chain(d)[1:] { // one mistake, one error: it is said where it stands
			said = said.Beyond(h.batch(a).Diags)
		}
		list = append(list, said...)
	}
	return list
}

// ofRecords is all that there is to say of the runs, instruments and casks in files.
// A cask is filled, read and emptied in several; where one of them is asked for, all are
// looked at.
func (h *House) ofRecords(in map[*house.File]bool) diag.List {
	var list diag.List
	for _, i := range h.instruments().All {
		if in[i.Decl.File] {
			list = append(list, i.Diags...)
		}
	}
	looked := declaredIn(h.Runs, in)
	list = append(list, saidOfEach(looked, func(d *house.Decl) diag.List { return h.run(d).Diags })...)
	if len(looked) > 0 {
		list = append(list, runs.AtOnce(h.allRuns(), h.aroundRuns(), in)...)
	}
	for _, f := range inventory.Declares {
		if len(declaredIn(h.Past(f), in)) > 0 {
			return append(list, h.inventory().diags...)
		}
	}
	return list
}

// ofTastings is all that there is to say of the tastings and trials in files.
func (h *House) ofTastings(in map[*house.File]bool) diag.List {
	list := saidOfEach(declaredIn(h.Past(schema.Tasting), in), func(d *house.Decl) diag.List { return h.tasting(d).Diags })
	return append(list, saidOfEach(declaredIn(h.Past(schema.Trial), in), func(d *house.Decl) diag.List { return h.trial(d).Diags })...)
}

// ofSeasons is all that there is to say of the seasons in files.
func (h *House) ofSeasons(in map[*house.File]bool) diag.List {
	return saidOfEach(declaredIn(h.Past(schema.Season), in), func(d *house.Decl) diag.List { return h.season(d).Diags })
}

// declaredIn are those of declarations that stand in files.
func declaredIn(decls []*house.Decl, in map[*house.File]bool) []*house.Decl {
	return slices.DeleteFunc(slices.Clone(decls), func(d *house.Decl) bool { return !in[d.File] })
}

// saidOfEach is what there is to say of each of declarations, in their order.
func saidOfEach(decls []*house.Decl, said func(*house.Decl) diag.List) diag.List {
	all := make([]diag.List, len(decls))
	parallel.Each(len(decls), func(i int) { all[i] = said(decls[i]) })
	return slices.Concat(all...)
}
