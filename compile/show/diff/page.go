package diff

import (
	"newmake/compile/show/columns"
)

const pageWidth = columns.Page

var (
	width = columns.Width
	fill  = columns.Fill
	wrap  = columns.Wrap
)

// page is text of the width of a page.
type page = columns.Writer
