// Command newmake checks, computes and plans whiskey batches written as text.
package main

import (
	"io"
	"os"

	"github.com/spf13/cobra"
	"golang.org/x/term"

	"newmake/lang/wholefile"
)

func main() {
	collectLate()
	os.Exit(run(terminal(), os.Args[1:]))
}

// app is what a command may touch of the world: its streams and environment.
// Tests make their own.
type app struct {
	in          io.Reader
	out, err    io.Writer
	inTerminal  bool
	outTerminal bool
	errTerminal bool
	env         func(string) string
	disk        wholefile.Disk

	quiet bool
	color string // auto, always, never
	ascii bool

	noLearned bool // leave out what the house has learned
}

// terminal is the app of a process.
func terminal() *app {
	return &app{
		in: os.Stdin, out: os.Stdout, err: os.Stderr,
		inTerminal:  term.IsTerminal(int(os.Stdin.Fd())),
		outTerminal: term.IsTerminal(int(os.Stdout.Fd())),
		errTerminal: term.IsTerminal(int(os.Stderr.Fd())),
		env:         os.Getenv,
	}
}

// run does what the arguments ask and gives the exit code.
func run(a *app, args []string) int {
	return a.execute(root(a), args)
}

// execute runs a command. Nothing that goes wrong inside, a panic included,
// leaves without an exit code and words for it.
func (a *app) execute(root *cobra.Command, args []string) (code int) {
	defer func() {
		if fault := recover(); fault != nil {
			code = a.fault(fault)
		}
	}()
	out := &stream{to: a.out}
	a.out = out
	root.SetArgs(spoken(root, args))
	root.SetIn(a.in)
	root.SetOut(a.out)
	root.SetErr(a.err)
	err := root.Execute()
	return a.exitCode(err, out.err)
}
