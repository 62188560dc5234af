package check

import (
	"fmt"
	"slices"

	"newmake/lang/diag"
	"newmake/lang/schema"
)

// mostVariants is how many steps a variant may be away from a batch that stands
// on its own.
const mostVariants = 100

// chain is a batch and those it varies, nearest first. It ends at a missing
// parent, at a circle, and where it gets too long.
func (h *House) chain(e *entry) []*entry {
	out := []*entry{e}
	for len(out) <= mostVariants {
		parent := h.parent(out[len(out)-1])
		if parent == nil || slices.Contains(out, parent) {
			break
		}
		out = append(out, parent)
	}
	return out
}

// parent is the batch that another varies, nil if it is not there.
func (h *House) parent(e *entry) *entry {
	if from := e.node.get("parent"); from != nil {
		return h.byName[nameKey(from.text())]
	}
	return nil
}

// merged lays a batch over what it varies, which it gives too, nil if it varies
// nothing. Both are nil, with a diagnostic, if the variants run in a circle or
// the parent is not there.
func (h *House) merged(e *entry, diags *diag.List) (n, parent *node) {
	chain := h.chain(e)
	last := chain[len(chain)-1]
	if from := last.node.get("parent"); from != nil {
		// Each batch speaks of its own line only: the missing parent of a parent
		// is said where it is missing.
		if (last == e || h.parent(last) != nil) && !h.lost(schema.Batch, from.text()) {
			diags.Add(h.noParent(chain, from))
		}
		return nil, nil
	}
	for i := len(chain) - 1; i >= 0; i-- {
		a := chain[i]
		a.laid.Do(func() {
			if a.merged = a.node; a != last {
				a.merged = overlay(chain[i+1].merged, a.node, &a.over)
			}
		})
		*diags = append(*diags, a.over...)
	}
	if len(chain) > 1 {
		parent = chain[1].merged
	}
	return e.merged, parent
}

// noParent says why a chain of variants has no end.
func (h *House) noParent(chain []*entry, from *capture) diag.Diagnostic {
	e := chain[len(chain)-1]
	switch {
	case h.parent(e) == nil:
		return unknownName("batch", from, h.known.batches)
	case len(chain) > mostVariants:
		return diag.Diagnostic{
			Code: diag.CodeTooDeep, Summary: fmt.Sprintf("the batch %q is a variant of a variant more than %d deep", chain[0].name, mostVariants),
			At: chain[0].node.get("parent").at(), Help: "let it vary a batch nearer to the first",
		}
	}
	return diag.Diagnostic{
		Code: diag.CodeCycle, Summary: fmt.Sprintf("the batch %q is a variant of itself", e.name), At: from.at(),
		Help: "one batch in the circle has to stand on its own, without `from`",
	}
}
