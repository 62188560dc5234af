package compare

import (
	"fmt"
	"math"
	"slices"

	"newmake/compile"
	"newmake/compile/measure"
	"newmake/compile/plan"
	"newmake/lang/words"
)

// Why says which edit does how much.
type Why struct {
	Exact  bool         `json:"exact"`            // every combination was computed
	Plans  int          `json:"plans"`            // combinations computed
	Orders int          `json:"orders,omitempty"` // drawn, where it is not exact
	Joined string       `json:"joined,omitempty"` // why edits are taken together, where they are
	Edits  []string     `json:"edits"`
	Each   []WhyOutcome `json:"outcomes"`
}

// WhyOutcome is one outcome's change, taken apart. The parts add up to the
// change; the interaction is in them already.
type WhyOutcome struct {
	Key         string  `json:"key"`
	Name        string  `json:"name"`
	Unit        string  `json:"unit,omitempty"`
	Places      int     `json:"places"`
	Change      float64 `json:"change"`
	Parts       []Share `json:"parts"`
	Interaction float64 `json:"interaction"` // the change less what the edits do alone
}

// Share is one edit's part of a change: its Shapley value.
type Share struct {
	Edit  string  `json:"edit"`
	Part  float64 `json:"part"`
	Alone float64 `json:"alone"`         // what it does when nothing else changes
	Error float64 `json:"standardError"` // of the part: 0 where every combination was computed, or every order gave the same
}

// rest names what no edit accounts for. There should be none of it.
const rest = "(no edit found)"

// mostPlayers is how many edits are taken one by one. Two batches that differ in
// more are two recipes, and are compared part by part.
const mostPlayers = 16

// why takes the changes apart. It is nil when there is nothing to take apart, or
// a combination cannot be computed however the edits are joined.
func (d *Difference) why(memo *compile.Memo, changed []Outcome, u measure.Units) *Why {
	var players [][]int // edits that are made together
	for i, e := range d.Edits {
		if e.Counts {
			players = append(players, []int{i})
		}
	}
	if len(players) == 0 || len(changed) == 0 {
		return nil
	}
	ways := []struct {
		players [][]int
		joined  string
	}{
		{players, ""},
		{byPart(d.Edits, players), "some of the edits do not work without the others, so they are taken part by part"},
		{[][]int{slices.Concat(players...)}, "the edits only work together"},
	}
	if len(players) > mostPlayers {
		ways = ways[1:]
		ways[0].joined = fmt.Sprintf("%d edits are too many to take one by one, so they are taken part by part", len(players))
	}
	for _, way := range ways {
		group := way.players
		g := game{players: len(group), value: func(s set) []float64 { return d.outcome(memo, u, group, s) }}
		if s, ok := g.play(); ok {
			w := &Why{Exact: s.exact, Plans: s.sets, Orders: s.orders, Joined: way.joined}
			for _, p := range group {
				w.Edits = append(w.Edits, label(d.Edits, p))
			}
			w.outcomes(s, changed)
			return w
		}
	}
	return nil
}

// outcome is the vector of outcomes with a set of players' edits made; nil if
// there is no such plan.
func (d *Difference) outcome(memo *compile.Memo, u measure.Units, players [][]int, s set) []float64 {
	on := make([]bool, len(d.Edits))
	for p, edits := range players {
		for _, e := range edits {
			on[e] = s.has(p)
		}
	}
	p, _ := memo.Compile(d.mix(on))
	if p == nil {
		return nil
	}
	return vector(p, u)
}

// byPart joins the edits of each part of the batch.
func byPart(edits []Edit, players [][]int) [][]int {
	var out [][]int
	for _, part := range parts {
		var group []int
		for _, p := range players {
			if edits[p[0]].Part == part {
				group = append(group, p...)
			}
		}
		if len(group) > 0 {
			out = append(out, group)
		}
	}
	return out
}

func label(all []Edit, edits []int) string {
	if len(edits) == 1 {
		return all[edits[0]].What
	}
	parts := []string{}
	for _, e := range edits {
		if p := string(all[e].Part); !slices.Contains(parts, p) {
			parts = append(parts, p)
		}
	}
	if len(parts) > 1 {
		return "all of it"
	}
	return fmt.Sprintf("%s: %s", parts[0], words.Count(len(edits), "edit"))
}

// outcomes shows the shares, rounded so that the parts of each outcome add up
// to its change as it is shown.
func (w *Why) outcomes(s shares, changed []Outcome) {
	for _, c := range changed {
		k := slices.IndexFunc(outcomes, func(o outcome) bool { return o.key == c.Key })
		o := WhyOutcome{Key: c.Key, Name: c.Name, Unit: c.Unit, Places: c.Places, Change: c.Change}
		parts := make([]float64, len(w.Edits))
		for i := range parts {
			parts[i] = s.part[i][k]
		}
		names := w.Edits
		if left := c.Change - s.whole[k]; math.Abs(left) > 2*math.Pow10(-c.Places) {
			names, parts = append(slices.Clone(names), rest), append(parts, left)
		}
		alone := 0.0
		for i, x := range apportion(parts, c.Change, c.Places) {
			p := Share{Edit: names[i], Part: x}
			if i < len(w.Edits) {
				p.Alone = plan.RoundTo(s.alone[i][k], c.Places+1)
				alone += s.alone[i][k]
				if s.err != nil {
					p.Error = plan.RoundTo(s.err[i][k], c.Places+1)
				}
			}
			o.Parts = append(o.Parts, p)
		}
		o.Interaction = plan.RoundTo(s.whole[k]-alone, c.Places)
		w.Each = append(w.Each, o)
	}
}

// apportion rounds numbers so that they add up to a total that is rounded
// itself: what rounding leaves over goes to those it took most from.
func apportion(parts []float64, total float64, places int) []float64 {
	unit := math.Pow10(-places)
	out := make([]float64, len(parts))
	left := total
	for i, x := range parts {
		out[i] = plan.RoundTo(x, places)
		left -= out[i]
	}
	steps := int(math.Round(left / unit))
	for range min(max(steps, -steps), 10*len(parts)) {
		sign, best := 1.0, 0
		if steps < 0 {
			sign = -1
		}
		for i := range parts {
			if sign*(parts[i]-out[i]) > sign*(parts[best]-out[best]) {
				best = i
			}
		}
		out[best] = plan.RoundTo(out[best]+sign*unit, places)
	}
	return out
}
