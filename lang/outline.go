package lang

import (
	"bytes"
	"unicode/utf8"

	"newmake/lang/composed"
	"newmake/lang/diag"
)

// Part is one statement of a text's outermost level, with the comments above it.
// The parts of a text follow one another and leave nothing out; what stands after
// the last statement is a part of its own, without a word.
type Part struct {
	Start, End int // whole lines

	// Plain says that the statement begins with a word, then words, names and dates
	// alone, and a `{`, as `run "26-03" of "Ferry Landing" on 2026-03-03 {` does, and
	// that nothing is wrong with that line. Of others only reading tells.
	Plain bool
	Word  string
	Head  []Item    // what stands between the word and the `{`
	At    diag.Span // from the word to the last of Head
}

// Outline finds the statements of a text's outermost level without reading what
// is in their blocks, by the lexer's rules for braces, strings and comments. It is
// not ok if only Parse can tell how the text is nested, or refuses it; else
// ParsePart of every part gives what Parse gives of the whole.
func Outline(src *diag.Source) (parts []Part, ok bool) {
	if len(src.Text) > MaxFileBytes || utf16Name(src.Text) != "" || isLong(src) || len(conflicts(src.Text)) > 0 {
		return nil, false
	}
	o := &outliner{src: src, text: src.Text}
	for o.next() {
	}
	if o.lost {
		return nil, false
	}
	if o.start < len(o.text) {
		o.parts = append(o.parts, Part{Start: o.start, End: len(o.text)})
	}
	return o.parts, true
}

// isLong reports whether a text has more lines or words than Parse takes. They are counted
// only where they may be too many.
func isLong(src *diag.Source) bool {
	ends := bytes.Count(src.Text, []byte{'\n'}) + bytes.Count(src.Text, []byte{'\r'})
	if ends < MaxStatements && len(src.Text) <= MaxItems {
		return false
	}
	var n length
	for pos := 0; pos < len(src.Text); {
		if space := spaceAt(src.Text, pos); space > 0 {
			pos += space
			continue
		}
		kind, end := tokenAt(src.Text, pos)
		if what, _ := n.add(kind); what != "" {
			return true
		}
		pos = end
	}
	return false
}

type outliner struct {
	src   *diag.Source
	text  []byte
	pos   int // begin of a line of the outermost level
	start int // of the part that is looked at
	line  int // begin of the line of the last brace
	parts []Part
	lost  bool // it is not plain how the text is nested
}

// next goes over one line of the outermost level, and over the block that it
// opens. It says whether to go on.
func (o *outliner) next() bool {
	begin := o.pos
	o.pos += spaceAt(o.text, o.pos)
	if o.pos == len(o.text) {
		o.long(begin, o.pos)
		return false
	}
	switch o.text[o.pos] {
	case '\n', '\r':
		o.long(begin, o.pos)
		o.pos++
		return true
	case '#':
		o.pos = lineEnd(o.text, o.pos)
		o.long(begin, o.pos)
		return true
	}
	head, depth := o.head()
	o.long(begin, o.pos)
	if depth > 0 {
		o.block(depth)
		o.rest()
	}
	if o.lost {
		return false
	}
	if o.pos < len(o.text) && o.text[o.pos] == '\r' {
		o.pos++
	}
	if o.pos < len(o.text) && o.text[o.pos] == '\n' {
		o.pos++
	}
	part := o.part(head)
	part.Start, part.End = o.start, o.pos
	o.parts = append(o.parts, part)
	o.start = o.pos
	return true
}

// head goes over the line's tokens and gives those that tell of a plain one: all
// before its comment, if they are few. depth is how many blocks it leaves open.
func (o *outliner) head() (tokens []Token, depth int) {
	var kept [mostHead]Token
	n, closed, last := 0, false, TokNewline
	for o.pos < len(o.text) && class[o.text[o.pos]]&isLineEnd == 0 {
		if space := spaceAt(o.text, o.pos); space > 0 {
			o.pos += space
			continue
		}
		kind, end := tokenAt(o.text, o.pos)
		if kind != TokComment {
			o.lost = o.lost || closed // something follows the block on its line
			if n < len(kept) {
				kept[n] = Token{Kind: kind, Start: int32(o.pos), End: int32(end)}
			}
			n++
			last = kind
		}
		switch kind {
		case TokOpen:
			depth++
		case TokClose:
			depth--
			closed = depth == 0
		}
		o.lost = o.lost || depth < 0 || depth > MaxNesting
		o.pos = end
	}
	if last == TokComma && depth == 0 {
		o.lost = true // it goes on in the next line
	}
	if n > len(kept) {
		return nil, depth
	}
	return kept[:n], depth
}

