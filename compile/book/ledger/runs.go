package ledger

import (
	"fmt"
	"slices"
	"strings"

	"newmake/compile/book/flow"
	"newmake/compile/made"
	"newmake/lang/diag"
	"newmake/lang/record"
	"newmake/lang/wording"
)

// What a remainder may be, as a share of the most that a holder held, to be a loss of the
// work: more is still there, until a line says where it went (common practice).
const remainder = 0.05

// workLoses is the share that one step of the work, filling, reducing or bottling, may lose
// or find before somebody should look at its gauges again (common practice).
const workLoses = 0.02

// distilling is one run in the books.
type distilling struct {
	run    *record.Run
	number string
	gauged record.StageName // where its production is gauged: fill, spirit, "" if nowhere
	first  *record.Visit    // where no hearts are gauged: the first line of the fill that measures
	feints bool             // its feints have a line of their own; else its heads and tails are they
}

func (b *books) distilled(r *record.Run) *distilling {
	d := &distilling{run: r, number: r.Number}
	d.gauged, _ = made.Hearts(r)
	for i := range r.Visits {
		v := &r.Visits[i]
		stage := r.Stages[v.Stage].Name
		switch {
		case v.Word == "feints" && stage == record.Spirit && len(v.Read) > 0:
			d.feints = true
		case stage == record.Fill && (v.Word == "gauge" || v.Word == "into") && d.first == nil && len(v.Read) > 0:
			d.first = v
		}
	}
	return d
}

// The holders of a run.
func (d *distilling) stills(f *fold) *holder {
	h := f.of(Unfinished, stillsOf(d.number), d.run.At)
	h.stills = true
	return h
}

// stillsOf is what a run has in its stills.
func stillsOf(number string) string { return "run " + number + ", in the stills" }

func (d *distilling) receiver(f *fold) *holder {
	return f.of(Tanks, "hearts of run "+d.number, d.run.At)
}

// kept is where low wines or feints of a run are kept: the tank that they went to, or what
// is called after the run.
func kept(f *fold, what, number, tank string, at diag.Span) *holder {
	if tank != "" {
		return f.of(Unfinished, tank, at)
	}
	return f.of(Unfinished, what+" of run "+number, at)
}

// ofRun books a line of a run.
func (b *books) ofRun(f *fold, d *distilling, e *flow.Event) {
	switch d.run.Stages[e.Visit.Stage].Name {
	case record.Strip:
		if e.Visit.Word == "low-wines" {
			d.lowWines(f, e.Visit)
		}
	case record.Spirit:
		b.still(f, d, e)
	case record.Fill:
		b.filling(f, d, e)
	}
}

// ends is when a run is over, stage by stage.
type ends struct {
	still, spirit, fill, begun record.Date
	fills                      bool
}

// see looks at a line of the run.
func (o *ends) see(d *distilling, e *flow.Event) {
	switch d.run.Stages[e.Visit.Stage].Name {
	case record.Spirit:
		o.still, o.spirit = e.On, e.On
	case record.Fill:
		if o.begun.IsZero() {
			o.begun = e.On
		}
		switch e.Visit.Word {
		case "into", "left":
			o.fill, o.fills = e.On, true
		case "hearts":
			o.still = later(o.still, e.On)
		}
	}
}

// over adds what ends a run.
func (b *books) over(d *distilling, o ends) {
	if d.gauged == "" && d.first != nil {
		o.still = later(o.still, o.begun)
	}
	if !o.spirit.IsZero() && o.spirit != o.still {
		b.add(o.spirit, flow.RunEnds, func(f *fold) { d.early(f) })
	}
	if !o.still.IsZero() {
		b.add(o.still, flow.RunEnds, func(f *fold) { d.closeStills(f) })
	}
	if o.fills {
		b.add(o.fill, flow.RunEnds, func(f *fold) { d.closeReceiver(f) })
	}
}

func later(a, b record.Date) record.Date {
	if a.Compare(b) < 0 {
		return b
	}
	return a
}

