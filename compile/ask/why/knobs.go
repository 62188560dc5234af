package why

import (
	"maps"
	"slices"

	"newmake/compile/measure"
	"newmake/lang/diag"
	"newmake/lang/recipe"
)

// knob is an input that can be nudged.
type knob struct {
	name  string // "rest at 148 F"
	by    string // "+2 F"
	at    diag.Span
	stage stage // the first that feels it
	money bool  // it moves nothing but costs
	turn  func(*recipe.Batch)
}

// How far inputs are nudged.
const (
	point  = 0.01 // of a share, or of a strength
	tenth  = 1.1  // times a time, a volume, a power or a constant
	nudgeK = 1.0  // in SI; 2 F in US units
	feet   = 304.8
	metres = 300.0
)

const (
	byPoint = "+1 point"
	byTenth = "+10 %"
)

// knobs are all those of a batch, in the order of the work.
func (a *asked) knobs() []knob {
	var out []knob
	for _, some := range [][]knob{
		a.grainKnobs(), a.mashKnobs(), a.fermentKnobs(), a.stillKnobs(), a.caskKnobs(), a.plantKnobs(), a.modelKnobs(), a.priceKnobs(),
	} {
		out = append(out, some...)
	}
	return out
}

// degrees is a nudge of a temperature, and its word.
func (a *asked) degrees() (k float64, by string) {
	if a.us() {
		return 2 / 1.8, "+2 F"
	}
	return nudgeK, "+1 C"
}

func (a *asked) temp(c float64) string { return a.u.Temp(c) }

// where finds the place of a path in the texts; none if it is not written.
func (a *asked) where(paths ...string) diag.Span {
	for _, p := range paths {
		if at, ok := a.b.Where[p]; ok {
			return at
		}
	}
	return diag.Span{}
}

// strengthKnob nudges a strength in the basis in which it is written.
func strengthKnob(name string, s recipe.Strength, at diag.Span, st stage, of func(*recipe.Batch) *recipe.Strength) knob {
	by := map[recipe.StrengthBasis]string{recipe.ABV: "+1 % abv", recipe.Proof: "+2 proof", recipe.ABW: "+1 % abw"}[s.Basis]
	return knob{name: name, by: by, at: at, stage: st, turn: func(b *recipe.Batch) { of(b).Value += point }}
}

// said is a strength as it is written.
func said(s recipe.Strength) string {
	switch s.Basis {
	case recipe.Proof:
		return measure.Number(200*s.Value, 0) + " proof"
	case recipe.ABW:
		return measure.Number(100*s.Value, 0) + " % abw"
	default:
		return measure.Number(100*s.Value, 0) + " % abv"
	}
}

// clone is a batch that shares nothing that a knob turns.
func clone(b *recipe.Batch) *recipe.Batch {
	c := *b
	c.Expect = nil
	c.Bill.Lines = slices.Clone(b.Bill.Lines)
	for i, l := range c.Bill.Lines {
		g := *l.Grain
		c.Bill.Lines[i].Grain = &g
	}
	c.Mash.Steps = slices.Clone(b.Mash.Steps)
	c.Ferm.Doses = slices.Clone(b.Ferm.Doses)
	if b.Ferm.Yeast != nil {
		y := *b.Ferm.Yeast
		c.Ferm.Yeast = &y
	}
	if b.Cask.Kind != nil {
		k := *b.Cask.Kind
		c.Cask.Kind = &k
	}
	p := *b.Plant
	c.Plant = &p
	own := map[*recipe.Vessel]*recipe.Vessel{}
	vessel := func(v *recipe.Vessel) *recipe.Vessel {
		if v == nil {
			return nil
		}
		if own[v] == nil {
			w := *v
			own[v] = &w
		}
		return own[v]
	}
	c.Mash.Cooker, c.Strip.Still, c.Spirit.Still = vessel(b.Mash.Cooker), vessel(b.Strip.Still), vessel(b.Spirit.Still)
	c.Ferm.Vessels = make([]*recipe.Vessel, len(b.Ferm.Vessels))
	for i, v := range b.Ferm.Vessels {
		c.Ferm.Vessels[i] = vessel(v)
	}
	c.Costs.PerKg = maps.Clone(b.Costs.PerKg)
	return &c
}

// constant sets one figure of a model, in a copy of the model.
func constant(b *recipe.Batch, name, field string, f func(float64) float64) {
	models := maps.Clone(b.Models)
	m := *models[name]
	m.Values = maps.Clone(m.Values)
	m.Values[field] = f(m.Values[field])
	models[name] = &m
	b.Models = models
}
