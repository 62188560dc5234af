package trial

import (
	"fmt"
	"io"
	"newmake/compile/measure"
	"newmake/compile/show/md"
	"newmake/lang/diag"
	"strings"
)

// Markdown writes the trial for a pull request.
func (t Trial) Markdown(w io.Writer, u measure.Units) error {
	var b strings.Builder
	line := func(format string, args ...any) { fmt.Fprintf(&b, format+"\n", args...) }
	text := func(s string) string { return md.Escape(diag.Safe(s)) }
	line("## Variants of %s\n", text(t[0].Batch.Name))
	for i := range t {
		line("- %s: %s", letter(i), text(t.legend(i)))
	}
	line("")
	table := [][]string{{""}}
	for i := range t {
		table[0] = append(table[0], letter(i))
	}
	for _, r := range t.rows(u) {
		cells := []string{text(strings.TrimSpace(r.what))}
		for i, c := range r.cells {
			if r.differs(i) {
				c = "**" + text(c) + "**"
			}
			cells = append(cells, c)
		}
		table = append(table, cells)
	}
	b.WriteString(md.Table(true, table...))
	line("Bold: other than %s.", letter(0))
	for _, s := range t.unpriced() {
		line("\n%s", text(s))
	}
	_, err := io.WriteString(w, b.String())
	return err
}
