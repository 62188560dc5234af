package show

import (
	"strings"

	"newmake/compile/render/columns"
)

const pageWidth = columns.Page

var (
	width = columns.Width
	fill  = columns.Fill
	right = columns.Right
	cut   = columns.Cut
	wrap  = columns.Wrap
)

// page builds text whose lines never pass pageWidth.
type page struct {
	b    strings.Builder
	bold bool
}

func (p *page) line(s string) {
	p.b.WriteString(strings.TrimRight(s, " "))
	p.b.WriteByte('\n')
}

// strong is a heading.
func (p *page) strong(s string) {
	for _, l := range wrap(s, pageWidth) {
		if p.bold {
			l = "\x1b[1m" + l + "\x1b[0m"
		}
		p.line(l)
	}
}

func (p *page) heading(s string) {
	p.line("")
	p.strong(s)
}

// para writes text from a first column, the later lines at a second one.
func (p *page) para(first, then int, text string) {
	for i, l := range wrap(text, pageWidth-max(first, then)) {
		at := then
		if i == 0 {
			at = first
		}
		p.line(strings.Repeat(" ", at) + l)
	}
}

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
			p.line("  " + h)
		}
		row := "  " + fill(head[len(head)-1], widths[0])
		for i, c := range r[1:] {
			if t.left[i+1] {
				row += "  " + fill(c, widths[i+1])
			} else {
				row += "  " + right(c, widths[i+1])
			}
		}
		p.line(cut(row, pageWidth))
	}
}
