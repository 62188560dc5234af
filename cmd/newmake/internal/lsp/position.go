package lsp

import (
	"unicode/utf16"
	"unicode/utf8"

	"newmake/lang/diag"
)

// units counts a text's columns as the editor does: in UTF-16 units, as the protocol
// has it unless another way was agreed on, or in bytes.
type units struct{ utf8 bool }

// byteOrderMark takes a column of the first line of a text that has it: a source is
// without it.
const byteOrderMark = '\uFEFF'

func (u units) of(r rune, size int) int {
	if u.utf8 {
		return size
	}
	return max(utf16.RuneLen(r), 1)
}

// width is how many columns a text takes.
func (u units) width(text []byte) int {
	n := 0
	for len(text) > 0 {
		r, size := utf8.DecodeRune(text)
		n += u.of(r, size)
		text = text[size:]
	}
	return n
}

// position gives the line and column of an offset, both from 0.
func (u units) position(src *diag.Source, marked bool, offset int) position {
	offset = min(max(offset, 0), len(src.Text))
	line := max(src.LineOf(offset), 1)
	p := position{Line: line - 1}
	if marked && line == 1 {
		p.Character = u.of(byteOrderMark, utf8.RuneLen(byteOrderMark))
	}
	if start := src.LineSpan(line).Start; start < offset {
		p.Character += u.width(src.Text[start:offset])
	}
	return p
}

// offset gives the byte at a line and column. What is beyond the end of a line is its
// end, what is beyond the last line is the end of the text, and what is in the middle
// of a character is its beginning.
func (u units) offset(src *diag.Source, marked bool, p position) int {
	switch {
	case p.Line < 0:
		return 0
	case p.Line >= src.Lines():
		return len(src.Text)
	}
	line := src.LineSpan(p.Line + 1)
	left := p.Character
	if marked && p.Line == 0 {
		left -= u.of(byteOrderMark, utf8.RuneLen(byteOrderMark))
	}
	return line.Start + u.column(src.Text[line.Start:line.End], left)
}

// column gives the byte of a line at a column.
func (u units) column(line []byte, left int) int {
	at := 0
	for at < len(line) && left > 0 {
		r, size := utf8.DecodeRune(line[at:])
		if left -= u.of(r, size); left < 0 {
			break
		}
		at += size
	}
	return at
}

// span gives the place of some bytes.
func (u units) span(at diag.Span, marked bool) span {
	return span{u.position(at.Src, marked, at.Start), u.position(at.Src, marked, at.End)}
}
