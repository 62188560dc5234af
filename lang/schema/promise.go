package schema

import (
	"newmake/lang/quantity"
)

// Promise is something a batch may promise of its own plan.
type Promise struct {
	What  string
	Kinds []quantity.Kind // in which it may be promised
	Doc   string
	None  bool // it may be nothing
}

// Within is what may be promised of one kind.
func (p Promise) Within(k quantity.Kind) Limit {
	for _, l := range promisedWithin {
		if l.Kind == k {
			if p.None {
				l.Low = 0
			}
			return l
		}
	}
	return mustBe(0, 1e9, "nothing of a batch comes to more").as(k)
}

// mostYield is the pure alcohol of a kilogram of starch in m3 at 20 C: 180.156/162.141 of
// glucose, of which 2 x 46.068/180.156 is ethanol of 789.24 kg/m3 (stoichiometry).
const mostYield = 2 * 46.068 / 162.141 / 789.24

// promisedWithin are the limits of what is promised, by its kind.
var promisedWithin = []Limit{
	mustBe(least, 1e5, "a promise of nothing is none, and no house has vessels for more").as(quantity.Volume),
	mustBe(least, 1, "a promise of nothing is none, and nothing is stronger than pure alcohol").as(quantity.Strength),
	mustBe(0.9, 1.2, "worts and washes lie between these").as(quantity.Gravity),
	mustBe(least, 1e5, "a promise of nothing is none, and no house has vessels for more").as(quantity.PureAlcohol),
	mustBe(least, 1e7, "a promise of nothing is none, and no house has vessels for more").as(quantity.ProofGallons),
	mustBe(least, mostYield, "a promise of nothing is none, and pure starch gives no more").as(quantity.SpiritYield),
	mustBe(0, 1e6, "casks are counted").as(quantity.Number),
	mustBe(1, 100*quantity.DayS, "work takes time, and no batch waits for a hundred days").as(quantity.Duration),
}

// Promises is what may stand after `promise`.
var Promises = []Promise{
	{"original-gravity", []quantity.Kind{quantity.Gravity}, "gravity of the wort, from the grain alone", false},
	{"final-gravity", []quantity.Kind{quantity.Gravity}, "gravity of the finished wash", false},
	{"wash", []quantity.Kind{quantity.Volume, quantity.Strength}, "the wash, its volume or its strength", false},
	{"low-wines", []quantity.Kind{quantity.Volume, quantity.Strength}, "the low wines, their volume or strength", false},
	{"hearts", []quantity.Kind{quantity.Volume, quantity.Strength, quantity.ProofGallons, quantity.PureAlcohol}, "the hearts, by their volume, their strength or the alcohol in them", false},
	{"feints", []quantity.Kind{quantity.Volume, quantity.Strength}, "the feints, their volume or strength", false},
	{"pure-alcohol", []quantity.Kind{quantity.PureAlcohol, quantity.ProofGallons, quantity.Volume}, "pure alcohol in the hearts", false},
	{"yield", []quantity.Kind{quantity.SpiritYield}, "pure alcohol in the hearts by the weight of all the grain", false},
	{"casks", []quantity.Kind{quantity.Number}, "casks filled", false},
	{"leftover", []quantity.Kind{quantity.Volume}, "what is left over when the casks are full", true},
	{"mash", []quantity.Kind{quantity.Duration}, "how long the mash takes", false},
	{"dry", []quantity.Kind{quantity.Duration}, "when the sugar is gone", false},
	{"strip", []quantity.Kind{quantity.Duration}, "how long the stripping run takes", false},
	{"spirit", []quantity.Kind{quantity.Duration}, "how long the spirit run takes", false},
}

// PromiseLine is a promise, in a batch.
var PromiseLine = &Field{
	Name: "promise", Shape: `what:NAME QUANTITY ["within" margin:QUANTITY] ["in" times:NUMBER "of" runs:NUMBER]`, Repeat: true, Key: "what", KeyKind: "quantity", Example: "promise hearts 38 gal within 2 gal",
	Limits: []Limit{
		mustBe(1, 1000, "kept in no run it is no promise").of("times"), mustBe(2, 1000, "one run says nothing of how often, and nobody makes more than a thousand").of("runs"),
		mustBe(-1e9, 1e9, "each has limits of its own: `newmake explain yield` has those of a yield").of("quantity"),
		mustBe(0, 1e9, "a margin counts to either side").of("margin"),
	},
	Default: "kept by the plan as it stands",
	Doc:     "A promise that the plan has to keep; the margin is written, never guessed. One with `in 9 of 10` is to be kept in so many runs: `newmake odds` tries it.",
}
