package lang

import (
	"fmt"
	"strings"
	"unicode"
	"unicode/utf8"
)

// latinLike maps Cyrillic and Greek letters to the Latin letters that they look
// like (from the Unicode confusables of UTS 39, single letters only, from memory).
var latinLike = map[rune]rune{
	'а': 'a', 'с': 'c', 'ԁ': 'd', 'е': 'e', 'һ': 'h', 'і': 'i', 'ј': 'j', 'ӏ': 'l', 'о': 'o', 'р': 'p',
	'ԛ': 'q', 'ѕ': 's', 'у': 'y', 'х': 'x', 'ԝ': 'w', 'г': 'r', 'к': 'k', 'м': 'm', 'н': 'h', 'т': 't', 'в': 'b', 'п': 'n',
	'А': 'A', 'В': 'B', 'С': 'C', 'Е': 'E', 'Н': 'H', 'І': 'I', 'Ј': 'J', 'К': 'K', 'М': 'M', 'О': 'O',
	'Р': 'P', 'Ѕ': 'S', 'Т': 'T', 'У': 'Y', 'Х': 'X', 'Ԝ': 'W',
	'α': 'a', 'ο': 'o', 'ν': 'v', 'ρ': 'p', 'τ': 't', 'υ': 'u', 'ι': 'i', 'κ': 'k', 'ε': 'e', 'γ': 'y', 'ω': 'w', 'η': 'n', 'χ': 'x',
	'Α': 'A', 'Β': 'B', 'Ε': 'E', 'Ζ': 'Z', 'Η': 'H', 'Ι': 'I', 'Κ': 'K', 'Μ': 'M', 'Ν': 'N', 'Ο': 'O',
	'Ρ': 'P', 'Τ': 'T', 'Υ': 'Y', 'Χ': 'X',
	'ı': 'i', 'ɑ': 'a', 'ɡ': 'g',
}

// LookAlike says whether a word may pass for another on the screen: letters of
// two alphabets in one word, fullwidth letters, or a whole word that could be
// written in Latin letters. It gives the word that it looks like, and which
// letter it is that does so. A word honestly in another script is no look-alike.
func LookAlike(word string) (suggestion, desc string, ok bool) {
	ascii := true
	for i := range len(word) {
		ascii = ascii && word[i] < 0x80
	}
	if ascii {
		return "", "", false
	}
	var b strings.Builder
	first, place, n := rune(0), 0, 0
	for _, r := range word {
		n++
		like, odd := latinLike[r], true
		switch {
		case like != 0:
		case isFullwidth(r):
			like = latin(r)
		default:
			like, odd = r, false
		}
		if odd && first == 0 {
			first, place = r, n
		}
		b.WriteRune(like)
		if unicode.IsLetter(like) && !unicode.Is(unicode.Latin, like) {
			return "", "", false // a letter with no Latin twin: the word is of its own script
		}
	}
	if first == 0 {
		return "", "", false
	}
	return b.String(), fmt.Sprintf("letter %d is %s", place, runeName(first)), true
}

// MixedAlphabets says whether a word of a name has letters of two alphabets, one
// of which passes for the other. It gives the name in Latin letters, and which
// letter it is. A name whose words are each of one alphabet is as it should be.
func MixedAlphabets(name string) (suggestion, desc string, ok bool) {
	for i := range len(name) {
		if ok = name[i] >= 0x80; ok {
			break
		}
	}
	if !ok {
		return "", "", false
	}
	out, place := []rune(name), 0
	for start := 0; start < len(out); {
		end := start
		for end < len(out) && (unicode.IsLetter(out[end]) || unicode.IsMark(out[end])) {
			end++
		}
		if at := mixedAt(out[start:end]); at >= 0 {
			if desc == "" {
				place = start + at
				desc = fmt.Sprintf("letter %d is %s", place+1, runeName(out[place]))
			}
			for i := start; i < end; i++ {
				out[i] = latin(out[i])
			}
		}
		start = max(end, start+1)
	}
	return string(out), desc, desc != ""
}

// Unseen says whether a name holds what nobody sees: a character without a width, a space of
// another kind, or one at an end. It gives the name without, and what it is.
func Unseen(name string) (suggestion, desc string, ok bool) {
	if plain(name) {
		return "", "", false
	}
	runes, kept := []rune(name), make([]rune, 0, len(name))
	for i, r := range runes {
		gone, space := isUnseen(r) && !joins(runes[:i], r), r >= utf8.RuneSelf && unicode.IsSpace(r)
		switch {
		case space:
			kept = append(kept, ' ')
		case !gone:
			kept = append(kept, r)
		}
		if desc == "" && (gone || space) {
			desc = fmt.Sprintf("character %d is %s", i+1, runeName(r))
		}
	}
	suggestion = strings.TrimSpace(string(kept))
	switch {
	case suggestion == name:
		return "", "", false
	case desc != "":
	case name[0] == ' ':
		desc = "it begins with a space"
	default:
		desc = "it ends in a space"
	}
	return suggestion, desc, true
}

// plain reports whether a name is ASCII with no space at an end.
func plain(name string) bool {
	for i := range len(name) {
		if name[i] >= utf8.RuneSelf {
			return false
		}
	}
	return name == strings.TrimSpace(name)
}

// isUnseen reports whether a character has no width, whatever stands beside it.
func isUnseen(r rune) bool {
	put, is := typeInstead[r]
	return is && put == ""
}

// joins reports whether a joiner has something to join: the character before it is of a script
// that has joined letters, or a picture (Unicode Standard, chapter 23.2).
func joins(before []rune, r rune) bool {
	if r != '\u200c' && r != '\u200d' || len(before) == 0 {
		return false
	}
	last := before[len(before)-1]
	return last >= utf8.RuneSelf && !unicode.Is(unicode.Latin, last) && !unicode.IsSpace(last) && !isUnseen(last)
}

// mixedAt finds the first letter of a word that passes for one of the word's own
// alphabet, Latin, and is of another; -1 if there is none.
func mixedAt(word []rune) int {
	at, latins := -1, 0
	for i, r := range word {
		switch {
		case isFullwidth(r):
			return i
		case latinLike[r] != 0 && !unicode.Is(unicode.Latin, r):
			if at < 0 {
				at = i
			}
		case unicode.Is(unicode.Latin, r):
			latins++
		}
	}
	if latins == 0 {
		return -1
	}
	return at
}

// latin is the Latin letter that another passes for.
func latin(r rune) rune {
	switch like := latinLike[r]; {
	case isFullwidth(r):
		return r - '！' + '!'
	case like != 0 && !unicode.Is(unicode.Latin, r):
		return like
	}
	return r
}

// isFullwidth reports whether a character is one of the fullwidth forms, which stand in
// the order of ASCII.
func isFullwidth(r rune) bool { return r >= '！' && r <= '～' }
