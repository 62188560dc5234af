package schema

import (
	"slices"
	"strings"

	"newmake/lang/quantity"
	"newmake/lang/record"
)

// Run is what really happened in one batch. What a line of its stages may say is
//
//	[DAY | DATE] [CLOCK [OFFSET]] [WORD] [READINGS] [ENDS]
//	READINGS = READING ("," READING)*
//	ENDS     = [by NAME] [TEXT] ["," written DATE]
var Run = &Field{
	Name: "run", Shape: `NAME "of" BATCH "on" DATE`, Repeat: true, Key: "name", Past: true, Example: `run "26-03" of "Ferry Landing" on 2026-03-03`,
	Doc: "One run of a batch, as it happened: what went in, what was read and when, what became of it. It changes no plan. What was not read may be left out, and a run may be begun with nothing in it. Whatever is read, here or of an instrument or a cask, lies between -1,000,000 and 1,000,000,000 of its unit, and a sample between -58 F (-50 C) and 392 F (200 C): no instrument of the trade reads so much, and no sample is so cold or so hot.",
	Block: &Block{Fields: []*Field{
		{Name: "sheet", Shape: "TEXT", Example: `sheet "ec98562c2a3f"`, Default: "the batch as it now stands", Doc: "The foot of the run sheet that was worked from, so that what it said can be found again."},
		byLine, withLine, usedBlock,
		stage(record.Mash, "cooker", mashVisits),
		stage(record.Ferment, "fermenter", fermentVisits),
		stage(record.Strip, "still", stripVisits),
		stage(record.Spirit, "still", spiritVisits),
		stage(record.Fill, "", fillVisits),
		correctedLine,
	}},
}

// Shapes that the lines of a record have in common.
const (
	// ends may end any line: who, a remark, and the day on which it was written down.
	ends = `[ENDS{ ["by" who:NAME] [remark:TEXT] ["," "written" noted:DATE] }]`
	days = `"mon"|"tue"|"wed"|"thu"|"fri"|"sat"|"sun"`
)

// readings is the shape of a list of readings, given the words that may name them.
func readings(labels []string) string {
	words := make([]string, len(labels))
	for i, l := range labels {
		words[i] = `"` + l + `"`
	}
	value := `["about"] value:QUANTITY ["at" warmth:TEMP]`
	one := `((` + strings.Join(words, "|") + `) ["none" | ` + value + `] | "none" | "true" truly:STRENGTH | ` + value + `) ["with" using:NAME]`
	return one + ` ("," ` + one + `)*`
}

// listed is readings as a reader is shown them, after an optional comma.
func listed(labels []string) string { return `[READINGS{ [","] ` + readings(labels) + ` }] ` }

// visit is a line of a stage, with what may come between its word and the readings.
func visit(name, between string, labels []string, doc, example string) *Field {
	return &Field{Name: name, Shape: strings.TrimSpace(between + " " + listed(labels) + ends), Repeat: true, Doc: doc, Example: example, Limits: asRead}
}

// bare is a line without a word of its own: readings alone.
func bare(labels []string, doc, example string) *Field {
	return &Field{Shape: `READINGS{ ` + readings(labels) + ` } ` + ends, Repeat: true, Doc: doc, Example: example, Limits: asRead}
}

// asRead are the limits of what may be written down. They are wide: what an
// instrument said is kept as it was read, however odd, and is spoken of by itself
// (package logbook).
var asRead = []Limit{
	asItIsRead(mustBe(-1e6, 1e9, "no instrument of the trade reads so much")).of("value"),
	asItIsRead(mustBe(-50, 200, "no sample of the trade is so cold or so hot")).of("warmth"),
	aStrength.of("truly"),
}

func asItIsRead(l Limit) Limit {
	l.AsRead = true
	return l
}

// everywhere are the lines that may stand in every stage.
func everywhere(of string) []*Field {
	return []*Field{
		{Name: "stopped", Shape: `["about"] DURATION ` + ends, Repeat: true, Example: `stopped 40 min "boiler lit late"`, Limits: []Limit{mustBe(0, 30*quantity.DayS, "from nothing to a month")}, Doc: "The work stood still for so long, and why."},
		{Name: "lost", Shape: `["about"] (value:QUANTITY) ["of" what:NAME] ` + ends, Repeat: true, Example: `lost about 3 gal ` + of + `"hose off the receiver"`, Limits: asRead[:1], Doc: "So much was spilt, leaked or poured away, and of what."},
		{Name: "note", Shape: `remark:TEXT ["by" who:NAME] ["," "written" noted:DATE]`, Repeat: true, Example: `note "a smell of sulfur, gone by noon"`, Doc: "What was seen, smelt or tasted."},
		byLine, withLine, correctedLine,
	}
}

