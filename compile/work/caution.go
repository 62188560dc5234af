package work

import (
	"fmt"
	"strings"

	"newmake/compile/measure"
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
	"dust": {"grain dust explodes",
		"No flame, spark or smoking while grain is milled or tipped; ventilate, sweep, wear a mask{}.", "NFPA 660"},
	"hot-mash": {"hot mash scalds",
		"Face shield, gloves and apron; stir before opening; never lean over the manway while heat is on.", ""},
	"steam": {"steam burns unseen",
		"Open valves slowly, drain condensate first, and stand clear of vents and relief valves.", ""},
	"live-steam": {"steam burns unseen",
		"Open valves slowly, drain condensate first, and stand clear of vents and relief valves. What is blown into a mash is drunk: the boiler is treated with nothing that food may not have{}.", "21 CFR 173.310"},
	"hot-water": {"hot water scalds",
		"Open valves slowly, keep hands off bare metal, and stand clear of what boils.", ""},
	"hot-wash": {"hot wash foams, and gives off vapour",
		"Fill slowly with the vent open, and no flame near the manway. The preheater and its pipes are near the boil: drain and vent them before a joint is opened.", ""},
	"soak": {"hot water scalds: ease the bung",
		"Hot water warms the air in a cask that is bunged: stand clear of the bung, and ease it out slowly.", ""},
	"lockout": {"rakes start without warning",
		"Lock out the drive before a hand or a tool goes in{}.", "29 CFR 1910.147"},
	"confined": {"never enter alone",
		"A cooker, tun, fermenter or still is a confined space: permit, air test, and somebody outside{}.", "29 CFR 1910.146"},
	"too-small": {"keep your head out",
		"No one fits in, and a head does: gas and vapour lie in it. Air it, and clean it from outside, with a brush on a handle.", ""},
	"oxygen": {"too little oxygen in the tun",
		"Wet draff takes up oxygen and gives off vapour and carbon dioxide. Ventilate, and test the air before anybody leans or climbs in: less than 19.5 % oxygen is dangerous{}.", "29 CFR 1910.146(b)"},
	"co2": {"carbon dioxide kills",
		"It fills low places, lies in a fermenter long after the wash has gone, and there is too little oxygen to live on where it lies: air it and test it before a head goes in. Ventilate at floor level and carry a monitor: 5,000 ppm is the limit of a shift, 40,000 ppm is dangerous at once{}.", "OSHA, NIOSH"},
	"caustic": {"caustic burns",
		"Goggles, gauntlets, apron, and water at hand for the eyes. Caustic goes into water, never water into caustic, and never near acid. Air a fermenter first: caustic takes up carbon dioxide, and a closed tank is crushed. Rinse until the rinse is neutral.", ""},
	"acid": {"acid and lime burn",
		"Goggles, gauntlets, apron, and water at hand for the eyes. Acid goes into water, never water into acid, and never near caustic or hypochlorite.", ""},
	"vent": {"vent and relief open before heat",
		"A still is never closed while it is hot. Check the outlet, the condenser water and the relief valve: a closed still bursts.", ""},
	"air-in": {"let air in as it cools",
		"A still that is closed hot is crushed as its vapour condenses. Open the vent before it is emptied, and leave it open.", ""},
	"vapour": {"vapour takes fire", takesFire, ""},
	"stillhouse": {"never leave a running still",
		"Somebody stands by from the fire to the stop, with the water and the heat in reach.", ""},
	"foreshots": {"foreshots are never drunk",
		"They are set aside. Methanol comes over through the whole run: no cut removes it, and none is claimed to.", ""},
	"stillage": {"it comes out near the boil",
		"What is left in a still scalds. Vent the still first, open slowly, and let it cool before it goes down a drain.", ""},
	"spirit": {"no flame, bond the vessels",
		"Strong spirit burns. Earth pumps, hoses and vats while spirit moves, keep lids on, and mop up spills at once.", ""},
}

// takesFire says at what temperature spirit takes fire.
const takesFire = "No flame or spark; run the fan. Spirit of 60 %% vol gives off vapour that takes fire at %s, of 80 %% at %s, and cooler where the air is thin; it burns in air from 3.3 to 19 %% by volume. Keep an alcohol-resistant extinguisher at hand."

