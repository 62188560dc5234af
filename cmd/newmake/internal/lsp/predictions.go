package lsp

import (
	"slices"

	"newmake/compile/ask/odds"
	"newmake/compile/plan"
	"newmake/compile/show/inlay"
	"newmake/lang/check"
)

// tried are promises of so many runs, as they were tried, by the name of the batch.
type tried map[string][]plan.Promise

// predictions computes the batches of a file, and says beside their lines what comes.
// A batch that cannot be planned has none. Odds take a hundred times as long as a plan:
// they are those that were drawn when typing stopped.
func predictions(h *check.House, path string, drawn tried) []inlay.Hint {
	var out []inlay.Hint
	for _, name := range h.BatchesIn(path) {
		made, err := planned(h, path, name)
		if err != nil {
			continue
		}
		for i, e := range drawn[name] {
			if i < len(made.Plan.Promises) && made.Plan.Promises[i].Times != nil {
				made.Plan.Promises[i].Tried = e.Tried
			}
		}
		out = append(out, inlay.Hints(h.Find(name), made.Recipe, made.Plan, made.Recipe.Units)...)
	}
	return out
}

// draw tries the promises of the batches of some files.
func draw(h *check.House, paths []string) tried {
	out := tried{}
	for _, path := range paths {
		for _, name := range h.BatchesIn(path) {
			made, err := planned(h, path, name)
			if err != nil || !slices.ContainsFunc(made.Plan.Promises, func(e plan.Promise) bool { return e.Times != nil }) {
				continue
			}
			odds.Judge(made.Plan, made.Recipe)
			out[name] = made.Plan.Promises
		}
	}
	return out
}
