package formats

import (
	"io"

	"newmake/compile/book/cellar"
	"newmake/compile/show/racked"
	"newmake/lang/diag"
)

var cellarForms = []form[*cellar.Cellar, racked.Options]{
	{"text", ".txt", racked.Text},
	{"html", ".html", func(w io.Writer, c *cellar.Cellar, _ racked.Options) error { return racked.HTML(w, c) }},
	{"json", ".json", func(w io.Writer, c *cellar.Cellar, _ racked.Options) error { return diag.EncodeJSON(w, "", c) }},
	{"csv", ".csv", func(w io.Writer, c *cellar.Cellar, _ racked.Options) error { return racked.CSV(w, c) }},
	{"ics", ".ics", func(w io.Writer, c *cellar.Cellar, _ racked.Options) error { return racked.ICS(w, c) }},
}

// OfCellar is the formats of what lies in the casks.
var OfCellar = ways(cellarForms)

// Cellar writes what lies in the casks in a format of OfCellar.
func Cellar(c *cellar.Cellar, format string, o racked.Options) ([]byte, error) {
	return written(cellarForms, format, c, o)
}