// flash is a flash point, which is known to a degree: in C alone to a reader of litres.
func flash(u measure.Units, c float64) string {
	s := measure.Number(c, 0) + " C"
	if u == measure.US {
		s += " (" + u.Temp(c) + ")"
	}
	return s
}

// fitsM3 is what a vessel holds that a person gets into (from memory). A confined space
// is one that a body can enter (29 CFR 1910.146(b)); of a smaller one the danger is
// another.
const fitsM3 = 0.4

// inside is the danger of what is in a vessel, for those who open it or clean it.
func inside(v *recipe.Vessel) string {
	if v.HoldsM3 < fitsM3 {
		return "too-small"
	}
	return "confined"
}

// Cautions is the dangers that jobs name, each once, in the order of the work.
func Cautions(b *recipe.Batch, jobs []Job, k plan.Cask) []plan.Caution {
	var out []plan.Caution
	used := map[string]bool{}
	for _, j := range jobs {
		for _, key := range j.Cautions {
			c, known := cautionFor[key]
			if of, made := ofACask[key]; made {
				c, known = of(b, k)
			}
			if used[key] || !known {
				continue
			}
			used[key] = true
			say := measure.UnitsOf(b.Units)
			if c.text == takesFire {
				c.text = fmt.Sprintf(takesFire, flash(say, 22), flash(say, 20))
			}
			out = append(out, plan.Caution{Key: key, Title: say.Words(c.title), Text: say.Words(strings.Replace(c.text, "{}", cite(b, c.us), 1))})
		}
	}
	return out
}

// aloneKg is what one person may lift under the best of conditions: the load
// constant of the revised NIOSH lifting equation, Publication 94-110.
const aloneKg = 23.0

// ofACask are the dangers of a cask, which go by its weight.
var ofACask = map[string]func(*recipe.Batch, plan.Cask) (caution, bool){"lift": liftCaution, "roll": rollCaution}

const rolls = "a cask rolls and slips"

// rollCaution is the danger of a cask that is soaked: its wood and the water in it.
func rollCaution(b *recipe.Batch, k plan.Cask) (caution, bool) {
	if k.TareKg <= 0 {
		return caution{}, false
	}
	say := measure.UnitsOf(b.Units)
	waterKg := soakL(k) * waterKgL
	weighs := "An empty cask of " + say.Litres(k.SizeL) + " weighs about " + say.Mass(k.TareKg) + ", and the water in it " + say.Mass(waterKg) + ": "
	if k.TareKg+waterKg <= aloneKg {
		return caution{rolls, weighs + "carry it close to the body.", ""}, true
	}
	return caution{rolls, weighs + "roll it, keep feet and fingers from under it, and do not lift it alone.", ""}, true
}

// waterKgL is a litre of the hot water that a cask is soaked with, near 80 C.
const waterKgL = 0.972

// liftCaution is the danger of a full cask, which weighs what the plan fills into
// it and its wood besides.
func liftCaution(b *recipe.Batch, k plan.Cask) (caution, bool) {
	if k.Fill == nil {
		return caution{}, false
	}
	say := measure.UnitsOf(b.Units)
	full := "A cask of " + say.Litres(k.SizeL) + " full holds " + say.Mass(k.NetKg) + " of spirit, and its wood comes on top: "
	if k.NetKg <= aloneKg {
		return caution{rolls, full + "chock it, and carry it close to the body.", ""}, true
	}
	return caution{"a full cask crushes", full + "roll it, chock it, and lift it with two people and a machine.", ""}, true
}

// heatCaution is the danger of what heats a mash or its liquor: steam where the
// house has a boiler or blows steam in, hot water and metal elsewhere.
func heatCaution(b *recipe.Batch) string {
	switch {
	case b.Mash.Cooker.HeatedBy == recipe.Direct:
		return "live-steam"
	case hasSteam(b):
		return "steam"
	}
	return "hot-water"
}

func hasSteam(b *recipe.Batch) bool {
	return b.Plant.BoilerW > 0 || b.Mash.Cooker.HeatedBy == recipe.Direct
}
