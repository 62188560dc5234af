package schema

import "newmake/lang/quantity"

// Model is the declaration of the constants of a model.
var Model = &Field{
	Name: "model", Shape: libraryName, Repeat: true, Key: "name", Example: "model mash",
	Doc: "The constants of a model, so that a house can tune them to its own runs.",
	Block: &Block{
		Any: &Field{Shape: "NAME QUANTITY", Repeat: true, Key: "name", Example: "gel-rate 11.5 /h", Doc: "One constant with its unit.", Limits: []Limit{
			mustBe(-1000, 1000, "no bare number of the models comes near").as(quantity.Number),
			anEnergy.as(quantity.MolarEnergy),
			mustBe(0, 1, "nothing in a mash or a wash is done in a second").as(quantity.Rate),
			mustBe(0, 100*quantity.YearS, "from nothing to a hundred years").as(quantity.Duration),
			mustBe(1e-4, 200, "from a jar to a vat").as(quantity.Volume),
			mustBe(-5, 150, "from freezing to steam under pressure").as(quantity.Temperature),
			mustBe(-100, 100, "between no two places in a vessel is more").as(quantity.TempDifference),
			mustBe(-100, 100, "no share of the models comes near").as(quantity.Share),
			mustBe(0, 1e4, "no solution holds so much").as(quantity.Concentration),
			mustBe(-1e15, 1e15, "no constant of the models comes near"),
		}},
	},
}
