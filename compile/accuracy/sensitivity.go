package accuracy

import (
	"maps"
	"slices"

	"newmake/compile"
	"newmake/compile/accuracy/published"
	"newmake/compile/plan"
	"newmake/lang/check"
	"newmake/lang/recipe"
)

// outcome is a number of the plan that is watched, in the unit and to the
// places in which it is shown.
type outcome struct {
	name   string
	places int
	of     func(p *plan.Plan) float64
}

var outcomes = []outcome{
	{"original gravity, points", 1, func(p *plan.Plan) float64 { return 1000 * p.Summary.OriginalGravitySG }},
	{"wash, % vol", 2, func(p *plan.Plan) float64 { return p.Summary.WashAbvPct }},
	{"dry, h", 1, func(p *plan.Plan) float64 { return p.Ferment.DryHours }},
	{"hearts, L of alcohol", 1, func(p *plan.Plan) float64 { return p.Summary.PureAlcoholL }},
	{"hearts, % vol", 2, func(p *plan.Plan) float64 { return p.Summary.HeartsAbvPct }},
	{"yield, L/t", 0, func(p *plan.Plan) float64 { return p.Summary.YieldLPAPerTonne }},
}

// byYield is the outcome by which the table is sorted.
const byYield = 5

// input is something that is changed, alone, down and up.
type input struct {
	group, name, step string
	down, up          func(b *recipe.Batch)
}

// effect is what came of an input: the outcomes less those of the batch as it
// is, for down and up; nil where the batch could not be computed.
type effect struct {
	input
	down, up []float64
}

// Sensitivity changes each input of the fixture batch alone.
func Sensitivity() (base *plan.Plan, all []effect, err error) {
	dir, err := published.Dir("houses/small")
	if err != nil {
		return nil, nil, err
	}
	house, err := check.Load(dir, check.Options{})
	if err != nil {
		return nil, nil, err
	}
	b, list := house.Batch(house.BatchesIn(dir)[0])
	if b == nil {
		return nil, nil, list
	}
	base, list = compile.Compile(b)
	if base == nil {
		return nil, nil, list
	}
	for _, in := range inputs(b) {
		all = append(all, effect{in, change(b, base, in.down), change(b, base, in.up)})
	}
	return base, all, nil
}

// change computes a copy of the batch with one thing changed.
func change(b *recipe.Batch, base *plan.Plan, do func(*recipe.Batch)) []float64 {
	c := *b
	c.Models = maps.Clone(b.Models)
	for name, m := range c.Models {
		own := *m
		own.Values = maps.Clone(m.Values)
		c.Models[name] = &own
	}
	c.Mash.Steps = slices.Clone(b.Mash.Steps)
	yeast := *b.Ferm.Yeast
	c.Ferm.Yeast = &yeast
	pl := *b.Plant
	pl.Vessels = slices.Clone(pl.Vessels)
	c.Plant = &pl
	do(&c)
	p, _ := compile.Compile(&c)
	if p == nil {
		return nil
	}
	out := make([]float64, len(outcomes))
	for i, o := range outcomes {
		out[i] = plan.RoundTo(o.of(p)-o.of(base), o.places)
	}
	return out
}
