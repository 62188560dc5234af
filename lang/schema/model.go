package schema

var Model = &Field{
	Name: "model", Shape: stockName, Repeat: true, Key: "name", Example: "model mash",
	Doc: "The constants of a model, so that a house can tune them to its own runs.",
	Block: &Block{
		Any: &Field{Shape: "NAME QUANTITY", Repeat: true, Key: "name", Example: "gel-rate 11.5 /h", Doc: "One constant with its unit.", Limits: []Limit{mustBe(-1e15, 1e15, "no constant of the models comes near")}},
	},
}
