package size

import (
	"errors"
	"fmt"
	"math"

	"newmake/compile"
	"newmake/compile/measure"
	"newmake/compile/plan"
	"newmake/lang/diag"
	"newmake/lang/recipe"
)

// cutPoints is how many places of the cut are looked at before it is solved for
// between two of them.
const cutPoints = 24

// strength is what hearts are to average: a proof at 60 F, or by volume at 20 C.
type strength struct {
	value   float64
	isProof bool
}

func (s strength) unit() string {
	if s.isProof {
		return "proof"
	}
	return "% vol"
}

func (s strength) String() string { return measure.Number(s.value, 1) + " " + s.unit() }

// cut finds where the hearts have to end so that they average a strength; the cut
// stays of the kind that it is written as: a strength at the spout, a volume, a
// temperature of the vapour, a time, or a share of the charge. The error is a *none.
func cut(b *recipe.Batch, wanted strength, memo *compile.Memo) (*Answer, error) {
	c := cutter{b, memo, wanted.isProof}
	none := &none{Target: "hearts of " + plainly(wanted.value) + " " + wanted.unit()}
	from, to, err := c.span()
	if err != nil {
		none.Why = err.Error()
		return nil, none
	}
	type point struct{ x, strength float64 }
	var last *point
	none.Least, none.Most = math.Inf(1), math.Inf(-1)
	var lo, hi point
	found := false
	for i := range cutPoints + 1 {
		x := from + (to-from)*float64(i)/cutPoints
		y := c.strength(x)
		if math.IsNaN(y) {
			last = nil
			continue
		}
		none.Least, none.Most = math.Min(none.Least, y), math.Max(none.Most, y)
		if last != nil && !found && (last.strength-wanted.value)*(y-wanted.value) <= 0 {
			lo, hi, found = *last, point{x, y}, true
		}
		last = &point{x, y}
	}
	if !found {
		none.Why = fmt.Sprintf("wherever they end, the hearts average between %.1f and %.1f %s", none.Least, none.Most, wanted.unit())
		if none.Most < none.Least {
			none.Why = "at no cut do the hearts come out as a run that can be worked"
		}
		return nil, none
	}
	gap := func(x float64) float64 { return c.strength(x) - wanted.value }
	x := root(gap, lo.x, lo.strength-wanted.value, hi.x, hi.strength-wanted.value, 1e-9*math.Abs(to-from), 1e-6)
	batch := c.with(x)
	p, list := memo.Compile(batch)
	if p == nil {
		none.Why = "the batch cannot be computed at that cut"
		return nil, none
	}
	if d := InTheWay(list); d != nil {
		none.Why, none.Limit = d.Summary, d
		return nil, none
	}
	return &Answer{Factor: 1, Batch: batch, Plan: p, Diags: list}, nil
}

const minuteS = 60.0

type cutter struct {
	batch *recipe.Batch
	memo  *compile.Memo
	proof bool // strengths are proofs
}

// with is the batch with the hearts ending at x, in the cut's own measure.
func (c cutter) with(x float64) *recipe.Batch {
	b := *c.batch
	k := &b.Spirit.HeartsTo
	switch k.By {
	case recipe.ByVolume:
		k.VolumeM3 = x
	case recipe.ByVapourTemp:
		k.TempC = x
	case recipe.ByShare:
		k.Share = x
	case recipe.ByTime:
		k.TimeS = x
	default:
		k.Strength.Value = x
	}
	return &b
}

// strength is the average of the hearts; not a number where the run does not work.
func (c cutter) strength(x float64) float64 {
	p, list := c.memo.Compile(c.with(x))
	if p == nil {
		return math.NaN()
	}
	for _, d := range list {
		switch d.Code {
		case diag.CodeNotSteady, diag.CodeCutUnreached, diag.CodeCutsCrossed, diag.CodeNoDistillate, diag.CodeStopUnreached:
			return math.NaN()
		}
	}
	h := hearts(p)
	if h.VolumeL <= 0 {
		return math.NaN()
	}
	if c.proof {
		return h.Proof
	}
	return h.AbvPct
}

func hearts(p *plan.Plan) plan.Lot {
	for _, f := range p.Spirit.Fractions {
		if f.Name == "hearts" {
			return f.Lot
		}
	}
	return plan.Lot{}
}

// span is where the hearts may end: from soon after they begin to the end of the
// run, as the run goes now.
func (c cutter) span() (from, to float64, err error) {
	p, list := c.memo.Compile(c.batch)
	if p == nil {
		if d := InTheWay(list); d != nil {
			return 0, 0, errors.New(d.Summary)
		}
		return 0, 0, fmt.Errorf("the batch cannot be computed as it is")
	}
	var begins plan.Strength
	var beginMin float64
	for _, f := range p.Spirit.Fractions {
		if f.Name == "hearts" {
			begins, beginMin = f.Begins, f.StartMin
		}
	}
	curve := p.Spirit.Curve
	if begins.AbvPct == 0 || len(curve) < 2 {
		return 0, 0, fmt.Errorf("the run has no hearts as it is")
	}
	end := curve[len(curve)-1]
	begin := curve[0]
	for _, q := range curve {
		if q.Min <= beginMin {
			begin = q
		}
	}
	switch k := c.batch.Spirit.HeartsTo; k.By {
	case recipe.ByVolume:
		return (begin.OverL + 0.02*(end.OverL-begin.OverL)) / litresPerM3, end.OverL / litresPerM3, nil
	case recipe.ByVapourTemp:
		return begin.VapourC + 0.02*(end.VapourC-begin.VapourC), end.VapourC, nil
	case recipe.ByShare:
		return 0.02, 0.999, nil
	case recipe.ByTime:
		drop := curve[0].Min
		return minuteS * (begin.Min - drop + 0.02*(end.Min-begin.Min)), minuteS * (end.Min - drop), nil
	case recipe.ByStrength:
		if k.Strength.Basis == recipe.ABW {
			return 0, 0, fmt.Errorf("a cut by weight percent is not solved for: write it in %% abv or proof")
		}
		top, bottom := begins.AbvPct/100, end.AbvPct/100
		return top - 0.02*(top-bottom), bottom + 0.02*(top-bottom), nil
	}
	return 0, 0, fmt.Errorf("the cut is of no kind that is solved for")
}
