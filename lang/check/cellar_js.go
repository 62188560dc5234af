package check

import (
	"newmake/lang/diag"
	"newmake/lang/record"
	"newmake/lang/tree"
	"newmake/lang/vocabulary"
)

// The page in a browser is for recipes: what is hard to believe of the names of casks and
// tanks, and of a taster's words, is for the house's own check.
func (h *House) inTank([]*record.Vat, *diag.List)  {}
func (h *House) nearly(*tree.Node, *diag.List)     {}
func (h *House) readVocabulary() *vocabulary.Words { return nil }
func alike([]*serial, *diag.List)                  {}
