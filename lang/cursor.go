package lang

// cursor goes over the tokens of a line's items. Comments and line endings within
// a list that a comma carries on are passed over.
type cursor struct {
	text  string
	bytes []byte // the same
	base  int    // offset of the text in its file
	pos   int    // after the token that is next
	at    piece
}

// piece is one token of a line. The last is of kind tokEnd and holds nothing.
type piece struct {
	kind  TokenKind
	text  string
	start int // offset in the file
}

func (t piece) end() int { return t.start + len(t.text) }

const tokEnd = TokenKind(0xff)

func newCursor(text string, base int) *cursor {
	c := &cursor{text: text, bytes: []byte(text), base: base}
	c.read()
	return c
}

// peek is the next token.
func (c *cursor) peek() piece { return c.at }

// next takes the next token.
func (c *cursor) next() piece {
	t := c.at
	c.read()
	return t
}

func (c *cursor) read() {
	for {
		c.pos += spaceAt(c.bytes, c.pos)
		if c.pos == len(c.text) {
			c.at = piece{kind: tokEnd, start: c.base + c.pos}
			return
		}
		kind, end := tokenAt(c.bytes, c.pos)
		start := c.pos
		c.pos = end
		if kind != TokNewline && kind != TokComment {
			c.at = piece{kind: kind, text: c.text[start:end], start: c.base + start}
			return
		}
	}
}
