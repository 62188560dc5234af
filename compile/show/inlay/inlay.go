// Package inlay says beside the lines of a batch what its plan predicts, for an
// editor: the original gravity and the strength of the wash at `ferment`, the hearts
// at `hearts`, the casks at `fill`. A variant that leaves such a line to the batch
// that it varies has its predictions beside its first line.
package inlay

import (
	"fmt"
	"strings"

	"newmake/compile/measure"
	"newmake/compile/plan"
	"newmake/lang/diag"
	"newmake/lang/house"
	"newmake/lang/recipe"
	"newmake/lang/tree"
	"newmake/lang/words"
)

// Hint is a prediction, to be shown behind a place.
type Hint struct {
	At   diag.Span
	Text string
	More string
}

// Hints are the predictions of a batch, in the order of its lines.
func Hints(d *house.Decl, p *plan.Plan, system recipe.System) []Hint {
	if d == nil || d.Node() == nil {
		return nil
	}
	u := measure.UnitsOf(system)
	var out []Hint
	var first []string
	for _, say := range []struct {
		within, word string
		text         string
	}{
		{"", "ferment", gravity(p)},
		{"spirit", "hearts", hearts(p, u)},
		{"cask", "fill", casks(p)},
	} {
		if say.text == "" {
			continue
		}
		at := d.Node()
		if say.within != "" {
			at = at.Line(say.within)
		}
		if l := at.Line(say.word); l != nil && l.At().Src == d.File.Source {
			out = append(out, Hint{At: end(l), Text: say.text, More: more(d)})
		} else {
			first = append(first, say.text)
		}
	}
	if len(first) > 0 {
		out = append([]Hint{{At: d.At, Text: strings.Join(first, "; "), More: more(d)}}, out...)
	}
	return out
}

// end is where a line's own items end.
func end(n *tree.Node) diag.Span { return n.At() }

func more(d *house.Decl) string {
	return fmt.Sprintf("predicted; `newmake plan %s` has the plan, `newmake why` where a number comes from", d.File.Path)
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
