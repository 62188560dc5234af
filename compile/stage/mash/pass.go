package mash

import (
	"math"

	"newmake/compile/matter/fluid"
	"newmake/compile/matter/ode"
	"newmake/compile/matter/starch"
)

const (
	// Heat that is more than a constant power is summed up over parts of this
	// length: what cooling water takes depends on the temperature.
	heatPartS = 30
	// Live steam comes in as often: half its water at the start of a part and
	// half at its end, so the error falls with the square of the part.
	steamPartS = 60

	// Steps of the integrator: from 60 s up or down by the error, to half an
	// hour at most.
	baseStepS   = 60
	longestRung = 40
)

// wait lets a drive work on a body for durS.
func (m *cooker) wait(step *Step, b *body, d drive, durS float64) {
	if !(durS > 0) {
		return
	}
	if len(m.res.Curve) == 0 {
		m.record(b)
	}
	l := m.liquors(b, d, max(b.tempC, d.tempAfter(b.tempC, m.heatCapacityJK(b), durS)))
	if m.steamJ > 0 && (d.heatW > 0 || d.ramp) {
		l.steam(step, durS, math.Inf(1))
	} else {
		l.dry(step, durS)
	}
	l.close()
}

// reach lets a drive work on a body until toC.
func (m *cooker) reach(step *Step, b *body, d drive, toC float64) {
	if len(m.res.Curve) == 0 {
		m.record(b)
	}
	l := m.liquors(b, d, max(b.tempC, toC))
	if m.steamJ > 0 && (d.heatW > 0 || d.ramp) {
		if !l.steam(step, endlessS, toC) {
			toC = b.tempC
		}
	} else {
		takes := d.timeTo(b.tempC, toC, m.heatCapacityJK(b))
		l.dry(step, min(takes, endlessS))
		if takes > endlessS {
			toC = b.tempC
		}
	}
	l.close()
	b.tempC = toC
}

// liquors is the body that a drive works on, and the other one that stands by,
// integrated together: a system of package ode.
type liquors struct {
	m      *cooker
	d      drive
	bodies [2]*body // the second may be nil
	parts  [2]*starch.Kinetics
	first  int // quantities of the first body
	solver *ode.Solver
	now    []float64 // a state that is read

	fromS, fromC, cJK float64 // where this stretch of the drive began
}

// liquors begins a pass in which the driven body gets no hotter than mostC.
func (m *cooker) liquors(b *body, d drive, mostC float64) *liquors {
	l := &liquors{m: m, d: d, bodies: [2]*body{b, m.other(b)}}
	pH := m.acid.pH()
	n := 0
	for i, b := range l.bodies {
		if b == nil {
			continue
		}
		b.starch.BesideKg = b.solublesKg + b.backsetKg
		l.parts[i] = starch.NewKinetics(&m.k, &b.starch, &b.enzymes, b.tempC, pH)
		n += l.parts[i].Size()
	}
	l.first = l.parts[0].Size()
	room := make([]float64, 3*n)
	y, floors, now := room[:n], room[n:2*n], room[2*n:]
	l.now = now
	l.parts[0].Put(y, &b.starch)
	l.parts[0].Floors(y, floors)
	fast := l.parts[0].Fast(mostC)
	if o := l.bodies[1]; o != nil {
		l.parts[1].Put(y[l.first:], &o.starch)
		l.parts[1].Floors(y[l.first:], floors[l.first:])
		for _, j := range l.parts[1].Fast(o.tempC) {
			fast = append(fast, l.first+j)
		}
	}
	l.solver = &m.solver
	l.solver.Anew(l, n, ode.Options{
		Base: baseStepS, First: m.rung, Most: longestRung, Tolerance: m.tolerance, Floors: floors, Fast: fast, Keep: 7,
	})
	copy(l.solver.Y(), y)
	l.begin()
	return l
}

// begin starts a stretch in which the heat capacity holds.
func (l *liquors) begin() {
	l.fromS, l.fromC, l.cJK = l.m.nowS, l.bodies[0].tempC, l.m.heatCapacityJK(l.bodies[0])
}

// tempC is the driven body's at a time of this stretch.
func (l *liquors) tempC(timeS float64) float64 { return l.d.tempAfter(l.fromC, l.cJK, timeS-l.fromS) }

// Slopes is ode.System.
func (l *liquors) Slopes(t float64, y, d []float64) {
	l.parts[0].SetTemp(l.tempC(t))
	l.parts[0].Flow(y[:l.first], d[:l.first])
	if l.parts[1] != nil {
		l.parts[1].Flow(y[l.first:], d[l.first:])
	}
}

