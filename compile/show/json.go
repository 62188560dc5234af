package show

import (
	"io"

	"newmake/compile/plan"
	"newmake/lang/diag"
)

// JSON writes the plan as one document with one final newline.
func JSON(w io.Writer, p *plan.Plan) error { return diag.EncodeJSON(w, "", p) }
