// Package weeks answers what a season of a house comes to: it gathers the declaration,
// the batches that it asks for and the runs that were begun, and has compile/book/season
// plan them.
package weeks

import (
	"errors"
	"slices"
	"strings"

	"newmake/compile/book/ledger"
	"newmake/compile/book/season"
	"newmake/compile/front"
	"newmake/lang/diag"
	"newmake/lang/recipe"
	"newmake/lang/record"
	asked "newmake/lang/season"
	"newmake/lang/stock"
	"newmake/lang/wording"
	"newmake/lang/words"
)

// Question is a season of a house, and how it is to be planned.
type Question struct {
	Name    string             // of the season; "" if the house has one
	On      record.Date        // what came before that day stands as it was; zero: the season's first day
	Effort  int                // steps of the search; 0 for the usual
	Printed *season.Season     // a plan that people work from already; nil for none
	Units   *recipe.System     // to speak in; nil for those of the batches
	Quick   bool               // without what one thing more would bring
	NoStore bool               // without what lies in the stores, for who asks for nothing to buy
	Tried   []string           // what Try changed, to be said
	Doing   func(season.Stage) // told of what is begun; nil: nobody is
	Draws   int                // how often it is drawn anew for its odds; 0: not at all
}

// which finds the season that is meant. The error is a diag.Refusal.
func which(src *front.Source, name string) (string, error) {
	all := src.House.SeasonNames()
	switch {
	case name != "":
		return name, nil
	case len(all) == 1:
		return all[0], nil
	case len(all) == 0:
		return "", diag.Refuse("the house has no season yet, or none that can be read (`newmake check` says so): `newmake explain season` shows how one is written")
	}
	return "", diag.Refuse("the house has the seasons %s: say which", words.And(wording.Quoted(all)))
}

// Try is a house with values of the season's plant changed, each written as
// plant.boiler=170 kW. No file is touched. What is to be otherwise in one batch is a
// variant of it, which a season can ask for. The error is a diag.Refusal, or a diag.List
// where the changes cannot be made.
func Try(src *front.Source, name string, changes []string) (*front.Source, error) {
	name, err := which(src, name)
	if err != nil {
		return nil, err
	}
	for _, c := range changes {
		if !strings.HasPrefix(strings.TrimSpace(c), "plant.") {
			return nil, diag.Refuse("a season is tried with another plant, as in --try \"plant.boiler=170 kW\", not with %q: a batch that is made otherwise is a variant of it", c)
		}
	}
	asks, said := src.House.Season(name)
	if asks == nil || said.HasErrors() {
		return nil, said
	}
	if len(asks.Batches()) == 0 {
		return src, nil // what is planned of it says so
	}
	tried, err := src.Try(asks.Batches()[0], changes)
	if err != nil {
		return nil, err
	}
	return tried.Source, nil
}

