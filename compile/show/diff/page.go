package diff

import (
	"newmake/compile/show/columns"
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

// table is rows of cells, the first flush left and the others flush right.
type table struct {
	rows [][]string
	left map[int]bool // further columns that are flush left
}

func (t *table) row(cells ...string) { t.rows = append(t.rows, cells) }

// write prints the table. The first column gives way when a row would be too
// wide: its text goes over several lines.
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
	total := 0
	for _, w := range widths {
		total += w + 2
	}
	if over := total - pageWidth; over > 0 {
		widths[0] = max(widths[0]-over, 12)
	}
	for _, r := range t.rows {
		head := wrap(r[0], widths[0])
		if len(head) == 0 {
			head = []string{""}
		}
		for _, h := range head[:len(head)-1] {
			p.Line("  " + h)
		}
		row := "  " + fill(head[len(head)-1], widths[0])
		for i, c := range r[1:] {
			if t.left[i+1] {
				row += "  " + fill(c, widths[i+1])
			} else {
				row += "  " + right(c, widths[i+1])
			}
		}
		p.Line(cut(row, pageWidth))
	}
}
