package explain

import (
	"fmt"
	"strconv"
	"strings"

	"newmake/lang/quantity"
)

// base is the unit in which a kind is handed on.
var base = map[quantity.Kind]string{
	quantity.Mass: "kg", quantity.Volume: "m3", quantity.Temperature: "C", quantity.TempDifference: "C", quantity.Duration: "s",
	quantity.Length: "m", quantity.Power: "W", quantity.Energy: "J", quantity.Concentration: "kg/m3", quantity.Dose: "kg/kg",
	quantity.Pressure: "Pa", quantity.Rate: "/s", quantity.MolarEnergy: "J/mol", quantity.SpecificVolume: "m3/kg",
	quantity.SpecificEnergy: "J/kg", quantity.HeatCapacity: "J/kg/K", quantity.TestWeight: "kg/bushel", quantity.HeatingRate: "C/s",
	quantity.Area: "m2", quantity.Flow: "m3/s", quantity.HeatTransfer: "W/m2/K", quantity.MassFlow: "kg/s",
	quantity.DiastaticPower: "lintner", quantity.Share: "of the whole", quantity.PerYear: "of the whole a year",
}

// Worth says what one of a unit is in the unit of its kind, "" if that is itself
// or would say nothing.
func Worth(unit string, m quantity.Measure) string {
	to, ok := base[m.Kind]
	switch {
	case m.Kind == quantity.Strength && unit == "proof":
		return "US proof is twice the percentage by volume at 60 F (27 CFR 19.1); `% abv` beside gallons is half the proof, beside litres it is at 20 C."
	case m.Kind == quantity.Strength && strings.Contains(unit, "abv"):
		return "Percent of the volume: at 60 F in a file written in gallons, so that 40 % abv is 80 proof; at 20 C in one written in litres."
	case m.Kind == quantity.Strength:
		return "Percent of the weight."
	case m.Curve != nil:
		return "It follows a curve, and no factor."
	case m.Kind == quantity.Temperature && unit == "F":
		return "C = (F - 32) x 5/9."
	case m.Kind == quantity.Temperature && unit == "K":
		return "C = K - 273.15."
	case m.Shift != 0:
		return fmt.Sprintf("%s = (value + %s) x %s.", to, number(m.Shift), number(m.Factor))
	case !ok || unit == to:
		return ""
	case m.Kind == quantity.Volume:
		to, m.Factor = "L", m.Factor*1000
	}
	one := "1 " + unit
	if strings.HasPrefix(to, "of ") {
		return fmt.Sprintf("%s is %s %s.", one, number(m.Factor), to)
	}
	return fmt.Sprintf("%s = %s %s.", one, number(m.Factor), to)
}

// number writes a factor with as many digits as any standard gives.
func number(v float64) string {
	text := strconv.FormatFloat(v, 'g', 12, 64)
	if short, err := strconv.ParseFloat(text, 64); err == nil && short >= 1e-4 && short < 1e9 || v < 0 {
		return strconv.FormatFloat(short, 'f', -1, 64)
	}
	return text
}
