package wording

import (
	"fmt"
	"strconv"
	"strings"

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

// OtherGravity helps where a specific gravity is written without its point, as a
// hydrometer is read aloud: 1069 for 1.069.
func OtherGravity(d *diag.Diagnostic, it *lang.Item, low, high float64) {
	sg := it.Value / 1000
	if it.Kind != lang.Number || it.Unit != "" && it.Unit != "SG" || sg < low || sg > high {
		return
	}
	text := strings.TrimSpace(strconv.FormatFloat(sg, 'f', -1, 64) + " " + it.Unit)
	d.Help = fmt.Sprintf("did you mean `%s`? %s", text, d.Help)
	d.Fix = &diag.Fix{At: it.At, Text: text, Label: fmt.Sprintf("write `%s`", text), Guess: true}
}
