// Package notice is what computing a batch shows to a distiller: errors where the
// batch cannot work, warnings where the trade would frown. Each function looks at
// what one stage gave.
package notice

import (
	"newmake/compile/lot"
	"newmake/compile/measure"
	"newmake/lang/diag"
	"newmake/lang/quantity"
	"newmake/lang/recipe"
	"newmake/lang/wording"
)

// writer gathers the notices of a batch, in its own units and with its places.
type writer struct {
	b    *recipe.Batch
	say  measure.Units
	list diag.List
}

func about(b *recipe.Batch) *writer { return &writer{b: b, say: measure.UnitsOf(b.Units)} }

// at finds the place in the text of the first of some values that is written; of
// the nearest block that has one, if none is.
func (w *writer) at(paths ...recipe.Path) diag.Span {
	for _, p := range paths {
		if at, ok := w.b.Where[p]; ok {
			return at
		}
	}
	return w.b.At(paths[0])
}

// add adds a diagnostic with the severity that its code has in the table.
func (w *writer) add(d diag.Diagnostic) {
	for _, i := range diag.Computed {
		if i.Code == d.Code {
			d.Severity = i.Severity
		}
	}
	w.addAs(d.Severity, d)
}

// addAs adds a diagnostic with a severity of its own.
func (w *writer) addAs(s diag.Severity, d diag.Diagnostic) {
	d.Severity = s
	d.Summary, d.Help, d.Reason = w.say.Words(d.Summary), w.say.Words(d.Help), w.say.Words(d.Reason)
	w.list.Add(d)
}

// example is a line as it may stand in the batch, in the batch's own units.
func (w *writer) example(line string) string {
	return "`" + wording.Restated(line, w.reader()) + "`"
}

// reader is the system of the batch's own units.
func (w *writer) reader() quantity.System {
	if w.b.Units == recipe.SI {
		return quantity.SI
	}
	return quantity.US
}

// byVolume says a strength at 20 C, as a fraction, in % abv alone.
func (w *writer) byVolume(abv float64) string { return w.say.StrengthAbv(lot.AtABV(abv)) }
