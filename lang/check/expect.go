package check

import (
	"fmt"
	"math"
	"slices"

	"newmake/lang/diag"
	"newmake/lang/quantity"
	"newmake/lang/recipe"
)

// Promise is something a batch may promise of its own plan.
type Promise struct {
	What  string
	Kinds []quantity.Kind // in which it may be promised
	Doc   string
}

// Promises is what may stand after `expect`.
var Promises = []Promise{
	{"original-gravity", []quantity.Kind{quantity.Gravity}, "gravity of the wort, from the grain alone"},
	{"final-gravity", []quantity.Kind{quantity.Gravity}, "gravity of the finished wash"},
	{"wash", []quantity.Kind{quantity.Volume, quantity.Strength}, "the wash, its volume or its strength"},
	{"low-wines", []quantity.Kind{quantity.Volume, quantity.Strength}, "the low wines, their volume or strength"},
	{"hearts", []quantity.Kind{quantity.Volume, quantity.Strength, quantity.ProofGallons}, "the hearts, their volume, strength or proof gallons"},
	{"feints", []quantity.Kind{quantity.Volume, quantity.Strength}, "the feints, their volume or strength"},
	{"pure-alcohol", []quantity.Kind{quantity.Volume}, "pure alcohol in the hearts"},
	{"casks", []quantity.Kind{quantity.Number}, "casks filled"},
	{"leftover", []quantity.Kind{quantity.Volume}, "what is left over when the casks are full"},
	{"mash", []quantity.Kind{quantity.Duration}, "how long the mash takes"},
	{"dry", []quantity.Kind{quantity.Duration}, "when the sugar is gone"},
	{"strip", []quantity.Kind{quantity.Duration}, "how long the wash run takes"},
	{"spirit", []quantity.Kind{quantity.Duration}, "how long the spirit run takes"},
}

var expectField = &Field{
	Name: "expect", Shape: `what:NAME QUANTITY ["within" margin:QUANTITY]`, Repeat: true, Key: "what", KeyKind: "quantity", Example: "expect hearts 38 gal within 2 gal",
	Doc: "A promise that the plan has to keep; the margin is written, never guessed.",
}

// expects reads the promises.
func (b *builder) expects(n *node) {
	for i, l := range n.all("expect") {
		b.where(fmt.Sprintf("expect.%d", i+1), l.at())
		if e, ok := b.expect(l); ok {
			b.batch.Expect = append(b.batch.Expect, e)
		}
	}
}

func (b *builder) expect(l *node) (recipe.Expect, bool) {
	what, q, margin := l.get("what"), l.get("quantity"), l.get("margin")
	e := recipe.Expect{What: what.text(), Unit: q.item.Unit, At: l.at()}
	at := slices.IndexFunc(Promises, func(p Promise) bool { return p.What == e.What })
	if at < 0 {
		var known []string
		for _, p := range Promises {
			known = append(known, p.What)
		}
		b.add(unknownName("promise", what, known))
		return e, false
	}
	p := Promises[at]
	for _, k := range p.Kinds {
		si, ok := toSI(q.item.Value, q.item.Unit, k)
		if !ok {
			continue
		}
		e.Kind, e.Value = k, si
		if k == quantity.Strength {
			e.Strength = q.strength()
		}
		if margin != nil {
			return b.within(e, margin)
		}
		return e, true
	}
	d := diag.Diagnostic{
		Code: diag.CodeWrongKind, Summary: fmt.Sprintf("%s can't be promised as %s", show(what.item), show(q.item)), At: q.at(),
		Help: fmt.Sprintf("%s: %s", p.Doc, kindHelp(p.Kinds)),
	}
	if q.item.Unit == "" {
		d.Code = diag.CodeNoUnit
		d.Summary = fmt.Sprintf("`%s` needs a unit: %s is wanted", q.item.Num, kindList(p.Kinds))
	}
	b.add(d)
	return e, false
}

// within reads the margin, in any unit of the promise's kind.
func (b *builder) within(e recipe.Expect, c *capture) (recipe.Expect, bool) {
	si, ok := toSI(c.item.Value, c.item.Unit, e.Kind)
	sameBasis := e.Kind != quantity.Strength || c.strength().Basis == e.Strength.Basis
	if !ok || !sameBasis {
		b.add(diag.Diagnostic{
			Code: diag.CodeWrongKind, Summary: fmt.Sprintf("the margin %s is not in the unit of what is promised", show(c.item)), At: c.at(),
			Help: "write it in the same unit, as in `expect hearts 38 gal within 2 gal`",
		})
		return e, false
	}
	if e.Kind == quantity.Gravity && c.item.Unit == "plato" {
		si--
	}
	e.Tolerance = math.Abs(si)
	return e, true
}
