package proofing

import (
	"fmt"

	"newmake/compile/matter/fluid"
	"newmake/compile/stage/gauge"
	"newmake/lang/diag"
)

// water20 is the density of water at 20 C, kg/m3 to 0.01.
var water20 = gauge.Places(fluid.WaterDensity(referenceC), 2)

// reduce adds water to the lot in hand.
func (m *metric) reduce(s reduce) {
	to, ok := m.weaker(s.To, " to reduce to")
	if !ok {
		return
	}
	after := carry(m.kg * m.massPct / to.massPct)
	kg := carry(after - m.kg)
	m.step("Mass after", oiml,
		fmt.Sprintf("%s %% vol is %s %% by mass, %s %% vol is %s %%", num(m.abvPct, 2), num(m.massPct, 3), num(to.abvPct, 2), num(to.massPct, 3)),
		fmt.Sprintf("%s kg x %s / %s = %s kg", say(m.kg), num(m.massPct, 3), num(to.massPct, 3), say(after)))
	litres := m.water(m.kg, after, kg)
	volume := carry(after / to.density * 1000)
	shrunk := carry(m.litres + litres - volume)
	m.step("Volume after", oiml, fmt.Sprintf("%s kg / %s kg/m3 x 1000 = %s L at 20 C", say(after), num(to.density, 2), say(volume)),
		contraction(m.litres, litres, shrunk, "L"))
	to.tempC = m.warming(m.siLot, kg, s.Water)
	to.amount, to.kg, to.litres = true, after, volume
	m.siLot = to
	m.result(TrueABV, "strength after reduction", to.abvPct, 2, "% vol")
	m.counted(Weight, "mass after", after, "kg")
	m.counted(Volume, "volume after, at 20 C", volume, "L")
	m.shrinks(shrunk, "L")
	m.counted(WaterWeight, "water to add, by mass", kg, "kg")
	m.result(WaterVolume, "water to add, at 20 C", litres, 2, "L")
	m.note(shortOf)
}

// weaker is the strength to reduce to, which must be below the lot's.
func (m *metric) weaker(v Value, which string) (siLot, bool) {
	w := m.given(v, which)
	if m.failed() {
		return siLot{}, false
	}
	to := siRow(w)
	if to.abvPct == m.abvPct {
		m.fail(diag.CodeOutOfRange, v.Item.At, "no water is wanted; to weaken it, ask for less", "the spirit is of %s %% vol already", num(m.abvPct, 2))
		return to, false
	}
	if to.abvPct >= m.abvPct || !(to.abvPct > 0) {
		m.fail(diag.CodeOutOfRange, v.Item.At, "water only weakens it; to make it stronger, blend it with stronger spirit",
			"spirit of %s %% vol cannot be reduced to %s %% vol", num(m.abvPct, 2), num(to.abvPct, 2))
		return to, false
	}
	return to, true
}

// water shows the water between a mass of spirit and that after reduction, and
// gives its volume.
func (m *metric) water(spirit, after, kg float64) float64 {
	m.step("Water by mass", "a sum", fmt.Sprintf("%s - %s = %s kg of water", say(after), say(spirit), say(kg)))
	litres := carry(kg / water20 * 1000)
	m.step("Water by volume", oiml, fmt.Sprintf("%s kg / %s kg/m3 x 1000 = %s L at 20 C", say(kg), num(water20, 2), say(litres)))
	return litres
}

// warming is the temperature of spirit and water once mixed.
func (m *metric) warming(u siLot, waterKg float64, water *Value) float64 {
	waterC := u.tempC
	if water != nil {
		waterC = gauge.Places(water.SI, 2)
	}
	mixed, err := fluid.Blend(fluid.Lot{MassKg: u.kg, EthanolMassFrac: u.w(), TempC: u.tempC}, fluid.Lot{MassKg: waterKg, TempC: waterC})
	if err != nil {
		return u.tempC
	}
	m.warms(num(mixed.TempC, 1)+" C", num(mixed.RiseC, 1)+" C", fmt.Sprintf("spirit at %s C and water at %s C", exact(u.tempC), exact(waterC)))
	m.result(Rise, "rise by the heat of mixing", mixed.RiseC, 1, "delta_C")
	m.result(Temperature, "temperature when mixed", mixed.TempC, 1, "C")
	return gauge.Places(mixed.TempC, 1)
}

