package compare

import (
	"fmt"
	"math"
	"slices"
	"strings"
	"time"

	"newmake/lang/quantity"
	"newmake/lang/recipe"
	"newmake/lang/words"
)

// change says in few words what became of a value: its name and what it is now,
// or what is more telling.
func (s say) change(o, n recipe.Value) string {
	if o.Path == recipe.PathPitch && o.Name == "yeast" {
		return s.value(n) + " for " + s.value(o)
	}
	if len(o.Cells) == 1 && o.Cells[0].Kind == quantity.Duration {
		if a, b := o.Cells[0].Is().(float64), n.Cells[0].Is().(float64); a > 0 && b > 0 {
			return s.longer(o.Words, b-a)
		}
	}
	if kind := o.Cells[0].Kind; s.measured && len(o.Cells) == 1 && (kind == quantity.Mass || kind == quantity.Volume) {
		if a, b := o.Cells[0].Is().(float64), n.Cells[0].Is().(float64); a > 0 && b > 0 {
			return o.Words + " " + moreOrLess(b-a, func(x float64) string { return s.quantity(x, kind) })
		}
	}
	return n.Words + " " + s.value(n)
}

// longer says by how much longer or shorter something takes.
func (s say) longer(name string, bySeconds float64) string {
	if bySeconds < 0 {
		return name + " " + duration(bySeconds) + " shorter"
	}
	return name + " " + duration(bySeconds) + " longer"
}

// wordings are the values that do not read well as a list of what they hold.
var wordings = map[recipe.Path]func(s say, is []any) string{
	recipe.PathUnits: func(_ say, is []any) string {
		if is[0] == recipe.SI {
			return "in litres at 20 C"
		}
		return "in gallons at 60 F"
	},
	recipe.PathCharge: func(s say, is []any) string {
		words := "low wines alone"
		if is[0] == true {
			words = "low wines and feints"
		}
		if x := is[1].(recipe.Strength); x.Value > 0 {
			words += ", water to " + s.strength(x)
		}
		return words
	},
	recipe.PathFeints: func(s say, is []any) string {
		switch m3 := is[1].(float64); {
		case is[0] == false:
			return "what a house at work has"
		case m3 == 0:
			return "none yet"
		default:
			return s.volume(m3) + " at " + s.strength(is[2].(recipe.Strength))
		}
	},
	recipe.PathNoKept: func(_ say, is []any) string {
		if is[0] == true {
			return "none yet"
		}
		return "what a house at work has"
	},
	recipe.PathNoPotAle: func(_ say, is []any) string {
		if is[0] == true {
			return "none yet"
		}
		return "what the preheater says"
	},
	recipe.PathNoBackset: func(_ say, is []any) string {
		if is[0] == true {
			return "none yet"
		}
		return "what a house at work has"
	},
	recipe.PathFill: func(s say, is []any) string {
		size, isNew, kind, char := is[0].(float64), is[1].(bool), is[2].(*recipe.CaskWood), is[3].(int)
		if kind == nil {
			return "none"
		}
		words := s.volume(size) + " used "
		if isNew {
			words = s.volume(size) + " new "
		}
		words += kind.Name
		if char > 0 {
			words += fmt.Sprintf(" char %d", char)
		}
		return words
	},
	recipe.PathBottle: func(s say, is []any) string {
		size, at := "the usual", "the least"
		if m3 := is[0].(float64); m3 > 0 {
			size = number(m3*1e6) + " mL"
		}
		if x := is[1].(recipe.Strength); x.Value > 0 {
			at = s.strength(x)
		}
		return size + " at " + at
	},
}

// value is what a value holds, in words: a range where it is two numbers alike,
// and else each that is not nothing.
func (s say) value(v recipe.Value) string {
	is := v.Is()
	if words := wordings[v.Path]; words != nil {
		return words(s, is)
	}
	if allNothing(is) && (v.Maybe || v.Grows || len(is) > 1) && !v.Path.Within(recipe.PathLibrary) {
		return "none"
	}
	if len(is) == 2 && v.Cells[0].Kind == v.Cells[1].Kind && v.Cells[0].Kind != quantity.None {
		low, high := s.datum(v, 0), s.datum(v, 1)
		if low == high {
			return high
		}
		low, _, _ = strings.Cut(low, " ")
		return low + ".." + high
	}
	var all []string
	for i := range is {
		if is[i] != 0.0 || len(is) == 1 {
			all = append(all, s.datum(v, i))
		}
	}
	return strings.Join(all, " at ")
}

// allNothing reports whether all of it is numbers, and none of them is given.
func allNothing(is []any) bool {
	return !slices.ContainsFunc(is, func(x any) bool { return x != 0.0 })
}

