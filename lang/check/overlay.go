package check

import (
	"fmt"
	"slices"

	"newmake/lang/diag"
)

var removeField = &Field{
	Name: "remove", Shape: "what:NAME [of:NAME]", Repeat: true, Example: "remove oats",
	Doc: "In a variant: takes away a line of the batch it varies, by its first word, or a grain by its name.",
}

// overlay lays a variant over what it varies, or the house's lines over an entry
// of the stock. Lines of the top take the place of the same lines below; blocks
// are laid over one another line by line; what the top does not say stays.
func overlay(base, top *node, diags *diag.List) *node {
	out := &node{field: top.field, stmt: top.stmt, m: top.m, bad: top.bad}
	if len(top.m.items) == 0 {
		out.m = base.m // `mash {` keeps the vessel of the mash it varies
	}
	out.lines = overlayLines(base.lines, top.lines, diags)
	return out
}

func overlayLines(base, top []*node, diags *diag.List) []*node {
	out := slices.Clone(base)
	if slices.ContainsFunc(top, isStep) {
		// Steps are one piece of work in order: they are replaced together.
		out = slices.DeleteFunc(out, isStep)
	}
	for _, t := range top {
		if t.field == removeField {
			out = removeLines(out, t, diags)
			continue
		}
		i := slices.IndexFunc(out, func(b *node) bool {
			return b.field == t.field && b.single() && b.key() == t.key()
		})
		switch {
		case i < 0 || t.bad && t.field.Repeat:
			out = append(out, t)
		case t.field.Block != nil:
			out[i] = overlay(out[i], t, diags)
		default:
			out[i] = t
		}
	}
	return out
}

func isStep(n *node) bool { return n.field.Step }

// removeLines takes away what a `remove` line names.
func removeLines(lines []*node, r *node, diags *diag.List) []*node {
	if r.bad {
		return lines
	}
	what, of := r.text("what"), nameKey(r.text("of"))
	kept := slices.DeleteFunc(slices.Clone(lines), func(n *node) bool {
		if n.field.Name == "" {
			return n.key() == nameKey(what) && of == ""
		}
		return n.field.Name == what && (of == "" || n.key() == of)
	})
	if len(kept) == len(lines) {
		diags.Add(diag.Diagnostic{
			Code: diag.CodeRemove, Summary: fmt.Sprintf("there is no `%s` here to remove", what), At: r.at(),
			Help: "a variant removes a line of the batch it varies: write the line's first word, or the grain's name",
		})
	}
	return kept
}
