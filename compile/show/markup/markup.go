// Package markup writes pages of HTML. What writes them is Go that was made of the
// templates beside it (precompile): they are read, typed and escaped when newmake is
// built, and not each time that it runs. So no page needs html/template, which looks
// methods up by name and so keeps every method of every type in the program.
//
// Text is escaped as html/template escapes it, byte for byte; tests hold each page
// against what html/template makes of the same templates.
package markup

import (
	"fmt"
	"strconv"
	"strings"
)

// HTML is text that is a part of a page as it stands.
type HTML string

// CSS is text that is a part of a style sheet as it stands.
type CSS string

// Page is what has been written.
type Page struct{ strings.Builder }

// Raw writes what stands in a template, or is markup already. It is called, never put in
// place: pages call it thousands of times, and half of their code was its body.
//
//go:noinline
func (p *Page) Raw(s string) { p.WriteString(s) }

// Text writes a text, in an element or in an attribute between quotes.
func (p *Page) Text(s string) {
	from := 0
	for i := 0; i < len(s); i++ {
		if to := escapes[s[i]]; to != "" {
			p.WriteString(s[from:i])
			p.WriteString(to)
			from = i + 1
		}
	}
	p.WriteString(s[from:])
}

// Int writes a whole number.
func (p *Page) Int(n int) { p.WriteString(strconv.Itoa(n)) }

// Float writes a number as short as it can be read back.
func (p *Page) Float(x float64) { p.Text(fmt.Sprint(x)) }

// Fragment writes what stands behind the # of an address, in an attribute between quotes.
func (p *Page) Fragment(s string) {
	const digits = "0123456789abcdef"
	for i := range len(s) {
		switch c := s[i]; {
		case c >= '0' && c <= '9', c >= 'a' && c <= 'z', c >= 'A' && c <= 'Z', c == '-', c == '.', c == '_', c == '~':
			p.WriteByte(c)
		default:
			p.WriteByte('%')
			p.WriteByte(digits[c>>4])
			p.WriteByte(digits[c&15])
		}
	}
}

// Name writes a name into a style sheet: an id, a class. One that holds anything but
// letters, digits and - does not reach the page, and what stands there instead harms nothing.
func (p *Page) Name(s string) {
	for i := range len(s) {
		if c := s[i]; c != '-' && (c < '0' || c > '9') && (c < 'a' || c > 'z') && (c < 'A' || c > 'Z') {
			p.WriteString("ZgotmplZ")
			return
		}
	}
	p.WriteString(s)
}

var escapes = [256]string{
	0: "\uFFFD", '"': "&#34;", '&': "&amp;", '\'': "&#39;", '+': "&#43;", '<': "&lt;", '>': "&gt;",
}
