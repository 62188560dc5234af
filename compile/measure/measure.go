// Package measure says numbers with their units, as a reader wants them: in US
// customary units or in SI. Diagnostics and every rendering speak through it,
// so that the same number is never said in two ways.
package measure

import (
	"math"
	"strconv"
	"strings"

	"newmake/compile/matter/fluid"
	"newmake/compile/plan"
	"newmake/lang/quantity"
	"newmake/lang/recipe"
)

// Units is the system of units that a reader is spoken to in.
type Units uint8

const (
	US Units = iota // gal, lb, F, proof
	SI              // L, kg, C, % vol
)

// UnitsOf are the units in which a batch is spoken of.
func UnitsOf(s recipe.System) Units {
	if s == recipe.SI {
		return SI
	}
	return US
}

// Exact by definition.
const (
	litrePerGallon  = 1000 * quantity.USGallonM3
	kgPerPound      = quantity.PoundKg
	metrePerFoot    = quantity.FootM
	poundsPerOunce  = 16
	quartsPerGallon = 4
)

// Number writes a number to a count of decimals, thousands set apart by commas.
func Number(x float64, places int) string {
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

// gasPlaces keeps a tenth of what is less than ten, so that a small pot's gas is not
// rounded by a fifth.
func gasPlaces(x float64) int {
	if x < 10 {
		return 1
	}
	return 0
}

// Litres shows a volume that is measured as it stands: of water, mash, a vessel.
func (u Units) Litres(l float64) string {
	if u == SI {
		return Number(l, significant(l)) + " L"
	}
	g := l / litrePerGallon
	return Number(g, significant(g)) + " gal"
}

// Counted shows a volume, given in litres at 20 C, of what has so much alcohol by volume: at
// 20 C in litres, at 60 F in gallons, as a lot's.
func (u Units) Counted(l, abv float64) string {
	if w, err := fluid.MassFracFromABV(abv); u == US && err == nil {
		l *= fluid.Density(w, 20) / fluid.Density(w, fluid.SixtyF)
	}
	return u.Litres(l)
}

// Volume shows a lot's volume: at 20 C in litres, at 60 F in gallons.
func (u Units) Volume(l plan.Lot) string { return u.Quantity(l.Volume()) }

// Strength shows a strength: % vol at 20 C, or proof and the % abv that goes
// with it on a US label, which is half the proof and so at 60 F.
func (u Units) Strength(s plan.Strength) string {
	s = s.Rounded()
	if u == SI {
		return Number(s.AbvPct, 1) + " % vol"
	}
	return Number(s.Proof, 1) + " proof (" + u.StrengthAbv(s) + ")"
}

// StrengthAbv shows a strength by volume alone: at 20 C, or half the proof. The
// half is that of the proof as it is printed, so that one proof never stands
// beside two percentages.
func (u Units) StrengthAbv(s plan.Strength) string {
	if s = s.Rounded(); u == SI {
		return u.Abv(s.AbvPct)
	}
	return u.Abv(plan.RoundTo(s.Proof/2, 1))
}

// LotAbv is StrengthAbv of a lot.
func (u Units) LotAbv(l plan.Lot) string { return u.StrengthAbv(l.Strength()) }

// Abv shows a strength by volume as it is given.
func (u Units) Abv(pct float64) string {
	if u == SI {
		return Number(pct, 1) + " % vol"
	}
	return Number(pct, 1) + " % abv"
}

// Alcohol shows an amount of alcohol, given in litres of it pure at 20 C: as it stands, or
// in proof gallons. A proof gallon is a gallon at 60 F of which half is alcohol (27 CFR 19.1).
func (u Units) Alcohol(litres float64) string {
	if u == SI {
		return Number(litres, 1) + " L pure"
	}
	at60F := litres * fluid.Density(1, 20) / fluid.Density(1, fluid.SixtyF)
	return Number(2*at60F/litrePerGallon, 2) + " PG"
}

// Mass shows a mass, small ones in ounces or grams.
func (u Units) Mass(kg float64) string {
	if u == SI {
		if math.Abs(kg) < 1 {
			return Number(kg*1000, 0) + " g"
		}
		return Number(kg, 1) + " kg"
	}
	lb := kg / kgPerPound
	if math.Abs(lb) < 1 {
		return Number(lb*poundsPerOunce, 1) + " oz"
	}
	return Number(lb, 1) + " lb"
}

// Temp shows a point on the scale.
func (u Units) Temp(c float64) string {
	if u == SI {
		return Number(c, 1) + " C"
	}
	return Number(c*1.8+32, 0) + " F"
}

// TempDiff shows a distance on the scale: in degrees, where a point has none.
func (u Units) TempDiff(c float64) string {
	if u == SI {
		return Number(c, 1) + " deg C"
	}
	return Number(c*1.8, 0) + " deg F"
}

// StatedFeints is a line of a batch that says that there are these feints, for a
// reader who is to write one.
func (u Units) StatedFeints(l plan.Lot) string {
	if u == SI {
		return "feints " + u.Volume(l) + " at " + Number(l.AbvPct, 0) + " % vol"
	}
	return "feints " + u.Volume(l) + " at " + Number(l.Proof, 0) + " proof"
}

// Length shows a height.
func (u Units) Length(m float64) string {
	if u == SI {
		return Number(m, 0) + " m"
	}
	return Number(m/metrePerFoot, 0) + " ft"
}

// Flow shows a flow to two figures.
func (u Units) Flow(litrePerH float64) string { return u.rate(litrePerH, 2) }

// rate shows a flow to so many figures.
func (u Units) rate(litrePerH float64, figures int) string {
	v, unit := litrePerH, " L/h"
	if u == US {
		v, unit = litrePerH/litrePerGallon, " gal/h"
	}
	return toFigures(v, figures) + unit
}

// toFigures shows a number to so many figures and no more: 17.9 to two is 18, and
// 545 is 550.
func toFigures(v float64, figures int) string {
	if v == 0 {
		return "0"
	}
	places := figures - 1 - int(math.Floor(math.Log10(math.Abs(v))))
	if scale := math.Pow10(places); math.Abs(math.Round(v*scale)) >= math.Pow10(figures) {
		places-- // 9.96 is 10
	}
	if places >= 0 {
		return Number(v, places)
	}
	unit := math.Pow10(-places)
	return Number(math.Round(v/unit)*unit, 0)
}

// PerBushel is the unit of what is reckoned by the distiller's bushel. It says
// the pounds, for a trade bushel of oats or malt weighs less.
const PerBushel = "/56 lb"

// LiquorToGrist shows liquor by grain: by the distiller's bushel of 56 lb, or
// by the kg.
func (u Units) LiquorToGrist(litrePerKg float64) string {
	if u == SI {
		return Number(litrePerKg, 2) + " L/kg"
	}
	return Number(litrePerKg*kgPerPound/litrePerGallon*56, 1) + " gal" + PerBushel
}

// Power shows a rate of heat. The trade's boilers and jackets are in kW here
// and there.
func (u Units) Power(kW float64) string { return Number(kW, significant(kW)) + " kW" }

// Gravity shows a specific gravity.
func Gravity(sg float64) string { return Number(sg, 3) + " SG" }

// Duration shows minutes as they are said and written in a recipe: 45 min,
// 4 h 20 min, 91 h, 12 days, 4 years.
func Duration(minutes float64) string {
	const hour, day = 60, 24 * 60
	m := int(math.Round(minutes))
	switch {
	case m < 1:
		return Number(minutes*60, 0) + " s"
	case m < hour:
		return strconv.Itoa(m) + " min"
	case m < 2*day && m%hour == 0:
		return strconv.Itoa(m/hour) + " h"
	case m < 2*day:
		return strconv.Itoa(m/hour) + " h " + strconv.Itoa(m%hour) + " min"
	case m <= 10*day: // as one speaks of a ferment
		return Number(minutes/hour, 0) + " h"
	case m <= 90*day:
		return Number(minutes/day, 0) + " days"
	default:
		return Years(minutes / (365.25 * day))
	}
}

// Hours shows hours that are told to the hour.
func Hours(h float64) string { return Duration(60 * math.Round(h)) }

// Years shows years in whole ones or in months, as far as months tell it: 4 years,
// 30 months, 2.3 years.
func Years(y float64) string {
	months := 12 * y
	switch whole := math.Round(months); {
	case math.Abs(months-whole) > 0.05:
		return strings.TrimSuffix(Number(y, 1), ".0") + " years"
	case whole == 12:
		return "1 year"
	case whole == 1:
		return "1 month"
	case int(whole)%12 == 0:
		return Number(whole/12, 0) + " years"
	default:
		return Number(whole, 0) + " months"
	}
}

// Quantity shows any Quantity.
func (u Units) Quantity(q plan.Quantity) string {
	q = q.Rounded()
	switch q.Unit {
	case plan.Litre:
		if u == US && q.Gallons != 0 {
			return Number(q.Gallons, significant(q.Gallons)) + " gal"
		}
		return u.Litres(q.Value)
	case plan.Kilogram:
		return u.Mass(q.Value)
	case plan.Celsius:
		return u.Temp(q.Value)
	case plan.CelsiusDiff:
		return u.TempDiff(q.Value)
	case plan.Minute:
		return Duration(q.Value)
	case plan.Hour:
		return Duration(60 * q.Value)
	case plan.Year:
		return Years(q.Value)
	case plan.SG:
		return Gravity(q.Value)
	case plan.SGDiff:
		return Number(q.Value, 3) + " SG"
	case plan.Plato, plan.PlatoDiff:
		return Number(q.Value, 1) + " plato"
	case plan.PH:
		return "pH " + Number(q.Value, 1)
	case plan.AbvPct:
		switch {
		case q.Proof != 0:
			return u.Strength(plan.Strength{AbvPct: q.Value, Proof: q.Proof})
		case u == US && q.Abv60F != 0:
			return u.Abv(q.Abv60F)
		}
		return u.Abv(q.Value)
	case plan.AbvDiff:
		if u == US && q.Proof != 0 {
			return Number(q.Proof, 1) + " proof"
		}
		return u.Abv(q.Value)
	case plan.LitrePerH:
		return u.rate(q.Value, 2) // a jug and a watch give two figures
	case plan.Percent:
		return Number(q.Value, 1) + " %"
	case plan.Each:
		return Number(q.Value, 0)
	case plan.ProofGallon:
		return Number(q.Value, 1) + " PG"
	case plan.CubicMetre:
		if u == SI {
			return Number(q.Value, gasPlaces(q.Value)) + " m3"
		}
		cuFt := q.Value / (metrePerFoot * metrePerFoot * metrePerFoot)
		return Number(cuFt, gasPlaces(cuFt)) + " cu ft"
	default: // g/L, kWh, LPA: the unit is the word
		return Number(q.Value, 1) + " " + string(q.Unit)
	}
}

// Tolerance shows how far off a reading may be. Its unit stands at the value
// beside it, so that only the number is said where the two agree.
func (u Units) Tolerance(q plan.Quantity) string {
	switch q.Unit {
	case plan.CelsiusDiff:
		if u == SI {
			return "+/- " + Number(q.Value, 0) + " C"
		}
		return "+/- " + Number(q.Value*1.8, 0) + " F"
	case plan.AbvDiff:
		if u == US && q.Proof != 0 {
			return "+/- " + Number(q.Proof, 1) // proof, as beside it
		}
		return "+/- " + u.Abv(q.Value) // points of strength: a bare % would be a share
	case plan.SGDiff:
		return "+/- " + Number(q.Value, 3)
	case plan.PH:
		return "+/- " + Number(q.Value, 1)
	case plan.Litre:
		v, unit := q.Value, " L"
		if u == US {
			v, unit = v/litrePerGallon, " gal"
		}
		return "+/- " + Number(v, shown(v, max(significant(v)-1, 0))) + unit
	case plan.LitrePerH:
		return "+/- " + u.rate(q.Value, 1)
	default:
		return "+/- " + u.Quantity(q)
	}
}

// shown is how many decimals show at least one figure of a number that is not
// none, if places do not.
func shown(v float64, places int) int {
	for ; places < 6 && v != 0 && math.Abs(v) < 0.5*math.Pow10(-places); places++ {
	}
	return places
}

// Jug shows a volume that is measured in a jug: in quarts, or in millilitres below a litre.
func (u Units) Jug(q plan.Quantity) string {
	q = q.Rounded()
	if u == SI {
		if q.Value >= 1 {
			return u.Quantity(q)
		}
		return Number(q.Value*1000, 0) + " mL"
	}
	v, _ := u.Value(q)
	return strings.TrimSuffix(Number(v*quartsPerGallon, 1), ".0") + " qt"
}

// JugPhrase is Phrase with its volumes measured in a jug.
func (u Units) JugPhrase(p plan.Phrase) string {
	return u.filled(p, func(q plan.Quantity) string {
		if q.Unit == plan.Litre {
			return u.Jug(q)
		}
		return u.Quantity(q)
	})
}

// Phrase fills a phrase's places with its quantities.
func (u Units) Phrase(p plan.Phrase) string { return u.filled(p, u.Quantity) }

// BriefPhrase is Phrase with its quantities as Brief says them.
func (u Units) BriefPhrase(p plan.Phrase) string { return u.filled(p, u.Brief) }

func (u Units) filled(p plan.Phrase, say func(plan.Quantity) string) string {
	var b strings.Builder
	rest := u.Words(p.Text)
	for _, q := range p.Values {
		before, after, found := strings.Cut(rest, "{}")
		if !found {
			break
		}
		b.WriteString(before)
		b.WriteString(say(q))
		rest = after
	}
	b.WriteString(rest)
	return b.String()
}

// Brief shows a quantity where room is short and what it is of is plain: a strength
// in one unit, and no zeros after the point.
func (u Units) Brief(q plan.Quantity) string {
	q = q.Rounded()
	if q.Unit == plan.AbvPct {
		switch {
		case u == US && q.Proof != 0:
			return whole(Number(q.Proof, 1)) + " proof"
		case u == US && q.Abv60F != 0:
			return whole(Number(q.Abv60F, 1)) + " %"
		}
		return whole(Number(q.Value, 1)) + " %"
	}
	number, unit, found := strings.Cut(u.Quantity(q), " ")
	if !found || q.Unit == plan.SG || q.Unit == plan.PH {
		return u.Quantity(q)
	}
	return whole(number) + " " + unit
}

// whole takes the zeros after the point away.
func whole(number string) string {
	if !strings.Contains(number, ".") {
		return number
	}
	return strings.TrimSuffix(strings.TrimRight(number, "0"), ".")
}
