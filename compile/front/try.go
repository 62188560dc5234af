package front

import (
	"strings"

	"newmake/compile/plan"
	"newmake/lang/diag"
	"newmake/lang/edit"
)

// Tried is a source with values of one batch changed, and what was changed.
type Tried struct {
	*Source        // the house with the changed texts in place of its files
	Name    string // of the batch, whole
	Note    string
	changes []edit.Change
	gave    []string
}

// Try changes values of a batch, each written as bill.rye=14 %. No file is
// touched. The error is a diag.List where the changes cannot be made.
func (s *Source) Try(name string, changes []string) (*Tried, error) {
	name, note, err := s.Choose(name)
	if err != nil {
		return nil, err
	}
	b, list := s.House.Batch(name)
	if b == nil {
		return nil, list
	}
	t := &Tried{Name: name, Note: note}
	for _, text := range changes {
		c, err := edit.Parse(text)
		if err != nil {
			return nil, err
		}
		t.changes = append(t.changes, c)
	}
	r, err := edit.Apply(s.House, b, t.changes)
	if err != nil {
		return nil, err
	}
	t.gave = r.Gave
	h, err := r.House(s.Path, s.unsaved())
	if err != nil {
		return nil, err
	}
	t.Source = &Source{House: h, Path: s.Path, Label: s.Label, noLearned: s.noLearned, saved: s}
	t.teach()
	return t, nil
}

// Mark says on the plan itself that it is of no batch in a file: it is shown as
// the variant that it is.
func (t *Tried) Mark(p *plan.Plan) {
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
