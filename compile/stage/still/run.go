package still

import (
	"fmt"
	"math"

	"newmake/compile/matter/fluid"
	"newmake/compile/matter/stream"
	"newmake/lang/recipe"
)

// runner carries one run from the fire to the stop.
type runner struct {
	set     Setting
	charge  stream.Stream
	waterKg float64 // of the charge, see SpiritInput.WaterTo
	hot     heated
	x0      float64 // pot at the first drop
	p       *pot
	now     node
	end     float64 // ln x at the stop strength
	ended   bool    // the stop, or an empty pot

	filled    float64 // m3 in the receivers that are full, at 20 C
	gaugeC    float64 // at which a volume is written
	gauged    float64 // m3 in the receivers that are full, at that
	startE    float64 // ethanol and water over when this receiver began, kg
	startW    float64
	fractions []Fraction
	problems  []Problem
	path      []node // every step, if it is wanted for the curve
	keep      bool
	drives    []drive // of the fractions; none: full heat
	closed    bool    // see leaving
	bare      bool    // what comes over is wanted, and neither when nor at what strength
}

const (
	referenceC = 20.0
	// mostX is the strongest pot that is run: stronger, next to the azeotrope
	// at 0.89, the spout would not fall. It is 95 % vol.
	mostX = 0.85
	// leastLeft is the share of the charge's moles at which a run ends
	// whatever the cuts say: below, coil or jacket would boil dry (common
	// practice is to keep them covered).
	leastLeft = 0.05
	// distillateC is how cold distillate runs from the condenser, if the
	// water is not warmer than 5 C below (common practice).
	distillateC     = 20.0
	distillateLeast = 5.0
	// coolingRiseK is by how much the condenser's water is warmed: common
	// practice for a shell-and-tube condenser.
	coolingRiseK = 30.0
)

// distillateC is how cold distillate runs: as the house asks, or 20 C, and never
// colder than the water can make it.
func (s Setting) distillateC() float64 {
	asked := s.Still.Condenser.DistillateC
	if asked == 0 {
		asked = distillateC
	}
	return max(asked, s.ColdestC())
}

// ColdestC is the coldest distillate that the condenser's water makes.
func (s Setting) ColdestC() float64 { return s.WaterC + distillateLeast }

// CoolingRiseK is by how much the condenser warms its water.
func (s Setting) CoolingRiseK() float64 {
	if out := s.Still.Condenser.WaterOutC; out > s.WaterC {
		return out - s.WaterC
	}
	return coolingRiseK
}

// check looks at what a distiller could have got wrong; a nil error means that
// the run can be computed.
func (s Setting) check(charge stream.Stream) error {
	for _, v := range [...]float64{charge.MassKg(), charge.TempC, s.PressurePa, s.AmbientC, s.WaterC, s.BoilerW,
		s.Still.HoldsM3, s.Still.HeatsW, s.Still.Reflux, s.Still.MetalKg, s.Still.LossW} {
		if math.IsNaN(v) || math.IsInf(v, 0) {
			return fmt.Errorf("a figure of the still or its charge is not a number")
		}
	}
	switch {
	case !(s.Still.HoldsM3 > 0):
		return fmt.Errorf("the still %q holds nothing: state its volume", s.Still.Name)
	case !(s.Still.HeatsW > 0):
		return fmt.Errorf("the still %q has no heat: state its power", s.Still.Name)
	case s.BoilerW < 0 || s.Still.MetalKg < 0 || s.Still.LossW < 0:
		return fmt.Errorf("the boiler's power and the still's metal and losses cannot be below zero")
	case !(s.Still.Reflux >= 0 && s.Still.Reflux <= MostReflux):
		return fmt.Errorf("the head cannot return %.0f %% of the vapour: 0 to %.0f %%", 100*s.Still.Reflux, 100*MostReflux)
	case !(s.PressurePa >= fluid.MinPressurePa && s.PressurePa <= fluid.MaxPressurePa):
		return fmt.Errorf("an air pressure of %.1f kPa is outside 50 to 110 kPa", s.PressurePa/1000)
	case s.AmbientC < -40 || s.AmbientC > 50 || s.WaterC < 0 || s.WaterC > 50:
		return fmt.Errorf("air at %.0f C and cooling water at %.0f C: they must be -40 to 50 C and 0 to 50 C", s.AmbientC, s.WaterC)
	case charge.WaterKg <= 0 || charge.EthanolKg < 0:
		return fmt.Errorf("the charge holds %g kg of water and %g kg of ethanol: there is nothing to distil", charge.WaterKg, charge.EthanolKg)
	case charge.TempC < 0:
		return fmt.Errorf("the charge is at %.1f C: it must be at 0 C or above", charge.TempC)
	}
	return nil
}

