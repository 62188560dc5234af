package review

import (
	"cmp"
	"slices"
	"strings"

	"newmake/lang/quantity"
	"newmake/lang/record"
)

// loss is what was lost, and in which balance it is missing.
type loss struct {
	in, of string
	number
}

// lose notes what was lost, in the balance between the gauges before and after it. What it is
// of, where nobody says, is what the stage is for.
func (w *lots) lose(b *bench, v *record.Visit, stage record.StageName) {
	r := find(v.Read, record.Lost)
	if r == nil || r.Value.Kind != quantity.Volume {
		return
	}
	l := loss{of: v.Of, number: b.Volume(r, 0)}
	switch stage {
	case record.Strip:
		if l.in, l.of = inWashRun, cmp.Or(l.of, "low-wines"); l.of == "low-wines" && w.of.lowWines.reaches(v.Charge) {
			l.in = asLowWinesWaited
		}
	case record.Spirit:
		switch l.in, l.of = inSpiritRun, cmp.Or(l.of, "hearts"); {
		case l.of == "hearts" && w.gaugedHearts(v.Charge):
			l.in = asHeartsWaited
		case l.of == "low-wines" && len(w.of.in) == 0:
			l.in = asLowWinesWaited
		}
	case record.Fill:
		switch l.of = "spirit"; {
		case w.entry.Given:
			l.in = atFilling
		case w.hearts.Given:
			l.in = inReduction
		default:
			l.in, l.of = asHeartsWaited, "hearts"
		}
	default:
		return
	}
	w.lost = append(w.lost, l)
}

// hasHearts reports whether the spirit run has a lot of them, gauged or by the receiver.
func (w *lots) hasHearts() bool {
	return slices.ContainsFunc(w.fractions, func(f fraction) bool { return f.id == "hearts" })
}

// gaugedHearts reports whether the hearts of a charge were gauged in the spirit run.
func (w *lots) gaugedHearts(charge int) bool {
	all := w.of.lots["hearts"]
	return all != nil && all.reaches(charge) && (*all)[len(*all)-1].AbvPct.Read()
}

// betweenGauges puts what was lost of a lot that was gauged but once, as it waited, into the
// balance that has it.
func (w *lots) betweenGauges() {
	for i := range w.lost {
		switch l := &w.lost[i]; {
		case l.in == asLowWinesWaited && w.charged.Given && w.lowWines.Given:
		case l.in == asLowWinesWaited && w.whole.Given && w.lowWines.Given:
			l.in = asCharged
		case l.in == asLowWinesWaited, l.in == asHeartsWaited && !(w.hearts.Given && w.hasHearts()):
			l.in = inSpiritRun
		}
	}
}

// The balances in which something may be lost, by what is between two gauges.
const (
	inWashRun        = "wash run"
	asLowWinesWaited = "low wines waited"
	asCharged        = "charging"
	inSpiritRun      = "spirit run"
	asHeartsWaited   = "hearts waited"
	inReduction      = "reduction"
	atFilling        = "filling"
)

// gone are the terms of what was lost in a balance. of are the flows of the strengths of what it
// may be of; what is not among them has that of the lot that is gauged there.
func (l *ledger) gone(w *lots, in string, lot int, of map[string]int) []term {
	var out []term
	for _, x := range w.lost {
		if x.in != in || !x.Read() {
			continue
		}
		abv, ok := of[x.of]
		if !ok {
			abv = lot
		}
		flow := l.put("lost", "what was lost of the "+strings.ReplaceAll(x.of, "-", " "), Litres, x.number, 0, false)
		l.strength[flow] = abv
		out = append(out, term{-1, []int{flow, abv}, 0.01})
	}
	return out
}
