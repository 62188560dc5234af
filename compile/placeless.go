package compile

import (
	"slices"

	"newmake/lang/diag"
	"newmake/lang/recipe"
)

// A stage takes the figures of a recipe and not their places in the text, so that
// the same recipe in another file is the same input to it.

func placelessBill(b recipe.Bill) recipe.Bill {
	b.Lines = slices.Clone(b.Lines)
	for i := range b.Lines {
		b.Lines[i].At = diag.Span{}
	}
	return b
}

func placelessSteps(steps []recipe.MashStep) []recipe.MashStep {
	steps = slices.Clone(steps)
	for i := range steps {
		steps[i].At = diag.Span{}
	}
	return steps
}

func placelessDoses(doses []recipe.Dose) []recipe.Dose {
	doses = slices.Clone(doses)
	for i := range doses {
		doses[i].At = diag.Span{}
	}
	return doses
}

func placelessCut(c recipe.Cut) recipe.Cut {
	c.At = diag.Span{}
	return c
}
