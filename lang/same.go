package lang

import "bytes"

// sameTokens reports whether two texts without errors are made of the same tokens,
// and so mean the same with the same comments in the same places. How many line
// endings follow each other does not count, nor which, nor the spaces at the end of
// a comment.
func sameTokens(a, b []byte, as, bs []Token) bool {
	for {
		as, bs = skipLineEnds(as), skipLineEnds(bs)
		if len(as) == 0 || len(bs) == 0 {
			return len(as) == len(bs)
		}
		n, m := lineLength(as), lineLength(bs)
		if n != m {
			return false
		}
		for i := range n {
			x, y := a[as[i].Start:as[i].End], b[bs[i].Start:bs[i].End]
			if as[i].Kind == TokComment {
				x, y = bytes.TrimRight(x, " \t"), bytes.TrimRight(y, " \t")
			}
			if as[i].Kind != bs[i].Kind || !bytes.Equal(x, y) {
				return false
			}
		}
		as, bs = as[n:], bs[m:]
	}
}

func skipLineEnds(tokens []Token) []Token {
	for len(tokens) > 0 && tokens[0].Kind == TokNewline {
		tokens = tokens[1:]
	}
	return tokens
}

// lineLength counts the tokens before the next line ending.
func lineLength(tokens []Token) int {
	for i, t := range tokens {
		if t.Kind == TokNewline {
			return i
		}
	}
	return len(tokens)
}
