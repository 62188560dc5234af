package review

import (
	"math"
	"slices"

	"newmake/lang/record"
)

// lots are those of a run that were gauged, each of all the charges of its still together.
type lots struct {
	wort       number // litres to the fermenter
	og, fg     number // the first and the last gravity of the ferment
	wash       gauged
	lowWines   gauged
	charged    gauged // low wines, as they were charged
	chargedAbv int    // the flow of the strength of what was charged
	whole      gauged // all that was charged, gauged as one in the still
	feintsIn   gauged
	extra      gauged // whatever else was charged
	fractions  []fraction
	hearts     gauged // as they stood before they were reduced
	water      number // that reduced them
	entry      gauged
	casks      []number // litres into each; one that is not read is not known
	left       gauged   // what no cask took
	lost       []loss

	of stills // as they are read
}

// fraction is what came over in one of the parts of the spirit run.
type fraction struct {
	id, words string
	gauged
}

// stills are the lots of the charges, as they are read.
type stills struct {
	wash, lowWines     several
	in                 map[string]*several // what each charge of the spirit still took, by its word
	lots, receivers    map[string]*several // of the fractions of the spirit run
	order              []string            // of the fractions, as they were written
	strips, distilling int                 // charges
}

// several is a lot that was gauged charge by charge, or of some charges together.
type several []span

// span is what was gauged of some charges: of those since what was gauged before it.
type span struct {
	from, to int
	gauged
}

// put adds what a line says; lines of one charge are parts of what came of it.
func (s *several) put(charge int, g gauged) {
	charge = max(charge, 1)
	from := 1
	if n := len(*s); n > 0 {
		if last := &(*s)[n-1]; last.to >= charge {
			last.gauged = last.And(g)
			return
		}
		from = (*s)[n-1].to + 1
	}
	*s = append(*s, span{from, charge, g})
}

// reaches reports whether something was gauged of a charge.
func (s several) reaches(charge int) bool { return len(s) > 0 && s[len(s)-1].to >= max(charge, 1) }

// all is what was gauged of so many charges together: how much is not known where one of them
// was not gauged.
func (s several) all(charges int) gauged {
	var out gauged
	whole := s.reaches(charges)
	for _, x := range s {
		whole = whole && x.Given
		out = out.And(x.gauged)
	}
	if !whole {
		out.VolumeL = number{}
	}
	return out
}

// written reads the lots of a run off its lines.
func written(b *bench, run *record.Run, e Expected) *lots {
	w := &lots{of: stills{
		in: map[string]*several{}, lots: map[string]*several{}, receivers: map[string]*several{},
		strips: max(e.StripCharges, 1), distilling: max(e.SpiritCharges, 1),
	}}
	for i := range run.Visits {
		v := &run.Visits[i]
		if v.Stage >= len(run.Stages) || v.None && v.Word == "charge" {
			continue
		}
		if v.Word == "lost" {
			w.lose(b, v, run.Stages[v.Stage].Name)
			continue
		}
		switch run.Stages[v.Stage].Name {
		case record.Mash:
		case record.Ferment:
			w.ferment(b, v)
		case record.Strip:
			w.strip(b, v)
		case record.Spirit:
			w.spirit(b, v)
		case record.Fill:
			w.fill(b, v)
		}
	}
	w.wash, w.lowWines = w.of.wash.all(w.of.strips), w.of.lowWines.all(w.of.strips)
	w.into()
	for _, id := range w.of.order {
		if g := w.came(id); g.Given {
			w.fractions = append(w.fractions, fraction{id, "the " + id, g})
		}
	}
	return w
}

func (w *lots) ferment(b *bench, v *record.Visit) {
	if r := find(v.Read, record.Volume); r != nil && !w.wort.Read() {
		w.wort = b.Volume(r, 0)
	}
	if r := find(v.Read, record.Gravity); r != nil {
		if g := b.Gravity(r); g.Read() {
			if !w.og.Read() {
				w.og = g
			}
			w.fg = g
		}
	}
}

func (w *lots) strip(b *bench, v *record.Visit) {
	switch v.Word {
	case "charge":
		w.of.wash.put(v.Charge, b.Lot(v.Read))
	case "low-wines":
		w.of.lowWines.put(v.Charge, b.Lot(v.Read))
	}
}

func (w *lots) spirit(b *bench, v *record.Visit) {
	put := func(to map[string]*several, id string, g gauged) {
		if to[id] == nil {
			to[id] = &several{}
		}
		to[id].put(v.Charge, g)
	}
	seen := func(id string) {
		if !slices.Contains(w.of.order, id) {
			w.of.order = append(w.of.order, id)
		}
	}
	switch v.Word {
	case "charge":
		put(w.of.in, v.Of, b.Lot(v.Read))
	case "to":
		if r := find(v.Read, record.Receiver); r != nil && ends[v.Of] != "" { // the readings are of what ends
			put(w.of.receivers, ends[v.Of], gauged{VolumeL: b.Volume(r, 0), Given: true})
			seen(ends[v.Of])
		}
	case "foreshots", "heads", "hearts", "tails", "feints":
		put(w.of.lots, v.Word, b.Lot(v.Read))
		seen(v.Word)
	}
}