var (
	byLine   = &Field{Name: "by", Shape: "who:NAME", Repeat: true, Example: `by "M"`, Doc: "Who did and read what follows, until the next `by`, across stages. At the end of a line it holds for that line."}
	withLine = &Field{Name: "with", Shape: `using:NAME ("," using:NAME)*`, Repeat: true, Example: `with H3, P2, "Floor scale"`, Doc: "The instruments that were read from here on, each in place of the one of its kind. At the end of a reading it holds for that reading."}

	correctedLine = &Field{
		Name: "corrected", Repeat: true,
		Shape:   `WHICH{ [` + days + `|seen:DATE] [CLOCK] (what:WORD|what:TEXT)* } (before:CLOCK "to" [moved:DATE] after:CLOCK | old:QUANTITY "to" ("none"|new:QUANTITY)) "on" DATE ["by" who:NAME] [remark:TEXT]`,
		Example: `corrected 10:04 heat 119 F to 191 F on 2026-03-05 by "A" "read upside down"`,
		Limits:  []Limit{asRead[0].of("old"), asRead[0].of("new")},
		Doc:     "A slip of the pen, put right beside it: the line is named as it begins, the value that stands there must be exactly one, and what was written stays. `to none` says that nothing was read after all. A time stays on its day, unless another date stands before it.",
	}

	usedBlock = &Field{
		Name: "used", Example: "used", Doc: "What went in, as it was weighed or measured.",
		Block: &Block{
			Fields: []*Field{byLine, withLine, correctedLine},
			Any: &Field{
				Shape: `NAME ["none" | ["about"] (value:MASS|value:VOLUME|value:BUSHELS) ["at" warmth:TEMP]] ["lot" sack:TEXT] ["from" ["run"] source:NAME] ` + ends, Repeat: true,
				Example: `rye 40 lb lot "R-07"`, Limits: asRead[:2], Doc: "A grain, a yeast, an enzyme, water or backset: how much, of which lot, from where. One that came of two sacks has two lines.",
			},
		},
	}
)

// stage is a block of a run: the work in one vessel.
func stage(name record.StageName, vessel string, visits func() *Block) *Field {
	f := &Field{
		Name: string(name), Shape: `["in" VESSEL]`, Repeat: true, Default: "in the vessel that was planned", Example: string(name) + ` in "Copper kettle"`,
		Doc: stageDocs[name], Block: visits(),
	}
	if vessel == "" {
		f.Shape, f.Default, f.Example = "", "", string(name)
	}
	f.Block.Timed = true
	return f
}

var stageDocs = map[record.StageName]string{
	record.Mash:    "The mash day as it went, in the order of time. A clock alone is on the day of the line above; the first is on the day of the run.",
	record.Ferment: "The days in the fermenter: how it was set, and what was read on each round.",
	record.Strip:   "The wash run, from the charge to the low wines.",
	record.Spirit:  "The spirit run, from the charge to the feints. `to hearts` says that the spout was turned; what is read on that line is of what ends.",
	record.Fill:    "What was gauged, reduced and filled.",
}

func mashVisits() *Block {
	labels := record.Labels(record.Mash)
	step := func(name, doc, example string) *Field {
		f := visit(name, "[NUMBER]", labels, doc, example)
		f.Limits = append(slices.Clip(asRead), mustBe(1, 100, "no step comes a hundred times in a mash").of("number"))
		return f
	}
	return &Block{
		Fields: append([]*Field{
			step("water", "Water went in.", "water 270 gal, 58 F"),
			step("backset", "Backset went in.", "backset 48 gal, 150 F"),
			visit("add", `GRAIN ("," GRAIN)*`, labels, "Grain went in, or all of it.", "add oats, rye 156 F"),
			visit("dose", "ENZYME", labels, "An enzyme went in.", "dose alpha-amylase"),
			step("heat", "It was heated, by the clock when it was there. Of several, the first line is the recipe's first, or `heat 2`.", "heat 191 F"),
			step("rest", "The rest was over.", "rest 147 F, 5.3 pH"),
			step("cool", "It was cooled, by the clock when it was there.", "cool 158 F"),
			step("boil", "The boil was over.", "boil 210 F"),
			step("drain", "The worts were off the grain.", "drain 260 gal"),
			step("sparge", "The sparge was on.", "sparge 60 gal, 168 F"),
			step("recirculate", "The first runnings ran bright.", "recirculate 150 F"),
		}, everywhere("")...),
		Bare: bare(labels, "Readings between the steps.", "158 F, 5.4 pH"),
	}
}

