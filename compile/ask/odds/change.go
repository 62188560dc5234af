package odds

import (
	"cmp"
	"math"
	"slices"

	"newmake/compile"
	"newmake/compile/ask/size"
	"newmake/compile/constants"
	"newmake/compile/measure"
	"newmake/compile/plan"
	"newmake/compile/stage/cask"
	"newmake/lang/recipe"
)

// Change is the size at which a batch fills its casks 9 times in 10, or why there is
// none.
type Change struct {
	Casks  int     `json:"casks"`
	Factor float64 `json:"factor,omitempty"` // times the batch
	Grain  string  `json:"grain,omitempty"`  // the first of the bill, and what of it the batch then wants
	MassKg float64 `json:"grainMassKg,omitempty"`
	BillKg float64 `json:"billMassKg,omitempty"`
	Odds   *Odds   `json:"odds,omitempty"` // then, by the same draws
	Why    string  `json:"why,omitempty"`  // there is none
}

// enough is how often a cask that is planned is to be filled.
const enough = 0.9

// How the size is looked for.
const (
	mostSizes = 4     // sizes tried with all draws
	step      = 0.001 // sizes are in thousandths
)

// Change finds the size at which the batch fills its casks 9 times in 10: the size at
// which the draw fills them than which one in ten is worse, found by package size, and
// tried with all draws again, for at another size another draw is the worse one. Nil
// where the casks are filled so often, or there are none to fill.
func (t *Trial) Change(u measure.Units) *Change {
	n := t.wanted()
	if n == 0 || t.fills().Share >= enough {
		return nil
	}
	c := &Change{Casks: n}
	target := size.Casks(float64(n), t.Batch.Gauge)
	target.Value -= 1 - cask.LeastFill // the last one counts as filled from there on
	at := t
	for range mostSizes {
		run, ok := at.worse()
		if !ok {
			c.Why = "in more than one draw of ten no batch comes of it at all"
			return c
		}
		found, err := size.Solve(constants.Set(t.Batch, t.Draws.Of, t.Draws.X[run]), target, new(compile.Memo))
		if err != nil {
			c.Why = err.Error()
			return c
		}
		factor := math.Ceil(found.Factor/step) * step
		b := t.Batch.Scale(factor)
		if d := inTheWay(b); d != "" {
			c.Why = d
			return c
		}
		if at, err = Try(b, len(t.Runs), u); err != nil {
			c.Why = err.Error()
			return c
		}
		odds := at.odds(func(r *Run) bool { return r.Casks >= n })
		c.Factor, c.Odds, c.BillKg = plan.RoundTo(factor, 3), &odds, plan.RoundTo(b.Bill.TotalKg, 1)
		if len(b.Bill.Lines) > 0 {
			c.Grain, c.MassKg = b.Bill.Lines[0].Grain.Name, plan.RoundTo(b.Bill.Lines[0].MassKg, 1)
		}
		if odds.Share >= enough {
			return c
		}
	}
	return c
}

// inTheWay is what keeps a batch from being made as it is written; "" if nothing does.
func inTheWay(b *recipe.Batch) string {
	_, list := new(compile.Memo).Compile(b)
	if d := size.InTheWay(list); d != nil {
		return d.Summary
	}
	return ""
}

// worse is the draw than which one in ten fills less. False if it is one of which no
// batch came.
func (t *Trial) worse() (int, bool) {
	order := make([]int, len(t.Runs))
	for i := range order {
		order[i] = i
	}
	slices.SortStableFunc(order, func(i, j int) int { return cmp.Compare(t.Runs[i].Fill, t.Runs[j].Fill) })
	i := order[int((1-enough)*float64(len(order)))]
	return i, t.Runs[i].OK
}
