// Package json writes a plan as one JSON document.
package json

import (
	"io"

	"newmake/compile/plan"
	"newmake/lang/diag"
)

// Write writes the plan as one document with one final newline.
func Write(w io.Writer, p *plan.Plan) error { return diag.EncodeJSON(w, "", p) }
