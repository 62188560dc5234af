package main

import (
	"fmt"
	"io"
	"os"
	"path/filepath"
	"strings"

	"newmake/lang/check"
	"newmake/lang/diag"
)

// standardInput is how a person names it.
const standardInput = "-"

// source is what a command was pointed at: a file, a folder, standard input, or
// the house around the working directory.
type source struct {
	house *check.House
	path  string // as check.Load takes it
	label string // as the person wrote it
}

// load reads the house of a path. Diagnostics of a path that has no house come
// as a diag.List.
func (a *app) load(path, stdin string) (*source, error) {
	o := check.Options{}
	s := &source{path: path, label: path}
	if path == standardInput {
		if a.inTerminal {
			return nil, usage("standard input is a terminal: give a file, or pipe a batch in")
		}
		text, err := io.ReadAll(a.in)
		if err != nil {
			return nil, usage("cannot read standard input: %v", err)
		}
		if stdin == "" {
			stdin = "standard-input.batch"
		}
		s.path, s.label = stdin, stdin
		o.Overlay = map[string][]byte{stdin: text}
	}
	h, err := check.Load(s.path, o)
	if err != nil {
		if list, ok := err.(diag.List); ok {
			return nil, list
		}
		return nil, usage("cannot read %s: %v", s.label, reason(err))
	}
	s.house = h
	return s, nil
}

// reason is why a file cannot be read, without the path that is said already.
func reason(err error) string {
	switch {
	case os.IsNotExist(err):
		return "there is no such file"
	case os.IsPermission(err):
		return "permission denied"
	}
	return err.Error()
}

// find turns an argument into a path, or into a batch of the house around the
// working directory.
func (a *app) find(arg string) (path, batch string) {
	if arg == "" {
		return ".", ""
	}
	if arg == standardInput {
		return arg, ""
	}
	if _, err := os.Stat(arg); err == nil || strings.HasSuffix(arg, ".batch") || strings.ContainsRune(arg, filepath.Separator) {
		return arg, ""
	}
	return ".", arg
}

// choose finds the batch that is meant: by its name or by its name in the
// shape of a file name (ferry-landing). With none named it is the first.
func (a *app) choose(s *source, name string) (string, error) {
	all := s.house.BatchesIn(s.path)
	if name != "" {
		for _, known := range s.house.Batches() {
			if strings.EqualFold(known, name) || fileName(known) == fileName(name) {
				return known, nil
			}
		}
		return name, nil // the house says that there is none, and which is near
	}
	if len(all) == 0 {
		return "", nil
	}
	if len(all) > 1 {
		a.say("%s holds %d batches; this is %q. The others: --batch %s", s.label, len(all), all[0], quoteAll(all[1:]))
	}
	return all[0], nil
}

// fileName is a name as one would call its file: Ferry Landing, more rye is
// ferry-landing-more-rye.
func fileName(name string) string {
	words := strings.FieldsFunc(strings.ToLower(name), func(r rune) bool {
		return !(r >= 'a' && r <= 'z' || r >= '0' && r <= '9' || r > 0x7f)
	})
	return strings.Join(words, "-")
}

func quoteAll(names []string) string {
	out := make([]string, len(names))
	for i, n := range names {
		out[i] = fmt.Sprintf("%q", n)
	}
	return strings.Join(out, ", ")
}

// declares says if a source that is one file has anything in it: a house.batch
// or a file of stock need not hold a batch.
func (s *source) declares() bool {
	at, err := filepath.Abs(s.path)
	if err != nil {
		return false
	}
	for _, f := range s.house.Files {
		if name, err := filepath.Abs(f.Source.Name); err == nil && name == at {
			return len(f.Stmts) > 0
		}
	}
	return false
}

// noBatch says that there is nothing to compute.
func noBatch(s *source) diag.Diagnostic {
	return diag.Diagnostic{
		Code: diag.CodeNoBatch, Summary: "there is no batch in " + s.label,
		Help: "a batch begins with `batch \"Name\" {`",
	}
}
