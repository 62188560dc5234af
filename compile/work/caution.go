package work

import (
	"strings"

	"newmake/compile/plan"
	"newmake/lang/recipe"
)

// caution is a danger of the work. What stands in the text for {} is the source
// of a rule or a figure in United States law and standards, for a plant there;
// elsewhere the rule stands alone, for other law says it in other sections.
type caution struct {
	title, text, us string
}

// The dangers of the work, by the key that a step names them with. Figures:
// flash points and limits as in the NIOSH Pocket Guide and the sections of law
// that they name. They remind; they do not train.
var cautionFor = map[string]caution{
	"dust": {"grain dust explodes and harms lungs",
		"No flame, spark or smoking while grain is milled or tipped; ventilate, sweep, wear a mask{}.", "NFPA 660"},
	"hot-mash": {"hot mash sticks and scalds",
		"Face shield, gloves and apron; stir before opening; never lean over the manway while heat is on.", ""},
	"steam": {"steam burns without being seen",
		"Open valves slowly, drain condensate first, and stand clear of vents and relief valves.", ""},
	"lockout": {"rakes and agitators start without warning",
		"Lock out the drive before a hand or a tool goes in{}.", "29 CFR 1910.147"},
	"confined": {"never enter a vessel alone",
		"A cooker, tun, fermenter or still is a confined space: permit, air test, and somebody outside{}.", "29 CFR 1910.146"},
	"co2": {"carbon dioxide fills low places and kills",
		"It lies in a fermenter long after the wash has gone: air it and test it before a head goes in. Ventilate at floor level and carry a monitor: 5,000 ppm is the limit of a shift, 40,000 ppm is dangerous at once{}.", "OSHA, NIOSH"},
	"caustic": {"caustic burns eyes and skin",
		"Goggles, gauntlets, apron, and water at hand for the eyes. Caustic goes into water, never water into caustic, and never near acid. Air a fermenter first: caustic takes up carbon dioxide, and a closed tank is crushed. Rinse until the rinse is neutral.", ""},
	"vent": {"see that vent and relief are open before heat goes on",
		"A still is never closed while it is hot. Check the outlet, the condenser water and the relief valve: a closed still bursts.", ""},
	"air-in": {"let air in while it cools",
		"A still that is closed hot is crushed as its vapour condenses. Open the vent before it is emptied, and leave it open.", ""},
	"vapour": {"spirit vapour takes fire",
		"No flame or spark; run the fan. Spirit of 60 % vol gives off vapour that takes fire at 22 C (72 F), of 80 % at 20 C (68 F); it burns in air from 3.3 to 19 % by volume. Keep an alcohol-resistant extinguisher at hand.", ""},
	"stillhouse": {"a running still is never left alone",
		"Somebody stands by from the fire to the stop, with the water and the heat in reach.", ""},
	"foreshots": {"foreshots are set aside and never drunk",
		"Methanol comes over through the whole run: no cut removes it, and none is claimed to.", ""},
	"stillage": {"pot ale and lees come out near the boil",
		"Vent the still first, open slowly, and let it cool before it goes down a drain.", ""},
	"spirit": {"strong spirit: no flame, bond the vessels",
		"Earth pumps, hoses and vats while spirit moves, keep lids on, and mop up spills at once.", ""},
	"lift": {"a full cask crushes",
		"A cask of 53 gal (200 L) weighs some 500 lb (230 kg) full: roll it, chock it, and lift it with two people and a machine.", ""},
}

// Cautions is the dangers that jobs name, each once, in the order of the work.
func Cautions(b *recipe.Batch, jobs []Job) []plan.Caution {
	var out []plan.Caution
	used := map[string]bool{}
	for _, j := range jobs {
		for _, key := range j.Cautions {
			k, known := cautionFor[key]
			if used[key] || !known {
				continue
			}
			used[key] = true
			out = append(out, plan.Caution{Key: key, Title: k.title, Text: strings.Replace(k.text, "{}", cite(b, k.us), 1)})
		}
	}
	return out
}
