package render

import (
	"math"
	"strconv"
	"strings"

	"newmake/compile/plan"
)

// Units is the system a plan is shown in.
type Units uint8

const (
	US Units = iota // gal, lb, F, proof
	SI              // L, kg, C, % vol
)

// Exact by definition.
const (
	litrePerGallon = 3.785411784
	kgPerPound     = 0.45359237
	metrePerFoot   = 0.3048
	poundsPerOunce = 16
)

// number writes a number to a count of decimals, thousands set apart by commas.
func number(x float64, places int) string {
	s := strconv.FormatFloat(x, 'f', places, 64)
	sign := ""
	if strings.HasPrefix(s, "-") {
		sign, s = "-", s[1:]
		if strings.Trim(s, "0.") == "" {
			sign = ""
		}
	}
	whole, frac, dot := strings.Cut(s, ".")
	for i := len(whole) - 3; i > 0; i -= 3 {
		whole = whole[:i] + "," + whole[i:]
	}
	if dot {
		frac = "." + frac
	}
	return sign + whole + frac
}

// significant gives the decimals at which x shows about three figures.
func significant(x float64) int {
	switch x = math.Abs(x); {
	case x == 0 || x >= 100:
		return 0
	case x >= 10:
		return 1
	default:
		return 2
	}
}

// litres shows a volume that is not of spirit, or of spirit at 20 C.
func (u Units) litres(l float64) string {
	if u == SI {
		return number(l, significant(l)) + " L"
	}
	g := l / litrePerGallon
	return number(g, significant(g)) + " gal"
}

// volume shows a lot's volume: at 20 C in litres, at 60 F in gallons.
func (u Units) volume(l plan.Lot) string { return u.quantity(l.Volume()) }

// strength shows a strength: % vol at 20 C, or proof and % abv.
func (u Units) strength(s plan.Strength) string {
	if u == SI {
		return number(s.AbvPct, 1) + " % vol"
	}
	return number(s.Proof, 1) + " proof (" + number(s.AbvPct, 1) + " % abv)"
}

// abv shows the strength of a wash or at the spout, where proof is not spoken.
func (u Units) abv(pct float64) string {
	if u == SI {
		return number(pct, 1) + " % vol"
	}
	return number(pct, 1) + " % abv"
}

func (u Units) mass(kg float64) string {
	if u == SI {
		if math.Abs(kg) < 1 {
			return number(kg*1000, 0) + " g"
		}
		return number(kg, 1) + " kg"
	}
	lb := kg / kgPerPound
	if math.Abs(lb) < 1 {
		return number(lb*poundsPerOunce, 1) + " oz"
	}
	return number(lb, 1) + " lb"
}

func (u Units) temp(c float64) string {
	if u == SI {
		return number(c, 1) + " C"
	}
	return number(c*1.8+32, 0) + " F"
}

// tempDiff shows a distance on the scale, and says that it is one.
func (u Units) tempDiff(c float64) string {
	if u == SI {
		return number(c, 1) + " C apart"
	}
	return number(c*1.8, 0) + " F apart"
}

func (u Units) length(m float64) string {
	if u == SI {
		return number(m, 0) + " m"
	}
	return number(m/metrePerFoot, 0) + " ft"
}

func (u Units) rate(litrePerH float64) string {
	if u == SI {
		return number(litrePerH, significant(litrePerH)) + " L/h"
	}
	g := litrePerH / litrePerGallon
	return number(g, significant(g)) + " gal/h"
}

// gravity shows a specific gravity; in SI with the extract that brewers speak
// of beside it when it is given.
func gravity(sg float64) string { return number(sg, 3) + " SG" }

// duration shows minutes in the words of a working day.
func duration(minutes float64) string {
	m := int(math.Round(minutes))
	switch {
	case m < 1:
		return number(minutes*60, 0) + " s"
	case m < 100:
		return strconv.Itoa(m) + " min"
	case m < 48*60:
		return strconv.Itoa(m/60) + " h " + pad2(m%60)
	default:
		h := int(math.Round(float64(m) / 60))
		return strconv.Itoa(h/24) + " d " + strconv.Itoa(h%24) + " h"
	}
}

func pad2(n int) string {
	if n < 10 {
		return "0" + strconv.Itoa(n)
	}
	return strconv.Itoa(n)
}

// quantity shows any Quantity.
func (u Units) quantity(q plan.Quantity) string {
	switch q.Unit {
	case plan.Litre:
		if u == US && q.Gallons != 0 {
			return number(q.Gallons, significant(q.Gallons)) + " gal"
		}
		return u.litres(q.Value)
	case plan.Kilogram:
		return u.mass(q.Value)
	case plan.Celsius:
		return u.temp(q.Value)
	case plan.CelsiusDiff:
		return u.tempDiff(q.Value)
	case plan.Minute:
		return duration(q.Value)
	case plan.Hour:
		return number(q.Value, 1) + " h"
	case plan.Year:
		return number(q.Value, 1) + " y"
	case plan.SG:
		return gravity(q.Value)
	case plan.SGDiff:
		return number(q.Value, 3) + " SG"
	case plan.PH:
		return "pH " + number(q.Value, 1)
	case plan.AbvPct:
		if q.Proof != 0 {
			return u.strength(plan.Strength{AbvPct: q.Value, Proof: q.Proof})
		}
		return u.abv(q.Value)
	case plan.AbvDiff:
		return number(q.Value, 1) + " % vol"
	case plan.LitrePerH:
		return u.rate(q.Value)
	case plan.Percent:
		return number(q.Value, 1) + " %"
	case plan.Each:
		return number(q.Value, 0)
	case plan.ProofGallon:
		return number(q.Value, 1) + " PG"
	case plan.CubicMetre:
		if u == SI {
			return number(q.Value, 0) + " m3"
		}
		return number(q.Value/(metrePerFoot*metrePerFoot*metrePerFoot), 0) + " cu ft"
	default: // g/L, kWh, LPA: the unit is the word
		return number(q.Value, 1) + " " + string(q.Unit)
	}
}

// tolerance shows how far off a reading may be. Its unit stands at the value
// beside it, so that only the number is said where the two agree.
func (u Units) tolerance(q plan.Quantity) string {
	switch q.Unit {
	case plan.CelsiusDiff:
		if u == SI {
			return "+/- " + number(q.Value, 0) + " C"
		}
		return "+/- " + number(q.Value*1.8, 0) + " F"
	case plan.AbvDiff:
		if u == US && q.Proof != 0 {
			return "+/- " + number(q.Proof, 0) + " proof"
		}
		return "+/- " + number(q.Value, 0) + " %"
	case plan.SGDiff:
		return "+/- " + number(q.Value, 3)
	case plan.PH:
		return "+/- " + number(q.Value, 1)
	default:
		return "+/- " + u.quantity(q)
	}
}

// phrase fills a phrase's places with its quantities.
func (u Units) phrase(p plan.Phrase) string {
	var b strings.Builder
	rest := p.Text
	for _, q := range p.Values {
		before, after, found := strings.Cut(rest, "{}")
		if !found {
			break
		}
		b.WriteString(before)
		b.WriteString(u.quantity(q))
		rest = after
	}
	b.WriteString(rest)
	return b.String()
}
