// Package proofing answers a gauger's question put in words, and shows the
// working line by line, so that a person can follow it with the official table
// beside them.
//
//	38 gal at 134.1 proof at 66 F, reduce to 114 proof
//	reading 192.8 at 72.1 F
//	81,000 lb at 190 proof
//	fill 53 gal at 60 % abv from 70 % abv
//	20 gal at 134 proof, blend with 5 gal at 100 proof
//
// The words are those of the language (package lang), with its units and its
// diagnostics:
//
//	question   = lot { [ "," ] step }
//	           | "fill" VOLUME "at" STRENGTH "from" lot { [ "," ] step } .
//	lot        = [ VOLUME | MASS | PROOFGAL ] { [ "at" | "of" ] ( STRENGTH | TEMP ) | "reading" NUMBER }
//	             { [ "," ] correction } .
//	correction = "hydrometer" NUMBER | "thermometer" TEMPDIFF | "solids" CONC .
//	step       = "reduce" "to" STRENGTH [ "with" "water" "at" TEMP ]
//	           | "fill" VOLUME "at" STRENGTH
//	           | "blend" "with" lot .
//
// A reading is what the hydrometer shows, and needs the temperature; a strength
// with its unit is true: proof at 60 F, % abv at 60 F where the question is in
// gallons, pounds or F, so that 40 % abv is 80 proof, and at 20 C where it is in
// litres, kilograms or C. A reading without a unit is proof in US units; in
// others it is refused, since an alcoholometer in % vol may have shown it.
//
// In US units the working goes by 27 CFR part 30: each factor is rounded to the
// places that the table prints, each line goes on from the line above as shown,
// proof is recorded to 0.1 and gallons to 0.1. The factors come from the model
// in package fluid, so that the last figure may differ from the table's, and
// the answer says that official gauging follows the tables themselves. In SI
// the working goes by mass, with densities by OIML R 22.
package proofing
