package learn

import (
	"fmt"
	"slices"
	"strings"

	"newmake/compile/constants"
	"newmake/compile/made"
	"newmake/lang/check"
	"newmake/lang/diag"
	"newmake/lang/recipe"
	"newmake/lang/record"
	"newmake/lang/sorting"
	"newmake/lang/tree"
	"newmake/lang/words"
)

// Gathered are the runs of a house that can be learned from.
type Gathered struct {
	Plant       string
	Runs        []Run // in the order of their days
	Instruments []constants.Constant
	Skipped     []Skipped
	Notes       []string // of which text a run's recipe is, where it is not that of today
}

// Skipped is a run that nothing is learned from, and why.
type Skipped struct {
	Run string `json:"run"`
	Why string `json:"why"`
}

// fewest is how many readings a run must have to be of use.
const fewest = 3

// Batches gives the recipe of a run; note says which text of it that is where it is not the
// one of today.
type Batches func(run *record.Run) (b *recipe.Batch, said diag.List, note string)

// Gather reads the runs of a house: those named, or all, less those left out. The house
// must not have been taught: constants are always learned from the library's. of is nil
// where every run has the recipe of today.
func Gather(h *check.House, only, without []string, of Batches) (*Gathered, error) {
	if of == nil {
		of = func(r *record.Run) (*recipe.Batch, diag.List, string) {
			b, list := h.Batch(r.Batch)
			return b, list, ""
		}
	}
	numbers := h.RunNumbers()
	for _, n := range slices.Concat(only, without) {
		if !named(numbers, n) {
			_, list := h.Run(n)
			return nil, list
		}
	}
	g := &gathering{house: h, of: of, seen: map[string]bool{}, atOnce: h.RunsAtOnce()}
	for _, n := range numbers {
		switch {
		case len(only) > 0 && !named(only, n):
		case named(without, n):
			g.skip(n, "left out, as was asked")
		default:
			if err := g.run(n); err != nil {
				return nil, err
			}
		}
	}
	sorting.Stable(g.dated, func(a, b dated) int { return a.date.Compare(b.date) })
	for _, d := range g.dated {
		g.Runs = append(g.Runs, d.Run)
	}
	g.copies()
	switch {
	case len(numbers) == 0:
		return nil, diag.Refuse("the house has no runs yet: `newmake record` opens one, and what is read of it is what can be learned from")
	case len(g.Runs) == 0:
		var why []string
		runs := map[string][]string{}
		for _, s := range g.Skipped {
			if runs[s.Why] == nil {
				why = append(why, s.Why)
			}
			runs[s.Why] = append(runs[s.Why], fmt.Sprintf("%q", s.Run))
		}
		for i, w := range why {
			why[i] = words.And(runs[w]) + ": " + w
		}
		return nil, diag.Refuse("there is no run to learn from. %s", strings.Join(why, "; "))
	}
	return &g.Gathered, nil
}

// named reports whether a run is among those that are named.
func named(of []string, n string) bool {
	return slices.ContainsFunc(of, func(o string) bool { return tree.Key(o) == tree.Key(n) })
}

// gathering goes through the runs of a house.
type gathering struct {
	Gathered
	house *check.House
	of    Batches
	dated []dated
	seen  map[string]bool // instruments, by key
	// atOnce are the runs that were in a vessel together with another.
	atOnce map[string]bool
}

type dated struct {
	Run
	date record.Date
}

func (g *gathering) skip(n, why string) { g.Skipped = append(g.Skipped, Skipped{n, why}) }

// run gathers one run, or says why it is skipped; the error is what stops the rest.
func (g *gathering) run(n string) error {
	r, list := g.house.Run(n)
	if r == nil || list.HasErrors() {
		g.skip(n, "its text has errors: `newmake check` says which")
		return nil
	}
	if g.atOnce[tree.Key(n)] {
		g.skip(n, "in a vessel in which another run was at that time: `newmake check` says which")
		return nil
	}
	b, list, note := g.of(r)
	if note != "" {
		g.Notes = append(g.Notes, note)
	}
	if b == nil {
		g.skip(n, fmt.Sprintf("its batch %q cannot be read: %s", r.Batch, first(list)))
		return nil
	}
	if g.Plant == "" {
		g.Plant = b.Plant.Name
	}
	if b.Plant.Name != g.Plant {
		return diag.Refuse("run %q was made at %q, and the runs before it at %q: name the runs of one plant", n, b.Plant.Name, g.Plant)
	}
	as := made.Recipe(b, r)
	readings := g.something(n, made.Readings(as, r, g.house.Instrument))
	if len(readings) < fewest {
		g.skip(n, "with "+words.Count(len(readings), "reading")+" that a model can be held against")
		return nil
	}
	for _, c := range made.Instruments(as, readings, g.house.Instrument) {
		if !g.seen[c.Key()] {
			g.seen[c.Key()] = true
			g.Instruments = append(g.Instruments, c)
		}
	}
	out := Run{Number: r.Number, Recipe: as}
	for i := range readings {
		out.Readings = append(out.Readings, reading(&readings[i]))
	}
	g.dated = append(g.dated, dated{out, r.Date})
	return nil
}

