package house

import (
	"fmt"
	"slices"

	"newmake/lang/diag"
	"newmake/lang/schema"
)

// edition reads the house's edition and says what is wrong with it.
func (h *House) edition(diags *diag.List) {
	for _, f := range h.Files {
		for _, d := range f.Decls {
			if d.Field != schema.EditionLine || d.Node().Bad {
				continue
			}
			n := d.Node()
			c := n.Get("number")
			switch {
			case f.Path != FileName:
				diags.Add(diag.Diagnostic{
					Code: diag.CodeEdition, Summary: "the edition stands outside " + FileName, At: n.At(),
					Help: "leave it out here: one edition holds for the whole house",
				})
			case c.SI != schema.Edition:
				diags.Add(diag.Diagnostic{
					Code: diag.CodeEdition, At: c.At(),
					Summary: fmt.Sprintf("edition %s of the language is not known", c.Item.Num),
					Help:    fmt.Sprintf("this program knows edition %d: write `newmake %d`, or use a newer program", schema.Edition, schema.Edition),
				})
			default:
				h.Edition = schema.Edition
			}
		}
	}
	f := h.Main()
	if f == nil || len(f.lost) > 0 || slices.ContainsFunc(f.Decls, func(d *Decl) bool { return d.Field == schema.EditionLine }) {
		return // if it does not say, it may have tried to
	}
	if h.Edition == 0 && !diags.HasErrors() {
		diags.Add(diag.Diagnostic{
			Code: diag.CodeEdition, Severity: diag.Warning, Summary: FileName + " does not say which edition of the language it is in",
			At:     f.Source.LineSpan(1),
			Help:   fmt.Sprintf("begin it with the line `newmake %d`", schema.Edition),
			Reason: "a later program then reads the house as it was meant",
			Fix:    &diag.Fix{At: f.Source.Span(0, 0), Text: fmt.Sprintf("newmake %d\n\n", schema.Edition), Label: "put the line in"},
		})
		h.Edition = schema.Edition
	}
}
