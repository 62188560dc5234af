package schema

// Learned is what a house has learned from its runs, in learned.batch.
var Learned = &Field{
	Name: "learned", Shape: `NAME "on" DATE`, Repeat: true, Key: "name", Example: `learned "Lantern Hollow" on 2026-06-30`,
	Doc: "Constants of a plant that `newmake learn --write` has found from its runs. Plans use them, and say so; written anew as a whole, never by hand.",
	Block: &Block{
		Fields: []*Field{
			{
				Name: "model", Shape: "NUMBER", Need: true, Example: "model 1", Limits: []Limit{mustBe(1, 1e6, "editions are counted from 1")},
				Doc: "Edition of the models that the runs were held against. With another one the constants mean something else, and none of them is used.",
			},
			{
				Name: "from", Shape: `run:NAME ("," run:NAME)*`, Repeat: true, Example: `from "26-01", "26-02"`,
				Doc: "The runs that it was learned from.",
			},
			{
				Name: "without", Shape: `run:NAME ["because" why:TEXT]`, Repeat: true, Key: "run", Example: `without "26-04" because "spill"`,
				Doc: "A run that was left out.",
			},
			{
				Name: "together", Shape: `one:NAME ["of" oneof:NAME] "," two:NAME ["of" twoof:NAME] "," by:NUMBER`, Repeat: true, Example: "together yeast-rate of rye-yeast, yeast-lag of rye-yeast, -0.87",
				Limits: []Limit{mustBe(-1, 1, "a correlation is -1 to 1").of("by")},
				Doc:    "Two constants that the runs tell together only, by their correlation.",
			},
		},
		Any: &Field{
			Shape: `NAME ["of" whose:NAME] QUANTITY "," between:QUANTITY..QUANTITY "," "from" base:QUANTITY`, Repeat: true,
			Example: "yeast-rate of distillers-yeast 91 %, 84..99 %, from 100 %",
			Limits:  []Limit{mustBe(-1e15, 1e15, "no constant of the models comes near")},
			Doc:     "One constant: its value, the range that holds it 9 times in 10, and what stood there when it was learned. Where that has changed since, the line is not used.",
		},
	},
}
