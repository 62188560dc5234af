package mash

import (
	"math"

	"newmake/compile/matter/exchanger"
	"newmake/compile/matter/fluid"
	"newmake/compile/matter/starch"
	"newmake/compile/matter/stream"
	"newmake/lang/recipe"
)

// Worts are worts that were drawn off, with how their dextrins are branched.
type Worts struct {
	Stream                     stream.Stream
	BranchedShare, ClosedShare float64 // see starch.Enzymes
	VolumeM3                   float64 // as they were drawn
}

// spargeParts is in how many waters a sparge is computed. Each mixes with the liquor of the
// bed before as much is drawn. One would be a second water; the more there are, the more
// evenly the bed is washed, and no bed is washed quite evenly (from memory: a sparge gains a
// few per cent of the extract on one second water).
const spargeParts = 6

// bright is the first runnings going round over the bed until they are clear. Nothing
// goes in or out, and the mash stands.
func (m *cooker) bright(step *Step, durS float64) {
	step.Limit = limitWritten
	m.wait(step, &m.tun, m.idle(&m.tun), durS)
}

// drain draws the worts: all liquid but what the grain keeps. Hot, they are drawn at
// the start of the step's time, into the underback, and both go on converting. Through
// the wort cooler they come cold as they run; the mean of them has stood for half the
// time on the grain.
func (m *cooker) drain(step *Step, i int, s recipe.MashStep) {
	m.res.Lautered = true
	durS := s.DurationS
	step.Limit = limitWritten
	if durS <= 0 {
		durS, step.Limit = m.c.drainS, limitFill
	}
	step.StartC = m.tun.tempC
	if m.runnable() <= 0 {
		m.problem(i, ProblemNothingDrawn, m.tun.tempC)
		return
	}
	if s.CooledC == 0 {
		m.runOff(step, s, durS)
		m.wait(step, &m.tun, m.idle(&m.tun), durS)
		return
	}
	durS = m.coolerS(step, i, s, durS)
	m.wait(step, &m.tun, m.idle(&m.tun), durS/2)
	m.runOff(step, s, durS)
	m.wait(step, &m.tun, m.idle(&m.tun), durS/2)
}

// sparge lets water over the bed as the worts run off, as fast as they do.
func (m *cooker) sparge(step *Step, i int, s recipe.MashStep) {
	m.res.Lautered = true
	durS := s.DurationS
	step.Limit = limitWritten
	if durS <= 0 {
		durS, step.Limit = m.c.drainS, limitFill
	}
	tempC := min(s.TempC, m.boilC)
	if s.TempC > m.boilC {
		m.problem(i, ProblemAboveBoil, tempC)
	}
	kg := s.VolumeM3 * fluid.WaterDensity(tempC)
	step.HeatJ += waterJKgK * kg * max(0, tempC-m.in.WaterC)
	if s.CooledC > 0 {
		durS = m.coolerS(step, i, s, durS)
	}
	for range spargeParts {
		m.pour(i, kg/spargeParts, 0, tempC)
		m.acid.addWater(&m.c, m.in.HardnessPPM, kg/spargeParts)
		m.volumeM3(&m.tun)
		m.runOff(step, s, durS/spargeParts)
		m.wait(step, &m.tun, m.idle(&m.tun), durS/spargeParts)
	}
}

// runnable is the share of the tun's liquid that runs off.
func (m *cooker) runnable() float64 {
	if m.tun.empty() {
		return 0
	}
	liquid := m.tun.stream().LiquidVolumeM3(m.tun.tempC)
	kept := m.c.draffHoldsM3Kg * m.tun.grainKg
	if !(liquid > kept) {
		return 0
	}
	return 1 - kept/liquid
}

// runOff draws what runs, in durS: into the underback, by the cooler into the
// fermenter, or into the tank for the next mash.
func (m *cooker) runOff(step *Step, s recipe.MashStep, durS float64) {
	share := m.runnable()
	if share <= 0 {
		return
	}
	if s.NextMash {
		m.tun.takeLiquid(&m.kept, share)
		return
	}
	if !(s.CooledC > 0 && m.in.WortCooler.AreaM2 > 0) {
		m.tun.takeLiquid(&m.worts, share)
		m.wortPH = m.acid.pH()
		return
	}
	run := body{tempC: m.tun.tempC}
	m.tun.takeLiquid(&run, share)
	m.throughCooler(step, &run, s.CooledC, durS)
	run.takeLiquid(&m.worts, 1)
	m.wortPH = m.acid.pH()
}

// throughCooler cools what runs through in durS, and counts heat and water.
func (m *cooker) throughCooler(step *Step, run *body, toC, durS float64) {
	toC = max(toC, m.in.WaterC+m.c.wortCoolerLeastK)
	if toC >= run.tempC {
		return
	}
	c := run.heatCapacityJK()
	heatJ := c * (run.tempC - toC)
	flow, _ := exchanger.CounterWaterM3S(run.tempC, c/durS, toC, m.in.WaterC, m.in.WortCooler.WaterM3S, m.coolerWK())
	m.res.CoolingWaterM3 += flow * durS
	step.CoolJ += heatJ
	run.tempC = toC
	m.res.InFermenter = true
}

func (m *cooker) coolerWK() float64 {
	return m.in.WortCooler.AreaM2 * orDefault(m.in.WortCooler.WM2K, m.c.wortCoolerWM2K)
}

