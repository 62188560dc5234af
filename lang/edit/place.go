package edit

import (
	"fmt"
	"slices"
	"strings"

	"newmake/lang"
	"newmake/lang/diag"
	"newmake/lang/quantity"
	"newmake/lang/recipe"
	"newmake/lang/schema"
)

// set changes one value.
func (e *editor) set(c Change, value []lang.Item) error {
	if at, ok := e.where(c.Path); ok {
		stmt := e.stmt(at)
		if stmt == nil {
			return e.unknown(c)
		}
		if at.Start == stmt.At.Start {
			e.onLine(stmt, c.Value, value)
		} else {
			e.replace(at, c.Value)
		}
		return nil
	}
	parts := c.Path.Parts()
	switch parts[0] {
	case "plant":
		return e.below(e.stmt(e.batch.Plant.At), parts[1:], c, value)
	case "library":
		return e.library(parts[1:], c, value)
	}
	return e.newLine(c, parts)
}

// where finds the place of a value: by its own path, or as a step that is named
// by what it does: mash.rest.2, mash.dose.alpha-amylase.
func (e *editor) where(path recipe.Path) (diag.Span, bool) {
	if at, ok := e.batch.Where[path]; ok {
		if s := e.stmt(at); s != nil && s.Block == nil {
			return at, true
		}
	}
	parts := path.Parts()
	if len(parts) < 2 || parts[0] != "mash" {
		return diag.Span{}, false
	}
	steps := e.steps(parts[1])
	rest := parts[2:]
	if len(rest) > 0 {
		var which []recipe.MashStep
		for i, s := range steps {
			if rest[0] == fmt.Sprint(i+1) || s.Enzyme != nil && s.Enzyme.Name == rest[0] {
				which = append(which, s)
			}
		}
		if len(which) > 0 {
			steps, rest = which, rest[1:]
		}
	}
	if len(steps) != 1 {
		return diag.Span{}, false
	}
	to := steps[0].Path
	if len(rest) == 1 {
		name := rest[0]
		if name == "at" {
			name = "to" // both are the temperature of the step
		}
		to = to.Child(name)
	}
	at, ok := e.batch.Where[to]
	return at, ok && len(rest) <= 1
}

// steps are the steps of the mash that do one thing.
func (e *editor) steps(verb string) []recipe.MashStep {
	var out []recipe.MashStep
	for _, s := range e.batch.Mash.Steps {
		if e.verb(s) == verb {
			out = append(out, s)
		}
	}
	return out
}

// verb is the word that the line of a step begins with, "" if it has none.
func (e *editor) verb(s recipe.MashStep) string {
	if at, ok := e.batch.Where[s.Path]; ok {
		if stmt := e.stmt(at); stmt != nil {
			return stmt.Head()
		}
	}
	return ""
}

// stmt finds the line that a place stands on.
func (e *editor) stmt(at diag.Span) *lang.Stmt {
	for _, f := range e.house.Files {
		if f.Source != at.Src {
			continue
		}
		var found *lang.Stmt
		lang.Walk(f.Syntax().Stmts, func(s *lang.Stmt, _ int) bool {
			if s.At.Start <= at.Start && at.Start < s.At.End {
				found = s
			}
			return true
		})
		return found
	}
	return nil
}

// onLine changes what stands on a line. A quantity takes the place of the one of
// its kind; anything else of all that follows the first word.
func (e *editor) onLine(s *lang.Stmt, text string, value []lang.Item) {
	if len(value) == 1 && (value[0].Kind == lang.Number || value[0].Kind == lang.Range) {
		var alike []lang.Item
		numbers := 0
		for _, item := range s.Args() {
			if item.Kind == lang.Number || item.Kind == lang.Range {
				numbers++
				if sameKind(item.Unit, value[0].Unit) {
					alike = append(alike, item)
				}
			}
		}
		switch {
		case len(alike) == 1:
			e.replace(alike[0].At, text)
			return
		case numbers == 0: // `dose alpha-amylase` says no amount yet
			e.replace(diag.Span{Src: s.At.Src, Start: s.At.End, End: s.At.End}, " "+text)
			return
		}
	}
	args := s.Args()
	if len(args) == 0 {
		e.replace(diag.Span{Src: s.At.Src, Start: s.At.End, End: s.At.End}, " "+text)
		return
	}
	e.replace(diag.Span{Src: s.At.Src, Start: args[0].At.Start, End: s.At.End}, text)
}

