package trade_test

import (
	"fmt"
	"os"
	"slices"
	"strings"
	"testing"
	"testing/fstest"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"newmake/lang/check"
	"newmake/lang/diag"
	"newmake/lang/diag/codetest"
	"newmake/lang/testflag"
)

// threshold is a number at which a rule begins to speak, tried on both sides. The
// base batch of lang/check is changed by edits, pairs of an old text and a new
// one, in which {} stands for the value that decides. The values are written by
// hand, as near to the limit as the limit is meant, so that a change of the rule's
// own constant is noticed.
type threshold struct {
	code     diag.Code
	severity diag.Severity
	what     string
	edits    []string
	in, out  string // nothing is said, and it is said
}

// Parts of the base batch that several rows change.
const (
	malt    = "add      distillers-malt\n    rest     60 min"
	cook    = "heat     to 190 F\n    rest     45 min"
	setAt   = "cool     to 78 F"
	hold    = "hold   78..88 F"
	hearts  = "hearts     from 80 % abv to 63 % abv"
	pitch   = "distillers-yeast 0.6 g/L"
	grist   = "corn             70 %\n    rye              16 %\n    distillers-malt  14 %"
	liquefy = "dose     alpha-amylase\n"
)

var thresholds = []threshold{
	// Water boils at 209.9 F at 1,150 ft.
	{diag.CodeAboveBoil, diag.Error, "the boil", []string{"heat     to 190 F", "heat to {}"}, "210.95 F", "211.02 F"},
	{diag.CodeHeatDown, diag.Error, "a temperature that is known", []string{cook, cook + "\nheat to {}"}, "189.9 F", "189.7 F"},
	{diag.CodeHeatDown, diag.Error, "a temperature that is an estimate", []string{malt, "add distillers-malt\nheat to {}\nrest 60 min"}, "138.2 F", "137.8 F"},
	{diag.CodeCoolUp, diag.Error, "a temperature that is known", []string{cook, cook + "\ncool to {}"}, "190.1 F", "190.3 F"},
	{diag.CodeCoolUp, diag.Error, "a temperature that is an estimate", []string{malt, "add distillers-malt\ncool to {}\nrest 60 min"}, "155 F", "156 F"},

	{diag.CodeCharless, diag.Error, "the least char on plain oak", []string{"53 gal new charred-oak char 3", "53 gal new plain-oak {}"}, "", "char 1"},
	// However little of it: 0.05 % of the bill is a fifth of a kilogram.
	{diag.CodeNeverAdded, diag.Error, "a grain of which there is some", []string{grist, "corn 69.95 %\nrye 16 %\ndistillers-malt 14 %\noats 0.05 %", malt, "add distillers-malt\nrest 60 min\n{}"}, "add oats", ""},
	{diag.CodeHotGrain, diag.Warning, "rye at 71 C", []string{"cool     to 158 F", "cool to {}"}, "71.48 C", "71.52 C"},
	{diag.CodeRawStarch, diag.Error, "corn, from 62 C", []string{"heat     to 190 F", "heat to {}", "cool     to 158 F", "cool to 60 C", "cool     to 148 F", "cool to 60 C"}, "62.1 C", "61.9 C"},
	{diag.CodeRawStarch, diag.Warning, "corn, to 75 C", []string{"heat     to 190 F", "heat to {}"}, "73.6 C", "73.4 C"},
	{diag.CodeRawStarch, diag.Warning, "malt, half of 52 to 65 C", []string{"cool     to 148 F", "cool to {}"}, "58.6 C", "58.4 C"},
	{diag.CodeSetsSolid, diag.Warning, "corn, half of 62 to 75 C", []string{liquefy, "", "heat     to 190 F", "heat to {}", "cool     to 158 F\n    add      rye\n    rest     20 min\n", "", malt, "add distillers-malt, rye\nrest 60 min"}, "68.4 C", "68.6 C"},
	{diag.CodeSetsSolid, diag.Warning, "raw grain, and not what was malted or roasted", []string{
		liquefy, "", grist, "{} 86 %\ndistillers-malt 14 %", "add      corn", "add {}", "add      rye\n    rest     20 min\n", "",
	}, "chocolate-malt", "barley"},
	{diag.CodeSetsSolid, diag.Warning, "however little malt is in", []string{liquefy, "", "add      corn", "add corn{}", grist, "corn 70 %\nrye 15.95 %\ndistillers-malt 14 %\ntwo-row-malt 0.05 %"}, ", two-row-malt", ""},

	{diag.CodeGums, diag.Note, "a third of the bill", []string{grist, "rye {}\ndistillers-malt 14 %\ncorn rest"}, "33 %", "33.1 %"},
	{diag.CodeGums, diag.Warning, "six tenths of it", []string{grist, "rye {}\ndistillers-malt 14 %\ncorn rest"}, "60 %", "60.1 %"},
	{diag.CodeGums, diag.Note, "unless it is malted with the gums gone", []string{grist, "{} 40 %\nrye 16 %\ndistillers-malt 14 %\ncorn rest", "add      rye", "add rye, {}"}, "wheat-malt", "rye-malt"},
	{diag.CodeGums, diag.Note, "an enzyme for them", []string{grist, "rye 50 %\ndistillers-malt 14 %\ncorn rest", "add      rye", "add rye\n{}"}, "dose xylanase", ""},
	{diag.CodeGums, diag.Note, "10 min of rest with malt in", []string{grist, "rye 50 %\ndistillers-malt 14 %\ncorn rest", malt, "add distillers-malt\nrest 60 min\ncool to 45 C\nrest {}"}, "10 min", "9.9 min"},
	{diag.CodeGums, diag.Note, "45 C", []string{grist, "rye 50 %\ndistillers-malt 14 %\ncorn rest", malt, "add distillers-malt\nrest 60 min\ncool to {}\nrest 10 min"}, "45 C", "45.1 C"},
	{diag.CodeGums, diag.Note, "35 C", []string{grist, "rye 50 %\ndistillers-malt 14 %\ncorn rest", malt, "add distillers-malt\nrest 60 min\ncool to {}\nrest 10 min"}, "35 C", "34.9 C"},

	{diag.CodeEnzymesDie, diag.Error, "malt at 80 C", []string{"cool     to 148 F", "cool to {}\n", "cool     to 158 F", "", malt, malt + "\ncool to 148 F\nrest 60 min"}, "79.9 C", "80.1 C"},
	{diag.CodeEnzymesDie, diag.Warning, "malt at 68.5 C", []string{"cool     to 148 F", "cool to {}"}, "68.4 C", "68.6 C"},
	{diag.CodeEnzymesDie, diag.Error, "heated above 80 C", []string{malt, "add distillers-malt\nheat to {}\nrest 5 min\ncool to 64 C\nrest 60 min"}, "79.9 C", "80.1 C"},
	{diag.CodeEnzymesDie, diag.Error, "after ten minutes of rest", []string{malt, "add distillers-malt\nrest {}\nheat to 85 C\ncool to 64 C\nrest 60 min"}, "10.1 min", "9.9 min"},
	{diag.CodeEnzymesDie, diag.Warning, "a twentieth of the bill, put in with the cook", []string{
		grist, "rye 16 %\ndistillers-malt 14 %\ntwo-row-malt {}\ncorn rest", "add      corn", "add corn, two-row-malt",
	}, "5 %", "5.1 %"},

	{diag.CodeEnzymeWindow, diag.Warning, "ten minutes of rest", []string{malt, "add distillers-malt\nrest {}"}, "10.1 min", "9.9 min"},
	{diag.CodeEnzymeWindow, diag.Warning, "a rest at 75 C", []string{malt, "add distillers-malt\nheat to {}\nrest 60 min"}, "74.9 C", "75.1 C"},
	{diag.CodeEnzymeWindow, diag.Warning, "a rest at 45 C", []string{malt, "add distillers-malt\ncool to {}\nrest 60 min"}, "45.1 C", "44.9 C"},

	// Malt of 240 degrees: its share by 2.4 is the grist's power.
	{diag.CodeWeakEnzymes, diag.Warning, "12 lintner with a liquefying enzyme", []string{grist, "rye 16 %\ndistillers-malt {}\ncorn rest"}, "5.05 %", "4.95 %"},
	{diag.CodeWeakEnzymes, diag.Note, "20 lintner with one", []string{grist, "rye 16 %\ndistillers-malt {}\ncorn rest"}, "8.4 %", "8.3 %"},
	{diag.CodeWeakEnzymes, diag.Warning, "20 lintner without", []string{liquefy, "", grist, "rye 16 %\ndistillers-malt {}\ncorn rest"}, "8.4 %", "8.3 %"},
	{diag.CodeWeakEnzymes, diag.Note, "35 lintner without", []string{liquefy, "", grist, "rye 16 %\ndistillers-malt {}\ncorn rest"}, "14.6 %", "14.5 %"},

	{diag.CodeDose, diag.Warning, "0.02 % of the grain", []string{"dose     alpha-amylase", "dose alpha-amylase {}"}, "0.02 %", "0.0199 %"},
	{diag.CodeDose, diag.Warning, "0.06 % of the grain", []string{"dose     alpha-amylase", "dose alpha-amylase {}"}, "0.06 %", "0.0602 %"},
	{diag.CodeEnzymeWindow, diag.Warning, "an enzyme that dies at 72 C", []string{liquefy, liquefy + "dose glucoamylase\n", "heat     to 190 F", "heat to 62 C\nrest 20 min\nheat to 190 F", "add      corn", "heat to {}\nadd corn", "cool     to 158 F", "cool to 150 F"}, "72.4 C", "72.6 C"},
	{diag.CodeEnzymeWindow, diag.Warning, "an enzyme that works to 70 C", []string{malt, "add distillers-malt\ndose beta-glucanase\nheat to {}\nrest 60 min"}, "70.4 C", "70.6 C"},
	{diag.CodeEnzymeWindow, diag.Warning, "an enzyme that works from 40 C", []string{malt, malt + "\ndose beta-glucanase\ncool to {}\nrest 60 min"}, "39.6 C", "39.4 C"},
	{diag.CodeEnzymeWindow, diag.Warning, "held below 28 C, where it works", []string{hold, "dose glucoamylase\nhold 20..{}"}, "28.1 C", "27.9 C"},
	{diag.CodeEnzymeWindow, diag.Warning, "the fermenter reaches 28 C, where it works on", []string{setAt, "cool to 26 C\ndose glucoamylase", hold, "hold 20..{}"}, "28.1 C", "27.9 C"},

	{diag.CodeSetTemperature, diag.Error, "43 C kills the yeast", []string{setAt, "cool to {}"}, "42.9 C", "43.1 C"},
	{diag.CodeSetTemperature, diag.Warning, "34 C", []string{setAt, "cool to {}"}, "34.095 C", "34.105 C"},
	{diag.CodeSetTemperature, diag.Warning, "two degrees below 20 C", []string{setAt, "cool to {}"}, "18.1 C", "17.9 C"},
	{diag.CodePitchRate, diag.Warning, "0.4 g/L", []string{pitch, "distillers-yeast {}"}, "0.4 g/L", "0.399 g/L"},
	{diag.CodePitchRate, diag.Warning, "1.2 g/L", []string{pitch, "distillers-yeast {}"}, "1.2 g/L", "1.202 g/L"},
	{diag.CodePitchRate, diag.Warning, "little by weight, good to a tenth", []string{pitch, "distillers-yeast {}"}, "1.34 lb", "1.32 lb"},
	{diag.CodePitchRate, diag.Warning, "much by weight, good to a tenth", []string{pitch, "distillers-yeast {}"}, "4.85 lb", "4.9 lb"},
	{diag.CodeHoldWindow, diag.Error, "43 C kills the yeast", []string{hold, "hold {}..45 C"}, "42.9", "43.1"},
	{diag.CodeHoldWindow, diag.Warning, "34 C", []string{hold, "hold 26..{}"}, "34.05 C", "34.15 C"},
	{diag.CodeHoldWindow, diag.Warning, "held from two degrees below 20 C", []string{hold, "hold {}..19 C"}, "18.1", "17.9"},
	{diag.CodeHoldWindow, diag.Warning, "and never to 20 C", []string{hold, "hold 15..{}"}, "20.1 C", "19.9 C"},

	// 900 lb are 408.2 kg. Liquor is written in litres, and there is no backset.
	{diag.CodeThickness, diag.Warning, "2.3 L/kg", []string{"backset  15 %\n", "", "water    315 gal", "water {}"}, "942 L", "936 L"},
	{diag.CodeThickness, diag.Warning, "7 L/kg", []string{"backset  15 %\n", "", "water    315 gal", "water {}", "holds  520 gal", "holds 1,520 gal"}, "2,855 L", "2,860 L"},
	{diag.CodeBackset, diag.Error, "six tenths, as 315 gal of water has it", []string{"backset  15 %", "backset {}", "holds  520 gal", "holds 1,520 gal"}, "472 gal", "473 gal"},
	{diag.CodeBackset, diag.Warning, "a third", []string{"backset  15 %", "backset {}"}, "33.3 %", "33.4 %"},
	{diag.CodeBackset, diag.Note, "a tenth", []string{"backset  15 %", "backset {}"}, "9.96 %", "9.94 %"},

	{diag.CodeCookerFull, diag.Error, "all of the cooker", []string{"holds  520 gal", "holds {}"}, "443 gal", "442 gal"},
	{diag.CodeFermenterFull, diag.Error, "all of the fermenter", []string{"holds  540 gal", "holds {}"}, "443 gal", "442 gal"},
	{diag.CodeFermenterFull, diag.Error, "all of the larger of two", []string{
		"fermenter \"North\", \"South\" {", "fermenter \"North\" {\n holds 300 gal\n cools 10 kW\n }\n fermenter \"South\" {", "holds  540 gal", "holds {}",
	}, "443 gal", "442 gal"},
	{diag.CodeStillFull, diag.Error, "all of the still", []string{"holds     640 gal", "holds {}"}, "443 gal", "442 gal"},

	{diag.CodeCutBeyond, diag.Error, "the azeotrope", []string{hearts, "hearts from {} to 63 % abv"}, "97.1 % abv", "97.3 % abv"},
	{diag.CodeCutBeyond, diag.Error, "the azeotrope, as proof", []string{hearts, "hearts from {} to 63 % abv"}, "194.3 proof", "194.5 proof"},
	{diag.CodeCutsCrossed, diag.Error, "strengths", []string{hearts, "hearts from 80 % abv to {}"}, "79.9 % abv", "80 % abv"},
	{diag.CodeCutsCrossed, diag.Error, "strengths of two kinds", []string{hearts, "hearts from 80 % abv to {}"}, "159.5 proof", "159.7 proof"},
	{diag.CodeCutsCrossed, diag.Error, "volumes", []string{hearts, "hearts from 3 gal to {}"}, "3.1 gal", "3 gal"},
	{diag.CodeCutsCrossed, diag.Error, "temperatures of the vapour", []string{hearts, "hearts from 178 F to {}"}, "178.1 F", "178 F"},
	{diag.CodeCutsCrossed, diag.Error, "shares", []string{hearts, "hearts from 4 % of charge to {}"}, "4.1 % of charge", "4 % of charge"},
	{diag.CodeCutsCrossed, diag.Error, "times", []string{hearts, "hearts from 20 min to {}\npace {\n hearts at 20 gal/h\n}"}, "20.1 min", "20 min"},
	{diag.CodeInForeshots, diag.Error, "foreshots over a quarter of an hour, less a second", []string{hearts, "hearts from {} to 63 % abv"}, "899.1 s", "898.9 s"},
	{diag.CodeInForeshots, diag.Error, "foreshots of half a gallon, less what no eye sees", []string{hearts, "hearts from {} to 40 gal"}, "1,888 mL", "1,887 mL"},
	{diag.CodeStopEarly, diag.Error, "hearts to 63 % abv", []string{"stop       at 4 % abv", "stop at {}"}, "63 % abv", "63.1 % abv"},
	{diag.CodeStopEarly, diag.Error, "hearts to 63 % abv, in proof", []string{"stop       at 4 % abv", "stop at {}"}, "126.3 proof", "126.5 proof"},

	{diag.CodeStopEarly, diag.Error, "hearts to 63 % abv, by mass, within a hundredth", []string{"stop       at 4 % abv", "stop at {}"}, "56.1 % abw", "56.3 % abw"},

	{diag.CodeCaskSize, diag.Note, "a fiftieth more than 53 gal", []string{"fill     53 gal", "fill {}"}, "54 gal", "54.1 gal"},
	{diag.CodeCaskSize, diag.Note, "a fiftieth less than 53 gal", []string{"fill     53 gal", "fill {}"}, "52 gal", "51.9 gal"},

	{diag.CodeLawGrain, diag.Error, "51 % corn", []string{grist, "corn {}\ndistillers-malt 14 %\nrye rest"}, "51 %", "50.99 %"},
	{diag.CodeLawEntry, diag.Error, "125 proof", []string{"entry   114 proof", "entry {}"}, "125 proof", "125.1 proof"},
	{diag.CodeLawBottled, diag.Error, "80 proof", []string{"750 mL at 94 proof", "750 mL at {}"}, "80 proof", "79.9 proof"},
	{diag.CodeLawRest, diag.Error, "two years", []string{"standard  bourbon", "standard straight-bourbon", "rest     48 months", "rest {}"}, "24 months", "23.9 months"},
	{diag.CodeLawWood, diag.Error, "700 L", []string{"standard  bourbon", "standard scotch-grain", "fill     53 gal", "fill {}", "dose     alpha-amylase\n", ""}, "700 L", "700.2 L"},
}

