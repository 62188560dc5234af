package lsp

import (
	"newmake/compile/show/inlay"
	"newmake/lang/check"
)

// predictions computes the batches of a file, and says beside their lines what comes.
// A batch that cannot be planned has none.
func predictions(h *check.House, path string) []inlay.Hint {
	var out []inlay.Hint
	for _, name := range h.BatchesIn(path) {
		made, err := planned(h, path, name)
		if err != nil {
			continue
		}
		out = append(out, inlay.Hints(h.Find(name), made.Recipe, made.Plan, made.Recipe.Units)...)
	}
	return out
}
