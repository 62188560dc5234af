package quantity

import (
	"strings"

	"newmake/lang/spelling"
)

// Near gives the known units that are spelt nearly as name, best first, at most
// three. A unit that differs only in its capitals comes before all others. No
// prefix is guessed: `kgal` is near `gal`, never a thousand of it.
func Near(name string) []string { return nearFor(name, None) }

// nearFor is Near, with the units of a wanted kind before others as near.
func nearFor(name string, want Kind) []string {
	if name == "" || len(name) > 40 {
		return nil
	}
	lower := strings.ToLower(name)
	limit := 1
	if len(name) > 4 {
		limit = 2
	}
	var near spelling.Ranked
	for i := range table {
		u := &table[i]
		dist := limit + 1
		for _, n := range append([]string{u.Name}, u.Aliases...) {
			d := spelling.Distance(lower, strings.ToLower(n))
			// One letter in a unit of one or two letters is another unit.
			if d > 0 && len(n) <= 2 && len(name) <= 2 {
				continue
			}
			dist = min(dist, d)
		}
		if _, ok := u.Measure(want); !ok && want != None {
			dist++
		}
		if dist <= limit {
			near.Add(u.Name, dist)
		}
	}
	return near.First(3)
}

type hintKey struct {
	unit string
	want Kind
}

// hints are what people often mean by a unit in the wrong place.
var hints = map[hintKey]string{
	{"oz", Volume}:                 "`oz` is a weight; the volume is `fl oz`",
	{"fl oz", Mass}:                "`fl oz` is a volume; the weight is `oz`",
	{"bushel", Mass}:               "a trade bushel weighs what its grain weighs; a `distillers-bushel` is 56 lb of any grain",
	{"distillers-bushel", Bushel}:  "a `distillers-bushel` is 56 lb of any grain, not the grain's own trade bushel",
	{"gal/bushel", SpecificVolume}: "a trade bushel weighs what its grain weighs; write `gal/distillers-bushel` or `gal/lb`",
	{"gal/bu", SpecificVolume}:     "a trade bushel weighs what its grain weighs; write `gal/distillers-bushel` or `gal/lb`",
	{"%", Strength}:                "a strength is by volume or by weight: `% abv` or `% abw`",
	{"%", Dose}:                    "say of what: `% of grain`",
	{"hp", Power}:                  "a boiler's horsepower is `boiler-hp`, 9.81 kW; a motor's is 0.746 kW, and is written in `kW`",
	{"°L", DiastaticPower}:         "`°L` on a maltster's sheet is the colour, in degrees Lovibond; the diastatic power, in degrees Lintner, is `lintner`",
	{"ºL", DiastaticPower}:         "`ºL` on a maltster's sheet is the colour, in degrees Lovibond; the diastatic power, in degrees Lintner, is `lintner`",
	{"lintner", Gravity}:           "gravity is a bare number such as 1.062, or `plato`",
	{"gal", Mass}:                  "a volume has no weight until it is known what it is of; weigh it, or write a weight",
	{"L", Mass}:                    "a volume has no weight until it is known what it is of; weigh it, or write a weight",
	{"lb", Volume}:                 "a weight has no volume until it is known what it is of; write a volume",
	{"m", Duration}:                "`m` is a metre; minutes are `min`",
	{"kg", Volume}:                 "a weight has no volume until it is known what it is of; write a volume",
}