// mostHead is how many tokens the first line of a plain part has at most.
const mostHead = 12

// block goes over what is in a block, to the brace that closes the outermost.
func (o *outliner) block(depth int) {
	text, pos := o.text, o.pos
	for line := pos; pos < len(text); {
		if !marked[text[pos]] {
			pos++
			continue
		}
		switch text[pos] {
		case '\n', '\r':
			o.long(line, pos)
			line = pos + 1
		case '{':
			if depth++; depth > MaxNesting {
				o.lost = true
				return
			}
		case '}':
			if depth--; depth == 0 {
				o.lost = o.lost || !o.first(pos)
				o.pos, o.line = pos+1, line
				return
			}
		case '"':
			_, pos = stringAt(text, pos)
			continue
		case '#':
			pos = lineEnd(text, pos)
			continue
		}
		pos++
	}
	o.lost = true // it is never closed
}

// marked are the bytes that tell how a text is nested.
var marked = func() (m [256]bool) {
	for _, c := range "{}\"#\n\r" {
		m[c] = true
	}
	return m
}()

// long gives up if a line is too long for Parse.
func (o *outliner) long(start, end int) {
	o.lost = o.lost || end-start > MaxLineBytes
}

// first reports whether nothing but blanks stands before an offset on its line.
func (o *outliner) first(pos int) bool {
	for pos > 0 && class[o.text[pos-1]]&isBlank != 0 {
		pos--
	}
	return pos == 0 || class[o.text[pos-1]]&isLineEnd != 0
}

// rest goes to the end of the line, on which nothing but a comment may stand.
func (o *outliner) rest() {
	o.pos += spaceAt(o.text, o.pos)
	defer func() { o.long(o.line, o.pos) }()
	switch {
	case o.pos == len(o.text):
	case o.text[o.pos] == '#':
		o.pos = lineEnd(o.text, o.pos)
	case class[o.text[o.pos]]&isLineEnd == 0:
		o.lost = true
	}
}

// part outlines a statement by the tokens of its first line; zero if they are not plain.
func (o *outliner) part(head []Token) (p Part) {
	n := len(head)
	if n < 3 || head[0].Kind != TokWord || head[n-1].Kind != TokOpen || !o.clean(head[0].Start) {
		return p
	}
	items := make([]Item, 0, n-2)
	for _, t := range head[1 : n-1] {
		item, ok := o.item(t)
		if !ok {
			return Part{}
		}
		items = append(items, item)
	}
	p.Plain, p.Word, p.Head = true, composed.Form(string(o.text[head[0].Start:head[0].End])), items
	p.At = o.src.Span(int(head[0].Start), int(head[n-2].End))
	return p
}

// item is a word, a string or a date in which nothing is wrong.
func (o *outliner) item(t Token) (Item, bool) {
	raw := string(o.text[t.Start:t.End])
	item := Item{At: o.src.Span(int(t.Start), int(t.End)), Text: raw}
	switch t.Kind {
	case TokWord:
		item.Kind, item.Text = Word, composed.Form(raw)
		return item, true
	case TokString:
		item, f := stringItem(item, raw)
		return item, f == nil
	case TokDate:
		item.Kind = Date
		end := int(t.End)
		return item, end < len(o.text) && (o.text[end] == ' ' || o.text[end] == '{') && dateFault(piece{kind: TokDate, text: raw, start: int(t.Start)}, piece{kind: tokEnd, start: -1}) == nil
	}
	return Item{}, false
}

// clean reports whether no character of a line is a problem (see checkChars).
func (o *outliner) clean(start int32) bool {
	for pos := int(start); pos < len(o.text) && class[o.text[pos]]&isLineEnd == 0; {
		c := o.text[pos]
		if c >= ' ' && c < 0x7f || c == '\t' {
			pos++
			continue
		}
		r, n := utf8.DecodeRune(o.text[pos:])
		if charProblem(r, n, c).Code != "" {
			return false
		}
		pos += n
	}
	return true
}
