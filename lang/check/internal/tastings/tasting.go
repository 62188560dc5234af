// Package tastings reads tastings and trials.
package tastings

import (
	"slices"

	"newmake/lang/diag"
	"newmake/lang/house"
	"newmake/lang/logbook"
	"newmake/lang/record"
	"newmake/lang/schema"
	"newmake/lang/tree"
	"newmake/lang/vocabulary"
)

// Tasting and Trial are one of the house's each, read.
type (
	Tasting struct {
		Tasting *record.Tasting
		Diags   diag.List
	}
	Trial struct {
		Trial *record.Trial
		Diags diag.List
	}
)

// Read reads a tasting. words are the house's for what is tasted.
func Read(d *house.Decl, tasted logbook.Names, words func() *vocabulary.Words) *Tasting {
	t := &Tasting{}
	t.Tasting, t.Diags = logbook.Tasting(d.Node(), tasted)
	nearly(d.Node(), words(), &t.Diags)
	return t
}

// ReadTrial reads a trial.
func ReadTrial(d *house.Decl, tasted logbook.Names) *Trial {
	t := &Trial{}
	t.Trial, t.Diags = logbook.Trial(d.Node(), tasted)
	return t
}

// Tasted is what can be tasted in a house: casks that runs have filled, runs and bottlings.
func Tasted(h *house.House, filled func() []string) logbook.Names {
	past := func(f *schema.Field) func() []string {
		return func() (out []string) {
			for _, d := range h.Past(f) {
				out = append(out, d.Name)
			}
			return out
		}
	}
	in := func(all func() []string) func(string) bool {
		return func(name string) bool {
			return slices.ContainsFunc(all(), func(s string) bool { return tree.Key(s) == tree.Key(name) })
		}
	}
	runs, lots := past(schema.Run), past(schema.Bottling)
	return logbook.Names{
		{Kinds: []record.SampleKind{record.OfCask}, Say: "cask", Has: in(filled), All: filled},
		{Kinds: []record.SampleKind{record.OfNewMake, record.OfHearts}, Say: "run", Has: in(runs), All: runs},
		{Kinds: []record.SampleKind{record.OfBottling}, Say: "bottling", Has: in(lots), All: lots},
	}
}
