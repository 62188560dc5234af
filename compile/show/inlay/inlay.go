// Package inlay says beside the lines of a batch what its plan predicts, for an
// editor: shares of the bill as weights, the clock, temperature and gravity at the end
// of each step of the mash, the original gravity at `ferment`, the hearts at `hearts`,
// the casks at `fill`, the odds at a
// promise of so many runs. A variant that leaves such a line to the batch that it varies
// has the last three beside its first line.
package inlay

import (
	"fmt"
	"strconv"
	"strings"

	"newmake/compile/measure"
	"newmake/compile/plan"
	"newmake/lang/diag"
	"newmake/lang/house"
	"newmake/lang/recipe"
	"newmake/lang/words"
)

// Hint is a prediction, to be shown behind a place.
type Hint struct {
	At   diag.Span
	Text string
}

// Hints are the predictions of a batch, in the order of its lines.
func Hints(d *house.Decl, b *recipe.Batch, p *plan.Plan, system recipe.System) []Hint {
	if d == nil || d.Node() == nil {
		return nil
	}
	h := hints{d: d, b: b, p: p, u: measure.UnitsOf(system)}
	h.bill()
	h.mash()
	h.promises()
	return append(h.outcome(), h.out...)
}

type hints struct {
	d   *house.Decl
	b   *recipe.Batch
	p   *plan.Plan
	u   measure.Units
	out []Hint
}

// own reports whether a place is in the declaration itself, and not in what it varies.
func (h *hints) own(at diag.Span) bool {
	whole := h.d.Node().Whole()
	return at.Src == whole.Src && at.Start >= whole.Start && at.End <= whole.End
}

func (h *hints) add(path recipe.Path, text string) {
	if at, ok := h.b.Where[path]; ok && text != "" && h.own(at) {
		h.out = append(h.out, Hint{At: at, Text: text})
	}
}

// bill says what was written as a share as a weight, and the other way round.
func (h *hints) bill() {
	for _, g := range h.p.Bill.Lines {
		path := recipe.PathBill.Child(g.Name)
		if at, ok := h.b.Where[path]; ok {
			other := h.u.Mass(g.MassKg)
			if !strings.Contains(at.Text(), "%") {
				other = measure.Number(g.SharePct, 1) + " %"
			}
			h.add(path, other)
		}
	}
}

// mash says how the mash stands at the end of each step.
func (h *hints) mash() {
	ends := map[string]string{}
	for _, s := range h.p.Schedule.Steps {
		ends[s.ID] = s.End
	}
	for i, s := range h.p.Mash.Steps {
		parts := []string{}
		if end := ends[s.ID]; end != "" {
			parts = append(parts, measure.Clock(end))
		}
		parts = append(parts, h.u.Temp(s.ToC))
		if s.ConvertedPct > 0 {
			parts = append(parts, measure.Gravity(s.GravitySG))
		}
		h.add(recipe.Step(i+1), strings.Join(parts, ", "))
	}
}

// promises says how likely a promise of so many runs is kept, where that was tried.
func (h *hints) promises() {
	for i, e := range h.p.Promises {
		if e.Tried != nil {
			h.add(recipe.PathPromise.Child(strconv.Itoa(i+1)), e.Tried.Words+": "+e.Stands())
		}
	}
}

// outcome is what comes of it, beside the lines that say how.
func (h *hints) outcome() []Hint {
	var out []Hint
	var first []string
	for _, say := range []struct {
		within, word string
		text         string
	}{
		{"", "ferment", gravity(h.p)},
		{"spirit", "hearts", hearts(h.p, h.u)},
		{"cask", "fill", casks(h.p)},
	} {
		if say.text == "" {
			continue
		}
		at := h.d.Node()
		if say.within != "" {
			at = at.Line(say.within)
		}
		if l := at.Line(say.word); l != nil && h.own(l.At()) {
			out = append(out, Hint{At: l.At(), Text: say.text})
		} else {
			first = append(first, say.text)
		}
	}
	if len(first) > 0 {
		out = append([]Hint{{At: h.d.At, Text: strings.Join(first, "; ")}}, out...)
	}
	return out
}

func gravity(p *plan.Plan) string {
	if p.Summary.OriginalGravitySG == 0 {
		return ""
	}
	return fmt.Sprintf("original gravity %s", measure.Gravity(p.Summary.OriginalGravitySG))
}

func hearts(p *plan.Plan, u measure.Units) string {
	lot := p.Spirit.Fraction("hearts").Lot
	if lot.VolumeL == 0 {
		return ""
	}
	return u.Volume(lot) + " at " + u.Strength(lot.Strength())
}

func casks(p *plan.Plan) string {
	if p.Cask.SizeL == 0 {
		return ""
	}
	return words.Count(p.Summary.CasksFilled, "cask")
}

// Since says in a few words what has become of the hearts and the casks of a batch.
func Since(was, now *plan.Plan, u measure.Units) string {
	a, b := was.Spirit.Fraction("hearts").Lot, now.Spirit.Fraction("hearts").Lot
	from, unit := u.Value(a.Volume())
	to, _ := u.Value(b.Volume())
	said := "hearts as they were"
	if by := measure.Number(to-from, 1); strings.Trim(by, "-0.") != "" {
		if to > from {
			by = "+" + by
		}
		said = "hearts " + by + " " + unit
	}
	switch more := now.Summary.CasksFilled - was.Summary.CasksFilled; {
	case more > 0:
		said += ", +" + words.Count(more, "cask")
	case more < 0:
		said += ", -" + words.Count(-more, "cask")
	}
	return said
}
