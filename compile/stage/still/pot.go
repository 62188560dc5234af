package still

import (
	"newmake/compile/matter/exponential"
	"newmake/compile/matter/fluid"
)

// pot is a run from the first drop on: what stays the same in it, and how it
// changes with u = ln x.
type pot struct {
	b                  *boil
	heatW              float64 // the most that is put in
	flowM3S            float64 // held at the spout, at 20 C, as far as the heat gives it; 0: all the heat there is
	lossW              float64
	inertJK            float64 // heat capacity of solids and metal
	steam              float64 // mol/J of condensate into the pot; 0 with a jacket
	steamH             float64 // its enthalpy, J/mol
	outletC            float64 // temperature of the distillate
	ethanol0           float64 // mol in the pot at the first drop
	water0             float64
	firstS             float64 // time of the first drop
	lnPot0             float64 // leaving's at the first drop
	maxStep, tolerance float64 // of the integrator
}

// level is what adds up along a run.
type level struct {
	pot     float64 // mol of ethanol and water in the pot
	timeS   float64 // from the fire
	heatJ   float64 // put in since the first drop
	headJ   float64 // given off by the head since the first drop
	vapourJ float64 // enthalpy of the vapour gone to the condenser
}

// slope is the change of a level with u. Mass and heat balance are
//
//	n x du = -(y-x) dD - x s dt
//	(Q + s hs - loss) dt = h (s dt - dD) + (n dh/dx + C dT/dx) x du + H dD
//
// with s the steam's condensate (mol/s) and H the enthalpy that leaves pot and
// head with a mole of distillate. They are solved for dD and dt.
func (p *pot) slope(u float64, l level) level { return p.slopeOf(p.b.at(exponential.Exp(u)), l) }

// slopeOf is slope for a state that is known.
func (p *pot) slopeOf(st state, l level) level {
	warming := (l.pot*st.dPotH + p.inertJK*st.dPotC) * st.x
	boiling := st.overH - st.potH
	heatW, molS := p.heatW, 0.0
	if p.flowM3S > 0 {
		molS = p.flowM3S * fluid.Density(fluid.MassFrac(st.y), referenceC) / fluid.MolarMass(st.y)
		heatW = p.heatFor(st, l, warming, molS)
	}
	var over, dt float64
	if molS > 0 && heatW < p.heatW { // the flow holds, however small
		over = -st.x * l.pot / (st.equilibriumGap + st.x*p.steam*heatW/molS)
		dt = over / molS
	} else {
		heatW = p.heatW
		power := heatW + p.steam*heatW*(p.steamH-st.potH) - p.lossW
		over = -st.x * (l.pot + p.steam*heatW*warming/power) / (st.equilibriumGap + st.x*p.steam*heatW*boiling/power)
		dt = (boiling*over + warming) / power
	}
	steam := p.steam * heatW
	return level{
		pot:     steam*dt - over,
		timeS:   dt,
		heatJ:   heatW * dt,
		headJ:   st.headH * over,
		vapourJ: (st.overH - st.headH) * over,
	}
}

// node is a point of a run: where it is and how it changes there.
type node struct {
	u float64
	level
	d level
}

func (p *pot) node(u float64, l level) node { return node{u: u, level: l, d: p.slope(u, l)} }

func (n node) x() float64 { return exponential.Exp(n.u) }

// overKg is what ethanol and water have come over since the first drop.
func (p *pot) overKg(n node) (ethanol, water float64) {
	x := n.x()
	ethanol = (p.ethanol0 - n.pot*x) * fluid.MolarMassEthanol
	water = (p.water0 + p.steam*n.heatJ - n.pot*(1-x)) * fluid.MolarMassWater
	return ethanol, water
}
