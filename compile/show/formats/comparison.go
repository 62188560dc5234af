package formats

import (
	"bytes"

	"newmake/compile/ask/compare"
	"newmake/compile/show/diff"
)

// Comparison writes a comparison in a format of OfComparison.
func Comparison(d *compare.Document, format string, o diff.Options) ([]byte, error) {
	var out bytes.Buffer
	var err error
	switch format {
	case "md":
		err = diff.Markdown(&out, d, o)
	case "json":
		err = diff.JSON(&out, d)
	case "html":
		err = diff.HTML(&out, d, o)
	default:
		err = diff.Text(&out, d, o)
	}
	return out.Bytes(), err
}
