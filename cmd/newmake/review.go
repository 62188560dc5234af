package main

import (
	"bytes"
	"fmt"
	"path/filepath"
	"time"

	"github.com/spf13/cobra"

	"newmake/compile"
	"newmake/compile/ask/review"
	"newmake/compile/blank"
	"newmake/compile/front"
	"newmake/compile/front/revision"
	"newmake/compile/made"
	"newmake/compile/measure"
	"newmake/compile/show/formats"
	"newmake/compile/show/reviewed"
	"newmake/lang/diag"
)

// reviewFlags are what a person asks of a review.
type reviewFlags struct {
	answerFlags
	at, house      string
	full, exitCode bool
}

func reviewCommand(a *app) *cobra.Command {
	var f reviewFlags
	cmd := &cobra.Command{
		Use:   "review RUN",
		Short: "What a run's record says, beside what the plan said",
		Long: "review holds the record of a run against its batch as planned, and against the batch computed\n" +
			"again with what really went in, when and how hot. It says which readings are not what they\n" +
			"should be, whether the alcohol balances from the mash to the cask and what would explain it\n" +
			"where it does not, what was done otherwise and what that was worth, and what stays\n" +
			"unexplained. Of a run that is not done it says what is to come. The first lines are the\n" +
			"verdict; --full is all of it.\n\n" +
			"The plan is that of the sheet that the run names, as it stood in the history; without one,\n" +
			"the batch as it is now, without what was learned after the run or of it. Where the history\n" +
			"lacks it, what the plan said is read from what record kept beside the run.\n\n" +
			"RUN is its number; the house is the one around the working directory,\n" +
			"or that of --house.\n" +
			"A reading is as it should be if it is within what its instrument, the model and the lot\n" +
			"leave open, 19 times in 20.",
		Example: "  newmake review 26-03\n" +
			"  newmake review 26-03 --full\n" +
			"  newmake review 26-03 --at '2026-03-10 22:30'\n" +
			"  newmake review 26-03 -o review.html\n" +
			"  newmake review 26-03 --format json",
		RunE: func(_ *cobra.Command, args []string) error {
			if len(args) != 1 {
				return usage("say which run: newmake review 26-03")
			}
			return f.run(a, args[0])
		},
	}
	f.declare(cmd, formats.OfReview, "the batch's own")
	cmd.Flags().StringVar(&f.house, "house", ".", "a folder or file of the house")
	cmd.Flags().StringVar(&f.at, "at", "", "as it stood at a moment: '2026-03-10 22:30'")
	cmd.Flags().BoolVar(&f.full, "full", false, "all readings, balances and parts")
	cmd.Flags().BoolVar(&f.exitCode, "exit-code", false, "end with 1 if a reading is not as it should be, or the alcohol does not balance")
	return cmd
}

func (f reviewFlags) run(a *app, number string) error {
	format, system, err := f.choose(formats.OfReview)
	if err != nil {
		return err
	}
	src, err := a.load(f.house, "")
	if err != nil {
		return a.cannot(err, format)
	}
	run, said := src.House.Run(number)
	if run == nil || said.HasErrors() {
		return a.noAnswer(said, format)
	}
	worked := revision.NewWorked(src, false)
	b, list, note := worked.Of(run)
	if b == nil {
		return a.noAnswer(list, format)
	}
	var kept *blank.Planned
	if worked.Lost(run) {
		beside := plannedBeside(run.At.Src.Name)
		switch kept, err = keptPlan(beside); {
		case err != nil:
			return err
		case kept != nil:
			note += fmt.Sprintf("; what the plan said is that of %s", filepath.Base(beside))
		default:
			note += fmt.Sprintf("; no %s is beside its record, so the plan is of the batch as it stands now too", filepath.Base(beside))
		}
	}
	q := review.Question{Batch: b, Run: run, Note: note, Kept: kept, Instrument: src.House.Instrument, Units: measure.UnitsOf(b.Units)}
	if system != nil {
		q.Units = measure.UnitsOf(*system)
	}
	if f.at != "" {
		if q.Until, err = time.ParseInLocation("2006-01-02 15:04", f.at, run.Zone); err != nil {
			return usage("--at %q is no moment: write '2026-03-10 22:30'", f.at)
		}
	}
	answer, err := review.Of(q)
	if err != nil {
		return usage("run %s cannot be computed as it was made: %v", number, err)
	}
	var out bytes.Buffer
	switch format {
	case "json":
		err = diag.EncodeJSON(&out, "", reviewed.Of(answer))
	case "html":
		err = page(&out, src, q, answer)
	default:
		err = reviewed.Text(&out, answer, reviewed.Options{Full: f.full || !a.outTerminal && f.output != "", Bold: a.bold(f.output)})
	}
	if err != nil {
		return err
	}
	if format != "json" {
		a.show(src.House.Ordered(append(said, made.Truly(run)...)))
	}
	if err := a.write(f.output, out.Bytes(), src.Inputs()); err != nil {
		return err
	}
	if f.exitCode && !answer.AsItShould() {
		return errSaid
	}
	return nil
}

// page writes a review with the pictures of the plan for the day of the run.
func page(out *bytes.Buffer, src *front.Source, q review.Question, answer *review.Answer) error {
	planned := *q.Batch
	planned.Start.Year, planned.Start.Month, planned.Start.Day = answer.Day.Year, int(answer.Day.Month), answer.Day.Day
	p, _ := compile.Compile(&planned)
	if p == nil {
		return diag.Refuse("the batch of run %s cannot be planned, so there is nothing to draw: `newmake plan` says why", answer.Run)
	}
	if q.Note == "" {
		p.Source, _ = revision.Of(src, answer.Batch)
	}
	return reviewed.HTML(out, answer, p)
}
