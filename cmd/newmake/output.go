package main

import (
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"path/filepath"
	"strings"

	"newmake/cmd/newmake/internal/wholefile"
	"newmake/lang/diag"
	"newmake/lang/words"
)

// format is one way of writing an answer, with the ending that chooses it.
type format struct{ name, ending string }

// What a plan can be written as, what its variants can, and what an answer in
// words can.
var (
	planFormats = []format{
		{"text", ".txt"}, {"html", ".html"}, {"json", ".json"}, {"csv", ".csv"}, {"ics", ".ics"}, {"md", ".md"},
	}
	variantFormats = []format{{"text", ".txt"}, {"json", ".json"}, {"md", ".md"}}
	answerFormats  = []format{{"text", ".txt"}, {"json", ".json"}}
)

// recipeEnding is the ending of what a house's people write.
const recipeEnding = ".batch"

// noRecipe refuses to write where a house would read it as a recipe.
func noRecipe(output string, formats []format) error {
	if strings.EqualFold(filepath.Ext(output), recipeEnding) {
		return usage("%s is the ending of recipes, which are written by hand: end %s in %s", recipeEnding, output, endings(formats))
	}
	return nil
}

// formatFor finds the format from --format, or from the ending of -o, among
// those that a command knows.
func formatFor(formats []format, flag, output string) (string, error) {
	if err := noRecipe(output, formats); err != nil {
		return "", err
	}
	for _, f := range formats {
		if flag == f.name {
			return f.name, nil
		}
	}
	if flag != "" {
		return "", usage("there is no format %q: %s", flag, formatNames(formats))
	}
	if output == "" || output == "-" {
		return "text", nil
	}
	ending := strings.ToLower(filepath.Ext(output))
	for _, f := range formats {
		if ending == f.ending {
			return f.name, nil
		}
	}
	return "", usage("the ending of %s does not say what to write: end it in %s, or give --format", output, endings(formats))
}

func formatNames(formats []format) string {
	var names []string
	for _, f := range formats {
		names = append(names, f.name)
	}
	return "write " + words.Or(names)
}

func endings(formats []format) string {
	var all []string
	for _, f := range formats {
		all = append(all, f.ending)
	}
	return words.Or(all)
}

// write puts a result where it was asked for: standard output, or a file that
// is replaced whole or not at all. It never replaces what was read.
func (a *app) write(output string, content []byte, inputs []string) error {
	if output == "" || output == "-" {
		_, err := a.out.Write(content)
		return err
	}
	if err := noRecipe(output, planFormats); err != nil {
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
		return usage("cannot write %s: %v", output, reason(err))
	case done.Same:
		a.say("%s is up to date", output)
		return nil
	}
	a.tellNames(output, done)
	a.say("wrote %s, %s", output, size(len(content)))
	return nil
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

func size(n int) string {
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
	fmt.Fprintln(w, safeLines(fmt.Sprintf(format, safeArgs(args)...), a.plain()))
}

// safeArgs makes what is put into a message harmless: a line break in a file's
// name is none in the message.
func safeArgs(args []any) []any {
	out := make([]any, len(args))
	for i, arg := range args {
		switch arg := arg.(type) {
		case string:
			out[i] = diag.Safe(arg, false)
		case error:
			out[i] = diag.Safe(arg.Error(), false)
		default:
			out[i] = arg
		}
	}
	return out
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
