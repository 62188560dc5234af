package schema

const yesNo = `"yes"|"no"`

// Grain is the declaration of a grain.
var Grain = &Field{
	Name: "grain", Shape: libraryName, Repeat: true, Key: "name", Example: "grain corn",
	Doc: "A cereal, raw or malted. Shares are of the dry matter, but moisture is of the weight as bought.",
	Block: &Block{Fields: []*Field{
		{Name: "cereal", Shape: "WORD", Need: true, Example: "cereal corn", Doc: "The cereal it is, by which the law counts it."},
		{Name: "malted", Shape: yesNo, Default: "no", Example: "malted yes", Doc: "Whether it is malted."},
		{Name: "roasted", Shape: yesNo, Default: "no", Example: "roasted yes", Doc: "Whether it is roasted, which kills its enzymes."},
		{
			Name: "bushel", Shape: "MASS|TESTWEIGHT", Example: "bushel 56 lb", Doc: "What a trade bushel of it weighs.",
			Limits: []Limit{mustBe(5, 50, "trade bushels weigh from 32 lb, oats, to 60 lb, wheat")},
		},
		{
			Name: "moisture", Shape: "SHARE", Need: true, Example: "moisture 13.8 %", Doc: "Water, of the weight as bought.",
			Limits: []Limit{mustBe(0, 0.5, "wetter than this it is no dry grain"), usually(0.01, 0.18, "grain above 15 % spoils in store (common practice)")},
		},
		{Name: "starch", Shape: "SHARE", Example: "starch 71.8 %", Doc: "Starch, of the dry matter.", Limits: []Limit{mustBe(0, 0.95, "no cereal has more")}},
		{Name: "sugars", Shape: "SHARE", Example: "sugars 2 %", Doc: "Fermentable sugars that are there before the mash.", Limits: []Limit{mustBe(0, 0.95, "no cereal has more")}},
		{Name: "extract", Shape: "SHARE", Example: "extract 80 %", Doc: "Extract of the fine grind, dry basis.", Default: "from starch, sugars and solubles", Limits: []Limit{mustBe(0, 1, "it is part of the dry matter")}},
		{Name: "solubles", Shape: "SHARE", Example: "solubles 4 %", Doc: "Other matter that dissolves: protein, gums, minerals.", Limits: []Limit{mustBe(0, 0.6, "no cereal has more")}},
		{
			Name: "gelatinizes", Shape: "TEMP..TEMP", Example: "gelatinizes 62..75 C", Doc: "The temperatures between which its starch swells and bursts; only then can enzymes work on it.",
			Limits: []Limit{mustBe(40, 95, "starch of cereals gelatinizes between about 50 C and 80 C")},
		},
		{Name: "power", Shape: "LINTNER", Default: "0 lintner", Example: "power 240 lintner", Doc: "Diastatic power, as bought.", Limits: []Limit{mustBe(0, 500, "no malt has more")}},
		{Name: "alpha", Shape: "DU", Default: "0 DU", Example: "alpha 90 DU", Doc: "Alpha-amylase.", Limits: []Limit{mustBe(0, 400, "no malt has more")}},
		{
			Name: "limit-dextrinase", Shape: "SHARE", Default: "100 %", Example: "limit-dextrinase 20 %",
			Doc:    "Limit dextrinase that the kiln left, for its alpha-amylase: 100 % in a lager or distilling malt, about 20 % in a malt kilned as for ale.",
			Limits: []Limit{mustBe(0, 2, "hardly any malt has more than a lager malt")},
		},
		{Name: "viscous", Shape: yesNo, Default: "no", Example: "viscous yes", Doc: "Whether its gums make a thick mash."},
		{
			Name: "most", Shape: "TEMP", Default: "none", Example: "most 71 C", Doc: "Add it at this temperature or below.",
			Limits: []Limit{mustBe(30, 100, "a mash is between cool and boiling")},
		},
	}},
}