// unnumbered is the codes of rules that no number decides, and how they do.
var unnumbered = map[diag.Code]string{
	diag.CodeWetYeast:     "yeast is dry or pressed",
	diag.CodeAsItFills:    "wort runs cold into the fermenter or does not",
	diag.CodeNothingIn:    "an order of steps",
	diag.CodeIntoLiquor:   "an order of lines",
	diag.CodeNoHeating:    "a vessel heats or not",
	diag.CodeNoCooling:    "a vessel cools or not",
	diag.CodeNoEnzymes:    "there is something that makes sugar or not",
	diag.CodeNoForeshots:  "foreshots are set aside or not",
	diag.CodeCutNeedsPace: "a pace is a time or it is a flow",
	diag.CodeFeintsUnused: "the charge takes feints or not",
	diag.CodeLawEnzymes:   "an enzyme is dosed or not",
	diag.CodeLawAbroad:    "a country is another or it is not",
}

// more is said beside the thresholds: which grain, which step, what helps.
var more = []struct {
	what  string
	edits []string
}{
	{"a grain of which there is none is no enzyme", []string{grist, "corn 84 %\nrye 16 %\ndistillers-malt 0 %", liquefy, ""}},
	{"nor is one put in of which there is none", []string{grist, "corn 70 %\nrye 16 %\ndistillers-malt 14 %\ntwo-row-malt 0 %", malt, "add distillers-malt, two-row-malt\nrest 60 min"}},
	{"malt in at a temperature that kills it, and another that lives", []string{grist, "corn 70 %\nrye 6 %\ndistillers-malt 14 %\ntwo-row-malt 10 %", "heat     to 190 F", "heat to 185 F\nadd two-row-malt"}},
	{"malt for the cook, of a twentieth of the bill, and none after it", []string{grist, "corn 79 %\nrye 16 %\ndistillers-malt 5 %", "add      corn", "add corn, distillers-malt", malt, "rest 60 min"}},
	{"two grains with gums", []string{grist, "corn 20 %\nrye 40 %\noats 26 %\ndistillers-malt 14 %", "add      rye", "add rye, oats"}},
	{"one grain with gums and one of which there is none", []string{grist, "corn 20 %\nrye 66 %\noats 0 %\ndistillers-malt 14 %", "add      rye", "add rye, oats"}},
	{"gums, and a rest for them before the malt is in", []string{grist, "corn 20 %\nrye 66 %\ndistillers-malt 14 %", "add      corn", "add rye, corn", "dose     alpha-amylase", "rest 1 min\ncool to 40 C\nrest 20 min"}},
	{"a cooker that cannot cool, and worts that a cooler cools", []string{"    cools  120 kW\n", "", "crew       2", "crew 2\nwort-cooler 4 m2, water 60 L/min", malt, "add distillers-malt\nrest 60 min\ndrain in 60 min"}},
	{"a cooker that cannot cool, and no drain", []string{"    cools  120 kW\n", "", "crew       2", "crew 2\nwort-cooler 4 m2, water 60 L/min"}},
	{"a cooker that cannot cool, and no cooler", []string{"    cools  120 kW\n", "", malt, "add distillers-malt\nrest 60 min\ndrain in 60 min"}},
	{"a cooker that cannot heat", []string{"    heats  130 kW\n    cools  120 kW", "cools 120 kW"}},
	{"worts that run cold, and no cooler", []string{"    cool     to 78 F", "drain cooled to 78 F"}},
	{"worts that run hot off a mash with a cooler", []string{"crew       2", "crew 2\nwort-cooler 4 m2, water 60 L/min", "    cool     to 78 F", "drain in 60 min"}},
	{"the second of which runs hot", []string{"crew       2", "crew 2\nwort-cooler 4 m2, water 60 L/min", "    cool     to 78 F", "drain cooled to 78 F\nwater 50 gal at 160 F\ndrain in 60 min"}},
	{"a sparge that runs hot", []string{"crew       2", "crew 2\nwort-cooler 4 m2, water 60 L/min", "    cool     to 78 F", "sparge 50 gal at 170 F in 60 min"}},
	{"a drain, a sparge and a turn of the runnings before any grain", []string{"    add      corn\n", "drain in 10 min\nadd corn\n"}},
	{"a sparge before any grain", []string{"    add      corn\n", "sparge 5 gal at 170 F in 10 min\nadd corn\n"}},
	{"runnings that go round before any grain", []string{"    add      corn\n", "recirculate 10 min\nadd corn\n"}},
	{"acid among later steps", []string{"    rest     45 min", "acid lactic to 5.2 pH\nrest 45 min"}},
	{"acid before the grain", []string{"    add      corn", "acid lactic to 5.2 pH\nadd corn"}},
	{"acid after the last step", []string{"    cool     to 78 F", "cool to 78 F\nacid lactic to 5.2 pH"}},
	{"gypsum as the grain goes in, in the same mash", []string{"    add      corn", "add corn\ngypsum 1 oz"}},
	{"a set that kills, as in the other scale", []string{setAt, "cool to 78 C"}},
	{"a hold that kills, as in the other scale", []string{hold, "hold 78..88 C"}},
	{"a hold of one temperature", []string{hold, "hold 20 F"}},
	{"a boil that is above the boil, as in the other scale", []string{"heat     to 190 F", "heat to 190 C"}},
	{"a pitch by weight, of a mash in litres", []string{pitch, "distillers-yeast 600 g", "water    315 gal at 58 F", "water 1,192 L at 14 C"}},
	{"the thickest of two thick rests", []string{"water    315 gal", "water 150 gal"}},
	{"a thick mash in litres", []string{"water    315 gal at 58 F", "water 500 L at 14 C", "bill 900 lb", "bill 408 kg"}},
	{"a thick bed after the drain is none", []string{"    cool     to 78 F", "drain cooled to 78 F\nrest 10 min", "crew       2", "crew 2\nwort-cooler 4 m2, water 60 L/min"}},
	{"grain that lies dry, and is wetted after", []string{"    water    315 gal at 58 F\n    backset  15 %\n    dose     alpha-amylase\n    add      corn\n", "add corn\nwater 315 gal at 180 F\ndose alpha-amylase\n"}},
	{"grain that is never wetted", []string{"    water    315 gal at 58 F\n    backset  15 %\n    dose     alpha-amylase\n    add      corn\n    heat     to 190 F\n    rest     45 min\n    cool     to 158 F\n", "add corn\n"}},
	{"a heat that is colder than the water that came before it", []string{"    heat     to 190 F", "water 300 gal at 200 F\nheat to 120 F", "holds  520 gal", "holds 920 gal"}},
	{"a cut that no still gives, by mass", []string{hearts, "hearts from 101 % abw to 63 % abv"}},
	{"an enzyme in a ferment that is held below where it works", []string{hold, "dose beta-glucanase\nhold 20..25 C"}},
	{"another enzyme in one that is held below it", []string{hold, "dose glucoamylase\nhold 20..25 C"}},
	{"an enzyme in a ferment that is not held", []string{"    " + hold + "\n", "dose glucoamylase\n"}},
}

