package ferment

// system is all that stays the same during a ferment.
type system struct {
	k      constants
	strain strain
	vessel vessel

	fixedM3     float64 // volume of dissolved matter that nothing changes
	growthMost  float64 // kg of yeast that can be grown
	pressurePa  float64
	vent        vent    // as of the start of the step
	lagPerS     float64 // at the strain's reference temperature; 0: no lag
	cooling     float64 // W, as of the last evaluation
	fermentHeat float64 // W, as of the last evaluation
	stiff       float64 // 1/s, fastest answer of the state, same
}

// nutrients is the share of its growth that the wort still allows the yeast: a
// straight fall (logistic growth), nothing when the grain has fed all the
// yeast it can.
func (y *system) nutrients(s *vector) float64 {
	if y.growthMost <= 0 {
		return 0
	}
	return min(1, max(0, 1-s[grown]/y.growthMost))
}

// derivative is the rate of change of s, per second, into d.
func (y *system) derivative(s, d *vector) {
	v := s.liquidM3(y.fixedM3)
	strength := s[ethanol] / v
	t := s[tempC]
	st := &y.strain
	*d = vector{}

	// The yeast takes sugar, grows, dies and wakes.
	all, g, m, mt := st.appetite(s[glucose]/v, s[maltose]/v, s[maltotriose]/v)
	growthRate, fermentRate := st.uptake(t, strength, all, y.nutrients(s))
	working := s[alive] * s[awake]
	growth := growthRate * working
	ferments := fermentRate * working
	takes := ferments + growth*st.gr.glucose
	death := st.death(t, strength)
	dying := death * s[alive]

	d[alive] = growth - dying
	d[dead] = dying
	d[grown] = growth
	if y.lagPerS > 0 {
		d[awake] = y.lagPerS * arrhenius(st.y.ActivationGrowthJMol, st.y.RefC, t) * st.warmth(t) * (1 - s[awake])
	}
	d[taken] = takes
	d[glucose] = -takes * g
	d[maltose] = -takes * m / glucosePerMaltose
	d[maltotriose] = -takes * mt / glucosePerMaltotriose
	hydrolysis := takes + d[glucose] + d[maltose] + d[maltotriose] // water that the sugars bind

	made := ferments * st.y.EthanolYield
	d[other] = ferments - made
	d[ethanol] = made * ethanolPerGlucose
	d[glycerol] = growth * st.gr.glycerol
	d[co2] = made*co2PerGlucose + growth*st.gr.co2
	d[solubles] = -growth * st.gr.ammonia
	d[water] = growth*st.gr.water - hydrolysis

	// Bacteria eat what the yeast leaves. Gums become acid without water
	// (CH2O both).
	food := s[dextrin] + s[maltotrioseLeft] + s[gums]
	if sour := y.k.souring(t, s[lactic]/v, all*s[awake], food/v) * v; sour > 0 && food > 0 {
		d[lactic] = sour
		d[dextrin] = -sour * s[dextrin] / food / glucosePerDextrin
		d[maltotrioseLeft] = -sour * s[maltotrioseLeft] / food / glucosePerMaltotriose
		d[gums] = -sour * s[gums] / food
		d[water] -= sour + d[dextrin] + d[maltotrioseLeft] + d[gums]
	}

	// The gas carries some of it off.
	x := s[ethanol] / molEthanol
	x /= x + s[water]/molWater
	d[ventEthanol] = d[co2] * y.vent.ethanolPerX * x
	d[ventWater] = d[co2] * y.vent.water
	d[ethanol] -= d[ventEthanol]
	d[water] -= d[ventWater]

	// Heat.
	cool, warm := y.vessel.cooling(t)
	d[heatJ] = takes * y.k.heatGlucose
	d[warmJ] = warm
	d[coolJ] = cool
	d[lossJ] = y.vessel.lossWK * (t - y.vessel.ambientC)
	d[ventJ] = d[ventEthanol]*latentEthanol + d[ventWater]*latentWater
	d[tempC] = (d[heatJ] + d[warmJ] - d[coolJ] - d[lossJ] - d[ventJ]) / y.vessel.heatCapacity

	y.cooling, y.fermentHeat = cool, d[heatJ]
	y.stiff = max(y.vessel.stiffness(), 3*death, // a long dying must not gather error
		st.stiffness(s, takes, all, v))
}

// stiffness is the fastest rate at which a sugar answers to its uptake, 1/s:
// how uptake falls off as the sugar does, and, four times over so that no step
// takes more than there is, how fast it goes.
func (st *strain) stiffness(s *vector, takes, all, v float64) float64 {
	if all <= 0 {
		return 0
	}
	k := st.k
	full := takes / all
	return full * max(
		answer(st.y.HalfKgM3*v, s[glucose]),
		answer(k.maltoseHalf*v, s[maltose]),
		answer(k.maltotrioseHalf*v, s[maltotriose]))
}

func answer(half, sugar float64) float64 {
	sugar = max(0, sugar)
	return max(half, 4*sugar) / ((half + sugar) * (half + sugar))
}