// datum is one of the things that a value holds.
func (s say) datum(v recipe.Value, i int) string {
	c := v.Cells[i]
	switch x := recipe.NameOf(c.Is()).(type) {
	case float64:
		return s.quantity(x, c.Kind)
	case []float64:
		var all []string
		for _, one := range x {
			all = append(all, s.quantity(one, c.Kind))
		}
		return strings.Join(all, ", ")
	case int:
		if v.Counts != "" {
			return words.Count(x, v.Counts)
		}
		return number(float64(x))
	case bool:
		if x {
			return "yes"
		}
		return "no"
	case recipe.Strength:
		return s.strength(x)
	case recipe.Cut:
		return s.cut(x)
	case recipe.FractionPace:
		return s.pace(x)
	case recipe.HeatUp:
		return s.heatUp(x)
	case recipe.Start:
		return fmt.Sprintf("%04d-%02d-%02d %02d:%02d", x.Year, x.Month, x.Day, x.Hour, x.Minute)
	case recipe.Shift:
		return shiftWords(x)
	case recipe.Climate:
		return s.climate(x)
	case recipe.YearOfAir:
		return s.air(x)
	case []*recipe.Vessel:
		var names []string
		for _, one := range x {
			names = append(names, one.Name)
		}
		return strings.Join(names, ", ")
	default:
		return fmt.Sprint(x)
	}
}

// heatUp is how fast a charge is brought to its boil.
func (s say) heatUp(h recipe.HeatUp) string {
	switch {
	case h.OverS > 0:
		return "over " + duration(h.OverS)
	case h.RateKS > 0:
		return "at " + s.quantity(h.RateKS, quantity.HeatingRate)
	case h.PowerW > 0:
		return "at " + power(h.PowerW)
	}
	return "at full heat"
}

// pace is how fast a fraction comes.
func (s say) pace(p recipe.FractionPace) string {
	switch {
	case p.OverS > 0:
		return "over " + duration(p.OverS)
	case p.FlowM3S > 0:
		return "at " + s.volume(p.FlowM3S*hourS) + "/h"
	case p.PowerW > 0:
		return "at " + power(p.PowerW)
	case p.Full:
		return "at full heat"
	}
	return "that of the hearts"
}

// quantity is a number of a kind, in the reader's units.
func (s say) quantity(x float64, k quantity.Kind) string {
	switch k {
	case quantity.Mass:
		return s.mass(x)
	case quantity.Volume:
		return s.volume(x)
	case quantity.Temperature:
		return s.temp(x)
	case quantity.Duration:
		return duration(x)
	case quantity.Share, quantity.Dose:
		return s.share(x)
	case quantity.Concentration:
		return conc(x)
	case quantity.Length:
		return s.length(x)
	case quantity.Power:
		return power(x)
	case quantity.Area:
		return s.area(x)
	case quantity.Flow:
		return s.flow(x)
	case quantity.MassFlow:
		return s.massFlow(x)
	case quantity.HeatingRate:
		perMin := func(k float64) float64 { return math.Round(1e3*k*minuteS) / 1e3 }
		return s.or(number(perMin(1.8*x))+" F/min", number(perMin(x))+" C/min")
	case quantity.HeatTransfer:
		return number(math.Round(x)) + " W/m2/K"
	case quantity.PartsPerMillion:
		return number(x) + " ppm"
	case quantity.PH:
		return number(x) + " pH"
	case quantity.DiastaticPower:
		return number(x) + " lintner"
	case quantity.DextrinizingUnit:
		return number(x) + " DU"
	case quantity.Rate:
		return number(math.Round(1e9*x*hourS)/1e9) + " /h"
	case quantity.MolarEnergy:
		return number(x/1000) + " kJ/mol"
	default:
		return number(x)
	}
}

func (s say) climate(c recipe.Climate) string {
	if c.LossYearly == 0 {
		return c.Named
	}
	return strings.TrimSpace(c.Named + " (loss " + s.share(c.LossYearly) + " a year)")
}

// air is the air of a rack house in the year.
func (s say) air(y recipe.YearOfAir) string {
	if !y.Said {
		return "not said"
	}
	var months []string
	for i, a := range y.Months {
		if i > 0 && a == y.Months[i-1] {
			continue
		}
		months = append(months, strings.ToLower(time.Month(i + 1).String()[:3])+" "+s.temp(a.TempC)+" "+s.share(a.Humidity))
	}
	return strings.Join(months, ", ")
}

func shiftWords(s recipe.Shift) string {
	days := ""
	for i := 1; i <= 7; i++ { // Monday first
		if s.Days[i%7] {
			days += " " + [...]string{"sun", "mon", "tue", "wed", "thu", "fri", "sat"}[i%7]
		}
	}
	clock := func(m int) string { return fmt.Sprintf("%02d:%02d", m/60, m%60) }
	return clock(s.FromMinute) + " to " + clock(s.ToMinute) + days
}
