package diag

import (
	"bytes"
	"sort"
	"unicode/utf8"

	"newmake/lang/quantity"
)

// bom is the byte order mark that some editors put before UTF-8 text.
var bom = []byte("\xef\xbb\xbf")

// NewSource makes a Source of a text. A leading byte order mark is left off, so
// offset 0 is the first character that a person sees.
func NewSource(name string, text []byte) *Source {
	return &Source{Name: name, Text: bytes.TrimPrefix(text, bom)}
}

// String is the text.
func (s *Source) String() string {
	s.whole.Do(func() { s.text = string(s.Text) })
	return s.text
}

// starts gives the offset at which each line begins.
func (s *Source) starts() []int32 {
	s.once.Do(func() { s.lines = lineStarts(s.Text) })
	return s.lines
}

// lineStarts finds where each line begins. CR LF, LF and a lone CR end a line.
func lineStarts(text []byte) []int32 {
	n := bytes.Count(text, []byte{'\n'}) + 1
	starts := make([]int32, 1, n)
	for i := 0; i < len(text); i++ {
		switch {
		case text[i] == '\n':
			starts = append(starts, int32(i+1))
		case text[i] == '\r' && (i+1 == len(text) || text[i+1] != '\n'):
			starts = append(starts, int32(i+1))
		}
	}
	return starts
}

// Lines says how many lines the source has. An empty text has one.
func (s *Source) Lines() int { return len(s.starts()) }

// LineOf gives the 1-based line that holds a byte offset.
func (s *Source) LineOf(offset int) int {
	starts := s.starts()
	return sort.Search(len(starts), func(i int) bool { return int(starts[i]) > offset })
}

// Position gives the line and column of a byte offset, both from 1, the column
// counted in characters. An offset past the end is the end.
func (s *Source) Position(offset int) (line, col int) {
	offset = min(max(offset, 0), len(s.Text))
	line = max(s.LineOf(offset), 1)
	start := int(s.starts()[line-1])
	return line, utf8.RuneCount(s.Text[start:offset]) + 1
}

// LineSpan is the place of a 1-based line, without its line ending.
func (s *Source) LineSpan(line int) Span {
	starts := s.starts()
	if line < 1 || line > len(starts) {
		return Span{Src: s, Start: len(s.Text), End: len(s.Text)}
	}
	start, end := int(starts[line-1]), len(s.Text)
	if line < len(starts) {
		end = int(starts[line])
	}
	for end > start && (s.Text[end-1] == '\n' || s.Text[end-1] == '\r') {
		end--
	}
	return Span{Src: s, Start: start, End: end}
}

// Line is the text of a 1-based line, without its line ending.
func (s *Source) Line(line int) string { return s.LineSpan(line).Text() }

// Span is a place in the source.
func (s *Source) Span(start, end int) Span { return Span{Src: s, Start: start, End: end} }

// IsZero reports whether a span is no place.
func (s Span) IsZero() bool { return s.Src == nil }

// Units is the system in which the reader of the text counts; Both where that is not
// known.
func (s Span) Units() quantity.System {
	if s.Src == nil || s.Src.Units == nil {
		return quantity.Both
	}
	return s.Src.Units()
}

// Text is what stands at the span, as written.
func (s Span) Text() string {
	if s.Src == nil || s.Start > s.End || s.Start < 0 || s.End > len(s.Src.Text) {
		return ""
	}
	return string(s.Src.Text[s.Start:s.End])
}

// Position gives the line and column of the span's start, both from 1.
func (s Span) Position() (line, col int) {
	if s.Src == nil {
		return 0, 0
	}
	return s.Src.Position(s.Start)
}

// To is the span from the start of s to the end of t.
func (s Span) To(t Span) Span { return Span{Src: s.Src, Start: s.Start, End: t.End} }