// coolerS is how long a run-off takes by the cooler: as written, or longer where the
// cooler would not bring it to its temperature so fast.
func (m *cooker) coolerS(step *Step, i int, s recipe.MashStep, durS float64) float64 {
	if m.in.WortCooler.AreaM2 <= 0 {
		m.problem(i, ProblemNoCooling, m.tun.tempC)
		return durS
	}
	if coldest := m.in.WaterC + m.c.wortCoolerLeastK; s.CooledC < coldest {
		m.problem(i, ProblemWarmWater, coldest)
	}
	c := m.tun.heatCapacityJK() * m.runnable()
	if s.Verb == recipe.MashSparge {
		c = waterJKgK * s.VolumeM3 * fluid.WaterDensity(min(s.TempC, m.boilC))
	}
	slow := m.slowestS(c, m.tun.tempC, s.CooledC)
	if slow <= durS {
		return durS
	}
	if s.DurationS > 0 {
		m.problem(i, ProblemSlower, s.CooledC)
	}
	step.Limit = limitCooling
	return slow
}

// slowestS is the least time in which the cooler brings a heat capacity from one
// temperature to another with all its water.
func (m *cooker) slowestS(cJK, fromC, toC float64) float64 {
	toC = max(toC, m.in.WaterC+m.c.wortCoolerLeastK)
	if toC >= fromC {
		return 0
	}
	perM3 := fluid.WaterDensity(m.in.WaterC) * fluid.WaterHeatCapacity(m.in.WaterC)
	cools := func(s float64) bool {
		return exchanger.CounterHotOutC(fromC, cJK/s, m.in.WaterC, m.in.WortCooler.WaterM3S*perM3, m.coolerWK()) <= toC
	}
	low, high := 1.0, 2.0
	for !cools(high) && high < endlessS {
		low, high = high, 2*high
	}
	for range 40 {
		if mid := math.Sqrt(low * high); cools(mid) {
			high = mid
		} else {
			low = mid
		}
	}
	return high
}

// byCooler runs worts that stand in the underback through the wort cooler into the
// fermenter, at the pump's pace or the cooler's.
func (m *cooker) byCooler(step *Step, i int, toC float64) {
	b := &m.worts
	durS := b.stream().VolumeM3() / orDefault(m.in.PumpM3S, b.stream().VolumeM3()/m.c.drainS)
	step.Limit = limitFill
	if coldest := m.in.WaterC + m.c.wortCoolerLeastK; toC < coldest {
		m.problem(i, ProblemWarmWater, coldest)
	}
	if slow := m.slowestS(b.heatCapacityJK(), b.tempC, toC); slow > durS {
		durS, step.Limit = slow, limitCooling
	}
	m.wait(step, b, m.idle(b), durS/2)
	m.throughCooler(step, b, toC, durS)
	m.wait(step, b, m.idle(b), durS/2)
}

// pourKept lets in what was kept of the mash before, of which the first mash of all
// has none: water stands for it.
func (m *cooker) pourKept(step *Step, i int, m3, tempC float64) {
	k := m.in.Kept
	if !(k.VolumeM3 > 0) {
		m.pour(i, m3*fluid.WaterDensity(tempC), 0, tempC)
		return
	}
	in := k.Stream.Scale(m3 / k.VolumeM3)
	s := starch.StateOf(in, starch.Enzymes{BranchedShare: k.BranchedShare, ClosedShare: k.ClosedShare})
	b := m.at(i)
	solidsKg := s.MassKg() - s.WaterKg + in.SolublesKg + in.BacksetKg
	m.pour(i, in.WaterKg, solidsKg, tempC)
	t := &b.starch
	t.GelKg += s.GelKg
	t.DextrinKg += s.DextrinKg
	t.LimitDextrinKg += s.LimitDextrinKg
	t.ClosedKg += s.ClosedKg
	t.MaltotrioseKg += s.MaltotrioseKg
	t.MaltoseKg += s.MaltoseKg
	t.GlucoseKg += s.GlucoseKg
	b.solublesKg += in.SolublesKg
	b.backsetKg += in.BacksetKg
	m.res.KeptIn = m.res.KeptIn.Plus(in)
	step.HeatJ += in.MassKg() * waterJKgK * max(0, tempC-m.in.AmbientC)
}

// SteadyKept is what the mash before left, in a house whose mashes all are this one, of
// a mash that took none yet. Of what is dissolved a share comes to be kept, the same of
// what was kept before as of what the grain gives: a geometric series. Solubles, which
// nothing becomes, tell that share.
func (r *Result) SteadyKept() Worts {
	k := r.Kept
	all := r.Out.SolublesKg + r.Draff.SolublesKg + k.Stream.SolublesKg
	more := 1.0
	if all > 0 {
		more = 1 / (1 - k.Stream.SolublesKg/all)
	}
	water := k.Stream.WaterKg
	k.Stream = k.Stream.Scale(more)
	k.Stream.WaterKg = water
	return k
}

// keptWorts is what is kept for the next mash.
func (m *cooker) keptWorts() Worts {
	if m.kept.empty() {
		return Worts{}
	}
	var e starch.Enzymes
	w := Worts{Stream: m.kept.stream(), VolumeM3: m.kept.stream().VolumeM3()}
	s := m.kept.starch
	s.Into(&w.Stream, &e)
	w.BranchedShare, w.ClosedShare = e.BranchedShare, e.ClosedShare
	return w
}
