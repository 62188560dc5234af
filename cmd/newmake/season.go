package main

import (
	"encoding/json"
	"os"
	"strings"

	"github.com/spf13/cobra"

	"newmake/compile/ask/weeks"
	"newmake/compile/book/season"
	"newmake/compile/front/revision"
	"newmake/compile/show/formats"
	show "newmake/compile/show/weeks"
	"newmake/lang/record"
	"newmake/lang/words"
)

// seasonFlags are what a person asks of a season.
type seasonFlags struct {
	answerFlags
	on, house, part, printed, sheets string
	try                              []string
	effort, week, draws              int
	full                             bool
}

func seasonCommand(a *app) *cobra.Command {
	var f seasonFlags
	cmd := &cobra.Command{
		Use:   "season [NAME]",
		Short: "Weeks: many batches on one plant",
		Long: "season plans the weeks that a `season` of the house asks for: when each batch is mashed, in\n" +
			"which fermenter, when the stills run, who is wanted when, what the boiler gives, and which\n" +
			"feints and which backset go from each run to the next. It says if all that is asked for is\n" +
			"met, how much better a plan could be, what limits it, and on which days of the week a\n" +
			"batch can be mashed at all. Runs that were begun stand as they were. The same house and\n" +
			"the same effort give the same plan.\n\n" +
			"As html it is a page with one picture of vessels, people and boiler; --week prints one\n" +
			"week for the wall, --part buy what has to be bought by when, with what is in store taken\n" +
			"off. --sheets DIR writes what is worked from: a run sheet for each run to come, with what\n" +
			"flows into it and the hours that the season gives it, and a page for each day with the work\n" +
			"of all runs; one that was changed by hand since is kept. As ics it is one calendar: put it over the one before, and its events move.\n" +
			"--odds draws what is not known of the house and of each run, and says how often all of it\n" +
			"is met. --printed names the plan that people work from, written before as json: the new one\n" +
			"then changes as little of it as it can. --try plans with a plant that has something else.",
		Example: "  newmake season\n" +
			"  newmake season Spring -o spring.html\n" +
			"  newmake season Spring --week 2 -o week.html\n" +
			"  newmake season Spring --part buy -o buy.csv\n" +
			"  newmake season Spring -o spring.ics\n" +
			"  newmake season Spring --sheets spring-sheets\n" +
			"  newmake season Spring --try \"plant.boiler=170 kW\"\n" +
			"  newmake season Spring --on 2026-04-22 --printed spring.json",
		RunE: func(_ *cobra.Command, args []string) error {
			switch len(args) {
			case 0:
				return f.run(a, "")
			case 1:
				return f.run(a, args[0])
			}
			return usage("season takes one name; one of several words stands in quotes: newmake season %q", strings.Join(args, " "))
		},
	}
	f.declare(cmd, formats.OfSeason, "that of the batches")
	cmd.Flags().StringVar(&f.house, "house", ".", "a folder or file of the house")
	cmd.Flags().StringVar(&f.on, "on", "", "plan from this day on; what was before stands: 2026-04-22")
	cmd.Flags().IntVar(&f.effort, "effort", 0, "steps of the search (default: enough for a small house)")
	cmd.Flags().IntVar(&f.draws, "odds", 0, "draw it so many times: how often what is asked for is met")
	cmd.Flags().StringVar(&f.printed, "printed", "", "the plan that people work from, as json: change little of it")
	cmd.Flags().StringVar(&f.part, "part", "", "one part: buy")
	cmd.Flags().StringVar(&f.sheets, "sheets", "", "write the sheets of all runs and days into this folder")
	cmd.Flags().IntVar(&f.week, "week", 0, "one week, for the wall, counted from 1")
	cmd.Flags().StringArrayVar(&f.try, "try", nil, "change a value of the plant for this plan: plant.boiler=170 kW")
	cmd.Flags().BoolVar(&f.full, "full", false, "every run, day and tank, and what each thing more would bring")
	completeFlag(cmd, "part", oneOf("buy"))
	cmd.MarkFlagsMutuallyExclusive("part", "week", "full", "sheets")
	cmd.MarkFlagsMutuallyExclusive("sheets", "output")
	cmd.MarkFlagsMutuallyExclusive("sheets", "format")
	cmd.MarkFlagsMutuallyExclusive("sheets", "odds")
	return cmd
}

