package notice

import (
	"errors"
	"fmt"

	"newmake/compile/numbers"
	"newmake/lang/diag"
	"newmake/lang/recipe"
)

// failures is how it is said that a stage could not be computed, and where.
var failures = map[numbers.Stage]struct {
	code  diag.Code
	what  string
	paths []recipe.Path
}{
	numbers.Mashing:     {diag.CodeMashFailed, "the mash", []recipe.Path{recipe.PathMash}},
	numbers.Fermenting:  {diag.CodeFermentFailed, "the ferment", []recipe.Path{recipe.PathFerm}},
	numbers.Stripping:   {diag.CodeStillFailed, "the wash run", []recipe.Path{recipe.PathStrip}},
	numbers.Distilling:  {diag.CodeStillFailed, "the spirit run", []recipe.Path{recipe.PathSpirit}},
	numbers.FirstSpirit: {diag.CodeStillFailed, "the first spirit run", []recipe.Path{recipe.PathSpirit}},
	numbers.Following:   {diag.CodeStillFailed, "the congeners", []recipe.Path{recipe.PathSpirit}},
	numbers.Reducing:    {diag.CodeCaskFailed, "the reduction", nil},
	numbers.Carding:     {diag.CodeCaskFailed, "the proofing card", nil},
	numbers.Filling:     {diag.CodeCaskFailed, "the cask", []recipe.Path{recipe.PathCask}},
}

// Failed says that a stage could not be computed, in the stage's own words.
func Failed(n *numbers.Batch, err error) diag.List {
	b, w := n.Batch, about(n.Batch)
	var f *numbers.Failure
	if !errors.As(err, &f) {
		return nil
	}
	if f.Stage == numbers.Fermenting && len(b.Ferm.Vessels) > 0 {
		w.list = Pitch(b, n.Mashed.Out.TempC) // the likely cause
	}
	k := failures[f.Stage]
	if k.paths == nil {
		k.paths = []recipe.Path{strengthPath(b)}
	}
	w.add(diag.Diagnostic{
		Code: k.code, Summary: fmt.Sprintf("%s cannot be computed: %v", k.what, f.Err), At: w.at(k.paths...),
		Help: "mend what it names; the numbers before it stand",
	})
	return w.list
}

// strengthPath is where the strength is written to which the hearts are reduced.
func strengthPath(b *recipe.Batch) recipe.Path {
	if numbers.InWood(b) {
		return recipe.PathEntry
	}
	return recipe.PathBottleAt
}
