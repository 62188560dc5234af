package main

import (
	"slices"

	"github.com/spf13/cobra"

	"newmake/compile/ask/bands"
	"newmake/compile/ask/odds"
	"newmake/compile/front"
	"newmake/compile/front/revision"
	"newmake/compile/plan"
	"newmake/compile/show/csv"
	"newmake/compile/show/formats"
	"newmake/compile/show/text"
	"newmake/lang/diag"
	"newmake/lang/words"
)

// planFlags are what a person asks of a plan.
type planFlags struct {
	answerFlags
	batch, stdin, table, on              string
	lan                                  string
	try                                  []string
	schema, watch, open, variants, short bool
	screenFlags
}

func planCommand(a *app) *cobra.Command {
	var f planFlags
	cmd := &cobra.Command{
		Use:               "plan [FILE | FOLDER | BATCH | -]...",
		Short:             "Compute a batch: predictions and the timed run sheet",
		Long:              planLong,
		Example:           planExample,
		ValidArgsFunction: completeBatches,
		RunE: func(_ *cobra.Command, args []string) error {
			if all := several(args); all != nil && !f.schema {
				return f.runSeveral(a, all)
			}
			arg, err := oneBatch("plan", args)
			if err != nil {
				return err
			}
			if err := f.clash(); err != nil {
				return err
			}
			switch {
			case f.schema:
				return a.write(f.output, plan.Schema, nil)
			case f.variants:
				return f.runVariants(a, arg)
			case f.watch || f.open:
				return watchPlan(a, arg, f)
			}
			return f.run(a, arg)
		},
	}
	f.add(cmd)
	return cmd
}

// clash is what was asked for of one plan and does not go together.
func (f planFlags) clash() error {
	switch {
	case len(f.try) > 0 && (f.watch || f.open || f.variants):
		return usage("--try goes with a plan that is made once, not with --watch, --open or --variants")
	case f.lan != "" && !f.open:
		return usage("--lan says where --open serves: write both")
	case f.on != "" && f.variants:
		return usage("--on goes with one plan, not with --variants")
	case f.part != "" && !slices.Contains(text.Parts, f.part):
		return usage("--part is %s, not %q", words.Or(text.Parts), f.part)
	case (f.day != "" || f.part != "") && f.variants, f.asked() != "" && (f.watch || f.open):
		return usage("%s goes with one plan that is made once, not with --watch, --open or --variants", f.asked())
	case !f.full && f.asked() != "" && !f.plain(f.format, f.output):
		return usage("%s is of the text, which goes to standard output", f.asked())
	case f.short && (f.variants || f.open):
		return usage("--short is the sheet of one batch on two pages, and goes with neither --variants nor --open")
	case f.short && !f.paper():
		return usage("--short is a sheet to print on two pages: write it to a file, as in --short -o sheet.html")
	}
	return nil
}

func (f *planFlags) add(cmd *cobra.Command) {
	cmd.Flags().StringVar(&f.batch, "batch", "", "the batch to plan, by name")
	f.screenFlags.add(cmd)
	cmd.Flags().StringVar(&f.on, "on", "", "plan for this day: 2026-03-03, or \"2026-03-03 06:30\"")
	cmd.Flags().BoolVar(&f.variants, "variants", false, "the batch and its variants side by side")
	cmd.Flags().StringArrayVar(&f.try, "try", nil, "change a value for this run: 'bill.rye=14 %'")
	f.declare(cmd, formats.OfPlan, "the batch's own")
	cmd.Flags().StringVar(&f.table, "table", "steps", "of csv: "+words.Or(csv.Tables))
	cmd.Flags().BoolVar(&f.schema, "schema", false, "print the JSON schema of a plan")
	cmd.Flags().BoolVar(&f.watch, "watch", false, "write again whenever the recipe is saved")
	cmd.Flags().BoolVar(&f.open, "open", false, "serve the batch to the browser of this machine: steps, readings, what changed")
	cmd.Flags().BoolVar(&f.short, "short", false, "of html: two pages with the whole batch, not one for each day")
	cmd.Flags().StringVar(&f.lan, "lan", "", "of --open: serve on this private address instead, to who has the code")
	cmd.Flags().StringVar(&f.stdin, "stdin-filename", "", "the file that standard input stands for")
	completeFlag(cmd, "batch", batchNames)
	completeFlag(cmd, "try", tryNames)
	completeFlag(cmd, "table", oneOf(csv.Tables...))
}

