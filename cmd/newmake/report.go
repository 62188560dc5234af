package main

import (
	"newmake/lang/diag"
)

// show writes diagnostics for a person, on standard error.
func (a *app) show(list diag.List) {
	if len(list) == 0 {
		return
	}
	diag.Render(a.err, list, diag.Options{Color: a.colour(a.errTerminal), ASCII: a.plain(), Fold: a.errTerminal})
}

// report is diagnostics as one JSON document, on standard output: what any command
// prints that has no answer.
type report struct {
	Format      string    `json:"format"`
	Version     string    `json:"version"`
	Errors      int       `json:"errors"`
	Warnings    int       `json:"warnings"`
	Notes       int       `json:"notes"`
	Diagnostics diag.List `json:"diagnostics"`
}

func (a *app) showJSON(list diag.List) error {
	return a.writeJSON(reportOf(list))
}

func reportOf(list diag.List) report {
	return report{
		Format: "newmake.diagnostics", Version: "1.0",
		Errors: list.Count(diag.Error), Warnings: list.Count(diag.Warning), Notes: list.Count(diag.Note),
		Diagnostics: list,
	}
}

// writeJSON writes one document to standard output.
func (a *app) writeJSON(document any) error {
	return diag.EncodeJSON(a.out, "", document)
}

// cannot ends a command that could not do what was asked: a text is at fault, or
// else the request.
func (a *app) cannot(err error, format string) error {
	if list, ok := err.(diag.List); ok {
		return a.refuse(list, format)
	}
	return err
}

// noAnswer ends a command that asks something of a batch or of words, and gets no
// answer.
func (a *app) noAnswer(list diag.List, format string) error {
	if format != "json" {
		a.show(list)
	} else if err := a.showJSON(list); err != nil {
		return usage("cannot write: %v", err)
	}
	return errSaid
}

// refuse ends a command whose text has errors.
func (a *app) refuse(list diag.List, format string) error {
	if format == "json" {
		if err := a.showJSON(list); err != nil {
			return usage("cannot write: %v", err)
		}
		return ended(list)
	}
	a.show(list)
	a.tell("%s: nothing was planned", list.Counted())
	return ended(list)
}
