package lang

import (
	_ "embed"
	"fmt"
	"strings"
	"unicode"
	"unicode/utf8"

	"newmake/lang/diag"
)

// typeInstead maps characters that look like ours to what to type. An empty
// string means that the character is to be taken out.
var typeInstead = map[rune]string{
	'“': `"`, '”': `"`, '„': `"`, '‟': `"`, '«': `"`, '»': `"`, '＂': `"`, '″': `"`,
	'‘': "'", '’': "'", '‚': "'", '‛': "'", '′': "'", '＇': "'",
	'–': "-", '—': "-", '‐': "-", '‑': "-", '‒': "-", '―': "-", '−': "-", '－': "-", '﹣': "-",
	'…': "..", '‥': "..", '．': ".", '。': ".", '·': ".", '٫': ".",
	'，': ",", '、': ",", '٬': ",",
	'｛': "{", '｝': "}", '％': "%", '٪': "%", '＃': "#", '／': "/", '⁄': "/", '∕': "/", '÷': "/",
	'：': ":", '；': ";", '＝': "=", '℃': "°C", '℉': "°F", '˚': "°", '∘': "°", '゜': "°",
	'\u00ad': "", '\u200b': "", '\u200c': "", '\u200d': "", '\u2060': "", '\ufeff': "",
}

// wordsInstead says what to do about characters of other languages.
var wordsInstead = map[string]string{
	":":  "a word and what follows it need no colon between them: leave a space",
	"=":  "a word and what follows it need no `=` between them: leave a space",
	";":  "take it out, and end the line where more follows: one statement stands on a line",
	"'":  "put a name with an apostrophe in double quotes; feet are `ft`",
	"(":  "brackets have no use here; a remark goes after `#`",
	")":  "brackets have no use here; a remark goes after `#`",
	"[":  "brackets have no use here; a list is parted by commas",
	"]":  "brackets have no use here; a list is parted by commas",
	"*":  "newmake does no sums in the text: write the number itself",
	"+":  "newmake does no sums in the text: write the number itself",
	"-":  "a hyphen joins the parts of a name, as in `charred-oak`; a range is written with two dots and its unit once, `78..88 F`",
	".":  "a point stands inside a number, as in 0.6; after a unit or a word there is none: take it out",
	"@":  "write `at` in its place",
	"~":  "write the number alone; a tolerance is written `within`",
	"±":  "a tolerance is written `within`, as in `promise original-gravity 1.060 within 0.002`",
	"<":  "a limit is written in words: `at most`, `at least`",
	">":  "a limit is written in words: `at most`, `at least`",
	"\\": "a backslash has a use only inside quotes",
	"½":  "write 0.5",
	"¼":  "write 0.25",
	"¾":  "write 0.75",
}

// badChar is the fault of a character that no token begins with.
func badChar(t, next piece) *fault {
	r, _ := utf8.DecodeRuneInString(t.text)
	start := t.start
	f := &fault{code: diag.CodeUnknownChar, start: start, end: start + len(t.text)}
	if strings.HasPrefix(t.text, "//") {
		f.end, f.summary, f.help = start+2, "`//` does not begin a remark", "write `#`"
		f.fix = &edit{start: start, end: start + 2, text: "#", label: "write `#`"}
		return f
	}
	if t.text == "@" {
		f.fix = &edit{start: start, end: start + 1, text: "at", label: "write `at`"}
	}
	if t.text == "." && (next.text == "" || next.text[0] < '0' || next.text[0] > '9') {
		f.fix = &edit{start: start, end: start + 1, text: "", label: "take it out"}
	}
	if ascii, ok := typeInstead[r]; ok {
		f.code = diag.CodeLookAlike
		f.summary = fmt.Sprintf("this is %s, not `%s`", runeName(r), ascii)
		f.help = fmt.Sprintf("type `%s` instead", ascii)
		label := fmt.Sprintf("write `%s`", ascii)
		if ascii == "" {
			f.summary = fmt.Sprintf("here stands an invisible character, %s", runeName(r))
			f.help, label = "take it out", "take it out"
		}
		f.fix = &edit{start: start, end: start + len(t.text), text: ascii, label: label}
		return f
	}
	f.summary = fmt.Sprintf("`%s` has no meaning here", t.text)
	if r >= utf8.RuneSelf {
		f.summary = fmt.Sprintf("%s has no meaning here", runeName(r))
	}
	f.help = wordsInstead[string(r)]
	if next.text == "/" && next.start == start+1 && t.text == "+" { // +/- as one types ±
		f.end, f.summary, f.help = next.start+1, "`+/-` has no meaning here", wordsInstead["±"]
	}
	if f.help == "" {
		f.help = "put it in double quotes if it is part of a name, or after `#` if it is a remark"
	}
	return f
}

// runeNames are the Unicode names of the characters that are met in a recipe by
// mistake: quotes, dashes and spaces, letters that pass for Latin ones, signs. A
// line holds a number and a name, and the first is empty. The test writes it (-update); all names would
// take a megabyte of the program.
//
//go:embed runenames.txt
var runeNames string

// runeName is a character's number and Unicode name: U+2013 EN DASH. A control
// character has no name, and of letters and pictures of other scripts the number
// tells as much.
func runeName(r rune) string {
	number := fmt.Sprintf("%04X", r)
	if unicode.IsControl(r) {
		return "U+" + number
	}
	line := "\n" + number + " "
	at := strings.Index(runeNames, line)
	if at < 0 {
		return "U+" + number
	}
	name, _, _ := strings.Cut(runeNames[at+len(line):], "\n")
	return "U+" + number + " " + name
}
