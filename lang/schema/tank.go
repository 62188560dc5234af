package schema

const contentShape = `("low-wines"|"feints"|"spirit"|"hot-liquor"|"cold-liquor"|"backset"|"worts"|"weak-worts"|"pot-ale")`

// Tank is a vessel in which something waits, in a plant.
var Tank = &Field{
	Name: "tank", Shape: `NAME ("," NAME)*`, Repeat: true, Key: "name", Example: `tank "Low wines receiver"`,
	Doc: "A tank or receiver: what waits in it between the steps of the work. Several that are for the same share it; one that is for several must hold them together.",
	Block: &Block{Fields: []*Field{
		{
			Name: "holds", Shape: "VOLUME", Need: true, Example: "holds 180 gal", Doc: "Volume to the brim.",
			Limits: []Limit{mustBe(0.001, 2000, "from a litre to the largest vessels of the trade")},
		},
		{
			Name: "for", Shape: contentShape + ` ("," ` + contentShape + `)*`, Need: true, Example: "for low-wines, feints",
			Doc: "What waits in it: the low wines of a stripping run, the feints of a spirit run, the hearts and what they are reduced to, the hot or the cold water of a mash, backset, worts that stand hot in the underback, the last water that is kept for the next mash, the pot ale of a charge that heats the next one.",
		},
	}},
}
