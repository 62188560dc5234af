package schema

import (
	"slices"

	"newmake/lang/quantity"
)

// mashTemp ends a little above the boil of any place; that of the batch's own is looked at
// later (package trade).
var mashTemp = mustBe(0, 105, "water is ice below 32 F (0 C), and an open vessel gets no hotter than its boil").of("temp")

// MostMashS is how long a mash may last. One that stands for longer is soured by
// bacteria before it is fermented (common practice).
const MostMashS = 3 * quantity.DayS

var aRunOff = mustBe(0, 60, "wort that is set is cold").of("cold")

var restTime = mustBe(1, MostMashS, "a step of a mash takes from seconds to a few days").of("duration")

// MashSteps are the lines of the mash that are work; their order is its order.
var MashSteps = []*Field{
	{
		Name: "water", Shape: `VOLUME ["at" TEMP] ["with" old:VOLUME "kept"]`, Repeat: true, Step: true, Example: "water 330 gal at 58 F", Default: "at the temperature of the supply; none of it kept",
		Doc: "Liquor in. Of a house that lauters, so much of it may be the last water of the mash before, which was kept for this one: see `drain`.", Limits: []Limit{mustBe(0, 1000, "from none to more than any cooker of the trade holds").of("old"), mustBe(1e-4, 1000, "from a glass to more than any cooker of the trade holds").of("volume"), mashTemp},
	},
	{
		Name: "backset", Shape: `(SHARE|VOLUME) ["at" TEMP]`, Repeat: true, Step: true, Example: "backset 15 %", Default: "at the temperature of the room",
		Doc: "Spent wash of an earlier run in, as a share of all the liquor or as a volume.",
		Limits: []Limit{
			mustBe(0, 0.6, "with so much acid and salt yeast does not ferment").of("share"),
			mustBe(1e-4, 1000, "from a glass to more than any cooker of the trade holds").of("volume"), mashTemp,
		},
	},
	{Name: "add", Shape: `"all"|GRAIN ("," GRAIN)*`, Repeat: true, Step: true, Example: "add oats, rye", Doc: "Grains in, each with its whole weight, or `all` that is not in yet."},
	{
		Name: "dose", Shape: `ENZYME [MASS|DOSE|SHARE]`, Repeat: true, Step: true, Example: "dose alpha-amylase 0.04 % of grain", Default: "the middle of the library's range",
		Doc: "An enzyme in: a weight, or a share of the grain.", Limits: []Limit{mustBe(0, 0.2, "enzymes are given in parts per thousand of the grain").of("share"), mustBe(0, 0.2, "enzymes are given in parts per thousand of the grain").of("dose"), aDose},
	},
	{Name: "heat", Shape: `"to" TEMP ["in" DURATION]`, Repeat: true, Step: true, Example: "heat to 190 F", Default: "as fast as the vessel can", Doc: "Heat to a temperature.", Limits: []Limit{mashTemp, restTime}},
	{Name: "rest", Shape: "DURATION", Repeat: true, Step: true, Example: "rest 45 min", Doc: "Hold the temperature.", Limits: []Limit{restTime}},
	{Name: "cool", Shape: `"to" TEMP ["in" DURATION]`, Repeat: true, Step: true, Example: "cool to 158 F", Default: "as fast as the vessel can", Doc: "Cool to a temperature.", Limits: []Limit{mashTemp, restTime}},
	{Name: "boil", Shape: "DURATION", Repeat: true, Step: true, Example: "boil 30 min", Doc: "Heat to the boil of the place, and hold it.", Limits: []Limit{restTime}},
	{
		Name: "recirculate", Shape: "[DURATION]", Repeat: true, Step: true, Example: "recirculate 15 min", Default: "15 min",
		Doc: "Return the first runnings over the bed until they run bright.", Limits: []Limit{restTime, usually(60, 60*60, "5 to 15 min, and up to 30 on a slow bed (common practice)")},
	},
	{
		Name: "drain", Shape: `["in" DURATION] ["cooled" "to" cold:TEMP|"for" "the" "next" "mash"]`, Repeat: true, Step: true, Example: "drain in 60 min cooled to 70 F", Default: "in 60 min, hot into the underback",
		Doc: "Draw the worts off through the false bottom; the grain stays. Cooled, they run by the plant's wort cooler into the fermenter; for the next mash they are kept, as the last water is.", Limits: []Limit{restTime, aRunOff},
	},
	{
		Name: "sparge", Shape: `VOLUME ["at" TEMP] ["in" DURATION] ["cooled" "to" cold:TEMP]`, Repeat: true, Step: true, Example: "sparge 195 gal at 172 F in 75 min", Default: "at the temperature of the supply, in 60 min, hot into the underback",
		Doc: "Let water over the bed while the worts run off, as fast as they run.", Limits: []Limit{mustBe(1e-4, 1000, "from a glass to more than any tun of the trade holds").of("volume"), mashTemp, restTime, aRunOff},
	},
}

// Mash is the work in the cooker, in a batch.
var Mash = &Field{
	Name: "mash", Shape: `["in" VESSEL]`, Need: true, Example: `mash in "Copper kettle"`,
	Doc: "The work in the cooker; the order of the lines is the order of work. A variant changes single steps with `replace`, `before`, `after` and `remove`, or gives all of them anew.",
	Block: &Block{Fields: append(slices.Clone(MashSteps),
		&Field{Name: "backset-pH", Shape: "PH", Default: "3.9 pH", Example: "backset-pH 3.9 pH", Doc: "The pH of the backset.", Limits: []Limit{mustBe(2.5, 7, "spent wash is sour")}},
		&Field{
			Name: "acid", Shape: `("lactic"|"phosphoric"|"sulfuric") (VOLUME|"to" PH)`, Example: "acid lactic to 5.4 pH", Default: "none",
			Doc:    "Food-grade acid into the first liquor, as bought: lactic of 88 %, phosphoric of 85 %, sulfuric of 96 % by weight. A volume, or what it takes to bring the whole mash to a pH.",
			Limits: []Limit{mustBe(1e-7, 1, "no mash is given a cubic metre of acid").of("volume"), mustBe(3, 7, "soured below this no malt converts").of("ph"), usually(4.8, 5.8, "malt enzymes work between 4.8 and 5.9 (common practice)").of("ph")},
		},
		&Field{
			Name: "gypsum", Shape: "MASS", Example: "gypsum 6 oz", Default: "none", Doc: "Calcium sulfate into the first liquor: its calcium lowers the pH a little, and keeps alpha-amylase.",
			Limits: []Limit{mustBe(0, 1000, "no mash is given a tonne of it")},
		},
		&Field{
			Name: "lime", Shape: "MASS", Example: "lime 2 oz", Default: "none", Doc: "Slaked lime into the first liquor, which raises the pH of a mash that backset or roasted grain makes too sour.",
			Limits: []Limit{mustBe(0, 1000, "no mash is given a tonne of it")},
		},
		&Field{Name: "backset-solids", Shape: "SHARE", Default: "6 %", Example: "backset-solids 6 %", Doc: "Dissolved solids of the backset, by weight.", Limits: []Limit{mustBe(0, 0.3, "it would be a syrup")}},
		Replace, Before, After, RemoveStep,
	)},
}
