package schema

// Bill is the grain, in a batch.
var Bill = &Field{
	Name: "bill", Shape: "[MASS]", Need: true, Example: "bill 940 lb",
	Doc: "The grain: by weight on every line, or by share of a total, or by bushels.",
	Limits: []Limit{
		mustBe(0.01, 1e6, "from a handful of grain to more than any cooker of the trade holds"),
	},
	Block: &Block{
		Fields: []*Field{Remove},
		Any: &Field{
			Shape: `GRAIN (MASS|SHARE|BUSHELS|"rest") ["lot" sack:TEXT]`, Repeat: true, Key: "grain", Example: "corn 68 %",
			Doc:    "One grain and how much of it: a weight, a share of the total, trade bushels, or `rest` for what is left of the total; and of which lot of a `store` it is, whose certificate tells its moisture and its starch.",
			Limits: []Limit{mustBe(0, 1e6, "from none to more than any cooker of the trade holds")},
		},
	},
}
