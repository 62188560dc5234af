// Package ferment computes the days in the fermenter: the yeast's growth and
// death, which sugar goes when and to what, what the enzymes that came along
// from the mash still make, the temperature against the vessel's cooling, and
// the sour phase after the yeast is done.
//
// # Model
//
// Growth and uptake are those of Warren, Hill and MacDonald, Biotechnol. Prog.
// 6 (1990) 319: Monod in sugar, inhibition by ethanol, and the yields Yx/s and
// Yx/p as published. Temperature is by the activation energies of
// Phisalaphong et al., Biochem. Eng. J. 28 (2006) 36, who fitted them between 30
// and 42 C, and a fall to nothing between the strain's range and the
// temperatures that kill and stop it. That agrees with the cardinal temperatures
// of Salvado et al. (2011) to 0.1 of the rate at 30 C from 5 to 32 C, and to 0.2
// up to 38 C (TestTemperature). Glucose
// represses maltose and both repress maltotriose, in the form of Gee and
// Ramirez, Can. J. Chem. Eng. 66 (1988) 830.
//
// Four things are added, because the published model is of glucose in
// continuous culture, and a wash is not.
//
//   - Growth ends when the nutrients of the grain are used up, and yeast that
//     no longer grows ferments more slowly. The published yields alone would
//     grow 17 g/L of yeast in a wash of 8 % vol; a wash holds 4 to 6. Nor does yeast
//     double more than some five times without air at its full pace: of a pitch far
//     below the usual the ferment is slow (doublings-most). How much alcohol comes of
//     the sugar does not change by that, so less yeast never gives more.
//   - Carbon is balanced. Together the published yields make more ethanol of
//     fresh sugar than Gay-Lussac's equation has carbon for: 0.152/0.291 =
//     0.522 kg/kg against 0.511, with the yeast to be fed as well. So the two
//     are limits, and the slower holds: sugar is taken no faster than Yx/s
//     says, ethanol is made no faster than Yx/p says, and what becomes of the
//     sugar is by stoichiometry (see stoichiometry.go).
//   - A lag, as an activity that wakes after pitching.
//   - Bacteria: lactic acid by a logistic law, slowed while the yeast works, and
//     the less by a pitch below the least usual one.
//
// The yield of the whole ferment comes out of that at 87 to 89 % of theory, for
// all the sugar taken; 90 to 93 % is often quoted. Against gravity it is what is
// published of malt wort: 6.06 to 6.11 L of alcohol a tonne for each percent of
// fermentable extract (Bringhurst et al., J. Inst. Brew. 102 (1996) 433), the
// model 6.08 to 6.13; and 0.98 to 0.99 of Balling's alcohol, nine measured brews 0.96 to
// 1.005 (USDA Bulletin 493). For that, glycerol and acids must have their own
// volume in the wash and not that of sugar (fluid.ByproductVolume). A wort that
// is not all converted when it is pitched gives 1 to 2 % more than its gravity
// promises, for dextrins take up water as they turn to sugar.
// Sources disagree on growth too: 0.152 kg/kg sugar in Warren 1990, 0.10
// without air in Verduyn et al., J. Gen. Microbiol. 136 (1990) 395.
//
// # Accuracy
//
// No published curve of a bourbon or rye wash was found, so two constants are
// tuned to the trade's own rule that a wash is dry in about two days
// (resting-rate and biomass-most of the library entry `model ferment`). Time to
// dryness is good to about 25 %. Final strength and gravity rest on the carbon
// balance and are good to about 4 % of the strength, given the sugars. The
// published ethanol inhibition ends all work at 101.6 g/L; distillers' strains
// stand more, so the model is not for washes above about 12 % vol.
//
// # Left out
//
// Dissolved carbon dioxide (about 1.5 g/L at the end); foam; layers of
// temperature in a vessel that is not stirred; the heat of hydrolysis;
// ethanol and carbon dioxide from bacteria that make more than lactic acid;
// the change of the wash's heat capacity as sugar becomes ethanol (below 2 %).
// Ethanol and water that leave with the carbon dioxide are counted, as gas
// saturated at the wash's temperature: what a closed and cooled vent would
// return is a loss here.
package ferment