// sameKind reports whether two units measure the same thing.
func sameKind(a, b string) bool {
	if a == b {
		return true
	}
	x, ok := quantity.Lookup(a)
	y, also := quantity.Lookup(b)
	if !ok || !also {
		return false
	}
	return slices.ContainsFunc(x.Measures, func(m quantity.Measure) bool {
		_, same := y.Measure(m.Kind)
		return same
	})
}

// below finds a line by its words below another: "Wash still", reflux.
func (e *editor) below(s *lang.Stmt, parts []string, c Change, value []lang.Item) error {
	if s == nil || len(parts) == 0 {
		return e.unknown(c)
	}
	for _, l := range s.Stmts() {
		if len(l.Items) == 0 || l.Items[0].Text != parts[0] && !slices.ContainsFunc(l.Items[1:], func(i lang.Item) bool {
			return (i.Kind == lang.String || i.Kind == lang.Word) && i.Text == parts[0] && l.Block != nil
		}) {
			continue
		}
		if len(parts) > 1 {
			return e.below(l, parts[1:], c, value)
		}
		e.onLine(l, c.Value, value)
		return nil
	}
	if len(parts) == 1 && s.Block != nil {
		e.insert(s, parts[0]+" "+c.Value)
		return nil
	}
	return e.unknown(c)
}

// newLine puts a line into a block that has none of it yet.
func (e *editor) newLine(c Change, parts []string) error {
	block := schema.Batch.Block
	at := recipe.PathBatch
	if len(parts) == 2 {
		f := block.Find(parts[0])
		if f == nil || f.Block == nil {
			return e.unknown(c)
		}
		block, at = f.Block, recipe.PathOf(parts[0])
	}
	word := parts[len(parts)-1]
	line := block.Find(word)
	switch {
	case len(parts) > 2, line != nil && (line.Step || line.Block != nil):
		return e.unknown(c)
	case line == nil && (len(parts) == 1 || parts[0] == recipe.PathMash.String()): // names no line, but maybe a step
		return e.unknown(c)
	}
	s := e.stmt(e.batch.Where[at])
	if s == nil {
		return e.unknown(c)
	}
	e.insert(s, word+" "+c.Value)
	return nil
}

// insert puts a line first into a statement's block.
func (e *editor) insert(s *lang.Stmt, line string) {
	if s.Block == nil {
		e.replace(diag.Span{Src: s.At.Src, Start: s.At.End, End: s.At.End}, " {\n"+line+"\n}")
		return
	}
	open := s.Block.At.Start + 1
	e.replace(diag.Span{Src: s.At.Src, Start: open, End: open}, "\n"+indent(s)+line+"\n"+indent(s))
}

// indent is that of the lines of a block.
func indent(s *lang.Stmt) string {
	_, col := s.At.Position()
	return strings.Repeat(" ", col-1+2)
}

// library changes an entry of the library: in the house's own text where it has one,
// and else by an entry laid over the built-in one.
func (e *editor) library(parts []string, c Change, value []lang.Item) error {
	if len(parts) != 3 {
		return e.unknown(c)
	}
	for _, f := range e.house.Files {
		for _, s := range f.Syntax().Stmts {
			if s.Head() == parts[0] && len(s.Items) > 1 && s.Items[1].Text == parts[1] {
				return e.below(s, parts[2:], c, value)
			}
		}
	}
	fmt.Fprintf(&e.extra, "%s %s {\n  %s  %s\n}\n", parts[0], parts[1], parts[2], c.Value)
	return nil
}