func (d *distilling) name() string { return "run " + d.number }

func (d *distilling) lowWines(f *fold, v *record.Visit) {
	if !f.sees(v) {
		return
	}
	g, ok := f.measured(v, "low wines", d.name(), 0, 0, record.Volume, record.Receiver)
	if !ok {
		return
	}
	f.move(f.outside(Distilled), d.stills(f), g.amount, f.lineOf(v, d.name()))
}

// still books a line of the spirit run.
func (b *books) still(f *fold, d *distilling, e *flow.Event) {
	v := e.Visit
	if !f.sees(v) || v.None {
		return
	}
	switch v.Word {
	case "charge":
		if v.Of == "feints" || v.From != "" {
			d.charge(b, f, e)
		} else if v.Of != "water" {
			if g, ok := f.measured(v, "charge", d.name(), 0, 0, record.Volume); ok {
				f.charged[d.number] = f.charged[d.number].plus(g.amount)
			} else {
				f.unsure[d.number] = true
			}
		}
	case "hearts":
		if d.gauged == record.Spirit {
			d.produced(f, v, v.To)
		} else if g, ok := f.measured(v, "receiver", d.name(), 0, 0, record.Volume, record.Receiver); ok {
			f.first[d.number] = append(f.first[d.number], g)
		}
	case "feints", "heads", "tails", "foreshots":
		if (v.Word == "feints") != d.feints {
			return
		}
		g, ok := f.measured(v, "feints", d.name(), 0, 0, record.Volume, record.Receiver)
		if !ok {
			if f.read(v, record.Volume, record.Receiver) != nil {
				f.want(Missing{What: "the strength of the " + v.Word + " of " + d.name(), Mend: f.more(v, wording.More{Readings: []string{"__ proof at __ F"}}), Instead: true, Section: "19.585", at: v.At})
			}
			return
		}
		if v.Word == "feints" {
			f.gauged(g)
		}
		in := kept(f, "feints", d.number, v.To, v.At)
		f.move(d.stills(f), in, g.amount, f.lineOf(v, d.name()))
		f.feints = append(f.feints, feints{d.number, in, v})
	}
}

// charge books what a spirit run takes of another's feints or low wines.
func (d *distilling) charge(b *books, f *fold, e *flow.Event) {
	v := e.Visit
	if v.Of == "water" || v.From == d.number {
		return
	}
	src := b.unfinished(f, v.From, e.From.Run)
	g, ok := f.measured(v, "charge", d.name(), 0, 0, record.Volume)
	switch {
	case src == nil && !ok:
		f.unsure[d.number] = true
		return
	case src == nil:
		run, in := f.fromFeints(d)
		f.want(Missing{What: "from where the " + v.Of + " of " + d.name() + " came", Mend: f.more(v, wording.More{From: run}), In: in, Instead: true, Section: "19.584", at: v.At})
		src = f.nowhere("the "+v.Of+" of "+d.name(), g.amount, v.At)
	case !ok:
		g.amount = src.balance
	}
	f.move(src, d.stills(f), g.amount, f.lineOf(v, d.name()))
	if src.ungauged { // now they are: the rest was never there
		f.move(src, f.outside(Stills), src.balance, f.lineOf(v, d.name()))
		src.ungauged = false
	}
}

// unfinished is the holder of low wines or feints that a name stands for: a tank, or a run
// whose feints went to one or stayed its own.
func (b *books) unfinished(f *fold, name string, r *record.Run) *holder {
	if h := f.hold[string(Unfinished)+"\x00"+name]; h != nil && name != "" {
		return h
	}
	if r == nil || name == "" {
		return nil
	}
	for i := range r.Visits {
		if v := &r.Visits[i]; (v.Word == "feints" || v.Word == "tails") && v.To != "" {
			return f.of(Unfinished, v.To, v.At)
		}
	}
	return f.of(Unfinished, "feints of run "+r.Number, r.At)
}

