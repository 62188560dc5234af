package wording

import (
	"math"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"sync"

	"newmake/lang/diag"
	"newmake/lang/pattern"
	"newmake/lang/quantity"
	"newmake/lang/words"
)

// Example is a line of the language as an example for whoever reads a text: in
// backquotes, its quantities in the units of that text.
func Example(at diag.Span, line string) string {
	return "`" + Restated(line, at.Units()) + "`"
}

// Restated is an example with its quantities in the units of a system, rounded as an
// example needs; Both leaves it as it is written. Texts in quotes stay, and
// so do mL, in which bottles and samples are counted everywhere, but for the size of a bottle.
func Restated(line string, to quantity.System) string {
	if to == quantity.Both {
		return line
	}
	parts := strings.Split(line, `"`)
	for i := 0; i < len(parts); i += 2 { // every second part is in quotes
		if parts[i] = restatedAmounts(parts[i], to, false); to == quantity.SI {
			parts[i] = bottlesInSI.Replace(blanksInSI.Replace(parts[i]))
		}
	}
	return strings.Join(parts, `"`)
}

// blanksInSI are the units of amounts that are left open.
var blanksInSI = strings.NewReplacer("__ gal", "__ L", "__ lb", "__ kg", "__ F", "__ C", "__ proof", "__ % vol")

// bottlesInSI are the sizes of bottles of which only one of the two may be sold: spirits go
// in 700 mL in Europe, and not in 750 (Directive 2007/45/EC, annex, section 1; its list from memory).
var bottlesInSI = strings.NewReplacer("750 mL", "700 mL")

// Prose restates a text for a reader of one system of units. Of an amount given in both, as
// in 155 F (68 C), only the reader's is left; a reader in SI is shown no US units at all; and
// the trade's words are the reader's (words.Trade). A sentence that compares the systems or
// quotes a regulation stays as it is, and so do units written out as words.
func Prose(text string, to quantity.System) string {
	if to == quantity.Both {
		return text
	}
	sentences := strings.SplitAfter(text, ". ")
	for i, s := range sentences {
		s = words.Trade(oneOfTwo(s, to), to)
		if to == quantity.SI {
			s = strings.ReplaceAll(s, "`% abv`", "`% vol`")
		}
		if to == quantity.SI && !strings.Contains(s, " CFR ") && !compares(s) {
			s = restatedAmounts(s, to, true)
		}
		sentences[i] = s
	}
	return strings.Join(sentences, "")
}

// twice is an amount with the same in brackets, in other units.
var twice = sync.OnceValue(func() *regexp.Regexp {
	return regexp.MustCompile(`(` + aNumber + ` (` + aUnit + `)) \((` + aNumber + ` (` + aUnit + `))\)`)
})

// oneOfTwo leaves, of each amount given in both systems, that of the reader's.
func oneOfTwo(text string, to quantity.System) string {
	return twice().ReplaceAllStringFunc(text, func(both string) string {
		m := twice().FindStringSubmatch(both)
		first, ok1 := quantity.Lookup(m[2])
		second, ok2 := quantity.Lookup(m[4])
		switch {
		case !ok1 || !ok2 || first.Measures[0].Kind != second.Measures[0].Kind:
		case first.System == second.System:
		case second.System == to, first.System != to && second.System == quantity.Both:
			return m[3]
		default:
			return m[1]
		}
		return both
	})
}

// compares reports whether a text has amounts in the units of both systems.
func compares(text string) bool {
	seen := map[quantity.System]bool{}
	for _, m := range amount().FindAllStringSubmatch(text, -1) {
		if u, ok := quantity.Lookup(m[5]); ok {
			seen[u.System] = true
		}
	}
	return seen[quantity.US] && seen[quantity.SI]
}

const (
	aNumber = `(?:(?:-?[0-9][0-9,.]*[0-9]|[0-9])(?:\.\.|-| to | and | or ))?-?[0-9][0-9,]*(?:\.[0-9]+)?`
	aUnit   = `fl oz|%? ?[\p{L}/][\p{L}0-9²³/%-]*`
)

// amount is a number or a range with its unit, and what stands before it.
var amount = pattern.Of("(^|[\\s(=`])(?:(-?[0-9][0-9,.]*[0-9]|[0-9])(\\.\\.|-| to | and | or ))?(-?[0-9][0-9,]*(?:\\.[0-9]+)?) (" + aUnit + ")")

// apart are the words after which a temperature is a distance on the scale.
var apart = pattern.Of(`(?:within|by|thermometer|\+/-)$`)

// restatedAmounts leaves units that are written out, as pounds, where symbols alone are
// asked for.
func restatedAmounts(text string, to quantity.System, symbols bool) string {
	var b strings.Builder
	done := 0
	for _, m := range amount().FindAllStringSubmatchIndex(text, -1) {
		part := func(i int) string {
			if m[2*i] < 0 {
				return ""
			}
			return text[m[2*i]:m[2*i+1]]
		}
		unit := restatedUnit(part(5), apart().MatchString(strings.TrimSpace(text[:m[3]])), to)
		if u, _ := quantity.Lookup(part(5)); unit.name == "" || symbols && slices.Contains(u.Aliases, part(5)) {
			continue
		}
		end := m[1]
		b.WriteString(text[done:m[3]])
		if low := part(2); low != "" {
			b.WriteString(unit.value(low) + part(3))
		}
		b.WriteString(unit.value(part(4)) + " " + unit.of(part(4)))
		done = end
	}
	return b.String() + text[done:]
}

