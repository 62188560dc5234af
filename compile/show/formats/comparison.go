package formats

import (
	"io"

	"newmake/compile/ask/compare"
	"newmake/compile/show/diff"
)

var comparisonForms = []form[*compare.Document, diff.Options]{
	{"text", ".txt", diff.Text},
	{"md", ".md", diff.Markdown},
	{"json", ".json", func(w io.Writer, d *compare.Document, _ diff.Options) error { return diff.JSON(w, d) }},
	{"html", ".html", diff.HTML},
}

// OfComparison is the formats of a comparison.
var OfComparison = ways(comparisonForms)

// Comparison writes a comparison in a format of OfComparison.
func Comparison(d *compare.Document, format string, o diff.Options) ([]byte, error) {
	return written(comparisonForms, format, d, o)
}
