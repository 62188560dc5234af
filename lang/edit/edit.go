// Package edit changes values of a batch in its text, by their paths:
//
//	bill.rye=14 %           mash.water=280 gal     mash.rest.2=30 min
//	ferment.hold=80..90 F   spirit.hearts.to=60 % abv
//	plant.water=50 F        plant."Wash still".reflux=8 %
//	library.grain.corn.starch=70 %
//
// The result is texts, to be laid over the files of the house and checked like
// them. No file is touched.
package edit

import (
	"fmt"
	"strings"

	"newmake/lang"
	"newmake/lang/check"
	"newmake/lang/diag"
	"newmake/lang/recipe"
	"newmake/lang/wording"
)

// Change is one value and what it is to be.
type Change struct {
	Path  recipe.Path
	Value string
}

// Parse reads a change as it is given on the command line: bill.rye=14 %.
func Parse(s string) (Change, error) {
	path, value, ok := strings.Cut(s, "=")
	c := Change{recipe.ParsePath(strings.TrimSpace(path)), strings.TrimSpace(value)}
	if !ok || c.Path.IsZero() || c.Value == "" {
		return c, fault(diag.CodeChangeValue, fmt.Sprintf("%q does not say what is to be what", s), "write it as `bill.rye=14 %`")
	}
	return c, nil
}

// String is the change as one writes it.
func (c Change) String() string { return c.Path.String() + " = " + c.Value }

// Result is what the changes come to.
type Result struct {
	Texts map[string][]byte // whole texts, by the name of the file that each stands for
	Lines []Line            // the lines that change, in order
	Gave  []string          // what gave way so that the rest holds, in words
}

// Line is one line before and after; Old is empty for a new one.
type Line struct {
	File     string
	Number   int
	Old, New string
}

// Apply makes the changes to a batch of a house. The batch has to be free of
// errors. The error is a diag.List, in the units of the house.
func Apply(h *check.House, b *recipe.Batch, changes []Change) (*Result, error) {
	r, err := apply(h, b, changes)
	if list, ok := err.(diag.List); ok {
		for i := range list {
			list[i].Help = wording.Prose(list[i].Help, h.Units())
		}
	}
	return r, err
}

func apply(h *check.House, b *recipe.Batch, changes []Change) (*Result, error) {
	e := &editor{house: h, batch: b, result: &Result{}}
	var shares []billChange
	for _, c := range changes {
		value, err := itemsOf(c)
		if err != nil {
			return nil, err
		}
		if c.Path.Parent() == recipe.PathBill {
			bc, err := e.grain(c.Path.Last(), c, value)
			if err != nil {
				return nil, err
			}
			shares = append(shares, bc)
			continue
		}
		if c.Path == recipe.PathBill {
			if err := e.total(c, value); err != nil {
				return nil, err
			}
			continue
		}
		if err := e.set(c, value); err != nil {
			return nil, err
		}
	}
	if err := e.shares(shares); err != nil {
		return nil, err
	}
	return e.finish()
}

// editor gathers replacements in the texts of a house.
type editor struct {
	house  *check.House
	batch  *recipe.Batch
	edits  []replacement
	extra  strings.Builder // declarations of the library that the house does not have
	result *Result
}

type replacement struct {
	at   diag.Span
	text string
}

// extraFile is where entries stand that are changed and that no file of the house
// has: they are laid over the built-in ones.
const extraFile = "tried.batch"

func fault(code diag.Code, summary, help string) diag.List {
	return diag.List{{Code: code, Severity: diag.Error, Summary: summary, Help: help}}
}

func (e *editor) replace(at diag.Span, text string) {
	e.edits = append(e.edits, replacement{at, text})
}

// itemsOf reads the text of a value as the items of a line.
func itemsOf(c Change) ([]lang.Item, error) {
	if strings.ContainsAny(c.Value, "{}#\n\r") {
		return nil, fault(diag.CodeChangeValue, fmt.Sprintf("%q is more than one value", c.Value), "write what stands on the line after its first word")
	}
	const head = "value "
	f, list := lang.Parse(diag.NewSource("the value of "+c.Path.String(), []byte(head+c.Value)))
	if list.HasErrors() {
		return nil, list
	}
	if len(f.Stmts) != 1 || len(f.Stmts[0].Items) < 2 {
		return nil, fault(diag.CodeChangeValue, fmt.Sprintf("%q is no value", c.Value), "write it as it stands in a file: `14 %`, `280 gal`, `80..90 F`")
	}
	return f.Stmts[0].Items[1:], nil
}
