package main

import (
	"fmt"
	"strconv"

	"github.com/spf13/cobra"

	"newmake/compile"
	"newmake/lang/diag"
)

func (a *app) checkCommand() *cobra.Command {
	var format, stdin string
	var strict bool
	cmd := &cobra.Command{
		Use:   "check [FILE | FOLDER | -]...",
		Short: "Check batches: the text, the numbers, the law",
		Long: "check reads the batches of files or folders, computes each, and says what is wrong:\n" +
			"in the text, in the plant, at the still, or before the law. It is silent when all is\n" +
			"well, ends with 1 when there are errors, and does not mind warnings unless --strict.",
		Example: "  newmake check ferry-landing.batch\n" +
			"  newmake check . --strict\n" +
			"  newmake check . --format json",
		RunE: func(_ *cobra.Command, args []string) error {
			if format != "" && format != "text" && format != "json" {
				return usage("there is no format %q: write text or json", format)
			}
			if len(args) == 0 {
				args = []string{"."}
			}
			return a.check(args, stdin, format, strict)
		},
	}
	cmd.Flags().StringVar(&format, "format", "", "text or json")
	cmd.Flags().StringVar(&stdin, "stdin-filename", "", "the file that standard input stands for")
	cmd.Flags().BoolVar(&strict, "strict", false, "warnings fail too")
	return cmd
}

func (a *app) check(args []string, stdin, format string, strict bool) error {
	var all diag.List
	batches := 0
	for _, arg := range args {
		src, err := a.load(arg, stdin)
		if list, ok := err.(diag.List); ok {
			all = append(all, list...)
			continue
		}
		if err != nil {
			return err
		}
		list, n := checkSource(src)
		all, batches = append(all, list...), batches+n
	}
	all = all.Dedup()
	if format == "json" {
		if err := a.showJSON(all); err != nil {
			return usage("cannot write: %v", err)
		}
	} else {
		a.show(all)
	}
	if all.HasErrors() || strict && all.Count(diag.Warning) > 0 {
		if format != "json" {
			a.say("%s", all.Counted())
		}
		return errSaid
	}
	if a.errTerminal && format != "json" {
		if counted := all.Counted(); counted != "" {
			a.say("%s; %s", counts(batches), counted)
		} else {
			a.say("%s, nothing to mend", counts(batches))
		}
	}
	return nil
}

func counts(n int) string {
	if n == 1 {
		return "1 batch"
	}
	return strconv.Itoa(n) + " batches"
}

// checkSource checks the texts of a source and computes each batch that stands.
func checkSource(src *source) (diag.List, int) {
	list := src.house.CheckIn(src.path)
	names := src.house.BatchesIn(src.path)
	if len(names) == 0 && !list.HasErrors() && !src.declares() {
		list.Add(noBatch(src))
	}
	for _, name := range names {
		if b, checked := src.house.Batch(name); b != nil {
			_, computed := compile.Compile(b)
			if b.Parent != "" { // the place may lie in what it varies: say whose it is
				for i := range computed {
					computed[i].Summary = fmt.Sprintf("%s: %s", b.Name, computed[i].Summary)
				}
			}
			list = append(list, compile.Together(checked, computed)...)
		}
	}
	list.Sort()
	return list.Dedup(), len(names)
}
