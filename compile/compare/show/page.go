package show

import (
	"strings"

	"github.com/mattn/go-runewidth"
)

const pageWidth = 80

// columns measures display width the same on every machine.
var columns = &runewidth.Condition{StrictEmojiNeutral: true}

func width(s string) int { return columns.StringWidth(s) }

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

func fill(s string, w int) string  { return s + strings.Repeat(" ", max(w-width(s), 0)) }
func right(s string, w int) string { return strings.Repeat(" ", max(w-width(s), 0)) + s }

func cut(s string, w int) string {
	if width(s) <= w {
		return s
	}
	return columns.Truncate(s, w, "~")
}

// wrap breaks text at spaces, and inside a word only where it alone is wider
// than a line.
func wrap(text string, w int) []string {
	var lines []string
	line := ""
	for _, word := range strings.Fields(text) {
		for width(word) > w {
			head := columns.Truncate(word, w, "")
			if head == "" {
				break
			}
			if line != "" {
				lines, line = append(lines, line), ""
			}
			lines = append(lines, head)
			word = word[len(head):]
		}
		switch {
		case line == "":
			line = word
		case width(line)+1+width(word) <= w:
			line += " " + word
		default:
			lines, line = append(lines, line), word
		}
	}
	if line != "" {
		lines = append(lines, line)
	}
	return lines
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
