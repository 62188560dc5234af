package accuracy

import (
	"fmt"
	"maps"
	"math"
	"slices"
	"strings"

	"newmake/lang/recipe"
)

const (
	tenth = "10 %"
	byC   = "2 °C"
	byPH  = "0.2 pH"
	point = "1 % vol"
	oneIn = "1 point"
	half  = "half, twice"
)

// inputs lists all that is changed: the temperature of each rest, the window of
// the ferment, the yeast's constants, those of the models.
func inputs(b *recipe.Batch) []input {
	all := append(rests(b), stills()...)
	all = append(all, input{"recipe", "hold of the ferment", byC,
		func(b *recipe.Batch) { b.Ferm.HoldLowC -= 2; b.Ferm.HoldHighC -= 2 },
		func(b *recipe.Batch) { b.Ferm.HoldLowC += 2; b.Ferm.HoldHighC += 2 }})
	for _, y := range yeastConstants {
		all = append(all, vary("yeast "+b.Ferm.Yeast.Name, y.name, y.step, func(b *recipe.Batch) *float64 { return y.of(b.Ferm.Yeast) }))
	}
	for _, model := range []string{"mash", "ferment"} {
		for _, name := range slices.Sorted(maps.Keys(b.Models[model].Values)) {
			step := tenth
			switch {
			case name == "reference":
				step = byC
			case strings.Contains(name, "pH"):
				step = byPH
			}
			all = append(all, varyValue(model, name, step))
		}
	}
	return all
}

// maltInputs lists what a malt distiller has and a bourbon's has not, with the same of the
// recipe: the malt's own figures, both stills and the cuts, and what drains the tun.
func maltInputs(b *recipe.Batch) []input {
	all := []input{}
	for i, s := range b.Mash.Steps {
		if s.Verb == recipe.MashWater {
			all = append(all, vary("recipe", fmt.Sprintf("water of %.0f L, its temperature", 1000*s.VolumeM3), byC, func(b *recipe.Batch) *float64 { return &b.Mash.Steps[i].TempC }),
				vary("recipe", fmt.Sprintf("water of %.0f L, how much", 1000*s.VolumeM3), tenth, func(b *recipe.Batch) *float64 { return &b.Mash.Steps[i].VolumeM3 }))
		}
	}
	malt := func(b *recipe.Batch) *recipe.Grain { return b.Bill.Lines[0].Grain }
	all = append(all,
		vary("malt", "moisture", oneIn, func(b *recipe.Batch) *float64 { return &malt(b).Moisture }),
		vary("malt", "starch", oneIn, func(b *recipe.Batch) *float64 { return &malt(b).Starch }),
		vary("malt", "sugars", oneIn, func(b *recipe.Batch) *float64 { return &malt(b).Sugars }),
		vary("malt", "solubles", oneIn, func(b *recipe.Batch) *float64 { return &malt(b).Solubles }),
		vary("malt", "diastatic power", tenth, func(b *recipe.Batch) *float64 { return &malt(b).LintnerPower }),
		vary("malt", "alpha-amylase", tenth, func(b *recipe.Batch) *float64 { return &malt(b).AlphaDU }),
		vary("malt", "limit dextrinase", tenth, func(b *recipe.Batch) *float64 { return &malt(b).LimitShare }),
		vary("malt", "gelatinizes from", byC, func(b *recipe.Batch) *float64 { return &malt(b).GelLowC }),
		vary("malt", "gelatinizes to", byC, func(b *recipe.Batch) *float64 { return &malt(b).GelHighC }),
	)
	all = append(all, stills()...)
	for _, name := range []string{"draff-holds", "reference", "malt-pH", "beta-half-life", "alpha-half-life"} {
		if _, has := b.Models["mash"].Values[name]; has {
			step := tenth
			if name == "reference" {
				step = byC
			} else if strings.Contains(name, "pH") {
				step = byPH
			}
			all = append(all, varyValue("mash", name, step))
		}
	}
	return all
}

// stills are the reflux and the losses of both stills, and where they are stopped and cut.
func stills() []input {
	return []input{
		vary("stills", "reflux of the wash still", tenth, func(b *recipe.Batch) *float64 { return &b.Strip.Still.Reflux }),
		vary("stills", "reflux of the spirit still", tenth, func(b *recipe.Batch) *float64 { return &b.Spirit.Still.Reflux }),
		vary("stills", "reflux of the spirit still, doubled or halved", half, func(b *recipe.Batch) *float64 { return &b.Spirit.Still.Reflux }),
		vary("stills", "lost in the wash still", oneIn, func(b *recipe.Batch) *float64 { return &b.Strip.Still.LostFrac }),
		vary("stills", "lost in the spirit still", oneIn, func(b *recipe.Batch) *float64 { return &b.Spirit.Still.LostFrac }),
		vary("stills", "stop of the stripping run", point, func(b *recipe.Batch) *float64 { return &b.Strip.StopAt.Value }),
		vary("stills", "stop of the spirit run", point, func(b *recipe.Batch) *float64 { return &b.Spirit.Stop.Value }),
		vary("stills", "foreshots", tenth, func(b *recipe.Batch) *float64 { return &b.Spirit.ForeshotsM3 }),
		vary("stills", "hearts from", tenth, func(b *recipe.Batch) *float64 { return &b.Spirit.HeartsFrom.VolumeM3 }),
		vary("stills", "hearts to", point, func(b *recipe.Batch) *float64 { return &b.Spirit.HeartsTo.Strength.Value }),
		vary("stills", "height above the sea, 0 and 600 m", "600 m", func(b *recipe.Batch) *float64 { return &b.Plant.ElevationM }),
	}
}

