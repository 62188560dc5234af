package render

import (
	"encoding/json"
	"io"

	"newmake/compile/plan"
)

// JSON writes the plan as one document with one final newline.
func JSON(w io.Writer, p *plan.Plan) error {
	e := json.NewEncoder(w)
	e.SetIndent("", "  ")
	e.SetEscapeHTML(false)
	return e.Encode(p)
}
