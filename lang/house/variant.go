package house

import (
	"fmt"
	"slices"

	"newmake/lang/diag"
	"newmake/lang/schema"
	"newmake/lang/tree"
)

// mostVariants is how many steps a variant may be away from a batch that stands
// on its own.
const mostVariants = 100

// Chain is a batch and those it varies, nearest first. It ends at a missing
// parent, at a circle, and where it gets too long.
func (x *BatchIndex) Chain(d *Decl) []*Decl {
	out := []*Decl{d}
	for len(out) <= mostVariants {
		parent := x.parent(out[len(out)-1])
		if parent == nil || slices.Contains(out, parent) {
			break
		}
		out = append(out, parent)
	}
	return out
}

// parent is the batch that another varies, nil if it is not there.
func (x *BatchIndex) parent(d *Decl) *Decl {
	if d.Parent == "" {
		return nil
	}
	return x.Find(d.Parent)
}

// Merged lays a batch over what it varies, and says in words what it has other than
// that. The tree is nil, with a diagnostic, if the variants run in a circle or the
// parent is not there.
func (x *BatchIndex) Merged(d *Decl, diags *diag.List) (n *tree.Node, changed []string) {
	chain := x.Chain(d)
	last := chain[len(chain)-1]
	if from := last.Node().Get("parent"); from != nil {
		// Each batch speaks of its own line only: the missing parent of a parent
		// is said where it is missing.
		if (last == d || x.parent(last) != nil) && !x.lost(schema.Batch, from.Text()) {
			diags.Add(x.noParent(chain, from))
		}
		return nil, nil
	}
	for i := len(chain) - 1; i >= 0; i-- {
		a := chain[i]
		a.lay.Do(func() {
			if a.laid = a.Node(); a != last {
				a.laid = overlay(chain[i+1].laid, a.Node(), &a.over)
			}
		})
		*diags = append(*diags, a.over...)
	}
	if len(chain) > 1 {
		changed = changes(chain[1].laid, d.laid)
	}
	return d.laid, changed
}

// noParent says why a chain of variants has no end.
func (x *BatchIndex) noParent(chain []*Decl, from *tree.Capture) diag.Diagnostic {
	d := chain[len(chain)-1]
	switch {
	case x.parent(d) == nil:
		return tree.UnknownName("batch", from, x.Batches)
	case len(chain) > mostVariants:
		return diag.Diagnostic{
			Code: diag.CodeTooDeep, Summary: fmt.Sprintf("the batch %q is a variant of a variant more than %d deep", chain[0].Name, mostVariants),
			At: chain[0].Node().Get("parent").At(), Help: "let it vary a batch nearer to the first",
		}
	}
	return diag.Diagnostic{
		Code: diag.CodeCycle, Summary: fmt.Sprintf("the batch %q is a variant of itself", d.Name), At: from.At(),
		Help: "one batch in the circle has to stand on its own, without `from`",
	}
}
