package lsp

import (
	"newmake/compile/front"
	"newmake/compile/show/inlay"
	"newmake/lang/check"
)

// predictions computes the batches of a file, and says beside their lines what comes.
// A batch that cannot be planned has none.
func predictions(h *check.House, path string) []inlay.Hint {
	var out []inlay.Hint
	src := &front.Source{House: h, Path: path, Label: path}
	for _, name := range h.BatchesIn(path) {
		made, err := src.Plan(name, nil)
		if err != nil || made.Plan == nil || made.Recipe == nil || front.Broken(made.Diags) {
			continue
		}
		out = append(out, inlay.Hints(h.Find(name), made.Plan, made.Recipe.Units)...)
	}
	return out
}
