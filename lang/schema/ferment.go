package schema

import (
	"newmake/lang/quantity"
)

var Ferment = &Field{
	Name: "ferment", Shape: `["in" ("any" "fermenter"|VESSEL ("," VESSEL)*)]`, Need: true, Example: "ferment in any fermenter",
	Doc: "The days in the fermenter.",
	Block: &Block{Fields: []*Field{
		{
			Name: "pitch", Shape: "YEAST [CONC|MASS]", Need: true, Example: "pitch distillers-yeast 0.6 g/L", Default: "the middle of the stock's range",
			Doc: "Which yeast, and how much of it as bought: by volume of wort, or a weight.", Limits: []Limit{mustBe(least, 100, "with more yeast than a tenth of the wort it is a dough").of("conc"), mustBe(least, 1e5, "more yeast than any fermenter takes").of("mass")},
		},
		{
			Name: "dose", Shape: "ENZYME [MASS|DOSE|SHARE]", Repeat: true, Key: "enzyme", Example: "dose glucoamylase 0.06 % of grain", Default: "the middle of the stock's range",
			Doc: "An enzyme into the fermenter.", Limits: []Limit{mustBe(0, 0.2, "that is no dose but a meal").of("share"), mustBe(0, 0.2, "that is no dose but a meal").of("dose"), aDose},
		},
		{
			Name: "hold", Shape: "TEMP..TEMP|TEMP", Need: true, Example: "hold 78..88 F",
			Doc: "The temperatures between which it is kept: cooling comes on above, warming below.", Limits: []Limit{mustBe(0, 60, "yeast is dead at 60 C, and asleep at 0")},
		},
		{
			Name: "for", Shape: "DURATION", Need: true, Example: "for 5 days", Doc: "How long it stands.",
			Limits: []Limit{mustBe(6*quantity.HourS, 60*quantity.DayS, "a ferment takes days"), usually(48*quantity.HourS, 10*quantity.DayS, "the sugar goes in about two days; past ten days a wash spoils (common practice)")},
		},
		Remove,
	}},
}