// rests are the rests of the mash; the temperature of one is that to which the
// step before it heats or cools.
func rests(b *recipe.Batch) []input {
	var all []input
	to := -1
	for i, s := range b.Mash.Steps {
		switch s.Verb {
		case recipe.MashHeat, recipe.MashCool:
			to = i
		case recipe.MashRest:
			if to < 0 {
				continue
			}
			at := to
			all = append(all, input{"recipe", fmt.Sprintf("rest of %.0f min at %.0f °C", s.DurationS/60, b.Mash.Steps[at].TempC), byC,
				func(b *recipe.Batch) { b.Mash.Steps[at].TempC -= 2 },
				func(b *recipe.Batch) { b.Mash.Steps[at].TempC += 2 }})
		}
	}
	return all
}

var yeastConstants = []struct {
	name, step string
	of         func(y *recipe.Yeast) *float64
}{
	{"growth", tenth, func(y *recipe.Yeast) *float64 { return &y.GrowthPerS }},
	{"growth-at", byC, func(y *recipe.Yeast) *float64 { return &y.RefC }},
	{"half-saturation", tenth, func(y *recipe.Yeast) *float64 { return &y.HalfKgM3 }},
	{"ethanol-limit", tenth, func(y *recipe.Yeast) *float64 { return &y.EthanolMostKgM3 }},
	{"inhibition-power", tenth, func(y *recipe.Yeast) *float64 { return &y.InhibitionPower }},
	{"yield-biomass", tenth, func(y *recipe.Yeast) *float64 { return &y.YieldBiomass }},
	{"yield-biomass-ethanol", tenth, func(y *recipe.Yeast) *float64 { return &y.YieldBiomassEthanolKgM3 }},
	{"biomass-per-ethanol", tenth, func(y *recipe.Yeast) *float64 { return &y.YieldBiomassPerEthanol }},
	{"growth-energy", tenth, func(y *recipe.Yeast) *float64 { return &y.ActivationGrowthJMol }},
	{"ethanol-energy", tenth, func(y *recipe.Yeast) *float64 { return &y.ActivationEthanolJMol }},
	{"death-energy", tenth, func(y *recipe.Yeast) *float64 { return &y.ActivationDeathJMol }},
	{"death", tenth, func(y *recipe.Yeast) *float64 { return &y.DeathPerS }},
	{"dies-above", byC, func(y *recipe.Yeast) *float64 { return &y.MostC }},
	{"maltotriose", tenth, func(y *recipe.Yeast) *float64 { return &y.Maltotriose }},
	{"ethanol-yield", tenth, func(y *recipe.Yeast) *float64 { return &y.EthanolYield }},
	{"solids", tenth, func(y *recipe.Yeast) *float64 { return &y.Solids }},
	{"viable", tenth, func(y *recipe.Yeast) *float64 { return &y.Viable }},
	{"lag", tenth, func(y *recipe.Yeast) *float64 { return &y.LagS }},
}

// vary changes a number in place. A share stays at 1 at most.
func vary(group, name, step string, of func(b *recipe.Batch) *float64) input {
	return input{group, name, step,
		func(b *recipe.Batch) { *of(b) = stepped(*of(b), step, -1) },
		func(b *recipe.Batch) {
			v := of(b)
			share := *v <= 1 && (name == "maltotriose" || name == "ethanol-yield" || name == "solids" || name == "viable")
			if *v = stepped(*v, step, 1); share {
				*v = math.Min(*v, 1)
			}
		}}
}

func varyValue(model, name, step string) input {
	set := func(sign float64) func(b *recipe.Batch) {
		return func(b *recipe.Batch) {
			values := b.Models[model].Values
			v := stepped(values[name], step, sign)
			if strings.HasPrefix(name, "access-") {
				v = math.Min(v, 1)
			}
			values[name] = v
		}
	}
	return input{"model " + model, name, step, set(-1), set(1)}
}

func stepped(v float64, step string, sign float64) float64 {
	switch step {
	case byC:
		return v + 2*sign
	case byPH:
		return v + 0.2*sign
	case point, oneIn:
		return max(0, v+0.01*sign)
	case half:
		return v * math.Pow(2, sign)
	case "600 m":
		return 300 * (1 + sign)
	}
	return v * (1 + 0.1*sign)
}
