package main

import (
	"bytes"
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"

	"github.com/spf13/cobra"

	"newmake/compile/ask/size"
	"newmake/compile/front"
	"newmake/compile/show/formats"
	"newmake/compile/show/sized"
	"newmake/lang"
	"newmake/lang/diag"
	"newmake/lang/edit"
	"newmake/lang/recipe"
	"newmake/lang/wholefile"
)

const sizeShort = `newmake size finds the batch that gives what is wanted.

  newmake size ferry-landing.batch --casks 2
  newmake size ferry-landing.batch --cut hearts --abv 71 % vol

newmake help size has more of them.
`

// sizeFlags are what a person asks of a size.
type sizeFlags struct {
	size.Request
	write, batch, format string
}

func sizeCommand(a *app) *cobra.Command {
	var f sizeFlags
	cmd := &cobra.Command{
		Use:   "size FILE|BATCH (--casks N | --bottles N | --proof-gallons N | --lpa N | --wash VOLUME | --GRAIN WEIGHT | --cut hearts (--proof N | --abv N))",
		Short: "The batch that fills so many casks, or the cut that gives a strength",
		Long: "size asks the plan's question the other way round. It finds how large the batch has to be\n" +
			"to fill so many casks or bottles, to give so much alcohol in the hearts or so much wash, or to\n" +
			"use up a weight of one grain; or where the hearts have to end to average a strength.\n\n" +
			"The batch is made larger as a whole: grain, liquor, doses, and the foreshots and cuts that\n" +
			"are measured by volume. Vessels, heat, times and paces stay, so that the whole plan is\n" +
			"computed again for each size that is tried; it is no rule of three. If a vessel is too small, or the\n" +
			"law or the plant stands in the way, size says so, and which size goes.\n\n" +
			"It prints the lines that change, in amounts that can be measured out: grain by what a platform\n" +
			"scale shows, water by what a sight glass does, small amounts finer. The figures below\n" +
			"them are of those amounts. The largest size that fits the plant is named too. -w writes the\n" +
			"lines as a variant: at the end of the batch's own file, or with -w=FILE into a new file of\n" +
			"the house. Nothing is ever written over.",
		Example: "  newmake size ferry-landing.batch --casks 1\n" +
			"  newmake size low-bridge.batch --bottles 200\n" +
			"  newmake size ferry-landing.batch --proof-gallons 60\n" +
			"  newmake size stone-ferry.batch --lpa 130\n" +
			"  newmake size ferry-landing.batch --wash 350 gal\n" +
			"  newmake size ferry-landing.batch --corn 500 lb\n" +
			"  newmake size ferry-landing.batch --cut hearts --proof 142\n" +
			"  newmake size ferry-landing.batch --cut hearts --abv 71 % vol\n" +
			"  newmake size ferry-landing.batch --casks 1 -w --name \"Ferry Landing, small\"\n" +
			"  newmake size ferry-landing.batch --casks 1 --format json",
		ValidArgsFunction: completeBatches,
		RunE: func(_ *cobra.Command, args []string) error {
			if len(args) == 0 {
				fmt.Fprint(a.out, sizeShort)
				return nil
			}
			arg, err := oneBatch("size", args)
			if err != nil {
				return err
			}
			return f.run(a, arg)
		},
	}
	cmd.Flags().StringVar(&f.Casks, "casks", "", "as many casks as this, full")
	cmd.Flags().StringVar(&f.Bottles, "bottles", "", "at least as many bottles as this: of a batch in wood, from whole casks")
	cmd.Flags().StringVar(&f.ProofGallons, "proof-gallons", "", "this many proof gallons of hearts")
	cmd.Flags().StringVar(&f.LPA, "lpa", "", "this many litres of pure alcohol in the hearts")
	cmd.Flags().StringVar(&f.Wash, "wash", "", "this volume of wash: 480 gal")
	cmd.Flags().StringVar(&f.Grain, "grain", "", "this weight of a grain: \"corn 700 lb\"; or --corn 700 lb")
	cmd.Flags().StringVar(&f.Cut, "cut", "", "the cut to find: hearts, which is where they end")
	cmd.Flags().StringVar(&f.Proof, "proof", "", "with --cut: the proof that the hearts average")
	cmd.Flags().StringVar(&f.Abv, "abv", "", "with --cut: the strength by volume at 20 C: 69 % vol")
	cmd.Flags().StringVarP(&f.write, "write", "w", "", "write a variant: into the batch's file, or -w=FILE into a new one")
	cmd.Flags().Lookup("write").NoOptDefVal = ownFile
	cmd.Flags().StringVar(&f.Name, "name", "", "the variant's name")
	cmd.Flags().StringVar(&f.batch, "batch", "", "the batch to size, by name, of a file with several")
	formatFlag(cmd, &f.format, formats.OfAnswer.Names())
	completeFlag(cmd, "batch", batchNames)
	completeFlag(cmd, "cut", oneOf("hearts"))
	return cmd
}

