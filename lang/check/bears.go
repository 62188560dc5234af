package check

import (
	"slices"

	"newmake/lang/diag"
)

// bearsOn gathers what was said of the texts a batch depends on: its own
// declaration and those it varies, the plant and the stock. A fault in another
// batch, or in a file with nothing it uses, does not keep this one from being
// planned.
func (h *House) bearsOn(e *entry) diag.List {
	list := slices.Clone(h.loading)
	uses := make(map[*file]bool)
	others := make(map[*file][]diag.Span)
	family := h.chain(e)
	for _, f := range h.files {
		uses[f] = f.path == houseFile || slices.ContainsFunc(f.decls, func(n *node) bool { return n.field != batchField })
	}
	for _, o := range h.batches {
		if slices.Contains(family, o) {
			uses[o.file] = true
		} else {
			others[o.file] = append(others[o.file], o.node.whole())
		}
	}
	for _, f := range h.files {
		if !uses[f] {
			continue
		}
		for _, l := range []diag.List{h.general, f.diags} {
			for _, d := range l {
				if d.At.Src == f.Source && !slices.ContainsFunc(others[f], func(s diag.Span) bool { return s.Start <= d.At.Start && d.At.Start < s.End }) {
					list.Add(d)
				}
			}
		}
	}
	return list
}

// whole is the place of a line with its block.
func (n *node) whole() diag.Span {
	at := n.stmt.At
	if n.stmt.Block != nil {
		at.End = n.stmt.Block.At.End
	}
	return at
}
