package check

import (
	"fmt"

	"newmake/lang/diag"
)

// chain is a batch and those it varies, nearest first. It ends at a missing
// parent, and at a circle.
func (h *House) chain(e *entry) []*entry {
	out := []*entry{e}
	for {
		last := out[len(out)-1]
		from := last.node.get("parent")
		if from == nil {
			return out
		}
		parent := h.byName[nameKey(from.text())]
		if parent == nil {
			return out
		}
		for _, seen := range out {
			if seen == parent {
				return out
			}
		}
		out = append(out, parent)
	}
}

// merged lays a batch over what it varies. It gives nil, with a diagnostic, if
// the variants run in a circle or the parent is not there.
func (h *House) merged(e *entry, diags *diag.List) *node {
	chain := h.chain(e)
	last := chain[len(chain)-1]
	if from := last.node.get("parent"); from != nil {
		// Each batch speaks of its own line only: the missing parent of a parent
		// is said where it is missing.
		if last == e || h.byName[nameKey(from.text())] != nil {
			diags.Add(h.noParent(last, from))
		}
		return nil
	}
	n := last.node
	for i := len(chain) - 2; i >= 0; i-- {
		n = overlay(n, chain[i].node, diags)
	}
	return n
}

func (h *House) noParent(e *entry, from *capture) diag.Diagnostic {
	if h.byName[nameKey(from.text())] == nil {
		return unknownName("batch", from, h.Batches())
	}
	return diag.Diagnostic{
		Code: diag.CodeCycle, Summary: fmt.Sprintf("the batch %q is a variant of itself", e.name), At: from.at(),
		Help: "one batch in the circle has to stand on its own, without `from`",
	}
}
