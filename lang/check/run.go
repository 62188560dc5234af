package check

import (
	"fmt"
	"slices"
	"time"

	"newmake/lang/diag"
	"newmake/lang/house"
	"newmake/lang/logbook"
	"newmake/lang/parallel"
	"newmake/lang/quantity"
	"newmake/lang/recipe"
	"newmake/lang/record"
	"newmake/lang/schema"
	"newmake/lang/spelling"
	"newmake/lang/tree"
	"newmake/lang/wording"
	"newmake/lang/words"
)

// run is one run of the house, read.
type run struct {
	decl  *house.Decl
	run   *record.Run
	diags diag.List
}

// instrument is one instrument of the house, read. It is nil in it where its scale
// could not be read.
type instrument struct {
	*record.Instrument
	decl  *house.Decl
	diags diag.List
}

// Run gives a run by its number, read as far as it can be, with its diagnostics; nil if
// there is none of that number.
func (h *House) Run(number string) (*record.Run, diag.List) {
	d := h.PastNamed(schema.Run, number)
	if d == nil {
		return nil, h.noSuch("run", number, h.RunNumbers(), "`newmake record` opens one")
	}
	r := h.run(d)
	return r.run, h.Ordered(slices.Concat(d.Said(), r.diags))
}

// noSuch says that there is nothing of a sort by a name, and what there is.
func (h *House) noSuch(sort, name string, all []string, first string) diag.List {
	said := diag.Diagnostic{Code: diag.CodeUnknownName, Summary: fmt.Sprintf("there is no %s %q in %s", sort, name, h.Root)}
	switch near := spelling.Nearest(name, all); {
	case near != "":
		said.Help = "did you mean `" + near + "`?"
	case len(all) == 0:
		said.Help = "the house has no " + sort + "s yet: " + first
	default:
		said.Help = "the house has " + words.And(wording.Quoted(all))
	}
	return diag.List{said}
}

// RunNumbers lists the numbers of all runs, in the order of the files and lines.
func (h *House) RunNumbers() []string {
	var out []string
	for _, d := range h.Runs {
		out = append(out, d.Name)
	}
	return out
}

// BehindRuns are the errors of runs, and of the batches that they are of, with those of their
// plants and of the library that they use. What a run filled is not known without them.
func (h *House) BehindRuns() diag.List {
	var list diag.List
	seen := map[string]bool{}
	for _, d := range h.Runs {
		list = append(list, h.run(d).diags...)
		if key := tree.Key(d.Of); !seen[key] && h.Find(d.Of) != nil {
			seen[key] = true
			_, said := h.bare(d.Of)
			list = append(list, said...)
		}
	}
	if len(h.Runs) == 0 && h.Made(&Cellar{}) == nil { // whose books they are stands in what a batch uses
		for _, name := range h.Batches() {
			_, said := h.bare(name)
			list = append(list, said...)
		}
	}
	return h.Ordered(slices.DeleteFunc(list, func(o diag.Diagnostic) bool { return o.Severity != diag.Error }))
}

// RunsOf lists the numbers of the runs of a batch. Their texts are not read for it.
func (h *House) RunsOf(batch string) []string {
	var out []string
	for _, d := range h.Runs {
		if tree.Key(d.Of) == tree.Key(batch) {
			out = append(out, d.Name)
		}
	}
	return out
}

// Instrument gives an instrument by its name, nil if the house declares none.
func (h *House) Instrument(name string) *record.Instrument {
	if i := h.instruments()[tree.Key(name)]; i != nil {
		return i.Instrument
	}
	return nil
}

func (h *House) readInstruments() map[string]*instrument {
	out := map[string]*instrument{}
	for _, d := range h.Past(schema.Instrument) {
		i := &instrument{decl: d}
		i.Instrument, i.diags = logbook.Instrument(d.Node())
		out[tree.Key(d.Name)] = i
	}
	return out
}

// run gives a run, read.
func (h *House) run(d *house.Decl) *run {
	return h.runs.get(d, func() *run {
		r := &run{decl: d}
		h.readRun(r)
		return r
	})
}

