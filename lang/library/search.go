// Package library shows the library of a house, or the built-in one: what a batch may
// use, searched by kind and words, as a page or as JSON.
package library

import (
	"strings"

	"newmake/lang/house"
	"newmake/lang/spelling"
)

// Answer is what a search of the library has found.
type Answer struct {
	Kind  string   // the kind that was asked for; "" is all
	Words []string // that were looked for
	House string   // whose library it is; "" is the built-in one
	Found []house.LibraryItem
	Near  string // the name most like the words, if nothing was found

	all, named, about []house.LibraryItem
}

// Search looks in a library for what words say: a kind may stand first; an entry of
// just the name that follows is shown, and else those that are about the words.
func Search(all []house.LibraryItem, root string, args []string) *Answer {
	a := &Answer{Words: args, House: root, all: all}
	if len(args) > 0 {
		if a.Kind = KindOf(args[0]); a.Kind != "" {
			a.Words = args[1:]
		}
	}
	in := all
	if a.Kind != "" {
		in = only(in, func(i house.LibraryItem) bool { return i.Kind == a.Kind })
	}
	a.named = only(in, func(i house.LibraryItem) bool { return isNamed(i, a.Words) })
	a.about = only(in, func(i house.LibraryItem) bool { return isAbout(i, []string{strings.Join(a.Words, " ")}) })
	if len(a.about) == 0 {
		a.about = only(in, func(i house.LibraryItem) bool { return isAbout(i, a.Words) })
	}
	a.Found = a.named
	if len(a.named) == 0 {
		a.Found = a.about
	}
	if len(a.Found) == 0 {
		a.Near = nearest(strings.Join(a.Words, "-"), in)
	}
	return a
}

// KindOf gives the kind that a word names, in the singular or the plural, or
// "".
func KindOf(word string) string {
	for _, k := range house.LibraryKinds() {
		if word == k || word == k+"s" {
			return k
		}
	}
	return ""
}

func only(all []house.LibraryItem, want func(house.LibraryItem) bool) []house.LibraryItem {
	var out []house.LibraryItem
	for _, i := range all {
		if want(i) {
			out = append(out, i)
		}
	}
	return out
}

// isNamed reports whether the words are an entry's name.
func isNamed(i house.LibraryItem, words []string) bool {
	return len(words) > 0 && (strings.EqualFold(i.Name, strings.Join(words, " ")) || strings.EqualFold(i.Name, strings.Join(words, "-")))
}

// isAbout reports whether every word stands somewhere in an entry.
func isAbout(i house.LibraryItem, words []string) bool {
	text := []string{i.Kind, i.Name, i.Doc, i.From}
	for _, l := range i.Lines {
		text = append(text, l.Field+" "+l.Text, l.Source)
	}
	all := strings.ToLower(strings.Join(text, "\n"))
	for _, w := range words {
		if !strings.Contains(all, strings.ToLower(w)) {
			return false
		}
	}
	return true
}

// nearest is the entry whose name is most like a word, "" if none is.
func nearest(word string, in []house.LibraryItem) string {
	best, distance := "", 3
	if len(word) < 4 {
		distance = 2
	}
	for _, i := range in {
		if d := spelling.Distance(strings.ToLower(word), i.Name); d < distance {
			best, distance = i.Name, d
		}
	}
	return best
}
