package main

import (
	"fmt"
	"regexp"
	"slices"
	"strings"

	"github.com/spf13/cobra"
	"github.com/spf13/pflag"

	"newmake/compile/show/formats"
	"newmake/lang/quantity"
	"newmake/lang/wording"
)

const shortHelp = `newmake turns a whiskey batch, written as text, into numbers and a run sheet.

  newmake plan ferry-landing.batch     predictions and the timed sheet
  newmake check .                      every batch of a house, checked

newmake help lists all commands; newmake help plan shows one with examples.
`

// root is the command line, without anything run yet.
func root(a *app) *cobra.Command {
	root := &cobra.Command{
		Use:           "newmake",
		Short:         "From a batch written as text to a run sheet",
		Long:          "newmake checks a whiskey batch written as text, computes it from grain to cask, and gives\nthe timed sheet to work from.",
		SilenceErrors: true,
		SilenceUsage:  true,
		Args:          noSuchCommand,

		SuggestionsMinimumDistance: 2,
	}
	// Ours, for cobra's own takes -v too, and asks for a template: with text/template,
	// which looks methods up by name, every method of every type stays in the program.
	sayVersion := root.Flags().Bool("version", false, "say which version this is")
	root.RunE = func(*cobra.Command, []string) error {
		if *sayVersion {
			fmt.Fprintln(a.out, versionLine())
			return nil
		}
		fmt.Fprint(a.out, shortHelp)
		return nil
	}
	flags := root.PersistentFlags()
	flags.BoolVarP(&a.quiet, "quiet", "q", false, "say nothing on success")
	flags.StringVar(&a.color, "color", "auto", "colour: auto, always or never")
	noColor := flags.Bool("no-color", false, "the same as --color never")
	flags.BoolVar(&a.ascii, "ascii", false, "nothing but ASCII in messages")
	flags.BoolVar(&a.noLearned, "no-learned", false, "leave out what the house has learned from its runs")
	root.PersistentPreRunE = func(*cobra.Command, []string) error {
		if *noColor {
			a.color = "never"
		}
		switch a.color {
		case "auto", "always", "never":
			return nil
		}
		return usage("--color is auto, always or never, not %q", a.color)
	}
	for _, command := range []func(*app) *cobra.Command{
		planCommand, todayCommand, seasonCommand, checkCommand, fmtCommand, diffCommand, sizeCommand, gitSetupCommand, libraryCommand, gaugeCommand,
		explainCommand, whyCommand, learnCommand, reviewCommand, oddsCommand, recordCommand, cellarCommand, trialCommand, tastingsCommand, traceCommand, ledgerCommand, initCommand, lspCommand, versionCommand,
	} {
		root.AddCommand(withSchema(a, command(a)))
	}
	help := root.HelpFunc()
	root.SetHelpFunc(func(cmd *cobra.Command, args []string) {
		inUnits(cmd, unitsHere())
		help(cmd, args)
	})
	return root
}

// inUnits gives the help of a command in the units of a system: who counts in litres is
// shown no flag and no example of proof. Words stand in quotes there for the shell.
func inUnits(cmd *cobra.Command, reader quantity.System) {
	if reader != quantity.SI {
		return
	}
	quoted := func(text string) string {
		return strings.ReplaceAll(wording.Restated(strings.ReplaceAll(text, `"`, "\x00"), reader), "\x00", `"`)
	}
	cmd.Long = wording.Prose(cmd.Long, reader)
	cmd.Use = ofProof.ReplaceAllString(cmd.Use, "")
	cmd.Example = strings.Join(slices.DeleteFunc(strings.Split(quoted(cmd.Example), "\n"), func(line string) bool {
		return strings.Contains(line, "--proof") || strings.Contains(line, "proof gallon") || strings.Contains(line, "LPA") && strings.Contains(line, "--units si")
	}), "\n")
	cmd.LocalFlags().VisitAll(func(f *pflag.Flag) {
		f.Usage = quoted(f.Usage)
		f.Hidden = f.Hidden || strings.HasPrefix(f.Name, "proof")
	})
}

// ofProof is a choice in the form of a command.
var ofProof = regexp.MustCompile(`--proof[a-z-]* N \| `)

// noSuchCommand says which command may have been meant, and runs none.
func noSuchCommand(cmd *cobra.Command, args []string) error {
	if len(args) == 0 {
		return nil
	}
	message := fmt.Sprintf("there is no command %q", args[0])
	if near := cmd.SuggestionsFor(args[0]); len(near) > 0 {
		message += "; did you mean `" + strings.Join(near, "` or `") + "`?"
	} else if strings.HasSuffix(args[0], ".batch") {
		message += fmt.Sprintf("; did you mean `newmake plan %s`?", args[0])
	}
	return usage("%s\n`newmake help` lists the commands.", message)
}

// colour reports whether a stream is to be coloured.
func (a *app) colour(isTerminal bool) bool {
	switch a.color {
	case "always":
		return true
	case "never":
		return false
	}
	return isTerminal && a.env("NO_COLOR") == "" && a.env("TERM") != "dumb"
}

// bold reports whether what is written to an output may be bold.
func (a *app) bold(output string) bool {
	return a.colour(a.outTerminal) && formats.Standard(output)
}

// plain reports whether messages should keep to ASCII: when asked to, or when the
// locale is not UTF-8.
func (a *app) plain() bool {
	if a.ascii {
		return true
	}
	for _, name := range []string{"LC_ALL", "LC_CTYPE", "LANG"} {
		if v := a.env(name); v != "" {
			u := strings.ToUpper(v)
			return !strings.Contains(u, "UTF-8") && !strings.Contains(u, "UTF8")
		}
	}
	return false
}
