package schema

import "newmake/lang/record"

// OwnCask is one of the house's own casks: where it lies, and what was read of it. It is
// filled by a run, and emptied into a vat.
var OwnCask = &Field{
	Name: "cask", Shape: "NAME", Repeat: true, Key: "name", Past: true, Example: `cask "LH-0013"`,
	Doc: "One of the house's casks, by its serial: its wood, where it lies, and what was read of it over the years. A run fills it (`into`), a vat empties it (`from`); neither is written here again.",
	Block: &Block{
		Timed: true,
		Fields: []*Field{
			{
				Name: "wood", Shape: `VOLUME ("new"|"used") WOOD ["char" NUMBER] ["from" before:NAME]`, Example: "wood 53 gal new charred-oak char 3", Default: "as the batch has it that filled it first",
				Limits: []Limit{mustBe(1e-3, 100, "from a litre to a vat").of("volume"), mustBe(0, 4, "chars are numbered 1 to 4, and 0 is none").of("number")},
				Doc:    "Size and wood. Wood that has got another number says which it had before.",
			},
			{
				Name: "to", Shape: `place:NAME ["," "row" rowed:NUMBER] ["," "tier" tiered:NUMBER] ` + ends, Repeat: true, Example: `to "Rack house", row 3, tier 1`,
				Limits: []Limit{mustBe(0, 1e4, "rows are counted").of("rowed"), mustBe(0, 100, "tiers are counted from the floor").of("tiered")},
				Doc:    "Where it lies from that day on; tiers are counted from the floor.",
			},
			event("topped", `["from" ["run"] source:NAME]`, "Spirit was put in, of a run or another cask.", `topped 3.8 gal, 120 proof at 60 F from "26-07"`),
			event("leaked", "", "So much ran out, as far as anybody can tell.", `leaked about 0.3 gal "stave by the bung, pegged"`),
			event("emptied", `["to" tank:NAME]`, "It was emptied otherwise than into a vat: what there was, and where it went.", `emptied 31 gal, 118 proof at 60 F to "Spirit tank"`),
			event("destroyed", "", "It was poured away, or lost whole, and why. Who saw it stands in the remark.", `destroyed 12 gal "fire in rack 2"`),
			byLine, withLine, correctedLine,
			{Name: "note", Shape: `remark:TEXT ["by" who:NAME] ["," "written" noted:DATE]`, Repeat: true, Example: `note "hoop loose"`, Doc: "Whatever was seen."},
		},
		Bare: bare(record.Labels(record.InCask), "What was read: by weight (`gross`, with the cask's `tare` from the fill), or by `dip`; the strength of a sample, and how much of it was taken.", "gross 491 lb, sample 100 mL, 122.0 proof at 58 F"),
	},
}

// event is a dated line of a cask or a vat with readings.
func event(name, between, doc, example string) *Field {
	f := visit(name, "", record.Labels(record.InCask), doc, example)
	if between != "" {
		f.Shape = f.Shape[:len(f.Shape)-len(ends)] + between + " " + ends
	}
	return f
}

// Round is many casks read on one day, as one walks the rack.
var Round = &Field{
	Name: "round", Shape: `"on" DATE`, Repeat: true, Past: true, Example: "round on 2027-03-11",
	Doc: "Many casks read on one day, a line each, in the order in which one walks the rack.",
	Block: &Block{
		Fields: []*Field{byLine, withLine, correctedLine},
		Any: &Field{
			Shape: `NAME READINGS{ ` + readings(record.Labels(record.InCask)) + ` } ` + ends, Repeat: true, Example: `"LH-0011" gross 491 lb, sample 100 mL, 122.0 proof at 58 F`,
			Limits: asRead, Doc: "One cask, by its serial, and what was read.",
		},
	},
}

// Vat is casks put together, reduced and gauged.
var Vat = &Field{
	Name: "vat", Shape: `NAME "on" DATE ["in" tank:NAME]`, Repeat: true, Key: "name", Past: true, Example: `vat "Spring" on 2030-04-02 in "Vat 1"`,
	Doc: "Casks emptied together, blended, reduced and gauged. Each cask that is named here is empty from that day on.",
	Block: &Block{
		Timed: true,
		Fields: []*Field{
			{
				Name: "from", Repeat: true, Limits: asRead, Example: `from "LH-0011" gross 455 lb, tare 111 lb, 119.6 proof at 61 F`,
				Shape: `["vat"|"tank"|"run"] source:NAME ["part"] ` + listed(record.Labels(record.InCask)) + ends,
				Doc:   "What went in: a cask, with its last weight and the tare of the empty, or what was dipped; `part` of it, which leaves the cask in use; another vat, a tank, or a run's new make.",
			},
			event("reduce", "", "Water went in.", "reduce 24 gal"),
			event("gauge", "", "What there is then.", "gauge 108.2 gal, 94.6 proof at 64 F"),
			event("lost", "", "So much was spilt.", "lost 0.4 gal"),
			byLine, withLine, correctedLine,
			{Name: "note", Shape: `remark:TEXT ["by" who:NAME] ["," "written" noted:DATE]`, Repeat: true, Example: `note "married for two weeks"`, Doc: "Whatever was seen."},
		},
		Bare: bare(record.Labels(record.InCask), "Readings between.", "95.1 proof at 64 F"),
	},
}

