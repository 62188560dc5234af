package main

import (
	"github.com/spf13/cobra"

	"newmake/compile/ask/compare"
	"newmake/compile/book/taste"
	"newmake/compile/front"
	"newmake/compile/measure"
	"newmake/compile/plan"
	"newmake/compile/show/formats"
	"newmake/compile/show/tasted"
	"newmake/lang/recipe"
	"newmake/lang/record"
)

// tastingsFlags are what a person looks for.
type tastingsFlags struct {
	answerFlags
	of, by, batch, house string
}

func tastingsCommand(a *app) *cobra.Command {
	var f tastingsFlags
	cmd := &cobra.Command{
		Use:   "tastings [WORD...]",
		Short: "What was tasted, by word, batch, cask or person, and what differed",
		Long: "tastings finds what people wrote of casks, hearts and new make: looks in whose words each\n" +
			"WORD stands, of one cask or run, one batch, one person. They come in the order of their\n" +
			"days, each cask or run once more as a table over the years, with the words of the\n" +
			"vocabulary by what they point to (newmake library aroma), the scores of each batch\n" +
			"beside one another, what the batches differ in, and what their hearts carry. Where there\n" +
			"are too few scores to conclude anything, it says so.",
		Example: "  newmake tastings\n" +
			"  newmake tastings clove\n" +
			"  newmake tastings --of LH-0012\n" +
			"  newmake tastings oak --batch \"Ferry Landing\" --by M\n" +
			"  newmake tastings --of LH-0012 -o cask.html\n" +
			"  newmake tastings --format csv -o tastings.csv",
		RunE: func(_ *cobra.Command, args []string) error { return f.run(a, args) },
	}
	cmd.Flags().StringVar(&f.of, "of", "", "a cask's serial, or a run's number")
	cmd.Flags().StringVar(&f.by, "by", "", "who tasted")
	cmd.Flags().StringVar(&f.batch, "batch", "", "the batch that it comes from, by name")
	f.declare(cmd, formats.OfTastings, "the batch's own")
	cmd.Flags().StringVar(&f.house, "house", ".", "a folder or file of the house")
	completeFlag(cmd, "batch", batchNames)
	return cmd
}

func (f tastingsFlags) run(a *app, args []string) error {
	format, system, err := f.choose(formats.OfTastings)
	if err != nil {
		return err
	}
	src, err := a.load(f.house, "")
	if err != nil {
		return a.cannot(err, format)
	}
	all, said := src.House.Tastings()
	if said.HasErrors() {
		return a.noAnswer(said, format)
	}
	texts, _ := src.House.Inventory()
	found := taste.Search(all, taste.Wanted{Words: args, Of: f.of, By: f.by, Batch: f.batch}, src.House.Vocabulary(), func(t *record.Tasting) taste.Source {
		m := texts.OriginOf(t.Of, t.On)
		return taste.Source{Batch: m.Batch, Run: m.Run, Filled: m.Filled}
	})
	beside(found, src, system)
	out, err := formats.Tastings(found, format, tasted.Options{Bold: a.bold(f.output)})
	if err != nil {
		return err
	}
	if format == "text" {
		a.show(said)
	}
	return a.write(f.output, out, src.Inputs())
}

// beside puts beside the tastings what their batches differ in, each from the first, and
// what their hearts carry.
func beside(found *taste.Found, src *front.Source, system *recipe.System) {
	var first *recipe.Batch
	var plans []*plan.Plan
	for _, name := range found.Batches() {
		b, err := src.Batch(name, system)
		if err != nil || b.Recipe == nil {
			continue
		}
		if made := b.Plan(); made.Plan != nil {
			plans = append(plans, made.Plan)
		}
		if first == nil {
			first = b.Recipe
			continue
		}
		apart := taste.Apart{First: first.Name, Second: b.Recipe.Name, Edits: []string{}}
		for _, e := range compare.Find(first, b.Recipe, measure.UnitsOf(b.Recipe.Units)).Edits {
			if e.Counts {
				apart.Edits = append(apart.Edits, e.What)
			}
		}
		found.Apart = append(found.Apart, apart)
	}
	found.Carries(plans)
}
