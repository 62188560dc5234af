package wording

import (
	"fmt"

	"newmake/lang"
	"newmake/lang/diag"
	"newmake/lang/quantity"
)

// OtherScale helps where a temperature makes sense only on the other scale: 190 C
// for 190 F. It fits if the number as written, on the other scale, lies within.
func OtherScale(d *diag.Diagnostic, it *lang.Item, unitAt diag.Span, low, high float64) {
	v, other := it.Value, "F"
	si := float64(quantity.TempFromF(v))
	if it.Unit == "F" || it.Unit == "°F" || it.Unit == "ºF" {
		other, si = "C", v
	}
	if si < low || si > high || unitAt.IsZero() {
		return
	}
	d.Help = fmt.Sprintf("did you mean `%s %s`? %s", it.Num, other, d.Help)
	d.Fix = &diag.Fix{At: unitAt, Text: other, Label: fmt.Sprintf("write `%s %s`", it.Num, other), Guess: true}
}
