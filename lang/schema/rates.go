package schema

// rates is how fast work goes that no model computes, in a plant.
var rates = &Field{
	Name: "rates", Example: "rates",
	Doc: "How fast the house mills, fills, pumps and digs. What is left out goes by the size of the batch's cooker.",
	Block: &Block{Fields: []*Field{
		{
			Name: "mill", Shape: "MASSFLOW", Example: "mill 1,300 lb/h", Default: "300 kg/h for each m3 that the cooker holds, at least 60 kg/h (common practice)",
			Doc: "Grain through the mill.", Limits: []Limit{mustBe(1e-3, 100, "from a hand mill to the largest of the trade")},
		},
		{
			Name: "grain-in", Shape: "MASSFLOW", Example: "grain-in 66 lb/min", Default: "15 kg/min for each m3 that the cooker holds, so that a usual grist is in within 15 to 20 min (common practice)",
			Doc: "Grain into the mash, by auger or by hand, as fast as it mixes in without balls.", Limits: []Limit{mustBe(1e-3, 100, "from a cup at a time to the largest masher of the trade")},
		},
		{
			Name: "water-in", Shape: "FLOW", Example: "water-in 19 gal/min", Default: "36 L/min for each m3 that the cooker holds, so that it would be full in half an hour (common practice)",
			Doc: "Water or backset into the cooker.", Limits: []Limit{mustBe(1e-5, 1, "from a trickle to more than any main gives")},
		},
		{
			Name: "pump", Shape: "FLOW", Example: "pump 26 gal/min", Default: "50 L/min for each m3 that the cooker holds, at least 10 L/min (common practice)",
			Doc: "Mash, wash and low wines from vessel to vessel.", Limits: []Limit{mustBe(1e-5, 1, "from a hand pump to the largest of the trade")},
		},
		{
			Name: "dig", Shape: "MASSFLOW", Example: "dig 22 lb/min", Default: "5 kg/min for each m3 that the cooker holds, at least 5 kg/min (common practice)",
			Doc: "Wet draff out of the tun.", Limits: []Limit{mustBe(1e-3, 100, "from a hand shovel to a tun that empties itself")},
		},
	}},
}
