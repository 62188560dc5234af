package proofing

import (
	"fmt"

	"newmake/compile/matter/fluid"
	"newmake/compile/stage/gauge"
	"newmake/lang/diag"
	"newmake/lang/quantity"
)

// metric works a question by mass: densities and strengths by OIML R 22,
// strength and volume at 20 C.
type metric struct {
	*sheet
	siLot
}

// siLot is what is known of spirit so far, each number as it was shown.
type siLot struct {
	abvPct     float64 // at 20 C, to 0.01
	massPct    float64 // ethanol by mass, to 0.001
	exact      float64 // the same as a fraction, not rounded: for densities, which are shown to 0.01
	density    float64 // at 20 C, kg/m3 to 0.01
	tempC      float64 // of the spirit; its volume stands at 20 C all the same
	amount     bool
	kg, litres float64 // mass, true; volume at 20 C
}

const referenceC = 20

// siRow is a strength as the alcoholometric tables have it.
func siRow(w float64) siLot {
	return siLot{
		abvPct:  gauge.Places(100*fluid.ABVFromMassFrac(w), 2),
		massPct: gauge.Places(100*w, 3), exact: w,
		density: gauge.Places(fluid.Density(w, referenceC), 2), tempC: referenceC,
	}
}

func (l siLot) w() float64 { return l.massPct / 100 }

func (m *metric) work(q Question) {
	m.note("Strength and volume are at 20 C, masses are true. Official gauging follows the regulation's own tables; --units us works as those of the United States do.")
	m.siLot = m.lot(q.Lot, "")
	if m.failed() {
		return
	}
	if m.amount {
		m.counts()
	} else if len(q.Steps) == 0 {
		m.row()
	}
	for _, s := range q.Steps {
		if m.failed() {
			return
		}
		switch s := s.(type) {
		case reduce:
			m.reduce(s)
		case fill:
			m.fill(s)
		case blend:
			m.blend(s)
		}
	}
}

// lot gauges one lot. which names it where there are two.
func (m *metric) lot(l Lot, which string) siLot {
	tempC := gauge.Places(m.usualC, 2)
	if l.Temp != nil {
		tempC = gauge.Places(l.Temp.SI, 2)
		if l.Temp.unit() != "C" {
			m.step("Temperature"+which, defined, fmt.Sprintf("%s %s = %s C", l.Temp.Item.Num, l.Temp.Item.Unit, exact(tempC)))
		}
	}
	var w float64
	if l.Reading != nil {
		w = m.read(l, &tempC, which)
	} else {
		w = m.given(*l.Strength, which)
	}
	if m.failed() {
		return siLot{}
	}
	u := siRow(w)
	u.tempC = tempC
	if !(u.abvPct > 0) {
		m.fail(diag.CodeOutOfRange, l.At, "a strength is above 0", "this is water, and there is nothing to gauge")
		return u
	}
	m.result(TrueABV, "strength at 20 C", u.abvPct, 2, "% vol")
	m.trueOrRead(l)
	if l.Amount == nil {
		return u
	}
	u.amount = true
	m.measure(l, &u, which)
	return u
}

// given converts a true strength to a mass fraction.
func (m *metric) given(v Value, which string) float64 {
	w, err := m.massFrac(v)
	if err != nil {
		m.outOfTable(v, err)
		return 0
	}
	if v.unit() != "% abv" || m.in60F() {
		written := v.Item.Num + " " + v.unit()
		if v.unit() == "% abv" {
			written += " at 60 F"
		}
		m.step("Strength"+which, oiml, fmt.Sprintf("%s is %s %% vol at 20 C", written, num(100*fluid.ABVFromMassFrac(w), 2)))
	}
	return w
}

// read corrects what a hydrometer shows. It sets tempC to the corrected temperature.
func (m *metric) read(l Lot, tempC *float64, which string) float64 {
	if l.Reading.unit() != "% abv" || l.scaleAt60F() {
		return m.proofRead(l, tempC, which)
	}
	w, lines, ok := m.abvRead(l)
	if !ok {
		return 0
	}
	if l.Thermometer != nil {
		*tempC = gauge.Places(*tempC+l.Thermometer.SI, 3)
	}
	m.step("True strength"+which, oiml, lines...)
	return m.obscured(l, w, which)
}

// proofRead is read for a proof hydrometer, by 27 CFR part 30.
func (m *metric) proofRead(l Lot, tempC *float64, which string) float64 {
	c := customary{sheet: m.sheet}
	u := usLot{tempF: gauge.Places(l.Temp.in("F"), 2)}
	proof := c.proofRead(l, &u, which)
	if m.failed() {
		return 0
	}
	*tempC = gauge.Places(float64(quantity.TempFromF(u.tempF)), 2)
	w, err := fluid.MassFracFromProof(proof)
	if err != nil {
		m.outOfTable(*l.Reading, err)
		return 0
	}
	m.step("Strength"+which, oiml, fmt.Sprintf("%s proof is %s %% vol at 20 C", num(proof, 1), num(100*fluid.ABVFromMassFrac(w), 2)))
	return w
}

