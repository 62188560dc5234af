package house

import (
	"fmt"
	"slices"

	"newmake/lang/diag"
	"newmake/lang/schema"
	"newmake/lang/tree"
)

// overlay lays a variant over what it varies, or the house's lines over an entry
// of the library. Lines of the top take the place of the same lines below; blocks
// are laid over one another line by line; what the top does not say stays.
func overlay(base, top *tree.Node, diags *diag.List) *tree.Node {
	out := &tree.Node{Field: top.Field, Stmt: top.Stmt, Match: top.Match, Bad: top.Bad || base.Bad && len(top.Match.Items) == 0, Gaps: base.Gaps || top.Gaps}
	if len(top.Match.Items) == 0 {
		out.Match = base.Match // `mash {` keeps the vessel of the mash it varies
	}
	out.Lines = overlayLines(base.Lines, top.Lines, diags)
	return out
}

func overlayLines(base, top []*tree.Node, diags *diag.List) []*tree.Node {
	out := base
	edits := slices.DeleteFunc(slices.Clone(top), func(n *tree.Node) bool { return !editsStep(n) })
	switch anew := slices.IndexFunc(top, isStep); {
	case anew >= 0 && len(edits) > 0:
		diags.Add(diag.Diagnostic{
			Code: diag.CodeStepEdit, Summary: "this mash gives its steps anew, so there is nothing to " + edits[0].Field.Name, At: edits[0].At(),
			Help:    "write all the steps, or only what changes: put a new step into an edit, as in " + schema.Example(schema.After, edits[0].At().Units()),
			Related: []diag.Related{{At: top[anew].At(), Text: "a step that stands in no edit is here"}},
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
		if t.Field.Edit && !editsStep(t) {
			out = removeLines(out, t, diags)
		}
	}
	place := make(map[tree.LineKey]int, len(out)) // of the lines that may stand only once
	for i, n := range out {
		if n.Single() || n.Bad && !n.Field.Repeat && n.Field.Block != nil { // a block whose first line is wrong has its lines
			place[n.LineKey()] = i
		}
	}
	for _, t := range top {
		i, below := place[t.LineKey()]
		switch {
		case t.Field.Edit:
		case below && t.Field.Block != nil:
			out[i] = overlay(out[i], t, diags)
		case below && !(t.Bad && t.Field.Repeat):
			out[i] = t
		case t.Field.Block != nil && hasEdits(t):
			out = append(out, overlay(&tree.Node{Field: t.Field, Stmt: t.Stmt}, t, diags))
		default:
			out = append(out, t)
		}
	}
	return out
}

// editsStep reports whether a line is an edit of a step, not of another line.
func editsStep(n *tree.Node) bool {
	return n.Field.Edit && n.Field != schema.Remove && (n.Bad || slices.ContainsFunc(schema.MashSteps, func(f *schema.Field) bool { return f.Name == n.Match.Caps[0].Text() }))
}

// hasEdits reports whether there is an edit among the lines of a block.
func hasEdits(n *tree.Node) bool {
	return slices.ContainsFunc(n.Lines, func(l *tree.Node) bool { return l.Field.Edit })
}

// StrayEdits reports edits in a batch that varies nothing: those that are left over when
// variants are applied.
func StrayEdits(n *tree.Node, diags *diag.List) {
	for _, l := range n.Lines {
		switch {
		case l.Field.Edit && !l.Bad:
			diags.Add(diag.Diagnostic{
				Code: diag.CodeRemove, Summary: fmt.Sprintf("`%s` changes the batch that this one varies, and it varies none", l.Field.Name), At: l.At(),
				Help: "change the line itself, or say of which batch this one is a variant: batch \"...\" from \"...\"",
			})
		case l.Field.Block != nil:
			StrayEdits(l, diags)
		}
	}
}

func isStep(n *tree.Node) bool { return n.Field.Step }

// removeLines takes away what a `remove` line names.
func removeLines(lines []*tree.Node, r *tree.Node, diags *diag.List) []*tree.Node {
	if r.Bad {
		return lines
	}
	what, of := r.Match.Caps[0].Text(), tree.Key(r.Text("of"))
	kept := slices.DeleteFunc(slices.Clone(lines), func(n *tree.Node) bool {
		if n.Field.Name == "" {
			return n.KeyText() == tree.Key(what) && of == ""
		}
		return n.Field.Name == what && (of == "" || tree.Key(n.Text(n.Field.Key)) == of)
	})
	if len(kept) == len(lines) {
		diags.Add(diag.Diagnostic{
			Code: diag.CodeRemove, Summary: fmt.Sprintf("there is no `%s` here to remove", what), At: r.At(),
			Help: "a variant removes a line of the batch it varies: write the line's first word, or the grain's name",
		})
	}
	return kept
}
