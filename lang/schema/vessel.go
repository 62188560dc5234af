package schema

import "newmake/lang/quantity"

// vesselField is the table of a vessel; the three kinds share it.
func vesselField(kind, doc, example string) *Field {
	heats := &Field{
		Name: "heats", Shape: "POWER", Example: "heats 170 kW", Doc: "Greatest power of its heating; `heats 0 kW` of a vessel that has none, as a mash tun.",
		Limits: []Limit{mustBe(0, 1e7, "no vessel that works by the batch is heated harder")},
	}
	cools := &Field{
		Name: "cools", Shape: `POWER|"by" ("jacket"|"coil") AREA ["at" TRANSFER] "," "water" FLOW`, Example: "cools by coil 25 sqft, water 6 gal/min", Default: "none, and a coefficient that the model has for a jacket or a coil",
		Doc: "Its cooling: the surface with its area, its coefficient of heat transfer and the flow of cold water, so that warm water cools less; or the greatest power.",
		Limits: []Limit{
			mustBe(0, 1e7, "no vessel that works by the batch is cooled harder").of("power"),
			mustBe(0.001, 1000, "from a short tube to more wall than any vessel has").of("area"),
			mustBe(1, 5000, "no jacket or coil passes more").of("transfer"),
			usually(50, 1000, "thick mash by a jacket 80, clear wort by a coil 800 (from memory)").of("transfer"),
			mustBe(1e-6, 1, "from a trickle to more than any main gives").of("flow"),
		},
	}

	if kind == "fermenter" {
		heats.Default = "none"
	} else {
		heats.Need = true
	}
	field := &Field{
		Name: kind, Shape: `NAME ("," NAME)*`, Repeat: true, Key: "name", Doc: doc, Example: example,
		Block: &Block{Fields: []*Field{
			{
				Name: "holds", Shape: "VOLUME", Need: true, Example: "holds 520 gal", Doc: "Volume to the brim.",
				Limits: []Limit{mustBe(0.001, 2000, "from a litre to the largest vessels of the trade")},
			},
			heats,
			{Name: "heated", Shape: `"by" ("jacket"|"live-steam"|"elements")`, Example: "heated by live-steam", Default: "by jacket", Doc: "How the heat gets in: through the wall, as live steam whose condensate stays, or from electric elements that are bare in the liquid."},
			cools,
			{
				Name: "reflux", Shape: "SHARE", Example: "reflux 10 %", Default: "0 %", Doc: "Share of the vapour condensed in the head and returned.",
				Limits: []Limit{
					mustBe(0, 0.5, "what is computed is a pot still with a plain head: one that returns more is a column"),
					usually(0, 0.4, "heads of pot stills return 10 to 30 % (common practice)"),
				},
			},
			{
				Name: "fills", Shape: "SHARE", Example: "fills 75 %", Default: "cooker 95 %, fermenter 90 %, still 75 %", Doc: "Greatest fill, as a share of what it holds.",
				Limits: []Limit{mustBe(0.05, 1, "a vessel can't be fuller than full")},
			},
			{
				Name: "heating-surface", Shape: `"covered" "by" VOLUME`, Example: "heating-surface covered by 50 gal", Default: "of a still with a jacket, 20 % of what it holds",
				Doc:    "The volume that just covers coils, elements or jacket: a run is to leave more, for what is bare burns.",
				Limits: []Limit{mustBe(0, 2000, "no vessel of the trade is larger")},
			},
			{
				Name: "clean", Shape: `DURATION ["with" TEXT] ["," deep:DURATION "with" agent:TEXT "every" NUMBER]`,
				Example: `clean 30 min with "hot water", 60 min with "citric acid 2 %, warm" every 8`, Default: "45 min (common practice), and nothing besides",
				Doc:    "How it is cleaned after each batch, and what is done besides at every so many charges. Strong alkali and acid eat copper; no chlorine comes near oak or copper (common practice).",
				Limits: []Limit{mustBe(60, 2*quantity.DayS, "from a rinse to two days").of("duration"), mustBe(60, 2*quantity.DayS, "from a rinse to two days").of("deep"), mustBe(2, 10000, "from every second charge to once in years").of("number")},
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
	field.Block.Fields = append(field.Block.Fields, ownFields(kind)...)
	uncertain(field)
	return field
}

// ownFields are the lines of a kind of vessel alone, not of every vessel.
func ownFields(kind string) []*Field {
	switch kind {
	case "cooker":
		return []*Field{{
			Name: "agitator", Shape: yesNo, Default: "yes", Example: "agitator no",
			Doc: "Whether rakes or a stirrer turn in it by a drive. One that is stirred by hand has none, and nothing there starts by itself.",
		}}
	case "fermenter":
		return nil
	}
	return []*Field{{
		Name: "agitator", Shape: yesNo, Default: "no", Example: "agitator yes",
		Doc: "Whether it has rakes, a scraper or a chain that keep grain off the heated wall. A wash with grain in it wants one, or live steam.",
	}, {
		Name: "preheater", Shape: `AREA ["at" TRANSFER] ["over" DURATION] ["," "pot-ale" "at" ale:TEMP] ["," "wash" "to" most:TEMP]`,
		Example: "preheater 40 sqft over 40 min, pot-ale at 180 F, wash to 149 F", Default: "none; with one, 800 W/m2/K, as fast as the pump goes, no pot ale that is kept hot, and wash to 65 C",
		Doc: "A cooler of tubes or plates in the line to a wash still, the wash against the pot ale of the charge before: its area, its coefficient of heat transfer, how long a charge is given to run through it, how hot the pot ale is that was kept from the batch before, and to what the wash is brought at most. Where none is kept hot, the first charge of a batch goes in as it stands.",
		Limits: []Limit{
			mustBe(0.001, 1000, "from a finger of tube to more plates than any house has").of("area"),
			mustBe(1, 10000, "no wall passes more").of("transfer"),
			usually(300, 3500, "a tube in a tube 500 to 1,200, plates 2,000 to 3,500 with a clear wash (from memory)").of("transfer"),
			mustBe(60, 86400, "from a minute to a day").of("duration"),
			mustBe(30, 105, "it stays liquid, and heats nothing if it is cold").of("ale"),
			mustBe(20, 85, "hotter its alcohol leaves at the vent").of("most"),
			usually(40, 70, "wash goes in at 60 to 65 C (common practice)").of("most"),
		},
	}, {
		Name: "condenser", Shape: `"water" "to" out:TEMP ["," "distillate" "at" TEMP]`, Example: "condenser water to 122 F, distillate at 68 F", Default: "water warmed by 54 F, distillate at 68 F",
		Doc: "How its condenser is run: how warm the water may leave, and how cool the distillate. The first sets how much water it takes.",
		Limits: []Limit{
			mustBe(10, 95, "colder it was never warmed, hotter it boils and the condenser vents").of("out"),
			usually(25, 60, "it leaves at 45 to 55 C; above 60 C it scales and spirit escapes at the vent (from memory)").of("out"),
			mustBe(2, 60, "ice stops it, and hot spirit is lost as vapour").of("temp"),
			usually(5, 25, "it runs at 15 to 20 C; above 25 C strong spirit gives off vapour that takes fire (common practice)").of("temp"),
		},
	}, {
		Name: "alcohol-lost", Shape: "SHARE", Example: "alcohol-lost 1 %", Default: "none, as a run without a drip",
		Doc: "Share of what comes over in a run that reaches no receiver: what drips, is drawn for samples, stays in pipes or leaves by the vent.",
		Limits: []Limit{
			mustBe(0, 0.5, "a still that loses more leaks, and is not lit"),
			usually(0, 0.05, "a tight still loses a hundredth or two (common practice); more is vapour in the room, and vapour burns"),
		},
	}}
}
