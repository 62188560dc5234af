package diag

import (
	"strings"
	"unicode/utf8"

	"github.com/mattn/go-runewidth"
)

// width measures the columns of text on a terminal. The locale has no say, so
// that output is the same everywhere.
var width = &runewidth.Condition{StrictEmojiNeutral: true}

// Width is the number of columns that text takes on a terminal.
func Width(text string) int {
	n := 0
	for _, r := range text {
		if !oneColumn(r) {
			return width.StringWidth(text)
		}
		n++
	}
	return n
}

// oneColumn reports whether a character takes one column, whatever stands around it: the
// letters of Latin, and the dashes, arrows, signs and rules that newmake itself prints.
// At the first character beyond Latin runewidth fills a table of all that there are, of
// 2.2 MB.
func oneColumn(r rune) bool {
	switch {
	case r < 0x80:
		return r >= ' ' && r != 0x7f
	case r < 0x100:
		return r > 0xa0 && r != 0xad // nor a soft hyphen
	case r < 0x2000:
		return false
	}
	return r >= 0x2010 && r <= 0x2027 || // dashes, quotes, dots
		r >= 0x2030 && r <= 0x2038 || // per mille, primes
		r >= 0x2190 && r <= 0x2193 || // arrows
		r >= 0x2200 && r <= 0x22ff || // of mathematics
		r >= 0x2500 && r <= 0x259f // rules and blocks
}

const tabStop = 4

// shownLine is a line made fit to print, and where its mark goes.
type shownLine struct {
	text       string
	col, width int // of the mark, in columns
}

// showLine makes a line of source fit to print in room columns, with the mark
// of the bytes start to end. A longer line is cut to what is around the mark.
func showLine(line string, start, end, room int, ascii bool) shownLine {
	start = min(max(start, 0), len(line))
	end = min(max(end, start), len(line))
	var b strings.Builder
	var from, to int // bytes of the shown text
	from, to = -1, -1
	col, tab := 0, 0 // columns up to the last tab, and where it ended
	for i := 0; i < len(line); {
		if i >= start && from < 0 {
			from = b.Len()
		}
		if i >= end && to < 0 {
			to = b.Len()
		}
		r, n := utf8.DecodeRuneInString(line[i:])
		if r == '\t' {
			col += Width(b.String()[tab:])
			n := tabStop - col%tabStop
			b.WriteString(strings.Repeat(" ", n))
			col, tab = col+n, b.Len()
		} else {
			b.WriteString(glyph(r, line[i:i+n], ascii))
		}
		i += n
	}
	shown := b.String()
	if from < 0 {
		from = len(shown)
	}
	if to < 0 {
		to = len(shown)
	}
	s := shownLine{text: strings.TrimRight(shown, " "), col: Width(shown[:from])}
	s.width = max(Width(shown[from:to]), 1)
	if width.StringWidth(s.text) <= room {
		return s
	}
	return s.cut(room, ascii)
}

// cut keeps the part of a long line around its mark.
func (s shownLine) cut(room int, ascii bool) shownLine {
	dots := "…"
	if ascii {
		dots = "..."
	}
	left := max(0, s.col-room/3)
	if left > 0 {
		s.text = width.TruncateLeft(s.text, left, "")
		s.text = dots + s.text
		s.col += Width(dots) - left
	}
	if Width(s.text) > room {
		s.text = width.Truncate(s.text, room, dots)
	}
	s.width = max(min(s.width, room-s.col), 1)
	return s
}

// wrap breaks text at spaces into lines of at most room columns. A longer word
// stands on a line of its own.
func wrap(text string, room int) []string {
	var lines []string
	line := ""
	for _, word := range strings.Fields(text) {
		switch {
		case line == "":
			line = word
		case Width(line)+1+Width(word) <= room:
			line += " " + word
		default:
			lines = append(lines, line)
			line = word
		}
	}
	return append(lines, line)
}
