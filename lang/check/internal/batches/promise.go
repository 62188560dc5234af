package batches

import (
	"fmt"
	"math"
	"slices"
	"strconv"

	"newmake/lang"
	"newmake/lang/check/internal/fields"
	"newmake/lang/diag"
	"newmake/lang/quantity"
	"newmake/lang/recipe"
	"newmake/lang/schema"
	"newmake/lang/tree"
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

// readPromises reads the promises.
func readPromises(b *reader, n *tree.Node) {
	for i, l := range n.All("promise") {
		b.where(recipe.PathPromise.Child(strconv.Itoa(i+1)), l.At())
		if e, ok := readPromise(b, l); ok {
			b.batch.Promises = append(b.batch.Promises, e)
		}
	}
}

func readPromise(b *reader, l *tree.Node) (recipe.Promise, bool) {
	what, q, margin := l.Get("what"), l.Get("quantity"), l.Get("margin")
	e := recipe.Promise{What: what.Text(), Unit: q.Item.Unit, At: l.At()}
	if !readRuns(b, l, &e) {
		return e, false
	}
	at := slices.IndexFunc(schema.Promises, func(p schema.Promise) bool { return p.What == e.What })
	if at < 0 {
		b.add(tree.UnknownName("promise", what, promised))
		return e, false
	}
	p := schema.Promises[at]
	for _, k := range p.Kinds {
		si, ok := tree.ToSI(q.Item.Value, q.Item.Unit, k)
		if !ok {
			continue
		}
		if l := p.Within(k); si < l.Low || si > l.High {
			d := diag.Diagnostic{
				Code: diag.CodeOutOfRange, At: q.At(), Summary: fmt.Sprintf("%s is outside what `%s` can promise", wording.Item(q.Item), e.What),
				Help: "allowed: " + wording.Between(l.Low, l.High, k, q.Item.Unit), Reason: l.Reason,
			}
			if k == quantity.Gravity {
				wording.OtherGravity(&d, q.Item, l.Low, l.High)
			}
			b.add(d)
			return e, false
		}
		e.Kind, e.Value = k, si
		if k == quantity.Strength {
			e.Strength = fields.Strength(q)
		}
		if margin != nil {
			return readMargin(b, e, margin)
		}
		return e, true
	}
	d := diag.Diagnostic{
		Code: diag.CodeWrongKind, Summary: fmt.Sprintf("%s can't be promised as %s", wording.Item(what.Item), wording.Item(q.Item)), At: q.At(),
		Help: fmt.Sprintf("%s: %s", p.Doc, tree.KindHelp(p.Kinds, q.At().Units())),
	}
	if q.Item.Unit == "" {
		d.Code = diag.CodeNoUnit
		d.Summary = fmt.Sprintf("`%s` needs a unit: %s is wanted", q.Item.Num, tree.KindList(p.Kinds, q.At().Units()))
	}
	b.add(d)
	return e, false
}

// readRuns reads in how many runs a promise is to be kept: in fewer than all, for no
// number of runs shows that none ever fails.
func readRuns(b *reader, l *tree.Node, e *recipe.Promise) bool {
	times, runs := l.Get("times"), l.Get("runs")
	if times == nil {
		return true
	}
	if times.SI != math.Trunc(times.SI) || runs.SI != math.Trunc(runs.SI) || times.SI >= runs.SI {
		b.add(diag.Diagnostic{
			Code: diag.CodeOutOfRange, Summary: fmt.Sprintf("nothing is kept %s runs of %s", wording.Item(times.Item), wording.Item(runs.Item)), At: times.At().To(runs.At()),
			Help:   "write whole numbers, the first one the less: `promise casks 1 in 9 of 10`",
			Reason: "what is promised in every run is a promise without `in`, which the plan keeps or not",
		})
		return false
	}
	e.OfRuns, e.InRuns = int(times.SI), int(runs.SI)
	return true
}

// readMargin reads the margin, in any unit of the promise's kind.
func readMargin(b *reader, e recipe.Promise, c *tree.Capture) (recipe.Promise, bool) {
	si, ok := tree.ToSI(c.Item.Value, c.Item.Unit, e.Kind)
	sameBasis := e.Kind != quantity.Strength || fields.Strength(c).Basis == e.Strength.Basis
	if !ok || !sameBasis {
		b.add(diag.Diagnostic{
			Code: diag.CodeWrongKind, Summary: fmt.Sprintf("the margin %s is not in the unit of what is promised", wording.Item(c.Item)), At: c.At(),
			Help: "write it in the same unit, as in " + wording.Example(c.At(), "promise hearts 38 gal within 2 gal"),
		})
		return e, false
	}
	if e.Kind == quantity.Gravity && isPlato(c.Item.Unit) {
		si--
	}
	e.Tolerance = math.Abs(si)
	if e.Kind == quantity.Gravity && isPlato(e.Unit) {
		e.Tolerance = platoMargin(e, c.Item, si)
	}
	return e, true
}

func isPlato(unit string) bool {
	u, known := quantity.Lookup(unit)
	return known && u.Name == "plato"
}

// platoMargin is the margin of a gravity that is promised in degrees Plato, in degrees:
// as written, or of so much gravity, which is a distance from what is promised.
func platoMargin(e recipe.Promise, it *lang.Item, sg float64) float64 {
	if isPlato(it.Unit) {
		return math.Abs(it.Value)
	}
	from, _ := quantity.FromSI(e.Value, "plato", quantity.Gravity)
	to, _ := quantity.FromSI(e.Value+sg, "plato", quantity.Gravity)
	return math.Abs(to - from)
}
