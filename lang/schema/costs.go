package schema

// Costs is what things cost, in a plant.
var Costs = &Field{
	Name: "costs", Example: "costs", Doc: "What the house says things cost; what is left out counts as nothing.",
	Block: &Block{
		Fields: []*Field{
			{Name: "currency", Shape: "NAME", Example: "currency USD", Doc: "The currency, for the reader."},
			{Name: "energy", Shape: "PRICE", Example: "energy 0.11 USD/kWh", Doc: "Heat, by the kWh that the boiler gives.", Limits: []Limit{aPrice}},
			{Name: "water", Shape: "PRICE", Example: "water 0.006 USD/gal", Doc: "Water, by volume.", Limits: []Limit{aPrice}},
			{Name: "cask", Shape: "PRICE|MONEY", Example: "cask 310 USD", Doc: "One new cask.", Limits: []Limit{aPrice}},
			{Name: "used-cask", Shape: "PRICE|MONEY", Example: "used-cask 90 USD", Doc: "One cask that has held spirit before.", Limits: []Limit{aPrice}},
			{Name: "bottle", Shape: "PRICE|MONEY", Example: "bottle 2.40 USD", Doc: "One empty bottle, with its closure and its label.", Limits: []Limit{aPrice}},
			{Name: "carrying", Shape: "PERYEAR", Example: "carrying 6 %/year", Default: "nothing", Doc: "What money costs that lies in casks, a year: simple, on spirit and wood. `plan` reckons with it what a bottle costs, and `ledger --cost` what a cask does.", Limits: []Limit{mustBe(0, 1, "nobody lends at more")}},
			{Name: "work", Shape: "PRICE", Example: "work 28 USD/h", Doc: "One person's hour.", Limits: []Limit{aPrice}},
		},
		Any: &Field{
			Shape: `NAME PRICE ["in" "bags" "of" bag:MASS ["," "pallets" "of" stacked:NUMBER]]`, Repeat: true, Key: "name", Example: "corn 0.14 USD/lb in bags of 50 lb, pallets of 40",
			Default: "a grain in bags of 50 lb or 25 kg, 40 on a pallet",
			Doc:     "A grain, yeast or enzyme, by weight; or what goes into liquor and wort: `lactic-acid`, `phosphoric-acid`, `sulfuric-acid`, `gypsum`, `lime`, `dap`, `antifoam`. In which bags it comes, and how many lie on a pallet, is for the list of what to buy.",
			Limits:  []Limit{aPrice.of("price"), mustBe(0.01, 2000, "from a packet of yeast to a bulk bag of two tonnes").of("bag"), mustBe(1, 500, "bags are counted, and no pallet bears five hundred").of("stacked")},
		},
	},
}
