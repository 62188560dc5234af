package check

import (
	"fmt"
	"strings"
	"unicode"
)

// A shape is written in a small pattern language:
//
//	"at"       this word, or this mark
//	TEMP       a slot: one value of this type (see SlotTypes)
//	TEMP..TEMP a range
//	low:TEMP   a slot with a name of its own; without one it has its type's, in small letters
//	[ a b ]    may be left out
//	a b | c d  one or the other; the first that fits is taken
//	( a b )*   as often as you like, also never
//
// Matching takes the first alternative that fits and never goes back on it.

type shapeOp uint8

const (
	opSeq shapeOp = iota
	opAlt
	opOpt
	opStar
	opWord
	opSlot
)

type shape struct {
	op    shapeOp
	subs  []*shape
	word  string    // opWord
	slot  string    // opSlot: the name of the capture
	kind  *slotType // opSlot
	isRng bool      // opSlot: a range
}

// mustCompile reads a pattern of the table.
func mustCompile(pattern string) *shape {
	p := &shapeParser{toks: shapeTokens(pattern)}
	s := p.alt()
	if p.pos < len(p.toks) {
		panic(fmt.Sprintf("check: shape %q: %q is left over", pattern, p.toks[p.pos]))
	}
	return s
}

func shapeTokens(pattern string) []string {
	var toks []string
	for i := 0; i < len(pattern); {
		c := pattern[i]
		switch {
		case c == ' ':
			i++
		case c == '"':
			end := strings.IndexByte(pattern[i+1:], '"')
			toks = append(toks, pattern[i:i+end+2])
			i += end + 2
		case strings.IndexByte("[]()|*", c) >= 0:
			toks = append(toks, pattern[i:i+1])
			i++
		default:
			j := i
			for j < len(pattern) && (unicode.IsLetter(rune(pattern[j])) || strings.IndexByte(".:-", pattern[j]) >= 0) {
				j++
			}
			if j == i {
				panic(fmt.Sprintf("check: shape %q: what is %q?", pattern, c))
			}
			toks = append(toks, pattern[i:j])
			i = j
		}
	}
	return toks
}

type shapeParser struct {
	toks []string
	pos  int
}

func (p *shapeParser) peek() string {
	if p.pos == len(p.toks) {
		return ""
	}
	return p.toks[p.pos]
}

func (p *shapeParser) alt() *shape {
	subs := []*shape{p.seq()}
	for p.peek() == "|" {
		p.pos++
		subs = append(subs, p.seq())
	}
	if len(subs) == 1 {
		return subs[0]
	}
	return &shape{op: opAlt, subs: subs}
}

func (p *shapeParser) seq() *shape {
	s := &shape{op: opSeq}
	for {
		switch p.peek() {
		case "", "|", "]", ")":
			if len(s.subs) == 1 {
				return s.subs[0]
			}
			return s
		}
		s.subs = append(s.subs, p.term())
	}
}

func (p *shapeParser) term() *shape {
	tok := p.toks[p.pos]
	p.pos++
	var s *shape
	switch {
	case tok == "[":
		s = &shape{op: opOpt, subs: []*shape{p.alt()}}
		p.pos++ // ]
	case tok == "(":
		s = p.alt()
		p.pos++ // )
	case tok[0] == '"':
		s = &shape{op: opWord, word: strings.Trim(tok, `"`)}
	default:
		s = slotShape(tok)
	}
	if p.peek() == "*" {
		p.pos++
		s = &shape{op: opStar, subs: []*shape{s}}
	}
	return s
}

func slotShape(tok string) *shape {
	label, name, labelled := strings.Cut(tok, ":")
	if !labelled {
		name = tok
		label = ""
	}
	low, high, ranged := strings.Cut(name, "..")
	kind := slotByName[low]
	if kind == nil || ranged && high != low {
		panic("check: shape has an unknown slot " + tok)
	}
	if label == "" {
		label = strings.ToLower(low)
	}
	return &shape{op: opSlot, slot: label, kind: kind, isRng: ranged}
}

// slots lists the names of the shape's slots.
func (s *shape) slots(into []string) []string {
	if s.op == opSlot {
		into = append(into, s.slot)
	}
	for _, sub := range s.subs {
		into = sub.slots(into)
	}
	return into
}

// String writes the shape for a reader: words bare, slots in capitals.
func (s *shape) String() string {
	switch s.op {
	case opWord:
		return s.word
	case opSlot:
		if s.isRng {
			return s.kind.Name + ".." + s.kind.Name
		}
		return s.kind.Name
	case opOpt:
		return "[" + s.subs[0].String() + "]"
	case opStar:
		return "(" + s.subs[0].String() + ")*"
	case opAlt:
		parts := make([]string, len(s.subs))
		for i, sub := range s.subs {
			parts[i] = sub.String()
		}
		return strings.Join(parts, " | ")
	}
	var b strings.Builder
	for i, sub := range s.subs {
		text := sub.String()
		if sub.op == opAlt {
			text = "(" + text + ")"
		}
		if i > 0 && text != "," {
			b.WriteByte(' ')
		}
		b.WriteString(text)
	}
	return b.String()
}