// Settle is ode.Settler.
func (l *liquors) Settle(y []float64) {
	l.parts[0].Settle(y[:l.first])
	if l.parts[1] != nil {
		l.parts[1].Settle(y[l.first:])
	}
}

// take writes a state of the integrator into the bodies.
func (l *liquors) take(y []float64) {
	l.parts[0].Take(y[:l.first], &l.bodies[0].starch, &l.bodies[0].enzymes)
	if o := l.bodies[1]; o != nil {
		l.parts[1].Take(y[l.first:], &o.starch, &o.enzymes)
	}
}

// close leaves the bodies as the integrator has them.
func (l *liquors) close() {
	l.take(l.solver.Y())
	l.m.rung = l.solver.Rung()
}

// convert integrates the stretch to endS, with a point of the curve each minute.
func (l *liquors) convert(endS float64) {
	m, b := l.m, l.bodies[0]
	now := l.now
	l.solver.Span(m.nowS, endS, func(p *ode.Step) {
		for ; m.curveS <= p.T+p.H; m.record(b) {
			m.nowS = m.curveS
			p.Read(m.nowS, now)
			l.take(now)
			b.tempC = l.tempC(m.nowS)
		}
	})
	m.nowS = endS
	b.tempC = l.tempC(endS)
}

// dry lets the drive work for durS, with nothing added.
func (l *liquors) dry(step *Step, durS float64) {
	m := l.m
	parts := 1.0
	if l.d.ramp && l.d.rampKS != 0 || l.d.coolW > 0 || l.d.waterWK > 0 {
		parts = math.Ceil(durS/heatPartS - 1e-6)
	}
	tempC := l.fromC
	for range int(parts) {
		midC, toC, f := l.d.over(tempC, l.cJK, durS/parts)
		m.book(step, midC, f)
		step.HeatJ += f.heat
		tempC = toC
	}
	l.convert(m.nowS + durS)
}

// book counts the heat that passed, but for what is paid for.
func (m *cooker) book(step *Step, midC float64, f flow) {
	if f.cool > 0 {
		over := max(m.c.coolLeastK, midC-m.in.WaterC)
		if m.surfaceWK > 0 { // the water runs for as long as the surface takes
			m.res.CoolingWaterM3 += f.cool / (m.surfaceWK * over) * m.in.Cooker.Cooler.WaterM3S
		} else {
			m.res.CoolingWaterM3 += f.cool / (waterJKgK * m.c.coolRise * over) / fluid.WaterDensity(m.in.WaterC)
		}
	}
	step.CoolJ += f.cool
	m.res.LossJ += f.loss
}

// steam lets the drive work with live steam, for durS or until toC, and tells
// whether that was reached.
func (l *liquors) steam(step *Step, durS, toC float64) (reached bool) {
	m, b := l.m, l.bodies[0]
	for end := m.nowS + durS; m.nowS < end; {
		dt := min(steamPartS, end-m.nowS)
		before := l.cJK
		half := 0.0 // heat brought by the first half of the steam
		for range 3 {
			if left := l.d.timeTo(l.fromC, toC, l.cJK); left <= dt || reached {
				dt, reached = min(left, steamPartS), true
			}
			_, _, f := l.d.over(l.fromC, l.cJK, dt)
			half = f.heat / 2
			l.cJK = before + waterJKgK*half/(m.steamJ-waterJKgK*l.fromC)
		}
		l.condense(step, half)
		midC, endC, f := l.d.over(l.fromC, l.cJK, dt)
		m.book(step, midC, f)
		next := m.nowS + dt
		if !reached && end-next < 1e-9*durS {
			next = end
		}
		l.convert(next)
		if reached {
			endC = toC
		}
		b.tempC = endC
		l.condense(step, f.heat-half)
		l.begin()
		if reached {
			return true
		}
	}
	return false
}

// condense adds the live steam that gave heatJ to the contents: it arrives as
// water at their temperature. The heat paid for is that from cold feed.
func (l *liquors) condense(step *Step, heatJ float64) {
	m, b := l.m, l.bodies[0]
	kg := heatJ / (m.steamJ - waterJKgK*b.tempC)
	l.solver.Y()[starch.Water] += kg
	b.waterInKg += kg
	m.res.SteamKg += kg
	step.HeatJ += kg * (m.steamJ - waterJKgK*m.in.WaterC)
}
