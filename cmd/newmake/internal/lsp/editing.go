package lsp

import (
	"bytes"
	"slices"
	"sort"
)

// editing is a text while the changes of one message are made in it. Where its lines begin
// is kept from one change to the next, so that some thousand changes cost no more than
// moving what stands behind each.
type editing struct {
	units
	mark   []byte // the byte order mark, or nothing
	text   []byte // without it
	starts []int  // of each line
}

func newEditing(u units, text []byte) *editing {
	text = slices.Clone(text)
	n := 0
	if bytes.HasPrefix(text, []byte(string(byteOrderMark))) {
		n = len(string(byteOrderMark))
	}
	return &editing{u, text[:n:n], text[n:], lineStarts(nil, text[n:], 0)}
}

// lineStarts adds where the lines begin of a text that begins at an offset: CR LF, LF and a
// lone CR end a line, as in diag.Source.
func lineStarts(into []int, text []byte, at int) []int {
	into = append(into, at)
	for i, c := range text {
		if c == '\n' || c == '\r' && (i+1 == len(text) || text[i+1] != '\n') {
			into = append(into, at+i+1)
		}
	}
	return into
}

// whole gives the text, with its mark.
func (e *editing) whole() []byte { return append(slices.Clone(e.mark), e.text...) }

// change makes one change. The editor was asked for whole texts; one that sends a part of it
// all the same is understood.
func (e *editing) change(at *span, text string) {
	if at == nil {
		*e = *newEditing(e.units, []byte(text))
		return
	}
	start := e.offset(at.Start)
	end := max(start, e.offset(at.End))
	// Lines are counted anew from the one before the change, which may end in a CR, to the
	// one behind it.
	first := max(e.line(start)-1, 0)
	last := min(e.line(end)+2, len(e.starts))
	after := len(e.text)
	if last < len(e.starts) {
		after = e.starts[last]
	}
	by := len(text) - (end - start)
	e.text = slices.Replace(e.text, start, end, []byte(text)...)
	from := e.starts[first]
	anew := lineStarts(nil, e.text[from:after+by], from)
	if last < len(e.starts) { // the last of them is where the next line begins
		anew = anew[:len(anew)-1]
	}
	for i := range e.starts[last:] {
		e.starts[last+i] += by
	}
	e.starts = slices.Replace(e.starts, first, last, anew...)
}

// line is the line in which an offset lies, from 0.
func (e *editing) line(offset int) int {
	return sort.SearchInts(e.starts, offset+1) - 1
}

// offset is units.offset in the text as it is now.
func (e *editing) offset(p position) int {
	switch {
	case p.Line < 0:
		return 0
	case p.Line >= len(e.starts):
		return len(e.text)
	}
	start, end := e.starts[p.Line], len(e.text)
	if p.Line+1 < len(e.starts) {
		end = e.starts[p.Line+1]
	}
	left := p.Character
	if len(e.mark) > 0 && p.Line == 0 {
		left -= e.width(e.mark)
	}
	return start + e.column(bytes.TrimRight(e.text[start:end], "\r\n"), left)
}