func fermentVisits() *Block {
	labels := record.Labels(record.Ferment)
	return &Block{
		Fields: append([]*Field{
			visit("pump", "", labels, "The fermenter was full.", "pump 384 gal"),
			visit("pitch", "", labels, "The yeast went in.", "pitch 1.066 SG at 78 F, 5.3 pH"),
			visit("dose", "ENZYME", labels, "An enzyme went in.", "dose glucoamylase"),
		}, everywhere("")...),
		Bare: bare(labels, "A round: what was read, or `none`.", "1.034 SG at 68 F, 87 F, 3.9 pH"),
	}
}

// fraction is the line that gauges a fraction, or what is left in the pot.
func fraction(name, doc, example string, labels []string) *Field {
	f := visit(name, "", labels, doc, example)
	f.Shape = strings.TrimSuffix(f.Shape, ends) + `["to" tank:NAME] ` + ends
	return f
}

// charge is the line that charges a still.
func charge(of string, labels []string, example string) *Field {
	f := visit("charge", of, labels, "The still was charged. What goes in from several places has a line for each.", example)
	f.Shape = strings.TrimSuffix(f.Shape, ends) + `["from" ["run"] source:NAME] ` + ends
	return f
}

func stripVisits() *Block {
	labels := record.Labels(record.Strip)
	return &Block{
		Fields: append([]*Field{
			charge(`["wash"|"water"]`, labels, "charge 380 gal, 9.1 % abv, 0.998 SG at 66 F"),
			visit("fire", "", labels, "The still was lit.", "fire"),
			visit("first-drop", "", labels, "The first drop came.", "first-drop 55 % abv at 66 F, 196 F"),
			visit("off", "", labels, "The heat was taken off.", "off 2 % abv at 66 F"),
			fraction("low-wines", "The low wines, gauged, and the tank that they went to.", `low-wines 124 gal, 52.6 proof at 72 F to "Low wines tank"`, labels),
			fraction("pot-ale", "What was left in the pot.", "pot-ale 250 gal", labels),
		}, everywhere("")...),
		Bare: bare(labels, "Readings while it runs: what has no word is, by its unit, the spout, the receiver or the vapour.", "24 % abv at 68 F, 60 gal, 206 F"),
	}
}

func spiritVisits() *Block {
	labels := record.Labels(record.Spirit)
	return &Block{
		Fields: append([]*Field{
			charge(`["low-wines"|"feints"|"water"]`, labels, "charge low-wines 124 gal, 51.9 proof at 66 F"),
			visit("fire", "", labels, "The still was lit.", "fire"),
			visit("first-drop", "", labels, "The first drop came.", "first-drop 78 % abv at 66 F, 182 F"),
			visit("to", `("heads"|"hearts"|"tails") ["on" ("nose"|"strength"|"volume")]`, labels,
				"The spout was turned, and by what; left out, as the recipe has it. The readings are of the fraction that ends.", `to tails on nose 60.5 % abv at 68 F, 45.9 gal "wet cardboard"`),
			visit("off", "", labels, "The heat was taken off.", "off 4 % abv at 70 F"),
			fraction("foreshots", "The foreshots, gauged.", "foreshots 0.5 gal", labels),
			fraction("heads", "The heads, gauged.", "heads 3.5 gal, 155 proof", labels),
			fraction("hearts", "The hearts, gauged.", "hearts 45.9 gal, 143.3 proof at 66 F", labels),
			fraction("tails", "The tails, gauged.", "tails 43 gal, 60 proof", labels),
			fraction("feints", "The feints, gauged, and the tank that they went to.", `feints 46.2 gal, 74.1 proof at 70 F to "Feints tank"`, labels),
			fraction("lees", "What was left in the pot.", "lees 80 gal", labels),
		}, everywhere("of hearts ")...),
		Bare: bare(labels, "Readings while it runs: what has no word is, by its unit, the spout, the receiver or the vapour.", "73.8 % abv at 68 F, 18.7 gal, 186 F"),
	}
}

func fillVisits() *Block {
	labels := record.Labels(record.Fill)
	return &Block{
		Fields: append([]*Field{
			visit("hearts", "", labels, "The hearts, gauged before they are reduced.", "hearts 45.9 gal, 143.3 proof at 66 F"),
			visit("reduce", "", labels, "Water went in.", "reduce 8.5 gal"),
			visit("gauge", "", labels, "What there was then.", "gauge 54.1 gal, 121.9 proof at 65 F, true 120.0 proof"),
			visit("into", "CASK", labels, "A cask was filled. Its serial stands in quotes.", `into "LH-0012" 53 gal, tare 98 lb, gross 501 lb`),
			fraction("left", "What was left, and where it went.", `left 1.1 gal to "Small tank"`, labels),
		}, everywhere("")...),
		Bare: bare(labels, "Readings between.", "122.3 proof at 66 F"),
	}
}
