// Package balling has Balling's relations between the extract of a wort and what
// fermentation leaves of it, for the models to be held against; ASBC Methods of Analysis, Beer-33, and Cutaia, Reid and
// Speers, J. Inst. Brew. 115 (2009) 318. All arguments and results are mass
// fractions (12 Plato is 0.12).
package balling

// OriginalExtract is that of the wort from which a liquid with alcohol and
// real extract came: 100 (2.0665 A + RE)/(100 + 1.0665 A) in percent.
func OriginalExtract(alcohol, realExtract float64) float64 {
	return (2.0665*alcohol + realExtract) / (1 + 1.0665*alcohol)
}

// RealExtract is 0.1808 OE + 0.8192 AE.
func RealExtract(original, apparent float64) float64 {
	return 0.1808*original + 0.8192*apparent
}

// ApparentExtract is the hydrometer's, the inverse of RealExtract.
func ApparentExtract(original, realExtract float64) float64 {
	return (realExtract - 0.1808*original) / 0.8192
}

// AlcoholFromExtract is the mass fraction of ethanol that goes with an
// original and a real extract: OriginalExtract solved for the alcohol.
func AlcoholFromExtract(original, realExtract float64) float64 {
	return (original - realExtract) / (2.0665 - 1.0665*original)
}
