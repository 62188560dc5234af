package why

import (
	"math"
	"runtime"
	"slices"
	"sync"

	"newmake/lang/sorting"
)

// Move is how a nudge of one input moves a number, all else as written.
type Move struct {
	Input  string `json:"input"` // "rest at 148 F"
	By     string `json:"by"`    // "+2 F"
	File   string `json:"file,omitempty"`
	Line   int    `json:"line,omitempty"`
	Change Number `json:"change"`
}

// nudged is a batch with one input nudged, and its plan.
type nudged struct {
	asked
	knob knob
}

// nudge computes the batch once for each knob that a value can feel.
func (a *asked) nudge(compile Compile, v value) []nudged {
	var out []nudged
	for _, k := range a.knobs() {
		if k.stage <= v.stage && (v.money || !k.money) {
			out = append(out, nudged{asked{inUnits: a.inUnits}, k})
		}
	}
	next := make(chan int)
	var all sync.WaitGroup
	for range min(runtime.GOMAXPROCS(0), len(out)) {
		all.Go(func() {
			for i := range next {
				b := a.b.Clone()
				b.Promises = nil // whether they are kept is not asked
				out[i].knob.turn(b)
				b.Resolve()
				out[i].b, out[i].p = b, compile(b)
			}
		})
	}
	for i := range out {
		next <- i
	}
	close(next)
	all.Wait()
	return slices.DeleteFunc(out, func(n nudged) bool { return n.p == nil })
}

// mostMoves is how many are told.
const mostMoves = 8

// moves is how much each nudge moves a value, the greatest first. What does not
// show in one place more than the value's own is left out.
func (a *asked) moves(v value, all []nudged) []Move {
	out := []Move{}
	base := a.number(v.amount(a))
	for _, n := range all {
		then := &n.asked
		if n.knob.stage > v.stage || n.knob.money && !v.money || v.needs != nil && !v.needs(then) {
			continue
		}
		d := base
		d.Value = then.number(v.amount(then)).Value - base.Value
		if d.Places < 4 && math.Abs(d.Value) < 9.5*math.Pow10(-d.Places) && d.Unit != "" && d.Unit != "each" {
			d.Places++
		}
		if d.Value = d.shown(); d.Value == 0 {
			continue
		}
		at := place("", n.knob.at)
		out = append(out, Move{Input: n.knob.name, By: n.knob.by, File: at.File, Line: at.Line, Change: d})
	}
	sorting.Stable(out, func(x, y Move) int {
		switch ax, ay := math.Abs(x.Change.Value), math.Abs(y.Change.Value); {
		case ax > ay:
			return -1
		case ax < ay:
			return 1
		}
		return 0
	})
	return out[:min(mostMoves, len(out))]
}