// ownFile is what -w stands for alone: the file that the batch is in.
const ownFile = "the same file"

// run finds a size, shows it, and writes it if that is asked for.
func (f sizeFlags) run(a *app, arg string) error {
	if f.format != "" && f.format != "text" && f.format != "json" {
		return usage("there is no format %q: write text or json", f.format)
	}
	f.Keep = f.write != ""
	found, err := f.find(a, arg)
	if list, ok := err.(diag.List); ok {
		return a.noAnswer(list, f.format)
	}
	if err != nil {
		return err
	}
	if err := f.show(a, found); err != nil || !f.Keep {
		return err
	}
	if f.write != ownFile {
		return f.newFile(a, found)
	}
	return f.ownFile(a, found)
}

func (f sizeFlags) find(a *app, arg string) (*size.Found, error) {
	src, name, err := a.open(arg, f.batch, "")
	if err != nil {
		return nil, err
	}
	b, err := src.Batch(name, nil)
	if err != nil {
		return nil, err
	}
	a.notes(b.Notes...)
	if b.Recipe == nil {
		return nil, b.Diags
	}
	if f.Keep && f.write != ownFile { // before it takes its time
		if err := keeps(src, f.write); err != nil {
			return nil, err
		}
	}
	return size.Find(src, b.Recipe, f.Request)
}

func (f sizeFlags) show(a *app, found *size.Found) error {
	var out bytes.Buffer
	if f.format == "json" {
		if err := sized.JSON(&out, found); err != nil {
			return err
		}
	} else {
		sized.Text(&out, found)
		a.show(found.Diags)
	}
	return a.write("", out.Bytes(), nil)
}

// ownFile writes the variant at the end of the batch's file.
func (f sizeFlags) ownFile(a *app, found *size.Found) error {
	at := found.Batch.Where[recipe.PathBatch].Src
	out := edit.AtEnd(at.Text, found.Text.Text)
	if len(out) > lang.MaxFileBytes {
		return usage("%s would become too large: give a new file, -w=NAME.batch", at.Name)
	}
	now, err := os.ReadFile(at.Name)
	if err != nil {
		return usage("cannot read %s: %v", at.Name, wholefile.Reason(err))
	}
	if !bytes.Equal(now, at.Text) {
		return usage("%s has changed since it was read: nothing was written", at.Name)
	}
	var done wholefile.Done
	err = uninterrupted(func() (err error) {
		done, err = a.disk.Replace(at.Name, now, out)
		return err
	})
	if err != nil {
		return usage("cannot write %s: %v", at.Name, wholefile.Reason(err))
	}
	a.tellNames(at.Name, done)
	a.say("wrote the variant %q at the end of %s", found.Text.Name, at.Name)
	return nil
}

// keeps says that a variant in a file of this name would be one.
func keeps(src *front.Source, name string) error {
	if filepath.Ext(name) != ending {
		return usage("%s does not end in %s, so no house would read it", name, ending)
	}
	if !src.Holds(name) {
		return usage("%s is not in the house at %s, so its batch would vary nothing", name, src.House.Root)
	}
	return nil
}

// newFile writes the variant into a file of its own. What is there already is
// never written over.
func (f sizeFlags) newFile(a *app, found *size.Found) error {
	name := f.write
	err := uninterrupted(func() error { return a.disk.Create(name, found.Text.Text, 0o644) })
	if errors.Is(err, fs.ErrExist) {
		return usage("there is a file %s already: nothing was written", name)
	}
	if err != nil {
		return usage("cannot write %s: %v", name, wholefile.Reason(err))
	}
	a.say("wrote %s, %s", name, bytesOf(len(found.Text.Text)))
	return nil
}
