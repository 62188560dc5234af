package formats

import (
	"io"

	"newmake/compile/book/taste"
	"newmake/compile/show/tasted"
	"newmake/lang/diag"
)

var tastingsForms = []form[*taste.Found, tasted.Options]{
	{"text", ".txt", tasted.Found},
	{"html", ".html", func(w io.Writer, f *taste.Found, _ tasted.Options) error { return tasted.FoundHTML(w, f) }},
	{"json", ".json", func(w io.Writer, f *taste.Found, _ tasted.Options) error { return diag.EncodeJSON(w, "", f) }},
	{"csv", ".csv", func(w io.Writer, f *taste.Found, _ tasted.Options) error { return tasted.FoundCSV(w, f) }},
}

// OfTastings is the formats of what was found among the tastings.
var OfTastings = ways(tastingsForms)

// Tastings writes what was found among the tastings in a format of OfTastings.
func Tastings(f *taste.Found, format string, o tasted.Options) ([]byte, error) {
	return written(tastingsForms, format, f, o)
}
