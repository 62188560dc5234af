package tree

import (
	"newmake/lang"
	"newmake/lang/diag"
)

// When is what a line begins with in a block whose lines may be timed: a day or a
// date, and a clock with its offset from UTC. Each may be left out.
type When struct {
	Day, Date, Clock, Offset *lang.Item
}

// IsZero reports whether the line begins with none of them.
func (w When) IsZero() bool { return w == When{} }

// At is the place of all of it.
func (w When) At() (at diag.Span) {
	for _, it := range []*lang.Item{w.Day, w.Date, w.Clock, w.Offset} {
		switch {
		case it == nil:
		case at.IsZero():
			at = it.At
		default:
			at = at.To(it.At)
		}
	}
	return at
}

// whenOf parts the time from a line, and gives what follows it.
func whenOf(items []lang.Item) (w When, rest []lang.Item) {
	take := func(to **lang.Item, is func(*lang.Item) bool) {
		if len(items) > 0 && is(&items[0]) {
			*to, items = &items[0], items[1:]
		}
	}
	take(&w.Day, func(it *lang.Item) bool { return it.Kind == lang.Word && lang.IsDay(it.Text) })
	if w.Day == nil {
		take(&w.Date, func(it *lang.Item) bool { return it.Kind == lang.Date })
	}
	take(&w.Clock, func(it *lang.Item) bool { return it.Kind == lang.Clock && !signed(it) })
	if w.Clock != nil {
		take(&w.Offset, func(it *lang.Item) bool { return it.Kind == lang.Clock && signed(it) })
	}
	return w, items
}

// signed reports whether a clock is an offset from UTC.
func signed(it *lang.Item) bool { return it.Text[0] == '+' || it.Text[0] == '-' }
