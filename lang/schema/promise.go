package schema

import (
	"newmake/lang/quantity"
)

// Promise is something a batch may promise of its own plan.
type Promise struct {
	What  string
	Kinds []quantity.Kind // in which it may be promised
	Doc   string
}

// Promises is what may stand after `promise`.
var Promises = []Promise{
	{"original-gravity", []quantity.Kind{quantity.Gravity}, "gravity of the wort, from the grain alone"},
	{"final-gravity", []quantity.Kind{quantity.Gravity}, "gravity of the finished wash"},
	{"wash", []quantity.Kind{quantity.Volume, quantity.Strength}, "the wash, its volume or its strength"},
	{"low-wines", []quantity.Kind{quantity.Volume, quantity.Strength}, "the low wines, their volume or strength"},
	{"hearts", []quantity.Kind{quantity.Volume, quantity.Strength, quantity.ProofGallons, quantity.PureAlcohol}, "the hearts, their volume, strength, proof gallons or pure alcohol"},
	{"feints", []quantity.Kind{quantity.Volume, quantity.Strength}, "the feints, their volume or strength"},
	{"pure-alcohol", []quantity.Kind{quantity.PureAlcohol, quantity.ProofGallons, quantity.Volume}, "pure alcohol in the hearts"},
	{"yield", []quantity.Kind{quantity.SpiritYield}, "pure alcohol in the hearts by the weight of all the grain"},
	{"casks", []quantity.Kind{quantity.Number}, "casks filled"},
	{"leftover", []quantity.Kind{quantity.Volume}, "what is left over when the casks are full"},
	{"mash", []quantity.Kind{quantity.Duration}, "how long the mash takes"},
	{"dry", []quantity.Kind{quantity.Duration}, "when the sugar is gone"},
	{"strip", []quantity.Kind{quantity.Duration}, "how long the stripping run takes"},
	{"spirit", []quantity.Kind{quantity.Duration}, "how long the spirit run takes"},
}

// PromiseLine is a promise, in a batch.
var PromiseLine = &Field{
	Name: "promise", Shape: `what:NAME QUANTITY ["within" margin:QUANTITY] ["in" times:NUMBER "of" runs:NUMBER]`, Repeat: true, Key: "what", KeyKind: "quantity", Example: "promise hearts 38 gal within 2 gal",
	Limits: []Limit{
		mustBe(1, 1000, "runs are counted").of("times"), mustBe(2, 1000, "runs are counted").of("runs"),
		mustBe(-1e12, 1e12, "nothing of a batch comes to so much").of("quantity"), mustBe(-1e12, 1e12, "nothing of a batch comes to so much").of("margin"),
	},
	Default: "kept by the plan as it stands",
	Doc:     "A promise that the plan has to keep; the margin is written, never guessed. One with `in 9 of 10` is to be kept in so many runs: `newmake odds` tries it.",
}
