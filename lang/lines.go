package lang

// codeLine is one line of a text as it is read: the tokens up to a line ending,
// comments left out. A line that ends in a comma goes on.
type codeLine struct {
	tokens     []Token // without line endings
	start, end int     // bytes, from its first token to its last
	past       int     // the end of a comment after it, else end
	indent     int     // width of the blank start
	spoilt     bool    // a character in it is an error already
	item       *fault  // the first fault among its items
	layout     *fault  // what may not share the line
	layoutAt   int     // where that shows
}

// codeLines parts the tokens of a text into lines, empty ones left out.
func codeLines(text []byte, tokens []Token) []codeLine {
	count := countLineEnds(tokens)
	lines := make([]codeLine, 0, count+1)
	code := make([]Token, 0, len(tokens)-count)
	for len(tokens) > 0 {
		n := lineTokens(tokens)
		from := len(code)
		past := 0
		for _, t := range tokens[:n] {
			if t.Kind != TokNewline && t.Kind != TokComment {
				code = append(code, t)
			}
			past = int(t.End)
		}
		tokens = tokens[min(n+1, len(tokens)):]
		if own := code[from:len(code):len(code)]; len(own) > 0 {
			start := int(own[0].Start)
			lines = append(lines, codeLine{tokens: own, start: start, end: int(own[len(own)-1].End), past: past, indent: indentAt(text, start)})
		}
	}
	return lines
}

func countLineEnds(tokens []Token) (n int) {
	for _, t := range tokens {
		if t.Kind == TokNewline {
			n++
		}
	}
	return n
}

// lineTokens counts the tokens of the next line, its ending left out. A line
// that ends in a comma goes on, unless a block ends there.
func lineTokens(tokens []Token) int {
	carried, end := false, 0 // end: the first line ending after the comma
	for i, t := range tokens {
		switch t.Kind {
		case TokNewline:
			if !carried {
				return i
			}
			if end == 0 {
				end = i
			}
		case TokComment:
		case TokClose:
			if carried && end > 0 {
				return end
			}
			carried = false
		default:
			carried, end = t.Kind == TokComma, 0
		}
	}
	return len(tokens)
}

// indentAt is the width of the blank start of the line that holds an offset.
func indentAt(text []byte, at int) int {
	begin := at
	for begin > 0 && class[text[begin-1]]&isLineEnd == 0 {
		begin--
	}
	n := 0
	for begin+n < at && class[text[begin+n]]&isBlank != 0 {
		n++
	}
	return n
}