// restating brings the values of one unit to another.
type restating struct {
	name   string // "" where the unit stays
	from   string
	kind   quantity.Kind
	per    float64 // of a price: so many of the old unit are one of the new
	best   []string
	system quantity.System
}

// restatedUnit finds the unit of a system for one that an example has.
func restatedUnit(unit string, difference bool, to quantity.System) restating {
	if p, ok := quantity.ParsePrice(unit); ok {
		return restatedPrice(p, to)
	}
	u, ok := quantity.Lookup(unit)
	if !ok {
		return restating{}
	}
	kind := u.Measures[0].Kind
	if difference && kind == quantity.Temperature {
		kind = quantity.TempDifference
	}
	r := restating{from: unit, kind: kind, system: to}
	switch {
	case kind == quantity.Strength && u.Name == "% abv" && to == quantity.SI:
		r.name = "% vol"
	case u.System == quantity.Both || u.System == to || u.Name == "mL":
	case u.Name == "proof":
		r.name = "% vol"
	case u.Name == "proof-gal":
		r.name = "LPA"
	case kind == quantity.Flow || kind == quantity.MassFlow: // by the hour as by the minute
		_, time, _ := strings.Cut(u.Name, "/")
		r.name = map[quantity.Kind][quantity.SI + 1]string{quantity.Flow: {quantity.US: "gal/", quantity.SI: "L/"}, quantity.MassFlow: {quantity.US: "lb/", quantity.SI: "kg/"}}[kind][to] + time
	case to == quantity.SI:
		r.best = unitsShown[kind].si
	default:
		r.best = unitsShown[kind].us
	}
	if len(r.best) > 0 {
		r.name = r.best[0]
	}
	return r
}

// proofGallonLPA is the pure alcohol of a proof gallon in litres: half of a gallon.
const proofGallonLPA = 3.785411784 / 2

// restatedPrice finds what a price is for in a system's units: the kilogram or the pound,
// the cubic metre or the gallon.
func restatedPrice(p quantity.Price, to quantity.System) restating {
	if p.Per == nil || p.Per.System == to || p.Per.System == quantity.Both {
		return restating{}
	}
	kind := p.Per.Measures[0].Kind
	per := map[quantity.Kind][quantity.SI + 1]string{quantity.Mass: {quantity.US: "lb", quantity.SI: "kg"}, quantity.Volume: {quantity.US: "gal", quantity.SI: "m3"}}[kind][to]
	if per == "" {
		return restating{}
	}
	one, _ := quantity.ToSI(1, per, kind)
	was, _ := quantity.ToSI(1, p.Per.Name, kind)
	return restating{name: p.Currency + "/" + per, from: p.PerName, per: one / was}
}

// of is the unit in which a value is written: the largest of those that fit.
func (r restating) of(number string) string {
	if len(r.best) < 2 {
		return r.name
	}
	return bestOf(r.si(number), r.kind, r.best)
}

func (r restating) si(number string) float64 {
	v, _ := strconv.ParseFloat(strings.ReplaceAll(number, ",", ""), 64)
	si, err := quantity.ToSI(v, r.from, r.kind)
	if err != nil {
		return v
	}
	return si
}

// value is a number as it stands in the new unit.
func (r restating) value(number string) string {
	v, _ := strconv.ParseFloat(strings.ReplaceAll(number, ",", ""), 64)
	switch {
	case r.per > 0:
		return twoFigures(v * r.per)
	case r.kind == quantity.Strength && r.from == "proof":
		return Decimal(v / 2)
	case r.name == "LPA":
		return twoFigures(v * proofGallonLPA)
	case r.kind == quantity.Strength:
		return number
	case r.kind == quantity.Temperature && r.from == "F" && v == 60: // where spirit is gauged
		return "20"
	case r.kind == quantity.Temperature && r.from == "C" && v == 20:
		return "60"
	}
	to, err := quantity.FromSI(r.si(number), r.of(number), r.kind)
	switch {
	case err != nil:
		return number
	case r.kind == quantity.Temperature:
		return Decimal(math.Round(to))
	}
	return twoFigures(to)
}

// twoFigures writes a number rounded to two figures; to three where two would change it
// by more than a fiftieth.
func twoFigures(v float64) string {
	for _, figures := range []int{2, 3} {
		rounded, err := strconv.ParseFloat(strconv.FormatFloat(v, 'g', figures, 64), 64)
		if err == nil && math.Abs(rounded-v) <= math.Abs(v)/50 {
			return Decimal(rounded)
		}
	}
	return Decimal(v)
}

// OthersAlone reports whether what is measured has units, and none that are named to a
// reader: proof gallons, for who counts in litres.
func OthersAlone(k quantity.Kind, reader quantity.System) bool {
	return len(quantity.Units(k)) > 0 && len(UnitsOf(k, reader)) == 0
}

// UnitsOf are the units of a kind that are named to a reader. Who counts in litres is
// named no gallons; who counts in gallons meets litres on bottles and in the laboratory.
func UnitsOf(k quantity.Kind, reader quantity.System) []string {
	var out []string
	for _, name := range quantity.Units(k) {
		u, _ := quantity.Lookup(name)
		switch {
		case reader != quantity.Both && name == "imp-gal": // it is read, and is neither's
			continue
		case reader != quantity.SI:
		case u.System == quantity.US:
			continue
		case name == "% abv":
			name = "% vol"
		}
		out = append(out, name)
	}
	return out
}
