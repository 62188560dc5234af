package mash

import (
	"fmt"

	"newmake/compile/matter/fluid"
	"newmake/lang/recipe"
)

// do does one recipe step.
func (m *cooker) do(i int) error {
	s := m.in.Steps[i]
	b := m.at(i)
	step := Step{StartS: m.nowS, StartC: b.tempC}
	var err error
	switch s.Verb {
	case recipe.MashWater:
		m.water(&step, i, s)
	case recipe.MashBackset:
		m.backset(&step, i, s)
	case recipe.MashAdd:
		err = m.add(&step, i, s)
	case recipe.MashDose:
		err = m.dose(&step, i, s)
	case recipe.MashHeat:
		m.heat(&step, i, s.TempC, s.DurationS)
	case recipe.MashRest:
		m.hold(&step, b, s.DurationS)
	case recipe.MashBoil:
		m.heat(&step, i, m.boilC, 0)
		m.hold(&step, b, s.DurationS)
	case recipe.MashCool:
		m.cool(&step, i, s.TempC, s.DurationS)
	case recipe.MashDrain:
		m.drain(&step, i, s)
		b = &m.worts
		if s.NextMash {
			b = &m.kept
		}
	case recipe.MashSparge:
		m.sparge(&step, i, s)
		b = &m.worts
	case recipe.MashRecirculate:
		m.bright(&step, s.DurationS)
	default:
		err = fmt.Errorf("mash: step %d is of no known kind", i+1)
	}
	if err == nil {
		err = m.slow
	}
	if err == nil && m.nowS > longestS {
		err = fmt.Errorf("mash: by the end of step %d it has taken more than %.0f days, and is followed no further: look at what the cooker heats and cools with, and at `water-in` and `grain-in` of the plant's `rates`",
			i+1, float64(longestS)/86400)
	}
	if err != nil {
		return err
	}
	step.EndS, step.EndC = m.nowS, b.tempC
	step.VolumeM3 = m.volumeM3(b)
	step.PH = m.acid.pH()
	step.SG = m.wort().stream().SG()
	m.shares(&step)
	if s.CooledC > 0 || s.NextMash {
		b = &m.tun // the curve is that of the grain
	}
	m.record(b)
	m.res.HeatJ += step.HeatJ
	m.res.CoolJ += step.CoolJ
	m.res.Steps = append(m.res.Steps, step)
	return nil
}

func (m *cooker) problem(i int, what string, toC float64) {
	m.res.Problems = append(m.res.Problems, Problem{Step: i, What: what, ToC: toC})
}

// water lets liquor in. Hotter than the supply, it was heated from it in a tank
// of its own, beforehand: its heat counts, its time does not.
func (m *cooker) water(step *Step, i int, s recipe.MashStep) {
	tempC := s.TempC
	if tempC > m.boilC {
		tempC = m.boilC
		m.problem(i, ProblemAboveBoil, tempC)
	}
	if s.KeptM3 > 0 {
		m.pourKept(step, i, min(s.KeptM3, s.VolumeM3), tempC)
	}
	kg := max(0, s.VolumeM3-s.KeptM3) * fluid.WaterDensity(tempC)
	m.pour(i, kg, 0, tempC)
	m.acid.addWater(&m.c, m.in.HardnessPPM, kg)
	step.HeatJ += waterJKgK * kg * max(0, tempC-m.in.WaterC)
	m.let(step, i, s, s.VolumeM3/m.waterInM3S)
}

func (m *cooker) backset(step *Step, i int, s recipe.MashStep) {
	solids := orDefault(m.in.BacksetSolidsFrac, m.c.backsetSolids)
	tempC := min(s.TempC, m.boilC)
	kg := s.VolumeM3 * fluid.SolutionDensity(solids, tempC)
	b := m.at(i)
	m.pour(i, kg*(1-solids), kg*solids, tempC)
	b.backsetKg += kg * solids
	m.acid.add(orDefault(m.in.BacksetPH, m.c.backsetPH), m.c.backsetBuffer*kg)
	m.let(step, i, s, s.VolumeM3/m.waterInM3S)
}

