package front

import (
	"newmake/compile"
	"newmake/compile/notice"
	"newmake/compile/plan"
	"newmake/compile/work"
	"newmake/lang/diag"
	"newmake/lang/recipe"
	"newmake/lang/schema"
)

// Batch is one batch of a source.
type Batch struct {
	Name   string        // its whole name; "" if the source has none
	Recipe *recipe.Batch // nil if something stands in the way of computing it
	Diags  diag.List     // all that is said of its text
	Notes  []string      // what a person should know besides, line by line
}

// Batch finds the batch of a name, as Choose does, and reads it, to be spoken of
// in a system of units; nil is its own. Nothing is computed from a text with
// errors; errors of meaning in other batches of the file are noted, and do not
// stop it.
func (s *Source) Batch(name string, units *recipe.System) (*Batch, error) {
	name, note, err := s.Choose(name)
	if err != nil {
		return nil, err
	}
	b := &Batch{Name: name}
	if note != "" {
		b.Notes = append(b.Notes, note)
	}
	if name == "" {
		b.Diags = s.nothing()
		return b, nil
	}
	r, list := s.House.Batch(name)
	unread, others := s.otherBatches(name, list)
	b.Diags = s.House.Ordered(append(list, unread...))
	if r == nil || len(unread) > 0 {
		return b, nil
	}
	if s.saved != nil { // a value tried here may not suit a variant, which is not asked about
		_, said := s.saved.House.Batch(name)
		_, others = s.saved.otherBatches(name, said)
	}
	if others != "" {
		b.Notes = append(b.Notes, others)
	}
	b.Recipe = inUnits(r, units)
	return b, nil
}

// Plan is a batch with its plan, which is nil if it cannot be computed. A plan
// with errors that Broken finds is not to be shown. Diags holds what the text and
// what computing it has shown.
type Plan struct {
	*Batch
	Plan *plan.Plan
}

// Plan finds, reads and computes a batch.
func (s *Source) Plan(name string, units *recipe.System) (*Plan, error) {
	b, err := s.Batch(name, units)
	if err != nil {
		return nil, err
	}
	return b.Plan(), nil
}

// Plan computes the batch.
func (b *Batch) Plan() *Plan { return b.PlanIn(work.Hours{}) }

// PlanIn computes the batch with some of its work done in given hours.
func (b *Batch) PlanIn(hours work.Hours) *Plan {
	p := &Plan{Batch: b}
	if b.Recipe != nil {
		p.Plan, b.Diags = computed(b.Recipe, b.Diags, hours)
	}
	return p
}

// Opened is the number of the run that the house has opened of the batch for the day of
// the plan, the last of several; "" if there is none.
func (s *Source) Opened(b *Batch) string {
	number := ""
	for _, n := range s.House.RunsOf(b.Name) {
		if s.House.PastNamed(schema.Run, n).On == b.Recipe.Start.Date() {
			number = n
		}
	}
	return number
}

// PutRecorded puts into a plan what the records of the house have beside it: the run that is
// opened for its day, and the lots of grain that are next. They change no number of it.
func (s *Source) PutRecorded(p *Plan) {
	s.putOpened(p)
	s.putLots(p)
}

func (s *Source) putOpened(p *Plan) {
	number := s.Opened(p.Batch)
	if number == "" {
		return
	}
	p.Plan.Opened = &plan.Opened{Number: number}
	run, _ := s.House.Run(number)
	if run == nil {
		return
	}
	for _, stage := range run.Stages {
		if stage.Vessel != "" {
			p.Plan.Opened.Vessels = append(p.Plan.Opened.Vessels, plan.RunVessel{Use: string(stage.Name), Vessel: stage.Vessel})
		}
	}
}

// computed computes a batch whose text was checked.
func computed(b *recipe.Batch, checked diag.List, hours work.Hours) (*plan.Plan, diag.List) {
	p, list := compile.CompileIn(b, hours)
	list = notice.Together(checked, list)
	if p != nil {
		p.Notices = notice.InPlan(list)
	}
	return p, list
}

// inUnits is a batch that is spoken of in a system of units.
func inUnits(b *recipe.Batch, s *recipe.System) *recipe.Batch {
	if s == nil {
		return b
	}
	c := *b
	c.Units = *s
	return &c
}

// Sound reports whether there is a plan that can be shown.
func (p *Plan) Sound() bool { return p.Plan != nil && !Broken(p.Diags) }

// Broken reports whether a list has errors that a plan cannot be shown with. A promise
// that is not kept is shown in the plan itself.
func Broken(list diag.List) bool {
	for _, d := range list {
		if d.Severity == diag.Error && d.Code != diag.CodePromiseBroken {
			return true
		}
	}
	return false
}
