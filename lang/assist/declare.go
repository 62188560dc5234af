package assist

import (
	"fmt"
	"path/filepath"
	"strings"

	"newmake/lang/quantity"
	"newmake/lang/schema"
	"newmake/lang/tree"
)

// vesselFor is the word that declares what a block of a batch is done in.
var vesselFor = map[string]string{"mash": "cooker", "ferment": "fermenter", "strip": "still", "spirit": "still"}

// Declare offers to declare the name at a place, if nothing has it: a vessel in the
// plant like the last of its kind, a grain, yeast, enzyme or wood in house.batch, with
// the lines that it must have. Its figures are examples, and a comment says so.
func (s *Snapshot) Declare(offset int) (label string, edit Edit, ok bool) {
	p, found := s.at(offset)
	if !found || p.cap == nil {
		return "", Edit{}, false
	}
	n, declares, found := nameOf(p.path, p.cap)
	if !found || declares || len(s.Definition(offset)) > 0 {
		return "", Edit{}, false
	}
	called := p.cap.Text()
	if n.sort == "vessel" {
		return s.declareVessel(vesselFor[p.node().Field.Name], called)
	}
	for _, f := range schema.Library {
		if f.Name != n.sort || f.Block == nil || s.House.Entry(f, called) != nil {
			continue
		}
		for _, file := range s.House.Files {
			if filepath.Base(file.Source.Name) != "house.batch" {
				continue
			}
			end := len(file.Source.Text)
			text := "\n# The figures are examples: put in your own.\n" + f.Name + " " + named("", called) + " {\n" + needed(f, s.Units()) + "}\n"
			return fmt.Sprintf("declare the %s %q in house.batch", f.Name, called), Edit{file.Source.Span(end, end), text}, true
		}
	}
	return "", Edit{}, false
}

// needed are the lines that a declaration must have, as examples in the units of a system.
func needed(f *schema.Field, units quantity.System) string {
	var b strings.Builder
	for _, l := range f.Block.Fields {
		if l.Need {
			fmt.Fprintf(&b, "  %s\n", strings.Trim(schema.Example(l, units), "`"))
		}
	}
	return b.String()
}

// declareVessel writes a vessel below the last of its kind in the plant, like that one.
func (s *Snapshot) declareVessel(word, called string) (string, Edit, bool) {
	var last *tree.Node
	for _, d := range s.House.Plants {
		n := d.Node()
		if n == nil {
			continue
		}
		for _, l := range n.Lines {
			if l.Field.Name == word && l.Get("name") != nil {
				last = l
			}
		}
	}
	if last == nil {
		return "", Edit{}, false
	}
	whole, name := last.Whole(), last.Get("name").At()
	text := whole.Text()[:name.Start-whole.Start] + `"` + called + `"` + whole.Text()[name.End-whole.Start:]
	return fmt.Sprintf("declare the %s %q in the plant, like %q", word, called, last.Get("name").Text()),
		Edit{whole.Src.Span(whole.End, whole.End), "\n  # The figures are those of " + last.Get("name").Text() + ": put in its own.\n  " + text}, true
}