// obscured adds the strength that solids hide: half the proof that they hide.
func (m *metric) obscured(l Lot, w float64, which string) float64 {
	if l.Solids == nil {
		return w
	}
	grams, proof := m.hidden(l)
	abv := 100 * fluid.ABVFromMassFrac(w)
	sum := gauge.Places(abv+proof/2, 2)
	m.step("Obscuration"+which, section32,
		fmt.Sprintf("%s g of solids in 100 mL: 4 x %s = %s proof, or %s %% vol, hidden", exact(grams), exact(grams), num(proof, 1), num(proof/2, 2)),
		fmt.Sprintf("%s + %s = %s %% vol", num(abv, 2), num(proof/2, 2), num(sum, 2)))
	m.obscurationNotes(l, 2*abv)
	out, err := fluid.MassFracFromABV(sum / 100)
	if err != nil {
		m.outOfTable(*l.Reading, err)
	}
	return out
}

// measure finds the mass and the volume at 20 C of a lot.
func (m *metric) measure(l Lot, u *siLot, which string) {
	switch l.Amount.Kind {
	case quantity.Mass:
		weight := m.inUnit(*l.Amount, "kg", which)
		buoyancy := gauge.Places(fluid.MassInAirKg(1, u.density), 5)
		u.kg = carry(weight / buoyancy)
		m.step("Mass"+which, "OIML R 111", fmt.Sprintf("%s kg on the scale / %s for buoyancy = %s kg", exact(weight), num(buoyancy, 5), say(u.kg)))
	case quantity.ProofGallons, quantity.PureAlcohol:
		alcohol, lines := pureAlcohol(*l.Amount)
		u.litres = carry(alcohol * 100 / u.abvPct)
		m.step("Volume"+which, oiml, append(lines, fmt.Sprintf("%s L x 100 / %s = %s L at 20 C", say(alcohol), num(u.abvPct, 2), say(u.litres)))...)
		u.kg = carry(u.litres * u.density / 1000)
		m.step("Mass"+which, oiml, fmt.Sprintf("%s L x %s kg/m3 / 1000 = %s kg", say(u.litres), num(u.density, 2), say(u.kg)))
		return
	default:
		if l.Temp == nil {
			m.assume()
		}
		litres := m.inUnit(*l.Amount, "L", which)
		density := gauge.Places(fluid.Density(u.exact, u.tempC), 2)
		u.kg = carry(litres * density / 1000)
		m.step("Mass"+which, oiml, fmt.Sprintf("%s %% vol at %s C: %s kg/m3", num(u.abvPct, 2), exact(u.tempC), num(density, 2)),
			fmt.Sprintf("%s L x %s / 1000 = %s kg", exact(litres), num(density, 2), say(u.kg)))
	}
	u.litres = carry(u.kg / u.density * 1000)
	m.step("Volume at 20 C"+which, oiml, fmt.Sprintf("%s kg / %s kg/m3 x 1000 = %s L", say(u.kg), num(u.density, 2), say(u.litres)))
}

// pureAlcohol is an amount that is given as alcohol alone, in litres at 20 C, and
// the line that says how it is found, if it is.
func pureAlcohol(v Value) (litres float64, lines []string) {
	given := v.Item.Value
	if v.Kind == quantity.PureAlcohol {
		return given, nil
	}
	litres = carry(given * litresPerPG)
	return litres, []string{fmt.Sprintf("%s PG x %s L = %s L of pure alcohol", exact(given), num(litresPerPG, 4), say(litres))}
}

// counts are the results of a lot whose amount is known.
func (m *metric) counts() {
	alcohol := carry(m.litres * m.abvPct / 100)
	m.step("Pure alcohol", oiml, fmt.Sprintf("%s L x %s / 100 = %s L at 20 C", say(m.litres), num(m.abvPct, 2), say(alcohol)))
	m.counted(Weight, "mass", m.kg, "kg")
	m.counted(Volume, "volume at 20 C", m.litres, "L")
	m.counted(PureAlcohol, "pure alcohol at 20 C", alcohol, "L")
}

// row gives what the tables have for a strength, where no amount is known.
func (m *metric) row() {
	m.step("Strength", oiml, fmt.Sprintf("%s %% vol is %s %% by mass, and %s kg/m3 at 20 C", num(m.abvPct, 2), num(m.massPct, 3), num(m.density, 2)))
	m.result(TrueABV, "strength at 20 C", m.abvPct, 2, "% vol")
}
