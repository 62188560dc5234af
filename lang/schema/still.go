package schema

import "newmake/lang/quantity"

const cutShape = `STRENGTH|VOLUME|TEMP|SHARE "of" "charge"`

var charges = &Field{
	Name: "charges", Shape: "NUMBER", Default: "1", Example: "charges 2", Doc: "In how many equal charges it is run.",
	Limits: []Limit{mustBe(1, 50, "a run has one charge, or some")},
}

// Strength100 is the limit of any strength.
var Strength100 = mustBe(0, 1, "pure alcohol is 100 % abv, 200 proof").of("strength")

// Strip is the wash run, in a batch.
var Strip = &Field{
	Name: "strip", Shape: `["in" VESSEL]`, Need: true, Example: `strip in "Wash still"`,
	Doc: "The wash run.",
	Block: &Block{Fields: []*Field{
		{
			Name: "stop", Shape: `"at" STRENGTH`, Default: "at 1 % abv", Example: "stop at 2 % abv", Doc: "Strength at the spout at which the run ends.",
			Limits: []Limit{Strength100, usually(0, 0.25, "a wash run goes down to about 1 %, and stops early only for strength (common practice)").of("strength")},
		},
		charges, Remove,
	}},
}

// Spirit is the second run, in a batch.
var Spirit = &Field{
	Name: "spirit", Shape: `["in" VESSEL]`, Need: true, Example: `spirit in "Spirit still"`,
	Doc: "The second run, with its cuts.",
	Block: &Block{Fields: []*Field{
		{
			Name: "charge", Shape: `"low-wines" ["," "feints"] ["," "water" "to" STRENGTH]`, Default: "low-wines", Example: "charge low-wines, feints, water to 28 % abv",
			Doc:    "What goes in: low wines, the feints of the run before, and the water that brings them down to a strength.",
			Limits: []Limit{mustBe(0.01, 1, "a charge holds alcohol, and pure alcohol is 100 % abv, 200 proof").of("strength")},
		},
		{
			Name: "foreshots", Shape: "VOLUME", Default: "none", Example: "foreshots 0.5 gal", Doc: "The first of the run, set aside and never drunk.",
			Limits: []Limit{mustBe(0, 10, "no run has so much of them")},
		},
		{
			Name: "hearts", Shape: `"from" (` + labelled("from", cutShape) + `) "to" (` + labelled("to", cutShape) + `)`, Need: true, Example: "hearts from 4 gal to 62 % abv",
			Doc: "Where the hearts begin and end: by strength at the spout, by volume that has come over, by temperature of the vapour, or by share of the charge's pure alcohol.",
			Limits: []Limit{
				mustBe(0, 1, "no spirit is stronger than pure alcohol").as(quantity.Strength),
				mustBe(0, 2000, "it is counted from the first drop, and no still holds more").as(quantity.Volume),
				mustBe(50, 101, "vapour is at about 78 C where it is pure alcohol, and at 100 C where it is water").as(quantity.Temperature),
				aShare.as(quantity.Share),
			},
		},
		{
			Name: "stop", Shape: `"at" STRENGTH`, Default: "at 1 % abv", Example: "stop at 4 % abv", Doc: "Strength at the spout at which the run ends.",
			Limits: []Limit{Strength100},
		},
		charges, Remove,
	}},
}

// labelled gives the slots of the cut's shape a name of their own.
func labelled(label, shape string) string {
	out := ""
	for _, tok := range shapeTokens(shape) {
		if slotByName[tok] != nil {
			tok = "cut-" + label + ":" + tok
		}
		out += tok + " "
	}
	return out
}
