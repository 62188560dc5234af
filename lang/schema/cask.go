package schema

import (
	"newmake/lang/quantity"
)

// bottleLimits are those of a bottle, wherever it is filled from.
var bottleLimits = []Limit{mustBe(1e-5, 0.01, "from a miniature to the largest bottles").of("volume"), strength100}

// Bottle is the bottle of a batch that goes into no wood; of others it
// stands in the cask.
var Bottle = &Field{
	Name: "bottle", Shape: `VOLUME ["at" STRENGTH]`, Example: "bottle 750 mL at 100 proof", Default: "none: the spirit is kept as it comes",
	Doc: "Of a batch without a `cask`: its bottle and bottling strength.", Limits: bottleLimits,
}

// Cask is filling and the years in wood, in a batch.
var Cask = &Field{
	Name: "cask", Example: "cask", Default: "none: the spirit goes into no wood",
	Doc: "Reduction, filling, and the years in wood. A batch without it is not aged: it is bottled as its `bottle` line says, or kept.",
	Block: &Block{Fields: []*Field{
		{
			Name: "entry", Shape: "STRENGTH", Need: true, Example: "entry 114 proof", Doc: "Strength at which it goes into the cask.",
			Limits: []Limit{
				mustBe(0.2, 1, "a cask takes spirit, from weak low wines up to pure alcohol").of("strength"),
				usually(0.45, 0.72, "casks are filled between about 100 and 140 proof (common practice)").of("strength"),
			},
		},
		{
			Name: "fill", Shape: `VOLUME ("new"|"used") WOOD ["char" NUMBER]`, Need: true, Example: "fill 53 gal new charred-oak char 3",
			Doc: "Size and wood of the cask, whether it is new, and its char.",
			Limits: []Limit{
				mustBe(1e-3, 100, "from a litre to a vat").of("volume"),
				mustBe(0, 4, "chars are numbered 1 to 4, and 0 is none").of("number"),
			},
		},
		{
			Name: "tare", Shape: "MASS", Default: "by the library's wood and the size", Example: "tare 112 lb", Doc: "Weight of an empty cask, soaked.",
			Limits: []Limit{mustBe(0.05, 1e5, "from a keg of a litre to a vat")},
		},
		{
			Name: "rest", Shape: "DURATION", Need: true, Example: "rest 30 months", Doc: "How long it stays in wood.",
			Limits: []Limit{mustBe(0, 100*quantity.YearS, "a rest is at most a hundred years"), usually(0, 40*quantity.YearS, "few casks hold anything after that")},
		},
		{
			Name: "bottle", Shape: `VOLUME ["at" STRENGTH]`, Default: "750 mL (700 mL in SI) at the standard's least, or 40 % abv", Example: "bottle 750 mL at 94 proof",
			Doc: "Bottle and bottling strength, for the count of bottles.", Limits: bottleLimits,
		},
		climate, Remove,
	}},
}
