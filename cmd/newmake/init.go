package main

import (
	"fmt"
	"strings"

	"github.com/spf13/cobra"

	"newmake/cmd/newmake/internal/newhouse"
	"newmake/lang/diag"
	"newmake/lang/library"
	"newmake/lang/wholefile"
)

func initCommand(a *app) *cobra.Command {
	var units string
	cmd := &cobra.Command{
		Use:   "init FOLDER",
		Short: "Make a house with a plant and a first batch to change",
		Long: "init makes a folder with a house in it: a plant, in house.batch, and a first batch, both with\n" +
			"notes and with numbers to put your own in the place of. It never writes over a\n" +
			"file: a .gitattributes that is there, as in a fresh clone, stays, and the rest is made.",
		Example: "  newmake init my-house\n" +
			"  newmake init my-house --units si",
		Args: cobra.MaximumNArgs(1),
		ValidArgsFunction: func(*cobra.Command, []string, string) ([]cobra.Completion, cobra.ShellCompDirective) {
			return nil, cobra.ShellCompDirectiveFilterDirs
		},
		RunE: func(cmd *cobra.Command, args []string) error {
			if units != "us" && units != "si" {
				return usage("--units is us or si, not %q", units)
			}
			if len(args) == 0 {
				fmt.Fprint(a.out, "newmake init makes a house to begin with.\n\n"+cmd.Example+"\n")
				return nil
			}
			return runInit(a, args[0], units)
		},
	}
	cmd.Flags().StringVar(&units, "units", "us", "us or si: what the house is written in")
	return cmd
}

// runInit makes a house in a folder, and says what to do next.
func runInit(a *app, folder, units string) error {
	if wholefile.Device(folder) {
		return usage("a house cannot be called %s: on Windows that is the name of a device", folder)
	}
	var made *newhouse.House
	err := uninterrupted(func() (err error) {
		made, err = newhouse.Make(a.disk, folder, units)
		return err
	})
	if err != nil {
		return err
	}
	if a.quiet {
		return nil
	}
	for _, name := range made.Files {
		fmt.Fprintf(a.out, "made %s\n", diag.SafeIn(name, a.plain()))
	}
	if made.Lacks != "" {
		fmt.Fprintf(a.out, "left %s as it is; a line to add: %s\n", diag.SafeIn(made.LacksIn, a.plain()), made.Lacks)
	}
	next := [][2]string{
		{"edit " + shellWord(made.Plant), "your vessels, your water, your prices"},
		{"newmake check " + shellWord(folder), "what is wrong, if anything is"},
		{"newmake plan " + shellWord(made.First), "predictions and the run sheet"},
		{"newmake library", "grains, yeasts, enzymes, woods, standards"},
	}
	widest := 0
	for _, n := range next {
		widest = max(widest, diag.Width(n[0]))
	}
	fmt.Fprintf(a.out, "\n%s\n\nNext:\n", map[string]string{
		"us": "The house counts in gallons, pounds and F, under the law of the United States. --units si makes one in litres, kilograms and C.",
		"si": "The house counts in litres, kilograms and C. --units us makes one in gallons, pounds and F.",
	}[units])
	for _, n := range next {
		fmt.Fprintf(a.out, "  %s  %s\n", library.Pad(diag.SafeIn(n[0], a.plain()), widest), n[1])
	}
	return nil
}

// shellWord is a path as one word of a shell.
func shellWord(path string) string {
	if strings.ContainsAny(path, " '\"$`\\*?;&|<>()[]{}!#~\t\n") {
		return "'" + strings.ReplaceAll(path, "'", `'\''`) + "'"
	}
	return path
}
