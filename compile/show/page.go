package show

import (
	"strings"

	"newmake/compile/show/columns"
	"newmake/lang/diag"
)

const pageWidth = columns.Page

var (
	width = columns.Width
	fill  = columns.Fill
	right = columns.Right
	cut   = columns.Cut
	wrap  = columns.Wrap
)

// page is text of the width of a page.
type page = columns.Writer

// safe shows a text from a recipe without doing what it says.
func safe(s string) string { return diag.Safe(s, false) }

// table is rows of cells; the first column and those marked left are flush
// left, the rest flush right.
type table struct {
	indent int
	left   map[int]bool
	rows   [][]string
}

func (t *table) row(cells ...string) { t.rows = append(t.rows, cells) }

// write prints the table. The first column gives way when a row would be too
// wide.
func (t *table) write(p *page) {
	var widths []int
	for _, r := range t.rows {
		for i, c := range r {
			if i == len(widths) {
				widths = append(widths, 0)
			}
			widths[i] = max(widths[i], width(c))
		}
	}
	total := t.indent
	for _, w := range widths {
		total += w + 2
	}
	if over := total - 2 - pageWidth; over > 0 {
		widths[0] = max(widths[0]-over, 4)
	}
	for _, r := range t.rows {
		line := strings.Repeat(" ", t.indent)
		for i, c := range r {
			c = cut(c, widths[i])
			if i > 0 {
				line += "  "
			}
			if i == 0 || t.left[i] {
				line += fill(c, widths[i])
			} else {
				line += right(c, widths[i])
			}
		}
		p.Line(cut(line, pageWidth))
	}
}
