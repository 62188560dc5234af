package fluid

import "fmt"

// Range of the OIML R 22 density formula, in degrees Celsius (IPTS-68).
const (
	oimlMinTempC = -20.0
	oimlMaxTempC = 40.0
)

// Coefficients of the general formula of OIML R 22 (1975), "International
// alcoholometric tables", p. 13; the same in Council Directive 76/766/EEC,
// annex. oimlA[k-1] is A_k, oimlB[k-1] is B_k, oimlC[i-1][k-1] is C_i,k.
var (
	oimlA = [12]float64{
		998.20123, -192.9769495, 389.1238958, -1668.103923,
		13522.15441, -88292.78388, 306287.4042, -613838.1234,
		747017.2998, -547846.1354, 223446.0334, -39032.85426,
	}
	oimlB = [6]float64{
		-0.20618513, -0.0052682542, 3.6130013e-05,
		-3.8957702e-07, 7.169354e-09, -9.9739231e-11,
	}
	oimlC = [5][11]float64{
		{
			0.1693443461530087, -10.46914743455169, 71.96353469546523,
			-704.7478054272792, 3924.090430035045, -12101.64659068747,
			22486.46550400788, -26055.62982188164, 18523.73922069467,
			-7420.201433430137, 1285.617841998974,
		},
		{
			-0.0119301300505701, 0.2517399633803461, -2.170575700536993,
			13.53034988843029, -50.29988758547014, 109.635566657757,
			-142.2753946421155, 108.043594285623, -44.14153236817392,
			7.442971530188783,
		},
		{
			-0.0006802995733503803, 0.01876837790289664, -0.2002561813734156,
			1.02299296671922, -2.895696483903638, 4.810060584300675,
			-4.672147440794683, 2.458043105903461, -0.5411227621436812,
		},
		{
			4.075376675622027e-06, -8.76305857347111e-06,
			6.515031360099368e-06, -1.51578483698721e-06,
		},
		{-2.788074354782409e-08, 1.345612883493354e-08},
	}
	// oimlM is the number of terms of each row of oimlC.
	oimlM = [5]int{11, 10, 9, 4, 2}
)

// DensityOIML is the density in vacuum, in kg/m3, of an ethanol-water mixture
// with the given mass fraction of ethanol at tempC, by OIML R 22. It reports
// an error outside mass fractions 0..1 and outside -20..40 C.
//
// The formula gives liquid even where the mixture would freeze.
func DensityOIML(ethanolMassFrac, tempC float64) (float64, error) {
	if !(ethanolMassFrac >= 0 && ethanolMassFrac <= 1) {
		return 0, fmt.Errorf("mass fraction of ethanol is %g: it must be from 0 to 1", ethanolMassFrac)
	}
	if !(tempC >= oimlMinTempC && tempC <= oimlMaxTempC) {
		return 0, fmt.Errorf("%g C is outside the alcoholometric tables, which run from -20 to 40 C", tempC)
	}
	rho, _ := oiml(ethanolMassFrac, tempC)
	return rho, nil
}

// oimlAt60F is the whole formula at 60 F, where it is a polynomial in p alone.
var oimlAt60F = func() [12]float64 {
	c, d := oimlA, SixtyF-20
	water := 0.0
	for k := len(oimlB) - 1; k >= 0; k-- {
		water = float64((water + oimlB[k]) * d)
	}
	c[0] += water
	dPow := 1.0
	for i := range oimlC {
		dPow *= d
		for k := range oimlM[i] {
			c[k+1] += float64(oimlC[i][k] * dPow)
		}
	}
	return c
}()

// horner is a polynomial in p and its derivative.
func horner(c *[12]float64, p float64) (v, dv float64) {
	for k := len(c) - 1; k >= 0; k-- {
		dv = float64(dv*p) + v
		v = float64(v*p) + c[k]
	}
	return v, dv
}

// Pure ethanol at the two temperatures at which strength is stated.
var (
	oimlEthanol20, _  = oiml(1, 20)
	oimlEthanol60F, _ = oiml(1, SixtyF)
)

// oimlEthanol is the density of pure ethanol.
func oimlEthanol(tempC float64) float64 {
	switch tempC {
	case 20:
		return oimlEthanol20
	case SixtyF:
		return oimlEthanol60F
	}
	rho, _ := oiml(1, tempC)
	return rho
}

// oiml evaluates the formula and its derivative with respect to the mass
// fraction p, both by Horner's rule, with no check of the range.
func oiml(p, tempC float64) (rho, dRhoDp float64) {
	switch tempC {
	case 20: // the terms in temperature are all nothing
		return horner(&oimlA, p)
	case SixtyF:
		return horner(&oimlAt60F, p)
	}
	rho, dRhoDp = horner(&oimlA, p)
	d := tempC - 20
	water := 0.0
	for k := len(oimlB) - 1; k >= 0; k-- {
		water = float64((water + oimlB[k]) * d)
	}
	rho += water
	dPow := 1.0
	for i := range oimlC {
		dPow *= d
		sum, dSum := 0.0, 0.0
		for k := oimlM[i] - 1; k >= 0; k-- {
			dSum = float64(dSum*p) + sum
			sum = float64(sum*p) + oimlC[i][k]
		}
		// sum is the polynomial without its common factor p.
		rho += float64(float64(sum*p) * dPow)
		dRhoDp += float64((float64(dSum*p) + sum) * dPow)
	}
	return rho, dRhoDp
}
