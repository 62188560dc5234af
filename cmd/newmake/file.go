package main

import (
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"path/filepath"
	"strings"

	"github.com/pmezard/go-difflib/difflib"

	"newmake/cmd/newmake/internal/wholefile"
	"newmake/lang"
	"newmake/lang/diag"
)

const ending = ".batch"

// file is a text that is to be written back where it came from.
type file struct {
	name   string // as the person knows it
	target string // the file itself, links followed; "" for standard input
	before []byte // as it was read
}

// filesOf gives the batch files of an argument in order: of a folder all below
// it, but for hidden folders and for links, whose targets have their own place.
func (a *app) filesOf(arg, stdin string) ([]file, error) {
	if arg == standardInput {
		if a.inTerminal {
			return nil, usage("standard input is a terminal: give a file, or pipe a batch in")
		}
		text, err := io.ReadAll(io.LimitReader(a.in, lang.MaxFileBytes+1))
		if err != nil {
			return nil, usage("cannot read standard input: %v", err)
		}
		if stdin == "" {
			stdin = "standard-input" + ending
		}
		return []file{{name: stdin, before: text}}, nil
	}
	target, err := filepath.EvalSymlinks(arg)
	if err != nil {
		return nil, usage("cannot read %s: %v", arg, reason(err))
	}
	info, err := os.Stat(target)
	switch {
	case err != nil:
		return nil, usage("cannot read %s: %v", arg, reason(err))
	case !info.IsDir() && filepath.Ext(arg) != ending:
		return nil, usage("%s is no %s file", arg, ending)
	case !info.IsDir():
		return []file{{name: arg, target: target}}, nil
	}
	var out []file
	err = filepath.WalkDir(arg, func(p string, d fs.DirEntry, err error) error {
		switch {
		case err != nil:
			return err
		case d.IsDir() && p != arg && strings.HasPrefix(d.Name(), "."):
			return fs.SkipDir
		case d.Type().IsRegular() && filepath.Ext(p) == ending:
			out = append(out, file{name: p, target: p})
		}
		return nil
	})
	if err != nil {
		return nil, usage("cannot read %s: %v", arg, err)
	}
	return out, nil
}

// onlyOnce leaves out what was named before.
func onlyOnce(all []laid) []laid {
	seen := map[string]bool{}
	out := all[:0]
	for _, l := range all {
		at, err := filepath.Abs(l.target)
		if err == nil && seen[at] {
			continue
		}
		seen[at] = true
		out = append(out, l)
	}
	return out
}

// readText reads the file. What is no plain file is not opened: a pipe would
// keep us waiting.
func (f *file) readText() error {
	info, err := os.Stat(f.target)
	if err != nil {
		return err
	}
	if !info.Mode().IsRegular() {
		return fmt.Errorf("it is not a plain file")
	}
	r, err := os.Open(f.target)
	if err != nil {
		return err
	}
	defer r.Close()
	f.before, err = io.ReadAll(io.LimitReader(r, lang.MaxFileBytes+1))
	return err
}

// replace puts another text in the file's place, whole or not at all, and says
// how many names the file had. It refuses if the file is no longer what was read.
func (f *file) replace(disk wholefile.Disk, text []byte) (names int, err error) {
	var done wholefile.Done
	err = uninterrupted(func() (err error) {
		done, err = disk.Replace(f.target, f.before, text)
		return err
	})
	switch {
	case errors.Is(err, wholefile.ErrChanged):
		return 0, fmt.Errorf("%s was changed by something else meanwhile: it was left alone", f.name)
	case err != nil:
		return 0, fmt.Errorf("cannot write %s: %v", f.name, reason(err))
	}
	return done.Names, nil
}

// diff is the unified difference between the text as it was and as it is laid
// out.
func (l *laid) diff() string {
	out, _ := difflib.GetUnifiedDiffString(difflib.UnifiedDiff{ // it fails only where it writes
		A: lines(l.before), B: lines(l.after), FromFile: diag.Safe(l.name, false), ToFile: diag.Safe(l.name, false), Context: 3,
	})
	return out
}

// lines cuts a text after each line. A last line without an end says so, as diff
// does.
func lines(text []byte) []string {
	all := strings.SplitAfter(string(text), "\n")
	last := len(all) - 1
	if all[last] == "" {
		return all[:last]
	}
	all[last] += "\n\\ No newline at end of file\n"
	return all
}

// safeLines makes a text of several lines harmless to a terminal.
func safeLines(text string, ascii bool) string {
	all := strings.Split(text, "\n")
	for i, line := range all {
		cells := strings.Split(line, "\t")
		for k, cell := range cells {
			cells[k] = diag.Safe(cell, ascii)
		}
		all[i] = strings.Join(cells, "\t")
	}
	return strings.Join(all, "\n")
}

func tooLarge(name string) diag.List {
	return diag.List{{
		Code: diag.CodeFileTooLarge, Summary: name + " is larger than 4 MiB, and was not read",
		Help: "a recipe is a few pages; is this the right file?", At: diag.NewSource(name, nil).Span(0, 0),
	}}
}
