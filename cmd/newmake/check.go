package main

import (
	"fmt"
	"slices"

	"github.com/spf13/cobra"

	"newmake/cmd/newmake/internal/mend"
	"newmake/compile/front"
	"newmake/lang/diag"
	"newmake/lang/words"
)

// checkFlags are what a person asks of a check.
type checkFlags struct {
	format, stdin     string
	strict, fix, diff bool
}

func checkCommand(a *app) *cobra.Command {
	var f checkFlags
	cmd := &cobra.Command{
		Use:   "check [FILE | FOLDER | -]...",
		Short: "Check batches: the text, the numbers, the law",
		Long: "check reads the batches of files or folders, computes each, and says what is wrong:\n" +
			"in the text, in the plant, at the still, before the law, or in what a batch promises of\n" +
			"itself. Without an argument it takes the folder it stands in. It is silent when all is\n" +
			"well, but for a count on a terminal; it ends with 1 when there are errors, and does not\n" +
			"mind warnings unless --strict.\n\n" +
			"With --fix it first puts in every fix that leaves no doubt about what was meant, says which,\n" +
			"and checks what the files hold then. A guess (\"did you mean\") it leaves to you. With --diff it\n" +
			"shows what --fix would change, and changes nothing.",
		Example: "  newmake check ferry-landing.batch\n" +
			"  newmake check . --strict\n" +
			"  newmake check . --fix --diff\n" +
			"  newmake check . --format json",
		ValidArgsFunction: completeFiles,
		RunE: func(_ *cobra.Command, args []string) error {
			switch {
			case f.format != "" && f.format != "text" && f.format != "json":
				return usage("there is no format %q: write text or json", f.format)
			case f.diff && f.format == "json":
				return usage("--diff shows a difference of texts: leave out --format json")
			case f.fix && !f.diff && slices.Contains(args, standardInput):
				return usage("--fix writes into files, and standard input is none: add --diff to see what would change")
			}
			if len(args) == 0 {
				args = []string{"."}
			}
			return f.run(a, args)
		},
	}
	cmd.Flags().StringVar(&f.format, "format", "", "text or json")
	completeFlag(cmd, "format", oneOf("text", "json"))
	cmd.Flags().StringVar(&f.stdin, "stdin-filename", "", "the file that standard input stands for")
	cmd.Flags().BoolVar(&f.strict, "strict", false, "warnings fail too")
	cmd.Flags().BoolVar(&f.fix, "fix", false, "put in every fix that leaves no doubt, and say which")
	cmd.Flags().BoolVarP(&f.diff, "diff", "d", false, "write nothing: show what --fix would change")
	return cmd
}

func (f checkFlags) run(a *app, args []string) error {
	var places []front.Place
	for _, arg := range args {
		p, err := a.place(arg, f.stdin)
		if err != nil {
			return err
		}
		places = append(places, p)
	}
	var made []mend.Change
	if f.fix || f.diff {
		texts, err := mend.Texts(places)
		if err != nil {
			return err
		}
		if f.diff {
			return showMended(a, texts)
		}
		if made, err = putMended(a, texts, f.format == "json"); err != nil {
			return err
		}
	}
	work, err := front.NewCheck(places)
	if err != nil {
		return err
	}
	if work.Batches > manyBatches && a.errTerminal && f.format != "json" {
		a.say("checking %d batches ...", work.Batches)
	}
	list := work.Run()
	if f.format == "json" {
		if err := a.writeJSON(checkReport{reportOf(list), work.Batches, work.Files, made}); err != nil {
			return err
		}
	} else {
		a.show(list)
	}
	failed := list.HasErrors() || f.strict && list.Count(diag.Warning) > 0
	if f.format != "json" && (failed || a.errTerminal) {
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

	Fixed []mend.Change `json:"fixed,omitempty"` // put in by --fix, before this was checked
}
