package schema

import "newmake/lang/quantity"

// Standard is the declaration of a standard of identity.
var Standard = &Field{
	Name: "standard", Shape: libraryName, Repeat: true, Key: "name", Example: "standard bourbon",
	Doc: "A standard of identity: what the law asks of a whisky that carries a name, so far as a program can test it.",
	Block: &Block{Fields: []*Field{
		{Name: "title", Shape: "TEXT", Need: true, Example: `title "Bourbon whisky"`, Doc: "The name on the label."},
		{Name: "law", Shape: "TEXT", Need: true, Example: `law "27 CFR 5.143"`, Doc: "The law that says so."},
		{Name: "country", Shape: "NAME", Example: "country us", Doc: "The `country` of the library whose law that is. A batch of a house elsewhere gets a note."},
		{
			Name: "grain", Shape: `NAME ("," NAME)* ["malted"|"unmalted"] ("at" ("least"|"most") SHARE|"some")`, Repeat: true, Example: "grain corn at least 51 %",
			Doc: "The least or the greatest share of the bill, by weight, of a grain or a cereal; `any` is all grain.", Limits: []Limit{aShare},
		},
		{Name: "enzymes", Shape: `"own"`, Example: "enzymes own", Doc: "No enzymes but those of the grain."},
		{Name: "still", Shape: `"pot"|"column"`, Example: "still pot", Doc: "The kind of still. Every run that is planned here is that of a pot still."},
		{Name: "off-still", Shape: `("under"|"over"|"at" "most") STRENGTH`, Repeat: true, Example: "off-still at most 160 proof", Doc: "Strength of the whole run, before it is reduced.", Limits: []Limit{aStrength}},
		{Name: "entry", Shape: `"at" "most" STRENGTH`, Example: "entry at most 125 proof", Doc: "Strength at which it goes into wood.", Limits: []Limit{aStrength}},
		{
			Name: "wood", Shape: `("new"|"used"|"charred"|"uncharred"|"oak"|"any"|"none"|"or")* ["at" "most" VOLUME]`, Example: "wood new charred oak",
			Doc: "The wood it rests in; alternatives are joined by `or`, and `none` means that it need not.", Limits: []Limit{mustBe(1e-4, 2000, "from a bottle to the largest vats")},
		},
		{Name: "age", Shape: `"at" "least" DURATION`, Example: "age at least 2 years", Doc: "Time in wood.", Limits: []Limit{mustBe(0, 100*quantity.YearS, "no standard asks for a hundred years")}},
		{Name: "bottled", Shape: `"at" ["least"] STRENGTH`, Example: "bottled at least 80 proof", Doc: "Strength in the bottle: the least, or without `least` the only one.", Limits: []Limit{aStrength}},
		{Name: "distilled", Shape: `"in" "one" "season"`, Example: "distilled in one season", Doc: "From the first charge to the last stop it is distilled between January and June, or between July and December."},
		{Name: "label", Shape: `("under" DURATION|"used") TEXT`, Repeat: true, Example: `label under 4 years "state the age"`, Doc: "What the label has to say of whisky that is younger in wood, or that rested in used wood: stated where it is, not tested.", Limits: []Limit{mustBe(0, 100*quantity.YearS, "no standard asks for a hundred years")}},
		{Name: "not", Shape: "STANDARD", Repeat: true, Key: "standard", Example: "not scotch-single-malt", Doc: "Another standard that it must not meet, as far as that can be tested."},
		{
			Name: "parts", Shape: `STANDARD ("," STANDARD)* "at" "least" SHARE`, Repeat: true, Example: "parts straight-bourbon, straight-rye at least 51 %",
			Doc: "Of a mixture: the least share of its alcohol that meets one of these standards by itself. A single batch is one part.", Limits: []Limit{aShare},
		},
		{Name: "made-in", Shape: "TEXT", Example: `made-in "United States"`, Doc: "Where it has to be made: stated, not tested."},
		{Name: "note", Shape: "TEXT", Repeat: true, Example: `note "nothing added but water"`, Doc: "What no program can test."},
	}},
}
