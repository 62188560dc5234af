package main

import (
	"fmt"
	"io"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"unicode/utf8"

	"golang.org/x/text/unicode/norm"

	"newmake/cmd/newmake/internal/wholefile"
	"newmake/lang"
	"newmake/lang/check"
	"newmake/lang/diag"
)

// standardInput is how a person names it.
const standardInput = "-"

// unnamedInput is what standard input is called if no --stdin-filename says what
// file it stands for.
const unnamedInput = "standard-input" + ending

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
		text, err := io.ReadAll(io.LimitReader(a.in, lang.MaxFileBytes+1)) // one more than a file may have, and it is refused
		if err != nil {
			return nil, usage("cannot read standard input: %v", err)
		}
		if stdin == "" {
			stdin = unnamedInput
		}
		s.path, s.label = stdin, stdin
		o.Overlay = map[string][]byte{stdin: text}
	} else if err := readable(path); err != nil {
		return nil, err
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

// standsFor says, where standard input holds a batch that a file of the house has
// too, how to say that it is that file.
func standsFor(list diag.List) {
	for i := range list {
		d := &list[i]
		if d.Code != diag.CodeDuplicate || len(d.Related) != 1 || d.At.Src == nil || d.Related[0].At.Src == nil {
			continue
		}
		in, other := d.At.Src.Name, d.Related[0].At.Src.Name
		if other == unnamedInput {
			in, other = other, in
		}
		if in == unnamedInput && other != unnamedInput {
			d.Help = fmt.Sprintf("if standard input stands for that file, say so: --stdin-filename %s", other)
		}
	}
}

// reason is why a file cannot be read, without the path that is said already.
func reason(err error) string {
	switch {
	case os.IsNotExist(err):
		return "there is no such file"
	case os.IsPermission(err):
		return "permission denied"
	}
	return wholefile.Bare(err).Error()
}

// open finds what an argument means, and reads its house. The batch is the one
// that is asked for by name, or the one that the argument names, or "".
func (a *app) open(arg, asked, stdin string) (*source, string, error) {
	path, batch := a.find(arg)
	if asked != "" {
		batch = asked
	}
	src, err := a.load(path, stdin)
	return src, batch, err
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

// readable says what a path on the command line is, if it is nothing that is
// read: only folders and files that end in .batch are.
func readable(path string) error {
	info, err := os.Stat(path)
	switch {
	case err != nil:
		return usage("cannot read %s: %v", path, reason(err))
	case !utf8.ValidString(filepath.Base(path)):
		return usage("cannot read %s: its name is not UTF-8, as no other system could keep it; rename it", path)
	case info.IsDir() || filepath.Ext(path) == ending:
		return nil
	case strings.EqualFold(filepath.Ext(path), ending):
		return usage("%s does not end in %s in small letters, so no house reads it: rename it", path, ending)
	}
	return usage("%s is no %s file", path, ending)
}

// othersShown is how many names of a list are said.
const othersShown = 8

// choose finds the batch that is meant: by its name; if there is none of that
// name, without regard to capitals, or by the name in the shape of a file name
// (ferry-landing), first among the file's own batches and then in the house. With
// none named it is the first.
func (a *app) choose(s *source, name string) (string, error) {
	own := s.house.BatchesIn(s.path)
	if name == "" {
		if len(own) == 0 {
			return "", nil
		}
		if others := own[1:]; len(others) > 0 {
			a.say("%s holds %d batches; this is %q. The others: --batch %s", s.label, len(own), own[0], quoteAll(others))
		}
		return own[0], nil
	}
	all := s.house.Batches()
	exact := func(a, b string) bool { return norm.NFC.String(a) == norm.NFC.String(b) }
	loose := func(a, b string) bool { return fileName(a) != "" && fileName(a) == fileName(b) }
	for _, look := range []struct {
		among []string
		alike func(a, b string) bool
	}{{own, exact}, {all, exact}, {own, strings.EqualFold}, {own, loose}, {all, strings.EqualFold}, {all, loose}} {
		found := slices.DeleteFunc(slices.Clone(look.among), func(known string) bool { return !look.alike(known, name) })
		switch len(found) {
		case 0:
		case 1:
			return found[0], nil
		default:
			return "", usage("%q may be any of %d batches: write the whole name, one of %s", name, len(found), quoteAll(found))
		}
	}
	return name, nil // the house says that there is none, and which is near
}

// fileName is a name as one would call its file: Ferry Landing, more rye is
// ferry-landing-more-rye.
func fileName(name string) string {
	words := strings.FieldsFunc(strings.ToLower(name), func(r rune) bool {
		return !(r >= 'a' && r <= 'z' || r >= '0' && r <= '9' || r > 0x7f)
	})
	return strings.Join(words, "-")
}

// quoteAll lists names, the first few of many.
func quoteAll(names []string) string {
	shown := names[:min(len(names), othersShown)]
	out := make([]string, len(shown))
	for i, n := range shown {
		out[i] = fmt.Sprintf("%q", n)
	}
	list := strings.Join(out, ", ")
	if more := len(names) - len(shown); more > 0 {
		list += fmt.Sprintf(" and %d more", more)
	}
	return list
}

// noBatch says that there is nothing to compute.
func noBatch(s *source) diag.Diagnostic {
	return diag.Diagnostic{
		Code: diag.CodeNoBatch, Summary: "there is no batch in " + s.label,
		Help: "a batch begins with `batch \"Name\" {`",
	}
}
