package lang

import (
	"unicode"
	"unicode/utf8"
)

// The lexer is written by hand for speed. The same tokens as regular
// expressions stand in lex_rules_test.go, and a fuzz test holds the two equal.

// class of each ASCII byte.
const (
	isLetter  uint8 = 1 << iota // a-z A-Z _
	isDigit                     // 0-9
	isHyphen                    // -
	isBlank                     // space, tab
	isLineEnd                   // CR, LF
)

var class = func() (c [256]uint8) {
	for b := 'a'; b <= 'z'; b++ {
		c[b], c[b-'a'+'A'] = isLetter, isLetter
	}
	for b := '0'; b <= '9'; b++ {
		c[b] = isDigit
	}
	c['_'], c['-'] = isLetter, isHyphen
	c[' '], c['\t'] = isBlank, isBlank
	c['\r'], c['\n'] = isLineEnd, isLineEnd
	return c
}()

// spaceAt gives the length of the space at pos, 0 if there is none. Every space
// of Unicode counts, so a no-break space pasted from a page does no harm.
func spaceAt(text []byte, pos int) int {
	start := pos
	for pos < len(text) {
		if class[text[pos]]&isBlank != 0 {
			pos++
			continue
		}
		if text[pos] < utf8.RuneSelf {
			break
		}
		r, n := utf8.DecodeRune(text[pos:])
		if !unicode.Is(unicode.Zs, r) {
			break
		}
		pos += n
	}
	return pos - start
}

// tokenAt gives the kind and end of the token at pos, where no space stands.
func tokenAt(text []byte, pos int) (TokenKind, int) {
	c := text[pos]
	switch {
	case class[c]&isLetter != 0:
		return wordAt(text, pos)
	case class[c]&isDigit != 0:
		return numberAt(text, pos)
	}
	switch c {
	case '\n':
		return TokNewline, pos + 1
	case '\r':
		if pos+1 < len(text) && text[pos+1] == '\n' {
			return TokNewline, pos + 2
		}
		return TokNewline, pos + 1
	case '#':
		return TokComment, lineEnd(text, pos)
	case '"':
		return stringAt(text, pos)
	case '{':
		return TokOpen, pos + 1
	case '}':
		return TokClose, pos + 1
	case ',':
		return TokComma, pos + 1
	case '-', '+', '.':
		return signOrDotAt(text, pos)
	case '/':
		if pos+1 < len(text) && text[pos+1] == '/' { // a remark, as other languages have it
			return TokBad, lineEnd(text, pos)
		}
		if wordLen(text, pos+1) > 0 {
			return TokUnit, slashWords(text, pos)
		}
		return TokSlash, pos + 1
	case '%', '$':
		return TokUnit, slashWords(text, pos+1)
	}
	r, n := utf8.DecodeRune(text[pos:])
	switch {
	case r == '°' || r == 'º':
		end := pos + n
		return TokUnit, slashWords(text, end+wordLen(text, end))
	case r == '€' || r == '£' || r == '¥':
		return TokUnit, slashWords(text, pos+n)
	case unicode.IsLetter(r):
		return wordAt(text, pos)
	}
	return TokBad, pos + n
}

// wordAt is a word, or a unit of words joined by slashes.
func wordAt(text []byte, pos int) (TokenKind, int) {
	end := pos + wordLen(text, pos)
	if last := slashWords(text, end); last > end {
		return TokUnit, last
	}
	return TokWord, end
}

// slashWords is the end of any "/word" parts that begin at pos.
func slashWords(text []byte, pos int) int {
	for pos < len(text) && text[pos] == '/' {
		n := wordLen(text, pos+1)
		if n == 0 {
			break
		}
		pos += 1 + n
	}
	return pos
}

