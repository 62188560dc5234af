// Package front is what stands behind every front end: the command line, an
// editor's language server, a browser. It loads a house from the disk or from any
// file system, with the texts that an editor holds unsaved laid over it; it checks
// what is asked for; and it hands out batches, recipes and plans. Since all go
// through here, none of them says of a batch what another does not.
//
// What keeps a batch from being planned is always said by a check of its file.
//
//	src, err := front.Load(front.Place{Path: "ferry-landing.batch"})
//	made, err := src.Plan("Ferry Landing", nil)
//
// An error is a diag.List where a text is at fault, and else a diag.Refusal.
// Nothing here writes, asks or prints.
package front

import (
	"io/fs"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"unicode/utf8"

	"newmake/compile/constants"
	"newmake/lang/check"
	"newmake/lang/diag"
	"newmake/lang/house"
	"newmake/lang/tree"
	"newmake/lang/wholefile"
)

// Ending is that of the files that a house reads.
const Ending = ".batch"

// Unnamed is what a text is called that is given without the name of the file it
// stands for.
const Unnamed = "standard-input" + Ending

// Place is where a house is looked for.
type Place struct {
	Path  string // a file, or a folder, at or above which a house begins
	Label string // how the person wrote it; "" is the path

	// Overlay gives texts that stand for files, by their paths: what an editor
	// holds unsaved, or what came on standard input.
	Overlay map[string][]byte

	// FS is the folder of the house where it is not on the disk: the index of a
	// repository, a browser's memory. Root is what that folder is called; Path
	// begins with it, and the keys of Overlay are below it, with slashes.
	FS   fs.FS
	Root string

	// NoLearned leaves out what the house has learned from its runs.
	NoLearned bool
}

// Source is a house that was loaded, and the part of it that is meant.
type Source struct {
	House *check.House
	Path  string // a file or folder of the house
	Label string // how the person wrote it

	noLearned bool
	saved     *Source // of which this is a trial of other values; nil if it is none
}

// Load reads the house of a place.
func Load(p Place) (*Source, error) {
	s := &Source{Path: p.Path, Label: p.Label}
	if s.Label == "" {
		s.Label = p.Path
	}
	o := check.Options{Overlay: p.Overlay}
	var err error
	switch {
	case p.FS != nil:
		s.House, err = check.LoadFS(p.FS, p.Root, o)
	default:
		if err := Readable(p); err != nil {
			return nil, err
		}
		s.House, err = check.Load(p.Path, o)
	}
	if list, ok := err.(diag.List); ok {
		return nil, list
	}
	if err != nil {
		return nil, diag.Refuse("cannot read %s: %v", s.Label, wholefile.Reason(err))
	}
	s.noLearned = p.NoLearned
	s.teach()
	return s, unnamed(s.House)
}

// teach has the house's batches use what was learned from its runs.
func (s *Source) teach() {
	if !s.noLearned {
		s.House.Teach = constants.Taught
	}
}

// unnamed refuses a text without a name that is a file of the house once more:
// every name in it would be taken.
func unnamed(h *check.House) error {
	for _, f := range h.Files {
		if filepath.Base(f.Source.Name) != Unnamed {
			continue
		}
		for _, d := range f.Decls {
			for _, other := range h.Files {
				if other != f && slices.ContainsFunc(other.Decls, func(o *house.Decl) bool { return twice(d, o) }) {
					return diag.Refuse("standard input has the %s %q, as %s has: if it stands for that file, write --stdin-filename %s or give the file itself; else give it another name",
						d.Field.Name, d.Name, other.Source.Name, other.Source.Name)
				}
			}
		}
	}
	return nil
}

// twice reports whether two declarations have a name that only one may have.
func twice(a, b *house.Decl) bool {
	return a.Field == b.Field && a.Name != "" && tree.Key(a.Name) == tree.Key(b.Name)
}

// unsaved reports whether a text of the overlay stands for the path itself.
func (p Place) unsaved() bool {
	if p.Overlay[p.Path] != nil {
		return true
	}
	at, err := filepath.Abs(p.Path)
	if err != nil {
		return false
	}
	for name := range p.Overlay {
		if other, err := filepath.Abs(name); err == nil && other == at {
			return true
		}
	}
	return false
}

// Readable says what the path of a place is, if it is nothing that is read: only
// folders and files that end in .batch are.
func Readable(p Place) error {
	if p.FS != nil || p.unsaved() {
		return nil
	}
	path := p.Path
	info, err := os.Stat(path)
	switch {
	case err != nil:
		return diag.Refuse("cannot read %s: %v", path, wholefile.Reason(err))
	case !utf8.ValidString(filepath.Base(path)):
		return diag.Refuse("cannot read %s: its name is not UTF-8, as no other system could keep it; rename it", path)
	case info.IsDir() || filepath.Ext(path) == Ending:
		return nil
	case strings.EqualFold(filepath.Ext(path), Ending):
		return diag.Refuse("%s does not end in %s in small letters, so no house reads it: rename it", path, Ending)
	}
	return diag.Refuse("%s is no %s file", path, Ending)
}

// Inputs are the files of the house: none of them is ever written over.
func (s *Source) Inputs() []string {
	var out []string
	for _, f := range s.House.Files {
		out = append(out, f.Source.Name)
	}
	return out
}

// unsaved is the text of the source's own file, by its path, to be laid over the
// house when it is loaded again: it may not be on the disk.
func (s *Source) unsaved() map[string][]byte {
	for _, f := range s.House.Files {
		if filepath.Clean(f.Source.Name) == filepath.Clean(s.Path) {
			return map[string][]byte{s.Path: f.Source.Text}
		}
	}
	return nil
}

// Holds reports whether a file of a name, which need not be there, would be of the house.
func (s *Source) Holds(name string) bool {
	rel, err := filepath.Rel(absolute(s.House.Root), absolute(name))
	return err == nil && filepath.IsLocal(rel)
}

func absolute(name string) string {
	abs, err := filepath.Abs(name)
	if err != nil {
		return name
	}
	if real, err := filepath.EvalSymlinks(abs); err == nil {
		return real
	}
	return abs
}
