package explain

import "strings"

// Example is what the info string of a block of code says of it. The words are
//
//	newmake         text of the language
//	folder          a listing of files, "a -> b" for a link
//	wrong | right   what a page says that the example is
//	in cask         the lines stand in that block of a batch; `in batch` for the
//	                batch itself, `in plant` for the plant
//	house           this is all of house.batch, and the house has no other file
//	check | plan    it is to be checked, or computed as well
//	fragment        some lines, or one, out of their place
//	file NAME       it is that file of the house which the document's other
//	                examples are part of
//	also NM0950     that is said too
//	units           it is about its units: they stay for whoever counts in others
//	as latin1       the bytes are made from the text in that way (see the tests)
type Example struct {
	Lang  string // newmake, folder, or what else stands first
	Role  string // wrong, right, check, plan, fragment, or ""
	In    string
	All   bool     // house
	Also  []string // codes
	As    string
	File  string
	Units bool
}

// ReadInfo reads an info string. It says whether it knows every word.
func ReadInfo(info string) (Example, bool) {
	words := strings.Fields(info)
	var e Example
	if len(words) == 0 {
		return e, true
	}
	e.Lang, words = words[0], words[1:]
	for len(words) > 0 {
		word, rest := words[0], words[1:]
		next := ""
		if len(rest) > 0 {
			next = rest[0]
		}
		switch word {
		case "wrong", "right", "example", "check", "plan", "fragment":
			e.Role = word
		case "house":
			e.All = true
		case "units":
			e.Units = true
		case "file":
			e.File, rest = next, rest[min(1, len(rest)):]
		case "in":
			e.In, rest = next, rest[min(1, len(rest)):]
		case "also":
			e.Also, rest = append(e.Also, next), rest[min(1, len(rest)):]
		case "as":
			e.As, rest = next, rest[min(1, len(rest)):]
		default:
			return e, false
		}
		words = rest
	}
	return e, true
}
