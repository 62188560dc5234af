package ferment

import (
	"newmake/compile/matter/starch"
	"newmake/compile/matter/stream"
)

// system is all that stays the same during a ferment.
type system struct {
	k      constants
	strain strain
	vessel vessel

	fixedM3     float64 // volume of dissolved matter that nothing changes
	growthMost  float64 // kg of yeast that can be grown
	pressurePa  float64
	lagPerS     float64 // at the strain's reference temperature; 0: no lag
	startPH     float64
	maltotriose float64 // share of it that the yeast takes
	wort        stream.Stream

	pitchedKg, pitchedAliveKg float64 // dry
	doubledKg                 float64 // grown of it by as many doublings as its sterols allow
	hold                      float64 // of its hold on bacteria that so small a pitch has
	seedKg                    float64 // of acid, for which the first bacteria stand

	starch *starch.Kinetics
	z, dz  []float64 // its vector, and how that changes

	// What hardly changes within a step runs straight from one value to another.
	ahead                  vector
	fromS, overS           float64
	ventFrom, ventTo       vent
	acidityFrom, acidityTo []float64
}

// begin sets what Prepare goes on from.
func (y *system) begin(s vector) {
	y.ventFrom = y.ventOf(s)
	y.starch.AcidityAt(y.acidity(s), y.acidityFrom)
	y.ventTo = y.ventFrom
	copy(y.acidityTo, y.acidityFrom)
	copy(y.ahead, s)
}

// Prepare is ode.Preparer: what the gas carries off, and the enzymes' activity
// by acidity, run from where the step before left them to where this step leads.
// So the slopes at its beginning are the ones that the step before ended with.
func (y *system) Prepare(t, h float64, state, slopes []float64) {
	s, d := vector(state), vector(slopes)
	if t > y.fromS { // not the same step again, shorter
		f := (t - y.fromS) / y.overS
		y.ventFrom = y.ventFrom.towards(y.ventTo, f)
		for i, to := range y.acidityTo {
			y.acidityFrom[i] += f * (to - y.acidityFrom[i])
		}
	}
	y.fromS, y.overS = t, h
	ahead := y.ahead
	for _, i := range [...]int{water, ethanol, lactic, grown, tempC} {
		ahead[i] = s[i] + h*d[i]
	}
	const furthest = 3 // C; a step that goes further is too long for other reasons
	ahead[tempC] = s[tempC] + min(furthest, max(-furthest, h*d[tempC]))
	y.ventTo = y.ventOf(ahead)
	y.starch.AcidityAt(y.acidityIn(ahead, s.liquidM3(y.fixedM3)), y.acidityTo)
}

// nutrients is the share of its growth that the wort still allows the yeast: a
// straight fall (logistic growth), nothing when the grain has fed all the
// yeast it can.
func (y *system) nutrients(s vector) float64 {
	if y.growthMost <= 0 {
		return 0
	}
	return min(1, max(0, 1-s[grown]/y.growthMost))
}

// sterols is the share of its pace that yeast keeps as it grows without air. Each
// doubling halves what a cell has of the sterols it was pitched with: it slows as it
// does when the wort has fed it all it can, and past the last doubling the same
// sterols are spread over more cells. That slows growth and ferment alike, so a small
// pitch goes the same way as a full one, only later.
func (y *system) sterols(s vector, nutrients float64) float64 {
	spread := 1.0
	if s[grown] > y.doubledKg {
		spread = (y.pitchedAliveKg + y.doubledKg) / (y.pitchedAliveKg + s[grown])
	}
	left := max(0, 1-s[grown]/y.doubledKg)
	if left >= nutrients {
		return spread
	}
	return spread * y.strain.pace(left) / y.strain.pace(nutrients)
}

// Slopes is ode.System: the rate of change of the state, per second, into d.
func (y *system) Slopes(timeS float64, state, slopes []float64) {
	s, d := vector(state), vector(slopes)
	f := 0.0
	if y.overS > 0 {
		f = (timeS - y.fromS) / y.overS
	}
	vent := y.ventFrom.towards(y.ventTo, f)
	y.starch.SetAcidity(y.acidityFrom, y.acidityTo, f)
	v := s.liquidM3(y.fixedM3)
	strength := s[ethanol] / v
	t := s[tempC]
	st := &y.strain
	clear(d)

	// The yeast takes sugar, grows, dies and wakes.
	all, g, m, mt := st.appetite(s[glucose]/v, s[maltose]/v, s[maltotriose]/v)
	nutrients := y.nutrients(s)
	growthRate, fermentRate := st.uptake(t, strength, all, nutrients)
	alive, awake := y.aliveKg(s), y.awake(s)
	active := awake * y.sterols(s, nutrients)
	working := alive * active
	growth := growthRate * working
	ferments := fermentRate * working
	takes := ferments + growth*st.gr.glucose

	if alive > 0 {
		d[life] = growthRate*active - st.death(t, strength)
	}
	d[waking] = y.lagPerS * st.grows / st.y.GrowthPerS
	d[grown] = growth
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

	// Bacteria eat what the yeast leaves.
	if y.seedKg > 0 {
		acid := y.acidKg(s[bacteria])
		sour := y.k.souring(t, acid/v, all*awake*y.hold, s.food()/v) * v
		y.sour(s, d, sour)
		d[bacteria] = sour / (y.seedKg + acid)
	}

	y.saccharify(s, d)

	// The gas carries some of it off.
	x := s[ethanol] / molEthanol
	x /= x + s[water]/molWater
	d[ventEthanol] = d[co2] * vent.ethanolPerX * x
	d[ventWater] = d[co2] * vent.water
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
}

// saccharify adds what the enzymes from the mash still do.
func (y *system) saccharify(s, d vector) {
	z, dz := y.z, y.dz
	three := s[maltotriose] + s[maltotrioseLeft]
	z[starch.Water], z[starch.Gel], z[starch.Dextrin], z[starch.LimitDextrin] = s[water], s[gel], s[dextrin], s[limitDextrin]
	z[starch.Closed] = s[closedDextrin]
	z[starch.Maltotriose], z[starch.Maltose], z[starch.Glucose] = three, s[maltose], s[glucose]
	copy(z[starch.Alpha:], s[enzymesLeft:])
	y.starch.SetTemp(s[tempC])
	y.starch.Flow(z, dz)
	d[water] += dz[starch.Water]
	d[gel] += dz[starch.Gel]
	d[dextrin] += dz[starch.Dextrin]
	d[limitDextrin] += dz[starch.LimitDextrin]
	d[closedDextrin] += dz[starch.Closed]
	d[maltose] += dz[starch.Maltose]
	d[glucose] += dz[starch.Glucose]
	if made := dz[starch.Maltotriose]; made >= 0 {
		d[maltotriose] += made * y.maltotriose
		d[maltotrioseLeft] += made * (1 - y.maltotriose)
	} else if three > 0 {
		d[maltotriose] += made * s[maltotriose] / three
		d[maltotrioseLeft] += made * s[maltotrioseLeft] / three
	}
	copy(d[enzymesLeft:], dz[starch.Alpha:])
}
