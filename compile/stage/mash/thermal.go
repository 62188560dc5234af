package mash

import "math"

// drive is what moves the temperature of a body for a while: constant power,
// and conductances to the cooling water and to the room. Either that, or a
// ramp that the power is made to follow.
type drive struct {
	heatW    float64 // in
	coolW    float64 // out, rated
	waterWK  float64 // conductance to the cooling water, where cooling falls with the difference
	waterC   float64
	lossWK   float64
	ambientC float64
	ramp     bool
	rampKS   float64 // the slope, K/s; 0 holds the temperature
}

// flow is the heat that passed in one step of time, all in J and positive in
// the direction of the name.
type flow struct{ heat, cool, loss float64 }

// equilibrium is where the temperature tends and how fast: dT/dt = rate (limit
// - T). With no conductance rate is 0 and slope holds.
func (d *drive) equilibrium(cJK float64) (limitC, rate, slopeKS float64) {
	net := d.heatW - d.coolW
	g := d.waterWK + d.lossWK
	if g == 0 {
		return 0, 0, net / cJK
	}
	return (net + d.waterWK*d.waterC + d.lossWK*d.ambientC) / g, g / cJK, 0
}

// timeTo is when the temperature comes from fromC to toC, or +Inf.
func (d *drive) timeTo(fromC, toC, cJK float64) float64 {
	if d.ramp {
		return whole((toC - fromC) / d.rampKS)
	}
	limit, rate, slope := d.equilibrium(cJK)
	if rate == 0 {
		return whole((toC - fromC) / slope)
	}
	return whole(-math.Log1p((toC-fromC)/(fromC-limit)) / rate)
}

// whole turns "never" in all its shapes into +Inf.
func whole(t float64) float64 {
	if t >= 0 {
		return t
	}
	return math.Inf(1)
}

// tempAfter is the temperature after dtS.
func (d *drive) tempAfter(fromC, cJK, dtS float64) float64 {
	if d.ramp {
		return fromC + d.rampKS*dtS
	}
	limit, rate, slope := d.equilibrium(cJK)
	if rate == 0 {
		return fromC + slope*dtS
	}
	return fromC - (limit-fromC)*math.Expm1(-rate*dtS)
}

// over is the temperature after dtS, its middle on the way, and the heat that
// passed: the exact solution, so that the balance closes.
func (d *drive) over(fromC, cJK, dtS float64) (midC, toC float64, f flow) {
	if d.ramp {
		toC = fromC + d.rampKS*dtS
		midC = (fromC + toC) / 2
		f.loss = d.lossWK * (midC - d.ambientC) * dtS
		if need := cJK*(toC-fromC) + f.loss; need >= 0 {
			f.heat = need
		} else {
			f.cool = -need
		}
		return midC, toC, f
	}
	limit, rate, slope := d.equilibrium(cJK)
	integral := fromC * dtS // of T dt
	if rate == 0 {
		midC, toC = fromC+slope*dtS/2, fromC+slope*dtS
		integral = midC * dtS
	} else {
		x := -math.Expm1(-rate * dtS)
		toC = fromC + (limit-fromC)*x
		midC = fromC - (limit-fromC)*math.Expm1(-rate*dtS/2)
		integral += (limit - fromC) * lag(rate, dtS, x)
	}
	f.heat = d.heatW * dtS
	f.cool = d.coolW*dtS + d.waterWK*(integral-d.waterC*dtS)
	f.loss = d.lossWK * (integral - d.ambientC*dtS)
	return midC, toC, f
}

// lag is dt - x/rate with x = 1 - exp(-rate dt), by its series where that would
// cancel.
func lag(rate, dtS, x float64) float64 {
	if z := rate * dtS; z < 1e-4 {
		return dtS * z / 2 * (1 - z/3)
	}
	return dtS - x/rate
}