// fill finds spirit and water for a cask, from the lot in hand or from as much
// as it takes.
func (m *metric) fill(s fill) {
	to := siRow(m.given(s.To, " in the cask"))
	weaker := to.abvPct != m.abvPct
	if m.failed() || weaker && to.abvPct > m.abvPct {
		_, _ = m.weaker(s.To, " in the cask")
		return
	}
	holds := m.inUnit(s.Volume, "L", " in the cask")
	density := gauge.Places(fluid.Density(to.exact, m.tempC), 2)
	after := carry(holds * density / 1000)
	spirit := carry(after * to.massPct / m.massPct)
	litres := carry(spirit / m.density * 1000)
	m.step("Mass in the cask", oiml, fmt.Sprintf("%s %% vol at %s C: %s kg/m3", num(to.abvPct, 2), exact(m.tempC), num(density, 2)),
		fmt.Sprintf("%s L x %s / 1000 = %s kg", exact(holds), num(density, 2), say(after)))
	m.step("Spirit for the cask", oiml,
		fmt.Sprintf("%s %% vol is %s %% by mass, %s %% vol is %s %%", num(to.abvPct, 2), num(to.massPct, 3), num(m.abvPct, 2), num(m.massPct, 3)),
		fmt.Sprintf("%s kg x %s / %s = %s kg of spirit", say(after), num(to.massPct, 3), num(m.massPct, 3), say(spirit)),
		fmt.Sprintf("%s kg / %s kg/m3 x 1000 = %s L at 20 C", say(spirit), num(m.density, 2), say(litres)))
	if m.amount && spirit > m.kg {
		m.fail(diag.CodeCaskNotFilled, s.Volume.Item.At, "fill a smaller cask, fill it weaker, or blend in more spirit",
			"the lot fills %s of the %s L that are to go into this cask: %s kg of spirit are short", num(m.kg/spirit*holds, 1), num(holds, 1), num(spirit-m.kg, 1))
		return
	}
	var waterKg, waterL float64
	if weaker {
		waterKg = carry(after - spirit)
		waterL = m.water(spirit, after, waterKg)
		used := m.siLot
		used.kg = spirit
		m.warming(used, waterKg, nil)
		m.note(shortOf)
	}
	m.filled(to, after, spirit, litres, waterKg, waterL)
}

// filled gives the results of a filling, and leaves what is left over in hand.
func (m *metric) filled(to siLot, after, spirit, litres, waterKg, waterL float64) {
	alcohol := carry(after / to.density * 1000 * to.abvPct / 100)
	m.result(TrueABV, "strength in the cask", to.abvPct, 2, "% vol")
	m.counted(PureAlcohol, "pure alcohol in the cask", alcohol, "L")
	if m.amount {
		m.kg, m.litres = carry(m.kg-spirit), carry(m.litres-litres)
		m.counted(LeftOver, "spirit left over, at 20 C", m.litres, "L")
		m.drop(Volume, Weight)
	}
	m.counted(WaterWeight, "water, by mass", waterKg, "kg")
	m.counted(SpiritWeight, "spirit, by mass", spirit, "kg")
	m.result(WaterVolume, "water, at 20 C", waterL, 2, "L")
	m.result(SpiritVolume, "spirit, at 20 C", litres, 2, "L")
}

// blend puts another lot into the same vat.
func (m *metric) blend(s blend) {
	a := m.siLot
	b := m.lot(s.With, ", second lot")
	if m.failed() {
		return
	}
	mixed, err := fluid.Blend(fluid.Lot{MassKg: a.kg, EthanolMassFrac: a.w(), TempC: a.tempC}, fluid.Lot{MassKg: b.kg, EthanolMassFrac: b.w(), TempC: b.tempC})
	if err != nil {
		m.fail(diag.CodeOutOfRange, s.At, "give both lots temperatures between -7 and 40 C", "these lots cannot be blended")
		return
	}
	kg := carry(a.kg + b.kg)
	massPct := gauge.Places((a.kg*a.massPct+b.kg*b.massPct)/kg, 3)
	u := siRow(massPct / 100)
	u.amount, u.kg, u.litres, u.tempC = true, kg, carry(kg/u.density*1000), gauge.Places(mixed.TempC, 1)
	shrunk := carry(a.litres + b.litres - u.litres)
	m.step("Strength of the blend", oiml,
		fmt.Sprintf("%s %% vol is %s %% by mass, %s %% vol is %s %%", num(a.abvPct, 2), num(a.massPct, 3), num(b.abvPct, 2), num(b.massPct, 3)),
		fmt.Sprintf("%s kg + %s kg = %s kg", say(a.kg), say(b.kg), say(kg)),
		fmt.Sprintf("(%s x %s + %s x %s) / %s = %s %% by mass", say(a.kg), num(a.massPct, 3), say(b.kg), num(b.massPct, 3), say(kg), num(massPct, 3)),
		fmt.Sprintf("%s %% by mass is %s %% vol, and %s kg/m3 at 20 C", num(massPct, 3), num(u.abvPct, 2), num(u.density, 2)))
	m.step("Volume of the blend", oiml, fmt.Sprintf("%s kg / %s kg/m3 x 1000 = %s L at 20 C", say(kg), num(u.density, 2), say(u.litres)),
		contraction(a.litres, b.litres, shrunk, "L"))
	m.warms(num(mixed.TempC, 1)+" C", num(mixed.RiseC, 1)+" C", fmt.Sprintf("lots at %s C and %s C", exact(a.tempC), exact(b.tempC)))
	m.siLot = u
	m.shrinks(shrunk, "L")
	m.result(Temperature, "temperature when mixed", u.tempC, 1, "C")
	m.counts()
	m.result(TrueABV, "strength of the blend", u.abvPct, 2, "% vol")
}
