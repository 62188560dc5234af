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
	numbers.Mashing:    {diag.CodeMashFailed, "the mash", []recipe.Path{recipe.PathMash}},
	numbers.Fermenting: {diag.CodeFermentFailed, "the ferment", []recipe.Path{recipe.PathFerm}},
	numbers.Stripping:  {diag.CodeStillFailed, "the stripping run", []recipe.Path{recipe.PathStrip}},
	numbers.Distilling: {diag.CodeStillFailed, "the spirit run", []recipe.Path{recipe.PathSpirit}},
	numbers.Following:  {diag.CodeStillFailed, "the congeners", []recipe.Path{recipe.PathSpirit}},
	numbers.Reducing:   {diag.CodeCaskFailed, "the reduction", nil},
	numbers.Carding:    {diag.CodeCaskFailed, "the proofing card", nil},
	numbers.Filling:    {diag.CodeCaskFailed, "the cask", []recipe.Path{recipe.PathCask}},
	numbers.Planning:   {diag.CodeRunsAway, "the plan", []recipe.Path{recipe.PathBatch}},
}

// ranAway says of numbers that are none where they became so.
func (w *writer) ranAway(what string, r *numbers.RanAway, paths []recipe.Path) {
	w.add(diag.Diagnostic{
		Code: diag.CodeRunsAway, At: w.at(paths...), Reason: r.Error(),
		Summary: fmt.Sprintf("the numbers of this batch run away at %s, and none of it is shown", what),
		Help:    "look at what is written for " + what + ": a value lies far from what its model knows; put back what was changed last",
	})
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
	if r := (*numbers.RanAway)(nil); errors.As(f.Err, &r) {
		w.ranAway(k.what, r, k.paths)
		return w.list
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
