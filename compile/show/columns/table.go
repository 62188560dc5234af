package columns

import "strings"

// Table is rows of cells: the first column and those in Left flush left, the rest
// flush right.
type Table struct {
	Left map[int]bool
	rows [][]string
}

// Row adds a row. Rows need not have as many cells as one another.
func (t *Table) Row(cells ...string) { t.rows = append(t.rows, cells) }

const (
	tableIndent = 2
	tableGap    = 2
	leastFirst  = 12 // columns that the first keeps, when it gives way
)

// Write prints the table. The first column gives way when a row would be too
// wide: its text goes over several lines.
func (t *Table) Write(w *Writer) {
	widths := t.widths()
	for _, r := range t.rows {
		head := Wrap(r[0], widths[0])
		if Width(r[0]) <= widths[0] { // as it is, with its own spaces
			head = r[:1]
		}
		for _, l := range head[:len(head)-1] {
			w.Line(strings.Repeat(" ", tableIndent) + l)
		}
		line := strings.Repeat(" ", tableIndent) + Fill(head[len(head)-1], widths[0])
		for i, c := range r[1:] {
			line += strings.Repeat(" ", tableGap)
			if t.Left[i+1] {
				line += Fill(c, widths[i+1])
			} else {
				line += Right(c, widths[i+1])
			}
		}
		w.Line(Cut(line, Page))
	}
}

// widths are those of the columns. Together they fit the page, as far as the first
// can give way.
func (t *Table) widths() []int {
	var out []int
	for _, r := range t.rows {
		for i, c := range r {
			if i == len(out) {
				out = append(out, 0)
			}
			out[i] = max(out[i], Width(c))
		}
	}
	total := tableIndent - tableGap
	for _, w := range out {
		total += w + tableGap
	}
	if over := total - Page; over > 0 {
		out[0] = min(out[0], max(out[0]-over, leastFirst))
	}
	return out
}
