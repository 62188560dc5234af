package wording

import (
	"regexp"
	"strconv"
	"strings"

	"newmake/lang/quantity"
)

// inGallons is a number with a unit that a house of litres has no use for.
var inGallons = regexp.MustCompile(`([0-9][0-9,]*(?:\.[0-9]+)?) (gal|lb|proof|F)\b`)

// litres are the units that a house of litres writes for them.
var litres = map[string]struct {
	unit string
	kind quantity.Kind
}{
	"gal": {"L", quantity.Volume}, "lb": {"kg", quantity.Mass}, "F": {"C", quantity.Temperature},
}

// InLitres turns a line of an example, written for a house of gallons, into what a house of
// litres would write: `44 gal, 70.5 proof at 64 F` is `167 L, 35.3 % abv at 18 C`. What
// stands in quotes stays as it is. The values are an example's and need not be the same to
// the last digit: proof is halved.
func InLitres(example string) string {
	parts := strings.Split(example, `"`)
	for i := 0; i < len(parts); i += 2 {
		parts[i] = inGallons.ReplaceAllStringFunc(parts[i], func(s string) string {
			m := inGallons.FindStringSubmatch(s)
			v, err := strconv.ParseFloat(strings.ReplaceAll(m[1], ",", ""), 64)
			if err != nil {
				return s
			}
			if m[2] == "proof" {
				return strconv.FormatFloat(v/2, 'f', 1, 64) + " % abv"
			}
			to := litres[m[2]]
			si, err := quantity.ToSI(v, m[2], to.kind)
			if err != nil {
				return s
			}
			out, err := quantity.FromSI(si, to.unit, to.kind)
			if err != nil {
				return s
			}
			places := 0
			if out < 20 && to.unit != "C" {
				places = 1
			}
			return grouped(strconv.FormatFloat(out, 'f', places, 64)) + " " + to.unit
		})
	}
	return strings.Join(parts, `"`)
}
