package main

import (
	"bytes"
	"time"

	"github.com/spf13/cobra"

	"newmake/compile/ask/today"
	"newmake/compile/front"
	"newmake/compile/show/daily"
	"newmake/compile/show/formats"
	"newmake/lang/diag"
	"newmake/lang/record"
)

// todayFlags are what a person asks of a day.
type todayFlags struct {
	on, house, format, output string
}

func todayCommand(a *app) *cobra.Command {
	var f todayFlags
	cmd := &cobra.Command{
		Use:   "today [HOUSE]",
		Short: "What is to be done in the house on a day",
		Long: "today asks the house what is to be done: the steps of the runs that are under way, of the\n" +
			"batches that begin, with what the instruments should say and the dangers; what the\n" +
			"seasons of the house have on the day, as newmake season plans them; and the casks that\n" +
			"leak, are to be sampled, or have rested long enough. A run is what newmake record opened,\n" +
			"and is planned for the day on which it began; a batch without a run is planned for its own\n" +
			"start. A variant that begins with its parent is left out. The clock is the plan's: newmake\n" +
			"review says how far a run is.",
		Example: "  newmake today\n" +
			"  newmake today --on 2026-03-10\n" +
			"  newmake today examples/lantern-hollow --on 2026-03-10 --format json",
		RunE: func(_ *cobra.Command, args []string) error {
			if f.house != "" {
				args = append(args, f.house)
			}
			switch len(args) {
			case 0:
				return f.run(a, ".")
			case 1:
				return f.run(a, args[0])
			}
			return usage("today takes one house, not %s", front.QuoteAll(args))
		},
	}
	cmd.Flags().StringVar(&f.on, "on", "", "another day: 2026-03-10")
	cmd.Flags().StringVar(&f.house, "house", "", "a folder or file of the house (default: the argument, or \".\")")
	cmd.Flags().StringVarP(&f.output, "output", "o", "", "write to this file")
	formatFlag(cmd, &f.format, formats.OfAnswer.Names())
	return cmd
}

func (f todayFlags) run(a *app, house string) error {
	format, err := formats.OfAnswer.Choose(f.format, f.output)
	if err != nil {
		return err
	}
	day, err := dayOn(f.on, record.DateOf(time.Now()))
	if err != nil {
		return err
	}
	src, err := a.load(house, "")
	if err != nil {
		return a.cannot(err, format)
	}
	answer, err := today.Of(src, day)
	if err != nil {
		return err
	}
	var out bytes.Buffer
	if format == "json" {
		err = diag.EncodeJSON(&out, "", answer)
	} else {
		err = daily.Text(&out, answer, a.bold(f.output))
	}
	if err != nil {
		return err
	}
	return a.write(f.output, out.Bytes(), src.Inputs())
}
