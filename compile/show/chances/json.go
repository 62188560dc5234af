package chances

import (
	"io"

	"newmake/compile/ask/odds"
	"newmake/lang/diag"
)

// JSON writes an answer as one document.
func JSON(w io.Writer, a *odds.Answer) error { return diag.EncodeJSON(w, "", a) }
