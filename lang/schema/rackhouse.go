package schema

// RackHouse is a place where casks lie, in a plant.
var RackHouse = &Field{
	Name: "rack-house", Shape: "NAME", Repeat: true, Key: "name", Example: `rack-house "Rack house"`,
	Doc: "A place where casks lie, its size and its air by the month. A batch that names no `climate` of its own is foretold in the air of the first; a cask that is moved `to` one by its name lies in that one's.",
	Block: &Block{Fields: []*Field{
		{Name: "rows", Shape: "NUMBER", Example: "rows 6", Default: "not said, and no row is held against it", Doc: "How many rows it has.", Limits: []Limit{mustBe(1, 1e4, "rows are counted")}},
		{Name: "tiers", Shape: "NUMBER", Example: "tiers 3", Default: "not said, and no tier is held against it", Doc: "How many casks lie above each other.", Limits: []Limit{mustBe(1, 100, "tiers are counted from the floor")}},
		{
			Name: "air", Shape: "[" + monthShape + `] TEMP "," SHARE`, Repeat: true, Example: "air jan 36 F, 61 %", Default: "none: by `climate` alone, the same all the year",
			Doc: "The mean temperature and the relative humidity among the casks in a month; without a month, all the year. Warm months take more than cold ones, by the pressure of vapour; dry air takes water and raises the strength, damp air takes little water and lowers it. How much goes in a year is still said by `climate` or `loss`. Either all twelve months are written, or none by name.",
			Limits: []Limit{
				mustBe(-40, 60, "from the coldest winter to under the hottest roof").of("temp"),
				usually(-15, 50, "air under a roof with casks in it (common practice)").of("temp"),
				mustBe(0, 1, "air is dry at 0 % and full of water at 100 %").of("share"),
				usually(0.3, 0.95, "cask stores run from about 40 to 90 % (common practice)").of("share"),
			},
		},
	}},
}
