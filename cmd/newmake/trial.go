package main

import (
	"bytes"

	"github.com/spf13/cobra"

	"newmake/compile/book/taste"
	"newmake/compile/front"
	"newmake/compile/show/formats"
	"newmake/compile/show/tasted"
	"newmake/lang/diag"
)

// trialFlags are what a person asks of a trial.
type trialFlags struct {
	format, output, house string
}

func trialCommand(a *app) *cobra.Command {
	var f trialFlags
	cmd := &cobra.Command{
		Use:   "trial NAME",
		Short: "A blind tasting: what it can find, who gets which cup, what it showed",
		Long: "trial reads a `trial` of the house. Before it is poured it says what so many tasters can\n" +
			"find at all, and writes the sheets: a page for each taster with three-digit codes, in\n" +
			"balanced order, and a key for the one who pours. Afterwards it says how often guessing\n" +
			"gives the same answers, counted exactly, and how many tell the samples apart.\n\n" +
			"The methods are those of sensory analysis: triangle (ISO 4120), duo-trio (ISO 10399),\n" +
			"paired (ISO 5495) and ranking (ISO 8587).",
		Example: "  newmake trial \"More rye?\"\n" +
			"  newmake trial \"More rye?\" -o trial.html\n" +
			"  newmake trial \"More rye?\" --format json",
		ValidArgsFunction: completeTrials,
		RunE: func(_ *cobra.Command, args []string) error {
			if len(args) != 1 {
				return usage("say which trial: newmake trial \"More rye?\"")
			}
			return f.run(a, args[0])
		},
	}
	formatFlag(cmd, &f.format, formats.OfTrial.Names())
	cmd.Flags().StringVarP(&f.output, "output", "o", "", "write to this file")
	cmd.Flags().StringVar(&f.house, "house", ".", "a folder or file of the house")
	return cmd
}

func (f trialFlags) run(a *app, name string) error {
	format, err := formats.OfTrial.Choose(f.format, f.output)
	if err != nil {
		return err
	}
	src, err := a.load(f.house, "")
	if err != nil {
		return a.cannot(err, format)
	}
	t, said := src.House.Trial(name)
	if t == nil || said.HasErrors() {
		return a.noAnswer(said, format)
	}
	j := taste.Judge(t)
	var out bytes.Buffer
	switch format {
	case "json":
		err = diag.EncodeJSON(&out, "", j)
	case "html":
		if len(j.Serving) == 0 {
			return usage("nobody is named to taste: write `tasters \"A\", \"M\"` into the trial, and `sets 6`")
		}
		err = tasted.Sheets(&out, j)
	default:
		err = tasted.Trial(&out, j, tasted.Options{Bold: a.bold(f.output), Arg: quoted(name)})
	}
	if err != nil {
		return err
	}
	if format == "text" {
		a.show(said)
	}
	return a.write(f.output, out.Bytes(), src.Inputs())
}

// completeTrials offers the trials of the house around the working directory.
func completeTrials(_ *cobra.Command, args []string, _ string) ([]cobra.Completion, cobra.ShellCompDirective) {
	src, err := front.Load(front.Place{Path: "."})
	if err != nil || len(args) > 0 {
		return nil, cobra.ShellCompDirectiveNoFileComp
	}
	var out []cobra.Completion
	for _, name := range src.House.TrialNames() {
		out = append(out, diag.SafeIn(name, true))
	}
	return out, cobra.ShellCompDirectiveNoFileComp
}
