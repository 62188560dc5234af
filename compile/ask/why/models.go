package why

// The models: what each takes to be so, where it is from, and the range in which it is
// valid and how good it is there. Each sums up the doc of the package that holds it, which says
// more; a house may tune the constants of the library entry that is named.
var (
	arithmetic = Model{
		Says: "Adding up; nothing is assumed.", Source: "arithmetic",
		Valid: "always; as good as the numbers it adds",
	}
	written = Model{
		Says: "As the batch asks; nothing is computed.", Source: "the text of the batch",
		Valid: "always",
	}
	analysis = Model{
		Says:   "Each grain is what its analysis in the library says, and mills and lots differ from it.",
		Source: "the sources of the library's figures, line by line below",
		Valid:  "the library's averages; a delivery note, written into the house's own library, beats them",
	}
	gelatinizing = Model{
		Says:   "Starch in the granule is out of reach until it gelatinizes. Granules melt over the grain's own range, at a rate in two Arrhenius regimes; a coarse grind keeps some out of reach.",
		Source: "Brandam et al., Biochem. Eng. J. 13 (2003) 43, moved to each grain's range; library entry `model mash`",
		Valid:  "mashes of 2 to 5 L/kg; ranges in the library differ by up to 10 C between sources. Raw starch is not digested below them, and a very thick mash gelatinizes hotter than is reckoned",
	}
	converting = Model{
		Says:   "Gelatinized starch is split to dextrins and sugars at rates first order in the starch and in the enzymes dissolved; they die faster the hotter: alpha-amylase at one pace, beta-amylase in two parts. Of limit dextrinase, which opens the branches, a part is free and dies fast; the rest is bound, lives longer, and is set free the more the lower the pH, on into an unboiled ferment. All of it is followed along the mash's actual temperatures.",
		Source: "Brandam et al., Biochem. Eng. J. 13 (2003) 43, with death of the amylases after Muller 1991 and limit dextrinase free and bound after Sissons, J. ASBC 54 (1996) 19; library entry `model mash`",
		Valid:  "50 to 80 C for the malt's enzymes, pH 4.8 to 5.9; several rates are fitted to the sugars of all-malt wort. How good it is stands in compile/ACCURACY.md",
	}
	gravityTable = Model{
		Says:   "What is dissolved counts as sucrose; its share of the weight, in Plato, gives the gravity.",
		Source: "NBS Circular 440, table 114; above 30 Plato ICUMSA (package compile/matter/fluid)",
		Valid:  "0 to 30 Plato; the two sources differ by 0.09 kg/m3 at 30 %. Extract counts as sucrose, which it is not quite",
	}
	wortVolume = Model{
		Says:   "The volumes of spirit, of extract and of what a ferment makes besides alcohol (0.78 L/kg) add up, and each kg of what is not dissolved takes 0.67 L.",
		Source: "OIML R 22 and NBS Circular 440 for the liquid, glycerol and acids by the CRC Handbook; 0.65 to 0.70 L/kg for grain, common practice",
		Valid:  "-20 to 40 C; Tabarie's relation is met to 0.0001 in gravity. 0.03 L/kg of grain matter is about 0.2 % of a mash",
	}
	buffers = Model{
		Says:   "Each grain and the backset pull to a pH of their own by the strength of their buffer, and the water's alkalinity and lime lift the whole. Acid gives off its hydrogen ions by its pKa, calcium one for each 3.5 equivalents.",
		Source: "mixing of buffers, common practice; Kolbach's residual alkalinity and the acids' pKa (CRC Handbook), from memory; library entry `model mash`",
		Valid:  "pH 3 to 9 in form; good to 0.1 to 0.2 pH",
	}
	heating = Model{
		Says:   "Heat balance of liquor, grain with its slaking heat, and the vessel's metal, against jacket or steam and the loss through the wall. Where the text gives no time, the vessel's power sets it.",
		Source: "heat balance; specific and slaking heat of malt as published (package compile/matter/fluid); filling and milling, common practice",
		Valid:  "to the boil at the plant's elevation; no evaporation, no heat of stirring. A heating time is as good as the power that the house states for the vessel",
	}
	cooling = Model{
		Says:   "A surface passes area times coefficient times the difference between the vessel and its water, less as the water warms along it: so each degree of the supply counts, and nothing comes within 2 C of it. Where the house states a power, that holds down to 20 C above the water and falls off below.",
		Source: "effectiveness and transfer units, Kays and London, from memory; coefficients from memory where the house has none of its own; library entry `model mash`",
		Valid:  "a stirred vessel; coefficients differ by a factor of two from house to house: time one cooling and state your own",
	}
	condensing = Model{
		Says:   "What the vapour gives off as it condenses and cools to the distillate warms the water from the supply to its outlet.",
		Source: "heat balance; outlet and distillate as the house states, else 30 C warmer and 20 C (common practice)",
		Valid:  "distillate no nearer than 5 C to its water (common practice)",
	}
	fermenting = Model{
		Says:   "Sugar that the yeast takes becomes alcohol and carbon dioxide by Gay-Lussac's equation, less what it grows on and what becomes glycerol and the like.",
		Source: "Gay-Lussac, 51.14 kg of alcohol from 100 kg of glucose; uptake and growth by Warren, Hill and MacDonald, Biotechnol. Prog. 6 (1990) 319; library entry `model ferment` and the yeast's own",
		Valid:  "20 to 34 C and washes up to about 12 % vol; strength to about 4 % of itself, given the sugars",
	}
	fermentTime = Model{
		Says:   "Growth and uptake by Monod, slowed by alcohol, cold and heat; glucose is taken before maltose, maltose before maltotriose; growth ends with the grain's nutrients. Dry is when 98 % of the sugar is gone.",
		Source: "Warren, Hill and MacDonald, Biotechnol. Prog. 6 (1990) 319; temperature by Phisalaphong et al., Biochem. Eng. J. 28 (2006) 36; the form of Gee and Ramirez, Can. J. Chem. Eng. 66 (1988) 830",
		Valid:  "20 to 34 C and washes up to about 12 % vol; two constants are tuned to the rule that a wash is dry in two days, so the time is good to about 25 %",
	}
	fermentHeat = Model{
		Says:   "Sugar gives off 563 kJ a kg as it ferments, against the vessel's cooling, its wall, and what the gas carries off.",
		Source: "CRC Handbook, enthalpies of formation (part from memory); wall 4 W/(m2 K), from memory; library entry `model ferment`",
		Valid:  "a vessel that is mixed, in the yeast's own range",
	}
	souring = Model{
		Says:   "Yeast leaves a hydrogen ion for each nitrogen it takes up, bacteria make lactic acid by a logistic law once the yeast is done, and the wort's buffer takes it up.",
		Source: "lactic acid pKa 3.86, CRC Handbook, from memory; the rest tuned to a sour phase after 40 to 48 h (common practice); library entry `model ferment`",
		Valid:  "pH 3 to 6 in form; good to 0.2 pH",
	}
	distilling = Model{
		Says:   "Differential (Rayleigh) distillation, n dx = -(y - x) dD: the vapour is in equilibrium with the boiling pot at the local pressure, and the head returns a share of it. Cuts fall where the text puts them.",
		Source: "Rayleigh, Phil. Mag. 4 (1902) 521, from memory; equilibrium by NRTL against Carey and Lewis (1932) and Kirschbaum (1939); head by differential condensation, Treybal 3rd ed. ch. 9, from memory",
		Valid:  "50 to 110 kPa, pots up to 95 % vol; equilibrium within 0.015 in mole fraction. No liquid is held up in head or condenser, so cuts are sharper than a still makes them",
	}
	steadying = Model{
		Says:   "Feints go back into the next charge. The numbers are of the house at work: the run whose feints are those it began with; or of the feints that the batch says there are today.",
		Source: "mass balance over the cuts; Broyden, Math. Comp. 19 (1965) 577, finds the run that repeats itself",
		Valid:  "once the feints have settled; until then the batch says what there is, `feints none yet`",
	}
	boiling = Model{
		Says:   "Heat from jacket or steam warms the charge and the still's metal, makes up the losses, and boils the rest away.",
		Source: "enthalpy balance: heat capacities of Perry and Larkin, latent heats of IAPWS SR1-86 and Schroeder et al. 2014 (package compile/matter/fluid)",
		Valid:  "50 to 110 kPa. A run's time is as good as the power and the losses that the house states for the still",
	}
	gauging = Model{
		Says:   "Density of alcohol and water by strength and temperature; proof is twice the volume percent at 60 F.",
		Source: "OIML R 22 (1975); 27 CFR part 30",
		Valid:  "-20 to 40 C; the printed tables to 0.05 proof. Official gauging follows the regulation's own tables",
	}
	// weighing is gauging as a reader of litres has it.
	weighing = Model{
		Says:   "Density of alcohol and water by strength and temperature; strength and volume are those at 20 C.",
		Source: "OIML R 22 (1975)",
		Valid:  "-20 to 40 C. Official gauging follows the tables of the law",
	}
	maturing = Model{
		Says:   "The wood soaks up a share of the fill at first; ethanol and water evaporate each by what there is, at the loss and change of proof that the climate states, faster in a small cask.",
		Source: "change of proof: Schoeneman, Dyer and Earl, J. AOAC 54 (1971) 1247; the published rule of losses, 10 % the first year and 4 % after; library entry `model cask`",
		Valid:  "averages of a rack house; the published figures go to 8 years in casks of about 200 L. Each cask goes its own way",
	}
	usage = Model{
		Says: "The theory is all starch as glucose and all sugar as alcohol.", Source: "180.156/162.140 for starch, Gay-Lussac for sugar; alcohol 0.78924 kg/L at 20 C (OIML R 22)",
		Valid: "always; published yields by grain are 91.5 % of it (Saskatchewan Agriculture and Food, 1993)",
	}
	pricing = Model{
		Says: "Amounts of the plan by the prices of the house.", Source: "the house's own prices",
		Valid: "only what is priced: what has no price is named in the plan",
	}
	timing = Model{
		Says:   "Each step by its model or its written time, placed in the shift; a step that only has to be begun counts a quarter of an hour.",
		Source: "common practice at this scale for what no model computes: weighing, pumping, cleaning, gauging, filling",
		Valid:  "a house of this size; your own pace is what counts",
	}
	airPressure = Model{
		Says:   "Mean air pressure by height, and the temperature at which water boils under it.",
		Source: "U.S. Standard Atmosphere 1976; IAPWS SR1-86 (1992)",
		Valid:  "-610 to 11,000 m; weather that moves the pressure by 2 kPa moves the boil by 0.5 C",
	}
)

// modelOf is the model of a value, as its reader gauges.
func (a *asked) modelOf(v value) Model {
	if v.model == gauging && !a.us() {
		return weighing
	}
	return v.model
}
