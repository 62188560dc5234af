package front

import (
	"fmt"
	"slices"
	"strings"

	"newmake/lang/composed"
	"newmake/lang/diag"
)

// othersShown is how many names of a list are said.
const othersShown = 8

// Choose finds the batch that is meant: by its name; if there is none of that
// name, without regard to capitals, or by the name in the shape of a file name
// (ferry-landing), first among the file's own batches and then in the house. With
// none named it is the first, and note says that there are others. The name is ""
// if there is no batch at all.
func (s *Source) Choose(name string) (chosen, note string, err error) {
	own := s.House.BatchesIn(s.Path)
	if name == "" {
		if len(own) == 0 {
			return "", "", nil
		}
		if others := own[1:]; len(others) > 0 {
			note = diag.Harmless("%s holds %d batches; this is %q. The others: --batch %s", s.Label, len(own), own[0], QuoteAll(others))
		}
		return own[0], note, nil
	}
	all := s.House.Batches()
	exact := func(a, b string) bool { return composed.Form(a) == composed.Form(b) }
	loose := func(a, b string) bool { return FileName(a) != "" && FileName(a) == FileName(b) }
	for _, look := range []struct {
		among []string
		alike func(a, b string) bool
	}{{own, exact}, {all, exact}, {own, strings.EqualFold}, {own, loose}, {all, strings.EqualFold}, {all, loose}} {
		found := slices.DeleteFunc(slices.Clone(look.among), func(known string) bool { return !look.alike(known, name) })
		switch len(found) {
		case 0:
		case 1:
			return found[0], "", nil
		default:
			return "", "", diag.Refuse("%q may be any of %d batches: write the whole name, one of %s", name, len(found), QuoteAll(found))
		}
	}
	return name, "", nil // the house says that there is none, and which is near
}

// FileName is a name as one would call its file: Ferry Landing, more rye is
// ferry-landing-more-rye.
func FileName(name string) string {
	words := strings.FieldsFunc(strings.ToLower(name), func(r rune) bool {
		return !(r >= 'a' && r <= 'z' || r >= '0' && r <= '9' || r > 0x7f)
	})
	return strings.Join(words, "-")
}

// QuoteAll lists names, the first few of many.
func QuoteAll(names []string) string {
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
func (s *Source) noBatch() diag.Diagnostic {
	d := diag.Diagnostic{
		Code: diag.CodeNoBatch, Summary: "there is no batch in " + s.Label,
		Help: "a batch begins with `batch \"Name\" {`",
	}
	if all := s.House.Batches(); len(all) > 0 {
		d.Help = "ask for a batch of the house by its name: " + QuoteAll(all)
	}
	return d
}

// nothing is what there is to say where no batch is found.
func (s *Source) nothing() diag.List {
	list := s.House.CheckIn(s.Path)
	if !list.HasErrors() {
		list.Add(s.noBatch())
	}
	return list
}
