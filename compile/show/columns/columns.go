// Package columns fits text to the columns of a terminal: how wide a text
// stands, how to pad, cut and wrap it, and a writer of whole pages.
package columns

import (
	"strings"

	"github.com/mattn/go-runewidth"

	"newmake/lang/diag"
)

// Page is the widest line of text that newmake prints.
const Page = 80

// terminal cuts by the same widths on every machine: the package's own default looks
// at the locale.
var terminal = &runewidth.Condition{StrictEmojiNeutral: true}

// Width is the number of columns that a text takes.
func Width(s string) int { return diag.Width(s) }

// Fill pads a text on the right to a width.
func Fill(s string, w int) string {
	return s + strings.Repeat(" ", max(w-Width(s), 0))
}

// Right pads a text on the left to a width.
func Right(s string, w int) string {
	return strings.Repeat(" ", max(w-Width(s), 0)) + s
}

// Cut shortens a text to a width, with a mark where it was cut.
func Cut(s string, w int) string {
	if Width(s) <= w {
		return s
	}
	return terminal.Truncate(s, w, "~")
}

// Wrap breaks text into lines of at most w columns, at spaces, and inside a
// word only where the word alone is wider than a line.
func Wrap(text string, w int) []string {
	var lines []string
	line := ""
	for _, word := range strings.Fields(text) {
		for Width(word) > w {
			head := terminal.Truncate(word, w, "")
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
		case Width(line)+1+Width(word) <= w:
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
