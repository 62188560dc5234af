package wording

import (
	"math"
	"strings"

	"newmake/lang/quantity"
)

// span writes a limit in SI, and after it in US units if there are such.
func span(low, high float64, k quantity.Kind) string {
	text := spanIn(low, high, k, unitsShown[k].si)
	us := unitsShown[k].us
	if len(us) == 0 || low < tiny && math.IsInf(high, 1) {
		return text
	}
	return text + " (" + spanIn(low, high, k, us) + ")"
}

// SpanIn is Span for a reader who counts in a system: in its units alone.
func SpanIn(low, high float64, k quantity.Kind, reader quantity.System) string {
	units := unitsShown[k].si
	switch {
	case reader == quantity.Both:
		return span(low, high, k)
	case reader == quantity.US && len(unitsShown[k].us) > 0:
		units = unitsShown[k].us
	case k == quantity.Strength:
		units = []string{"% vol"}
	}
	return spanIn(low, high, k, units)
}

// Between writes a limit in a unit; a time in the units in which one would say it.
func Between(low, high float64, k quantity.Kind, unit string) string {
	if k == quantity.Duration {
		return spanIn(low, high, k, unitsShown[k].si)
	}
	return spanIn(low, high, k, []string{unit})
}

// tiny is where a least value only says that nothing will not do.
const tiny = 1e-6

func spanIn(low, high float64, k quantity.Kind, units []string) string {
	switch {
	case low > 0 && low < tiny && math.IsInf(high, 1):
		return "more than nothing"
	case low == 0 && math.IsInf(high, 1):
		return "not less than nothing"
	case low > 0 && low < tiny:
		return "more than nothing, at most " + bestIn(high, k, units)
	case math.IsInf(high, 1):
		return "at least " + bestIn(low, k, units)
	case math.IsInf(low, -1):
		return "at most " + bestIn(high, k, units)
	case low == 0 && k != quantity.Temperature:
		return "0 to " + bestIn(high, k, units)
	}
	return bestIn(low, k, units) + " to " + bestIn(high, k, units)
}

// bestIn writes a value in the largest of some units in which it is one or more.
func bestIn(si float64, k quantity.Kind, units []string) string {
	if len(units) == 0 {
		return In(si, "", k)
	}
	best := bestOf(si, k, units)
	text := In(si, best, k)
	if (best == "day" || best == "year") && !strings.HasPrefix(text, "1 ") {
		text += "s"
	}
	return text
}

// bestOf is the largest unit in which a value is not less than one.
func bestOf(si float64, k quantity.Kind, units []string) string {
	best := units[0]
	for _, u := range units[1:] {
		if v, err := quantity.FromSI(si, u, k); err == nil && math.Abs(v) >= 0.9999 {
			best = u
		}
	}
	return best
}

// unitsShown are the units in which a limit is written, smaller ones first.
var unitsShown = map[quantity.Kind]struct{ si, us []string }{
	quantity.Mass:             {[]string{"g", "kg"}, []string{"oz", "lb"}},
	quantity.Volume:           {[]string{"mL", "L"}, []string{"fl oz", "gal"}},
	quantity.Temperature:      {[]string{"C"}, []string{"F"}},
	quantity.TempDifference:   {[]string{"C"}, []string{"F"}},
	quantity.HeatingRate:      {[]string{"C/h", "C/min"}, []string{"F/h", "F/min"}},
	quantity.PureAlcohol:      {[]string{"LPA"}, nil},
	quantity.ProofGallons:     {[]string{"proof-gal"}, nil},
	quantity.SpiritYield:      {[]string{"LPA/t"}, nil},
	quantity.TestWeight:       {[]string{"kg/hL"}, []string{"lb/bushel"}},
	quantity.Duration:         {[]string{"s", "min", "h", "day", "year"}, nil},
	quantity.Length:           {[]string{"m"}, []string{"ft"}},
	quantity.Power:            {[]string{"W", "kW"}, nil},
	quantity.Area:             {[]string{"m2"}, []string{"sqft"}},
	quantity.Flow:             {[]string{"L/h", "L/min", "m3/h"}, []string{"gal/min"}},
	quantity.MassFlow:         {[]string{"kg/h", "kg/min"}, []string{"lb/min"}},
	quantity.HeatTransfer:     {[]string{"W/m2/K"}, []string{"BTU/h/ft2/F"}},
	quantity.Strength:         {[]string{"% abv"}, []string{"proof"}},
	quantity.Share:            {[]string{"%"}, nil},
	quantity.Concentration:    {[]string{"g/L"}, nil},
	quantity.Dose:             {[]string{"g/kg"}, nil},
	quantity.Rate:             {[]string{"/h"}, nil},
	quantity.MolarEnergy:      {[]string{"kJ/mol"}, nil},
	quantity.DiastaticPower:   {[]string{"lintner"}, nil},
	quantity.DextrinizingUnit: {[]string{"DU"}, nil},
	quantity.PartsPerMillion:  {[]string{"ppm"}, nil},
	quantity.PH:               {[]string{"pH"}, nil},
	quantity.PerYear:          {[]string{"%/year"}, nil},
}
