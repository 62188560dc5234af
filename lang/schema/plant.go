package schema

// climate is where casks lie, in a plant or a cask block.
var climate = &Field{
	Name: "climate", Shape: `"cool"|"temperate"|"warm"|"hot"`, Example: "climate temperate", Default: "temperate",
	Doc: "Where the casks lie, which sets what they lose: cool and damp, temperate, warm, or hot. The figures stand in the library, `model cask`.",
}

const monthShape = `"jan"|"feb"|"mar"|"apr"|"may"|"jun"|"jul"|"aug"|"sep"|"oct"|"nov"|"dec"`

const dayShape = `("mon"|"tue"|"wed"|"thu"|"fri"|"sat"|"sun")`

// Plant is the declaration of a distillery.
var Plant = &Field{
	Name: "plant", Shape: "NAME", Repeat: true, Key: "name", Example: `plant "Lantern Hollow"`,
	Doc: "A distillery: what sets every boiling point, hour and limit.",
	Block: &Block{Fields: []*Field{
		{
			Name: "elevation", Shape: "LENGTH", Need: true, Example: "elevation 1,150 ft",
			Doc: "Height above the sea, which sets every boiling point.",
			Limits: []Limit{
				mustBe(-430, 5100, "no town lies lower or higher"),
				usually(-430, 3000, "above this the models of boiling are less sure"),
			},
		},
		{
			Name: "water", Shape: `TEMP ["to" warm:TEMP "in" (` + monthShape + `)] ["," "hardness" PPM]`, Example: "water 52 F to 68 F in aug, hardness 90 ppm",
			Default: "12 C, hardness 100 ppm",
			Doc:     "The supply: its temperature sets strike and cooling, its hardness (as CaCO3) the mash pH. Of one that warms in summer: its coldest, its warmest, and the month of that; each batch reckons with the water of the day on which it begins.",
			Limits: []Limit{
				mustBe(0, 60, "a supply of water is liquid, and not hot").of("temp"),
				usually(2, 30, "supplies run from about 2 C to 30 C (common practice)").of("temp"),
				mustBe(0, 60, "a supply of water is liquid, and not hot").of("warm"),
				usually(2, 30, "supplies run from about 2 C to 30 C (common practice)").of("warm"),
				mustBe(0, 2000, "no supply of water is harder").of("ppm"),
			},
		},
		{
			Name: "boiler", Shape: "POWER", Example: "boiler 500 kW", Default: "no limit",
			Doc: "The boiler that all jackets and stills share.", Limits: []Limit{mustBe(1, 1e8, "from a kettle to more than any distillery's boiler gives")},
		},
		{
			Name: "shift", Shape: `from:CLOCK "to" end:CLOCK ["," ` + dayShape + ` ["to" ` + dayShape + `] ("," ` + dayShape + ` ["to" ` + dayShape + `])*]`, Example: "shift 07:00 to 17:00, tue to sat",
			Default: "07:00 to 17:00, mon to fri",
			Doc:     "When somebody is there: work that needs a person falls in these hours.",
		},
		{
			Name: "crew", Shape: "NUMBER", Example: "crew 2", Default: "1", Doc: "How many people are on a shift.",
			Limits: []Limit{mustBe(1, 500, "from one person to more than any distillery has")},
		},
		{
			Name: "zone", Shape: "TEXT", Example: `zone "America/New_York"`, Default: `"UTC"`,
			Doc: "The time zone, by its name in the IANA database.",
		},
		{
			Name: "country", Shape: "NAME", Example: "country us", Default: "by the zone, where that is one of the United States", Doc: "Under whose law it stands: a `country` of the library. The ledger keeps its books by it, and the sheets cite the sections of the United States where it is `us`.",
		},
		{
			Name: "ambient", Shape: "TEMP", Example: "ambient 70 F", Default: "20 C",
			Doc:    "The air around the vessels.",
			Limits: []Limit{mustBe(-30, 60, "people work in it"), usually(0, 45, "people work in it")},
		},
		climate,
		{
			Name: "loss-first-year", Shape: "SHARE", Example: "loss-first-year 6 %", Default: "by climate",
			Doc:    "Share of a 200 L cask's volume that is gone after one year, soak apart.",
			Limits: []Limit{mustBe(0, 0.4, "more than this is a leak, not evaporation")},
		},
		{
			Name: "loss", Shape: "PERYEAR", Example: "loss 4 %/year", Default: "by climate",
			Doc:    "Share of a 200 L cask's volume that goes in each later year.",
			Limits: []Limit{mustBe(0, 0.3, "more than this is a leak, not evaporation")},
		},
		vesselField("cooker", "A cooker or mash tun: here the mash is made.", `cooker "Copper kettle"`),
		vesselField("fermenter", "A fermenter.", `fermenter "North", "South"`),
		vesselField("still", "A pot still.", `still "Wash still"`),
		{
			Name: "wort-cooler", Shape: `AREA ["at" TRANSFER] "," "water" FLOW`, Example: "wort-cooler 40 sqft, water 20 gal/min", Default: "none, and a coefficient that the model has for plates",
			Doc: "A cooler of plates or tubes in the line from the tun to the fermenter, water against wort: its area, its coefficient of heat transfer, and the most cold water that it gets.",
			Limits: []Limit{
				mustBe(0.001, 1000, "from a finger of tube to more plates than any house has").of("area"),
				mustBe(1, 10000, "no wall passes more").of("transfer"),
				usually(500, 4000, "plates 2,000 to 3,500, tube in tube 500 to 1,200 (from memory)").of("transfer"),
				mustBe(1e-6, 1, "from a trickle to more than any main gives").of("flow"),
			},
		},
		Tank,
		RackHouse,
		rates,
		Costs,
	}},
}