var planLong = "plan checks a batch, computes it from grain to cask, and prints what to expect and\n" +
	"the run sheet to work from. A file that holds several batches gives its first;\n" +
	"--batch names another. Nothing is planned from a text with errors; an error\n" +
	"of meaning in another batch of the file is said, and does not stop it. A promise that is\n" +
	"not kept is shown in the plan, which then ends with 1.\n\n" +
	"--try changes a value for this run, and leaves the file as it is; it may be given again.\n" +
	"A value is named by its block and line, a step of the mash by what it does and which of\n" +
	"them it is. Grains that are not spoken of give way in proportion, which is said.\n\n" +
	"On a terminal it shows one screen: what is wrong, the chain from grain to cask, and a line\n" +
	"for each day. --full shows all, --day tue the work of a day, --part spirit one part: " + words.Or(text.Parts) + ".\n" +
	"A folder with several batches is a line each. What goes into a pipe or a file is always whole.\n" +
	"Several files, a folder with several batches, or one above several houses, are planned one\n" +
	"after another, as text or md; json and the other forms are of one batch.\n\n" +
	"--full also says how sure each number is: beside every reading what it lies between 9 times in\n" +
	"10, and the promises of so many runs tried. html, csv and md have that anyway; it takes\n" +
	"some tenths of a second, so text and json have it only then.\n\n" +
	"--open shows the batch on a page that changes as the recipe is saved: its steps to tick,\n" +
	"a slider for the cut, and room to type readings, which are appended to the run of that\n" +
	"day as record does. It is for the browser of this machine alone; --lan ADDRESS shows it\n" +
	"to a tablet of the house instead, which is let in by a code. That goes over the network\n" +
	"unencrypted.\n\n" +
	"html is a run sheet to print and write on, a page for each day's work; --short is two pages\n" +
	"for the whole batch: what is weighed out, each step with what decides at its end, and the\n" +
	"cautions. csv is a table for a spreadsheet, --table says which; ics is the days for a\n" +
	"calendar; md is for a pull request."

const planExample = "  newmake plan ferry-landing.batch\n" +
	"  newmake plan ferry-landing.batch --full\n" +
	"  newmake plan ferry-landing.batch toll-road.batch\n" +
	"  newmake plan ferry-landing.batch --day tue\n" +
	"  newmake plan ferry-landing.batch --part spirit\n" +
	"  newmake plan ferry-landing.batch --batch \"Ferry Landing, more rye\" --units si\n" +
	"  newmake plan ferry-landing.batch --variants\n" +
	"  newmake plan ferry-landing.batch --try 'bill.rye=14 %' --try 'mash.rest.2=30 min'\n" +
	"  newmake plan ferry-landing.batch --on 2026-03-10\n" +
	"  newmake plan ferry-landing.batch -o ferry-landing.html\n" +
	"  newmake plan ferry-landing.batch --short -o pocket.html\n" +
	"  newmake plan ferry-landing.batch --open\n" +
	"  newmake plan ferry-landing.batch --on 2026-03-10 --open --lan 192.168.1.20\n" +
	"  newmake plan ferry-landing.batch -o spirit.csv --table spirit\n" +
	"  newmake plan ferry-landing.batch --format json -o ferry-landing.json"

// run makes a plan and writes it.
func (f planFlags) run(a *app, arg string) error {
	format, system, err := f.choose(formats.OfPlan)
	if err != nil {
		return err
	}
	speak := format
	if !formats.Standard(f.output) {
		speak = "text" // the file is not written, so a person reads what is wrong
	}
	src, name, err := a.open(arg, f.batch, f.stdin)
	if err != nil {
		return a.cannot(err, speak)
	}
	screen := f.onScreen(a, f.format, f.output)
	if name == "" && isFolder(src) {
		if all := src.House.BatchesIn(src.Path); len(all) > 1 {
			switch {
			case len(f.try) > 0 || f.on != "":
				return usage("%s holds %d batches: say with --batch which is meant: %s", arg, len(all), front.QuoteAll(all))
			case screen:
				return f.showAll(a, src, arg, system)
			}
			return f.runSeveral(a, []string{arg})
		}
	}
	var notes []string
	var tried *front.Tried
	if len(f.try) > 0 {
		if tried, err = src.Try(name, f.try); err != nil {
			return a.cannot(err, speak)
		}
		notes = append(notes, tried.Note)
		src, name = tried.Source, tried.Name
	}
	b, err := src.Batch(name, system)
	if err != nil {
		return err
	}
	notes = append(notes, b.Notes...)
	if err := b.On(f.on); err != nil {
		return err
	}
	stamp := revision.Begin(src, b.Name)
	made := b.Plan()
	source, note := stamp()
	notes = append(notes, note)
	if !made.Sound() {
		if screen {
			return a.refuseOnScreen(made.Diags, arg)
		}
		a.notes(notes...)
		return a.refuse(made.Diags, speak)
	}
	made.Plan.Source = source
	src.PutRecorded(made)
	if tried != nil {
		tried.Mark(made.Plan)
	}
	if screen {
		return f.show(a, made, arg, notes)
	}
	a.notes(notes...)
	if err := f.write(a, made, format, src); err != nil {
		return err
	}
	return f.unkept(a, made.Diags)
}

