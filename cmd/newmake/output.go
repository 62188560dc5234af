package main

import (
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"strings"

	"newmake/compile/show/columns"
	"newmake/compile/show/formats"
	"newmake/lang/diag"
	"newmake/lang/wholefile"
)

// write puts a result where it was asked for: standard output, or a file that
// is replaced whole or not at all. It never replaces what was read.
func (a *app) write(output string, content []byte, inputs []string) error {
	if formats.Standard(output) {
		_, err := a.out.Write(content)
		return err
	}
	if err := formats.OfPlan.NoRecipe(output); err != nil {
		return err
	}
	if info, err := os.Stat(output); err == nil {
		for _, name := range inputs {
			if in, err := os.Stat(name); err == nil && os.SameFile(in, info) {
				return usage("%s is what is being read: nothing was written", output)
			}
		}
	}
	var done wholefile.Done
	err := uninterrupted(func() (err error) {
		done, err = a.disk.Write(output, content)
		return err
	})
	switch {
	case errors.Is(err, wholefile.ErrNotPlain):
		return usage("%s is not a file: nothing was written", output)
	case errors.Is(err, fs.ErrNotExist):
		return usage("cannot write %s: its folder is not there", output)
	case err != nil:
		return usage("cannot write %s: %v", output, wholefile.Reason(err))
	case done.Same:
		a.say("%s is up to date", output)
		return nil
	}
	a.tellNames(output, done)
	a.say("wrote %s, %s", output, bytesOf(len(content)))
	return nil
}

// notes tells what a person should know as well as the answer.
func (a *app) notes(all ...string) {
	for _, note := range all {
		if note != "" {
			if a.errTerminal {
				note = strings.Join(columns.Wrap(note, columns.Page), "\n  ")
			}
			a.say("%s", note)
		}
	}
}

// tellNames says that a file had more names than the one written.
func (a *app) tellNames(name string, done wholefile.Done) {
	if done.Names > 1 {
		a.say("note: %s", otherNames(name, done.Names))
	}
}

func otherNames(name string, n int) string {
	return fmt.Sprintf("%s has %d names (hard links): the others keep the old text", name, n)
}

// bytesOf is a size in words.
func bytesOf(n int) string {
	if n < 10_000 {
		return fmt.Sprintf("%d bytes", n)
	}
	return fmt.Sprintf("%d kB", (n+500)/1000)
}

// say tells the person what was done, on standard error, unless they asked for
// quiet.
func (a *app) say(format string, args ...any) {
	if !a.quiet {
		a.tell(format, args...)
	}
}

// tell says something on standard error, quiet or not.
func (a *app) tell(format string, args ...any) { a.tellOn(a.err, format, args...) }

// tellOn writes a line for a person. What is told of comes from files, names and
// arguments: none of it reaches the terminal but as text.
func (a *app) tellOn(w io.Writer, format string, args ...any) {
	fmt.Fprintln(w, safeLines(diag.Harmless(format, args...), a.plain()))
}

// safeLines makes a text of several lines harmless to a terminal.
func safeLines(text string, ascii bool) string {
	all := strings.Split(text, "\n")
	for i, line := range all {
		cells := strings.Split(line, "\t")
		for k, cell := range cells {
			cells[k] = diag.SafeIn(cell, ascii)
		}
		all[i] = strings.Join(cells, "\t")
	}
	return strings.Join(all, "\n")
}

// stream is standard output. It keeps the first error, which whoever writes a
// line of help or of progress does not look for; the command then fails.
type stream struct {
	to  io.Writer
	err error
}

func (s *stream) Write(p []byte) (int, error) {
	if s.err != nil {
		return 0, s.err
	}
	n, err := s.to.Write(p)
	s.err = err
	return n, err
}
