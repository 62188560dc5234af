// Package logbook reads the trees of runs, instruments, tastings and trials into
// records (package record), and says what of them cannot be so.
//
// A run may stop anywhere and leave anything out: what is not written is no error.
// What is written is kept as it was read. A value that is hard to believe is spoken
// of, and kept.
package logbook

import (
	"time"

	"newmake/lang/diag"
	"newmake/lang/quantity"
	"newmake/lang/record"
	"newmake/lang/tree"
	"newmake/lang/wording"
)

// Around is what a run is read beside.
type Around struct {
	Zone       *time.Location                       // of its clocks
	Instrument func(name string) *record.Instrument // nil for one that is not declared
	// Has says that the house has something of a name: a cask, a vat, a run. nil: names are
	// not looked at. Names lists them, for one who misspelled it.
	Has   func(sort, name string) bool
	Names func(sort string) []string
}

// named says so where a name is none of its sort.
func (r *reader) named(sort string, c *tree.Capture) {
	if r.Has != nil && c != nil && !r.Has(sort, c.Text()) {
		r.diags.Add(tree.UnknownName(sort, c, func() []string { return r.Names(sort) }))
	}
}

// Run reads one run.
func Run(n *tree.Node, around Around) (*record.Run, diag.List) {
	r := &reader{Around: around, of: n.Field.Name, with: map[quantity.Kind]string{}, run: &record.Run{
		Number: n.Text("name"), Batch: n.Text("batch"), Sheet: n.Line("sheet").Text("text"), Zone: around.Zone, At: n.At(),
	}}
	if c := n.Get("date"); c != nil {
		r.run.Date = record.ReadDate(c.Text())
	}
	r.day = r.run.Date
	for _, l := range n.Lines {
		switch {
		case l.Field.Name == "used":
			r.used(l)
		case l.Field.Block != nil:
			r.stage(l)
		case l.Bad:
		case l.Field.Name == "by":
			r.by = l.Text("who")
		case l.Field.Name == "with":
			r.takes(l)
		case l.Field.Name == "corrected":
			r.diags.Add(diag.Diagnostic{Code: diag.CodeCorrection, At: l.At(),
				Summary: "this correction stands outside the block of what it corrects",
				Help:    "write it in the block of the line that it corrects, below that line"})
		}
	}
	charges(r.run)
	doubts(r.run, &r.diags)
	outOfTurn(r.run, &r.diags)
	begunLater(r.run, &r.diags)
	return r.run, r.diags
}

// reader is what has been read of a run so far.
type reader struct {
	Around
	of    string // what is read: a run, a vat
	run   *record.Run
	diags diag.List
	by    string                   // who, until the next `by`
	with  map[quantity.Kind]string // instruments in hand, by what they read
	day   record.Date              // of the line above
	clock clock                    // of the stage
	times []*timed                 // of the stage's visits, nil of one that has none
	early bool                     // a date before the run's was spoken of
}

// takes notes the instruments that are used from here on, each in place of the one of its
// kind. What kind one is that is not declared is unknown: it counts only for readings that
// name it.
func (r *reader) takes(l *tree.Node) {
	for _, c := range l.Match.All("using") {
		if i := r.Instrument(c.Text()); i != nil {
			r.with[i.Scale.Kind] = i.Name
		}
	}
}

// stage reads a block of visits.
func (r *reader) stage(n *tree.Node) {
	name := record.StageName(n.Field.Name)
	r.run.Stages = append(r.run.Stages, record.Stage{Name: name, Vessel: n.Text("vessel"), At: n.At()})
	begin, words := len(r.run.Visits), map[string]int{}
	r.times = nil
	r.clock = clock{dated: name == record.Mash}
	for _, l := range n.Lines {
		if l.Bad {
			continue
		}
		switch word := l.Field.Name; word {
		case "by":
			r.by = l.Text("who")
		case "with":
			r.takes(l)
		case "corrected":
			r.corrected(l, r.run.Visits[begin:], nil)
		default:
			words[word]++
			v := r.visit(name, l)
			v.Stage = len(r.run.Stages) - 1
			if v.Nth == 0 {
				v.Nth = words[word]
			}
			words[word] = max(words[word], v.Nth)
			r.keep(v)
		}
	}
	r.inOrder()
}

