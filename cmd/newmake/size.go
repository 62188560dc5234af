package main

import (
	"errors"
	"fmt"

	"github.com/spf13/cobra"

	"newmake/compile"
	solve "newmake/compile/ask/size"
	"newmake/compile/measure"
	"newmake/lang/diag"
	"newmake/lang/recipe"
)

const sizeShort = `newmake size finds the batch that gives what is wanted.

  newmake size ferry-landing.batch --proof-gallons 60
  newmake size ferry-landing.batch --cut hearts --proof 142

newmake help size has more of them.
`

// sizeFlags are what a person asks of a size.
type sizeFlags struct {
	casks, proofGallons, wash, grain string
	cut, proof                       string
	write, name, batch, format       string
}

func (a *app) sizeCommand() *cobra.Command {
	var f sizeFlags
	cmd := &cobra.Command{
		Use:   "size FILE|BATCH (--casks N | --proof-gallons N | --wash VOLUME | --GRAIN WEIGHT | --cut hearts --proof N)",
		Short: "The batch that fills so many casks, or the cut that gives a proof",
		Long: "size asks the plan's question the other way round. It finds how large the batch has to be\n" +
			"to fill so many casks, to give so many proof gallons of hearts or so much wash, or to use\n" +
			"up a weight of one grain; or where the hearts have to end to average a proof.\n\n" +
			"The batch is made larger as a whole: grain, liquor, doses, and the foreshots and cuts that\n" +
			"are measured by volume. Vessels, heat and times stay, so that the whole plan is computed\n" +
			"again for each size that is tried; it is no rule of three. If a vessel is too small, or the\n" +
			"law or the plant stands in the way, size says so, and which size goes.\n\n" +
			"It prints the lines that change. -w writes them as a variant: at the end of the batch's own\n" +
			"file, or with -w=FILE into a new file of the house. Nothing is ever written over.",
		Example: "  newmake size ferry-landing.batch --casks 1\n" +
			"  newmake size ferry-landing.batch --proof-gallons 60\n" +
			"  newmake size ferry-landing.batch --wash 350 gal\n" +
			"  newmake size ferry-landing.batch --corn 500 lb\n" +
			"  newmake size ferry-landing.batch --cut hearts --proof 142\n" +
			"  newmake size ferry-landing.batch --proof-gallons 60 -w --name \"Ferry Landing, small\"\n" +
			"  newmake size ferry-landing.batch --proof-gallons 60 --format json",
		RunE: func(_ *cobra.Command, args []string) error {
			switch len(args) {
			case 0:
				fmt.Fprint(a.out, sizeShort)
				return nil
			case 1:
				return a.size(args[0], f)
			}
			return usage("size takes one batch, not %s", quoteAll(args))
		},
	}
	cmd.Flags().StringVar(&f.casks, "casks", "", "as many casks as this, full")
	cmd.Flags().StringVar(&f.proofGallons, "proof-gallons", "", "this many proof gallons of hearts")
	cmd.Flags().StringVar(&f.wash, "wash", "", "this volume of wash: 480 gal")
	cmd.Flags().StringVar(&f.grain, "grain", "", "this weight of a grain: \"corn 700 lb\"; or --corn 700 lb")
	cmd.Flags().StringVar(&f.cut, "cut", "", "the cut to find: hearts, which is where they end")
	cmd.Flags().StringVar(&f.proof, "proof", "", "with --cut: the proof that the hearts average")
	cmd.Flags().StringVarP(&f.write, "write", "w", "", "write a variant: into the batch's file, or -w=FILE into a new one")
	cmd.Flags().Lookup("write").NoOptDefVal = ownFile
	cmd.Flags().StringVar(&f.name, "name", "", "the variant's name")
	cmd.Flags().StringVar(&f.batch, "batch", "", "the batch to size, by name, of a file with several")
	cmd.Flags().StringVar(&f.format, "format", "", "text or json")
	completeFlag(cmd, "format", oneOf("text", "json"))
	return cmd
}

// ownFile is what -w stands for alone: the file that the batch is in.
const ownFile = "the same file"

func (a *app) size(arg string, f sizeFlags) error {
	if f.format != "" && f.format != "text" && f.format != "json" {
		return usage("there is no format %q: write text or json", f.format)
	}
	src, name, err := a.open(arg, f.batch, "")
	if list, ok := err.(diag.List); ok {
		return a.noAnswer(list, f)
	}
	if err != nil {
		return err
	}
	if name, err = a.choose(src, name); err != nil {
		return err
	}
	b, list := src.house.Batch(name)
	if b == nil {
		return a.noAnswer(list, f)
	}
	s := &sizing{batch: b, house: src.house, memo: &compile.Memo{}, units: measure.US}
	if b.Units == recipe.SI {
		s.units = measure.SI
	}
	if err := s.solve(f); err != nil {
		return a.noSize(s, err, f)
	}
	if err := s.planWritten(src.path); err != nil {
		return a.noAnswer(err, f)
	}
	if err := a.showSize(s, f); err != nil || f.write == "" {
		return err
	}
	return a.writeVariant(s, f)
}

// noAnswer ends a size whose text has errors.
func (a *app) noAnswer(list diag.List, f sizeFlags) error {
	if f.format == "json" {
		if err := a.showJSON(list); err != nil {
			return usage("cannot write: %v", err)
		}
		return errSaid
	}
	a.show(list)
	return errSaid
}

// noSize says that there is no such size, and what stands in the way.
func (a *app) noSize(s *sizing, err error, f sizeFlags) error {
	var none *solve.None
	if !errors.As(err, &none) {
		if list, ok := err.(diag.List); ok {
			return a.noAnswer(list, f)
		}
		return err
	}
	d := diag.Diagnostic{Code: diag.CodeNoSize, Severity: diag.Error, At: s.batch.Where[recipe.PathBatch], Summary: none.Error()}
	if none.Limit != nil {
		d.Code = diag.CodeSizeLimit
		d.Summary = fmt.Sprintf("%s: %s", none.Target, none.Limit.Summary)
		d.Related = append(d.Related, diag.Related{At: none.Limit.At, Text: "this stands in the way first"})
		d.Related = append(d.Related, none.Limit.Related...)
		d.Reason = none.Limit.Reason
		d.Help = none.Limit.Help
		if l := none.Largest; l != nil {
			d.Help = fmt.Sprintf("the largest that goes is %.3f times the batch, which gives %s; or %s", l.Factor, s.gives(l), none.Limit.Help)
		}
	} else if none.Most > 0 {
		d.Help = "what can be had is stated; ask for that, or change the recipe"
	}
	return a.noAnswer(diag.List{d}, f)
}
