package main

import (
	"bytes"
	"fmt"
	"io"
	"path/filepath"
	"slices"
	"strings"

	"github.com/spf13/cobra"

	"newmake/compile/ask/compare"
	"newmake/compile/measure"
	"newmake/compile/show/diff"
	"newmake/lang/diag"
	"newmake/lang/recipe"
)

const diffShort = `newmake diff says what changed in a batch, and what it does to the barrel.

  newmake diff HEAD~1 -- ferry-landing.batch     since the commit before
  newmake diff "Ferry Landing" "Toll Road"       two batches of a house

newmake help diff has more of them.
`

// diffFlags are what a person asks of a comparison.
type diffFlags struct {
	format, output, units, batch, why string
	exitCode, each                    bool
}

func (a *app) diffCommand() *cobra.Command {
	var f diffFlags
	cmd := &cobra.Command{
		Use:   "diff OLD NEW | REV [-- FILE] | A..B [-- FILE] | VARIANT | FILE",
		Short: "What changed, and what it does to the barrel",
		Long: "diff compares two batches by meaning, not by their text: layout, comments and the order of\n" +
			"lines that have none do not count. Then it computes both, and says what each edit does.\n\n" +
			"Each side is a file, a batch by name, or REV:path. A batch by name is looked for in the house\n" +
			"of the other side, if that is a file, and then in this one. One revision is compared with the files\n" +
			"as they are; A..B compares two; a path after -- is the only one looked at. The house is read\n" +
			"as it stood at the revision, its plant and stock too. A variant alone is compared with its\n" +
			"parent, and a file alone with HEAD. --each walks the revisions of A..B one by one.\n\n" +
			"Why: an edit's part of a change is its Shapley value, which is what the edit adds on the mean\n" +
			"over all orders of making the edits. The parts add up to the whole. Interaction is the whole\n" +
			"less what each edit does alone; it is in the parts already. Up to 8 edits are taken exactly.\n" +
			"Of more, some orders are drawn, and the standard error is shown; more than 16 are taken part\n" +
			"by part. --why all takes every outcome apart, --why none leaves it out.\n\n" +
			"diff ends with 0 whether there is a difference or not; with --exit-code it is 1 if there is.",
		Example: "  newmake diff HEAD~1 -- ferry-landing.batch\n" +
			"  newmake diff main..trial\n" +
			"  newmake diff HEAD~1:ferry-landing.batch ferry-landing.batch --format md\n" +
			"  newmake diff \"Ferry Landing, more rye\"\n" +
			"  newmake diff \"Ferry Landing\" \"Toll Road\" --why none\n" +
			"  newmake diff ferry-landing.batch -o what-changed.html\n" +
			"  newmake diff --each HEAD~2..HEAD --exit-code",
		RunE: func(cmd *cobra.Command, args []string) error {
			files := []string(nil)
			if at := cmd.ArgsLenAtDash(); at >= 0 {
				args, files = args[:at], args[at:]
			}
			if len(args)+len(files) == 0 {
				fmt.Fprint(a.out, diffShort)
				return nil
			}
			return a.diff(args, files, f)
		},
	}
	cmd.Flags().StringVar(&f.format, "format", "", "text, md, json or html (default: text, or by the ending of -o)")
	completeFlag(cmd, "format", oneOf("text", "md", "json", "html"))
	cmd.Flags().StringVarP(&f.output, "output", "o", "", "write to this file")
	cmd.Flags().StringVar(&f.units, "units", "", "us or si (default: those of the new batch)")
	cmd.Flags().StringVar(&f.batch, "batch", "", "the batch to compare, by name, of those there are")
	cmd.Flags().StringVar(&f.why, "why", "main", "which outcomes to take apart: main, all or none")
	cmd.Flags().BoolVar(&f.each, "each", false, "every revision of A..B that touches the house, one by one")
	cmd.Flags().BoolVar(&f.exitCode, "exit-code", false, "end with 1 if there is a difference")
	return cmd
}

// writers are the formats of a comparison, with the endings that choose them.
var writers = []struct {
	name, ending string
	write        func(io.Writer, *compare.Document, diff.Options) error
}{
	{"text", ".txt", diff.Text},
	{"md", ".md", diff.Markdown},
	{"json", ".json", func(w io.Writer, d *compare.Document, _ diff.Options) error { return diff.JSON(w, d) }},
	{"html", ".html", diff.HTML},
}

