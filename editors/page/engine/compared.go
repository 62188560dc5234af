package engine

import (
	"bytes"
	"fmt"

	"newmake/compile/ask/compare"
	"newmake/compile/front"
	"newmake/compile/measure"
	"newmake/compile/show/diff"
	"newmake/lang/diag"
)

// compared says what changed in a batch between two versions of a house, and what that
// does to the barrel, as a page.
func compared(q Question) Answer {
	if problem := refused(q.Old); problem != "" {
		return Answer{Problem: problem}
	}
	now, problem := sideOf(q.Files, q.File, q.Batch, "now")
	if problem != "" {
		return Answer{Problem: problem}
	}
	was, problem := sideOf(q.Old, q.File, now.name, "before")
	if problem != "" {
		return Answer{Problem: problem}
	}
	doc := compare.NewDocument()
	doc.Pairs = append(doc.Pairs, compare.Batches(was.side, now.side, compare.Options{Units: now.units}))
	var page bytes.Buffer
	if err := diff.HTML(&page, doc, diff.Options{}); err != nil {
		return Answer{Problem: err.Error()}
	}
	return Answer{Page: page.String(), Batch: now.name}
}

// sideAs is a batch as one version of a house has it.
type sideAs struct {
	name  string
	units measure.Units
	side  compare.Side
}

func sideOf(files map[string]string, file, batch, label string) (v sideAs, problem string) {
	src, err := front.Load(place(files))
	if err != nil {
		return v, "the house as it is " + label + " cannot be read: " + harmless(err.Error())
	}
	src.Path, src.Label = file, file
	b, err := src.Batch(batch, nil)
	switch {
	case err != nil:
		return v, harmless(err.Error())
	case b.Recipe == nil:
		for _, d := range b.Diags {
			if d.Severity == diag.Error {
				return v, fmt.Sprintf("the version %s has a mistake, so there is nothing to compare: %s: %s", label, placeOf(d.At), diag.Safe(d.Summary))
			}
		}
		return v, "the version " + label + " has no such batch"
	}
	return sideAs{b.Name, measure.UnitsOf(b.Recipe.Units), compare.SideOf(label, b.Recipe, b.Diags)}, ""
}
