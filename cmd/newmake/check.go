package main

import (
	"fmt"
	"slices"

	"github.com/spf13/cobra"

	"newmake/cmd/newmake/internal/mend"
	"newmake/compile/front"
	"newmake/compile/front/revision"
	"newmake/lang/diag"
	"newmake/lang/diag/annotation"
	"newmake/lang/diag/sarif"
	"newmake/lang/parallel"
	"newmake/lang/version"
	"newmake/lang/words"
)

// checkFlags are what a person asks of a check.
type checkFlags struct {
	format, stdin     string
	strict, fix, diff bool
}

// checkFormats are the forms of what a check found.
var checkFormats = []string{"text", "json", "sarif", "github"}

// forPrograms reports whether a program reads the answer, and not a person.
func (f checkFlags) forPrograms() bool { return f.format != "" && f.format != "text" }

func checkCommand(a *app) *cobra.Command {
	var f checkFlags
	cmd := &cobra.Command{
		Use:   "check [FILE | FOLDER | -]...",
		Short: "Check batches: the text, the numbers, the law",
		Long: "check reads the batches of files or folders, computes each, and says what is wrong:\n" +
			"in the text, in the plant, at the still, before the law, or in what a batch promises of\n" +
			"itself. Without an argument it takes the folder it stands in. It is silent when all is\n" +
			"well, but for a count on a terminal; it ends with 1 when there are errors, and does not\n" +
			"mind warnings unless --strict. A folder above several houses stands for all of them.\n\n" +
			"With --fix it first puts in every fix that leaves no doubt about what was meant, says which,\n" +
			"and checks what the files hold then. A guess (\"did you mean\") it leaves to you. With --diff it\n" +
			"shows what --fix would change, and changes nothing.\n\n" +
			"sarif is SARIF 2.1.0, for a forge or an editor that keeps results; github is a line for each\n" +
			"thing found, which a forge's runner puts beside the change.",
		Example: "  newmake check ferry-landing.batch\n" +
			"  newmake check . --strict\n" +
			"  newmake check . --fix --diff\n" +
			"  newmake check . --format json\n" +
			"  newmake check . --format sarif > newmake.sarif",
		ValidArgsFunction: completeFiles,
		RunE: func(_ *cobra.Command, args []string) error {
			switch {
			case f.format != "" && !slices.Contains(checkFormats, f.format):
				return usage("there is no format %q: write %s", f.format, words.Or(checkFormats))
			case f.diff && f.forPrograms():
				return usage("--diff shows a difference of texts: leave out --format %s", f.format)
			case f.fix && !f.diff && slices.Contains(args, standardInput):
				return usage("--fix writes into files, and standard input is none: add --diff to see what would change")
			}
			if len(args) == 0 {
				args = []string{"."}
			}
			return f.run(a, args)
		},
	}
	formatFlag(cmd, &f.format, checkFormats)
	cmd.Flags().StringVar(&f.stdin, "stdin-filename", "", "the file that standard input stands for")
	cmd.Flags().BoolVar(&f.strict, "strict", false, "warnings fail too")
	cmd.Flags().BoolVar(&f.fix, "fix", false, "put in every fix that leaves no doubt, and say which")
	cmd.Flags().BoolVarP(&f.diff, "diff", "d", false, "write nothing: show what --fix would change")
	return cmd
}

func (f checkFlags) run(a *app, args []string) error {
	places, unread, err := f.places(a, args)
	if err != nil {
		return err
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
		if made, err = putMended(a, texts, f.forPrograms()); err != nil {
			return err
		}
	}
	work, err := front.NewCheck(places)
	if err != nil {
		return err
	}
	if work.Batches > manyBatches && a.errTerminal && !f.forPrograms() {
		a.say("checking %d batches ...", work.Batches)
	}
	list := append(unread, allFound(work)...)
	if !f.forPrograms() {
		list = list.Once()
	}
	if err := f.tell(a, work, list, made); err != nil {
		return usage("cannot write: %v", err)
	}
	failed := list.HasErrors() || f.strict && list.Count(diag.Warning) > 0
	if !f.forPrograms() && (failed || a.errTerminal) {
		a.say("%s", checked(work, list))
	}
	switch {
	case len(unread) > 0:
		return &exit{code: exitUsage}
	case failed:
		return ended(list)
	}
	return nil
}

// allFound is what the check finds, and what git tells of the records. Git is asked while
// the batches are computed: its answer takes some milliseconds.
func allFound(work *front.Check) diag.List {
	houses := work.Houses()
	lists := make([]diag.List, 1+len(houses))
	parallel.Each(len(lists), func(i int) {
		if i == 0 {
			lists[i] = work.Run()
		} else {
			lists[i] = revision.Rewritten(houses[i-1])
		}
	})
	return slices.Concat(lists...)
}

// places finds what is to be checked. For a person the first that cannot be read ends
// the check; for a program it is one of the things found.
func (f checkFlags) places(a *app, args []string) (places []front.Place, unread diag.List, err error) {
	for _, arg := range args {
		p, err := a.place(arg, f.stdin)
		if err != nil {
			return nil, nil, err
		}
		if err := front.Readable(p); err != nil && f.forPrograms() {
			unread.Add(diag.Diagnostic{Code: diag.CodeUnreadable, Summary: err.Error(), At: diag.NewSource(p.Path, nil).Span(0, 0)})
			continue
		}
		places = append(places, p)
	}
	return places, unread, nil
}

// tell gives what was found in the form that was asked for.
func (f checkFlags) tell(a *app, work *front.Check, list diag.List, made []mend.Change) error {
	switch f.format {
	case "json":
		return a.writeJSON(checkReport{reportOf(list), work.Batches, work.Files, made})
	case "sarif":
		return a.writeJSON(sarif.Of(list, version.Of()))
	case "github":
		return annotation.Write(a.out, list)
	}
	a.show(list)
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
