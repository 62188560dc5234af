package lang

import "sync"

// TokenKind is what a token is.
type TokenKind uint8

// The tokens of the language. Nothing fails to be a token: what no rule takes
// is TokBad, one character of it, or TokUnclosed.
const (
	TokNewline  TokenKind = iota // LF, CR LF or CR
	TokComment                   // # to the end of the line
	TokString                    // "Copper kettle", with its quotes
	TokUnclosed                  // a string that does not end on its line
	TokDate                      // 2026-03-03
	TokClock                     // 07:00, -05:00
	TokNumber                    // 1,150 -5 0.6; also 1,3 and .5, which the parser refuses
	TokRange                     // ..
	TokUnit                      // °F % g/L /h %/year $/lb: a unit that is no plain word
	TokWord                      // bill, distillers-malt, F
	TokComma                     // ,
	TokSlash                     // / between numbers
	TokOpen                      // {
	TokClose                     // }
	TokBad                       // anything else
)

var tokenNames = [...]string{
	TokNewline: "Newline", TokComment: "Comment", TokString: "String", TokUnclosed: "Unclosed",
	TokDate: "Date", TokClock: "Clock", TokNumber: "Number", TokRange: "Range", TokUnit: "Unit",
	TokWord: "Word", TokComma: "Comma", TokSlash: "Slash", TokOpen: "Open", TokClose: "Close", TokBad: "Bad",
}

// String is the token kind's name in the grammar.
func (k TokenKind) String() string { return tokenNames[k] }

// Token is one token of a text, spaces left out.
type Token struct {
	Kind       TokenKind
	Start, End int32 // bytes
}

// Tokens splits a text into tokens. It never fails.
func Tokens(text []byte) []Token { return tokensInto(make([]Token, 0, len(text)/6+8), text, 0) }

// tokensInto appends the tokens of a text from an offset on.
func tokensInto(tokens []Token, text []byte, pos int) []Token {
	for pos < len(text) {
		if n := spaceAt(text, pos); n > 0 {
			pos += n
			continue
		}
		kind, end := tokenAt(text, pos)
		tokens = append(tokens, Token{Kind: kind, Start: int32(pos), End: int32(end)})
		pos = end
	}
	return tokens
}

// room keeps the tokens of a text that was parsed for those of the next, so that
// a house of many files does not ask for them anew.
var room = sync.Pool{New: func() any { return new([]Token) }}

// mostKept is how many tokens are kept: those of a long recipe, not of the longest
// file that is read at all.
const mostKept = 1 << 16

// withTokens hands the tokens of a text from an offset on to a function, which must
// not keep them.
func withTokens(text []byte, pos int, do func([]Token)) {
	kept := room.Get().(*[]Token)
	tokens := tokensInto((*kept)[:0], text, pos)
	do(tokens)
	if cap(tokens) <= mostKept {
		*kept = tokens
	}
	room.Put(kept)
}
