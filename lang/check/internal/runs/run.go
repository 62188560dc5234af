// Package runs reads the records of runs, and holds each against the batch, the plant and the
// instruments that it names, and against the other runs of its vessels.
package runs

import (
	"fmt"
	"slices"
	"time"

	"newmake/lang/diag"
	"newmake/lang/house"
	"newmake/lang/inventory"
	"newmake/lang/logbook"
	"newmake/lang/quantity"
	"newmake/lang/recipe"
	"newmake/lang/record"
	"newmake/lang/schema"
	"newmake/lang/tree"
	"newmake/lang/wording"
	"newmake/lang/words"
)

// Around is what a run is read beside.
type Around struct {
	House       *house.House
	Batch       func(*house.Decl) *recipe.Batch // nil where it could not be read
	Plant       func() *recipe.Plant            // the first of the house, nil where it has none
	Instruments *Instruments
	Stores      *inventory.Stores
}

// Run is one run of the house, read.
type Run struct {
	Run   *record.Run
	Diags diag.List
}

// Instrument is one instrument of the house, read. It is nil in it where its scale
// could not be read.
type Instrument struct {
	*record.Instrument
	Decl  *house.Decl
	Diags diag.List
}

// Instruments are those of a house.
type Instruments struct {
	All   []*Instrument
	byKey map[string]*Instrument
}

// InstrumentsOf reads those of a house.
func InstrumentsOf(h *house.House) *Instruments {
	out := &Instruments{byKey: map[string]*Instrument{}}
	for _, d := range h.Past(schema.Instrument) {
		i := &Instrument{Decl: d}
		i.Instrument, i.Diags = logbook.Instrument(d.Node())
		out.All, out.byKey[tree.Key(d.Name)] = append(out.All, i), i
	}
	return out
}

// Named is the instrument of a name, nil if the house declares none.
func (s *Instruments) Named(name string) *record.Instrument {
	if i := s.byKey[tree.Key(name)]; i != nil {
		return i.Instrument
	}
	return nil
}

// Read reads a run and holds it against the batch and the plant that it names. A
// batch with errors, or none, leaves a run that can be read.
func Read(d *house.Decl, a Around) *Run {
	r, n := &Run{}, d.Node()
	var b *recipe.Batch
	var p *recipe.Plant
	if of := a.House.Find(d.Of); of != nil {
		if b = a.Batch(of); b != nil {
			p = b.Plant
		}
	} else if c := n.Get("batch"); c != nil && !a.House.Lost(schema.Batch, c.Text()) {
		r.Diags.Add(tree.UnknownName("batch", c, a.House.Batches))
	}
	if p == nil {
		p = a.Plant()
	}
	zone := time.UTC
	if p != nil {
		if z, err := time.LoadLocation(p.Zone); err == nil {
			zone = z
		}
	}
	var said diag.List
	r.Run, said = logbook.Run(n, logbook.Around{Zone: zone, Instrument: a.Instruments.Named})
	r.Diags = append(r.Diags, said...)
	certified(r.Run, a.Stores)
	instrumentsOf(n, a.Instruments, &r.Diags)
	vesselsOf(n, p, &r.Diags)
	stillsOf(r.Run, p, &r.Diags)
	if b != nil {
		stepsOf(r.Run, b, &r.Diags)
		weighedOf(r.Run, b, &r.Diags)
	}
	return r
}

// certified puts beside what a run used what its lot's certificate says.
func certified(r *record.Run, stores *inventory.Stores) {
	for i := range r.Used {
		u := &r.Used[i]
		if u.Amount.Kind == quantity.Bushel {
			u.BushelKg = stores.BushelKg(u.What)
		}
		if u.Lot == "" {
			continue
		}
		if l := stores.Certificate(u.What, u.Lot); l != nil {
			u.Moisture, u.Starch = l.Moisture, l.Starch
		}
	}
}

// instrumentsOf speaks of the instruments that a run names and the house does not
// declare. Of a house that declares none that goes without saying.
func instrumentsOf(n *tree.Node, all *Instruments, diags *diag.List) {
	if len(all.All) == 0 {
		return
	}
	var first *tree.Capture
	var names []string
	var walk func(lines []*tree.Node)
	walk = func(lines []*tree.Node) {
		for _, l := range lines {
			for _, c := range l.Match.All("using") {
				if all.byKey[tree.Key(c.Text())] != nil || slices.Contains(names, c.Text()) {
					continue
				}
				if names = append(names, c.Text()); first == nil {
					first = c
				}
			}
			walk(l.Lines)
		}
	}
	walk(n.Lines)
	if first == nil {
		return
	}
	diags.Add(diag.Diagnostic{Code: diag.CodeUndeclared, Severity: diag.Note, At: first.At(),
		Summary: "the house does not declare " + words.And(wording.Quoted(names)),
		Help:    "such an instrument is taken to be as good as is common; declare it, and it is weighed by its own scale: " + schema.ExampleBlock(schema.Instrument, first.At().Units())})
}