// nodesMost is how many nodes a run has as a rule at most.
const nodesMost = 80

// MostReflux is the greatest share the head may return. A pot still's is below
// 0.3; the series are held to their accuracy up to this. Nothing writes or draws more.
const MostReflux = 0.5

// newRunner heats a charge to its boil. The boil's functions are given when
// they are known from an earlier run of the same still.
func newRunner(set Setting, charge stream.Stream, stop recipe.Strength, b *boil) (*runner, error) {
	if err := set.check(charge); err != nil {
		return nil, err
	}
	w, err := massFrac(stop)
	if err != nil {
		return nil, fmt.Errorf("the stop: %w", err)
	}
	direct := set.Still.HeatedBy == recipe.Direct
	hot, err := set.heatUp(charge, direct, b.mixture)
	if err != nil {
		return nil, err
	}
	if hot.x >= mostX {
		return nil, fmt.Errorf("a charge of %.1f %% vol is next to the azeotrope: no run of a pot still changes it", 100*charge.ABV())
	}
	p := &pot{
		b: b, heatW: set.heatW(), lossW: set.lossW(hot.boilC, hot.boilC), inertJK: set.inertHeatCapacity(charge),
		outletC: set.distillateC(), ethanol0: hot.ethanol, water0: hot.water,
		firstS: hot.heatUpS, maxStep: maxStep, tolerance: tolerance,
	}
	if direct {
		molS, h := set.steam()
		p.steam, p.steamH = molS/p.heatW, h
	}
	r := &runner{set: set, charge: charge, hot: hot, x0: hot.x, p: p}
	r.end = math.Inf(1)
	if hot.x > leastX {
		u := math.Log(hot.x)
		r.now = p.node(u, level{pot: hot.ethanol + hot.water, timeS: hot.heatUpS})
		if r.closed = p.closes(hot.x); r.closed {
			p.lnPot0 = b.left.lnPot(u, hot.x)
		}
		r.startE, r.startW = p.overKg(r.now) // nothing, but for rounding
		r.end = b.strengthMark(w, hot.x).u
	}
	if math.IsInf(r.end, 1) {
		r.ended = true
		r.problem(ProblemNoDistillate)
	}
	return r, nil
}

func (r *runner) problem(p Problem) { r.problems = append(r.problems, p) }

// collect fills one receiver until the mark, or to the end of the run. It
// tells whether the mark was reached.
func (r *runner) collect(name string, m mark) bool {
	f := Fraction{Name: name, StartS: r.now.timeS, EndS: r.now.timeS}
	if r.x0 <= leastX || r.ended {
		if r.ended {
			f.StartS, f.EndS = r.lastS(), r.lastS()
		}
		r.fractions = append(r.fractions, f)
		return false
	}
	r.drive(len(r.fractions))
	startJ := r.now.heatJ
	if !r.bare {
		f.StartABV = r.spoutABV(r.now)
	}
	reached := m.passed(r.now)
	if !reached {
		reached = r.walkTo(m)
	}
	ethanol, water := r.p.overKg(r.now)
	// An empty receiver is empty: not a rounding below nothing.
	f.Stream = stream.Stream{EthanolKg: max(0, ethanol-r.startE), WaterKg: max(0, water-r.startW), TempC: r.p.outletC}
	f.EndS, f.HeatJ = r.now.timeS, r.now.heatJ-startJ
	r.gauged += spiritM3(f.EthanolKg, f.WaterKg, r.gaugeC)
	if !r.bare {
		f.EndABV = r.spoutABV(r.now)
		f.EndVapourC = r.p.b.at(r.now.x()).vapourC
		f.VolumeM3 = spiritM3(f.EthanolKg, f.WaterKg, referenceC)
		f.ABV = f.Stream.ABV()
		r.filled += f.VolumeM3
	}
	r.startE, r.startW = ethanol, water
	r.fractions = append(r.fractions, f)
	return reached
}

// walkTo integrates to the mark or to the end of the run.
func (r *runner) walkTo(m mark) (reached bool) {
	least := leastLeft * (r.hot.ethanol + r.hot.water)
	empty := func(n node) float64 { return 1 - n.pot/least }
	stop := empty
	if m.past != nil {
		stop = func(n node) float64 { return max(empty(n), m.past(n)) }
	}
	var each func(a, b node)
	if r.keep {
		if r.path == nil {
			r.path = make([]node, 0, nodesMost)
		}
		r.path = append(r.path, r.now)
		each = func(_, b node) { r.path = append(r.path, b) }
	}
	bottom := max(max(r.end, m.u), math.Log(leastX))
	if r.closed {
		to, _ := r.p.goTo(r.now, min(bottom, r.now.u), stop)
		if !r.bare {
			to = r.p.sum(r.now, to, each)
		}
		r.now = to
	} else {
		r.now, _ = r.p.walk(r.now, bottom, stop, each)
	}
	switch {
	case m.passed(r.now):
		return true
	case m.past != nil && math.Abs(m.past(r.now)) < 1e-12: // met from below, to rounding
		return true
	case r.now.u > r.end:
		r.problem(ProblemStopNotReached)
	}
	r.ended = true
	return false
}

