// Package starch holds the kinetics of starch and of the enzymes that break it
// down, shared by the mash and the ferment.
//
// The structure is that of Brandam et al., Biochem. Eng. J. 13 (2003) 43:
// starch in the granule is out of reach until it gelatinizes, gelatinized
// starch is split to dextrins and sugars at rates first order in the starch
// and in the enzymes dissolved in the water, and the enzymes die by a
// first-order law of their own. Three things are added to it. Every grain has
// its own gelatinization range, over which its granules melt one after another.
// Dextrins are of three kinds: straight ones that the amylases go on splitting;
// limit dextrins, closed by a branch that only limit dextrinase or glucoamylase
// opens; and a few with so many branches that limit dextrinase does not open
// them. Without that difference starch liquefied in a hot cook could not be made
// fermentable by malt added later. And enzymes may be added as preparations.
//
// Limit dextrinase is free, bound by its inhibitor and idle, or bound in the
// grist (Sissons, J. ASBC 54 (1996) 19). The free dies within minutes in a hot
// mash; the bound outlives it, and is set free the faster the lower the pH, so
// that most of its work is done in the fermenter. That is why an unboiled wash
// ferments on where a boiled wort stops (Vriesekoop et al., J. Inst. Brew. 116
// (2010) 230), and why it loses little by a hotter mash.
//
// Thickness has two effects, of opposite sign. What is dissolved raises the
// temperature at which granules gelatinize (De Schepper and Courtin, Food
// Hydrocolloids (2022) 107745), and it protects the amylases.
//
// Left out: the hindrance of enzymes by their products, raw starch digestion
// below gelatinization, retrogradation of starch that cools unconverted.
package starch

import "newmake/lang/recipe"

// Enzymes is what works on starch in a mash or wash, and how far the dextrins
// let it. The mash hands it to the ferment.
type Enzymes struct {
	// Of the malt: the activity left, in the units of the maltster's analysis
	// times kg of malt (DU kg, degrees Lintner kg).
	Alpha    float64 // alpha-amylase, DU kg
	Beta     float64 // beta-amylase, Lintner kg: diastatic power stands for it
	BetaTail float64 // the part of it that outlasts the rest, Lintner kg

	// Limit dextrinase, DU kg: no analysis gives it, alpha-amylase and the kiln
	// stand for it. Most of a malt's is bound to its inhibitor and idle, and is
	// set free as the pH falls.
	Limit      float64 // free, at work
	LimitBound float64 // dissolved, idle
	LimitHeld  float64 // idle and still in the grist: it stays in the draff

	Added []Added // preparations, in the order dosed

	// BranchedShare is the share of the dextrins that are limit dextrins, and
	// ClosedShare that of those that limit dextrinase cannot open. They travel
	// here because a stream knows dextrins only as one.
	BranchedShare, ClosedShare float64
}

// Added is the activity left of one preparation.
type Added struct {
	Name     string
	Enzyme   *recipe.Enzyme
	Activity float64 // the library entry's activity times kg: per second in 1 kg of water
	Dosed    float64 // Activity when it went in
}

// AddMalt adds the enzymes of massKg of a grain. A grain without power adds
// none.
func (e *Enzymes) AddMalt(c *Constants, g *recipe.Grain, massKg float64) {
	e.Alpha += g.AlphaDU * massKg
	beta := g.LintnerPower * massKg
	e.Beta += (1 - c.BetaTail) * beta
	e.BetaTail += c.BetaTail * beta
	limit := g.LimitShare * g.AlphaDU * massKg
	e.Limit += c.LimitFree * limit
	e.LimitHeld += c.LimitHeld * limit
	e.LimitBound += (1 - c.LimitFree - c.LimitHeld) * limit
}

// BetaAll is all beta-amylase, Lintner kg.
func (e Enzymes) BetaAll() float64 { return e.Beta + e.BetaTail }

// LimitAll is all limit dextrinase, at work or idle, DU kg.
func (e Enzymes) LimitAll() float64 { return e.Limit + e.LimitBound + e.LimitHeld }

// ofMalt are the malt's pools, in the order in which the vector has them.
func (e *Enzymes) ofMalt() [ofMalt]*float64 {
	return [ofMalt]*float64{&e.Alpha, &e.Beta, &e.BetaTail, &e.LimitHeld, &e.LimitBound, &e.Limit}
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
