package proofing

import (
	"strconv"
	"strings"

	"newmake/compile/measure"
)

// pageWidth is the columns of a terminal.
const pageWidth = 80

// Text writes an answer for people: the working with its sources, then what
// came of it, the figure asked for last.
func (a Answer) Text() string {
	var b strings.Builder
	b.WriteString(a.Question + "\n\n")
	for i, w := range a.Working {
		head := strconv.Itoa(i+1) + ". " + w.Title
		b.WriteString(head + strings.Repeat(" ", max(2, pageWidth-len(head)-len(w.Source))) + w.Source + "\n")
		for _, l := range w.Lines {
			writeWrapped(&b, l, "   ", "     ")
		}
	}
	b.WriteString("\n")
	for _, n := range a.Notes {
		writeWrapped(&b, n, "Note: ", "      ")
	}
	for _, c := range a.Cautions {
		writeWrapped(&b, c, "Caution: ", "         ")
	}
	b.WriteString("\n")
	for _, r := range a.Results {
		b.WriteString(r.line() + "\n")
	}
	return b.String()
}

func (r Result) line() string {
	unit := strings.TrimPrefix(r.Unit, "delta_")
	value := measure.Number(r.Value, r.Places)
	return "  " + r.Label + strings.Repeat(" ", max(2, 44-len(r.Label)-len(value))) + value + " " + unit
}

// writeWrapped writes text in lines of a page, the first and the rest with
// their indents.
func writeWrapped(b *strings.Builder, text, first, rest string) {
	line := first
	for i, word := range strings.Fields(text) {
		switch {
		case i == 0:
			line += word
		case len(line)+1+len(word) > pageWidth:
			b.WriteString(line + "\n")
			line = rest + word
		default:
			line += " " + word
		}
	}
	b.WriteString(line + "\n")
}
