// Package fluid gives the properties of water, ethanol-water, wort and mash
// that the stages of a plan stand on, and the arithmetic of US gauging. Its
// functions are pure, allocate nothing on the paths a still calls thousands of
// times, and read nothing: the published coefficients are in the code.
//
// # Conventions
//
// SI throughout, temperatures in degrees Celsius. The US functions in
// gauging.go take proof, gallons and degrees Fahrenheit and say so in their
// names.
//
// Strength is the mass fraction of ethanol (w) unless the name says otherwise:
// x and y are mole fractions in liquid and vapour, ABV is a volume fraction
// 0..1 at 20 C, ABV60F one at 60 F, proof is 200 times ABV60F. The two
// temperatures differ by up to 0.07 % vol in the same spirit, so never mix
// them.
//
// Density and mass are in vacuum (true mass). A name that ends in Air is
// apparent, as weighed in air: SGAirFromPlato, sg60FAir, PoundsPerGallon. A
// specific gravity is 20/20 C unless its name says 60F. Plato is the Brix scale
// of NBS Circular 440, 12 Plato being a mass fraction of 0.12.
//
// Functions without an error hold their arguments to the range stated and give
// a number for every number (NaN for NaN). Functions with an error refuse what
// is outside, in words for a distiller.
//
// # Models, ranges, and what they are worth
//
// The tests measure these against the sources; go test -v prints the largest
// and root-mean-square error of each.
//
//   - Density, -20 to 40 C: OIML R 22 (1975), all 54 coefficients; its printed
//     cells to print rounding, 0.005 kg/m3. It is liquid, also where the mixture
//     would freeze: no freezing point is modelled.
//   - Density, 40 to 120 C: OIML at 40 C carried on by the pure liquids (IAPWS
//     SR6-08; Schroeder et al. 2014) and the trend of OIML's excess volume.
//     Pure liquids 0.1 %. Mixtures agree with the one hot figure that could be
//     had (Marsh and Richards 1980, to 65 C, mole fraction 0.08) to 0.02 %; in
//     stronger hot spirit reckon with 0.3 %.
//   - Equilibrium, 50 to 110 kPa: NRTL, vapour pressures by IAPWS and Wagner,
//     ideal vapour. Against Carey and Lewis (1932) and Kirschbaum (1939) within
//     0.015 in y and 0.9 C, with y 0.005 to 0.013 high at mole fractions 0.1 to
//     0.4. At 33 kPa within 0.024, and at 30 C within 2 % in pressure.
//   - Heat capacity: Perry's table 3 to 41 C, Larkin's slope above 70 C; the two
//     part by up to 8 % in cold weak spirit and 5 % at 41 C. No measured table
//     above 41 C could be had.
//   - Heat of mixing: Larkin (1975), 25 to 110 C, carried on below 25 C.
//   - Water and steam: IAPWS SR6-08 and SR1-86, 0.02 % to 110 C.
//   - VapourLatentHeat leaves out the liquid's heat of mixing: under 1 %.
//   - Sugar: NBS Circular 440 at 20 C to 30 %; ICUMSA for temperature and above.
//     The two sources differ by 0.09 kg/m3 at 30 %.
//   - Wort with alcohol: volumes of the spirit and of the extract added. It
//     meets Tabarie's relation to 0.0001 in gravity, and the apparent extracts
//     of Cutaia et al. (2009) to 0.03 Plato, where Balling's 0.1808/0.8192 rule
//     is 0.13 to 0.23 off. The two therefore disagree by up to 0.001 in final
//     gravity: WortDensity is what a hydrometer reads, the rule a convention.
//     Extract counts as sucrose; glycerol and acids of a ferment have their own
//     volume (byproductVolume).
//   - Grain: malt's specific heat and slaking heat to 8 % moisture; raw grain
//     above that by a line (common practice).
//   - US gauging: true proof to 0.05 of the printed rows. By weight, up to 0.012 %
//     off the official tables at 190 to 200 proof: they rest on pure alcohol of
//     specific gravity 0.7939 at 60/60 F, OIML's is 0.79382. Official gauging
//     follows the regulation's own tables.
package fluid
