package trace

import (
	"cmp"
	"slices"
	"strings"

	"newmake/lang/diag"
	"newmake/lang/inventory"
	"newmake/lang/record"
	"newmake/lang/sorting"
)

// Spirit is spirit of one run in a vat or a bottling, and the casks that it came through.
type Spirit struct {
	Run   *record.Run // nil where nothing leads on to one
	Why   string      // then: what is not written
	Stays []Stay      // in the order of the years; none of what was never in wood
	Share float64     // of the alcohol in it, where that is known
}

// Stay is the time of spirit in one cask.
type Stay struct {
	Life     *record.Life
	From, To record.Date
}

// Blend is a vat or a bottling, and the spirit in it.
type Blend struct {
	Kind     Kind
	Name     string
	On       record.Date
	At       diag.Span
	Vat      *record.Vat      // of a vat
	Bottling *record.Bottling // of a bottling
	Spirits  []Spirit         // in the order of the runs' days
	Shares   bool             // how much there is of each is known
}

// Blends are the vats and the bottlings of a house, in the order of its texts. amount is how
// much alcohol a line moved, in any unit, 0 where nobody knows.
func Blends(h *inventory.Inventory, amount func(at diag.Span) float64) []Blend {
	c := chainOf(h)
	g := &gathering{amount: amount, found: map[*link][]Spirit{}, shared: map[*link]bool{}, busy: map[*link]bool{}}
	var out []Blend
	for _, v := range h.Vats {
		out = append(out, g.blend(c.by[keyOf(Vat, v.Name)], Blend{Vat: v}))
	}
	for _, b := range h.Bottlings {
		out = append(out, g.blend(c.by[keyOf(Bottling, b.Lot)], Blend{Bottling: b}))
	}
	return out
}

// Asked says that a vat or a bottling is one of those that a trace was asked of.
func (t *Trace) Asked(b *Blend) bool {
	return slices.ContainsFunc(t.Of, func(s Step) bool { return s.Kind == b.Kind && s.Name == b.Name })
}

// gathering goes back from blends to runs, and opens each thing once.
type gathering struct {
	amount func(diag.Span) float64
	found  map[*link][]Spirit
	shared map[*link]bool // the shares in it are known
	busy   map[*link]bool
}

func (g *gathering) blend(l *link, b Blend) Blend {
	b.Kind, b.Name, b.On, b.At = l.kind, l.name, l.on, l.at
	b.Spirits = slices.Clone(g.of(l))
	b.Shares = g.shared[l]
	if !b.Shares {
		for i := range b.Spirits {
			b.Spirits[i].Share = 0
		}
	}
	sorting.Stable(b.Spirits, func(x, y Spirit) int { return cmp.Or(x.day().Compare(y.day()), cmp.Compare(x.key(), y.key())) })
	return b
}

func (s Spirit) day() record.Date {
	if s.Run == nil {
		return record.Date{}
	}
	return s.Run.Date
}

// key tells spirits apart: of one run, through the same casks.
func (s Spirit) key() string {
	var k strings.Builder
	if s.Run != nil {
		k.WriteString(s.Run.Number)
	}
	k.WriteString("\x00" + s.Why)
	for _, t := range s.Stays {
		k.WriteString("\x00" + t.Life.Serial + "\x00" + t.Life.Filled().String())
	}
	return k.String()
}

// of is the spirit in something. Spirit that was poured in a circle is counted where it came
// in first.
func (g *gathering) of(l *link) []Spirit {
	if s, is := g.found[l]; is || g.busy[l] {
		return s
	}
	g.busy[l] = true
	out, known := g.gather(l)
	g.busy[l] = false
	g.found[l], g.shared[l] = out, known
	return out
}

func (g *gathering) gather(l *link) (out []Spirit, known bool) {
	whole, known := 0.0, true
	parts := make([]float64, len(l.ways))
	for i, w := range l.ways {
		parts[i] = g.amount(w.at)
		whole += parts[i]
		known = known && parts[i] > 0
	}
	if len(l.ways) == 1 {
		parts[0], whole, known = 1, 1, true
	}
	own := l.kind == Run
	if own { // its hearts, into which what had been left in the tank was mingled
		known = len(l.ways) == 0
		out = append(out, Spirit{Run: l.run, Share: 1})
	}
	for i, w := range l.ways {
		from := before(g.of(w.from), w)
		known = known && g.shared[w.from]
		for _, s := range from {
			s.Stays = slices.Clone(s.Stays)
			if w.from.kind == Cask && len(s.Stays) > 0 {
				s.Stays[len(s.Stays)-1].To = w.on
			}
			if l.kind == Cask {
				s.Stays = append(s.Stays, Stay{Life: l.life, From: w.on})
			}
			if known && !own {
				s.Share *= parts[i] / whole
			}
			out = append(out, s)
		}
	}
	for _, b := range l.broken {
		if l.kind != Run {
			out, known = append(out, Spirit{Why: b.what}), false
		}
	}
	return together(out), known
}

// before leaves out of what a cask gave what came into it after that day.
func before(all []Spirit, w way) []Spirit {
	if w.from.kind != Cask {
		return all
	}
	var out []Spirit
	share := 0.0
	for _, s := range all {
		if n := len(s.Stays); n > 0 && s.Stays[n-1].From.Compare(w.on) > 0 {
			continue
		}
		out, share = append(out, s), share+s.Share
	}
	if len(out) == 0 || len(out) == len(all) {
		return all
	}
	for i := range out {
		if share > 0 {
			out[i].Share /= share
		}
	}
	return out
}

// together makes one of spirits of one run that came through the same casks: of the youngest.
func together(all []Spirit) []Spirit {
	var out []Spirit
	at := map[string]int{}
	for _, s := range all {
		k := s.key()
		i, is := at[k]
		if !is {
			at[k] = len(out)
			out = append(out, s)
			continue
		}
		share := out[i].Share + s.Share
		if s.Since().Compare(out[i].Since()) > 0 {
			out[i] = s
		}
		out[i].Share = share
	}
	return out
}

// Since is the day from which the time in wood counts: that on which it was filled, and of
// several casks so many days before the last of them was left. It is zero of what was never
// in wood.
func (s Spirit) Since() record.Date {
	if len(s.Stays) == 0 {
		return record.Date{}
	}
	last := s.Stays[len(s.Stays)-1]
	before := 0
	for _, t := range s.Stays[:len(s.Stays)-1] {
		before += t.From.DaysTo(t.To)
	}
	return last.From.After(-before)
}

// Until is the day on which it left wood for good.
func (s Spirit) Until() record.Date {
	if len(s.Stays) == 0 {
		return record.Date{}
	}
	return s.Stays[len(s.Stays)-1].To
}
