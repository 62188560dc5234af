package mash

import (
	"math"

	"newmake/compile/matter/fluid"
	"newmake/lang/recipe"
)

// acidity is the pH by mixing of buffers: each grain and the backset pulls
// towards its own pH with its own strength, and the alkalinity of the water
// lifts the whole. Common practice; good to about 0.1 to 0.2 pH.
type acidity struct {
	buffer   float64 // mEq per pH
	weighted float64 // buffer x pH
	alkali   float64 // mEq
	acid     acid
	acidM3   float64
}

func (a *acidity) addGrain(c *constants, g *recipe.Grain, massKg float64) {
	pH, perKg := c.rawPH, c.rawBuffer
	switch {
	case g.Roasted:
		pH, perKg = c.roastedPH, c.roastBuffer
	case g.Malted:
		pH, perKg = c.maltPH, c.maltBuffer
	}
	a.add(pH, perKg*massKg)
}

func (a *acidity) add(pH, buffer float64) {
	a.buffer += buffer
	a.weighted += buffer * pH
}

// addWater counts the residual alkalinity of the supply: its hardness is in mg
// of CaCO3 per kg, of which 50.04 g makes an equivalent.
func (a *acidity) addWater(c *constants, hardnessPPM, massKg float64) {
	a.alkali += c.hardnessToAlkali * hardnessPPM / 50.04 * massKg
}

func (a *acidity) pH() float64 {
	if a.buffer == 0 {
		return 7
	}
	if a.acidM3 > 0 {
		return a.soured()
	}
	return a.withoutAcid()
}

func (a *acidity) withoutAcid() float64 {
	return min(9, max(3, (a.weighted+a.alkali)/a.buffer))
}

// soured is the pH at which the buffers take up what the acid gives off there. The
// one rises with the pH and the other falls away from it, so there is one.
func (a *acidity) soured() float64 {
	low, high := 1.0, 9.0
	for range 45 {
		mid := (low + high) / 2
		if a.weighted+a.alkali-a.acidM3*a.acid.givesMEqM3(mid) > a.buffer*mid {
			low = mid
		} else {
			high = mid
		}
	}
	return min(9, max(2, (low+high)/2))
}

// acid is what a mash is soured with: mol in a cubic metre as it is bought, and the
// pKa of each of its hydrogen ions (CRC Handbook, from memory).
type acid struct {
	molM3 float64
	kgM3  float64
	pKa   []float64
}

// acids are those of a recipe: lactic of 88 % and 1.21 kg/L, phosphoric of 85 % and
// 1.685, sulfuric of 96 % and 1.835 (CRC Handbook, from memory).
var acids = [...]acid{
	recipe.NoAcid:     {},
	recipe.Lactic:     {11.8e3, 1210, []float64{3.86}},
	recipe.Phosphoric: {14.6e3, 1685, []float64{2.15, 7.20}},
	recipe.Sulfuric:   {18.0e3, 1835, []float64{-3, 1.99}},
}

// givesMEqM3 is how many mEq of hydrogen ions a cubic metre gives off at a pH. Each of
// an acid's steps is far from the next.
func (a acid) givesMEqM3(pH float64) float64 {
	share := 0.0
	for _, k := range a.pKa {
		share += 1 / (1 + math.Pow(10, k-pH))
	}
	return 1000 * a.molM3 * share
}

// settles is the pH to which so much of the acid brings buffers.
func (a acid) settles(of *acidity, m3 float64) float64 {
	soured := *of
	soured.acid, soured.acidM3 = a, m3
	return soured.pH()
}

// Calcium carries 2 equivalents a mol; it takes phosphate from the grain and gives
// off a hydrogen ion for each 3.5 equivalents (Kolbach, Wochenschr. Brau. 70 (1953),
// from memory). Gypsum is CaSO4 2H2O, 172.17 g/mol, slaked lime Ca(OH)2, 74.09.
const (
	gypsumMEqKg  = 2e6 / 172.17
	limeMEqKg    = 2e6 / 74.09
	calciumSours = 1 / 3.5
)

// treat adds what goes into the liquor. An acid that is to bring the mash to a pH is
// worked out of all that goes in later.
func (m *cooker) treat() {
	t := m.in.Treatment
	m.res.SaltsMEq = t.LimeKg*limeMEqKg*(1-calciumSours) - t.GypsumKg*gypsumMEqKg*calciumSours
	m.acid.alkali += m.res.SaltsMEq
	if t.Acid == recipe.NoAcid {
		return
	}
	whole := acidity{alkali: m.acid.alkali}
	for _, s := range recipe.WortSteps(m.in.Steps) {
		switch s.Verb {
		case recipe.MashWater, recipe.MashSparge:
			whole.addWater(&m.c, m.in.HardnessPPM, max(0, s.VolumeM3-s.KeptM3)*fluid.WaterDensity(min(s.TempC, m.boilC)))
		case recipe.MashBackset:
			solids := orDefault(m.in.BacksetSolidsFrac, m.c.backsetSolids)
			kg := s.VolumeM3 * fluid.SolutionDensity(solids, min(s.TempC, m.boilC))
			whole.add(orDefault(m.in.BacksetPH, m.c.backsetPH), m.c.backsetBuffer*kg)
		case recipe.MashAdd:
			for _, l := range s.Grains {
				if l >= 0 && l < len(m.in.Bill.Lines) {
					whole.addGrain(&m.c, m.in.Bill.Lines[l].Grain, m.in.Bill.Lines[l].MassKg)
				}
			}
		}
	}
	m.acid.acid, m.acid.acidM3 = acids[t.Acid], t.AcidM3
	m.res.PHWithoutAcid = whole.pH()
	if over := m.res.PHWithoutAcid - t.AcidToPH; t.AcidToPH > 0 && over > 0 {
		m.acid.acidM3 = over * whole.buffer / m.acid.acid.givesMEqM3(t.AcidToPH)
	}
	m.res.AcidKg = m.acid.acidM3 * m.acid.acid.kgM3
	m.res.AcidMEq = m.acid.acidM3 * m.acid.acid.givesMEqM3(m.acid.acid.settles(&whole, m.acid.acidM3))
}