// keep puts in a visit that was read, with the time of its line.
func (r *reader) keep(v record.Visit) {
	r.run.Visits, r.times = append(r.run.Visits, v), append(r.times, r.clock.now)
}

// used reads what went in.
func (r *reader) used(n *tree.Node) {
	for _, l := range n.Lines {
		if l.Bad {
			continue
		}
		switch l.Field.Name {
		case "by":
			r.by = l.Text("who")
		case "with":
			r.takes(l)
		case "corrected":
			r.corrected(l, nil, r.run.Used)
		default:
			p := r.parts(l, 1, "", "")
			u := record.Used{What: l.Text("name"), Lot: l.Text("sack"), From: l.Text("source"), By: p.by, Note: p.note, At: l.At()}
			u.Amount = record.Reading{What: amountOf(l), State: record.Blank, Place: l.At()}
			switch {
			case len(p.read) > 0:
				what := u.Amount.What
				u.Amount = p.read[0]
				u.Amount.What = what
			case p.none:
				u.Amount.State = record.None
			default:
				r.run.Blank++
			}
			r.run.Used = append(r.run.Used, u)
		}
	}
}

// amountOf is what is read for something that goes in: a volume, or a weight.
func amountOf(l *tree.Node) record.What {
	if c := l.Get("value"); c != nil && c.Kind == quantity.Volume {
		return record.Volume
	}
	return record.Mass
}

// visit reads a line of a stage.
func (r *reader) visit(stage record.StageName, l *tree.Node) record.Visit {
	v := record.Visit{Word: l.Field.Name, When: r.when(l), At: l.At()}
	caps, lead := l.Match.Caps, 0
	word := func() string { return caps[lead].Slot }
	switch v.Word {
	case "add", "dose":
		for lead < len(caps) && (word() == "grain" || word() == "enzyme" || word() == "," && lead+1 < len(caps) && caps[lead+1].Slot == "grain") {
			if word() != "," {
				v.Names = append(v.Names, caps[lead].Text())
			}
			lead++
		}
	case "to":
		v.Of = word()
		if lead++; lead < len(caps) && word() == "on" {
			v.Why = caps[lead+1].Slot
			lead += 2
		}
	case "charge":
		if lead < len(caps) && (word() == "wash" || word() == "low-wines" || word() == "feints" || word() == "water") {
			v.Of = word()
			lead++
		}
	case "into":
		v.To = caps[lead].Text()
		lead++
	case "stopped":
		v.LastS = l.Num("duration")
		lead = len(caps)
	case "note":
		lead = len(caps)
	default:
		if c := l.Get("number"); c != nil && lead < len(caps) && word() == "number" {
			v.Nth = whole(c, "steps", "write `cool 2` for the second; a reading has its unit, as in `1.066 SG`, `5.3 pH`, "+wording.Example(c.At(), "158 F"), &r.diags)
			lead++
		}
	}
	p := r.parts(l, lead, stage, v.Word)
	v.Read, v.None, v.By, v.Note, v.Written = p.read, p.none, p.by, p.note, p.written
	if c := l.Get("source"); c != nil {
		v.From = c.Text()
	}
	if c := l.Get("tank"); c != nil {
		v.To = c.Text()
	}
	if c := l.Get("what"); c != nil {
		v.Of = c.Text()
	}
	for i := range v.Read {
		switch o := &v.Read[i]; {
		case v.Word == "lost":
			o.What = record.Lost
		case v.Word == "reduce" && o.What == record.Volume:
			o.What = record.Water
		}
	}
	return v
}

// whole is a number that counts: steps, bottles, answers.
func whole(c *tree.Capture, what, help string, diags *diag.List) int {
	n := int(c.SI)
	if float64(n) != c.SI {
		diags.Add(diag.Diagnostic{Code: diag.CodeWholeNumber, At: c.At(), Summary: what + " are counted, and " + c.Item.Num + " is none of the numbers", Help: help})
	}
	return n
}
