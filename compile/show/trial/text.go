package trial

import (
	"io"
	"newmake/compile/measure"
	"newmake/compile/show/columns"
	"newmake/compile/show/text"
	"newmake/lang/diag"
	"strings"
)

// Columns of the text: what stands before the numbers, and each number with its
// mark.
const (
	trialHead   = 18
	trialColumn = 15
	trialMost   = (columns.Page - trialHead) / trialColumn
)

// Text writes the trial for a terminal of 80 columns. Where there are more plans
// than fit beside each other the table goes on below, the first plan in it again.
func (t Trial) Text(w io.Writer, u measure.Units, bold bool) error {
	p := columns.Writer{Bold: bold}
	p.Strong("Variants of " + diag.Safe(t[0].Batch.Name))
	p.Gap()
	for i := range t {
		p.Item("  "+letter(i), 6, diag.Safe(t.legend(i)))
	}
	rows := t.rows(u)
	for from := 1; from < len(t); from += trialMost - 1 {
		shown := []int{0}
		for i := from; i < min(from+trialMost-1, len(t)); i++ {
			shown = append(shown, i)
		}
		p.Gap()
		head := strings.Repeat(" ", trialHead)
		for _, i := range shown {
			head += columns.Right(letter(i), trialColumn-2) + "  "
		}
		p.Strong(strings.TrimRight(head, " "))
		for _, r := range rows {
			line := columns.Fill(columns.Cut(diag.Safe(r.what), trialHead-1), trialHead)
			for _, i := range shown {
				mark := "  "
				if r.differs(i) {
					mark = " *"
				}
				line += columns.Right(r.cells[i], trialColumn-2) + mark
			}
			p.Line(line)
		}
	}
	p.Gap()
	p.Line("* other than " + letter(0))
	for _, s := range t.unpriced() {
		p.Para(0, 2, diag.Safe(s))
	}
	p.Para(0, 0, text.SafetyLine)
	_, err := io.WriteString(w, p.String())
	return err
}
