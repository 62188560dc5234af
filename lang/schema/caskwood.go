package schema

// CaskWood is the declaration of a kind of cask.
var CaskWood = &Field{
	Name: "wood", Shape: libraryName, Repeat: true, Key: "name", Example: "wood charred-oak",
	Doc: "A wood that casks are made of: its tree, how it was fired, and the sizes in which it is made.",
	Block: &Block{Fields: []*Field{
		{Name: "tree", Shape: "WORD", Need: true, Example: "tree oak", Doc: "The tree."},
		{Name: "charred", Shape: yesNo, Default: "no", Example: "charred yes", Doc: "Whether its inside is burnt to char."},
		{Name: "toasted", Shape: yesNo, Default: "no", Example: "toasted yes", Doc: "Whether its inside is toasted."},
		{Name: "sizes", Shape: `VOLUME ("," VOLUME)*`, Example: "sizes 53 gal, 30 gal, 15 gal", Doc: "The sizes in which the trade makes it.", Limits: []Limit{mustBe(1e-4, 200, "from a jar to a vat")}},
		{Name: "tare", Shape: "MASS", Default: "110 lb", Example: "tare 110 lb", Doc: "Weight of an empty cask of 200 L; of other sizes by their surface.", Limits: []Limit{mustBe(1, 1000, "no cask of 200 L is so light, or so heavy"), usually(30, 70, "barrels weigh 75 to 120 lb, butts and thick staves more (common practice)")}},
		{Name: "soak", Shape: "SHARE", Default: "4 %", Example: "soak 4 %", Doc: "Share of the fill that the wood of a 200 L cask takes up.", Limits: []Limit{mustBe(0, 0.3, "the staves of a 200 L cask hold far less")}},
	}},
}
