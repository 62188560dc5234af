package main

import (
	"slices"

	"github.com/spf13/cobra"

	"newmake/compile"
	"newmake/compile/notice"
	"newmake/compile/plan"
	"newmake/compile/show/csv"
	"newmake/lang/diag"
	"newmake/lang/recipe"
	"newmake/lang/words"
)

// planFlags are what a person asks of a plan.
type planFlags struct {
	format, output, units, batch, stdin, table string
	try                                        []string
	schema, watch, open, variants              bool
}

func (a *app) planCommand() *cobra.Command {
	var f planFlags
	cmd := &cobra.Command{
		Use:   "plan [FILE | FOLDER | BATCH | -]",
		Short: "Compute a batch: predictions and the timed run sheet",
		Long: "plan checks a batch, computes it from grain to cask, and prints what to expect and\n" +
			"the run sheet to work from. A file that holds several batches gives its first;\n" +
			"--batch names another. Nothing is planned from a text with errors; an error\n" +
			"of meaning in another batch of the file is said, and does not stop it. A promise that is\n" +
			"not kept is shown in the plan, which then ends with 1.\n\n" +
			"--try changes a value for this run, and leaves the file as it is; it may be given again.\n" +
			"A value is named by its block and line, a step of the mash by what it does and which of\n" +
			"them it is. Grains that are not spoken of give way in proportion, which is said.\n\n" +
			"html is a run sheet to print and write on; csv is a table for a spreadsheet, --table\n" +
			"says which; ics is the steps for a calendar; md is for a pull request.",
		Example: "  newmake plan ferry-landing.batch\n" +
			"  newmake plan ferry-landing.batch --batch \"Ferry Landing, more rye\" --units si\n" +
			"  newmake plan ferry-landing.batch --variants\n" +
			"  newmake plan ferry-landing.batch --try 'bill.rye=14 %' --try 'mash.rest.2=30 min'\n" +
			"  newmake plan ferry-landing.batch -o ferry-landing.html\n" +
			"  newmake plan ferry-landing.batch --open\n" +
			"  newmake plan ferry-landing.batch -o spirit.csv --table spirit\n" +
			"  newmake plan ferry-landing.batch --format json -o ferry-landing.json",
		Args:              cobra.MaximumNArgs(1),
		ValidArgsFunction: a.completeBatches,
		RunE: func(_ *cobra.Command, args []string) error {
			arg := ""
			if len(args) > 0 {
				arg = args[0]
			}
			switch {
			case len(f.try) > 0 && (f.watch || f.open || f.variants):
				return usage("--try goes with a plan that is made once, not with --watch, --open or --variants")
			case f.schema:
				return a.write(f.output, plan.Schema, nil)
			case f.variants:
				return a.variants(arg, f)
			case f.watch || f.open:
				return a.watchPlan(arg, f)
			}
			return a.plan(arg, f)
		},
	}
	cmd.Flags().StringVar(&f.batch, "batch", "", "the batch to plan, by name")
	cmd.Flags().BoolVar(&f.variants, "variants", false, "the batch and its variants side by side")
	cmd.Flags().StringArrayVar(&f.try, "try", nil, "change a value for this run: 'bill.rye=14 %'")
	cmd.Flags().StringVar(&f.format, "format", "", "text, html, json, csv, ics or md (default: text, or by the ending of -o)")
	cmd.Flags().StringVarP(&f.output, "output", "o", "", "write to this file")
	cmd.Flags().StringVar(&f.units, "units", "", "us or si (default: the batch's own)")
	cmd.Flags().StringVar(&f.table, "table", "steps", "of csv: "+words.Or(csv.Tables))
	cmd.Flags().BoolVar(&f.schema, "schema", false, "print the JSON schema of a plan")
	cmd.Flags().BoolVar(&f.watch, "watch", false, "write again whenever the recipe is saved")
	cmd.Flags().BoolVar(&f.open, "open", false, "serve the sheet to the browser of this machine, anew whenever the recipe is saved")
	cmd.Flags().StringVar(&f.stdin, "stdin-filename", "", "the file that standard input stands for")
	completeFlag(cmd, "batch", a.batchNames)
	completeFlag(cmd, "units", oneOf("us", "si"))
	completeFlag(cmd, "table", oneOf(csv.Tables...))
	return cmd
}

