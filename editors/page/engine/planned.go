package engine

import (
	"bytes"
	"slices"

	"newmake/compile/ask/bands"
	"newmake/compile/ask/odds"
	"newmake/compile/front"
	"newmake/compile/measure"
	"newmake/compile/show/inlay"
	"newmake/compile/show/sheet"
)

// plan computes the batches of the file that is looked at, and shows the one that is
// asked for as its sheet. Its numbers have how sure they are if that is asked for.
func (e *Engine) plan(q Question) Answer {
	work, h, err := e.load(q.Files)
	if err != nil {
		return Answer{Problem: harmless(err.Error())}
	}
	if h == nil {
		return Answer{Said: told(q.Files, work.Run())}
	}
	a := Answer{Batches: h.BatchesIn(q.File)}
	list := h.Check()
	of := map[string][]inlay.Hint{}
	src := &front.Source{House: h, Path: q.File, Label: q.File}
	if len(a.Batches) > 0 {
		a.Batch = a.Batches[0]
		if slices.Contains(a.Batches, q.Batch) {
			a.Batch = q.Batch
		}
	}
	for _, name := range a.Batches {
		made, err := src.Plan(name, nil)
		if err != nil {
			a.Problem = harmless(err.Error())
			continue
		}
		list = append(list, made.Diags.Beyond(list)...)
		if made.Sound() {
			of[name] = inlay.Hints(h.Find(name), made.Recipe, made.Plan, made.Recipe.Units)
		}
		if name != a.Batch {
			continue
		}
		a.Notes = made.Notes
		if !made.Sound() {
			continue
		}
		if q.Sure {
			odds.Judge(made.Plan, made.Recipe)
			bands.Put(made.Plan, made.Recipe)
		}
		var page bytes.Buffer
		if err := sheet.HTML(&page, made.Plan, sheet.Options{Units: measure.UnitsOf(made.Recipe.Units)}); err != nil {
			a.Problem = err.Error()
			continue
		}
		a.Page = page.String()
	}
	a.Said = told(q.Files, h.Ordered(list.Dedup()))
	a.Hints = hints(h, q.Files[q.File], of)
	return a
}
