package sheet

import (
	"fmt"
	"strings"

	"newmake/compile/show/markup"
)

// quote writes texts as one string of CSS, for the heads and feet of pages.
// html/template would take a string of CSS for an address. Whatever is not a
// plain letter, digit or space is written by its number (CSS Syntax 3, section
// 4.3.7), so that nothing in it can end the string or the style element.
func quote(texts ...string) markup.CSS {
	var b strings.Builder
	b.WriteByte('"')
	for _, r := range strings.Join(texts, "") {
		switch {
		case r >= 'a' && r <= 'z', r >= 'A' && r <= 'Z', r >= '0' && r <= '9', r == ' ':
			b.WriteRune(r)
		default:
			fmt.Fprintf(&b, `\%06x `, r)
		}
	}
	b.WriteByte('"')
	return markup.CSS(b.String())
}

// headName is how much of a batch's name stands at the head of each page.
const headName = 60

// runningName is how much of it stands beside the part, the day and the house.
const runningName = 24

// Head is the batch's name, cut to the room at the head of a page.
func (v *view) Head() string {
	return cut(v.Batch.Name, runningName)
}

// RunHead is the number of the run, or room for it where none is opened.
func (v *view) RunHead() string {
	if v.Opened == nil {
		return "________"
	}
	return cut(v.Opened.Number, runningName/2)
}

// HouseHead is the house's name, likewise.
func (v *view) HouseHead() string { return cut(v.Plant.Name, headName/2) }

func cut(s string, most int) string {
	if r := []rune(s); len(r) > most {
		return string(r[:most-1]) + "\u2026"
	}
	return s
}

// Long reports whether the batch's name wants smaller letters on the cover.
func (v *view) Long() bool { return len([]rune(v.Batch.Name)) > headName/2 }

// Version says which text a sheet was made from.
func (v *view) Version() string { return v.Source.String() }