// produced books a production gauge.
func (d *distilling) produced(f *fold, v *record.Visit, tank string) bool {
	g, ok := f.measured(v, "production", d.name(), 0, 0, record.Volume, record.Receiver)
	if !ok {
		d.ungauged(f, v)
		return false
	}
	f.gauged(g)
	to := d.receiver(f)
	if tank != "" && !d.fills() {
		to = f.of(Tanks, tank, v.At)
	}
	f.move(d.stills(f), to, g.amount, f.lineOf(v, d.name()))
	to.abv = g.abv
	return true
}

// fills says that a fill of the run is written.
func (d *distilling) fills() bool {
	for _, s := range d.run.Stages {
		if s.Name == record.Fill {
			return true
		}
	}
	return false
}

func (d *distilling) ungauged(f *fold, v *record.Visit) {
	noVolume := f.read(v, record.Volume, record.Receiver, record.Mass) == nil
	switch {
	case noVolume && f.read(v, record.Strength) == nil: // the words of an opened run, perhaps
		f.want(Missing{What: "how much the " + v.Word + " of " + d.name() + " are, and how strong", Mend: f.more(v, f.amountOf(v, wording.More{})), Instead: true, Section: "19.585, 19.618", at: v.At})
	case f.read(v, record.Strength) == nil:
		f.want(Missing{What: "the strength of the " + v.Word + " of " + d.name(), Mend: f.more(v, wording.More{Readings: []string{"__ proof at __ F"}}), Instead: true, Section: "19.585, 19.618", at: v.At})
	case noVolume:
		f.want(Missing{What: "how much the " + v.Word + " of " + d.name() + " are", Mend: f.more(v, f.amountOf(v, wording.More{})), Instead: true, Section: "19.585, 19.618", at: v.At})
	}
}

// filling books a line of the fill.
func (b *books) filling(f *fold, d *distilling, e *flow.Event) {
	v := e.Visit
	if !f.sees(v) || v.None {
		return
	}
	recv := d.receiver(f)
	switch v.Word {
	case "hearts":
		d.produced(f, v, "")
	case "reduce":
		recv.abv = 0
	case "gauge":
		if d.gauged == "" && d.first == v {
			d.produced(f, v, "")
			return
		}
		if g, ok := f.measured(v, "reduced", d.name(), 0, 0, record.Volume); ok {
			b.settle(f, recv, g, v, "reducing "+d.name())
		} else if s := f.strength(v); s > 0 {
			recv.abv = s
		}
	case "into":
		b.into(f, d, recv, e)
	case "left":
		b.left(f, recv, v, record.Volume)
	case "lost":
		b.lost(f, recv, v)
	default:
		if s := f.strength(v); s > 0 {
			recv.abv = s
		}
	}
}

// into books a cask that was filled.
func (b *books) into(f *fold, d *distilling, recv *holder, e *flow.Event) {
	v, life := e.Visit, e.To.Life
	if life == nil {
		return
	}
	abv := recv.abv
	cask := b.cask(f, life)
	g, ok := f.measured(v, "fill", "cask "+life.Serial, abv, 0, record.Volume)
	if !ok {
		w := Missing{What: "how much went into cask " + life.Serial, Mend: f.more(v, f.weightOf(v)), Instead: true, Section: "19.585, 19.618", at: v.At}
		if g.abv == 0 {
			w.What, w.Mend, w.In, w.Instead = "at which strength cask "+life.Serial+" was filled", "gauge __ gal, __ proof at __ F", "before the `into`", false
		}
		f.want(w)
		return
	}
	if !g.byWeight && g.tareKg == 0 {
		f.want(Missing{What: "the tare of cask " + life.Serial, Mend: f.more(v, f.weightOf(v)), Instead: true, Section: "19.619", at: v.At})
	}
	f.gauged(g)
	if d.gauged == "" && d.first != nil && d.first.Word == "into" && recv.balance.zero() {
		f.move(d.stills(f), recv, g.amount, f.lineOf(v, d.name())) // filled at the production gauge
	}
	f.move(recv, cask, g.amount, f.lineOf(v, "cask "+life.Serial))
	cask.abv, f.tare[life] = g.abv, g.tareKg
}

