package lang

import (
	"fmt"
	"strings"
	"unicode"
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
		case r >= '！' && r <= '～': // fullwidth forms stand in the order of ASCII
			like = r - '！' + '!'
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
	return b.String(), fmt.Sprintf("letter %d is %s", place, RuneName(first)), true
}
