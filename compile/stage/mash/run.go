package mash

import (
	"fmt"

	"newmake/compile/matter/fluid"
	"newmake/compile/matter/starch"
	"newmake/lang/recipe"
)

const (
	// Steps of time. The kinetics are second order, so 10 s where starch moves
	// and 30 s where it barely does give four digits (see the tests).
	fineStepS   = 10
	coarseStepS = 30
	coarseC     = 45 // below it, coarse

	curveStepS = 60
	endlessS   = 48 * 3600 // no step lasts longer
)

// cooker is a mash under way.
type cooker struct {
	in        Input
	c         constants
	k         starch.Constants
	refine    float64 // divides the step of time
	boilC     float64
	metalJK   float64
	lossWK    float64
	steamJ    float64 // enthalpy of live steam per kg
	lastDrain int     // index of the last drain, -1 without

	tun, worts  body
	acid        acidity
	drySlakingJ float64 // of grain that lies dry, given out when liquor comes

	startStarchKg                  float64
	alphaInDU, betaInL, addedInAct float64
	nowS, curveS                   float64
	res                            Result
}

// Run computes a mash. The only errors are a model without its constants and
// an input that no recipe yields; what cannot be done as written is done as
// near as can be, and stands in Problems.
func Run(in Input) (Result, error) { return run(in, 1) }

func run(in Input, refine float64) (Result, error) {
	k, err := starch.ConstantsFrom(in.Model)
	if err != nil {
		return Result{}, fmt.Errorf("mash: %w", err)
	}
	c, err := constantsFrom(in.Model)
	if err != nil {
		return Result{}, fmt.Errorf("mash: %w", err)
	}
	m := newCooker(in, c, k, refine)
	for i := range in.Steps {
		if err := m.do(i); err != nil {
			return Result{}, err
		}
	}
	return m.finish(), nil
}

func newCooker(in Input, c constants, k starch.Constants, refine float64) *cooker {
	m := &cooker{in: in, c: c, k: k, refine: refine, lastDrain: -1}
	m.boilC = fluid.WaterBoilC(in.PressurePa)
	m.metalJK = MetalKg(in.Cooker) * metalJKgK
	if over := m.boilC - in.AmbientC; over > 0 {
		m.lossWK = LossW(in.Cooker, m.boilC, in.AmbientC) / over
	}
	if in.Cooker.Steam == recipe.Direct {
		m.steamJ = fluid.SteamEnthalpyAtPressure(in.PressurePa + steamGaugePa)
	}
	m.tun.tempC = in.AmbientC
	m.worts.tempC = in.AmbientC
	m.tun.starch.Raw = make([]starch.Granules, 0, len(in.Bill.Lines))
	for i, s := range in.Steps {
		if s.Verb == recipe.MashDrain {
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

// wait lets a drive work on a body for durS.
func (m *cooker) wait(step *Step, b *body, d drive, durS float64) {
	for left := durS; left > 1e-9*durS; {
		dt := min(m.stepS(b.tempC), left)
		m.tick(step, b, &d, dt)
		left -= dt
	}
}

// reach lets a drive work on a body until toC.
func (m *cooker) reach(step *Step, b *body, d drive, toC float64) {
	for spent := 0.0; spent < endlessS; {
		dt := m.stepS(b.tempC)
		left := d.timeTo(b.tempC, toC, m.heatCapacityJK(b))
		if left <= dt {
			m.tick(step, b, &d, left)
			b.tempC = toC
			return
		}
		m.tick(step, b, &d, dt)
		spent += dt
	}
}

func (m *cooker) stepS(tempC float64) float64 {
	if tempC < coarseC && m.worts.empty() {
		return coarseStepS / m.refine
	}
	return fineStepS / m.refine
}

// tick is one step of time: heat, then starch at the middle temperature, and
// the clock.
func (m *cooker) tick(step *Step, b *body, d *drive, dtS float64) {
	c := m.heatCapacityJK(b)
	midC, toC, f := d.over(b.tempC, c, dtS)
	pH := m.acid.pH()
	if m.nowS == 0 && len(m.res.Curve) == 0 {
		m.record(b)
	}
	m.k.Step(&b.starch, &b.enzymes, midC, pH, dtS)
	if other := m.other(b); other != nil {
		m.k.Step(&other.starch, &other.enzymes, other.tempC, pH, dtS)
	}
	if f.cool > 0 {
		m.res.CoolingWaterM3 += f.cool / (waterJKgK * m.c.coolRise * max(m.c.coolLeastK, midC-m.in.WaterC)) /
			fluid.WaterDensity(m.in.WaterC)
	}
	b.tempC = toC
	heat := f.heat
	if m.steamJ > 0 && f.heat > 0 {
		heat = m.condense(b, f.heat)
	}
	step.HeatJ += heat
	step.CoolJ += f.cool
	m.res.LossJ += f.loss
	m.nowS += dtS
	if m.nowS >= m.curveS-1e-9 {
		m.record(b)
	}
}

// condense adds the live steam that gave heatJ to the contents: it arrives as
// water at their temperature. The heat paid for is that from cold feed.
func (m *cooker) condense(b *body, heatJ float64) float64 {
	kg := heatJ / (m.steamJ - waterJKgK*b.tempC)
	b.starch.WaterKg += kg
	b.waterInKg += kg
	m.res.SteamKg += kg
	return kg * (m.steamJ - waterJKgK*m.in.WaterC)
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
