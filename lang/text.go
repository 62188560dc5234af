package lang

import (
	"bytes"
	"fmt"
	"sort"
	"unicode/utf8"

	"newmake/lang/diag"
)

// Limits of a text. Each is an ordinary diagnostic, made before the parser sees
// a token.
const (
	MaxFileBytes  = 4 << 20
	MaxLineBytes  = 64 << 10
	MaxNesting    = 100
	MaxStatements = 10_000  // lines that say something
	MaxItems      = 200_000 // words, numbers, marks, remarks and ends of lines
)

// checkSize finds what no parser should be given: another encoding, too many
// bytes, too long a line.
func checkSize(src *diag.Source) (d diag.Diagnostic, ok bool) {
	text := src.Text
	if name := utf16Name(text); name != "" {
		return diag.Diagnostic{Code: diag.CodeUTF16, At: src.Span(0, min(2, len(text))),
			Summary: fmt.Sprintf("this file is %s; newmake reads UTF-8", name),
			Help:    "save it again as UTF-8; the editor's \"Save as\" or \"Encoding\" menu has it"}, false
	}
	if len(text) > MaxFileBytes {
		return diag.Diagnostic{Code: diag.CodeFileTooLarge, At: src.Span(0, 0),
			Summary: fmt.Sprintf("this file has %d bytes; the limit is %d (4 MiB)", len(text), MaxFileBytes),
			Help:    "split it into several files of one house"}, false
	}
	return checkLines(src)
}

// checkLines finds a line that is too long.
func checkLines(src *diag.Source) (d diag.Diagnostic, ok bool) {
	for n := 1; n <= src.Lines(); n++ {
		at := src.LineSpan(n)
		if size := at.End - at.Start; size > MaxLineBytes {
			return diag.Diagnostic{Code: diag.CodeLineTooLong, At: src.Span(at.Start, at.Start),
				Summary: fmt.Sprintf("this line has %d bytes; the limit is %d (64 KiB)", size, MaxLineBytes),
				Help:    "break the line; a list goes on after a comma at the end of a line"}, false
		}
	}
	return diag.Diagnostic{}, true
}

// checkLength finds the line, or the word, with which a text gets too long: what
// may stand in so many bytes of it could cost a thousand times their room.
func checkLength(src *diag.Source, tokens []Token) (d diag.Diagnostic, ok bool) {
	var n length
	for _, t := range tokens {
		if what, most := n.add(t.Kind); what != "" {
			return diag.Diagnostic{Code: diag.CodeTooLong, At: src.Span(int(t.Start), int(t.End)),
				Summary: fmt.Sprintf("this file has more than %d %s; here is the next", most, what),
				Help:    "split it into several files of one house; a batch takes about fifty lines"}, false
		}
	}
	return diag.Diagnostic{}, true
}

// length counts what a text has.
type length struct {
	items, statements int
	within            bool // a line that says something
}

// add counts a token. Once there are too many of something, it gives the name of that and
// how many are allowed.
func (n *length) add(k TokenKind) (what string, most int) {
	switch {
	case k == TokNewline:
		n.within = false
	case k == TokComment || k == TokClose:
	case !n.within:
		n.within = true
		if n.statements++; n.statements > MaxStatements {
			return "lines that say something", MaxStatements
		}
	}
	if n.items++; n.items > MaxItems {
		return "words, numbers, marks, remarks and ends of lines", MaxItems
	}
	return "", 0
}

// checkNesting finds the brace that opens one block too many.
func checkNesting(src *diag.Source, tokens []Token) (d diag.Diagnostic, ok bool) {
	depth := 0
	for _, t := range tokens {
		switch t.Kind {
		case TokOpen:
			if depth++; depth > MaxNesting {
				return diag.Diagnostic{Code: diag.CodeTooDeep, At: src.Span(int(t.Start), int(t.End)),
					Summary: fmt.Sprintf("blocks are nested more than %d deep here", MaxNesting),
					Help:    "close the blocks that should have ended above"}, false
			}
		case TokClose:
			depth = max(depth-1, 0)
		}
	}
	return diag.Diagnostic{}, true
}

