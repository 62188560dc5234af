package check

import (
	"slices"

	"newmake/lang/diag"
	"newmake/lang/house"
	"newmake/lang/logbook"
	"newmake/lang/parallel"
	"newmake/lang/record"
	"newmake/lang/schema"
	"newmake/lang/tree"
)

// tasting and trial are one of the house's each, read.
type (
	tasting struct {
		tasting *record.Tasting
		diags   diag.List
	}
	trial struct {
		trial *record.Trial
		diags diag.List
	}
)

// Tastings gives all tastings of the house that can be read, in the order of the files
// and lines, with their diagnostics.
func (h *House) Tastings() ([]*record.Tasting, diag.List) {
	var out []*record.Tasting
	list := h.unread()
	for _, d := range h.Past(schema.Tasting) {
		t := h.tasting(d)
		list = append(append(list, d.Said()...), t.diags...)
		if !d.Node().Bad {
			out = append(out, t.tasting)
		}
	}
	return out, h.Ordered(list)
}

// Trial gives a trial by its name, and what is to be said of it. It is nil if there is
// none of that name.
func (h *House) Trial(name string) (*record.Trial, diag.List) {
	d := h.PastNamed(schema.Trial, name)
	if d == nil {
		return nil, h.noSuch("trial", name, h.TrialNames(), "`newmake explain trial` shows how one is written")
	}
	t := h.trial(d)
	return t.trial, h.Ordered(slices.Concat(d.Said(), t.diags))
}

// TrialNames lists the names of all trials, in the order of the files and lines.
func (h *House) TrialNames() []string {
	var out []string
	for _, d := range h.Past(schema.Trial) {
		out = append(out, d.Name)
	}
	return out
}

func (h *House) tasting(d *house.Decl) *tasting {
	return h.tastings.get(d, func() *tasting {
		t := &tasting{}
		t.tasting, t.diags = logbook.Tasting(d.Node(), h.tasted())
		h.nearly(d.Node(), &t.diags)
		return t
	})
}

func (h *House) trial(d *house.Decl) *trial {
	return h.trials.get(d, func() *trial {
		t := &trial{}
		t.trial, t.diags = logbook.Trial(d.Node(), h.tasted())
		return t
	})
}

// tasted is what can be tasted: casks that runs have filled, and runs.
func (h *House) tasted() logbook.Names {
	in := func(all func() []string) func(string) bool {
		return func(name string) bool {
			return slices.ContainsFunc(all(), func(s string) bool { return tree.Key(s) == tree.Key(name) })
		}
	}
	return logbook.Names{
		{Kinds: []record.SampleKind{record.OfCask}, Say: "cask", Has: in(h.filled), All: h.filled},
		{Kinds: []record.SampleKind{record.OfNewMake, record.OfHearts}, Say: "run", Has: in(h.RunNumbers), All: h.RunNumbers},
		{Kinds: []record.SampleKind{record.OfBottling}, Say: "bottling", Has: in(h.lots), All: h.lots},
	}
}

// lots lists the lot codes of all bottlings.
func (h *House) lots() []string {
	var out []string
	for _, d := range h.Past(schema.Bottling) {
		out = append(out, d.Name)
	}
	return out
}

// serials lists the casks that runs filled, each once, in the order of the runs.
func (h *House) serials() []string {
	var out []string
	seen := map[string]bool{}
	for _, d := range h.Runs {
		for _, v := range h.run(d).run.Visits {
			if v.Word == "into" && v.To != "" && !seen[tree.Key(v.To)] {
				seen[tree.Key(v.To)] = true
				out = append(out, v.To)
			}
		}
	}
	return out
}

// ofTastings is all that there is to say of the tastings and trials in files.
func (h *House) ofTastings(in map[*house.File]bool) diag.List {
	var list diag.List
	of := func(decls []*house.Decl, said func(*house.Decl) diag.List) {
		decls = slices.DeleteFunc(slices.Clone(decls), func(d *house.Decl) bool { return !in[d.File] })
		all := make([]diag.List, len(decls))
		parallel.Each(len(decls), func(i int) { all[i] = said(decls[i]) })
		list = append(list, slices.Concat(all...)...)
	}
	of(h.Past(schema.Tasting), func(d *house.Decl) diag.List { return h.tasting(d).diags })
	of(h.Past(schema.Trial), func(d *house.Decl) diag.List { return h.trial(d).diags })
	return list
}

// Made is where a sample comes from, as far as the records tell: "" of what they do not,
// and of what is of several.
type Made struct {
	Batch, Run string
	Filled     record.Date // into the cask; zero of what is none
}

// MadeBy is where a sample comes from, as it stood on a day: of a cask the last run that
// filled it by then; of a bottling what went into it.
func (h *House) MadeBy(s record.Sample, on record.Date) Made {
	switch s.Kind {
	case record.OfCask:
		return h.filledBy(s.Name, on)
	case record.OfBottling:
		texts := h.cellar()
		for _, b := range texts.Bottlings {
			if tree.Key(b.Lot) == tree.Key(s.Name) {
				return h.drawnFrom(texts, b.Of, b.On, 0)
			}
		}
		return Made{}
	}
	for _, d := range h.Runs {
		if tree.Key(d.Name) == tree.Key(s.Name) {
			r := h.run(d).run
			return Made{Batch: r.Batch, Run: r.Number}
		}
	}
	return Made{}
}

// filledBy is the run that filled a cask last, by a day.
func (h *House) filledBy(serial string, on record.Date) (m Made) {
	for _, d := range h.Runs {
		r := h.run(d).run
		for i := range r.Visits {
			v := &r.Visits[i]
			if v.Word == "into" && tree.Key(v.To) == tree.Key(serial) && v.When.Date.Compare(on) <= 0 && (m.Run == "" || v.When.Date.Compare(m.Filled) >= 0) {
				m = Made{r.Batch, r.Number, v.When.Date}
			}
		}
	}
	return m
}

// mostVats is how many vats may lie behind one another.
const mostVats = 20

// drawnFrom is what went into a vat, or a cask: its batch and its run where they are one.
func (h *House) drawnFrom(texts *Cellar, name string, on record.Date, depth int) Made {
	i := slices.IndexFunc(texts.Vats, func(v *record.Vat) bool { return tree.Key(v.Name) == tree.Key(name) })
	if i < 0 || depth > mostVats {
		m := h.filledBy(name, on)
		m.Filled = record.Date{}
		return m
	}
	var all Made
	first := true
	for j := range texts.Vats[i].Visits {
		f := &texts.Vats[i].Visits[j]
		if f.Word != "from" {
			continue
		}
		var m Made
		switch f.Of {
		case "run":
			m = h.MadeBy(record.Sample{Kind: record.OfNewMake, Name: f.From}, on)
		case "", "vat":
			m = h.drawnFrom(texts, f.From, f.When.Date, depth+1)
		}
		if first {
			all, first = m, false
		}
		if all.Run != m.Run {
			all.Run = ""
		}
		if all.Batch != m.Batch {
			all.Batch = ""
		}
	}
	return all
}
