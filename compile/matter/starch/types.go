// Package starch holds the kinetics of starch and of the enzymes that break it
// down, shared by the mash and the ferment.
//
// The structure is that of Brandam et al., Biochem. Eng. J. 13 (2003) 43:
// starch in the granule is out of reach until it gelatinizes, gelatinized
// starch is split to dextrins and sugars at rates first order in the starch
// and in the enzymes dissolved in the water, and the enzymes die by a
// first-order law of their own. Three things are added to it. Every grain has
// its own gelatinization range, over which its granules melt one after another.
// Dextrins are of two kinds, straight ones that the amylases go on splitting
// and limit dextrins, closed by a branch that only limit dextrinase or
// glucoamylase opens: without that difference starch liquefied in a hot cook
// could not be made fermentable by malt added later. And enzymes may be added
// as preparations.
//
// Left out: the hindrance of enzymes by their products, raw starch digestion
// below gelatinization, the higher gelatinization temperature of very thick or
// sugary mashes, retrogradation of starch that cools unconverted.
package starch

import "newmake/lang/recipe"

// Enzymes is what works on starch in a mash or wash, and how far the dextrins
// let it. The mash hands it to the ferment.
type Enzymes struct {
	// Of the malt: the activity left, in the units of the maltster's analysis
	// times kg of malt (DU kg, degrees Lintner kg).
	Alpha float64 // alpha-amylase, DU kg
	Beta  float64 // beta-amylase, Lintner kg: diastatic power stands for it
	Limit float64 // limit dextrinase, DU kg: no analysis gives it, alpha-amylase stands for it

	Added []Added // preparations, in the order dosed

	// BranchedShare is the share of the dextrins that are limit dextrins. It
	// travels here because a stream knows dextrins only as one.
	BranchedShare float64
}

// Added is the activity left of one preparation.
type Added struct {
	Name     string
	Enzyme   *recipe.Enzyme
	Activity float64 // the stock entry's activity times kg: per second in 1 kg of water
	Dosed    float64 // Activity when it went in
}

// AddMalt adds the enzymes of massKg of a grain. A grain without power adds
// none.
func (e *Enzymes) AddMalt(g *recipe.Grain, massKg float64) {
	e.Alpha += g.AlphaDU * massKg
	e.Limit += g.AlphaDU * massKg
	e.Beta += g.LintnerPower * massKg
}

// Dose adds massKg of a preparation, joined to an earlier dose of the same.
func (e *Enzymes) Dose(z *recipe.Enzyme, massKg float64) {
	activity := z.ActivityPerKg * massKg
	for i := range e.Added {
		if e.Added[i].Name == z.Name {
			e.Added[i].Activity += activity
			e.Added[i].Dosed += activity
			return
		}
	}
	e.Added = append(e.Added, Added{Name: z.Name, Enzyme: z, Activity: activity, Dosed: activity})
}

// Clone is a copy that shares nothing that Run changes.
func (e Enzymes) Clone() Enzymes {
	e.Added = append([]Added(nil), e.Added...)
	return e
}

// Scale is the share f of them: what runs off with that share of the liquor.
func (e Enzymes) Scale(f float64) Enzymes {
	e = e.Clone()
	e.Alpha, e.Beta, e.Limit = e.Alpha*f, e.Beta*f, e.Limit*f
	for i := range e.Added {
		e.Added[i].Activity *= f
		e.Added[i].Dosed *= f
	}
	return e
}
