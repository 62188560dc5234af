package schema

// Instrument is one of the house's instruments.
var Instrument = &Field{
	Name: "instrument", Shape: "NAME", Repeat: true, Key: "name", Past: true, Example: "instrument H3",
	Doc: "An instrument that readings are taken with. One that is not declared is taken to be as good as is common, and that is said.",
	Block: &Block{Fields: []*Field{
		{
			Name: "reads", Shape: `QUANTITY..QUANTITY "by" division:QUANTITY ["at" TEMP]`, Need: true, Example: "reads 1.000..1.070 SG by 0.001 SG at 60 F",
			Limits:  []Limit{asRead[0].of("quantity"), asRead[0].of("division"), asRead[1].of("temp")},
			Default: "at that of the house's gauge",
			Doc:     "Its scale, from end to end, its division, and the temperature at which it reads true.",
		},
		{
			Name: "tolerance", Shape: "QUANTITY", Example: "tolerance 0.001 SG", Limits: []Limit{mustBe(0, 1e9, "a tolerance is more than nothing")}, Default: "its division alone is reckoned with",
			Doc: "By how much its scale may be off at most, as its maker or its certificate has it.",
		},
		{
			Name: "checked", Repeat: true, Shape: `DATE said:QUANTITY ["at" warmth:TEMP] ("in" "water" ["at" TEMP] | "against" (true:QUANTITY | NAME [true:QUANTITY])) ` + ends,
			Limits:  []Limit{asRead[0].of("said"), asRead[0].of("true"), asRead[1].of("warmth"), asRead[1].of("temp")},
			Example: "checked 2026-02-01 0.9995 SG in water at 60 F",
			Doc:     "What it said, in water or beside another instrument, which said the same where no value follows its name.",
		},
	}},
}
