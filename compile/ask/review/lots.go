package review

import (
	"slices"

	"newmake/lang/record"
)

// lots are those of a run that were gauged.
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
}

// fraction is what came over in one of the parts of the spirit run.
type fraction struct {
	id, words string
	lot       bool // gauged as a lot, and not in the receiver alone
	gauged
}

// written reads the lots of a run off its lines.
func written(b *bench, run *record.Run) *lots {
	w := &lots{}
	for i := range run.Visits {
		v := &run.Visits[i]
		if v.None || v.Stage >= len(run.Stages) {
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
		w.wash = w.wash.And(b.Lot(v.Read))
	case "low-wines":
		w.lowWines = w.lowWines.And(b.Lot(v.Read))
	}
}

func (w *lots) spirit(b *bench, v *record.Visit) {
	g := b.Lot(v.Read)
	switch v.Word {
	case "charge":
		switch v.Of {
		case "low-wines":
			w.charged = w.charged.And(g)
		case "": // what is in the still: with the feints, unless those are charged by a line of their own
			w.whole = w.whole.And(g)
		case "feints":
			w.feintsIn = w.feintsIn.And(g)
		case "water":
		default:
			w.extra = w.extra.And(g)
		}
	case "to":
		if r := find(v.Read, record.Receiver); r != nil { // the readings are of what ends
			w.fraction(ends[v.Of], gauged{VolumeL: b.Volume(r, 0), Given: true}, false)
		}
	case "foreshots", "heads", "hearts", "tails", "feints":
		if g.Given {
			w.fraction(v.Word, g, true)
		}
	}
}

// ends is the fraction that ends where another begins.
var ends = map[string]string{"heads": "foreshots", "hearts": "heads", "tails": "hearts"}

// fraction notes what came of a fraction. What was gauged of the whole lot goes before
// what the receiver said when the spout was turned; lots that were gauged apart are it together.
func (w *lots) fraction(id string, g gauged, lot bool) {
	if id == "" {
		return
	}
	for i, f := range w.fractions {
		if f.id == id && f.lot && lot {
			w.fractions[i].gauged = f.gauged.And(g)
			return
		}
		if f.id == id {
			if f.lot && !lot {
				g, f.gauged = f.gauged, g
			}
			if !g.VolumeL.Read() {
				g.VolumeL = f.VolumeL
			}
			if !g.AbvPct.Read() {
				g.AbvPct = f.AbvPct
			}
			w.fractions[i].gauged, w.fractions[i].lot = g, f.lot || lot
			return
		}
	}
	w.fractions = append(w.fractions, fraction{id, "the " + id, lot, g})
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
			w.water = b.Volume(r, 0)
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