// unkept ends a plan with 1, as check does, if the batch keeps a promise no
// more: the plan is made and shows it, and is not what was asked for.
func (f planFlags) unkept(a *app, list diag.List) error {
	if !list.HasErrors() {
		return nil
	}
	if formats.Standard(f.output) { // otherwise all of it has been said
		a.show(slices.DeleteFunc(slices.Clone(list), func(d diag.Diagnostic) bool { return d.Severity != diag.Error }))
	}
	return errSaid
}

// runVariants writes a batch and all that vary it side by side.
func (f planFlags) runVariants(a *app, arg string) error {
	format, system, err := f.choose(formats.OfVariants)
	if err != nil {
		return err
	}
	speak := format
	if format == "md" || !formats.Standard(f.output) {
		speak = "text"
	}
	src, name, err := a.open(arg, f.batch, f.stdin)
	if err != nil {
		return a.cannot(err, speak)
	}
	trial, err := src.Variants(name, system)
	if err != nil {
		return err
	}
	a.notes(trial.Note)
	if len(trial.Plans) == 0 {
		return a.refuse(trial.Diags, speak)
	}
	if f.onScreen(a, f.format, f.output) {
		return f.showTrial(a, trial)
	}
	if len(trial.Plans)+len(trial.Left) == 1 {
		a.say("no batch of the house varies %q; a variant begins: batch \"...\" from %q {", trial.Name, trial.Name)
	}
	out, err := formats.Variants(trial.Plans, format, f.options(a))
	if err != nil {
		return err
	}
	if err := a.write(f.output, out, src.Inputs()); err != nil {
		return err
	}
	return a.leftVariants(trial)
}

// leftVariants says which variants are left out, and why.
func (a *app) leftVariants(t *front.Trial) error {
	var names []string
	var why diag.List
	for _, l := range t.Left {
		names = append(names, l.Name)
		for _, d := range l.Diags {
			if d.Severity == diag.Error {
				why.Add(d)
			}
		}
	}
	if len(names) == 0 {
		return nil
	}
	a.show(why)
	a.tell("left out, for %s cannot be planned: %s", map[bool]string{true: "it", false: "they"}[len(names) == 1], front.QuoteAll(names))
	return errSaid
}

// sure writes into a plan how sure it is. What is worked from has the time that a glance
// has not.
func sure(made *front.Plan) {
	odds.Judge(made.Plan, made.Recipe)
	bands.Put(made.Plan, made.Recipe)
}

func (f planFlags) write(a *app, made *front.Plan, format string, src *front.Source) error {
	if format == "csv" {
		if err := formats.Table(f.table); err != nil {
			return err
		}
	}
	if f.full || format == "html" || format == "csv" || format == "md" {
		sure(made)
	}
	o := f.options(a)
	var err error
	if o.Days, err = f.days(made.Plan); err != nil {
		return err
	}
	if n := len(o.Days); n > 1 {
		a.say("%q is %d days of this plan, and all are here: --day %s is one of them", f.day, n, o.Days[0])
	}
	if f.short && !formats.ShortFits(made.Plan) {
		a.say("%q is too long for two pages: its short sheet has four, and the sheet in full has a page for each day's work", made.Plan.Batch.Name)
	}
	out, err := formats.Plan(made.Plan, format, o)
	if err != nil {
		return err
	}
	if !formats.Standard(f.output) {
		a.show(made.Diags) // the sheet goes elsewhere: say here what it says there
	}
	return a.write(f.output, out, src.Inputs())
}

func (f planFlags) options(a *app) formats.Options {
	return formats.Options{Table: f.table, Bold: a.bold(f.output), Part: f.part, Short: f.short}
}

// paper reports whether what is written is the sheet to print.
func (f planFlags) paper() bool {
	format, err := formats.OfPlan.Choose(f.format, f.output)
	return err == nil && format == "html"
}
