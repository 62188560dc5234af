package diag

import (
	"strings"
	"unicode/utf8"
)

// Safe makes text harmless on a terminal: each control character, each that
// reorders text, and each byte that is no UTF-8 becomes one visible glyph of one
// column. A line break becomes one too.
func Safe(text string) string { return SafeIn(text, false) }

// SafeIn is Safe for a terminal that may show no more than ASCII: with ascii, all else
// becomes "?".
func SafeIn(text string, ascii bool) string {
	if isPlain(text) {
		return text
	}
	var b strings.Builder
	for i := 0; i < len(text); {
		r, n := utf8.DecodeRuneInString(text[i:])
		b.WriteString(glyph(r, text[i:i+n], ascii))
		i += n
	}
	return b.String()
}

func isPlain(text string) bool {
	for i := range len(text) {
		if text[i] < ' ' || text[i] >= 0x7f {
			return false
		}
	}
	return true
}

// glyph is what stands on the screen for a character; written is how it is
// spelt, one byte if it is no UTF-8.
func glyph(r rune, written string, ascii bool) string {
	switch {
	case r >= ' ' && r < 0x7f:
		return written
	case ascii:
		return "?"
	case r < ' ':
		return string('␀' + r) // Unicode's control pictures stand in ASCII's order
	case r == 0x7f:
		return "␡"
	case r < 0xa0, isReordering(r), r == '\u2028', r == '\u2029', r == utf8.RuneError && len(written) == 1:
		return "�"
	}
	return written
}

// isReordering reports whether a character is one of Unicode's bidirectional
// controls (Unicode Standard Annex 9), or is an invisible one that moves what
// follows.
func isReordering(r rune) bool {
	return r == '\u061c' || r == '\u200e' || r == '\u200f' || r == '\ufeff' ||
		r >= '\u202a' && r <= '\u202e' || r >= '\u2066' && r <= '\u2069'
}
