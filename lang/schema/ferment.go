package schema

import (
	"newmake/lang/quantity"
)

// Ferment is the days in the fermenter, in a batch.
var Ferment = &Field{
	Name: "ferment", Shape: `["in" ("any" "fermenter"|VESSEL ("," VESSEL)*)]`, Need: true, Example: "ferment in any fermenter",
	Doc: "The days in the fermenter.",
	Block: &Block{Fields: []*Field{
		{
			Name: "pitch", Shape: "YEAST [CONC|MASS]", Need: true, Example: "pitch distillers-yeast 0.6 g/L", Default: "the middle of the library's range",
			Doc: "Which yeast, and how much of it as bought: by volume of wort, or a weight.", Limits: []Limit{mustBe(least, 100, "that is a tenth of the wort already").of("conc"), mustBe(least, 1e5, "no fermenter is pitched with a hundred tonnes").of("mass")},
		},
		{
			Name: "dose", Shape: "ENZYME [MASS|DOSE|SHARE]", Repeat: true, Key: "enzyme", Example: "dose glucoamylase 0.06 % of grain", Default: "the middle of the library's range",
			Doc: "An enzyme into the fermenter.", Limits: []Limit{mustBe(0, 0.2, "enzymes are given in parts per thousand of the grain").of("share"), mustBe(0, 0.2, "enzymes are given in parts per thousand of the grain").of("dose"), aDose},
		},
		{
			Name: "hold", Shape: "TEMP..TEMP|TEMP", Need: true, Example: "hold 78..88 F",
			Doc: "The temperatures between which it is kept: cooling comes on above, warming below.", Limits: []Limit{mustBe(0, 60, "yeast ferments nothing at 0 C, and is dead at 60 C")},
		},
		{
			Name: "for", Shape: "DURATION", Need: true, Example: "for 5 days", Doc: "How long it stands.",
			Limits: []Limit{mustBe(6*quantity.HourS, 60*quantity.DayS, "a ferment takes days"), usually(48*quantity.HourS, 10*quantity.DayS, "the sugar goes in about two days; past ten days a wash spoils (common practice)")},
		},
		Remove,
	}},
}
