package main

import (
	"path/filepath"
	"strings"

	"newmake/compile/plan"
	"newmake/lang/diag"
	"newmake/lang/edit"
)

// tried is what was changed for one run.
type tried struct {
	changes []edit.Change
	gave    []string
}

// try changes values of a batch for this run. It gives the house with the changed
// texts in place of its files, and the batch's whole name; no file is touched.
// The error is a diag.List where the changes cannot be made.
func (a *app) try(src *source, name string, changes []string) (*source, string, *tried, error) {
	if len(changes) == 0 {
		return src, name, nil, nil
	}
	name, err := a.choose(src, name)
	if err != nil {
		return nil, "", nil, err
	}
	b, list := src.house.Batch(name)
	if b == nil {
		return nil, "", nil, list
	}
	t := &tried{}
	for _, s := range changes {
		c, err := edit.Parse(s)
		if err != nil {
			return nil, "", nil, err
		}
		t.changes = append(t.changes, c)
	}
	r, err := edit.Apply(src.house, b, t.changes)
	if err != nil {
		return nil, "", nil, err
	}
	t.gave = r.Gave
	h, err := r.House(src.path, src.unsaved())
	if err != nil {
		return nil, "", nil, err
	}
	return &source{house: h, path: src.path, label: src.label}, name, t, nil
}

// unsaved is the text of a source that is not on the disk: standard input.
func (s *source) unsaved() map[string][]byte {
	for _, f := range s.house.Files {
		if filepath.Clean(f.Source.Name) == filepath.Clean(s.path) {
			return map[string][]byte{s.path: f.Source.Text}
		}
	}
	return nil
}

// mark says on the plan itself that it is of no batch in a file: it is shown as
// the variant that it is.
func (t *tried) mark(p *plan.Plan) {
	if t == nil {
		return
	}
	b := &p.Batch
	b.Chain = append([]string{b.Name}, b.Chain...)
	b.Parent, b.Changes = b.Name, nil
	b.Name += ", tried"
	var all []string
	for _, c := range t.changes {
		all = append(all, c.String())
	}
	b.Changes = append(b.Changes, all...)
	n := plan.Notice{Code: string(diag.CodeTried), Severity: "note",
		Summary: "tried for this run alone: " + strings.Join(all, "; "), Help: "write it into the batch, or into a variant of it, to keep it"}
	if len(t.gave) > 0 {
		b.Changes = append(b.Changes, "gave way: "+strings.Join(t.gave, "; "))
		n.Reason = "what gave way: " + strings.Join(t.gave, "; ")
	}
	p.Notices = append([]plan.Notice{n}, p.Notices...)
}