// ends is the fraction that ends where another begins.
var ends = map[string]string{"heads": "foreshots", "hearts": "heads", "tails": "hearts"}

// took is what a charge took of something.
func (s stills) took(of string, charge int) (g gauged, ok bool) {
	if s.in[of] == nil {
		return gauged{}, false
	}
	for _, x := range *s.in[of] {
		if x.to == charge {
			return x.gauged, true
		}
	}
	return gauged{}, false
}

// into sorts what was charged. What is in the still counts with the feints, unless those were
// charged by a line of their own.
func (w *lots) into() {
	var charged, whole, feints, extra several
	wholes := 0
	for charge := 1; charge <= w.of.distilling; charge++ {
		low, hasLow := w.of.took("low-wines", charge)
		if f, ok := w.of.took("feints", charge); ok {
			feints.put(charge, f)
		}
		for of := range w.of.in {
			if g, ok := w.of.took(of, charge); ok && of != "" && of != "low-wines" && of != "feints" && of != "water" {
				extra.put(charge, g)
			}
		}
		all, hasAll := w.of.took("", charge)
		switch {
		case hasAll && (hasLow || feints.reaches(charge) || extra.reaches(charge)):
			charged.put(charge, low.And(all))
		case hasAll:
			whole.put(charge, all)
			wholes++
		case hasLow:
			charged.put(charge, low)
		}
	}
	w.extra = extra.all(0)
	if wholes > 0 && len(charged) == 0 {
		w.whole = whole.all(w.of.distilling)
		return
	}
	w.charged, w.feintsIn = charged.all(w.of.distilling), feints.all(0)
	if wholes > 0 { // of some charges it is known what was in them, and of some how much in all
		w.charged.VolumeL, w.feintsIn = number{}, gauged{}
	}
}

// came is what came over of a fraction. What was gauged goes before what the receiver said when
// the spout was turned.
func (w *lots) came(id string) gauged {
	var lots, receivers several
	if s := w.of.lots[id]; s != nil {
		lots = *s
	}
	if s := w.of.receivers[id]; s != nil {
		receivers = *s
	}
	received := func(from, to int) (several, bool) {
		var out several
		for charge := from; charge <= to; charge++ {
			at := slices.IndexFunc(receivers, func(x span) bool { return x.to == charge })
			if at < 0 {
				return nil, false
			}
			out.put(charge, receivers[at].gauged)
		}
		return out, true
	}
	var out several
	to := 0
	for _, x := range lots {
		if !x.VolumeL.Read() {
			if r, ok := received(x.from, x.to); ok {
				x.VolumeL, x.Given = r.all(x.to).VolumeL, true
			}
		}
		out, to = append(out, x), x.to
	}
	if to < w.of.distilling {
		if r, ok := received(to+1, w.of.distilling); ok {
			out = append(out, r...)
		} else if r, ok := received(to+1, to+1); ok && len(out) == 0 {
			out = r // how much in all is not known
		}
	}
	return out.all(w.of.distilling)
}

// parts are the fractions that the balance counts. Heads and tails that nobody gauged
// by themselves are in the feints, which were.
func (w *lots) parts() []fraction {
	feints := slices.ContainsFunc(w.fractions, func(f fraction) bool { return f.id == "feints" })
	return slices.DeleteFunc(slices.Clone(w.fractions), func(f fraction) bool {
		return feints && (f.id == "heads" || f.id == "tails") && !f.AbvPct.Read()
	})
}

// ungauged are the cuts that came over, by the model, and of which nothing was written: they are no
// loss. Heads and tails are in the feints where those were gauged.
func (w *lots) ungauged(e Expected) []string {
	has := func(id string) bool {
		return slices.ContainsFunc(w.fractions, func(f fraction) bool { return f.id == id })
	}
	return slices.DeleteFunc([]string{"foreshots", "heads", "tails"}, func(id string) bool {
		return has(id) || !(e.VolumeL[id] > 0) || id != "foreshots" && has("feints")
	})
}

func (w *lots) fill(b *bench, v *record.Visit) {
	switch v.Word {
	case "hearts":
		w.hearts = w.hearts.And(b.Lot(v.Read))
	case "reduce":
		if r := find(v.Read, record.Water); r != nil {
			more := b.Volume(r, 0)
			w.water = number{w.water.Is + more.Is, math.Hypot(w.water.SD, more.SD)}
		}
	case "gauge":
		w.entry = b.Lot(v.Read)
	case "into":
		var n number
		if r := find(v.Read, record.Volume); r != nil {
			n = b.Volume(r, w.entry.AbvPct.Is)
		} else {
			n = b.Net(v.Read, w.entry.AbvPct.Is)
		}
		w.casks = append(w.casks, n)
	case "left":
		w.left = w.left.And(b.Lot(v.Read))
	}
}