// readRun reads a run and holds it against the batch and the plant that it names. A
// batch with errors, or none, leaves a run that can be read.
func (h *House) readRun(r *run) {
	n := r.decl.Node()
	var b *recipe.Batch
	var p *recipe.Plant
	if d := h.Find(r.decl.Of); d != nil {
		if b = h.batch(d).batch; b != nil {
			p = b.Plant
		}
	} else if c := n.Get("batch"); c != nil && !h.Lost(schema.Batch, c.Text()) {
		r.diags.Add(tree.UnknownName("batch", c, h.Batches))
	}
	if p == nil && len(h.Plants) > 0 {
		p = h.plant(h.Plants[0]).plant
	}
	zone := time.UTC
	if p != nil {
		if z, err := time.LoadLocation(p.Zone); err == nil {
			zone = z
		}
	}
	var said diag.List
	r.run, said = logbook.Run(n, logbook.Around{Zone: zone, Instrument: h.Instrument})
	r.diags = append(r.diags, said...)
	h.certified(r.run)
	h.instrumentsOf(n, &r.diags)
	h.vesselsOf(n, p, &r.diags)
	stillsOf(r.run, p, &r.diags)
	if b != nil {
		stepsOf(r.run, b, &r.diags)
		weighedOf(r.run, b, &r.diags)
	}
}

// readBought reads what the stores say of lots with a certificate.
func (h *House) readBought() map[string]*record.Lot {
	out := map[string]*record.Lot{}
	for _, d := range h.Past(schema.Store) {
		s, _ := logbook.Store(d.Node())
		for i := range s.Lots {
			if l := &s.Lots[i]; l.Word == "" && l.Lot != "" && (l.Moisture != nil || l.Starch != nil) {
				out[lotKey(l.What, l.Lot)] = l
			}
		}
	}
	return out
}

func lotKey(what, lot string) string { return tree.Key(what) + "\x00" + tree.Key(lot) }

// certified puts beside what a run used what its lot's certificate says.
func (h *House) certified(r *record.Run) {
	for i := range r.Used {
		u := &r.Used[i]
		if u.Amount.Kind == quantity.Bushel {
			u.BushelKg = h.BushelKg(u.What)
		}
		if u.Lot == "" {
			continue
		}
		if l := h.bought()[lotKey(u.What, u.Lot)]; l != nil {
			u.Moisture, u.Starch = l.Moisture, l.Starch
		}
	}
}

// instrumentsOf speaks of the instruments that a run names and the house does not
// declare. Of a house that declares none that goes without saying.
func (h *House) instrumentsOf(n *tree.Node, diags *diag.List) {
	all := h.instruments()
	if len(all) == 0 {
		return
	}
	var first *tree.Capture
	var names []string
	var walk func(lines []*tree.Node)
	walk = func(lines []*tree.Node) {
		for _, l := range lines {
			for _, c := range l.Match.All("using") {
				if all[tree.Key(c.Text())] != nil || slices.Contains(names, c.Text()) {
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
func (h *House) vesselsOf(n *tree.Node, p *recipe.Plant, diags *diag.List) {
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
			if still == nil || !ok || v.Read[j].What != record.Volume || v.Read[j].Doubt != "" || now.SI <= still.HoldsM3*fullest {
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
		switch v.Word {
		case "water", "backset", "heat", "rest", "cool", "boil", "drain", "recirculate", "sparge":
		default:
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

// ofRecords is all that there is to say of the runs, instruments and casks in files.
// A cask is filled, read and emptied in several; where one of them is asked for, all are
// looked at.
func (h *House) ofRecords(in map[*house.File]bool) diag.List {
	var list diag.List
	for _, i := range h.instruments() {
		if in[i.decl.File] {
			list = append(list, i.diags...)
		}
	}
	runs := slices.DeleteFunc(slices.Clone(h.Runs), func(d *house.Decl) bool { return !in[d.File] })
	parallel.Each(len(runs), func(i int) { h.run(runs[i]) })
	for _, d := range runs {
		list = append(list, h.run(d).diags...)
	}
	if len(runs) > 0 {
		list = append(list, h.claimed(in)...)
	}
	for _, f := range ofCellar {
		if slices.ContainsFunc(h.Past(f), func(d *house.Decl) bool { return in[d.File] }) {
			return append(list, h.cellar().diags...)
		}
	}
	return list
}
