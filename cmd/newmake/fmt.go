package main

import (
	"fmt"
	"io"

	"github.com/spf13/cobra"

	"newmake/cmd/newmake/internal/layout"
	"newmake/compile/show/formats"
	"newmake/lang/diag"
	"newmake/lang/parallel"
	"newmake/lang/wholefile"
	"newmake/lang/words"
)

const fmtShort = `newmake fmt puts batch files into the one canonical layout.

  newmake fmt ferry-landing.batch      one file, in place
  newmake fmt . --check                is all of a house laid out?

newmake help fmt has more of them.
`

// fmtFlags are what a person asks of a layout.
type fmtFlags struct {
	check, diff   bool
	format, stdin string
}

func fmtCommand(a *app) *cobra.Command {
	var f fmtFlags
	cmd := &cobra.Command{
		Use:   "fmt FILE | FOLDER | - ...",
		Short: "Lay batch files out in the one canonical way",
		Long: "fmt writes files in place in the one canonical layout, and lists those that it changed. Of a\n" +
			"folder it takes every .batch file below, hidden folders and links left out. It changes layout\n" +
			"only: spaces, columns, blank lines; words, numbers and comments stay. A file in which a\n" +
			"brace, a quote or the like is missing is left alone, and the mistake is shown; what its words\n" +
			"and values mean is for check to say. With - it reads standard input and writes to standard\n" +
			"output.",
		Example: "  newmake fmt ferry-landing.batch\n" +
			"  newmake fmt .\n" +
			"  newmake fmt . --check\n" +
			"  newmake fmt ferry-landing.batch --diff\n" +
			"  newmake fmt - < ferry-landing.batch",
		ValidArgsFunction: completeFiles,
		RunE: func(_ *cobra.Command, args []string) error {
			if f.format != "" && f.format != "text" && f.format != "json" {
				return usage("there is no format %q: write text or json", f.format)
			}
			if len(args) == 0 {
				fmt.Fprint(a.out, fmtShort)
				return nil
			}
			return f.run(a, args)
		},
	}
	cmd.Flags().BoolVar(&f.check, "check", false, "write nothing: list what is not laid out, and end with 1 if there is any")
	cmd.Flags().BoolVarP(&f.diff, "diff", "d", false, "write nothing: show what would change")
	formatFlag(cmd, &f.format, formats.OfAnswer.Names())
	cmd.Flags().StringVar(&f.stdin, "stdin-filename", "", "the file that standard input stands for")
	return cmd
}

func (f fmtFlags) run(a *app, args []string) error {
	var all []*layout.Text
	for _, arg := range args {
		if arg == standardInput {
			if len(args) > 1 {
				return usage("standard input stands alone: give - or files, not both")
			}
			name, text, err := a.standardText(f.stdin)
			if err != nil {
				return err
			}
			all = append(all, layout.New(name, text))
			continue
		}
		files, err := layout.Files(arg)
		if err != nil {
			return err
		}
		all = append(all, files...)
	}
	all = layout.OnlyOnce(all)
	parallel.Each(len(all), func(i int) { all[i].LayOut() })
	r := fmtReport{Format: "newmake.fmt", Version: "1.0", Files: len(all), Changed: []string{}}
	for _, t := range all {
		r.add(a, t, f)
	}
	return r.tell(a, f)
}

// add does with one text what was asked.
func (r *fmtReport) add(a *app, l *layout.Text, f fmtFlags) {
	r.Diagnostics = append(r.Diagnostics, l.Diags...)
	switch {
	case l.Err != nil:
		r.fail("cannot read %s: %v", diag.Safe(l.Name), wholefile.Reason(l.Err))
		return
	case l.After == nil:
		r.Broken++
		if !l.InFile() && !f.check && !f.diff && f.format != "json" && !a.outTerminal {
			r.text = l.Before // an editor puts what comes out in the place of its text
		}
		return
	case l.Changes():
		r.Changed = append(r.Changed, l.Name)
	}
	switch {
	case f.diff:
		if l.Changes() {
			r.diffs = append(r.diffs, l.Diff())
		}
	case f.check:
	case !l.InFile():
		if f.format != "json" {
			r.text = l.After
		}
	case l.Changes():
		names := 0
		err := uninterrupted(func() (err error) {
			names, err = l.Replace(a.disk)
			return err
		})
		if err != nil {
			r.fail("%v", diag.Safe(err.Error()))
			r.Changed = r.Changed[:len(r.Changed)-1]
		} else if names > 1 {
			r.notes = append(r.notes, otherNames(l.Name, names))
		}
	}
}

// fmtReport is what came of it; as JSON it is the whole answer.
type fmtReport struct {
	Format      string    `json:"format"`
	Version     string    `json:"version"`
	Files       int       `json:"files"`
	Changed     []string  `json:"changed"` // or to be changed, if nothing is written
	Broken      int       `json:"broken"`  // left alone for their errors
	Failed      []string  `json:"failed,omitempty"`
	Diagnostics diag.List `json:"diagnostics"`

	text  []byte // of standard input, laid out
	diffs []string
	notes []string
}

func (r *fmtReport) fail(format string, args ...any) {
	r.Failed = append(r.Failed, fmt.Sprintf(format, args...))
}

// tell says what came of it, and gives the exit code.
func (r *fmtReport) tell(a *app, f fmtFlags) error {
	switch {
	case f.format == "json":
		if err := a.writeJSON(r); err != nil {
			return err
		}
	default:
		if err := r.print(a, f); err != nil {
			return usage("cannot write: %v", err)
		}
	}
	switch {
	case len(r.Failed) > 0:
		return &exit{code: exitUsage}
	case r.Broken > 0 || f.check && len(r.Changed) > 0:
		return errSaid
	}
	return nil
}

func (r *fmtReport) print(a *app, f fmtFlags) error {
	a.show(r.Diagnostics)
	for _, note := range r.notes {
		a.say("note: %s", note)
	}
	for _, failure := range r.Failed {
		a.tell("newmake: %s", failure)
	}
	if r.text != nil {
		_, err := a.out.Write(r.text)
		return err
	}
	for _, d := range r.diffs {
		if a.outTerminal {
			d = safeLines(d, a.plain())
		}
		if _, err := io.WriteString(a.out, d); err != nil {
			return err
		}
	}
	if !f.diff || f.check && len(r.diffs) == 0 {
		for _, name := range r.Changed {
			if _, err := fmt.Fprintln(a.out, diag.SafeIn(name, a.plain())); err != nil {
				return err
			}
		}
	}
	if a.errTerminal {
		a.say("%s", r.counted(f))
	}
	return nil
}

// counted says in one line what was done.
func (r *fmtReport) counted(f fmtFlags) string {
	n := len(r.Changed)
	did := "laid out"
	if f.check || f.diff {
		did = "to be laid out"
	}
	text := fmt.Sprintf("%s %s, %d already so", files(n), did, r.Files-n-r.Broken-len(r.Failed))
	if r.Broken > 0 {
		text += fmt.Sprintf(", %d left alone for the errors in them", r.Broken)
	}
	return text
}

func files(n int) string { return words.Count(n, "file") }
