// Package composed brings text to Unicode's composed form, NFC (UAX 15), so that an accent
// typed in two ways is one letter. The tables are those of golang.org/x/text, but in the
// page for a browser, which has its own, and which they make larger by 30 kB.
package composed

// Form is the composed form of a text.
func Form(text string) string {
	for i := range len(text) {
		if text[i] >= 0x80 {
			return form(text)
		}
	}
	return text
}
