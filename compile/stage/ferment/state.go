package ferment

import (
	"newmake/compile/matter/starch"
	"newmake/compile/matter/stream"
)

// The state of the fermenter: kg in the whole vessel unless a line says
// otherwise. What stands after tempC is summed up as it goes and drives
// nothing.
const (
	glucose = iota
	maltose
	maltotriose     // that this yeast can take
	maltotrioseLeft // that it cannot
	dextrin         // straight
	limitDextrin    // closed by a branch that limit dextrinase opens
	closedDextrin   // closed by branches that it does not
	gel             // starch not yet split
	water
	ethanol
	solubles // without the next
	gums     // those that only bacteria eat: pentoses, gums
	alive    // yeast
	dead
	lactic
	awake // 0 at pitching, towards 1
	tempC
	grown
	taken // glucose, by yeast
	glycerol
	other
	co2
	ventEthanol
	ventWater
	heatJ
	warmJ
	coolJ
	lossJ
	ventJ
	enzymesLeft // from here on, as package starch has them
)

type vector []float64

// Partial volumes, m3/kg, by which concentrations are reckoned: water at 20 C;
// ethanol and sugar dissolved in much water (10 % sugar: 1038.2 kg/m3, as the
// tables; 8 % ethanol by weight: 984 against 984.2). Gravity and strength in
// the result are by package fluid, not by these.
const (
	volumeWater   = 1 / 998.2
	volumeEthanol = 1.18e-3
	volumeSolids  = 0.615e-3
)

// liquidM3 is the volume in which things are dissolved; fixed is that of the
// dissolved matter the ferment does not change.
func (s vector) liquidM3(fixed float64) float64 {
	solids := s[glucose] + s[maltose] + s[maltotriose] + s[maltotrioseLeft] + s[dextrin] + s[limitDextrin] + s[closedDextrin] +
		s[solubles] + s[gums] + s[glycerol] + s[other] + s[lactic]
	return volumeWater*s[water] + volumeEthanol*s[ethanol] + volumeSolids*solids + fixed
}

// sugarLeft is the sugar that the yeast can still take, as glucose.
func (s vector) sugarLeft() float64 {
	return s[glucose] + glucosePerMaltose*s[maltose] + glucosePerMaltotriose*s[maltotriose]
}

// dryness is the share of all the sugar that there has been for the yeast that
// is gone.
func (s vector) dryness() float64 {
	left := s.sugarLeft()
	if s[taken]+left <= 0 {
		return 1
	}
	return s[taken] / (s[taken] + left)
}

func (s vector) viableShare() float64 {
	if s[alive]+s[dead] <= 0 {
		return 0
	}
	return s[alive] / (s[alive] + s[dead])
}

// into writes the state over the wort it came from.
func (s vector) into(w stream.Stream) stream.Stream {
	w.GlucoseKg = s[glucose]
	w.MaltoseKg = s[maltose]
	w.MaltotrioseKg = s[maltotriose] + s[maltotrioseLeft]
	w.DextrinKg = s[dextrin] + s[limitDextrin] + s[closedDextrin]
	w.GelStarchKg = s[gel]
	w.WaterKg = s[water]
	w.EthanolKg = s[ethanol]
	w.SolublesKg = s[solubles] + s[gums]
	w.ByproductsKg += s[glycerol] + s[other]
	w.AcidKg += s[lactic]
	w.YeastKg += s[alive] + s[dead]
	w.TempC = s[tempC]
	return w
}

// lastCellKg is dry, from memory: below that there is none to grow again.
const lastCellKg = 3e-14

// Settle is ode.Settler: it takes away what is less than one cell, and gives
// back what a step took too much, less than its tolerance, of what has run out.
func (y *system) Settle(state []float64) {
	s := vector(state)
	if s[alive] < lastCellKg {
		s[dead] += s[alive]
		s[alive] = 0
	}
	for _, sugar := range [...]struct {
		of  int
		per float64 // glucose of a kg
	}{{glucose, 1}, {maltose, glucosePerMaltose}, {maltotriose, glucosePerMaltotriose}} {
		if short := -s[sugar.of]; short > 0 {
			s[sugar.of] = 0
			s[water] -= short * (1 - sugar.per)
			y.unferment(s, short*sugar.per)
		}
	}
	for _, food := range [...]struct {
		of  int
		per float64
	}{{dextrin, glucosePerDextrin}, {limitDextrin, glucosePerDextrin}, {closedDextrin, glucosePerDextrin}, {maltotrioseLeft, glucosePerMaltotriose}, {gums, 1}} {
		if short := -s[food.of]; short > 0 {
			s[food.of] = 0
			s[water] -= short * (1 - food.per)
			s[lactic] -= short * food.per
		}
	}
	if free := enzymesLeft + starch.Limit - starch.Alpha; s[free] < 0 {
		s[free] = 0
	}
	if short := -s[gel]; short > 0 {
		s[gel] = 0
		s[dextrin] -= short * starch.PerDextrin
		s[water] -= short * (1 - starch.PerDextrin)
	}
}

// unferment takes back the fermenting of some glucose.
func (y *system) unferment(s vector, kg float64) {
	made := kg * y.strain.y.EthanolYield
	s[taken] -= kg
	s[other] -= kg - made
	s[ethanol] -= made * ethanolPerGlucose
	s[co2] -= made * co2PerGlucose
	s[heatJ] -= kg * y.k.heatGlucose
	s[tempC] -= kg * y.k.heatGlucose / y.vessel.heatCapacity
}
