// Package carried is the library that comes with newmake, read beforehand. Reading its
// text takes a process longer than planning a batch. The text, in package stdlib, is
// what counts: written.go is made of it by `go test ./lang/check -update`, and a test
// there holds each entry against what reading the text gives.
package carried

import (
	"newmake/lang/diag"
	"newmake/lang/recipe"
)

// Entry is an entry of the library by its sort and name, made anew at each call:
// *recipe.Grain, *recipe.Yeast and so on; nil if there is none. Places in it are in the
// text that it was read from, which of gives by the name of its file.
func Entry(sort, name string, of func(file string) *diag.Source) any {
	for i := range written {
		if e := &written[i]; e.name == name && e.sort == sort {
			return e.read(from{of(e.file)})
		}
	}
	return nil
}

// entry is one entry of the library. It is made when it is asked for.
type entry struct {
	sort, name string
	file       string
	read       func(in from) any
}

// from is the text of an entry.
type from struct{ src *diag.Source }

func (in from) span(start, end int) diag.Span {
	return diag.Span{Src: in.src, Start: start, End: end}
}

// line is what an entry keeps of the line of one field.
type line struct {
	field      string
	start, end int
	source     string
	low, high  float64 // the range that holds it 9 times in 10; the same where none is stated
}

// entry is what every entry of the library carries.
func (in from) entry(name, doc string, at diag.Span, lines []line) recipe.Entry {
	e := recipe.Entry{
		Name: name, Doc: doc, At: at,
		Source: make(map[string]string, len(lines)), Where: make(map[string]diag.Span, len(lines)),
	}
	for i := range lines {
		l := &lines[i]
		e.Where[l.field] = in.span(l.start, l.end)
		if l.source != "" {
			e.Source[l.field] = l.source
		}
		if l.low < l.high {
			if e.Within == nil {
				e.Within = map[string]recipe.Within{}
			}
			e.Within[l.field] = recipe.Within{Low: l.low, High: l.high}
		}
	}
	return e
}
