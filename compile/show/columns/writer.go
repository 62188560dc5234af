package columns

import "strings"

// Writer builds text whose lines never pass Page.
type Writer struct {
	b     strings.Builder
	Bold  bool // headings in bold, for a terminal that shows it
	blank bool // the last line was empty
}

// String is the text so far.
func (w *Writer) String() string { return w.b.String() }

// Line writes one line as it is; the caller has seen to its width.
func (w *Writer) Line(s string) {
	s = strings.TrimRight(s, " ")
	if s == "" && w.blank {
		return
	}
	w.blank = s == ""
	w.b.WriteString(s)
	w.b.WriteByte('\n')
}

// Gap writes an empty line, unless there is one.
func (w *Writer) Gap() { w.Line("") }

// Heading starts a part of the page.
func (w *Writer) Heading(title string) {
	w.Gap()
	w.Strong(title)
}

// Strong writes text as a heading stands.
func (w *Writer) Strong(s string) {
	lines := []string{s}
	if Width(s) > Page {
		lines = Wrap(s, Page)
	}
	for _, l := range lines {
		if w.Bold {
			l = "\x1b[1m" + l + "\x1b[0m"
		}
		w.Line(l)
	}
}

// Para writes text from a first column, the later lines at a second one.
func (w *Writer) Para(first, then int, text string) {
	for i, l := range Wrap(text, Page-max(first, then)) {
		if i == 0 {
			w.Line(strings.Repeat(" ", first) + l)
		} else {
			w.Line(strings.Repeat(" ", then) + l)
		}
	}
}

// Item writes a head and the text beside it, which wraps in its own column.
func (w *Writer) Item(head string, col int, text string) {
	lines := Wrap(text, Page-col)
	if Width(head) >= col {
		w.Para(0, 2, head)
		head = ""
	}
	if len(lines) == 0 {
		w.Line(head)
	}
	for i, l := range lines {
		if i == 0 {
			w.Line(Fill(head, col) + l)
		} else {
			w.Line(strings.Repeat(" ", col) + l)
		}
	}
}
