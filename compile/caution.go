package compile

import "newmake/compile/plan"

// The dangers of the work, by the key that a step names them with. Figures:
// flash points and limits as in the NIOSH Pocket Guide and the sections of law
// that they name. They remind; they do not train.
var cautions = []plan.Caution{
	{Key: "dust", Title: "grain dust explodes and harms lungs",
		Text: "No flame, spark or smoking while grain is milled or tipped; ventilate, sweep, wear a mask (NFPA 660)."},
	{Key: "hot-mash", Title: "hot mash sticks and scalds",
		Text: "Face shield, gloves and apron; stir before opening; never lean over the manway while heat is on."},
	{Key: "steam", Title: "steam burns without being seen",
		Text: "Open valves slowly, drain condensate first, and stand clear of vents and relief valves."},
	{Key: "lockout", Title: "rakes and agitators start without warning",
		Text: "Lock out the drive before a hand or a tool goes in (29 CFR 1910.147)."},
	{Key: "confined", Title: "never enter a vessel alone",
		Text: "A cooker, fermenter or still is a confined space: permit, air test, and somebody outside (29 CFR 1910.146)."},
	{Key: "co2", Title: "carbon dioxide fills low places and kills",
		Text: "Ventilate at floor level and carry a monitor: 5,000 ppm is the limit of a shift, 40,000 ppm is dangerous at once (OSHA, NIOSH)."},
	{Key: "vent", Title: "see that vent and relief are open before heat goes on",
		Text: "A still is never closed while it is hot. Check the outlet, the condenser water and the relief valve, and let air in when it cools: a closed still bursts, or is crushed."},
	{Key: "vapour", Title: "spirit vapour takes fire",
		Text: "No flame or spark; run the fan. Spirit of 60 % vol gives off vapour that takes fire at 22 C (72 F), of 80 % at 20 C (68 F); it burns in air from 3.3 to 19 % by volume. Keep an alcohol-resistant extinguisher at hand."},
	{Key: "stillhouse", Title: "a running still is never left alone",
		Text: "Somebody stands by from the fire to the stop, with the water and the heat in reach."},
	{Key: "foreshots", Title: "foreshots are set aside and never drunk",
		Text: "Methanol comes over through the whole run: no cut removes it, and none is claimed to."},
	{Key: "stillage", Title: "pot ale and lees come out near the boil",
		Text: "Vent the still first, open slowly, and let it cool before it goes down a drain."},
	{Key: "spirit", Title: "strong spirit: no flame, bond the vessels",
		Text: "Earth pumps, hoses and vats while spirit moves, keep lids on, and mop up spills at once."},
	{Key: "lift", Title: "a full cask crushes",
		Text: "A cask of 53 gal (200 L) weighs some 500 lb (230 kg) full: roll it, chock it, and lift it with two people and a machine."},
}

// warn notes that a caution is used, and gives its key.
func (c *compiler) warn(keys ...string) []string {
	for _, key := range keys {
		used := false
		for _, have := range c.p.Cautions {
			used = used || have.Key == key
		}
		if used {
			continue
		}
		for _, k := range cautions {
			if k.Key == key {
				c.p.Cautions = append(c.p.Cautions, k)
			}
		}
	}
	return keys
}
