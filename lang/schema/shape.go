package schema

import (
	"fmt"
	"slices"
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
//	PART{ a b } a b, which a reader is shown as PART
//
// Matching takes the first alternative that fits and never goes back on it.

// Op is what a shape does with its parts.
type Op uint8

const (
	Seq     Op = iota // one after the other
	Alt               // the first of them that fits
	Opt               // it may be left out
	Star              // as often as it fits, also never
	Literal           // a word or sign as it stands
	Slot              // a value
)

// Shape is the form of a line, or a part of it.
type Shape struct {
	Op    Op
	Subs  []*Shape
	Word  string    // of a Literal
	Slot  string    // of a Slot: the name of the capture
	Kind  *SlotType // of a Slot
	Range bool      // of a Slot: a range
	Part  string    // what a reader is shown in its place, "" for all of it
}

// MustCompile reads a pattern of the table.
func MustCompile(pattern string) *Shape {
	p := &shapeParser{toks: shapeTokens(pattern)}
	s := p.alt()
	if p.pos < len(p.toks) {
		panic(fmt.Sprintf("schema: shape %q: %q is left over", pattern, p.toks[p.pos]))
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
		case strings.IndexByte("[]()|*{}", c) >= 0:
			toks = append(toks, pattern[i:i+1])
			i++
		default:
			j := i
			for j < len(pattern) && (unicode.IsLetter(rune(pattern[j])) || strings.IndexByte(".:-", pattern[j]) >= 0) {
				j++
			}
			if j == i {
				panic(fmt.Sprintf("schema: shape %q: what is %q?", pattern, c))
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

func (p *shapeParser) alt() *Shape {
	subs := []*Shape{p.seq()}
	for p.peek() == "|" {
		p.pos++
		subs = append(subs, p.seq())
	}
	if len(subs) == 1 {
		return subs[0]
	}
	return &Shape{Op: Alt, Subs: subs}
}

func (p *shapeParser) seq() *Shape {
	s := &Shape{Op: Seq}
	for {
		switch p.peek() {
		case "", "|", "]", ")", "}":
			if len(s.Subs) == 1 {
				return s.Subs[0]
			}
			return s
		}
		s.Subs = append(s.Subs, p.term())
	}
}

func (p *shapeParser) term() *Shape {
	tok := p.toks[p.pos]
	p.pos++
	var s *Shape
	switch {
	case tok == "[":
		s = &Shape{Op: Opt, Subs: []*Shape{p.alt()}}
		p.pos++ // ]
	case tok == "(":
		s = p.alt()
		p.pos++ // )
	case tok[0] == '"':
		s = &Shape{Op: Literal, Word: strings.Trim(tok, `"`)}
	case p.peek() == "{":
		p.pos++
		s = &Shape{Op: Seq, Subs: []*Shape{p.alt()}, Part: tok}
		p.pos++ // }
	default:
		s = slotShape(tok)
	}
	if p.peek() == "*" {
		p.pos++
		s = &Shape{Op: Star, Subs: []*Shape{s}}
	}
	return s
}

func slotShape(tok string) *Shape {
	label, name, labelled := strings.Cut(tok, ":")
	if !labelled {
		name = tok
		label = ""
	}
	low, high, ranged := strings.Cut(name, "..")
	kind := slotByName[low]
	if kind == nil || ranged && high != low {
		panic("schema: shape has an unknown slot " + tok)
	}
	if label == "" {
		label = strings.ToLower(low)
	}
	return &Shape{Op: Slot, Slot: label, Kind: kind, Range: ranged}
}

// String writes the shape for a reader: words bare, slots in capitals.
func (s *Shape) String() string {
	if s.Part != "" {
		return s.Part
	}
	switch s.Op {
	case Literal:
		return s.Word
	case Slot:
		if s.Range {
			return s.Kind.Name + ".." + s.Kind.Name
		}
		return s.Kind.Name
	case Opt:
		return "[" + s.Subs[0].String() + "]"
	case Star:
		return "(" + s.Subs[0].String() + ")*"
	case Alt:
		parts := make([]string, len(s.Subs))
		for i, sub := range s.Subs {
			parts[i] = sub.String()
		}
		return strings.Join(parts, " | ")
	}
	var b strings.Builder
	for i, sub := range s.Subs {
		text := sub.String()
		if sub.Op == Alt {
			text = "(" + text + ")"
		}
		if i > 0 && text != "," {
			b.WriteByte(' ')
		}
		b.WriteString(text)
	}
	return b.String()
}

// KnowsWord reports whether a literal of the shape is this word.
func (s *Shape) KnowsWord(word string) bool {
	return s.Op == Literal && s.Word == word || slices.ContainsFunc(s.Subs, func(sub *Shape) bool { return sub.KnowsWord(word) })
}
