package schema

import (
	"newmake/lang/diag"
	"newmake/lang/quantity"
)

const weekdays = dayShape + ` ["to" ` + dayShape + `] ("," ` + dayShape + ` ["to" ` + dayShape + `])*`

// Season is what a plant is to make in some weeks.
var Season = &Field{
	Name: "season", Shape: `NAME "from" begin:DATE "to" end:DATE`, Repeat: true, Key: "name", Past: true, Example: `season "Spring" from 2026-03-03 to 2026-04-14`,
	Doc: "Some weeks of work in one plant, the first day and the last among them: what is to be made, on which days nobody works, what is out of use, who is there. `newmake season` plans it. It changes no plan of a batch.",
	Block: &Block{Fields: []*Field{
		{
			Name: "casks", Shape: `NUMBER "of" BATCH "by" due:DATE`, Repeat: true, Example: `casks 4 of "Ferry Landing" by 2026-04-10`,
			Doc:    "So many casks are to be full by the end of that day. Each line asks for its own: 2 by one day and 3 by another are 5.",
			Limits: casksAsked,
		},
		{
			Name: "order", Shape: `whom:NAME NUMBER "of" BATCH "by" due:DATE`, Repeat: true, Example: `order "Harbour Inn" 1 of "Low Bridge" by 2026-04-10`,
			Doc:    "Casks that somebody has ordered, by when; they come on top of those of `casks`.",
			Limits: casksAsked,
		},
		{
			Name: "make", Repeat: true, Example: `make "Low Bridge" every 2 weeks on tue`,
			Shape: `NUMBER "of" BATCH | BATCH ("every" DURATION ["on" ` + weekdays + `] | "on" ` + weekdays + ` | "on" day:DATE ("," day:DATE)*)`,
			Doc:   "When a batch is mashed: so often, on any days, `make 3 of \"Low Bridge\"`; once in so many days or weeks, counted from the first day of the season, on each of the weekdays that are named, or else on any day; on each of these weekdays; on these dates.",
			Limits: []Limit{
				{Slot: "duration", Low: quantity.DayS, High: 366 * quantity.DayS, Severity: diag.Error, Reason: "a mash takes its day, and a season is a year at most"},
				mustBe(1, 366, "mashes are counted").of("number"),
			},
		},
		{
			Name: "closed", Shape: `begin:DATE ["to" end:DATE] [remark:TEXT]`, Repeat: true, Example: `closed 2026-04-03 to 2026-04-06 "holiday"`,
			Doc: "Days on which nobody works and no still is lit, both ends among them, and why. What ferments goes on.",
		},
		{
			Name: "without", Shape: `VESSEL begin:DATE ["to" end:DATE] [remark:TEXT]`, Repeat: true, Example: `without "East" 2026-03-16 to 2026-03-20 "new coil"`,
			Doc: "A vessel, a tank or somebody of the `crew` that is not to be had on these days, both ends among them, and why.",
		},
		{
			Name: "crew", Repeat: true, Example: `crew "M", "J" 07:00 to 17:00, tue to sat`,
			Shape:   `who:NAME ("," who:NAME)* [opens:CLOCK "to" closes:CLOCK ["," ` + weekdays + `] | ` + weekdays + `] ["from" begin:DATE ["to" end:DATE]]`,
			Default: "the `crew` of the plant, in its `shift`, without names",
			Doc:     "Who is there, and when: in the shift of the plant where the line says no hours and no days. Of several lines for one person the last that holds on a day says. People who are named here are those whom `without` may name.",
		},
		inSeason(feintsToday, "The feints that wait when the season begins: none in a first batch, or so much of such a strength."),
		inSeason(keptToday, "No last water of a mash is kept when the season begins."),
		inSeason(potAleToday, "No hot pot ale is kept when the season begins."),
		inSeason(backsetToday, "There is no backset when the season begins: water goes into the first mash in its place."),
	}},
}

var casksAsked = []Limit{mustBe(1, 1000, "casks are counted, and no small house fills a thousand in a year").of("number")}

// inSeason is a line on what is there on the day, of the first day of a season.
func inSeason(of *Field, doc string) *Field {
	f := *of
	f.Doc, f.Default = doc, "what the last run left, or else what a house at work has"
	return &f
}
