package schema

import "newmake/lang/quantity"

// sampleNamed is how something that is tasted is named: a cask, the hearts of a run as
// they came off the still, its new make as it was filled, or a bottling.
const sampleNamed = `["cask"|"hearts" "of"|"new-make" "of"|"bottling"] `

// Tasting is what somebody found in a glass.
var Tasting = &Field{
	Name: "tasting", Shape: `"of" ` + sampleNamed + `NAME "on" DATE`, Repeat: true, Past: true, Example: `tasting of cask "LH-0012" on 2027-03-11`,
	Default: "what is named without a word is a cask, where there is one, or else a run",
	Doc:     "What was found in a glass of a cask, of a run's hearts or new make, or of a bottling, by whom, and at which strength. It changes no plan.",
	Block: &Block{
		Fields: []*Field{
			nosedAt, byLine,
			{
				Name: "scale", Shape: `what:NAME NUMBER "to" end:NUMBER [low:TEXT high:TEXT]`, Repeat: true, Key: "what", Example: `scale nose 0 to 5 "nothing" "very fine"`,
				Limits:  []Limit{aScore.of("number"), aScore.of("end")},
				Default: "from 0 to what stands after `of`",
				Doc:     "The ends of a scale, and what they mean. Scores on scales of other ends are never put into one mean.",
			},
			{
				Name: "verdict", Shape: `("ready"|"wait" [DURATION]|"blend"|"again") [remark:TEXT] ["by" who:NAME]`, Repeat: true, Example: "verdict wait 6 months",
				Limits: []Limit{mustBe(0, 50*365.25*quantity.DayS, "nothing waits longer than wood lasts")},
				Doc:    "What is to become of it: it is ready, it waits, it is for blending, or it goes through the still again.",
			},
			{
				Name: "note", Shape: `remark:TEXT ["by" who:NAME]`, Repeat: true, Example: `note "cloudy at 23 %, clear at cask strength"`,
				Doc: "Whatever else there is to say.",
			},
		},
		Any: &Field{
			Shape: `NAME [NUMBER "of" end:NUMBER] [remark:TEXT] ["by" who:NAME]`, Repeat: true, Example: `nose 4 of 5 "oat biscuit, clove"`,
			Limits: []Limit{aScore.of("number"), aScore.of("end")},
			Doc:    "One look, as it is called here: nose, palate, finish, colour, or a word of your own, with a score or without, in free words.",
		},
	},
}

var (
	nosedAt = &Field{Name: "at", Shape: "STRENGTH", Example: "at 23 % abv", Limits: []Limit{aStrength}, Default: "not said", Doc: "The strength at which it is nosed and tasted."}
	aScore  = mustBe(-1000, 1000, "a scale has ends that people can tell apart")
)

// Trial compares runs or casks by people who do not know which is which.
var Trial = &Field{
	Name: "trial", Shape: `NAME "on" DATE`, Repeat: true, Key: "name", Past: true, Example: `trial "More rye?" on 2026-06-20`,
	Doc: "Two or more runs, casks or bottlings compared, unseen. Before it is poured, `newmake trial` says what so many tasters can find, and prints who gets which cup; afterwards, how often guessing gives the same.",
	Block: &Block{
		Fields: []*Field{
			{
				Name: "compare", Need: true, Example: `compare hearts of "26-03", hearts of "26-06"`,
				Shape: sampleNamed + `sample:NAME ("," ` + sampleNamed + `sample:NAME)*`,
				Doc:   "What is compared. A triangle, a duo-trio and a pair take two.",
			},
			{
				Name: "method", Shape: `"triangle"|"duo-trio"|"paired"|"ranking"`, Need: true, Example: "method triangle",
				Doc: "How it is served: `triangle` three cups, one of them odd (ISO 4120); `duo-trio` one that is named and two, one of which is like it (ISO 10399); `paired` two, which has more or is liked better (ISO 5495); `ranking` all, in order (ISO 8587).",
			},
			{
				Name: "expecting", Shape: `sample:NAME ("," sample:NAME)*`, Example: `expecting "26-06"`,
				Default: "nothing: in a pair either answer counts, and a ranking may come out in any order",
				Doc:     "The answer that was expected before it was poured: of a pair the one that has more; of a ranking all of them, the one expected first first.",
			},
			nosedAt,
			{Name: "tasters", Shape: `who:NAME ("," who:NAME)*`, Example: `tasters "A", "M", "J"`, Default: "those who have answered", Doc: "Who is to taste. It is needed before it is poured."},
			{Name: "sets", Shape: "NUMBER", Example: "sets 6", Default: "1", Limits: []Limit{mustBe(1, 100, "nobody's nose lasts longer")}, Doc: "How many sets of cups each taster gets, over all sittings."},
			{Name: "note", Shape: `remark:TEXT ["by" who:NAME]`, Repeat: true, Example: `note "the room smelt of caustic"`, Doc: "Whatever bears on it."},
		},
		Any: &Field{
			Shape: `NAME (NUMBER "of" answers:NUMBER | "ranks" rank:NUMBER ("," rank:NUMBER)*) [remark:TEXT]`, Repeat: true, Example: `"A" 3 of 6`,
			Limits: []Limit{mustBe(0, 1000, "answers are counted").of("number"), mustBe(1, 1000, "who gave no answer has no line").of("answers"), mustBe(1, 100, "ranks are counted from 1").of("rank")},
			Doc:    "What one taster answered: how many of so many were right, or in a pair how many took the one that was expected (without `expecting`, the first of `compare`); in a ranking the ranks in the order of `compare`, `\"A\" ranks 1, 3, 2`, and those that could not be parted share the mean of theirs, `1.5, 1.5, 3`.",
		},
	},
}
