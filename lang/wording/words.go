// Package wording writes what messages about a text are made of: its words in
// backquotes, its items, numbers with no more digits than they need, limits in the
// reader's units. Lists and counts, which everything that prints has, are package words.
package wording

import (
	"strconv"
	"strings"

	"newmake/lang"
	"newmake/lang/words"
)

// Quoted puts each word between backquotes.
func Quoted(words []string) []string {
	out := make([]string, len(words))
	for i, w := range words {
		out[i] = "`" + w + "`"
	}
	return out
}

// Item writes an item as a message names it.
func Item(it *lang.Item) string {
	switch it.Kind {
	case lang.String:
		return strconv.Quote(it.Text)
	case lang.Number, lang.Range:
		return "`" + strings.TrimSpace(it.At.Text()) + "`"
	}
	return "`" + it.Text + "`"
}

// OrList writes words as a choice: `a`, `b` or `c`.
func OrList(choices []string) string { return words.Or(Quoted(choices)) }

// Article puts a or an before a word.
func Article(word string) string {
	if word != "" && strings.IndexByte("aeiou", word[0]) >= 0 {
		return "an `" + word + "`"
	}
	return "a `" + word + "`"
}
