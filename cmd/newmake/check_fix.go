package main

import (
	"fmt"
	"io"

	"newmake/cmd/newmake/internal/mend"
	"newmake/lang/diag"
	"newmake/lang/wholefile"
)

// showMended shows what the fixes would change, and changes nothing.
func showMended(a *app, texts []*mend.Text) error {
	for _, t := range texts {
		d := t.Diff()
		if a.outTerminal {
			d = safeLines(d, a.plain())
		}
		if _, err := io.WriteString(a.out, d); err != nil {
			return usage("cannot write: %v", err)
		}
	}
	if a.errTerminal && len(texts) == 0 {
		a.say("no fix to put in")
	}
	return nil
}

// putMended writes the mended texts, each whole or not at all, and says what was
// changed. quiet leaves the saying to a report. A file that can't be written does
// not keep the others from it.
func putMended(a *app, texts []*mend.Text, quiet bool) ([]mend.Change, error) {
	var made []mend.Change
	var failed error
	for _, t := range texts {
		var done wholefile.Done
		err := uninterrupted(func() (err error) {
			done, err = a.disk.Replace(t.Name, t.Before, t.After)
			return err
		})
		if err != nil {
			if failed != nil {
				a.tell("newmake: %v", failed)
			}
			failed = usage("cannot write %s: %v", t.Name, wholefile.Reason(err))
			continue
		}
		a.tellNames(t.Name, done)
		made = append(made, t.Changes...)
		for _, c := range t.Changes {
			if quiet {
				break
			}
			if _, err := fmt.Fprintln(a.out, diag.SafeIn(c.String(), a.plain())); err != nil {
				return made, usage("cannot write: %v", err)
			}
		}
	}
	return made, failed
}
