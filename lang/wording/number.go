package wording

import (
	"math"
	"strconv"
	"strings"

	"newmake/lang/quantity"
)

// In writes an SI value in the unit in which another value was written, so that
// a message speaks the reader's units.
func In(si float64, unit string, k quantity.Kind) string {
	v, err := quantity.FromSI(si, unit, k)
	if err != nil {
		return Decimal(si)
	}
	text := Decimal(v)
	switch {
	case unit == "":
		return text
	case strings.HasPrefix(unit, "/"):
		return text + " " + unit
	}
	return text + " " + unit
}

// Decimal writes a number with three or four figures, and no more digits than
// it needs.
func Decimal(v float64) string {
	a := math.Abs(v)
	prec := 0
	switch {
	case a == 0:
		return "0"
	case a < 0.001 || a >= 1e13:
		return strconv.FormatFloat(v, 'g', 3, 64)
	case a < 0.1:
		prec = 4
	case a < 1:
		prec = 3
	case a < 10:
		prec = 2
	case a < 100:
		prec = 1
	}
	return Grouped(Trimmed(v, prec))
}

// Trimmed writes a number with at most so many decimals, and none that are zeros at the
// end.
func Trimmed(v float64, places int) string {
	text := strconv.FormatFloat(v, 'f', places, 64)
	if strings.Contains(text, ".") {
		text = strings.TrimRight(strings.TrimRight(text, "0"), ".")
	}
	if text == "-0" {
		return "0"
	}
	return text
}

// Grouped puts commas between the thousands of a number.
func Grouped(text string) string {
	sign := ""
	if strings.HasPrefix(text, "-") {
		sign, text = "-", text[1:]
	}
	whole, rest, _ := strings.Cut(text, ".")
	for i := len(whole) - 3; i > 0; i -= 3 {
		whole = whole[:i] + "," + whole[i:]
	}
	if rest != "" {
		rest = "." + rest
	}
	return sign + whole + rest
}
