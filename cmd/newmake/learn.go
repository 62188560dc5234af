package main

import (
	"bytes"
	"fmt"
	"os"
	"path/filepath"
	"time"

	"github.com/spf13/cobra"

	"newmake/compile/ask/learn"
	"newmake/compile/front"
	"newmake/compile/front/revision"
	"newmake/compile/show/formats"
	"newmake/compile/show/taught"
	"newmake/lang"
	"newmake/lang/diag"
	"newmake/lang/learned"
	"newmake/lang/recipe"
	"newmake/lang/record"
	"newmake/lang/wholefile"
)

// learnFlags are what a person asks of learning.
type learnFlags struct {
	answerFlags
	without       []string
	house, on     string
	write, full   bool
	exact, robust bool
}

func learnCommand(a *app) *cobra.Command {
	var f learnFlags
	cmd := &cobra.Command{
		Use:   "learn [RUN...]",
		Short: "The house's own constants, from its runs",
		Long: "learn finds what a house's runs tell of it: how much its mill and yeast give, how its vessels\n" +
			"heat and cool, what its heads return, what its instruments are off by. Each run is computed\n" +
			"as it was really made, and all readings of all runs are held against it together, beside\n" +
			"what the library knows before any run; so a few runs move little, and each value says how\n" +
			"much of it was known before. Readings that nothing explains are said first, and left out.\n\n" +
			"Nothing is changed. --write puts what was told into learned.batch; plans then use it, and\n" +
			"say so, and with --no-learned they leave it out.",
		Example: "  newmake learn\n" +
			"  newmake learn 26-01 26-02 26-03\n" +
			"  newmake learn --without 26-04\n" +
			"  newmake learn --write --on 2026-06-30\n" +
			"  newmake learn --full\n" +
			"  newmake learn --exact\n" +
			"  newmake learn --robust\n" +
			"  newmake learn --format json",
		RunE: func(_ *cobra.Command, args []string) error { return f.run(a, args) },
	}
	cmd.Flags().StringSliceVar(&f.without, "without", nil, "a run to leave out")
	cmd.Flags().StringVar(&f.house, "house", ".", "the house, by its folder or a file of it")
	cmd.Flags().BoolVar(&f.write, "write", false, "write learned.batch")
	cmd.Flags().StringVar(&f.on, "on", "", "with --write: the day to write, 2026-06-30 (default: today)")
	cmd.Flags().BoolVar(&f.full, "full", false, "all of it: each run's own, and how much runs differ")
	cmd.Flags().BoolVar(&f.exact, "exact", false, "foretell each run by a search without it, and not by one step: as many times longer as there are runs")
	cmd.Flags().BoolVar(&f.robust, "robust", false, "readings far from what all others say count for less, once the wrong ones are said and left out")
	f.declare(cmd, formats.OfAnswer, "the batches' own")
	return cmd
}

func (f learnFlags) run(a *app, runs []string) error {
	format, system, err := f.choose(formats.OfAnswer)
	if err != nil {
		return err
	}
	day, err := dayOn(f.on, record.DateOf(time.Now()))
	if err != nil {
		return err
	}
	// The library's constants are where all learning begins, whatever was learned before.
	src, err := front.Load(front.Place{Path: f.house, NoLearned: true})
	if err != nil {
		return a.cannot(err, format)
	}
	g, err := learn.Gather(src.House, runs, f.without, revision.NewWorked(src, true).Of)
	if err != nil {
		return a.cannot(err, format)
	}
	a.notes(g.Notes...)
	if name := learnedName(src); f.write {
		if was, err := os.ReadFile(name); err == nil && !learned.Only(was, g.Plant) {
			return diag.Refuse("%s holds other things than what was learned of %q: move them into another file of the house first", name, g.Plant)
		}
	}
	l, err := learn.From(g.Runs, g.Instruments, learn.Options{Exact: f.exact, Robust: f.robust})
	if err != nil {
		return diag.Refuse("nothing can be learned from these runs: %v", err)
	}
	if system == nil {
		system = &g.Runs[0].Recipe.Units
	}
	doc := l.Document(g, *system)
	var out bytes.Buffer
	if format == "json" {
		err = diag.EncodeJSON(&out, "", doc)
	} else {
		err = taught.Text(&out, doc, f.full)
	}
	if err != nil {
		return err
	}
	if err := a.write(f.output, out.Bytes(), src.Inputs()); err != nil {
		return err
	}
	if !f.write {
		if format != "json" {
			a.notes("nothing was written: `newmake learn --write` puts this into " + learned.FileName)
		}
		if !doc.Settled { // the answer says so itself
			return errSaid
		}
		return nil
	}
	if !doc.Settled {
		return diag.Refuse("%s was not written: the search did not come to its end", learned.FileName)
	}
	return f.put(a, src, l.Block(g, day.String()))
}

// learnedName is the file that what was learned stands in, and nothing else.
func learnedName(src *front.Source) string { return filepath.Join(src.House.Root, learned.FileName) }

// put writes what was learned into the house, whole.
func (f learnFlags) put(a *app, src *front.Source, block *recipe.Learned) error {
	name := learnedName(src)
	text := []byte("# Written by `newmake learn --write`: what the house's runs have taught. Plans use it.\n\n" + learned.Text(block))
	laid, list := lang.Format(diag.NewSource(name, text))
	if len(list) > 0 {
		return fmt.Errorf("what was learned does not read back: %w", list)
	}
	done, err := a.disk.Write(name, laid)
	if err != nil {
		return usage("cannot write %s: %v", name, wholefile.Reason(err))
	}
	if done.Same {
		a.notes(name + " says this already")
		return nil
	}
	a.notes(fmt.Sprintf("wrote %s: plans of %s use it from now on", name, block.Plant),
		"a batch may have promised more than this house gives: `newmake check` says which; make it larger (`newmake size`) or promise less. `newmake plan --no-learned` is the plan by the book")
	return nil
}
