// Package trace follows a bottling to the grain that it comes of, and a lot of grain to the
// bottles that hold it, by what a house has written of its stores, runs, casks, tanks, vats
// and bottlings. It says where the chain is broken, and by which line it would be mended.
//
// It follows what is written, and not how much: whatever went into something is in it.
package trace

import (
	"cmp"
	"slices"

	"newmake/lang/inventory"
	"newmake/lang/quantity"
	"newmake/lang/tree"
	"newmake/lang/wording"
)

// Format and Version name the shape of a trace as JSON. A minor version adds names and
// never takes one away.
const (
	Format  = "newmake.trace"
	Version = "1.0"
)

// Kind is a sort of thing in the chain.
type Kind string

// The kinds, in the order of the work.
const (
	Supplier Kind = "supplier"
	Lot      Kind = "lot"
	Batch    Kind = "batch"
	Run      Kind = "run"
	Cask     Kind = "cask"
	Tank     Kind = "tank"
	Vat      Kind = "vat"
	Bottling Kind = "bottling"
)

// Trace is what something is made of, and what was made of it.
type Trace struct {
	Format   string  `json:"format"`
	Version  string  `json:"version"`
	Of       []Step  `json:"of"`       // all that bear the name
	MadeOf   []Step  `json:"madeOf"`   // each below what it went into
	WentInto []Step  `json:"wentInto"` // each below what went into it
	Broken   []Break `json:"broken"`
}

// Step is a thing in the chain.
type Step struct {
	Depth int      `json:"depth"` // 1 next to what was asked for
	Kind  Kind     `json:"kind"`
	Name  string   `json:"name"` // "" of a lot without a code
	On    string   `json:"date,omitempty"`
	Says  []string `json:"says"`
	Again bool     `json:"again"` // what is beyond stands where it came first
	File  string   `json:"file,omitempty"`
	Line  int      `json:"line,omitempty"`
}

// Break is a place where nothing leads on.
type Break struct {
	Kind Kind   `json:"kind"`
	Name string `json:"name"`
	What string `json:"what"`
	Mend string `json:"mend"`         // the line that would lead on, with __ for what nobody knows yet
	In   string `json:"in,omitempty"` // where it is written, in words, if not beside the line that is named
	// Instead says that it is that line, with more in it.
	Instead bool   `json:"instead"`
	File    string `json:"file,omitempty"`
	Line    int    `json:"line,omitempty"`
	May     bool   `json:"may"` // it may hold what was asked for; nothing says that it does not
}

// Of follows all that bear a name, both ways. It is nil where nothing does; names are then
// those that there are. litres says that the house counts in them: the lines that would mend
// the chain are then written so.
func Of(h *inventory.Inventory, name string, litres bool) (t *Trace, names []string) {
	c := chainOf(h)
	var of []*link
	for _, l := range c.links {
		if tree.Key(l.name) == tree.Key(name) {
			of = append(of, l)
		}
	}
	if len(of) == 0 {
		for _, l := range c.links {
			if l.name != "" && !slices.Contains(names, l.name) {
				names = append(names, l.name)
			}
		}
		return nil, names
	}
	t = &Trace{Format: Format, Version: Version, Of: []Step{}, MadeOf: []Step{}, WentInto: []Step{}, Broken: []Break{}}
	back, forth := map[*link]bool{}, map[*link]bool{}
	for _, l := range of {
		t.Of = append(t.Of, l.step(0))
		back[l], forth[l] = true, true
	}
	for _, l := range of {
		l.walk(1, back, func(l *link) []*link { return l.from }, &t.MadeOf)
		l.walk(1, forth, func(l *link) []*link { return l.into }, &t.WentInto)
	}
	for _, l := range c.links {
		for _, g := range l.broken {
			if litres {
				g.mend = wording.Restated(g.mend, quantity.SI)
			}
			switch {
			case back[l]:
				t.Broken = append(t.Broken, l.gone(g, false))
			case l.mayHold(g, of):
				t.Broken = append(t.Broken, l.gone(g, true))
			}
		}
	}
	return t, nil
}

// walk lists what lies beyond, each below what leads there, and opens each once.
func (l *link) walk(depth int, seen map[*link]bool, next func(*link) []*link, out *[]Step) {
	beyond := slices.Clone(next(l))
	slices.SortStableFunc(beyond, func(a, b *link) int {
		return cmp.Or(a.on.Compare(b.on), cmp.Compare(a.name, b.name))
	})
	for _, n := range beyond {
		s := n.step(depth)
		s.Again = seen[n] && len(next(n)) > 0
		first := !seen[n]
		seen[n] = true
		*out = append(*out, s)
		if first {
			n.walk(depth+1, seen, next, out)
		}
	}
}

func (l *link) step(depth int) Step {
	s := Step{Depth: depth, Kind: l.kind, Name: l.name, Says: append([]string{}, l.says...)}
	if !l.on.IsZero() {
		s.On = l.on.String()
	}
	if !l.at.IsZero() {
		s.File = l.at.Src.Name
		s.Line, _ = l.at.Position()
	}
	return s
}

func (l *link) gone(g gap, may bool) Break {
	b := Break{Kind: l.kind, Name: l.name, What: g.what, Mend: g.mend, In: g.in, Instead: g.instead, May: may}
	if !g.at.IsZero() {
		b.File = g.at.Src.Name
		b.Line, _ = g.at.Position()
	}
	return b
}

// mayHold says that a run of which the lots are not written may have used a lot that was
// asked for: of the same material, on or after the day it came.
func (l *link) mayHold(g gap, of []*link) bool {
	if l.kind != Run || g.good == "" && !g.any {
		return false
	}
	var lots []*link
	for _, o := range of {
		switch o.kind {
		case Lot:
			lots = append(lots, o)
		case Supplier:
			lots = append(lots, o.into...)
		}
	}
	return slices.ContainsFunc(lots, func(o *link) bool {
		return (g.any || tree.Key(o.says[0]) == tree.Key(g.good)) && o.on.Compare(l.on) <= 0
	})
}