// TestWordsOfTheTrade holds all that is said to a file, word by word: at the numbers that
// decide, and of the cases above.
func TestWordsOfTheTrade(t *testing.T) {
	said := sayer(t)
	var out strings.Builder
	say := func(what string, list diag.List) {
		fmt.Fprintf(&out, "## %s\n", what)
		for _, d := range list {
			fmt.Fprintf(&out, "%s\n  help: %s\n", d.Header(), d.Help)
			if d.Reason != "" {
				fmt.Fprintf(&out, "  reason: %s\n", d.Reason)
			}
			if d.Fix != nil {
				fmt.Fprintf(&out, "  fix: %s\n", d.Fix.Text)
			}
			for _, r := range d.Related {
				line, _ := r.At.Position()
				fmt.Fprintf(&out, "  related: line %d, %s\n", line, r.Text)
			}
		}
		out.WriteString("\n")
	}
	for _, c := range thresholds {
		say(fmt.Sprintf("%s, %s: %s", c.code, c.what, c.in), said(t, c.edits, c.in))
		say(fmt.Sprintf("%s, %s: %s", c.code, c.what, c.out), said(t, c.edits, c.out))
	}
	for _, c := range more {
		say(c.what, said(t, c.edits, ""))
	}
	const name = "testdata/said.txt"
	if testflag.Update() {
		require.NoError(t, os.MkdirAll("testdata", 0o755))
		require.NoError(t, os.WriteFile(name, []byte(out.String()), 0o644))
	}
	want, err := os.ReadFile(name)
	require.NoError(t, err)
	assert.Equal(t, string(want), out.String())
}