// problem gathers what is to be planned. It is nil if nothing of it can be planned; the
// diagnostics then say why. Where they have errors and it is not, some of its batches
// cannot be read.
func problem(src *front.Source, q Question) (*season.Problem, diag.List, error) {
	name, err := which(src, q.Name)
	if err != nil {
		return nil, nil, err
	}
	asks, said := src.House.Season(name)
	if asks == nil || said.HasErrors() {
		return nil, said, nil
	}
	if q.On.Compare(asks.To) > 0 {
		return nil, nil, diag.Refuse("the season %q ended on %s, and nothing of it can be decided on %s: --on is a day up to its last", name, asks.To, q.On)
	}
	p := &season.Problem{Asks: asks, Batches: map[string]*recipe.Batch{}, Unread: map[string]string{}, On: q.On, Printed: q.Printed, Effort: q.Effort, Draws: q.Draws, Quick: q.Quick, Doing: q.Doing}
	add := func(name string) diag.List {
		if p.Batches[name] != nil {
			return nil
		}
		b, list := src.House.Batch(name)
		if b == nil {
			return list
		}
		if q.Units != nil {
			c := *b
			c.Units = *q.Units
			b = &c
		}
		p.Batches[name] = b
		if p.Plant == nil {
			p.Plant = b.Plant
		}
		return nil
	}
	p.Runs = begun(src, asks)
	names := asks.Batches()
	for _, r := range p.Runs {
		if !slices.Contains(names, r.Batch) {
			names = append(names, r.Batch)
		}
	}
	for _, name := range names {
		if list := add(name); list.HasErrors() {
			said = append(said, list...)
			p.Unread[name] = "its text has " + words.Count(list.Count(diag.Error), "error")
		}
	}
	said = src.House.Ordered(said)
	if p.Plant == nil && said.HasErrors() {
		return nil, said, nil
	}
	if p.Plant == nil {
		return nil, nil, diag.Refuse("the season %q asks for nothing, so there is nothing to plan: say what is to be made, as in `casks 4 of \"Ferry Landing\" by 2026-04-10`", name)
	}
	if !q.NoStore {
		p.Store = inStore(src, asks, q.On)
	}
	return p, said, nil
}

// inStore is what lies in the stores of the house as what is to come begins. What the runs
// of the season used by now is taken off.
func inStore(src *front.Source, asks *asked.Season, on record.Date) map[string]float64 {
	texts, said := src.House.Inventory()
	if said.HasErrors() {
		return nil
	}
	at := asks.From.After(-1)
	if !on.IsZero() && on.Compare(at) > 0 {
		at = on.After(-1)
	}
	for _, r := range texts.Runs {
		if asks.Has(r.Date) && r.Date.Compare(at) > 0 {
			at = r.Date
		}
	}
	out := map[string]float64{}
	for what, amount := range ledger.InStore(texts, src.House.BushelKg, at) {
		if c, ok := stock.ContainerOf(what); ok && !c.Bottle { // as the list of what to buy calls it
			if what = season.CaskNew; c.Used {
				what = season.CaskUsed
			}
		}
		out[what] += amount
	}
	return out
}

// before is how long before a season a run may have begun that is still in the house.
const before = 60

// begun are the runs that bear on a season: those that were mashed in it, or in the weeks
// before, in the order of the texts.
func begun(src *front.Source, s *asked.Season) []*record.Run {
	var out []*record.Run
	for _, d := range src.House.Runs {
		on := record.ReadDate(d.On)
		if on.IsZero() || on.Compare(s.To) > 0 || on.DaysTo(s.From) > before {
			continue
		}
		if r, _ := src.House.Run(d.Name); r != nil && src.House.Find(r.Batch) != nil {
			out = append(out, r)
		}
	}
	return out
}

// Of plans a season. The answer and the diagnostics are as those of Problem.
func Of(src *front.Source, q Question) (*season.Season, diag.List, error) {
	p, said, err := problem(src, q)
	if p == nil || err != nil {
		return nil, said, err
	}
	s, err := season.Plan(p)
	if err != nil {
		return nil, said, refused(err)
	}
	s.Tried = q.Tried
	return s, said, nil
}

// Sheets is Of with the plans of its runs, to work from.
func Sheets(src *front.Source, q Question) (*season.Season, []season.Sheet, diag.List, error) {
	q.Quick, q.NoStore = true, true
	p, said, err := problem(src, q)
	if p == nil || err != nil {
		return nil, nil, said, err
	}
	s, sheets, err := season.Sheets(p)
	if err != nil {
		return nil, nil, said, refused(err)
	}
	s.Tried = q.Tried
	return s, sheets, said, nil
}

// refused is why a season cannot be planned, for a person.
func refused(err error) error {
	var b *season.BatchError
	if errors.As(err, &b) {
		return diag.Refuse("%s cannot be computed, so the season cannot be planned: %v; `newmake plan` says more of it", b.Batch, b.Err)
	}
	return diag.Refuse("the season cannot be planned: %v", err)
}
