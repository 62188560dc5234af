package assist

import (
	"slices"

	"newmake/lang"
	"newmake/lang/diag"
	"newmake/lang/quantity"
	"newmake/lang/schema"
)

// mostItems is how long a line is looked at: more stand in no example.
const mostItems = 64

// expected gives the words and slots that a shape wants next after some items; none
// if they do not fit it.
func expected(shape *schema.Shape, items []lang.Item) []*schema.Shape {
	if len(items) > mostItems {
		return nil
	}
	e := &expecting{items: items}
	e.from(shape, 0, func(int) {})
	return e.want
}

type expecting struct {
	items []lang.Item
	want  []*schema.Shape
	steps int
}

// mostSteps bounds the search in a shape of many parts that may be left out.
const mostSteps = 20_000

// from holds a part of the shape against the items from one on, and goes on with
// every item at which it may end.
func (e *expecting) from(s *schema.Shape, i int, then func(int)) {
	if e.steps++; e.steps > mostSteps {
		return
	}
	switch s.Op {
	case schema.Seq:
		e.seq(s.Subs, i, then)
	case schema.Alt:
		for _, sub := range s.Subs {
			e.from(sub, i, then)
		}
	case schema.Opt:
		then(i)
		e.from(s.Subs[0], i, then)
	case schema.Star:
		then(i)
		e.from(s.Subs[0], i, func(end int) {
			if end > i {
				e.from(s, end, then)
			}
		})
	default:
		switch {
		case i == len(e.items):
			if !slices.Contains(e.want, s) {
				e.want = append(e.want, s)
			}
		case takes(s, &e.items[i]):
			then(i + 1)
		}
	}
}

func (e *expecting) seq(subs []*schema.Shape, i int, then func(int)) {
	if len(subs) == 0 {
		then(i)
		return
	}
	e.from(subs[0], i, func(end int) { e.seq(subs[1:], end, then) })
}

// takes reports whether a slot or a word may take an item.
func takes(s *schema.Shape, it *lang.Item) bool {
	if s.Op == schema.Literal {
		return it.Text == s.Word && it.Kind != lang.String
	}
	switch {
	case s.Kind.Names != "":
		return it.Kind == lang.Word || it.Kind == lang.String
	case !s.Kind.IsQuantity():
		return it.Kind == s.Kind.Item
	case s.Range != (it.Kind == lang.Range), it.Kind != lang.Number && it.Kind != lang.Range:
		return false
	case s.Kind.Kind == quantity.None:
		return true
	}
	_, err := quantity.ToSI(it.Value, it.Unit, s.Kind.Kind)
	return err == nil
}

func source(text []byte) *diag.Source { return diag.NewSource("", text) }
