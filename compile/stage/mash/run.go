package mash

import (
	"fmt"

	"newmake/compile/matter/exchanger"
	"newmake/compile/matter/fluid"
	"newmake/compile/matter/ode"
	"newmake/compile/matter/starch"
	"newmake/lang/recipe"
)

const (
	curveStepS = 60
	endlessS   = 48 * 3600 // no step lasts longer
	// No mash is followed for longer, whatever its steps: so the points of its curve are
	// so many at most.
	longestS = 14 * 24 * 3600
)

// cooker is a mash under way.
type cooker struct {
	slow                   error // a step that the plant's rates make endless
	in                     Input
	c                      constants
	k                      starch.Constants
	tolerance              float64    // of the integrator's steps
	rung                   int        // that the last drive's steps ended with
	solver                 ode.Solver // of all drives, one after another
	boilC                  float64
	metalJK                float64
	lossWK                 float64
	surfaceWK              float64 // of a cooler with its water, per K between mash and water; 0: by rated power
	waterInM3S, grainInKgS float64
	steamJ                 float64 // enthalpy of live steam per kg
	lastDrain              int     // index of the last drain, -1 without

	tun, worts  body
	kept        body    // for the next mash
	wortPH      float64 // as the last of the worts ran
	acid        acidity
	drySlakingJ float64 // of grain that lies dry, given out when liquor comes

	startStarchKg                  float64
	alphaInDU, betaInL, addedInAct float64
	nowS, curveS                   float64
	res                            Result
}

// Run computes a mash, to 2e-5 of each of its masses (TestStepOfTimeIsFineEnough). The only errors are a model without its constants and
// an input that no recipe yields; what cannot be done as written is done as
// near as can be, and stands in Problems.
func Run(in Input) (Result, error) { return run(in, starch.Tolerance) }

// run is Run to a tolerance; tests use it to see what the step's error is.
func run(in Input, tolerance float64) (Result, error) {
	k, err := starch.ConstantsFrom(in.Model)
	if err != nil {
		return Result{}, fmt.Errorf("mash: %w", err)
	}
	c, err := constantsFrom(in.Model)
	if err != nil {
		return Result{}, fmt.Errorf("mash: %w", err)
	}
	m := newCooker(in, c, k, tolerance)
	m.treat()
	for i := range in.Steps {
		if err := m.do(i); err != nil {
			return Result{}, err
		}
	}
	return m.finish(), nil
}

func newCooker(in Input, c constants, k starch.Constants, tolerance float64) *cooker {
	m := &cooker{in: in, c: c, k: k, tolerance: tolerance, lastDrain: -1}
	m.boilC = fluid.WaterBoilC(in.PressurePa)
	m.metalJK = MetalKg(in.Cooker) * metalJKgK
	if over := m.boilC - in.AmbientC; over > 0 {
		m.lossWK = lossW(in.Cooker, m.boilC, in.AmbientC) / over
	}
	if s := in.Cooker.Cooler; s.AreaM2 > 0 {
		usual := [...]float64{recipe.JacketSurface: c.jacketWM2K, recipe.CoilSurface: c.coilWM2K}[s.Surface]
		m.surfaceWK = exchanger.VesselWK(in.WaterC, s.WaterM3S, s.AreaM2*orDefault(s.WM2K, usual))
	}
	m.waterInM3S = orDefault(in.WaterInM3S, in.Cooker.HoldsM3/c.waterInS)
	m.grainInKgS = orDefault(in.GrainInKgS, gristKgM3*in.Cooker.HoldsM3/c.grainInS)
	if in.Cooker.HeatedBy == recipe.Direct {
		m.steamJ = fluid.SteamEnthalpyAtPressure(in.PressurePa + steamGaugePa)
	}
	m.tun.tempC = in.AmbientC
	m.worts.tempC = in.AmbientC
	m.kept.tempC = in.AmbientC
	m.tun.starch.Raw = make([]starch.Granules, 0, len(in.Bill.Lines))
	for i, s := range in.Steps {
		if s.Verb == recipe.MashDrain || s.Verb == recipe.MashSparge {
			m.lastDrain = i
		}
	}
	m.res.BoilC = m.boilC
	m.res.Steps = make([]Step, 0, len(in.Steps))
	m.res.Curve = make([]Point, 0, 512)
	return m
}

// at is the body that step i works on: the mash in the tun, and after the last
// drain the worts, which cooling always means once there are some.
func (m *cooker) at(i int) *body {
	if m.lastDrain >= 0 && i > m.lastDrain {
		return &m.worts
	}
	if m.in.Steps[i].Verb == recipe.MashCool && !m.worts.empty() {
		return &m.worts
	}
	return &m.tun
}

// heatCapacityJK is that of a body with the vessel that it stands in: the
// worts' vessel is left out.
func (m *cooker) heatCapacityJK(b *body) float64 {
	if b == &m.tun {
		return b.heatCapacityJK() + m.metalJK
	}
	return b.heatCapacityJK()
}

func (m *cooker) wallWK(b *body) float64 {
	if b == &m.tun {
		return m.lossWK
	}
	return 0
}

// other is the body that only stands while b is worked on, or nil.
func (m *cooker) other(b *body) *body {
	switch {
	case m.worts.empty():
		return nil
	case b == &m.tun:
		return &m.worts
	case len(m.res.Steps) > m.lastDrain: // spent grain, no longer of interest
		return nil
	default:
		return &m.tun
	}
}