// sayer gives what the checker says of the base batch with edits made.
func sayer(t *testing.T) func(t *testing.T, edits []string, value string) diag.List {
	base, err := os.ReadFile("../check/testdata/base.batch")
	require.NoError(t, err)
	house, err := os.ReadFile("../check/testdata/house.batch")
	require.NoError(t, err)
	return func(t *testing.T, edits []string, value string) diag.List {
		texts := []string{string(house), string(base)}
		for i := 0; i < len(edits); i += 2 {
			found := false
			for j := range texts {
				found = found || strings.Contains(texts[j], edits[i])
				texts[j] = strings.Replace(texts[j], edits[i], strings.ReplaceAll(edits[i+1], "{}", value), 1)
			}
			require.True(t, found, "the base has no %q", edits[i])
		}
		h, err := check.LoadFS(fstest.MapFS{
			"house.batch": &fstest.MapFile{Data: []byte(texts[0])}, "base.batch": &fstest.MapFile{Data: []byte(texts[1])},
		}, "", check.Options{})
		require.NoError(t, err)
		return h.Check()
	}
}

func TestThresholds(t *testing.T) {
	said := sayer(t)
	for _, c := range thresholds {
		t.Run(string(c.code)+" "+c.what, func(t *testing.T) {
			is := func(d diag.Diagnostic) bool { return d.Code == c.code && d.Severity == c.severity }
			in := said(t, c.edits, c.in)
			assert.False(t, slices.ContainsFunc(in, is), "at %s it is said:\n%s", c.in, in.Error())
			for _, d := range in { // a text that can't be read would say nothing of the trade
				assert.False(t, strings.HasPrefix(string(d.Code), "NM04") && d.Severity == diag.Error, "%s", d.Header())
				assert.Greater(t, string(d.Code), "NM0399", "%s", d.Header())
			}
			out := said(t, c.edits, c.out)
			assert.True(t, slices.ContainsFunc(out, is), "at %s it is not said as %s:\n%s", c.out, c.severity, out.Error())
		})
	}
}

// TestEveryThresholdIsTried holds the table against the source: each code that the
// package raises is in it, or no number decides it.
func TestEveryThresholdIsTried(t *testing.T) {
	raised := codetest.Raised(t, ".", "../diag")
	require.Greater(t, len(raised), 25)
	tried := map[diag.Code]bool{}
	for _, c := range thresholds {
		tried[c.code] = true
	}
	codetest.EveryThresholdTried(t, raised, tried, unnumbered)
}