// Bottling is a vat, a cask or a tank that was bottled.
var Bottling = &Field{
	Name: "bottling", Shape: `NAME "of" source:NAME "on" DATE`, Repeat: true, Key: "name", Past: true, Example: `bottling "30D16" of "Spring" on 2030-04-16`,
	Doc: "A vat or a cask that was bottled, by its lot code: how many bottles, of which size, at which strength, what became of them, and what was left.",
	Block: &Block{
		Timed: true,
		Fields: []*Field{
			bottled("bottles", `["at" label:STRENGTH]`, "Bottles that were filled, and the strength on the label.", "bottles 538 of 750 mL at 94 proof"),
			bottled("broken", "", "Bottles that were lost.", "broken 2 of 750 mL"),
			bottled("samples", "", "Bottles that were kept or given as samples.", "samples 3 of 750 mL"),
			bottled("withdrawn", `["to" whom:NAME]`, "Bottles that left the bonded premises.", `withdrawn 240 of 750 mL to "Distributor"`),
			event("test", "", "One bottle tried: its fill and its strength.", "test 751 mL, 94.3 proof at 63 F"),
			event("left", `["to" tank:NAME]`, "What was left, and where it went.", `left 0.8 gal to "Small tank"`),
			{Name: "standard", Shape: `STANDARD ("," STANDARD)*`, Example: "standard straight-bourbon", Default: "as the batches of its casks have it, where they agree", Doc: "What it is sold as."},
			byLine, withLine, correctedLine,
			{Name: "note", Shape: `remark:TEXT ["by" who:NAME] ["," "written" noted:DATE]`, Repeat: true, Example: `note "label of 2030"`, Doc: "Whatever was seen."},
		},
		Bare: bare(record.Labels(record.InCask), "Readings between.", "94.4 proof at 63 F"),
	},
}

func bottled(name, between, doc, example string) *Field {
	f := &Field{
		Name: name, Shape: `NUMBER "of" VOLUME ` + between + ` ` + ends, Repeat: true, Doc: doc, Example: example,
		Limits: []Limit{mustBe(0, 1e7, "bottles are counted").of("number"), mustBe(1e-5, 0.01, "from a miniature to the largest bottles").of("volume")},
	}
	if between == `["at" label:STRENGTH]` {
		f.Limits = append(f.Limits, aStrength.of("label"))
	}
	return f
}

// Store is what the house has bought and holds, by lots.
var Store = &Field{
	Name: "store", Shape: "NAME", Repeat: true, Key: "name", Past: true, Example: `store "Grain loft"`,
	Doc: "What was bought, lot by lot, with its certificate and its price, and what was counted. What runs have used is taken off by their records, and is not written here.",
	Block: &Block{
		Timed: true,
		Fields: []*Field{
			{
				Name: "count", Shape: `NAME (MASS|VOLUME|NUMBER ["of" each:MASS]) ["lot" sack:TEXT] ` + ends, Repeat: true, Example: `count corn 1,020 lb lot "C-118"`,
				Limits: []Limit{mustBe(0, 1e9, "nobody holds so much")}, Doc: "What was there when it was counted.",
			},
			{
				Name: "discarded", Shape: `NAME (MASS|VOLUME|NUMBER ["of" each:MASS]) ["lot" sack:TEXT] ` + ends, Repeat: true, Example: `discarded oats 30 lb lot "O-31" "damp"`,
				Limits: []Limit{mustBe(0, 1e9, "nobody holds so much")}, Doc: "What was thrown away.",
			},
			byLine,
		},
		Any: &Field{
			Shape: `NAME (MASS|VOLUME|BUSHELS|NUMBER ["of" each:MASS]) ["lot" sack:TEXT] ["from" source:NAME] ["," "moisture" damp:SHARE] ["," "starch" starched:SHARE] ["," (PRICE|MONEY)] ` + ends, Repeat: true,
			Example: `corn 4,200 lb lot "C-118" from "County elevator", moisture 14.1 %, 0.16 USD/lb`,
			Limits: []Limit{mustBe(0, 1e9, "nobody holds so much").of("mass"), mustBe(1e-3, 2000, "a bag is carried, by a man or a lift").of("each"), mustBe(0, 1e9, "nobody holds so much").of("number"), mustBe(0, 1e6, "nobody holds so much").of("volume"), mustBe(0, 1e7, "nobody holds so much").of("bushels"),
				mustBe(0, 0.5, "grain that is half water is none").of("damp"), mustBe(0, 1, "starch is a part of the grain").of("starched"), aPrice.of("price"), aPrice.of("money")},
			Doc: "What came in on a day: a grain, a yeast, an enzyme, a cask (cask or used-cask) or a bottle, either with its size before it where there are several, how much (of bags so many of so much, `20 of 50 lb`), its lot, from whom, what its certificate says (moisture of the weight, starch of what is dry, as in the library), and the price. A run that used the lot is reviewed by its certificate.",
		},
	},
}