// utf16Name names the UTF-16 encoding that a text seems to have, "" if none:
// by its byte order mark, or by every other byte of the start being zero.
func utf16Name(text []byte) string {
	switch {
	case bytes.HasPrefix(text, []byte{0xff, 0xfe}):
		return "UTF-16 (little-endian)"
	case bytes.HasPrefix(text, []byte{0xfe, 0xff}):
		return "UTF-16 (big-endian)"
	}
	head := text[:min(len(text), 64)&^1]
	if len(head) < 4 {
		return ""
	}
	var even, odd int
	for i, b := range head {
		if b == 0 && i%2 == 0 {
			even++
		} else if b == 0 {
			odd++
		}
	}
	switch {
	case odd == len(head)/2 && even == 0:
		return "UTF-16 (little-endian)"
	case even == len(head)/2 && odd == 0:
		return "UTF-16 (big-endian)"
	}
	return ""
}

// checkChars finds invalid UTF-8, control characters and those that reorder
// text on the screen; the first in each line.
func checkChars(src *diag.Source, start, end int, tokens []Token) diag.List {
	var list diag.List
	text := src.Text[:end]
	for pos := start; pos < len(text); {
		c := text[pos]
		if c >= ' ' && c < 0x7f || class[c]&(isBlank|isLineEnd) != 0 {
			pos++
			continue
		}
		r, n := utf8.DecodeRune(text[pos:])
		d := charProblem(r, n, c)
		if d.Code == "" {
			pos += n
			continue
		}
		if d.Code == diag.CodeBidi && quotedAt(tokens, pos) {
			d.Severity = diag.Warning
		}
		d.At = src.Span(pos, pos+n)
		list.Add(d)
		pos = lineEnd(text, pos)
	}
	return list
}

func charProblem(r rune, n int, c byte) diag.Diagnostic {
	switch {
	case r == utf8.RuneError && n == 1:
		return diag.Diagnostic{Code: diag.CodeNotUTF8,
			Summary: fmt.Sprintf("byte %02X is not UTF-8 text", c),
			Help:    "save the file as UTF-8; a letter such as é or ° from an older encoding makes this"}
	case r == 0:
		return diag.Diagnostic{Code: diag.CodeControl, Summary: "a NUL character stands here",
			Help: "take it out; if the file is full of them it is no text file"}
	case r < ' ' || r >= 0x7f && r < 0xa0 || r == '\u2028' || r == '\u2029':
		return diag.Diagnostic{Code: diag.CodeControl,
			Summary: fmt.Sprintf("the control character %s stands here", runeName(r)), Help: "take it out"}
	case isBidi(r):
		return diag.Diagnostic{Code: diag.CodeBidi,
			Summary: fmt.Sprintf("%s reorders the text on the screen", runeName(r)),
			Help:    "take it out",
			Reason:  "a recipe must read as it is computed"}
	}
	return diag.Diagnostic{}
}

// isBidi reports whether a character is one of Unicode's bidirectional controls
// (Unicode Standard Annex 9, table of explicit formatting characters).
func isBidi(r rune) bool {
	return r == '\u061c' || r == '\u200e' || r == '\u200f' || r >= '\u202a' && r <= '\u202e' || r >= '\u2066' && r <= '\u2069'
}

// quotedAt reports whether an offset is inside a string or a comment.
func quotedAt(tokens []Token, pos int) bool {
	i := sort.Search(len(tokens), func(i int) bool { return int(tokens[i].End) > pos })
	if i == len(tokens) || int(tokens[i].Start) > pos {
		return false
	}
	kind := tokens[i].Kind
	return kind == TokString || kind == TokComment || kind == TokUnclosed
}
