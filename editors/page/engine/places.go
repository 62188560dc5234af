package engine

import (
	"strings"
	"unicode/utf16"
	"unicode/utf8"
)

// mark is the byte order mark that some programs put before a text. A source is
// without it, and the browser counts it.
const mark = "\uFEFF"

// places counts along a text: bytes of its source on one side, the UTF-16 units of the
// browser on the other. It is quick where it is asked in order.
type places struct {
	text         string // without its mark
	marked       int    // 1 if there was one
	bytes, units int    // how far it is
}

func placesOf(text string) *places {
	rest, marked := strings.CutPrefix(text, mark)
	p := &places{text: rest}
	if marked {
		p.marked = 1
	}
	return p
}

// units gives the browser's place of a byte.
func (p *places) unit(offset int) int {
	offset = min(max(offset, 0), len(p.text))
	if offset < p.bytes {
		p.bytes, p.units = 0, 0
	}
	for p.bytes < offset {
		r, size := utf8.DecodeRuneInString(p.text[p.bytes:])
		p.bytes += size
		p.units += max(utf16.RuneLen(r), 1)
	}
	return p.units + p.marked
}

// byteAt gives the byte of a browser's place. What is beyond the end is the end, and
// what is in the middle of a character is its beginning.
func (p *places) byteAt(unit int) int {
	unit -= p.marked
	at := 0
	for at < len(p.text) && unit > 0 {
		r, size := utf8.DecodeRuneInString(p.text[at:])
		if unit -= max(utf16.RuneLen(r), 1); unit < 0 {
			break
		}
		at += size
	}
	return at
}
