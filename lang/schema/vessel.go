package schema

// vesselField is the table of a vessel; the three kinds share it.
func vesselField(kind, doc, example string) *Field {
	heats := &Field{
		Name: "heats", Shape: "POWER", Example: "heats 170 kW", Doc: "Greatest power of its heating.",
		Limits: []Limit{mustBe(0, 1e7, "no vessel that works by the batch is heated harder")},
	}
	cools := &Field{
		Name: "cools", Shape: "POWER", Example: "cools 120 kW", Doc: "Greatest power of its cooling.", Default: "none",
		Limits: []Limit{mustBe(0, 1e7, "no vessel that works by the batch is cooled harder")},
	}
	if kind == "fermenter" {
		heats.Default = "none"
	} else {
		heats.Need = true
	}
	return &Field{
		Name: kind, Shape: `NAME ("," NAME)*`, Repeat: true, Key: "name", Doc: doc, Example: example,
		Block: &Block{Fields: []*Field{
			{
				Name: "holds", Shape: "VOLUME", Need: true, Example: "holds 520 gal", Doc: "Volume to the brim.",
				Limits: []Limit{mustBe(0.001, 2000, "from a litre to the largest vessels of the trade")},
			},
			heats,
			{Name: "steam", Shape: `"jacket"|"direct"`, Example: "steam jacket", Default: "jacket", Doc: "How the heat gets in: through the wall, or as live steam whose condensate stays."},
			cools,
			{
				Name: "reflux", Shape: "SHARE", Example: "reflux 10 %", Default: "0 %", Doc: "Share of the vapour condensed in the head and returned.",
				Limits: []Limit{
					mustBe(0, 0.95, "with all of it returned nothing comes over"),
					usually(0, 0.4, "heads of pot stills return 10 to 30 % (common practice)"),
				},
			},
			{
				Name: "fills", Shape: "SHARE", Example: "fills 75 %", Default: "cooker 95 %, fermenter 90 %, still 75 %", Doc: "Greatest fill, as a share of what it holds.",
				Limits: []Limit{mustBe(0.05, 1, "a vessel can't be fuller than full")},
			},
			{
				Name: "metal", Shape: "MASS", Example: "metal 1,400 lb", Default: "by size", Doc: "Weight of the vessel, which warms with its contents.",
				Limits: []Limit{mustBe(0, 1e6, "no vessel of the trade is heavier")},
			},
			{
				Name: "loses", Shape: "POWER", Example: "loses 4 kW", Default: "by size", Doc: "Heat lost to the room at the boil.",
				Limits: []Limit{mustBe(0, 1e6, "no wall loses more")},
			},
		}},
	}
}
