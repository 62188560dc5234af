package main

import (
	"errors"
	"fmt"
	"os"
	"runtime/debug"
	"slices"

	"newmake/lang/diag"
	"newmake/lang/wholefile"
)

// Exit codes are a promise to scripts.
const (
	exitOK    = 0
	exitError = 1  // the text has errors, or the thing asked for isn't so
	exitUsage = 2  // wrong use, unreadable file, cannot write
	exitFault = 70 // a fault in newmake

	exitInterrupt = 130 // Ctrl-C
)

// exit is an error that knows its code. An empty message has been said already.
type exit struct {
	code    int
	message string
}

func (e *exit) Error() string { return e.message }

func usage(format string, args ...any) error {
	return &exit{exitUsage, diag.Harmless(format, args...)}
}

// errSaid ends a command whose diagnostics have been printed.
var errSaid = &exit{code: exitError}

// ended ends a command whose diagnostics have been printed: with 2 if a file could
// not be read, for then nobody knows what its text would have said.
func ended(list diag.List) error {
	if slices.ContainsFunc(list, func(d diag.Diagnostic) bool { return d.Code == diag.CodeUnreadable }) {
		return &exit{code: exitUsage}
	}
	return errSaid
}

// exitCode says what is to be said of an error and gives its code. What cobra
// finds wrong with the arguments is wrong use. Output that was lost is an error
// whatever else came of the command.
func (a *app) exitCode(err, lost error) int {
	if lost != nil {
		err = usage("cannot write to standard output: %v", wholefile.Reason(lost))
	}
	if err == nil {
		return exitOK
	}
	e := &exit{code: exitUsage, message: diag.Safe(err.Error())}
	var refused *diag.Refusal
	if errors.As(err, &refused) {
		e.message = refused.Error()
	}
	errors.As(err, &e)
	if e.message != "" {
		fmt.Fprintln(a.err, safeLines("newmake: "+e.message, a.plain()))
	}
	return e.code
}

// fault reports a panic without showing its insides: they go to a file.
func (a *app) fault(what any) int {
	fmt.Fprintln(a.err, "newmake: this is a fault in newmake, not in your text; nothing was written.")
	f, err := os.CreateTemp("", "newmake-fault-*.txt")
	if err == nil {
		_, err = fmt.Fprintf(f, "%s\n\n%v\n\n%s", versionLine(), what, debug.Stack())
		err = errors.Join(err, f.Close())
	}
	if err != nil {
		if f != nil {
			os.Remove(f.Name())
		}
		a.tell("The details could not be kept: %v", wholefile.Reason(err))
		return exitFault
	}
	a.tell("Please report it with the text that caused it and this file: %s", f.Name())
	return exitFault
}
