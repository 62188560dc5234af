// Package sides finds what is to be compared: two files, two batches by name, a
// house at two revisions of its repository, or one revision after the other. It
// pairs the batches of the two sides and has each pair compared.
package sides

import (
	"path/filepath"
	"slices"
	"strings"

	"newmake/compile/front"
	"newmake/lang/check"
	"newmake/lang/diag"
	"newmake/lang/recipe"
)

// Side is one side of a comparison: a house, and the batches of it that are
// meant.
type Side struct {
	house *check.House
	names []string // those that are meant, in order
	all   []string // of the house
	label string
	rev   string // the revision it is of; none is the files as they are
	whole bool   // the house as a whole, and not a file of it
	gone  bool   // there is no such file or folder
	moves bool   // the other side is the same house at another time: a batch may have moved
}

func (s *Side) batch(name string) (*recipe.Batch, diag.List) { return s.house.Batch(name) }

// labelOf says where a batch of the selection stands. One that has moved since stood in
// another file than the one that was asked for.
func (s *Side) labelOf(name string) string {
	if !s.whole && slices.Contains(s.names, name) {
		return s.label
	}
	for _, f := range s.house.Files {
		if slices.Contains(s.house.BatchesIn(f.Source.Name), name) {
			return s.pasted(f.Source.Name)
		}
	}
	return s.label
}

// pasted is the name of a file of a revision as git takes it: the top of the
// repository has no slash.
func (s *Side) pasted(name string) string {
	if below, ok := strings.CutPrefix(filepath.ToSlash(name), s.rev+":/"); ok && s.rev != "" {
		return s.rev + ":" + below
	}
	return name
}

// Inputs are the files of the side's house.
func (s *Side) Inputs() []string {
	return (&front.Source{House: s.house}).Inputs()
}

// when names the time of a side.
func (s *Side) when() string {
	if s.rev == "" {
		return "now"
	}
	return "at " + s.rev
}

// find knows a batch by its name, or by its name as a file would have it.
func (s *Side) find(name string) (string, bool) {
	for _, n := range s.all {
		if strings.EqualFold(n, name) || front.FileName(n) == front.FileName(name) {
			return n, true
		}
	}
	return name, false
}

// only is the selection of one batch.
func (s *Side) only(name string) *Side {
	out := *s
	out.names, out.whole = []string{name}, true
	return &out
}

func sideOf(h *check.House, at, label string, whole bool) *Side {
	s := &Side{house: h, all: h.Batches(), label: label, whole: whole}
	if whole {
		s.names = s.all
	} else {
		s.names = h.BatchesIn(at)
	}
	return s
}
