// Package wording writes what messages are made of: lists in words, numbers with
// no more digits than they need, limits in the reader's units.
package wording

import (
	"strconv"
	"strings"

	"newmake/lang"
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
func OrList(words []string) string {
	quoted := make([]string, len(words))
	for i, w := range words {
		quoted[i] = "`" + w + "`"
	}
	return Or(quoted)
}

func Or(parts []string) string { return join(parts, "or") }

// And writes parts as a list: a, b and c.
func And(parts []string) string { return join(parts, "and") }

func join(parts []string, last string) string {
	switch len(parts) {
	case 0:
		return "nothing"
	case 1:
		return parts[0]
	}
	return strings.Join(parts[:len(parts)-1], ", ") + " " + last + " " + parts[len(parts)-1]
}

// Article puts a or an before a word.
func Article(word string) string {
	if word != "" && strings.IndexByte("aeiou", word[0]) >= 0 {
		return "an `" + word + "`"
	}
	return "a `" + word + "`"
}
