package words

import (
	"regexp"
	"slices"
	"strings"
	"sync"

	"newmake/lang/quantity"
)

// pairs are the words of the trade that have others in the United States. A longer one
// stands before what is in it.
var pairs = []pair{
	{"liquor, water and backset", "mash water, with backset"},
	{"liquor to grist", "mash water to grain"},
	{"liquor and additions", "water and additions"},
	{"liquor", "mash water"},
	{"hot liquor", "mash water"},
	{"pot ale", "stillage"},
	{"spent lees", "stillage"},
	{"lees", "stillage"},
	{"draff", "spent grain"},
	{"spirit safe", "parrot"},
}

type pair struct{ scottish, american string }

// Trade gives a sentence the trade's words of a reader's system: stillage, spent grain,
// mash water and a parrot in the United States, pot ale, spent lees, draff, liquor and a
// spirit safe elsewhere. What stands in quotes or backquotes stays, and so does a tank's
// name and a word of the language with a hyphen; and a text that has a word and its
// counterpart, for it explains one by the other. Both leaves the text as it is.
func Trade(text string, to quantity.System) string {
	if to == quantity.Both || !tradeHints(text, to) {
		return text
	}
	swap := swapOf(to)
	if swap.explains(text) {
		return text
	}
	var b strings.Builder
	done := 0
	for _, m := range quoted().FindAllStringIndex(text, -1) {
		b.WriteString(swap.words(text[done:m[0]]))
		b.WriteString(text[m[0]:m[1]])
		done = m[1]
	}
	b.WriteString(swap.words(text[done:]))
	return b.String()
}

// tradeHints says quickly whether a text may have a word that is not of a reader's system.
func tradeHints(text string, to quantity.System) bool {
	text = strings.ToLower(text)
	return slices.ContainsFunc(hints[to](), func(word string) bool { return strings.Contains(text, word) })
}

// hints are, by the system of a reader, the words of the other one; of those that are in
// one another, the shortest.
var hints = map[quantity.System]func() []string{
	quantity.US: sync.OnceValue(func() []string { return shortest(func(p pair) string { return p.scottish }) }),
	quantity.SI: sync.OnceValue(func() []string { return shortest(func(p pair) string { return p.american }) }),
}

func shortest(side func(pair) string) (out []string) {
	for _, p := range pairs {
		word := side(p)
		within := func(q pair) bool { return side(q) != word && strings.Contains(word, side(q)) }
		if !slices.ContainsFunc(pairs, within) && !slices.Contains(out, word) {
			out = append(out, word)
		}
	}
	return out
}

var quoted = sync.OnceValue(func() *regexp.Regexp { return regexp.MustCompile("`[^`]*`|\"[^\"]*\"") })

// swap turns the words of one system into those of the other.
type swap struct {
	from  *regexp.Regexp
	to    map[string]string
	there *regexp.Regexp // the words that it leads to
}

var swaps = map[quantity.System]func() swap{
	quantity.US: sync.OnceValue(func() swap { return newSwap(false) }),
	quantity.SI: sync.OnceValue(func() swap { return newSwap(true) }),
}

func swapOf(s quantity.System) swap { return swaps[s]() }

func newSwap(back bool) swap {
	s := swap{to: map[string]string{}}
	var from, there []string
	for _, p := range pairs {
		old, other := p.scottish, p.american
		if back {
			old, other = other, old
		}
		if s.to[old] == "" { // of several the first is the word
			s.to[old] = other
			from = append(from, old)
		}
		if !slices.Contains(there, other) {
			there = append(there, other)
		}
	}
	s.from = regexp.MustCompile(`(?i)\b(` + strings.Join(from, "|") + `)\b`)
	s.there = regexp.MustCompile(`(?i)\b(` + strings.Join(there, "|") + `)\b`)
	return s
}

// explains reports whether a text has words of both systems for one thing.
func (s swap) explains(text string) bool {
	there := s.there.FindAllString(text, -1)
	if there == nil {
		return false
	}
	for _, word := range s.from.FindAllString(text, -1) {
		other := s.to[strings.ToLower(word)]
		if slices.ContainsFunc(there, func(t string) bool { return strings.EqualFold(t, other) }) {
			return true
		}
	}
	return false
}

func (s swap) words(text string) string {
	var b strings.Builder
	done := 0
	for _, m := range s.from.FindAllStringIndex(text, -1) {
		before, after := text[:m[0]], text[m[1]:]
		if strings.HasSuffix(before, "-") || strings.HasPrefix(after, "-") || isTank(before, after) {
			continue
		}
		word := text[m[0]:m[1]]
		other := s.to[strings.ToLower(word)]
		switch {
		case word == strings.ToUpper(word):
			other = strings.ToUpper(other)
		case word[0] != strings.ToLower(word)[0]:
			other = strings.ToUpper(other[:1]) + other[1:]
		}
		b.WriteString(text[done:m[0]] + other)
		done = m[1]
	}
	return b.String() + text[done:]
}

// isTank reports whether a word is part of a tank's name, or of what a tank is for.
func isTank(before, after string) bool {
	before = strings.ToLower(before)
	return strings.HasPrefix(after, " tank") || strings.HasSuffix(before, "for hot ") || strings.HasSuffix(before, "for cold ")
}
