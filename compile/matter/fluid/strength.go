package fluid

import (
	"fmt"
	"math"
)

// SixtyF is 60 degrees Fahrenheit in degrees Celsius, the temperature of US
// proof.
const SixtyF = (60.0 - 32) / 1.8

// ABVFromMassFrac is the strength by volume at 20 C, as a fraction 0..1:
// q = p rho(p,20)/rho(1,20) (OIML R 22).
func ABVFromMassFrac(w float64) float64 { return volumeFrac(w, 20) }

// ABV60FFromMassFrac is the strength by volume at 60 F as a fraction 0..1:
// US proof over 200.
func ABV60FFromMassFrac(w float64) float64 { return volumeFrac(w, SixtyF) }

// MassFracFromABV is the inverse of ABVFromMassFrac; it reports an error for
// strengths outside 0..1.
func MassFracFromABV(abv float64) (float64, error) { return massFracFromVolume(abv, 20) }

// MassFracFromABV60F is the inverse of ABV60FFromMassFrac.
func MassFracFromABV60F(abv float64) (float64, error) { return massFracFromVolume(abv, SixtyF) }

func volumeFrac(w, tempC float64) float64 {
	if w >= 1 {
		return 1
	}
	rho, _ := oiml(clamp(w, 0, 1), tempC)
	return w * rho / oimlEthanol(tempC)
}

func massFracFromVolume(q, tempC float64) (float64, error) {
	if !(q >= 0 && q <= 1) {
		return 0, fmt.Errorf("strength %g %% vol is not possible: it must be from 0 to 100", 100*q)
	}
	if q == 0 || q == 1 {
		return q, nil
	}
	rho1 := oimlEthanol(tempC)
	// w rho(w) is strictly rising, with slope between 700 and 1000.
	return solveRising(func(w float64) (float64, float64) {
		rho, slope := oiml(w, tempC)
		return w*rho - q*rho1, rho + w*slope
	}, q*rho1/1000), nil
}

// MassFracFromDensity is the mass fraction of ethanol of a liquid of the given
// density in vacuum: the inverse of Density, single valued from -20 to 120 C.
// It reports an error when no mixture of ethanol and water has that density
// at that temperature.
func MassFracFromDensity(kgM3, tempC float64) (float64, error) {
	if !(tempC >= minTempC && tempC <= maxTempC) {
		return 0, fmt.Errorf("%g C is outside the range of liquid densities, -20 to 120 C", tempC)
	}
	water, ethanol := Density(0, tempC), Density(1, tempC)
	// A density that was computed comes back with its roundoff: it is not said
	// to be that of no spirit for its last bits.
	const roundoff = 1e-12
	switch {
	case kgM3 > water && kgM3 <= water*(1+roundoff):
		return 0, nil
	case kgM3 < ethanol && kgM3 >= ethanol*(1-roundoff):
		return 1, nil
	}
	switch {
	case math.IsNaN(kgM3):
		return 0, fmt.Errorf("density is not a number")
	case kgM3 > water:
		return 0, fmt.Errorf("density %.6g kg/m3 at %g C is above that of water, %.6g: is something dissolved in it?", kgM3, tempC, water)
	case kgM3 < ethanol:
		return 0, fmt.Errorf("density %.6g kg/m3 at %g C is below that of pure ethanol, %.6g", kgM3, tempC, ethanol)
	}
	return solveRising(func(w float64) (float64, float64) {
		rho, slope := densitySlope(w, tempC)
		return kgM3 - rho, -slope
	}, (water-kgM3)/(water-ethanol)), nil
}

// solveRising finds the zero in [0,1] of a rising function given with its
// slope: Newton's method, kept inside a shrinking bracket by bisection.
func solveRising(f func(float64) (value, slope float64), guess float64) float64 {
	lo, hi := 0.0, 1.0
	w := clamp(guess, lo, hi)
	for range 100 {
		v, slope := f(w)
		switch {
		case v == 0:
			return w
		case v < 0:
			lo = w
		default:
			hi = w
		}
		next := w - v/slope
		if !(next > lo && next < hi) {
			next = (lo + hi) / 2
		}
		if math.Abs(next-w) < 1e-15 || next == lo || next == hi {
			return next
		}
		w = next
	}
	return w
}