func (f seasonFlags) run(a *app, name string) error {
	ways, write := formats.OfSeason, formats.Season
	switch {
	case f.part == "buy":
		ways, write = formats.OfBuyList, formats.BuyList
	case f.part != "":
		return usage("there is no part %q of a season: write buy", f.part)
	case f.week != 0:
		ways, write = formats.OfWeek, formats.Week
	}
	format, system, err := f.choose(ways)
	if err != nil {
		return err
	}
	if f.draws < 0 || f.draws > mostSeasonDraws {
		return usage("--odds is a number of draws, 1 to %d, not %d", mostSeasonDraws, f.draws)
	}
	if f.effort < 0 {
		return usage("--effort is a number of steps, 1 or more, not %d", f.effort)
	}
	q := weeks.Question{Name: name, Units: system, Effort: f.effort, Draws: f.draws, Tried: f.try}
	switch { // what a list, a calendar or a week has no room for takes most of the time
	case format == "json":
	case f.part == "buy":
		q.Quick = true
	case f.week != 0, format == "csv", format == "ics":
		q.Quick, q.NoStore = true, true
	}
	if q.On, err = dayOn(f.on, record.Date{}); err != nil {
		return err
	}
	if q.Printed, err = f.printedPlan(); err != nil {
		return err
	}
	src, err := a.load(f.house, "")
	if err != nil {
		return a.cannot(err, format)
	}
	if len(f.try) > 0 {
		if src, err = weeks.Try(src, name, f.try); err != nil {
			return a.cannot(err, format)
		}
	}
	if a.errTerminal && format != "json" { // a long one takes a minute
		q.Doing = func(s season.Stage) { a.say("%s ...", doing[s]) }
	}
	if f.sheets != "" {
		return f.writeSheets(a, src, q)
	}
	s, said, err := weeks.Of(src, q)
	if err != nil {
		return a.cannot(err, format)
	}
	if s == nil {
		return a.noAnswer(said, format)
	}
	if n := show.WeeksOf(s); f.week < 0 || f.week > n {
		return usage("the season has %s: --week is one of them, not %d", words.Count(n, "week"), f.week)
	}
	o := formats.SeasonOptions{Options: show.Options{Bold: a.bold(f.output), Full: f.full || f.output != ""}, Week: f.week}
	if format == "ics" {
		o.Sequence = revision.Commits(src)
	}
	out, err := write(s, format, o)
	if err != nil {
		return err
	}
	if format != "json" {
		a.show(said)
	}
	inputs := src.Inputs()
	if f.printed != "" {
		inputs = append(inputs, f.printed)
	}
	if err := a.write(f.output, out, inputs); err != nil {
		return err
	}
	return leftOut(s)
}

// doing is what a long season is at.
var doing = map[season.Stage]string{
	season.Placing: "planning the season", season.Relieving: "looking for what would meet the lines that are not met",
	season.Weighing: "trying what each thing more would bring", season.Drawing: "drawing the season anew, for its odds",
}

// leftOut ends with the code of a text with errors where a batch could not be planned.
func leftOut(s *season.Season) error {
	if len(s.LeftOut) > 0 {
		return errSaid
	}
	return nil
}

// mostSeasonDraws is more than anybody waits for.
const mostSeasonDraws = 10_000

// mostPrinted is how large a plan may be that is read: a year of a busy house is a part
// of it.
const mostPrinted = 64 << 20

// printedPlan reads the plan that people work from.
func (f seasonFlags) printedPlan() (*season.Season, error) {
	if f.printed == "" {
		return nil, nil
	}
	info, err := os.Stat(f.printed)
	switch {
	case err != nil:
		return nil, usage("cannot read %s: it is not there, or may not be read", f.printed)
	case !info.Mode().IsRegular():
		return nil, usage("cannot read %s: it is not a plain file", f.printed)
	case info.Size() > mostPrinted:
		return nil, usage("cannot read %s: it is too large for the plan of a season", f.printed)
	}
	text, err := os.ReadFile(f.printed)
	if err != nil {
		return nil, usage("cannot read %s", f.printed)
	}
	var s season.Season
	if err := json.Unmarshal(text, &s); err != nil || s.Format != season.Format {
		return nil, usage("%s is no plan of a season: write one with `newmake season NAME -o %s`", f.printed, f.printed)
	}
	if !strings.HasPrefix(s.Version, "1.") {
		return nil, usage("%s is of version %q, and this newmake reads version 1", f.printed, s.Version)
	}
	return &s, nil
}
