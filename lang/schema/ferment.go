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
			Name: "pitch", Shape: `YEAST [CONC|MASS] ["as" "it" "fills"]`, Need: true, Example: "pitch distillers-yeast 0.6 g/L", Default: "the middle of the library's range",
			Doc: "Which yeast, and how much of it as bought: by volume of wort, or a weight. As it fills: into the first of a wort that runs in cold from the tun.", Limits: []Limit{mustBe(least, 100, "that is a tenth of the wort already").of("conc"), mustBe(least, 1e5, "no fermenter is pitched with a hundred tonnes").of("mass")},
		},
		{
			Name: "dose", Shape: "ENZYME [MASS|DOSE|SHARE]", Repeat: true, Key: "enzyme", Example: "dose glucoamylase 0.06 % of grain", Default: "the middle of the library's range",
			Doc: "An enzyme into the fermenter.", Limits: []Limit{mustBe(0, 0.2, "enzymes are given in parts per thousand of the grain").of("share"), mustBe(0, 0.2, "enzymes are given in parts per thousand of the grain").of("dose"), aDose},
		},
		{
			Name: "nutrient", Shape: `("dap"|"urea") (CONC|MASS)`, Example: "nutrient dap 0.15 g/L", Default: "none",
			Doc: "Diammonium phosphate for the yeast, by volume of wort or a weight. Urea is not allowed: it leaves ethyl carbamate in the spirit.",
			Limits: []Limit{
				mustBe(0, 10, "yeast can't take up so much").of("conc"), usually(0, 1, "0.1 to 0.3 g/L is given to a mash of raw grain, none to all malt (from memory)").of("conc"),
				mustBe(0, 1e4, "no fermenter is given ten tonnes").of("mass"),
			},
		},
		{
			Name: "antifoam", Shape: "VOLUME", Example: "antifoam 4 fl oz", Default: "none",
			Doc:    "Food-grade antifoam, the emulsion as bought. What may stay in the product is limited by law (in the United States 10 mg/L of silicone, 21 CFR 173.340, from memory); the maker's sheet says how strong it is.",
			Limits: []Limit{mustBe(0, 1, "no fermenter is given a cubic metre")},
		},
		{
			Name: "rehydrate", Shape: `"in" VOLUME "at" TEMP ["for" DURATION]`, Example: "rehydrate in 2.5 gal at 95 F for 20 min", Default: "not; for 20 min",
			Doc: "Dry yeast wetted in clean water before it is pitched. Ten parts of water to one of yeast is usual.",
			Limits: []Limit{
				mustBe(1e-5, 100, "from 10 mL to more than any fermenter is given").of("volume"),
				mustBe(10, 45, "hotter it kills dry yeast, colder most of it leaks and dies").of("temp"), usually(30, 40, "dry yeast wakes best in water of 30 to 40 C (common practice)").of("temp"),
				mustBe(60, 2*quantity.HourS, "it starves in plain water").of("duration"), usually(10*60, 30*60, "15 to 30 min, then it starves (common practice)").of("duration"),
			},
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
