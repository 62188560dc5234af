package lang

import (
	"io"

	"github.com/alecthomas/participle/v2/lexer"
)

// definition is the lexer as participle asks for it, to be held against its rules.
type definition struct{}

var (
	_ lexer.Definition       = definition{}
	_ lexer.StringDefinition = definition{}
)

// Symbols implements lexer.Definition.
func (definition) Symbols() map[string]lexer.TokenType {
	m := map[string]lexer.TokenType{"EOF": lexer.EOF}
	for k, name := range tokenNames {
		m[name] = symbol(TokenKind(k))
	}
	return m
}

// Lex implements lexer.Definition.
func (d definition) Lex(filename string, r io.Reader) (lexer.Lexer, error) {
	text, err := io.ReadAll(r)
	if err != nil {
		return nil, err
	}
	return d.LexString(filename, string(text))
}

// LexString implements lexer.StringDefinition.
func (definition) LexString(filename, input string) (lexer.Lexer, error) {
	return &stringLexer{
		text:   input,
		tokens: Tokens([]byte(input)),
		pos:    lexer.Position{Filename: filename, Line: 1, Column: 1},
	}, nil
}

// stringLexer hands out the tokens of a text one by one.
type stringLexer struct {
	text   string
	tokens []Token
	pos    lexer.Position
}

// Next implements lexer.Lexer. It never fails.
func (l *stringLexer) Next() (lexer.Token, error) {
	if len(l.tokens) == 0 {
		l.pos.Advance(l.text[l.pos.Offset:])
		return lexer.EOFToken(l.pos), nil
	}
	t := l.tokens[0]
	l.tokens = l.tokens[1:]
	l.pos.Advance(l.text[l.pos.Offset:t.Start])
	at := l.pos
	l.pos.Advance(l.text[t.Start:t.End])
	return lexer.Token{Type: symbol(t.Kind), Value: l.text[t.Start:t.End], Pos: at}, nil
}
