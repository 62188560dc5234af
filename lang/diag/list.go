package diag

import (
	"slices"
	"strings"

	"newmake/lang/sorting"
)

// Add appends a diagnostic.
func (l *List) Add(d Diagnostic) { *l = append(*l, d) }

// Sort orders a list by source, in the order in which sources first appear,
// then by place. What has the same place keeps its order; what has no place
// comes last.
func (l List) Sort() {
	place := make(map[*Source]int)
	for _, d := range l {
		if _, seen := place[d.At.Src]; !seen && d.At.Src != nil {
			place[d.At.Src] = len(place)
		}
	}
	last := len(place)
	rank := func(d Diagnostic) int {
		if d.At.Src == nil {
			return last
		}
		return place[d.At.Src]
	}
	sorting.Stable(l, func(a, b Diagnostic) int {
		if r := rank(a) - rank(b); r != 0 {
			return r
		}
		return a.At.Start - b.At.Start
	})
}

// HasErrors reports whether any of the list is an Error.
func (l List) HasErrors() bool {
	return slices.ContainsFunc(l, func(d Diagnostic) bool { return d.Severity == Error })
}

// Count says how many of the list have a severity.
func (l List) Count(s Severity) int {
	n := 0
	for _, d := range l {
		switch {
		case d.standsForMore():
			n += d.stands[s]
		case d.Severity == s:
			n++
		}
	}
	return n
}

// Dedup gives the list without what was said before: the same code at the same
// place in the same words. What stays names the batches of all that said so.
func (l List) Dedup() List {
	type key struct {
		code    Code
		at      Span
		summary string
	}
	first := make(map[key]int, len(l))
	out := l[:0:0]
	for _, d := range l {
		k := key{d.Code, d.At, d.Summary}
		if i, said := first[k]; said {
			out[i].touches(d.Batches)
			continue
		}
		first[k] = len(out)
		out = append(out, d)
	}
	return out
}

// Once is the list with one of two that say the same, each at its own place and of the
// other's: a program marks both, and a person reads it once.
func (l List) Once() List {
	var out List
	for _, d := range l {
		if !slices.ContainsFunc(out, func(o Diagnostic) bool {
			return o.Code == d.Code && o.Summary == d.Summary && len(o.Related) == 1 && len(d.Related) == 1 && o.Related[0].At == d.At && d.Related[0].At == o.At
		}) {
			out = append(out, d)
		}
	}
	return out
}

// Beyond is the diagnostics that another list does not have. Two are the same if their
// code, severity and place are, whatever their words.
func (l List) Beyond(said List) List {
	return slices.DeleteFunc(slices.Clone(l), func(d Diagnostic) bool {
		return slices.ContainsFunc(said, d.isSameCause)
	})
}

// AlsoIn adds, to each diagnostic that another list has too, the batches that it has there.
func (l List) AlsoIn(again List) {
	for i := range l {
		for _, d := range again {
			if l[i].isSameCause(d) {
				l[i].touches(d.Batches)
			}
		}
	}
}

// isSameCause reports whether two have one cause: a code, a severity and a place.
func (d Diagnostic) isSameCause(o Diagnostic) bool {
	return d.At.Src != nil && o.Code == d.Code && o.Severity == d.Severity && o.At == d.At
}

// touches adds batches in which a thing was found too.
func (d *Diagnostic) touches(batches []string) {
	for _, name := range batches {
		if !slices.Contains(d.Batches, name) {
			d.Batches = append(slices.Clip(d.Batches), name)
		}
	}
}

// String is the word for a severity.
func (s Severity) String() string {
	switch s {
	case Error:
		return "error"
	case Warning:
		return "warning"
	default:
		return "note"
	}
}

// Error gives one line for each diagnostic, so that a List can stand where Go
// wants an error. Render gives the whole.
func (l List) Error() string {
	var b strings.Builder
	for i, d := range l {
		if i > 0 {
			b.WriteByte('\n')
		}
		b.WriteString(d.Header())
	}
	return b.String()
}
