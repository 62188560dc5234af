package compare

import (
	"slices"

	"newmake/lang/recipe"
)

// Part is the part of a batch that an edit belongs to.
type Part string

// The parts, in the order in which they are shown.
const (
	OfBatch   Part = "batch"
	OfBill    Part = "bill"
	OfMash    Part = "mash"
	OfFerment Part = "ferment"
	OfStrip   Part = "strip"
	OfSpirit  Part = "spirit"
	OfCask    Part = "cask"
	OfPlant   Part = "plant"
	OfLibrary Part = "library"
)

// partOf is the part that a value belongs to.
func partOf(p recipe.Path) Part {
	if part := Part(p.Parts()[0]); slices.Contains(parts, part) {
		return part
	}
	return OfBatch
}

// parts lists them in that order.
var parts = []Part{OfBatch, OfBill, OfMash, OfFerment, OfStrip, OfSpirit, OfCask, OfPlant, OfLibrary}

// Kind says what was done.
type Kind string

// The kinds of edit.
const (
	Changed Kind = "changed"
	Added   Kind = "added"
	Removed Kind = "removed"
	Moved   Kind = "moved"
	Renamed Kind = "renamed" // of no effect
)

// Edit is one change of meaning.
type Edit struct {
	Part  Part        `json:"part"`
	Kind  Kind        `json:"kind"`
	Path  recipe.Path `json:"path"`            // as plan --try takes it, where it does: "mash.step.4.for"
	What  string      `json:"what"`            // in few words: "rest 10 min shorter"
	Lines []Line      `json:"lines,omitempty"` // each value that the edit changes
	// Counts says whether it can change what the plan calculates. A name and a
	// promise cannot.
	Counts bool `json:"counts"`

	// What makes the edit: values of the new batch that are set, or another way;
	// neither for what the mix lays out itself, see mix.go.
	sets  []recipe.Value
	apply func(b *recipe.Batch)
}

// Line is one value before and after; empty where there was none.
type Line struct {
	Name string `json:"name"`
	Old  string `json:"old,omitempty"`
	New  string `json:"new,omitempty"`
}

// BillRow is one grain, side by side. The change of its share is in points.
type BillRow struct {
	Grain  string  `json:"grain"`
	OldKg  float64 `json:"oldMassKg"`
	NewKg  float64 `json:"newMassKg"`
	OldPct float64 `json:"oldSharePct"`
	NewPct float64 `json:"newSharePct"`
	Points float64 `json:"changePoints"`
}
