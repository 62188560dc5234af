// Package vocabulary finds in a taster's free words those that have a cause that is known,
// and those that are nearly such a word.
package vocabulary

import (
	"cmp"
	"maps"
	"slices"
	"strings"
	"unicode"

	"newmake/lang/recipe"
	"newmake/lang/spelling"
)

// Words are the words of all causes.
type Words struct {
	entries []entry             // those of more words first
	single  map[string]*entry   // each word that stands in one, alone or among others
	initial map[string][]string // the same by their first letter, in the order of the alphabet
}

type entry struct {
	tokens []string
	word   recipe.AromaWord
	of     *recipe.Aroma
}

// Hit is a word that stands in a text.
type Hit struct {
	Aroma *recipe.Aroma
	Word  recipe.AromaWord
}

// Slip is a word of a text, from one byte to another, that is nearly another.
type Slip struct {
	Start, End  int
	Word, Group string
}

// Of are the words of some causes. A word that stands at two is the first's, in the order
// of their names; what a house has written goes before the library's.
func Of(all map[string]*recipe.Aroma) *Words {
	w := &Words{single: map[string]*entry{}, initial: map[string][]string{}}
	seen := map[string]bool{}
	names := slices.SortedFunc(maps.Keys(all), func(a, b string) int {
		return cmp.Or(cmp.Compare(house(all[b]), house(all[a])), cmp.Compare(a, b))
	})
	for _, name := range names {
		for _, word := range all[name].Words {
			e := entry{word: word, of: all[name]}
			for _, t := range tokens(word.Word) {
				e.tokens = append(e.tokens, t.text)
			}
			if key := strings.Join(e.tokens, " "); len(e.tokens) > 0 && !seen[key] {
				seen[key] = true
				w.entries = append(w.entries, e)
			}
		}
	}
	slices.SortStableFunc(w.entries, func(a, b entry) int { return cmp.Compare(len(b.tokens), len(a.tokens)) })
	for i := range slices.Backward(w.entries) {
		for _, t := range w.entries[i].tokens {
			if _, had := w.single[t]; !had {
				first := t[:1]
				w.initial[first] = append(w.initial[first], t)
			}
			w.single[t] = &w.entries[i]
		}
	}
	for _, all := range w.initial {
		slices.Sort(all)
	}
	return w
}

func house(a *recipe.Aroma) int {
	if a.House {
		return 1
	}
	return 0
}

// All lists every word with its cause, those of more words first; none of no words.
func (w *Words) All() []Hit {
	if w == nil {
		return nil
	}
	var out []Hit
	for i := range w.entries {
		out = append(out, Hit{w.entries[i].of, w.entries[i].word})
	}
	return out
}

// not are words that say of the next that it is not there.
var not = []string{"no", "not", "without", "never", "hardly"}

// In finds the words that stand in a text, each once, in its order: the longest that fits,
// in the plural too. What the text says is not there is not found.
func (w *Words) In(text string) []Hit {
	var out []Hit
	toks := tokens(text)
	for i := 0; i < len(toks); {
		j := slices.IndexFunc(w.entries, func(e entry) bool { return e.begins(toks[i:]) })
		if j < 0 {
			i++
			continue
		}
		e := &w.entries[j]
		h := Hit{e.of, e.word}
		if (i == 0 || !slices.Contains(not, toks[i-1].text)) && !slices.Contains(out, h) {
			out = append(out, h)
		}
		i += len(e.tokens)
	}
	return out
}

// begins reports whether a text begins with the words.
func (e *entry) begins(toks []token) bool {
	if len(toks) < len(e.tokens) {
		return false
	}
	for i, t := range e.tokens {
		if !isForm(toks[i].text, t) {
			return false
		}
	}
	return true
}

// isForm reports whether a text has a word, as it stands or as more of it or like it: pears,
// buttery, nutty, smoky.
func isForm(said, word string) bool {
	end, ok := strings.CutPrefix(said, word)
	switch {
	case ok:
		return end == "" || end == "s" || end == "es" || end == "y" || end == word[len(word)-1:]+"y"
	case strings.HasSuffix(word, "e"):
		return said == word[:len(word)-1]+"y"
	}
	return false
}

// least is how many letters a word has that is held against others: of short words too
// many are one letter apart.
const least = 5

// Slips finds the words of a text that are nearly one of these: one letter too many, too
// few or in another's place, of a longer word one that is another, or a letter doubled that
// is not, or the other way round. Another form of a word is none: oaky, grassy, burnt.
func (w *Words) Slips(text string) []Slip {
	var out []Slip
	for _, t := range tokens(text) {
		if len(t.text) < least || w.single[t.text] != nil {
			continue
		}
		for _, near := range w.initial[t.text[:1]] {
			if len(near) >= least && slipped(t.text, near) {
				out = append(out, Slip{t.start, t.end, near, w.single[near].of.Name})
				break
			}
		}
	}
	return out
}

// longer is from how many letters on a word may have one letter that is another.
const longer = 7

func slipped(said, word string) bool {
	switch {
	case strings.HasPrefix(said, word) || strings.HasPrefix(word, said):
		return false
	case undoubled(said) == undoubled(word):
		return true
	case len(said) == len(word) && sortedLetters(said) != sortedLetters(word) && len(word) < longer:
		return false
	}
	return spelling.Distance(said, word) == 1
}

func sortedLetters(s string) string {
	r := []rune(s)
	slices.Sort(r)
	return string(r)
}

// undoubled is a word with each letter that stands twice standing once.
func undoubled(s string) string { return string(slices.Compact([]rune(s))) }

// token is a word of a text, in small letters, and where it stands.
type token struct {
	text       string
	start, end int
}

func tokens(text string) []token {
	var out []token
	start := -1
	for i, r := range text + " " {
		letter := i < len(text) && (unicode.IsLetter(r) || unicode.IsDigit(r))
		switch {
		case letter && start < 0:
			start = i
		case !letter && start >= 0:
			out = append(out, token{strings.ToLower(text[start:i]), start, i})
			start = -1
		}
	}
	return out
}
