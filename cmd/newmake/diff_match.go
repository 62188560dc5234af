package main

import (
	"path/filepath"
	"slices"
	"strings"

	"newmake/compile/ask/compare"
	"newmake/compile/measure"
	"newmake/lang/check"
	"newmake/lang/diag"
	"newmake/lang/recipe"
)

// selection is one side of a comparison: a house, and the batches of it that are
// meant.
type selection struct {
	house *check.House
	names []string // those that are meant, in order
	all   []string // of the house
	label string
	rev   string // the revision it is of; none is the files as they are
	whole bool   // the house as a whole, and not a file of it
	moves bool   // the other side is the same house at another time: a batch may have moved
}

func (s *selection) batch(name string) (*recipe.Batch, diag.List) { return s.house.Batch(name) }

// labelOf says where a batch of the selection stands.
func (s *selection) labelOf(name string) string {
	if !s.whole {
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
func (s *selection) pasted(name string) string {
	if below, ok := strings.CutPrefix(filepath.ToSlash(name), s.rev+":/"); ok && s.rev != "" {
		return s.rev + ":" + below
	}
	return name
}

func (s *selection) inputs() []string {
	var out []string
	for _, f := range s.house.Files {
		out = append(out, f.Source.Name)
	}
	return out
}

// find knows a batch by its name, or by its name as a file would have it.
func (s *selection) find(name string) (string, bool) {
	for _, n := range s.all {
		if strings.EqualFold(n, name) || fileName(n) == fileName(name) {
			return n, true
		}
	}
	return name, false
}

// only is the selection of one batch.
func (s *selection) only(name string) *selection {
	out := *s
	out.names, out.whole = []string{name}, true
	return &out
}

func selectionOf(h *check.House, at, label string, whole bool) *selection {
	s := &selection{house: h, all: h.Batches(), label: label, whole: whole}
	if whole {
		s.names = s.all
	} else {
		s.names = h.BatchesIn(at)
	}
	return s
}

// match pairs the batches of two selections: by name, wherever in the house they
// stand; then those that are the same but for their name; and what is left, when
// each side has one. The order is that of the new side.
func match(old, new *selection) (pairs [][2]string, removed, added []string) {
	if len(old.names) == 1 && len(new.names) == 1 && !old.moves {
		return [][2]string{{old.names[0], new.names[0]}}, nil, nil
	}
	taken := map[string]bool{}
	pair := func(o, n string) { pairs, taken[o] = append(pairs, [2]string{o, n}), true }
	var left []string
	for _, n := range new.names {
		if o, ok := same(old, n); ok {
			pair(o, n)
		} else {
			left = append(left, n)
		}
	}
	for _, o := range old.names {
		if n, ok := same(new, o); ok && !taken[o] {
			pair(o, n) // it stands in another file now
		}
	}
	if len(left) == 1 && len(old.names) == 1 && len(pairs) == 0 { // one of each, by another name
		if _, still := same(new, old.names[0]); !still {
			pair(old.names[0], left[0])
			left = nil
		}
	}
	for _, n := range left {
		if o := alikeBatch(old, new, n, taken); o != "" {
			pair(o, n)
		} else {
			added = append(added, n)
		}
	}
	for _, o := range old.names {
		if !taken[o] {
			removed = append(removed, o)
		}
	}
	if len(pairs) == 0 && len(removed) > 0 && len(added) > 0 { // two files with nothing in common
		pair(removed[0], added[0])
		removed, added = removed[1:], added[1:]
	}
	return pairs, removed, added
}

func same(in *selection, name string) (string, bool) {
	known := in.names
	if in.moves {
		known = in.all
	}
	for _, n := range known {
		if strings.EqualFold(n, name) {
			return n, true
		}
	}
	return "", false
}

// alikeBatch finds a batch of the old side that is the new one under another name.
func alikeBatch(old, new *selection, name string, taken map[string]bool) string {
	b, _ := new.batch(name)
	if b == nil {
		return ""
	}
	for _, o := range old.names {
		if _, still := same(new, o); taken[o] || still {
			continue
		}
		if a, _ := old.batch(o); a != nil && compare.Find(a, b, measure.US).Same() {
			return o
		}
	}
	return ""
}