func (r *runner) lastS() float64 {
	if r.now.timeS == 0 {
		return r.hot.heatUpS
	}
	return r.now.timeS
}

// overM3 is what the receivers hold at n, each mixed, at 20 C.
func (r *runner) overM3(n node) float64 {
	ethanol, water := r.p.overKg(n)
	return r.filled + spiritM3(ethanol-r.startE, water-r.startW, referenceC)
}

// gaugedM3 is the same at the temperature at which volumes are written.
func (r *runner) gaugedM3(n node) float64 {
	ethanol, water := r.p.overKg(n)
	return r.gauged + spiritM3(ethanol-r.startE, water-r.startW, r.gaugeC)
}

func (r *runner) spoutABV(n node) float64 {
	return fluid.ABVFromMassFrac(fluid.MassFrac(r.p.b.vapour(n.x())))
}

// spiritM3 is the volume of ethanol-water at tempC.
func spiritM3(ethanolKg, waterKg, tempC float64) float64 {
	m := ethanolKg + waterKg
	if m <= 0 {
		return 0
	}
	return m / fluid.Density(ethanolKg/m, tempC)
}

// finish draws up the account of the run.
func (r *runner) finish() Run {
	run := Run{
		Charge: r.charge, ChargeM3: r.charge.VolumeAtM3(20), ChargeABV: r.charge.ABV(), WaterKg: r.waterKg,
		HeatUpS: r.hot.heatUpS, HeatUpJ: r.hot.heatJ, HeatUpAskedS: r.hot.askedS, DurationS: r.lastS(),
		Fractions: r.fractions, Problems: r.problems,
	}
	hotCharge := r.charge
	hotCharge.WaterKg += r.hot.steamMol * fluid.MolarMassWater
	run.MostFill = hotCharge.VolumeAtM3(r.hot.boilC) / r.set.Still.HoldsM3
	steam := r.hot.steamMol + r.p.steam*r.now.heatJ
	run.SteamKg = steam * fluid.MolarMassWater
	run.HeatJ = run.HeatUpJ + r.now.heatJ
	run.LossJ = r.hot.lossJ + r.p.lossW*(run.DurationS-run.HeatUpS)
	run.HeadJ = r.now.headJ
	run.CondenserJ = r.now.vapourJ
	run.Residue = r.charge
	run.Residue.WaterKg += run.SteamKg
	run.Residue.TempC = r.hot.boilC
	for _, f := range r.fractions {
		run.Residue = run.Residue.Minus(f.Stream)
		run.CondenserJ -= spiritEnthalpy(f.Stream)
	}
	if r.now.pot > 0 {
		run.Residue.TempC = r.p.b.at(r.now.x()).potC
	}
	run.ResidueM3, run.ResidueABV = run.Residue.VolumeAtM3(20), run.Residue.ABV()
	run.LeftHotM3 = run.Residue.VolumeAtM3(run.Residue.TempC)
	rise := r.set.CoolingRiseK()
	run.CoolingWaterM3 = run.CondenserJ / (fluid.WaterHeatCapacity(r.set.WaterC+rise/2) * rise * fluid.WaterDensity(r.set.WaterC))
	if r.keep {
		run.Curve, run.path, run.pot = r.curve(), r.path, r.p
	}
	return run
}

// lose takes a share of what came over out of every receiver: it dripped, was drawn
// for samples, stayed in pipes or left by the vent. Strengths and hours stay.
func (r *Run) lose(frac float64) {
	if frac <= 0 {
		return
	}
	for i := range r.Fractions {
		f := &r.Fractions[i]
		r.Lost = r.Lost.Plus(f.Stream.Scale(frac))
		f.Stream = f.Stream.Scale(1 - frac)
		f.VolumeM3 *= 1 - frac
	}
}

// spiritEnthalpy is the enthalpy of a stream's ethanol and water, in J.
func spiritEnthalpy(s stream.Stream) float64 {
	ethanol, water := s.EthanolKg/fluid.MolarMassEthanol, s.WaterKg/fluid.MolarMassWater
	n := ethanol + water
	if n <= 0 {
		return 0
	}
	return n * liquidEnthalpy(ethanol/n, s.TempC)
}
