package recipe

import (
	"strings"

	"newmake/lang/diag"
)

// Tank is a vessel of the plant in which something waits between the steps of the
// work.
type Tank struct {
	Name    string
	HoldsM3 float64 // to the brim
	For     Contents
	Where   map[string]diag.Span // field → its line
	At      diag.Span
}

// Contents is a set of what may wait in a tank.
type Contents uint16

// What a tank is for.
const (
	OfLowWines   Contents = 1 << iota
	OfFeints              // heads and tails of a spirit run
	OfSpirit              // hearts, and what they are reduced to
	OfHotLiquor           // water of a mash that is heated beforehand
	OfColdLiquor          // water of a mash as it comes
	OfBackset
	OfWorts     // hot, of a tun that is drained into an underback
	OfWeakWorts // the last water, kept for the next mash
	OfPotAle    // of a charge of the wash still, hot for the next one
)

// AllContents are the single contents, in the order of their words.
var AllContents = []Contents{OfLowWines, OfFeints, OfSpirit, OfHotLiquor, OfColdLiquor, OfBackset, OfWorts, OfWeakWorts, OfPotAle}

var contentWords = map[Contents]string{
	OfLowWines: "low-wines", OfFeints: "feints", OfSpirit: "spirit",
	OfHotLiquor: "hot-liquor", OfColdLiquor: "cold-liquor", OfBackset: "backset", OfWorts: "worts", OfWeakWorts: "weak-worts", OfPotAle: "pot-ale",
}

// String is the words that the contents are written by, in a row.
func (c Contents) String() string { return strings.Join(c.Words(), ", ") }

// Words are the words that the contents are written by.
func (c Contents) Words() []string {
	var out []string
	for _, one := range AllContents {
		if c&one != 0 {
			out = append(out, contentWords[one])
		}
	}
	return out
}

// tankRows are the values of a tank.
var tankRows = []row[Tank]{
	{Row{Path: PathOf("holds")}, func(t *Tank) []Cell { return cells(number(&t.HoldsM3)) }},
	{Row{Path: PathOf("for")}, func(t *Tank) []Cell { return cells(datum(&t.For)) }},
}

// Values are those of a tank.
func (t *Tank) Values() []Value {
	v := &values{}
	gather(v, owner{path: PathPlant.Child(t.Name), name: t.Name, words: t.Name, where: in(t.Where)}, tankKinds, tankRows, t)
	return v.out
}

// TanksFor are the tanks of the plant that are for any of some contents.
func (p *Plant) TanksFor(c Contents) []*Tank {
	var out []*Tank
	for _, t := range p.Tanks {
		if t.For&c != 0 {
			out = append(out, t)
		}
	}
	return out
}
