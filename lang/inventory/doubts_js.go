package inventory

import (
	"newmake/lang/diag"
	"newmake/lang/recipe"
	"newmake/lang/record"
)

// The page in a browser is for recipes: what is hard to believe of the names of casks and
// tanks is for the house's own check.
func inTank([]*record.Vat, []*recipe.Plant, *diag.List) {}
func alike([]*serial, *diag.List)                       {}
func overdrawn(*Inventory, *diag.List)                  {}