// wordLen is the length of the word at pos: a letter, then letters, numbers,
// marks, hyphens and underscores of any script.
func wordLen(text []byte, pos int) int {
	i := pos
	for i < len(text) {
		c := text[i]
		if c < utf8.RuneSelf {
			want := isLetter
			if i > pos {
				want = isLetter | isDigit | isHyphen
			}
			if class[c]&want == 0 {
				break
			}
			i++
			continue
		}
		r, n := utf8.DecodeRune(text[i:])
		if r == utf8.RuneError && n <= 1 {
			break
		}
		first := i == pos
		if !unicode.IsLetter(r) && (first || !unicode.IsNumber(r) && !unicode.IsMark(r)) || first && r == 'º' {
			break
		}
		i += n
	}
	return i - pos
}

// numberAt is a number, date or clock time that begins with a digit at pos.
func numberAt(text []byte, pos int) (TokenKind, int) {
	if end := clockAt(text, pos); end > 0 {
		return TokClock, end
	}
	if end := dateAt(text, pos); end > 0 {
		return TokDate, end
	}
	return TokNumber, digitGroups(text, pos)
}

// digitGroups is the end of digits joined by single points and commas.
func digitGroups(text []byte, pos int) int {
	end := digits(text, pos)
	for end+1 < len(text) && (text[end] == '.' || text[end] == ',') && class[text[end+1]]&isDigit != 0 {
		end = digits(text, end+1)
	}
	return end
}

func digits(text []byte, pos int) int {
	for pos < len(text) && class[text[pos]]&isDigit != 0 {
		pos++
	}
	return pos
}

// clockAt is the end of hh:mm or hh:mm:ss at pos, 0 if there is none.
func clockAt(text []byte, pos int) int {
	end := digits(text, pos)
	if n := end - pos; n < 1 || n > 2 {
		return 0
	}
	for part := 0; part < 2; part++ {
		if end+2 >= len(text) || text[end] != ':' || digits(text[:end+3], end+1) != end+3 {
			if part == 0 {
				return 0
			}
			return end
		}
		end += 3
	}
	return end
}

// dateAt is the end of yyyy-mm-dd at pos, 0 if there is none.
func dateAt(text []byte, pos int) int {
	const shape = "dddd-dd-dd"
	if pos+len(shape) > len(text) {
		return 0
	}
	for i := range len(shape) {
		c := text[pos+i]
		if shape[i] == '-' && c != '-' || shape[i] == 'd' && class[c]&isDigit == 0 {
			return 0
		}
	}
	return pos + len(shape)
}

// signOrDotAt is what begins with a sign or a point.
func signOrDotAt(text []byte, pos int) (TokenKind, int) {
	next := pos + 1
	if text[pos] == '.' {
		switch {
		case next < len(text) && text[next] == '.':
			return TokRange, next + 1
		case next < len(text) && class[text[next]]&isDigit != 0:
			return TokNumber, digitGroups(text, next)
		}
		return TokBad, next
	}
	if end := clockAt(text, next); end > 0 {
		return TokClock, end
	}
	if text[pos] == '-' && next < len(text) {
		if class[text[next]]&isDigit != 0 {
			return TokNumber, digitGroups(text, next)
		}
		if text[next] == '.' && next+1 < len(text) && class[text[next+1]]&isDigit != 0 {
			return TokNumber, digitGroups(text, next+1)
		}
	}
	return TokBad, next
}

// stringAt is the string that begins at pos. A backslash takes the character
// after it along.
func stringAt(text []byte, pos int) (TokenKind, int) {
	for i := pos + 1; i < len(text); i++ {
		switch text[i] {
		case '"':
			return TokString, i + 1
		case '\n', '\r':
			return TokUnclosed, i
		case '\\':
			if i+1 < len(text) && class[text[i+1]]&isLineEnd == 0 {
				i++
			}
		}
	}
	return TokUnclosed, len(text)
}

func lineEnd(text []byte, pos int) int {
	for pos < len(text) && class[text[pos]]&isLineEnd == 0 {
		pos++
	}
	return pos
}
