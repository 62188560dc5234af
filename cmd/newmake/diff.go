package main

import (
	"fmt"
	"path/filepath"

	"github.com/spf13/cobra"

	"newmake/compile/ask/compare"
	"newmake/compile/ask/sides"
	"newmake/compile/front"
	"newmake/compile/show/diff"
	"newmake/compile/show/formats"
	"newmake/lang/diag"
	"newmake/lang/gitrepo"
)

const diffShort = `newmake diff says what changed in a batch, and what it does to the barrel.

  newmake diff HEAD~1 -- ferry-landing.batch     since the commit before
  newmake diff "Ferry Landing" "Toll Road"       two batches of a house

newmake help diff has more of them.
`

// diffFlags are what a person asks of a comparison.
type diffFlags struct {
	answerFlags
	batch, why     string
	exitCode, each bool
}

func diffCommand(a *app) *cobra.Command {
	var f diffFlags
	cmd := &cobra.Command{
		Use:   "diff OLD NEW | REV [-- FILE] | A..B [-- FILE] | A...B [-- FILE] | VARIANT | FILE",
		Short: "What changed, and what it does to the barrel",
		Long: "diff compares two batches by meaning, not by their text: layout, comments and the order of\n" +
			"lines that have none do not count. Then it computes both, and says what each edit does.\n\n" +
			"Each side is a file, a batch by name, or REV:path. A batch by name is looked for in the house\n" +
			"of the other side, if that is a file, and then in this one. One revision is compared with the files\n" +
			"as they are; A..B compares two; A...B is what B changed since it left A, as a pull request\n" +
			"shows it; a path after -- is the only one looked at. The house is read as it stood at the\n" +
			"revision, its plant and library too; at the top of a repository that holds several, each is.\n" +
			"A variant alone is compared with its parent, and a file alone with HEAD. --each walks the\n" +
			"revisions of A..B one by one.\n\n" +
			"Why: an edit's part of a change is its Shapley value, which is what the edit adds on the mean\n" +
			"over all orders of making the edits. The parts add up to the whole. Interaction is the whole\n" +
			"less what each edit does alone; it is in the parts already. Up to 8 edits are taken exactly.\n" +
			"Of more, some orders are drawn, and the standard error is shown; more than 16 are taken part\n" +
			"by part. --why all takes every outcome apart, --why none leaves it out.\n\n" +
			"diff ends with 0 whether there is a difference or not; with --exit-code it is 1 if there is.",
		Example: "  newmake diff HEAD~1 -- ferry-landing.batch\n" +
			"  newmake diff main..trial\n" +
			"  newmake diff main...trial --format md\n" +
			"  newmake diff HEAD~1:ferry-landing.batch ferry-landing.batch --format md\n" +
			"  newmake diff \"Ferry Landing, more rye\"\n" +
			"  newmake diff \"Ferry Landing\" \"Toll Road\" --why none\n" +
			"  newmake diff ferry-landing.batch -o what-changed.html\n" +
			"  newmake diff --each HEAD~2..HEAD --exit-code",
		ValidArgsFunction: completeSides,
		RunE: func(cmd *cobra.Command, args []string) error {
			files := []string(nil)
			if at := cmd.ArgsLenAtDash(); at >= 0 {
				args, files = args[:at], args[at:]
			}
			if len(args)+len(files) == 0 {
				fmt.Fprint(a.out, diffShort)
				return nil
			}
			return f.run(a, args, files)
		},
	}
	f.declare(cmd, formats.OfComparison, "those of the new batch")
	cmd.Flags().StringVar(&f.batch, "batch", "", "the batch to compare, by name, of those there are")
	cmd.Flags().StringVar(&f.why, "why", "main", "which outcomes to take apart: main, all or none")
	cmd.Flags().BoolVar(&f.each, "each", false, "every revision of A..B that touches the house, one by one")
	cmd.Flags().BoolVar(&f.exitCode, "exit-code", false, "end with 1 if there is a difference")
	completeFlag(cmd, "why", oneOf("main", "all", "none"))
	completeFlag(cmd, "batch", func([]string) []cobra.Completion { return batchNames(nil) })
	return cmd
}

// check reads the flags that are words.
func (f diffFlags) check() (format string, o sides.Options, err error) {
	o = sides.Options{Batch: f.batch, NoWhy: f.why == "none"}
	if format, o.Units, err = f.choose(formats.OfComparison); err != nil {
		return "", o, err
	}
	switch f.why {
	case "main", "all", "none":
		return format, o, nil
	}
	return "", o, usage("--why is main, all or none, not %q", f.why)
}

// run compares two sides.
func (f diffFlags) run(a *app, args, files []string) error {
	format, o, err := f.check()
	if err != nil {
		return err
	}
	if f.each {
		return f.walk(a, args, files, format, o)
	}
	finder := &sides.Finder{Standard: func() (front.Place, error) { return a.place(standardInput, "") }}
	pairs, err := finder.All(args, files)
	if list, ok := err.(diag.List); ok {
		return a.noAnswer(list, "text")
	}
	if err != nil {
		return err
	}
	doc, said, err := sides.CompareAll(pairs, o)
	if err != nil {
		return err
	}
	a.show(said)
	out, err := formats.Comparison(doc, format, diff.Options{Bold: a.bold(f.output), AllWhy: f.why == "all"})
	if err != nil {
		return err
	}
	var inputs []string
	for _, p := range pairs {
		inputs = append(inputs, append(p.Old.Inputs(), p.New.Inputs()...)...)
	}
	if err := a.write(f.output, out, inputs); err != nil {
		return err
	}
	if len(doc.Broken) > 0 || f.exitCode && doc.Differs() {
		return errSaid
	}
	return nil
}

// walk compares each revision of a range with the one before. Each is written
// before the next is read.
func (f diffFlags) walk(a *app, args, files []string, format string, o sides.Options) error {
	if len(args) != 1 || len(files) > 1 {
		return usage("--each wants a range of revisions, such as HEAD~10..HEAD, and at most one path after --")
	}
	if format == "html" || !formats.Standard(f.output) {
		return usage("--each writes text, md or json to standard output")
	}
	w, err := sides.NewWalk(args[0], files)
	if err != nil {
		return err
	}
	defer w.Close()
	if f.why == "main" {
		o.NoWhy = true
	}
	out := diff.History(a.out, format)
	n, err := w.Each(o, func(r gitrepo.Revision, doc *compare.Document) error {
		return out.Step(diff.Revision{Commit: r.Commit, Short: r.Short, Date: r.Date, Subject: r.Subject}, doc)
	})
	if err != nil {
		return err
	}
	if err := out.End(); err != nil {
		return err
	}
	if n == 0 && format != "json" {
		a.say("no revision of that range touches %s", filepath.FromSlash(w.Below))
	}
	if f.exitCode && out.Differs {
		return errSaid
	}
	return nil
}