func orDefault(v, d float64) float64 {
	if v > 0 {
		return v
	}
	return d
}

// pour mixes liquor in, and lets grain that lay dry give out its slaking heat.
func (m *cooker) pour(i int, waterKg, solidsKg, tempC float64) {
	b := m.at(i)
	solidsJK := solidsKg * backsetJKgK
	slaking := 0.0
	if b == &m.tun && waterKg > 0 {
		slaking, m.drySlakingJ = m.drySlakingJ, 0
	}
	b.tempC = mixC(m.heatCapacityJK(b), b.tempC, waterKg*waterJKgK+solidsJK, tempC, slaking)
	m.res.SlakingJ += slaking
	b.starch.WaterKg += waterKg
	b.waterInKg += waterKg
	b.dryJK += solidsJK
}

func (m *cooker) add(step *Step, i int, s recipe.MashStep) error {
	b := m.at(i)
	kg := 0.0
	for _, l := range s.Grains {
		if l < 0 || l >= len(m.in.Bill.Lines) {
			return fmt.Errorf("mash: step %d adds a grain that the bill does not have", i+1)
		}
		line := m.in.Bill.Lines[l]
		g := line.Grain
		wet := b.waterInKg > 0 && m.drySlakingJ == 0
		slaking := line.MassKg * fluid.SlakingHeat(g.Moisture)
		if !wet {
			m.drySlakingJ += slaking
			slaking = 0
		}
		b.tempC = mixC(m.heatCapacityJK(b), b.tempC, grainJK(g, line.MassKg), m.in.AmbientC, slaking)
		m.res.SlakingJ += slaking
		b.addGrain(&m.k, g, line.MassKg)
		m.acid.addGrain(&m.c, g, line.MassKg)
		dry := line.MassKg * (1 - g.Moisture)
		m.startStarchKg += dry * g.Starch
		m.alphaInDU += g.AlphaDU * line.MassKg
		m.betaInL += g.LintnerPower * line.MassKg
		m.res.TheoryExtractKg += dry * TheoryExtract(g)
		kg += line.MassKg
	}
	m.let(step, i, s, kg/m.grainInKgS)
	return nil
}

func (m *cooker) dose(step *Step, i int, s recipe.MashStep) error {
	if s.Enzyme == nil {
		return fmt.Errorf("mash: step %d doses nothing", i+1)
	}
	m.at(i).enzymes.Dose(s.Enzyme, s.MassKg)
	m.addedInAct += s.Enzyme.ActivityPerKg * s.MassKg
	if s.DurationS > 0 {
		m.let(step, i, s, 0)
	}
	return nil
}

// let is the time that an addition takes, at the written or the usual pace,
// with the heat off.
func (m *cooker) let(step *Step, i int, s recipe.MashStep, usualS float64) {
	m.volumeM3(m.at(i))
	step.Limit = limitFill
	if s.DurationS > 0 {
		usualS, step.Limit = s.DurationS, limitWritten
	}
	if usualS > endlessS {
		m.slow = fmt.Errorf("mash: step %d would take %.0f h at the rates of the plant, and no step lasts longer than %.0f: raise `water-in` or `grain-in` of its `rates`",
			i+1, usualS/3600, float64(endlessS)/3600)
		return
	}
	b := m.at(i)
	m.wait(step, b, m.idle(b), usualS)
}

func (m *cooker) idle(b *body) drive {
	return drive{lossWK: m.wallWK(b), ambientC: m.in.AmbientC}
}

// volumeM3 is a body's volume, and keeps the greatest that the cooker held.
func (m *cooker) volumeM3(b *body) float64 {
	if b.empty() {
		return 0
	}
	v := b.stream().VolumeM3()
	if b == &m.tun {
		m.res.MostVolumeM3 = max(m.res.MostVolumeM3, v)
	}
	return v
}
