package main

import (
	"bytes"

	"github.com/spf13/cobra"

	"newmake/compile/ask/odds"
	"newmake/compile/front"
	"newmake/compile/measure"
	"newmake/compile/show/chances"
	"newmake/compile/show/formats"
	"newmake/lang/diag"
	"newmake/lang/recipe"
)

// oddsFlags are what a person asks of odds.
type oddsFlags struct {
	answerFlags
	batch, beside, stdin string
	draws                int
	try                  []string
}

func oddsCommand(a *app) *cobra.Command {
	var f oddsFlags
	cmd := &cobra.Command{
		Use:   "odds [FILE | BATCH | -]",
		Short: "How sure a plan is: how often a cask fills, and why not",
		Long: "odds computes a batch some hundred times, each time with what is not known for certain\n" +
			"drawn anew: the constants of the house (its yield, its heat and cooling, its reflux, its\n" +
			"yeast) and what scatters from run to run (the lot of grain, the hand at the cut, the\n" +
			"weather). It says how often the casks fill and the promises are kept, how far every number\n" +
			"of the summary spreads, which constants make the spread, and how large the batch has to be\n" +
			"to fill 9 times in 10. The same question has the same answer, to the byte.\n\n" +
			"--beside tries another batch of the house with the same luck, so that the two can be\n" +
			"compared draw by draw. --try changes a value, as it does for plan.\n\n" +
			"A promise of so many runs, `promise casks 1 in 9 of 10`, is judged here: kept, broken, or\n" +
			"too close to say. If one is broken, odds ends with 1.",
		Example: "  newmake odds ferry-landing.batch\n" +
			"  newmake odds ferry-landing.batch --draws 2000\n" +
			"  newmake odds ferry-landing.batch --beside \"Ferry Landing, more rye\"\n" +
			"  newmake odds ferry-landing.batch --try 'ferment.for=115 h'\n" +
			"  newmake odds ferry-landing.batch --format json\n" +
			"  newmake odds ferry-landing.batch -o odds.csv",
		ValidArgsFunction: completeBatches,
		RunE: func(_ *cobra.Command, args []string) error {
			arg, err := oneBatch("odds", args)
			if err != nil {
				return err
			}
			return f.run(a, arg)
		},
	}
	cmd.Flags().StringVar(&f.batch, "batch", "", "the batch, by name, of a file with several")
	cmd.Flags().StringVar(&f.beside, "beside", "", "another batch of the house, by name, tried with the same luck")
	cmd.Flags().IntVar(&f.draws, "draws", odds.UsualDraws, "how often the batch is computed")
	cmd.Flags().StringArrayVar(&f.try, "try", nil, "change a value for this run: 'bill.rye=14 %'")
	f.declare(cmd, formats.OfOdds, "the batch's own")
	cmd.Flags().StringVar(&f.stdin, "stdin-filename", "", "the file that standard input stands for")
	completeFlag(cmd, "batch", batchNames)
	completeFlag(cmd, "beside", batchNames)
	return cmd
}

func (f oddsFlags) run(a *app, arg string) error {
	format, system, err := f.choose(formats.OfOdds)
	if err != nil {
		return err
	}
	if f.draws < odds.LeastDraws || f.draws > odds.MostDraws {
		return usage("--draws is %d to %d, not %d", odds.LeastDraws, odds.MostDraws, f.draws)
	}
	src, name, err := a.open(arg, f.batch, f.stdin)
	if err != nil {
		return a.cannot(err, format)
	}
	if len(f.try) > 0 {
		tried, err := src.Try(name, f.try)
		if err != nil {
			return a.cannot(err, format)
		}
		a.notes(tried.Note)
		src, name = tried.Source, tried.Name
	}
	// Both batches are looked at before either is drawn, which takes seconds.
	b, err := f.sound(a, src, name, system, format)
	if err != nil {
		return err
	}
	var beside *recipe.Batch
	if f.beside != "" {
		if beside, err = f.sound(a, src, f.beside, system, format); err != nil {
			return err
		}
	}
	u := measure.UnitsOf(b.Units)
	t, err := f.tried(b)
	if err != nil {
		return err
	}
	answer := t.Answer(u)
	answer.Change = t.Change(u)
	if beside != nil {
		other, err := f.tried(beside)
		if err != nil {
			return err
		}
		answer.Beside = t.Beside(other)
	}
	var out bytes.Buffer
	o := chances.Options{Units: u, Bold: a.bold(f.output), Arg: quoted(arg)}
	switch format {
	case "json":
		err = chances.JSON(&out, answer)
	case "csv":
		err = chances.CSV(&out, answer)
	case "md":
		err = chances.Markdown(&out, answer, o)
	default:
		err = chances.Text(&out, answer, o)
	}
	if err != nil {
		return err
	}
	if err := a.write(f.output, out.Bytes(), src.Inputs()); err != nil {
		return err
	}
	if answer.Broken() {
		return errSaid
	}
	return nil
}

// sound is a batch that can be tried. One with errors, or of which no plan comes, is
// refused with what a plan says of it.
func (f oddsFlags) sound(a *app, src *front.Source, name string, system *recipe.System, format string) (*recipe.Batch, error) {
	b, err := src.Batch(name, system)
	if err != nil {
		return nil, err
	}
	a.notes(b.Notes...)
	if b.Recipe == nil {
		return nil, a.refuse(b.Diags, format)
	}
	made := b.Plan()
	if !made.Sound() {
		return nil, a.refuse(made.Diags, format)
	}
	return b.Recipe, nil
}

// tried is a batch tried.
func (f oddsFlags) tried(b *recipe.Batch) (*odds.Trial, error) {
	t, err := odds.Try(b, f.draws, measure.UnitsOf(b.Units))
	if err != nil {
		return nil, diag.Refuse("%s cannot be computed: %v", b.Name, err)
	}
	return t, nil
}
