package assist

import (
	"errors"
	"fmt"
	"slices"
	"strings"

	"newmake/lang"
	"newmake/lang/schema"
	"newmake/lang/tree"
)

// Edit is a text that takes the place of another.
type Edit struct {
	At   Place
	Text string
}

// Renameable gives the name at a place, if it is one that the house declares; ""
// where no name stands. The error says why a name is not.
func (s *Snapshot) Renameable(offset int) (Place, string, error) {
	p, ok := s.at(offset)
	if !ok || p.cap == nil {
		return Place{}, "", nil
	}
	n, _, ok := nameOf(p.path, p.cap)
	switch {
	case !ok:
		return Place{}, "", nil
	case len(s.Definition(offset)) == 0:
		return Place{}, "", fmt.Errorf("the house does not declare the %s %q: it is the library's", n.sort, p.cap.Text())
	}
	return p.cap.At(), p.cap.Text(), nil
}

// Rename gives the edits by which what is named at a place is called otherwise in the
// whole house, in the order of files and lines.
func (s *Snapshot) Rename(offset int, to string) ([]Edit, error) {
	_, old, err := s.Renameable(offset)
	switch {
	case err != nil:
		return nil, err
	case old == "":
		return nil, errors.New("no name stands here")
	}
	p, _ := s.at(offset)
	n, _, _ := nameOf(p.path, p.cap)
	if to = strings.TrimSpace(to); to == "" || strings.ContainsAny(to, "\"\r\n") {
		return nil, fmt.Errorf("a name is one line of text without quotes")
	}
	if key := tree.Key(to); key != n.key && slices.ContainsFunc(s.names(n.sort), func(other string) bool { return tree.Key(other) == key }) {
		return nil, fmt.Errorf("there is a %s %q already", n.sort, to)
	}
	var out []Edit
	for _, at := range s.References(offset, true) {
		out = append(out, Edit{at, named(at.Text(), to)})
	}
	if at, ok := s.untold(n, old, out); ok {
		line, _ := at.Position()
		return nil, fmt.Errorf("%q also stands at %s line %d, where it may be another: rename it by hand", old, at.Src.Name, line)
	}
	return out, nil
}

// named is a name as it is written in the place of another: in quotes, unless it is a
// word in the place of a word.
func named(was, to string) string {
	toks := lang.Tokens([]byte(to))
	if !strings.HasPrefix(was, `"`) && len(toks) == 1 && toks[0].Kind == lang.TokWord {
		return to
	}
	return `"` + to + `"`
}

// untold finds the first place where the name of a record stands and is not known to
// be that record: what is poured may be of a run, a cask, or a tank.
func (s *Snapshot) untold(n name, old string, edits []Edit) (Place, bool) {
	if f := schema.Language.Find(n.sort); f == nil || !f.Past {
		return Place{}, false
	}
	for _, f := range s.House.Files {
		for _, t := range lang.Tokens(f.Source.Text) {
			text := strings.Trim(string(f.Source.Text[t.Start:t.End]), `"`)
			if t.Kind != lang.TokString && t.Kind != lang.TokWord || tree.Key(text) != tree.Key(old) {
				continue
			}
			at := f.Source.Span(int(t.Start), int(t.End))
			if !slices.ContainsFunc(edits, func(e Edit) bool { return e.At.Src == at.Src && e.At.Start <= at.Start && at.End <= e.At.End }) {
				return at, true
			}
		}
	}
	return Place{}, false
}
