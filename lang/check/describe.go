package check

import (
	"math"
	"slices"
	"strings"

	"newmake/lang/diag"
	"newmake/lang/quantity"
)

// Form is a line of the field as a reader sees it: words as they are written,
// values as the names of their slots (see SlotTypes), [what may be left out],
// one | another, (repeated)*.
func (f *Field) Form() string {
	s := strings.ReplaceAll(f.shape.String(), mustCompile(stepShape).String(), "STEP")
	if f.shape.op == opAlt && f.Name != "" && s != "STEP" {
		s = "(" + s + ")"
	}
	return strings.TrimSpace(f.Name + " " + strings.ReplaceAll(s, "("+mustCompile(dayShape).String()+")", "DAY"))
}

// FieldSlot is one slot of a field's shape.
type FieldSlot struct {
	Name  string // by which the checker and Limit.Slot know it
	Type  string // one of SlotTypes
	Kind  quantity.Kind
	Range bool
}

// Slots lists the slots of the field's shape, in order.
func (f *Field) Slots() []FieldSlot {
	var out []FieldSlot
	f.shape.visit(func(s *shape) {
		if s.op == opSlot {
			out = append(out, FieldSlot{s.slot, s.kind.Name, s.kind.Kind, s.isRng})
		}
	})
	return out
}

// Words lists the fixed words of the field's shape, in order, without the marks.
func (f *Field) Words() []string {
	var out []string
	f.shape.visit(func(s *shape) {
		if s.op == opWord && s.word != "," && !slices.Contains(out, s.word) {
			out = append(out, s.word)
		}
	})
	return out
}

func (s *shape) visit(see func(*shape)) {
	see(s)
	for _, sub := range s.subs {
		sub.visit(see)
	}
}

// Bound is a limit of a field in words.
type Bound struct {
	Of       string // the slot's type, if the field has quantities of several sorts
	Text     string // "0 C to 60 C (32 F to 140 F)"
	Severity diag.Severity
	Reason   string
}

// Bounds says the field's limits in words, in the units of both systems.
func (f *Field) Bounds() []Bound {
	var sorts []string
	for _, s := range f.Slots() {
		if s.Kind != quantity.None && !slices.Contains(sorts, s.Type) {
			sorts = append(sorts, s.Type)
		}
	}
	var out []Bound
	for _, l := range f.Limits {
		b := Bound{Severity: l.Severity, Reason: l.Reason}
		kind := quantity.Number
		for _, s := range f.Slots() {
			if s.Kind != quantity.None && (l.Slot == "" || l.Slot == s.Name) {
				kind = s.Kind
				if l.Slot != "" && len(sorts) > 1 {
					b.Of = s.Type
				}
				break
			}
		}
		b.Text = span(l.Low, l.High, kind)
		out = append(out, b)
	}
	return out
}

// span writes a limit in SI, and after it in US units if there are such.
func span(low, high float64, k quantity.Kind) string {
	text := spanIn(low, high, k, unitsShown[k].si)
	us := unitsShown[k].us
	if len(us) == 0 || low < tiny && math.IsInf(high, 1) {
		return text
	}
	return text + " (" + spanIn(low, high, k, us) + ")"
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
		return in(si, "", k)
	}
	best := units[0]
	for _, u := range units[1:] {
		if v, err := quantity.FromSI(si, u, k); err == nil && math.Abs(v) >= 0.9999 {
			best = u
		}
	}
	text := in(si, best, k)
	if (best == "day" || best == "year") && !strings.HasPrefix(text, "1 ") {
		text += "s"
	}
	return text
}

// unitsShown are the units in which a limit is written, smaller ones first.
var unitsShown = map[quantity.Kind]struct{ si, us []string }{
	quantity.Mass:             {[]string{"g", "kg"}, []string{"oz", "lb"}},
	quantity.Volume:           {[]string{"mL", "L"}, []string{"fl oz", "gal"}},
	quantity.Temperature:      {[]string{"C"}, []string{"F"}},
	quantity.TempDifference:   {[]string{"C"}, []string{"F"}},
	quantity.Duration:         {[]string{"s", "min", "h", "day", "year"}, nil},
	quantity.Length:           {[]string{"m"}, []string{"ft"}},
	quantity.Power:            {[]string{"W", "kW"}, nil},
	quantity.Strength:         {[]string{"% abv"}, []string{"proof"}},
	quantity.Share:            {[]string{"%"}, nil},
	quantity.Concentration:    {[]string{"g/L"}, nil},
	quantity.Dose:             {[]string{"g/kg"}, nil},
	quantity.Rate:             {[]string{"/h"}, nil},
	quantity.MolarEnergy:      {[]string{"kJ/mol"}, nil},
	quantity.DiastaticPower:   {[]string{"lintner"}, nil},
	quantity.DextrinizingUnit: {[]string{"DU"}, nil},
	quantity.PartsPerMillion:  {[]string{"ppm"}, nil},
	quantity.Acidity:          {[]string{"pH"}, nil},
	quantity.PerYear:          {[]string{"%/year"}, nil},
}