// something leaves out volumes of nothing, and says so. They were written where nothing was
// gauged; no still makes that, and one such reading leads all others astray.
func (g *gathering) something(run string, all []made.Reading) []made.Reading {
	var none []string
	out := slices.DeleteFunc(all, func(x made.Reading) bool {
		nothing := x.What == record.Volume && x.Said <= 0
		if nothing {
			none = append(none, x.Words)
		}
		return nothing
	})
	if len(none) > 0 {
		g.Notes = append(g.Notes, fmt.Sprintf("run %q: nothing is learned from the %s: it says 0", run, words.And(none)))
	}
	return out
}

// copies warns of runs whose readings are the same to the last digit. A text that was
// copied tells nothing, and makes all that is learned look surer than it is.
func (g *gathering) copies() {
	of := map[string][]string{}
	var order []string
	for _, r := range g.Runs {
		var b strings.Builder
		for _, x := range r.Readings {
			fmt.Fprintln(&b, x.Words, x.Said)
		}
		if of[b.String()] == nil {
			order = append(order, b.String())
		}
		of[b.String()] = append(of[b.String()], r.Number)
	}
	for _, readings := range order {
		if runs := of[readings]; len(runs) > 1 {
			g.Notes = append(g.Notes, "runs "+words.And(runs)+" have the same readings to the last digit: if one is a copy of another, leave it out with --without; what is learned looks surer than it is")
		}
	}
}

// reading is a reading of a run as it is learned from.
func reading(r *made.Reading) Reading {
	clocks := map[any]float64{}
	for _, k := range r.Clocks {
		clocks[k.Of] = k.Sign
	}
	return Reading{
		Words: r.Words, What: r.What, Said: r.Said, SD: r.SD, Outcome: r.Outcome, Instrument: r.Instrument, Of: r.Of, AtEnd: r.SaysAtEnd,
		Clocks: clocks, ByClock: r.ByClock,
	}
}

func first(list diag.List) string {
	for _, d := range list {
		if d.Severity == diag.Error {
			return d.Summary
		}
	}
	return "it has errors"
}

// Block is what was learned as the house keeps it: the constants that the runs told.
func (l *Learned) Block(g *Gathered, on string) *recipe.Learned {
	out := &recipe.Learned{Plant: g.Plant, On: on, Model: constants.Models}
	for _, r := range g.Runs {
		out.From = append(out.From, r.Number)
	}
	for _, s := range g.Skipped {
		out.Without = append(out.Without, recipe.Left{Run: s.Run, Why: s.Why})
	}
	kept := func(f Found) bool { return f.Owner == constants.House && !f.Untold }
	for _, f := range l.Found {
		if !kept(f) {
			continue
		}
		n := func(x float64) string { return constants.Number(x, f.Kind) }
		unit := constants.Unit(f.Kind)
		out.Constants = append(out.Constants, recipe.LearnedConstant{
			ID: f.ID, Of: f.Constant.Of, SI: f.Value, LowSI: f.Low, HighSI: f.High, BaseSI: f.AsWritten,
			Text: fmt.Sprintf("%s %s, %s..%s %s, from %s %s", n(f.Value), unit, n(f.Low), n(f.High), unit, n(f.AsWritten), unit),
		})
	}
	for _, p := range l.Together {
		a, b := l.Found[p.A], l.Found[p.B]
		if kept(a) && kept(b) {
			out.Together = append(out.Together, recipe.Pair{One: [2]string{a.ID, a.Constant.Of}, Two: [2]string{b.ID, b.Constant.Of}, Correlation: p.Correlation})
		}
	}
	return out
}