// closeStills ends a spirit run: what was charged and not found again was left in the pot.
func (d *distilling) closeStills(f *fold) {
	h := d.stills(f)
	l := line{at: d.run.At, what: d.name()}
	charged, of := h.most, "low wines"
	var unbooked cents
	if charged.pg == 0 && !f.unsure[d.number] { // no low wines are written, and nothing of another run
		unbooked = f.charged[d.number]
		charged, of = unbooked, "charge"
	}
	switch {
	case h.balance.pg > 0 && h.balance == h.most && d.gauged == "": // nothing came over yet
		return
	case h.balance.share(charged) > stillsKeep && !f.gaugedFeints(d.number):
		d.unwritten(f, h, l)
		return
	case h.balance.pg > 0:
		if part := h.balance.share(charged); d.feints && part > stillsKeep {
			f.odd = append(f.odd, Check{What: "a run gives what was charged", Of: d.name(), Says: fmt.Sprintf("%.1f %% of its charge is neither in the hearts nor in the feints%s", 100*part, d.looked()), By: h.balance.amount(), day: f.today, at: d.run.At})
		}
		f.move(h, f.outside(Stills), h.balance, l)
	case h.balance.pg < 0:
		switch over := f.early[d.number].minus(h.balance).minus(unbooked); {
		case charged.pg == 0 || over.share(charged) <= workLoses:
		case of == "low wines" && !d.refed() && over.share(charged) <= feintsBring:
			charge, in := f.chargeOf(d)
			f.want(Missing{What: "how much of which feints " + d.name() + " charged: its hearts and feints are more than its low wines", Mend: charge, In: in, Section: "19.584", at: d.run.At})
		default:
			f.odd = append(f.odd, Check{What: "a run gives no more than was charged", Of: d.name(), Says: fmt.Sprintf("hearts and feints are %.1f %% more than its %s%s", 100*over.share(charged), of, d.looked()), By: over.amount(), day: f.today, at: d.run.At})
		}
		f.move(f.outside(Distilled), h, cents{}.minus(h.balance), l)
	}
}

// early books at the end of a spirit run whose hearts are gauged days later, with the fill, what
// its feints hold, where no low wines of it are written: it was distilled by then.
func (d *distilling) early(f *fold) {
	if h := d.stills(f); h.most.zero() && h.balance.pg < 0 {
		f.early[d.number] = cents{}.minus(h.balance)
		f.move(f.outside(Distilled), h, f.early[d.number], line{at: d.run.At, what: d.name()})
	}
}

// gaugedFeints says that feints of a run, or its heads and tails, were gauged.
func (f *fold) gaugedFeints(number string) bool {
	return slices.ContainsFunc(f.feints, func(o feints) bool { return o.run == number })
}

// unwritten keeps as feints what a charge holds more than its hearts, where nobody gauged the
// feints: they are there, and no loss, until a line says how much they are.
func (d *distilling) unwritten(f *fold, h *holder, l line) {
	in := kept(f, "feints", d.number, "", d.run.At)
	in.ungauged = true
	f.move(h, in, h.balance, l)
	for i := range d.run.Visits {
		if v := &d.run.Visits[i]; (v.Word == "feints" || v.Word == "tails") && f.read(v, record.Volume, record.Receiver) != nil {
			return // its strength is asked for
		}
	}
	f.want(Missing{What: "how much feints " + d.name() + " left, and how strong: not gauged, they stand as what its hearts leave of its charge", Mend: "feints __ gal, __ proof at __ F", In: "in its `spirit`", Section: "19.585", at: d.run.At})
}

// looked is where to look for what is off in a run.
func (d *distilling) looked() string {
	return ": `newmake review " + d.number + " --full` holds its readings against one another"
}

