package render

import (
	"strings"

	"newmake/compile/render/columns"
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

// page builds text whose lines never pass pageWidth.
type page struct {
	b     strings.Builder
	bold  bool // headings in bold, for a terminal that shows it
	blank bool // the last line was empty
}

func (p *page) String() string { return p.b.String() }

// line writes one line as it is; the caller has seen to its width.
func (p *page) line(s string) {
	s = strings.TrimRight(s, " ")
	if s == "" && p.blank {
		return
	}
	p.blank = s == ""
	p.b.WriteString(s)
	p.b.WriteByte('\n')
}

func (p *page) gap() { p.line("") }

// heading starts a part of the page.
func (p *page) heading(title string) {
	p.gap()
	p.strong(title)
}

func (p *page) strong(s string) {
	lines := []string{s}
	if width(s) > pageWidth {
		lines = wrap(s, pageWidth)
	}
	for _, l := range lines {
		if p.bold {
			l = "\x1b[1m" + l + "\x1b[0m"
		}
		p.line(l)
	}
}

// para writes text from a first column, the later lines at a second one.
func (p *page) para(first, then int, text string) {
	for i, l := range wrap(text, pageWidth-max(first, then)) {
		if i == 0 {
			p.line(strings.Repeat(" ", first) + l)
		} else {
			p.line(strings.Repeat(" ", then) + l)
		}
	}
}

// item writes a head and the text beside it, which wraps in its own column.
func (p *page) item(head string, col int, text string) {
	lines := wrap(text, pageWidth-col)
	if width(head) >= col {
		p.para(0, 2, head)
		head = ""
	}
	if len(lines) == 0 {
		p.line(head)
	}
	for i, l := range lines {
		if i == 0 {
			p.line(fill(head, col) + l)
		} else {
			p.line(strings.Repeat(" ", col) + l)
		}
	}
}

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
		p.line(cut(line, pageWidth))
	}
}
