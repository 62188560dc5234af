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

// subject is a batch of which each input is changed alone.
type subject struct {
	house, words string
	inputs       func(b *recipe.Batch) []input

	base *plan.Plan
	all  []effect
}

// Sensitivity changes each input of the fixture batches alone: all of a bourbon's, and of a
// malt's those that a bourbon has not.
func Sensitivity() ([]subject, error) {
	subjects := []subject{
		{house: "small", words: "a corn-led bourbon of 320 kg, feints returned", inputs: inputs},
		{house: "malt-425", words: "425 kg of malt, drained, its feints returned", inputs: maltInputs},
	}
	for i := range subjects {
		if err := subjects[i].change(); err != nil {
			return nil, err
		}
	}
	return subjects, nil
}

func (s *subject) change() error {
	dir, err := published.Dir("houses/" + s.house)
	if err != nil {
		return err
	}
	house, err := check.Load(dir, check.Options{})
	if err != nil {
		return err
	}
	b, list := house.Batch(house.BatchesIn(dir)[0])
	if b == nil {
		return list
	}
	if s.base, list = compile.Compile(b); s.base == nil {
		return list
	}
	for _, in := range s.inputs(b) {
		s.all = append(s.all, effect{in, change(b, s.base, in.down), change(b, s.base, in.up)})
	}
	return nil
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
	wash, spirit := *b.Strip.Still, *b.Spirit.Still
	c.Strip.Still, c.Spirit.Still = &wash, &spirit
	c.Bill.Lines = slices.Clone(b.Bill.Lines)
	for i := range c.Bill.Lines {
		grain := *c.Bill.Lines[i].Grain
		c.Bill.Lines[i].Grain = &grain
	}
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
