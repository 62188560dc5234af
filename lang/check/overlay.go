package check

import (
	"fmt"
	"slices"

	"newmake/lang/diag"
	"newmake/lang/schema"
)

// overlay lays a variant over what it varies, or the house's lines over an entry
// of the stock. Lines of the top take the place of the same lines below; blocks
// are laid over one another line by line; what the top does not say stays.
func overlay(base, top *node, diags *diag.List) *node {
	out := &node{field: top.field, stmt: top.stmt, m: top.m, bad: top.bad, gaps: base.gaps || top.gaps}
	if len(top.m.items) == 0 {
		out.m = base.m // `mash {` keeps the vessel of the mash it varies
	}
	out.lines = overlayLines(base.lines, top.lines, diags)
	return out
}

func overlayLines(base, top []*node, diags *diag.List) []*node {
	out := base
	edits := slices.DeleteFunc(slices.Clone(top), func(n *node) bool { return !n.editsStep() })
	switch anew := slices.IndexFunc(top, isStep); {
	case anew >= 0 && len(edits) > 0:
		diags.Add(diag.Diagnostic{
			Code: diag.CodeStepEdit, Summary: "this mash gives its steps anew, so there is nothing to " + edits[0].field.Name, At: edits[0].at(),
			Help:    "write all the steps, or only what changes: put a new step into an edit, as in " + schema.Example(schema.After),
			Related: []diag.Related{{At: top[anew].at(), Text: "a step that stands in no edit is here"}},
		})
		fallthrough
	case anew >= 0:
		out = slices.DeleteFunc(slices.Clone(out), isStep)
	case len(edits) > 0:
		out = editSteps(out, edits, diags)
	default:
		out = slices.Clone(out)
	}
	for _, t := range top {
		if t.field.Edit && !t.editsStep() {
			out = removeLines(out, t, diags)
		}
	}
	place := make(map[lineKey]int, len(out)) // of the lines that may stand only once
	for i, n := range out {
		if n.single() {
			place[n.lineKey()] = i
		}
	}
	for _, t := range top {
		i, below := place[t.lineKey()]
		switch {
		case t.field.Edit:
		case below && t.field.Block != nil:
			out[i] = overlay(out[i], t, diags)
		case below && !(t.bad && t.field.Repeat):
			out[i] = t
		case t.field.Block != nil && t.edits():
			out = append(out, overlay(&node{field: t.field, stmt: t.stmt}, t, diags))
		default:
			out = append(out, t)
		}
	}
	return out
}

// editsStep says that a line is an edit of a step, not of another line.
func (n *node) editsStep() bool {
	return n.field.Edit && n.field != schema.Remove && (n.bad || slices.ContainsFunc(schema.MashSteps, func(f *schema.Field) bool { return f.Name == n.m.caps[0].text() }))
}

// edits says that there is an edit among the lines of a block.
func (n *node) edits() bool {
	return slices.ContainsFunc(n.lines, func(l *node) bool { return l.field.Edit })
}

// strayEdits speaks of edits in a batch that varies none: those that are left
// when variants are applied.
func strayEdits(n *node, diags *diag.List) {
	for _, l := range n.lines {
		switch {
		case l.field.Edit && !l.bad:
			diags.Add(diag.Diagnostic{
				Code: diag.CodeRemove, Summary: fmt.Sprintf("`%s` changes the batch that this one varies, and it varies none", l.field.Name), At: l.at(),
				Help: "change the line itself, or say of which batch this one is a variant: batch \"...\" from \"...\"",
			})
		case l.field.Block != nil:
			strayEdits(l, diags)
		}
	}
}

func isStep(n *node) bool { return n.field.Step }

// removeLines takes away what a `remove` line names.
func removeLines(lines []*node, r *node, diags *diag.List) []*node {
	if r.bad {
		return lines
	}
	what, of := r.m.caps[0].text(), nameKey(r.text("of"))
	kept := slices.DeleteFunc(slices.Clone(lines), func(n *node) bool {
		if n.field.Name == "" {
			return n.key() == nameKey(what) && of == ""
		}
		return n.field.Name == what && (of == "" || nameKey(n.text(n.field.Key)) == of)
	})
	if len(kept) == len(lines) {
		diags.Add(diag.Diagnostic{
			Code: diag.CodeRemove, Summary: fmt.Sprintf("there is no `%s` here to remove", what), At: r.at(),
			Help: "a variant removes a line of the batch it varies: write the line's first word, or the grain's name",
		})
	}
	return kept
}
