package main

import (
	"fmt"

	"github.com/spf13/cobra"

	"newmake/compile/front"
	"newmake/lang/diag"
	"newmake/lang/words"
)

func checkCommand(a *app) *cobra.Command {
	var format, stdin string
	var strict bool
	cmd := &cobra.Command{
		Use:   "check [FILE | FOLDER | -]...",
		Short: "Check batches: the text, the numbers, the law",
		Long: "check reads the batches of files or folders, computes each, and says what is wrong:\n" +
			"in the text, in the plant, at the still, before the law, or in what a batch promises of\n" +
			"itself. Without an argument it takes the folder it stands in. It is silent when all is\n" +
			"well, but for a count on a terminal; it ends with 1 when there are errors, and does not\n" +
			"mind warnings unless --strict.",
		Example: "  newmake check ferry-landing.batch\n" +
			"  newmake check . --strict\n" +
			"  newmake check . --format json",
		ValidArgsFunction: completeFiles,
		RunE: func(_ *cobra.Command, args []string) error {
			if format != "" && format != "text" && format != "json" {
				return usage("there is no format %q: write text or json", format)
			}
			if len(args) == 0 {
				args = []string{"."}
			}
			return runCheck(a, args, stdin, format, strict)
		},
	}
	cmd.Flags().StringVar(&format, "format", "", "text or json")
	completeFlag(cmd, "format", oneOf("text", "json"))
	cmd.Flags().StringVar(&stdin, "stdin-filename", "", "the file that standard input stands for")
	cmd.Flags().BoolVar(&strict, "strict", false, "warnings fail too")
	return cmd
}

func runCheck(a *app, args []string, stdin, format string, strict bool) error {
	var places []front.Place
	for _, arg := range args {
		p, err := a.place(arg, stdin)
		if err != nil {
			return err
		}
		places = append(places, p)
	}
	work, err := front.NewCheck(places)
	if err != nil {
		return err
	}
	if work.Batches > manyBatches && a.errTerminal && format != "json" {
		a.say("checking %d batches ...", work.Batches)
	}
	list := work.Run()
	if format == "json" {
		if err := a.writeJSON(checkReport{reportOf(list), work.Batches, work.Files}); err != nil {
			return err
		}
	} else {
		a.show(list)
	}
	failed := list.HasErrors() || strict && list.Count(diag.Warning) > 0
	if format != "json" && (failed || a.errTerminal) {
		a.say("%s", checked(work, list))
	}
	if failed {
		return ended(list)
	}
	return nil
}

// manyBatches is from where on a person would wonder what takes so long.
const manyBatches = 50

// checked says in one line what was checked and found.
func checked(w *front.Check, list diag.List) string {
	of := fmt.Sprintf("%s in %s", words.CountOf(w.Batches, "batch", "batches"), words.Count(w.Files, "file"))
	if found := list.Counted(); found != "" {
		return found + "; " + of
	}
	return of + ", nothing to mend"
}

// checkReport is what check found as one JSON document.
type checkReport struct {
	report
	Batches int `json:"batches"` // computed or tried
	Files   int `json:"files"`
}