func (a *app) plan(arg string, f planFlags) error {
	format, err := formatFor(planFormats, f.format, f.output)
	if err != nil {
		return err
	}
	speak := format
	if !toTerminal(f.output) {
		speak = "text" // the file is not written, so a person reads what is wrong
	}
	src, name, err := a.open(arg, f.batch, f.stdin)
	if list, ok := err.(diag.List); ok {
		return a.refuse(list, speak)
	}
	if err != nil {
		return err
	}
	src, name, tried, err := a.try(src, name, f.try)
	if list, ok := err.(diag.List); ok {
		return a.refuse(list, speak)
	}
	if err != nil {
		return err
	}
	p, list, err := a.compute(src, name, f.units)
	if err != nil {
		return err
	}
	if p == nil || broken(list) {
		return a.refuse(list, speak)
	}
	p.Source = revisionOf(src, p.Batch.Name)
	tried.mark(p)
	if err := a.writePlan(p, list, format, f, src); err != nil {
		return err
	}
	return a.unkept(list, f)
}

// unkept ends a plan with 1, as check does, if the batch keeps a promise no
// more: the plan is made and shows it, and is not what was asked for.
func (a *app) unkept(list diag.List, f planFlags) error {
	if !list.HasErrors() {
		return nil
	}
	if toTerminal(f.output) { // otherwise all of it has been said
		a.show(slices.DeleteFunc(slices.Clone(list), func(d diag.Diagnostic) bool { return d.Severity != diag.Error }))
	}
	return errSaid
}

// compute checks and compiles one batch. The plan is nil if it has errors.
func (a *app) compute(src *source, name, units string) (*plan.Plan, diag.List, error) {
	name, err := a.choose(src, name)
	if err != nil {
		return nil, nil, err
	}
	if name == "" {
		list := src.house.CheckIn(src.path)
		if !list.HasErrors() {
			list.Add(noBatch(src))
		}
		return nil, list, nil
	}
	b, list := src.house.Batch(name)
	unread, others := restOfFile(src, name, list)
	list = src.house.Ordered(append(list, unread...))
	if b == nil || len(unread) > 0 {
		return nil, list, nil
	}
	if others != "" {
		a.say("%s", others)
	}
	switch units {
	case "":
	case "us":
		b = inUnits(b, recipe.US)
	case "si":
		b = inUnits(b, recipe.SI)
	default:
		return nil, nil, usage("--units is us or si, not %q", units)
	}
	p, computed := compile.Compile(b)
	list = notice.Together(list, computed)
	if p != nil {
		p.Notices = notice.InPlan(list)
	}
	return p, list, nil
}

// inUnits is a batch that is spoken of in a system of units.
func inUnits(b *recipe.Batch, s recipe.System) *recipe.Batch {
	c := *b
	c.Units = s
	return &c
}

// broken says if a list has errors that a plan cannot be shown with. A promise
// that is not kept is shown in the plan itself.
func broken(list diag.List) bool {
	for _, d := range list {
		if d.Severity == diag.Error && d.Code != diag.CodePromiseBroken {
			return true
		}
	}
	return false
}

func (a *app) writePlan(p *plan.Plan, list diag.List, format string, f planFlags, src *source) error {
	out, err := a.renderPlan(p, format, f)
	if err != nil {
		return err
	}
	if !toTerminal(f.output) {
		a.show(list) // the sheet goes elsewhere: say here what it says there
	}
	return a.write(f.output, out, src.inputs())
}

func toTerminal(output string) bool { return output == "" || output == "-" }