func (f diffFlags) check() (string, error) {
	switch f.units {
	case "", "us", "si":
	default:
		return "", usage("--units is us or si, not %q", f.units)
	}
	switch f.why {
	case "main", "all", "none":
	default:
		return "", usage("--why is main, all or none, not %q", f.why)
	}
	end := strings.ToLower(filepath.Ext(f.output))
	for _, w := range writers {
		if f.format == w.name || f.format == "" && (end == w.ending || toTerminal(f.output) && w.name == "text") {
			return w.name, nil
		}
	}
	if f.format == "" {
		return "", usage("the ending of %s does not say what to write: end it in .txt, .md, .json or .html, or give --format", f.output)
	}
	return "", usage("there is no format %q: write text, md, json or html", f.format)
}

func (a *app) diff(args, files []string, f diffFlags) error {
	format, err := f.check()
	if err != nil {
		return err
	}
	if f.each {
		return a.walk(args, files, f, format)
	}
	old, new, err := a.sides(args, files)
	if err != nil {
		return a.noSide(err)
	}
	doc, said, err := a.compareSides(old, new, f)
	if err != nil {
		return err
	}
	a.show(said)
	if err := a.writeDiff(doc, f, format, append(old.inputs(), new.inputs()...)); err != nil {
		return err
	}
	return f.code(doc)
}

// noSide ends a diff one side of which cannot be read.
func (a *app) noSide(err error) error {
	if list, ok := err.(diag.List); ok {
		a.show(list)
		return errSaid
	}
	return err
}

// code is the exit code: 1 if something could not be compared, or if it differs
// and that was asked for.
func (f diffFlags) code(doc *compare.Document) error {
	if len(doc.Broken) > 0 || f.exitCode && doc.Differs() {
		return errSaid
	}
	return nil
}

func (a *app) writeDiff(doc *compare.Document, f diffFlags, format string, inputs []string) error {
	o := diff.Options{Bold: a.colour(a.outTerminal) && toTerminal(f.output), AllWhy: f.why == "all"}
	var out bytes.Buffer
	for _, w := range writers {
		if w.name == format {
			if err := w.write(&out, doc, o); err != nil {
				return err
			}
		}
	}
	return a.write(f.output, out.Bytes(), inputs)
}

// compareSides compares every batch that both sides have. What is said of those
// with errors comes too.
func (a *app) compareSides(old, new *selection, f diffFlags) (*compare.Document, diag.List, error) {
	doc := compare.NewDocument()
	pairs, removed, added := match(old, new)
	if f.batch != "" {
		keep := func(n string) bool {
			return n != "" && (strings.EqualFold(n, f.batch) || fileName(n) == fileName(f.batch))
		}
		pairs = slices.DeleteFunc(pairs, func(p [2]string) bool { return !keep(p[0]) && !keep(p[1]) })
		removed = slices.DeleteFunc(removed, func(n string) bool { return !keep(n) })
		added = slices.DeleteFunc(added, func(n string) bool { return !keep(n) })
		if len(pairs)+len(removed)+len(added) == 0 {
			return nil, nil, usage("neither side has a batch called %q", f.batch)
		}
	}
	var said diag.List
	for _, p := range pairs {
		x, listX := old.batch(p[0])
		y, listY := new.batch(p[1])
		if x == nil || y == nil {
			for _, side := range []struct {
				s    *selection
				b    *recipe.Batch
				name string
				list diag.List
			}{{old, x, p[0], listX}, {new, y, p[1], listY}} {
				if side.b == nil {
					doc.Broken = append(doc.Broken, compare.Broken{Label: side.s.label, Batch: side.name, Why: firstError(side.list)})
					said = append(said, side.list...)
				}
			}
			continue
		}
		c := compare.Batches(compare.SideOf(old.labelOf(p[0]), x, listX), compare.SideOf(new.labelOf(p[1]), y, listY), compare.Options{Units: f.unitsFor(y), NoWhy: f.why == "none"})
		doc.Pairs = append(doc.Pairs, c)
	}
	doc.Removed, doc.Added = removed, added
	return doc, said.Dedup(), nil
}

func (f diffFlags) unitsFor(b *recipe.Batch) measure.Units {
	if f.units == "si" || f.units == "" && b.Units == recipe.SI {
		return measure.SI
	}
	return measure.US
}

func firstError(list diag.List) string {
	for _, d := range list {
		if d.Severity == diag.Error {
			return d.Summary
		}
	}
	return "it has errors"
}
