package schema

import "newmake/lang/quantity"

const cutShape = `STRENGTH|VOLUME|TEMP|DURATION|SHARE "of" "charge"`

var charges = &Field{
	Name: "charges", Shape: "NUMBER", Default: "1", Example: "charges 2", Doc: "In how many equal charges it is run.",
	Limits: []Limit{mustBe(1, 50, "a run has one charge, or some")},
}

// strength100 is the limit of any strength.
var strength100 = mustBe(0, 1, "pure alcohol is 100 % abv").of("strength")

// Strip is the stripping run, in a batch.
var Strip = &Field{
	Name: "strip", Shape: `["in" VESSEL]`, Need: true, Example: `strip in "Wash still"`,
	Doc: "The stripping run. Where no still is named it is in the largest.",
	Block: &Block{Fields: []*Field{
		{
			Name: "stop", Shape: `"at" STRENGTH`, Default: "at 1 % abv", Example: "stop at 2 % abv", Doc: "Strength at the spout at which the run ends.",
			Limits: []Limit{strength100, usually(0, 0.25, "a stripping run goes down to about 1 %, and stops early only for strength (common practice)").of("strength")},
		},
		{
			Name: "heat-up", Shape: `"over" DURATION | "at" (WARMING | POWER)`, Default: "at full heat", Example: "heat-up over 90 min",
			Doc: "How fast the charge is brought to its boil: in a time, by so many degrees a minute, or with a heat. A wash with grain in it is brought up slowly, lest it scorch. More than the still's heat gives is not promised: then it is full heat.",
			Limits: []Limit{
				mustBe(60, 2*quantity.DayS, "from a minute to two days").as(quantity.Duration),
				mustBe(1e-5, 1, "from a degree in a day to one in a second").as(quantity.HeatingRate),
				usually(0.1/60, 3.0/60, "craft stills and cookers warm by half a degree to two a minute (from memory)").as(quantity.HeatingRate),
				mustBe(1, 1e7, "no still that works by the batch is heated harder").as(quantity.Power),
			},
		},
		paceOf("pace", "at full heat", "pace over 5 h", "How fast the low wines are brought over. More than the still's heat gives is not promised: then it is full heat. A third of the wash comes over in 4 to 5.5 h (from memory)."),
		charges, Remove,
	}},
}

// Spirit is the second run, in a batch.
var Spirit = &Field{
	Name: "spirit", Shape: `["in" VESSEL]`, Need: true, Example: `spirit in "Spirit still"`,
	Doc: "The second run, with its cuts. Where no still is named it is in the smallest.",
	Block: &Block{Fields: []*Field{
		{
			Name: "charge", Shape: `"low-wines" ["," "feints"] ["," "water" "to" STRENGTH]`, Default: "low-wines", Example: "charge low-wines, feints, water to 28 % abv",
			Doc:    "What goes in: low wines, the feints of the run before, and the water that brings them down to a strength.",
			Limits: []Limit{mustBe(0.01, 1, "a charge holds alcohol, and pure alcohol is 100 % abv").of("strength")},
		},
		{
			Name: "foreshots", Shape: "VOLUME", Default: "none", Example: "foreshots 0.5 gal", Doc: "The first of the run, set aside and never drunk. A house that sends them back with its feints leaves the line out: then the heads begin with the first drop.",
			Limits: []Limit{mustBe(0, 10, "no run has so much of them")},
		},
		{
			Name: "hearts", Shape: `"from" (` + labelled("from", cutShape) + `) "to" (` + labelled("to", cutShape) + `)`, Need: true, Example: "hearts from 4 gal to 62 % abv",
			Doc: "Where the hearts begin and end: by strength at the spout, by volume that has come over, by temperature of the vapour, by time since the first drop (`hearts from 20 min`), or by share of the charge's pure alcohol. Hearts that end at a time run at a flow, or with a heat, that their `pace` says.",
			Limits: []Limit{
				mustBe(0, 1, "no spirit is stronger than pure alcohol").as(quantity.Strength),
				mustBe(0, 2000, "it is counted from the first drop, and no still holds more").as(quantity.Volume),
				mustBe(50, 101, "vapour is at about 78 C where it is pure alcohol, and at 100 C where it is water").as(quantity.Temperature),
				mustBe(0, 86400, "it is counted from the first drop, and no spirit run lasts longer than a day").as(quantity.Duration),
				aShare.as(quantity.Share),
			},
		},
		{
			Name: "stop", Shape: `"at" STRENGTH`, Default: "at 1 % abv", Example: "stop at 4 % abv", Doc: "Strength at the spout at which the run ends.",
			Limits: []Limit{strength100},
		},
		pace, charges, Remove,
	}},
}

// pace is how fast each fraction of the second run is brought over.
var pace = &Field{
	Name: "pace", Example: "pace", Doc: "How fast each fraction is brought over: in a time, at a flow of the spout, or with a heat. More than the still's heat gives is not promised: then it is full heat.",
	Block: &Block{Fields: []*Field{
		paceOf("foreshots", "over 15 min", "foreshots over 15 min", "They run slowly: common practice is 15 to 20 min, and up to 30 until the hearts."),
		paceOf("heads", "that of the hearts, or slower to last 5 min", "heads at 20 gal/h", "Between the foreshots and the hearts."),
		paceOf("hearts", "over 2.5 h", "hearts at 20 gal/h", "Gently: two and a half to three hours (Nicol in Russell (ed.), Whisky (2003), ch. 5), whatever the size: stills are heated by the litre of charge (common practice)."),
		paceOf("tails", "at full heat", "tails at full heat", "Driven hard to the end (Nicol, the same)."),
	}},
}

func paceOf(name, holds, example, doc string) *Field {
	return &Field{
		Name: name, Shape: `"over" DURATION | "at" (FLOW | POWER | "full" "heat")`, Default: holds, Example: example, Doc: doc,
		Limits: []Limit{
			mustBe(60, 86400, "from a minute to a day").as(quantity.Duration),
			mustBe(1e-8, 1, "from a drop in some seconds to more than any spout lets through").as(quantity.Flow),
			mustBe(1, 1e7, "no still that works by the batch is heated harder").as(quantity.Power),
		},
	}
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
