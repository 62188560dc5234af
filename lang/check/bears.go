package check

import (
	"slices"

	"newmake/lang/diag"
	"newmake/lang/schema"
)

// bearsOn gathers what was said of the texts a batch depends on: its own
// declaration and those it varies, the plant and the stock. A fault in another
// batch, or in a file with nothing it uses, does not keep this one from being
// planned.
func (h *House) bearsOn(e *entry) diag.List {
	list := slices.Clone(h.loading)
	family := h.chain(e)
	for _, s := range h.said() {
		uses := s.shared
		var others []diag.Span
		for _, o := range s.batches {
			if slices.Contains(family, o) {
				uses = true
			} else {
				others = append(others, o.node.whole())
			}
		}
		if !uses {
			continue
		}
		for _, d := range s.diags {
			if !slices.ContainsFunc(others, func(o diag.Span) bool { return o.Start <= d.At.Start && d.At.Start < o.End }) {
				list.Add(d)
			}
		}
	}
	return list
}

// remarks is what was said of one file before its batches were read.
type remarks struct {
	diags   diag.List
	shared  bool     // it holds more than batches: every batch may lean on it
	batches []*entry // in it
}

// remarked gathers the remarks on each file of which anything was said.
func (h *House) remarked() []remarks {
	var out []remarks
	for _, f := range h.files {
		var r remarks
		for _, d := range slices.Concat(h.general, f.diags) {
			if d.At.Src == f.Source {
				r.diags.Add(d)
			}
		}
		if len(r.diags) == 0 {
			continue
		}
		r.shared = f.path == houseFile || slices.ContainsFunc(f.decls, func(n *node) bool { return n.field != schema.Batch })
		for _, e := range h.batches {
			if e.file == f {
				r.batches = append(r.batches, e)
			}
		}
		out = append(out, r)
	}
	return out
}

// whole is the place of a line with its block.
func (n *node) whole() diag.Span {
	at := n.stmt.At
	if n.stmt.Block != nil {
		at.End = n.stmt.Block.At.End
	}
	return at
}
