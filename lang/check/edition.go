package check

import (
	"fmt"
	"slices"

	"newmake/lang/diag"
	"newmake/lang/schema"
)

// edition reads the house's edition and says what is wrong with it.
func (h *House) edition(diags *diag.List) {
	for _, f := range h.files {
		for _, n := range f.decls {
			if n.field != schema.EditionLine || n.bad {
				continue
			}
			c := n.get("number")
			switch {
			case f.path != houseFile:
				diags.Add(diag.Diagnostic{
					Code: diag.CodeEdition, Summary: "the edition stands outside " + houseFile, At: n.at(),
					Help: "leave it out here: one edition holds for the whole house",
				})
			case c.si != schema.Edition:
				diags.Add(diag.Diagnostic{
					Code: diag.CodeEdition, At: c.at(),
					Summary: fmt.Sprintf("edition %s of the language is not known", c.item.Num),
					Help:    fmt.Sprintf("this program knows edition %d: write `newmake %d`, or use a newer program", schema.Edition, schema.Edition),
				})
			default:
				h.Edition = schema.Edition
			}
		}
	}
	f := h.file(houseFile)
	if f == nil || len(f.lost) > 0 || slices.ContainsFunc(f.decls, func(n *node) bool { return n.field == schema.EditionLine }) {
		return // if it does not say, it may have tried to
	}
	if h.Edition == 0 && !diags.HasErrors() {
		diags.Add(diag.Diagnostic{
			Code: diag.CodeEdition, Severity: diag.Warning, Summary: houseFile + " does not say which edition of the language it is in",
			At:     f.Source.LineSpan(1),
			Help:   fmt.Sprintf("begin it with the line `newmake %d`", schema.Edition),
			Reason: "a later program then reads the house as it was meant",
			Fix:    &diag.Fix{At: f.Source.Span(0, 0), Text: fmt.Sprintf("newmake %d\n\n", schema.Edition), Label: "put the line in"},
		})
		h.Edition = schema.Edition
	}
}
