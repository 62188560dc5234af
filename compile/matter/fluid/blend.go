package fluid

import (
	"fmt"
	"math"
)

// Lot is an amount of ethanol-water of one strength and temperature.
type Lot struct {
	MassKg, EthanolMassFrac, TempC float64
}

// VolumeAtM3 is the lot's volume if it were brought to tempC.
func (l Lot) VolumeAtM3(tempC float64) float64 {
	return l.MassKg / Density(l.EthanolMassFrac, tempC)
}

// Mixture is what comes of mixing two lots with no loss of heat.
type Mixture struct {
	Lot
	// MeanTempC is the temperature the lots would reach side by side, and
	// RiseC what the heat of mixing adds to it.
	MeanTempC, RiseC float64
	// ContractionM3 is by how much the mixture is smaller than the two lots
	// together, all at MeanTempC.
	ContractionM3 float64
}

// Blend mixes two lots. The temperature follows from the balance of
// LiquidEnthalpy, which holds Larkin's heat of mixing.
func Blend(a, b Lot) (Mixture, error) {
	for _, l := range [2]Lot{a, b} {
		if err := l.check(); err != nil {
			return Mixture{}, err
		}
	}
	mass := a.MassKg + b.MassKg
	if mass == 0 {
		return Mixture{}, fmt.Errorf("there is nothing to blend: both lots are empty")
	}
	w := (a.MassKg*a.EthanolMassFrac + b.MassKg*b.EthanolMassFrac) / mass
	heat := a.MassKg*LiquidEnthalpy(a.EthanolMassFrac, a.TempC) + b.MassKg*LiquidEnthalpy(b.EthanolMassFrac, b.TempC)
	guess := (a.MassKg*a.TempC + b.MassKg*b.TempC) / mass
	mean := temperatureOf(heat, guess, a, b)
	mixed := Lot{MassKg: mass, EthanolMassFrac: w, TempC: mean}
	mixed.TempC = temperatureOf(heat, mean, mixed)
	return Mixture{
		Lot:           mixed,
		MeanTempC:     mean,
		RiseC:         mixed.TempC - mean,
		ContractionM3: a.VolumeAtM3(mean) + b.VolumeAtM3(mean) - mixed.VolumeAtM3(mean),
	}, nil
}

// temperatureOf is that at which the lots, side by side, hold an enthalpy in
// J: Newton's method on a function that is nearly straight.
func temperatureOf(enthalpyJ, guessC float64, lots ...Lot) float64 {
	t := guessC
	for range 20 {
		h, slope := -enthalpyJ, 0.0
		for _, l := range lots {
			h += l.MassKg * LiquidEnthalpy(l.EthanolMassFrac, t)
			slope += l.MassKg * enthalpySlope(l.EthanolMassFrac, t)
		}
		step := h / slope
		t -= step
		if math.Abs(step) < 1e-10 {
			break
		}
	}
	return t
}

func (l Lot) check() error {
	switch {
	case !(l.MassKg >= 0) || math.IsInf(l.MassKg, 1):
		return fmt.Errorf("a lot of %g kg cannot be blended", l.MassKg)
	case !(l.EthanolMassFrac >= 0 && l.EthanolMassFrac <= 1):
		return fmt.Errorf("a lot of %g mass fraction ethanol cannot be blended: it must be from 0 to 1", l.EthanolMassFrac)
	case !(l.TempC >= minTempC && l.TempC <= maxTempC):
		return fmt.Errorf("a lot at %g C cannot be blended: liquids here are from -20 to 120 C", l.TempC)
	}
	return nil
}

// Reduction is spirit brought down to a strength with water.
type Reduction struct {
	Spirit, Water Lot
	Result        Mixture
}

// Reduce gives the water, at waterTempC, that brings a lot down to mass
// fraction wTo, and what comes of it.
func Reduce(spirit Lot, wTo, waterTempC float64) (Reduction, error) {
	if !(wTo > 0 && wTo <= spirit.EthanolMassFrac) {
		return Reduction{}, fmt.Errorf("spirit of %.2f %% vol cannot be reduced to %.2f %% vol: water only weakens it",
			100*ABVFromMassFrac(spirit.EthanolMassFrac), 100*ABVFromMassFrac(wTo))
	}
	water := Lot{MassKg: spirit.MassKg * (spirit.EthanolMassFrac/wTo - 1), TempC: waterTempC}
	result, err := Blend(spirit, water)
	if err != nil {
		return Reduction{}, err
	}
	result.EthanolMassFrac = wTo // exactly, not by rounding
	return Reduction{Spirit: spirit, Water: water, Result: result}, nil
}
