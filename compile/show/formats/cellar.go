package formats

import (
	"bytes"

	"newmake/compile/book/cellar"
	"newmake/compile/show/racked"
	"newmake/lang/diag"
)

// Cellar writes what lies in the casks in a format of OfCellar.
func Cellar(c *cellar.Cellar, format string, o racked.Options) ([]byte, error) {
	var out bytes.Buffer
	var err error
	switch format {
	case "json":
		err = diag.EncodeJSON(&out, "", c)
	case "html":
		err = racked.HTML(&out, c)
	case "csv":
		err = racked.CSV(&out, c)
	case "ics":
		err = racked.ICS(&out, c)
	default:
		err = racked.Text(&out, c, o)
	}
	return out.Bytes(), err
}