// waiting are the last feints of a run before that are on hand, nil if there are none.
func (f *fold) waiting(d *distilling) *feints {
	for i := len(f.feints) - 1; i >= 0; i-- {
		if o := &f.feints[i]; o.run != d.number && o.in.balance.pg > 0 {
			return o
		}
	}
	return nil
}

// chargeOf is the line that would say which feints a run charged: those of the last run
// that has some on hand, as they were gauged. Where there are none, they came from a run
// that is not written.
func (f *fold) chargeOf(d *distilling) (line, in string) {
	o := f.waiting(d)
	if o == nil {
		return `charge feints __ gal, __ proof at __ F from "N"`, "in its `spirit`" + before(d)
	}
	var as []string
	for i := range o.visit.Read {
		r := o.visit.Read[i].AsOf(f.known)
		v, ok := r.Holds()
		switch {
		case !ok || r.What != record.Volume && r.What != record.Receiver && r.What != record.Strength:
		case r.At != nil:
			as = append(as, v.String()+" at "+r.At.String())
		default:
			as = append(as, v.String())
		}
	}
	return fmt.Sprintf("charge feints %s from %q", strings.Join(as, ", "), o.run), "in its `spirit`"
}

// before asks for a run from which feints came that nobody wrote.
func before(d *distilling) string {
	return fmt.Sprintf(", and a run \"N\" before %s that says what it left: `spirit { feints __ gal, __ proof at __ F }`", d.run.Date)
}

// fromFeints is the run that a charge that names none took its feints of, and what else is to be
// written.
func (f *fold) fromFeints(d *distilling) (run, in string) {
	if o := f.waiting(d); o != nil {
		return fmt.Sprintf("%q", o.run), ""
	}
	return `"N"`, strings.TrimPrefix(before(d), ", ")
}

// stillsKeep is the share of a charge that a spirit run may leave in the pot, or lose: more
// is a gauge that is wrong, or feints that nobody wrote down (common practice).
const stillsKeep = 0.07

// feintsBring is how much alcohol, as a share of that of a run's low wines, feints that nobody
// wrote down may have brought: more is no feints (common practice).
const feintsBring = 1.0

// refed says that the run charged feints.
func (d *distilling) refed() bool {
	for i := range d.run.Visits {
		if v := &d.run.Visits[i]; v.Word == "charge" && (v.Of == "feints" || v.From != "") {
			return true
		}
	}
	return false
}

// left is the line of a fill that says what was left, and not where; nil if there is none.
func (d *distilling) left(f *fold) *record.Visit {
	for i := range d.run.Visits {
		if v := &d.run.Visits[i]; d.run.Stages[v.Stage].Name == record.Fill && v.Word == "left" && v.To == "" && !v.None && f.sees(v) {
			return v
		}
	}
	return nil
}

// closeReceiver ends a fill: a little that is over is lost, more is still there.
func (d *distilling) closeReceiver(f *fold) {
	h := d.receiver(f)
	l := line{at: d.run.At, what: d.name()}
	part := h.balance.share(h.most)
	switch {
	case h.most.zero():
		return
	case part > remainder && d.left(f) != nil:
		if v := d.left(f); f.read(v, record.Volume) != nil { // else it was asked with how much it was
			f.want(Missing{What: "to which tank went what was left of " + named(h), Mend: f.more(v, wording.More{To: `"which tank"`}), Instead: true, Section: "19.590", at: v.At})
		}
		return
	case part > remainder:
		f.want(Missing{What: fmt.Sprintf("where the other %.1f %% of the hearts of %s are", 100*part, d.name()), Mend: `left __ gal to "which tank"`, In: "in its `fill`", Section: "19.590", at: d.run.At})
		return
	case part > workLoses || part < -workLoses:
		f.odd = append(f.odd, Check{What: "what was filled is what there was", Of: d.name(), Says: fmt.Sprintf("%+.1f %% is not in its casks, or left", 100*part), By: h.balance.amount(), day: f.today, at: d.run.At})
	}
	f.move(h, f.outside(Losses), h.balance, l)
}
