//go:build !js

package front

import (
	"slices"

	"newmake/compile/book/identity"
	"newmake/compile/book/ledger"
	"newmake/compile/book/trace"
	"newmake/lang/check"
	"newmake/lang/diag"
	"newmake/lang/house"
	"newmake/lang/schema"
)

// ofBottlings is what the records show of the bottlings in some files. Nothing is said while
// the records themselves are at fault.
func ofBottlings(h *check.House, files []*house.File) diag.List {
	in := map[*diag.Source]bool{}
	any := false
	for _, f := range files {
		in[f.Source] = true
		any = any || slices.ContainsFunc(f.Decls, func(d *house.Decl) bool { return d.Field == schema.Bottling })
	}
	if !any {
		return nil
	}
	texts, said := h.Inventory()
	if said.HasErrors() {
		return nil
	}
	return identity.Said(identity.HouseOf(h, texts, ledger.Amounts(h, texts)), func(b *trace.Blend) bool { return in[b.At.Src] })
}
