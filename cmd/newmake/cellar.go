package main

import (
	"time"

	"github.com/spf13/cobra"

	"newmake/compile/book/cellar"
	"newmake/compile/show/formats"
	"newmake/compile/show/racked"
	"newmake/lang/record"
)

// cellarFlags are what a person asks of the casks.
type cellarFlags struct {
	booksFlags
	on, units string
	full      bool
}

func cellarCommand(a *app) *cobra.Command {
	var f cellarFlags
	cmd := &cobra.Command{
		Use:   "cellar",
		Short: "What lies in the casks, by their readings and by the forecast",
		Long: "cellar follows every cask of the house from its fill: what it holds on a day and when its\n" +
			"rest is over, by its weights, dips and samples and by the forecast of its climate, with the\n" +
			"range that holds 9 times in 10. It says which casks are to be sampled, whose rest is over,\n" +
			"and which lose more than their like. How fast the house evaporates is found from all casks\n" +
			"that were weighed; a cask of which little is known goes by the house. Of many casks of a\n" +
			"batch and year some are sampled for all: so many that the mean alcohol of a cask is known\n" +
			"to 1 %, never fewer than three, from each place and tier by its share, and others than the\n" +
			"last time (SAMPLING). Casks come in the order in which the runs name them. As html it is a page\n" +
			"to print, with a picture of the wood; as ics it is the days\n" +
			"on which casks are to be sampled, and on which their rest is over.",
		Example: "  newmake cellar\n" +
			"  newmake cellar --on 2027-03-31 --full\n" +
			"  newmake cellar --house examples/lantern-hollow --on 2028-06-30\n" +
			"  newmake cellar --format csv -o casks.csv\n" +
			"  newmake cellar -o casks.html\n" +
			"  newmake cellar -o casks.ics",
		Args: cobra.NoArgs,
		RunE: func(*cobra.Command, []string) error { return f.run(a) },
	}
	cmd.Flags().StringVar(&f.on, "on", "", "the day, as 2027-03-31 (default: today)")
	cmd.Flags().StringVar(&f.units, "units", "", "us or si (default: that of most batches)")
	f.declare(cmd, formats.OfCellar)
	cmd.Flags().BoolVar(&f.full, "full", false, "each cask with all that is known of it")
	completeFlag(cmd, "units", oneOf("us", "si"))
	return cmd
}

func (f cellarFlags) run(a *app) error {
	format, err := formats.OfCellar.Choose(f.format, f.output)
	if err != nil {
		return err
	}
	system, err := units(f.units)
	if err != nil {
		return err
	}
	day, err := dayOn(f.on, record.DateOf(time.Now()))
	if err != nil {
		return err
	}
	b, err := f.read(a, format)
	if err != nil {
		return err
	}
	h := cellar.HouseOf(b.House, b.texts, system)
	out, err := formats.Cellar(cellar.On(h, day), format, racked.Options{Bold: a.bold(f.output), Full: f.full || f.output != ""})
	if err != nil {
		return err
	}
	return f.answer(a, b, format, out)
}
