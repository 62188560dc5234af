package mash

import "newmake/lang/recipe"

// TheoryExtract is what complete conversion dissolves of a grain, as a share of
// its dry matter.
func TheoryExtract(g *recipe.Grain) float64 { return theoryExtract(g) }
