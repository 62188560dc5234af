package ferment

import (
	"math"

	"newmake/compile/matter/exponential"
	"newmake/compile/matter/starch"
	"newmake/compile/matter/stream"
)

// The state of the fermenter: kg in the whole vessel unless a line says
// otherwise. What stands after taken is summed up as it goes and drives
// nothing. What grows by itself stands as its logarithm, which runs nearly
// straight where the thing itself would ask for a short step.
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
	lactic
	life     // ln of the living yeast, of what was pitched alive
	waking   // -ln of the share of the yeast that still sleeps
	bacteria // ln of the bacteria, counted by their acid, of what there was: see acidKg
	tempC
	grown // yeast
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

// yeastKg is all yeast, aliveKg that which lives.
func (y *system) yeastKg(s vector) float64 { return y.pitchedKg + s[grown] }

func (y *system) aliveKg(s vector) float64 { return y.pitchedAliveKg * exponential.Exp(s[life]) }

func (y *system) viableShare(s vector) float64 {
	if all := y.yeastKg(s); all > 0 {
		return min(1, y.aliveKg(s)/all)
	}
	return 0
}

// awake is the share of the yeast that has woken.
func (y *system) awake(s vector) float64 {
	if y.lagPerS == 0 {
		return 1
	}
	return 1 - exponential.Exp(-s[waking])
}

// acidKg is the lactic acid that goes with the bacteria: they begin as if they
// had made seedKg. Settle keeps the acid of the vector to it.
func (y *system) acidKg(bacteria float64) float64 { return y.seedKg * (exponential.Exp(bacteria) - 1) }

// into writes the state over the wort it came from.
func (y *system) into(s vector) stream.Stream {
	w := y.wort
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
	w.YeastKg += y.yeastKg(s)
	w.TempC = s[tempC]
	return w
}

const (
	lastCellKg = 3e-14 // dry, from memory: below that there is none to grow again
	extinct    = -1000 // the life of yeast of which no cell is left: its exponential is nothing
)

// Settle is ode.Settler: it takes away what is less than one cell, and gives
// back what a step took too much, less than its tolerance, of what has run out.
func (y *system) Settle(state []float64) {
	s := vector(state)
	if y.aliveKg(s) < lastCellKg {
		s[life] = extinct
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
	if y.seedKg > 0 {
		y.sour(s, s, y.acidKg(s[bacteria])-s[lactic])
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

// sour adds to d what becomes of the bacteria's food as they make so much acid of
// it. Gums become acid without water (CH2O both).
func (y *system) sour(s, d vector, kg float64) {
	share := kg / s.food()
	if !(math.Abs(share) < 1) {
		return // there is none
	}
	d[lactic] += kg
	for _, food := range [...]struct {
		of  int
		per float64 // acid of a kg
	}{{dextrin, glucosePerDextrin}, {limitDextrin, glucosePerDextrin}, {closedDextrin, glucosePerDextrin}, {maltotrioseLeft, glucosePerMaltotriose}, {gums, 1}} {
		eaten := share * s[food.of]
		d[food.of] -= eaten / food.per
		d[water] -= eaten - eaten/food.per
	}
}

// food is what bacteria eat: what the yeast leaves.
func (s vector) food() float64 {
	return s[dextrin] + s[limitDextrin] + s[closedDextrin] + s[maltotrioseLeft] + s[gums]
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