// vesselsOf holds the vessels of a run against those of its plant.
func vesselsOf(n *tree.Node, p *recipe.Plant, diags *diag.List) {
	if p == nil {
		return
	}
	for _, l := range n.Lines {
		c := l.Get("vessel")
		if c == nil || l.Bad {
			continue
		}
		want := map[string]recipe.VesselKind{"mash": recipe.Cooker, "ferment": recipe.Fermenter, "strip": recipe.Still, "spirit": recipe.Still}[l.Field.Name]
		var names []string
		found := false
		for _, v := range p.Vessels {
			if v.Kind == want {
				names = append(names, v.Name)
			}
			if tree.Key(v.Name) != tree.Key(c.Text()) {
				continue
			}
			if found = true; v.Kind != want {
				diags.Add(diag.Diagnostic{Code: diag.CodeWrongVessel, At: c.At(), Summary: fmt.Sprintf("%q is a %s, and a %s takes a %s", v.Name, v.Kind, l.Field.Name, want),
					Related: []diag.Related{{At: v.At, Text: "it is declared here"}}, Help: "write the vessel in which it was done"})
			}
		}
		if !found {
			diags.Add(tree.UnknownName(want.String(), c, func() []string { return names }))
		}
	}
}

// stillsOf holds what was charged or came over against the still that the run names, or the
// largest of the plant where it names none: a still holds no more than it holds.
func stillsOf(r *record.Run, p *recipe.Plant, diags *diag.List) {
	if p == nil {
		return
	}
	for i := range r.Visits {
		v := &r.Visits[i]
		stage := r.Stages[v.Stage]
		if stage.Name != record.Strip && stage.Name != record.Spirit || v.Word != "charge" && v.Word != "hearts" {
			continue
		}
		var still *recipe.Vessel
		for j := range p.Vessels {
			if o := p.Vessels[j]; o.Kind == recipe.Still && (stage.Vessel == "" || tree.Key(o.Name) == tree.Key(stage.Vessel)) && (still == nil || o.HoldsM3 > still.HoldsM3) {
				still = o
			}
		}
		for j := range v.Read {
			now, ok := v.Read[j].Holds()
			if still == nil || !ok || v.Read[j].What != record.Volume || v.Read[j].Doubt != "" || now.SI <= still.HoldsM3*inventory.Fullest {
				continue
			}
			diags.Add(diag.Diagnostic{Code: diag.CodeImprobable, Severity: diag.Warning, At: v.Read[j].Place,
				Summary: fmt.Sprintf("`%s` is hard to believe: %s holds %s", now, still.Name, wording.In(still.HoldsM3, now.Unit, quantity.Volume)),
				Related: []diag.Related{{At: still.At, Text: "it is declared here"}},
				Help:    "if it was read so, leave it: it is kept; a slip of the pen is put right beside it, with `corrected`"})
		}
	}
}

// stepsOf speaks of steps of the mash that the recipe does not have. Something else
// may have been done; so it is kept.
func stepsOf(r *record.Run, b *recipe.Batch, diags *diag.List) {
	have := map[string]int{}
	for _, s := range b.AsToday().Mash.Steps {
		have[s.Verb.Word()]++
	}
	for _, s := range b.Mash.Steps { // who has no backset by the recipe may have found some
		if s.Verb == recipe.MashBackset && b.Today.NoBackset {
			have[s.Verb.Word()]++
		}
	}
	for i := range r.Visits {
		v := &r.Visits[i]
		if r.Stages[v.Stage].Name != record.Mash {
			continue
		}
		if verb, ok := recipe.MashVerbOf(v.Word); !ok || verb == recipe.MashAdd || verb == recipe.MashDose {
			continue
		}
		if v.Nth > have[v.Word] {
			d := diag.Diagnostic{Code: diag.CodeNotAStep, Severity: diag.Warning, At: v.At, Summary: fmt.Sprintf("%s has no %s `%s`", b.Name, ordinal(v.Nth), v.Word),
				Help: "if it was done so, leave it: it is kept, beside the plan; a further reading of a step needs no word, " + wording.Example(v.At, "10:20 158 F")}
			if have[v.Word] > 0 {
				d.Summary = fmt.Sprintf("%s has %s, and this is the %s", b.Name, words.Count(have[v.Word], "`"+v.Word+"`"), ordinal(v.Nth))
			}
			diags.Add(d)
		}
	}
}

// far is how many times as much, or as little, of a grain as the bill has is taken for a
// slip of the pen: a sack more is no slip, a digit more is.
const far = 3

// weighedOf speaks of grain of which much more, or less, went in than the bill has. What
// came out of several sacks is counted together.
func weighedOf(r *record.Run, b *recipe.Batch, diags *diag.List) {
	for _, line := range b.Bill.Lines {
		sum := 0.0
		var last *record.Used
		for i := range r.Used {
			u := &r.Used[i]
			if v, ok := u.Amount.Holds(); ok && line.Grain != nil && tree.Key(u.What) == tree.Key(line.Grain.Name) && v.Kind == quantity.Mass {
				sum, last = sum+v.SI, u
			}
		}
		if last == nil || line.MassKg <= 0 || sum <= far*line.MassKg && sum >= line.MassKg/far {
			continue
		}
		unit := last.Amount.Unit
		diags.Add(diag.Diagnostic{Code: diag.CodeImprobable, Severity: diag.Warning, At: last.At,
			Summary: fmt.Sprintf("%s of %s went in by this, and the bill of %s has %s", wording.In(sum, unit, quantity.Mass), line.Grain.Name, b.Name, wording.In(line.MassKg, unit, quantity.Mass)),
			Help:    "if it was weighed so, leave it: it is kept; a slip of the pen is put right beside it, with `corrected`"})
	}
}

func ordinal(n int) string {
	switch {
	case n%10 == 1 && n%100 != 11:
		return fmt.Sprintf("%dst", n)
	case n%10 == 2 && n%100 != 12:
		return fmt.Sprintf("%dnd", n)
	case n%10 == 3 && n%100 != 13:
		return fmt.Sprintf("%drd", n)
	}
	return fmt.Sprintf("%dth", n)
}
