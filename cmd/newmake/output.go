package main

import (
	"bytes"
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"strings"

	"github.com/google/renameio/v2"
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
	return "write " + orWords(names)
}

func endings(formats []format) string {
	var all []string
	for _, f := range formats {
		all = append(all, f.ending)
	}
	return orWords(all)
}

// orWords joins words as one speaks them: a, b or c.
func orWords(words []string) string {
	if n := len(words); n > 1 {
		return strings.Join(words[:n-1], ", ") + " or " + words[n-1]
	}
	return strings.Join(words, "")
}

// write puts a result where it was asked for: standard output, or a file that
// is replaced whole or not at all. It never replaces what was read.
func (a *app) write(output string, content []byte, inputs []string) error {
	if output == "" || output == "-" {
		if _, err := a.out.Write(content); err != nil {
			return usage("cannot write: %v", err)
		}
		return nil
	}
	if err := noRecipe(output, planFormats); err != nil {
		return err
	}
	target, err := target(output)
	if err != nil {
		return usage("cannot write %s: %v", output, err)
	}
	if info, err := os.Stat(target); err == nil {
		if !info.Mode().IsRegular() {
			return usage("%s is not a file: nothing was written", output)
		}
		for _, name := range inputs {
			if in, err := os.Stat(name); err == nil && os.SameFile(in, info) {
				return usage("%s is what is being read: nothing was written", output)
			}
		}
		if old, err := os.ReadFile(target); err == nil && bytes.Equal(old, content) {
			a.say("%s is up to date", output)
			return nil
		}
	}
	if err := renameio.WriteFile(target, content, 0o644, renameio.WithExistingPermissions()); err != nil {
		return usage("cannot write %s: %v", output, withoutName(err))
	}
	a.say("wrote %s, %s", output, size(len(content)))
	return nil
}

// withoutName is an error of a file without the file's name, which is that of a
// temporary one.
func withoutName(err error) error {
	var path *fs.PathError
	if errors.As(err, &path) {
		return path.Err
	}
	var link *os.LinkError
	if errors.As(err, &link) {
		return link.Err
	}
	return err
}

// target follows links, so that a link stays one and what it leads to is
// replaced.
func target(output string) (string, error) {
	to, err := filepath.EvalSymlinks(output)
	if os.IsNotExist(err) {
		return filepath.Abs(output)
	}
	return to, err
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
		fmt.Fprintf(a.err, format+"\n", args...)
	}
}
