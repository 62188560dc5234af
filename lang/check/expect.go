package check

import (
	"fmt"
	"math"
	"slices"
	"strconv"

	"newmake/lang/diag"
	"newmake/lang/quantity"
	"newmake/lang/recipe"
	"newmake/lang/schema"
	"newmake/lang/wording"
)

// promised lists what may be promised.
func promised() []string {
	var names []string
	for _, p := range schema.Promises {
		names = append(names, p.What)
	}
	return names
}

// expects reads the promises.
func (b *builder) expects(n *node) {
	for i, l := range n.all("expect") {
		b.where(recipe.PathExpect.Child(strconv.Itoa(i+1)), l.at())
		if e, ok := b.expect(l); ok {
			b.batch.Expect = append(b.batch.Expect, e)
		}
	}
}

func (b *builder) expect(l *node) (recipe.Expect, bool) {
	what, q, margin := l.get("what"), l.get("quantity"), l.get("margin")
	e := recipe.Expect{What: what.text(), Unit: q.item.Unit, At: l.at()}
	at := slices.IndexFunc(schema.Promises, func(p schema.Promise) bool { return p.What == e.What })
	if at < 0 {
		b.add(unknownName("promise", what, promised))
		return e, false
	}
	p := schema.Promises[at]
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
		Code: diag.CodeWrongKind, Summary: fmt.Sprintf("%s can't be promised as %s", wording.Item(what.item), wording.Item(q.item)), At: q.at(),
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
			Code: diag.CodeWrongKind, Summary: fmt.Sprintf("the margin %s is not in the unit of what is promised", wording.Item(c.item)), At: c.at(),
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
