package mash

import (
	"math"

	"newmake/lang/recipe"
)

// hold keeps the temperature for a while, if the vessel has the heat to.
func (m *cooker) hold(step *Step, b *body, durS float64) {
	d := m.idle(b)
	most, _ := power(m.in)
	if loss := d.lossWK * (b.tempC - d.ambientC); loss >= 0 && most >= loss {
		d.ramp = true
	}
	step.Limit = limitWritten
	m.wait(step, b, d, durS)
}

// power is the heat that can go in, and what limits it.
func power(in Input) (w float64, limit string) {
	w, limit = in.Cooker.HeatsW, limitJacket
	if in.Cooker.HeatedBy == recipe.Direct {
		limit = limitSteam
	}
	if in.BoilerW > 0 && in.BoilerW < w {
		w, limit = in.BoilerW, limitBoiler
	}
	return w, limit
}

func (m *cooker) heat(step *Step, i int, toC, durS float64) {
	b := m.at(i)
	if toC > m.boilC {
		toC = m.boilC
		m.problem(i, ProblemAboveBoil, toC)
	}
	if toC <= b.tempC {
		if toC < b.tempC {
			m.problem(i, ProblemAlreadyThere, b.tempC)
		}
		return
	}
	d := m.idle(b)
	var limit string
	d.heatW, limit = power(m.in)
	if b.empty() {
		m.problem(i, ProblemNoLiquor, b.tempC)
		return
	}
	if d.heatW <= 0 {
		m.problem(i, ProblemNoHeat, b.tempC)
		return
	}
	if highest := d.ambientC + d.heatW/max(d.lossWK, 1e-9) - 1; d.lossWK > 0 && toC > highest {
		toC = max(highest, b.tempC)
		m.problem(i, ProblemLoss, toC)
	}
	m.approach(step, i, b, d, limit, toC, durS)
}

// approach goes to toC at full drive, or in the written time if that is longer.
func (m *cooker) approach(step *Step, i int, b *body, d drive, limit string, toC, durS float64) {
	full := d.timeTo(b.tempC, toC, m.heatCapacityJK(b))
	if durS > full {
		step.Limit = limitWritten
		m.reach(step, b, d.ramped((toC-b.tempC)/durS), toC)
		return
	}
	step.Limit = limit
	m.reach(step, b, d, toC)
	if durS > 0 {
		m.problem(i, ProblemSlower, toC)
	}
}

// ramped is the drive made to follow a slope.
func (d drive) ramped(slopeKS float64) drive {
	d.ramp, d.rampKS = true, slopeKS
	return d
}

func (m *cooker) cool(step *Step, i int, toC, durS float64) {
	b := m.at(i)
	rated := m.in.Cooker.CoolsW
	switch {
	case b.empty():
		m.problem(i, ProblemNoLiquor, b.tempC)
		return
	case toC >= b.tempC:
		if toC > b.tempC {
			m.problem(i, ProblemAlreadyThere, b.tempC)
		}
		return
	case b == &m.worts && m.in.WortCooler.AreaM2 > 0:
		m.byCooler(step, i, toC)
		return
	case !m.in.Cooker.HasCooling():
		m.problem(i, ProblemNoCooling, b.tempC)
		return
	}
	if coldest := m.in.WaterC + m.c.coolLeastK; toC < coldest {
		toC = max(min(coldest, b.tempC), toC)
		m.problem(i, ProblemWarmWater, toC)
		if toC >= b.tempC {
			return
		}
	}
	// A rated power is had down to a knee, and falls with the difference below it;
	// a surface goes by the difference from the first.
	knee := m.in.WaterC + m.c.coolFullK
	high, low := m.idle(b), m.idle(b)
	high.coolW = rated
	low.waterWK, low.waterC = rated/m.c.coolFullK, m.in.WaterC
	if m.surfaceWK > 0 {
		knee = math.Inf(1)
		high = low
		high.waterWK, low.waterWK = m.surfaceWK, m.surfaceWK
	}

	c := m.heatCapacityJK(b)
	full, limit := 0.0, limitCooling
	if b.tempC > knee {
		full = high.timeTo(b.tempC, max(knee, toC), c)
	}
	if toC < knee {
		slow := low.timeTo(min(b.tempC, knee), toC, c)
		if slow > full && m.surfaceWK == 0 {
			limit = limitWater
		}
		full += slow
	}
	if durS > full {
		step.Limit = limitWritten
		m.reach(step, b, high.ramped((toC-b.tempC)/durS), toC)
		return
	}
	step.Limit = limit
	if b.tempC > knee {
		m.reach(step, b, high, max(knee, toC))
	}
	if toC < knee {
		m.reach(step, b, low, toC)
	}
	if durS > 0 {
		m.problem(i, ProblemSlower, toC)
	}
}
