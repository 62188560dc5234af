package compare

import (
	"math"
	"strings"

	"newmake/compile/measure"
	"newmake/lang/quantity"
	"newmake/lang/recipe"
)

// say words what stands in a recipe, in the reader's units. Unlike a prediction
// it is shown with all the figures it was written with; what was measured, with those of its
// instrument.
type say struct {
	measure.Units
	measured bool
}

const (
	kgPerPound  = quantity.PoundKg
	m3PerGallon = quantity.USGallonM3
	metrePerFt  = quantity.FootM
	minuteS     = 60.0
	hourS       = quantity.HourS
	dayS        = quantity.DayS
	yearS       = quantity.YearS
)

// number shows six figures at most, and no zeros that say nothing.
func number(x float64) string {
	if x == 0 {
		return "0"
	}
	places := 5 - int(math.Floor(math.Log10(math.Abs(x))))
	s := measure.Number(x, max(min(places, 9), 0))
	if strings.Contains(s, ".") {
		s = strings.TrimRight(strings.TrimRight(s, "0"), ".")
	}
	return s
}

// or gives the US or the SI wording.
func (s say) or(us, si string) string {
	if s.Units == measure.SI {
		return si
	}
	return us
}

func (s say) mass(kg float64) string {
	if s.measured {
		return s.Units.Mass(kg)
	}
	if math.Abs(kg) < 0.999*kgPerPound {
		return s.or(number(kg/kgPerPound*16)+" oz", number(kg*1000)+" g")
	}
	return s.or(number(kg/kgPerPound)+" lb", number(kg)+" kg")
}

func (s say) volume(m3 float64) string {
	if s.measured {
		return s.Units.Litres(1000 * m3)
	}
	if s.Units == measure.SI && math.Abs(m3) < 1e-3 {
		return number(m3*1e6) + " mL"
	}
	return s.or(number(m3/m3PerGallon)+" gal", number(m3*1000)+" L")
}

func (s say) temp(c float64) string {
	if s.measured {
		return s.Units.Temp(c)
	}
	return s.or(number(c*1.8+32)+" F", number(c)+" C")
}

// tempDiff is a distance on the scale, without its sign.
func (s say) tempDiff(c float64) string {
	c = math.Abs(c)
	return s.or(number(c*1.8)+" F", number(c)+" C")
}

func conc(kgM3 float64) string { return number(kgM3) + " g/L" }
func (s say) share(f float64) string {
	if s.measured {
		return measure.Number(100*f, 1) + " %"
	}
	return number(100*f) + " %"
}
func (s say) length(m float64) string { return s.or(number(m/metrePerFt)+" ft", number(m)+" m") }
func (s say) area(m2 float64) string {
	return s.or(number(m2/metrePerFt/metrePerFt)+" sqft", number(m2)+" m2")
}
func (s say) flow(m3s float64) string {
	return s.or(number(m3s*60/m3PerGallon)+" gal/min", number(m3s*60e3)+" L/min")
}
func (s say) massFlow(kgS float64) string {
	return s.or(number(kgS*60/kgPerPound)+" lb/min", number(kgS*60)+" kg/min")
}
func power(w float64) string { return number(w/1000) + " kW" }

// duration is in the largest unit in which the trade would say it.
func duration(sec float64) string {
	sec = math.Abs(sec)
	switch {
	case sec < minuteS:
		return number(sec) + " s"
	case sec < 2*dayS && math.Abs(sec/minuteS-math.Round(sec/minuteS)) < 1e-6:
		return measure.Duration(sec / minuteS)
	case sec < 2*hourS:
		return number(sec/minuteS) + " min"
	case sec <= 10*dayS:
		return number(sec/hourS) + " h"
	case sec < 60*dayS:
		return number(sec/dayS) + " days"
	default:
		return measure.Years(sec / yearS)
	}
}

func (s say) strength(x recipe.Strength) string {
	say := number
	if s.measured {
		say = func(x float64) string { return measure.Number(x, 1) }
	}
	switch x.Basis {
	case recipe.Proof:
		return say(200*x.Value) + " proof"
	case recipe.ABW:
		return say(100*x.Value) + " % abw"
	default:
		return say(100*x.Value) + s.or(" % abv", " % vol")
	}
}

func (s say) cut(c recipe.Cut) string {
	switch c.By {
	case recipe.ByVolume:
		return s.volume(c.VolumeM3)
	case recipe.ByVapourTemp:
		return s.temp(c.TempC)
	case recipe.ByShare:
		return s.share(c.Share) + " of charge"
	case recipe.ByTime:
		return duration(c.TimeS)
	default:
		return s.strength(c.Strength)
	}
}
