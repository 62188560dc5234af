package recipe

import (
	"slices"
	"strings"

	"newmake/lang/quantity"
)

// grainRows are the figures of a grain.
var grainRows = []row[Grain]{
	{Row{Path: PathOf("cereal")}, func(g *Grain) []Cell { return cells(datum(&g.Cereal)) }},
	{Row{Path: PathOf("malted")}, func(g *Grain) []Cell { return cells(datum(&g.Malted)) }},
	{Row{Path: PathOf("roasted")}, func(g *Grain) []Cell { return cells(datum(&g.Roasted)) }},
	{Row{Path: PathOf("bushel")}, func(g *Grain) []Cell { return cells(number(&g.TestWeightKg)) }},
	{Row{Path: PathOf("starch"), Vary: true}, func(g *Grain) []Cell { return cells(number(&g.Starch)) }},
	{Row{Path: PathOf("moisture"), Vary: true}, func(g *Grain) []Cell { return cells(number(&g.Moisture)) }},
	{Row{Path: PathOf("sugars")}, func(g *Grain) []Cell { return cells(number(&g.Sugars)) }},
	{Row{Path: PathOf("extract")}, func(g *Grain) []Cell { return cells(number(&g.Extract)) }},
	{Row{Path: PathOf("solubles")}, func(g *Grain) []Cell { return cells(number(&g.Solubles)) }},
	{Row{Path: PathOf("gelatinizes"), As: "gelatinization"}, func(g *Grain) []Cell { return cells(number(&g.GelLowC), number(&g.GelHighC)) }},
	{Row{Path: PathOf("power"), Name: "enzymes", Vary: true, Part: true}, func(g *Grain) []Cell { return cells(number(&g.LintnerPower), alphaDU(&g.AlphaDU)) }},
	{Row{Path: PathOf("power")}, func(g *Grain) []Cell { return cells(number(&g.LintnerPower)) }},
	{Row{Path: PathOf("alpha")}, func(g *Grain) []Cell { return cells(number(&g.AlphaDU)) }},
	{Row{Path: PathOf("limit-dextrinase")}, func(g *Grain) []Cell { return cells(number(&g.LimitShare)) }},
	{Row{Path: PathOf("viscous")}, func(g *Grain) []Cell { return cells(datum(&g.Viscous)) }},
	{Row{Path: PathOf("most")}, func(g *Grain) []Cell { return cells(number(&g.MostC)) }},
}

// yeastRows are the figures of a yeast.
var yeastRows = []row[Yeast]{
	{Row{Path: PathOf("form"), Name: "dry"}, func(y *Yeast) []Cell { return cells(datum(&y.Dry).apart()) }},
	{Row{Path: PathOf("solids")}, func(y *Yeast) []Cell { return cells(number(&y.Solids)) }},
	{Row{Path: PathOf("viable")}, func(y *Yeast) []Cell { return cells(number(&y.Viable)) }},
	{Row{Path: PathOf("lag")}, func(y *Yeast) []Cell { return cells(number(&y.LagS)) }},
	{Row{Path: PathOf("growth"), Vary: true}, func(y *Yeast) []Cell { return cells(number(&y.GrowthPerS)) }},
	{Row{Path: PathOf("growth-at")}, func(y *Yeast) []Cell { return cells(number(&y.RefC)) }},
	{Row{Path: PathOf("half-saturation")}, func(y *Yeast) []Cell { return cells(number(&y.HalfKgM3)) }},
	{Row{Path: PathOf("ethanol-limit"), As: "ethanol limit"}, func(y *Yeast) []Cell { return cells(number(&y.EthanolMostKgM3)) }},
	{Row{Path: PathOf("inhibition-power")}, func(y *Yeast) []Cell { return cells(number(&y.InhibitionPower)) }},
	{Row{Path: PathOf("yield-biomass")}, func(y *Yeast) []Cell { return cells(number(&y.YieldBiomass)) }},
	{Row{Path: PathOf("yield-biomass-ethanol")}, func(y *Yeast) []Cell { return cells(number(&y.YieldBiomassEthanolKgM3)) }},
	{Row{Path: PathOf("biomass-per-ethanol")}, func(y *Yeast) []Cell { return cells(number(&y.YieldBiomassPerEthanol)) }},
	{Row{Path: PathOf("growth-energy")}, func(y *Yeast) []Cell { return cells(number(&y.ActivationGrowthJMol)) }},
	{Row{Path: PathOf("ethanol-energy")}, func(y *Yeast) []Cell { return cells(number(&y.ActivationEthanolJMol)) }},
	{Row{Path: PathOf("death")}, func(y *Yeast) []Cell { return cells(number(&y.DeathPerS)) }},
	{Row{Path: PathOf("death-energy")}, func(y *Yeast) []Cell { return cells(number(&y.ActivationDeathJMol)) }},
	{Row{Path: PathOf("range")}, func(y *Yeast) []Cell { return cells(number(&y.LowC), number(&y.HighC)) }},
	{Row{Path: PathOf("dies-above")}, func(y *Yeast) []Cell { return cells(number(&y.MostC)) }},
	{Row{Path: PathOf("pitch")}, func(y *Yeast) []Cell { return cells(number(&y.PitchLowKgM3), number(&y.PitchHighKgM3)) }},
	{Row{Path: PathOf("maltotriose")}, func(y *Yeast) []Cell { return cells(number(&y.Maltotriose)) }},
	{Row{Path: PathOf("ethanol-yield"), As: "ethanol yield"}, func(y *Yeast) []Cell { return cells(number(&y.EthanolYield)) }},
}

// enzymeRows are the figures of an enzyme.
var enzymeRows = []row[Enzyme]{
	{Row{Path: PathOf("does")}, func(z *Enzyme) []Cell { return cells(datum(&z.Does)) }},
	{Row{Path: PathOf("activity")}, func(z *Enzyme) []Cell { return cells(number(&z.ActivityPerKg)) }},
	{Row{Path: PathOf("optimum")}, func(z *Enzyme) []Cell { return cells(number(&z.OptimumC)) }},
	{Row{Path: PathOf("range")}, func(z *Enzyme) []Cell { return cells(number(&z.LowC), number(&z.HighC)) }},
	{Row{Path: PathOf("dies-above")}, func(z *Enzyme) []Cell { return cells(number(&z.MostC)) }},
	{Row{Path: PathOf("half-life")}, func(z *Enzyme) []Cell {
		return cells(number(&z.HalfLifeS).from("duration"), number(&z.HalfLifeC).from("temp"))
	}},
	{Row{Path: PathOf("death-energy")}, func(z *Enzyme) []Cell { return cells(number(&z.DeathJMol)) }},
	{Row{Path: PathOf("pH")}, func(z *Enzyme) []Cell { return cells(number(&z.PHLow), number(&z.PHHigh)) }},
	{Row{Path: PathOf("dose")}, func(z *Enzyme) []Cell { return cells(dosed(&z.DoseLow), dosed(&z.DoseHigh)) }},
}

// caskRows are the figures of a kind of cask.
var caskRows = []row[CaskWood]{
	{Row{Path: PathOf("tree")}, func(k *CaskWood) []Cell { return cells(datum(&k.Tree)) }},
	{Row{Path: PathOf("charred")}, func(k *CaskWood) []Cell { return cells(datum(&k.Charred)) }},
	{Row{Path: PathOf("toasted")}, func(k *CaskWood) []Cell { return cells(datum(&k.Toasted)) }},
	{Row{Path: PathOf("sizes")}, func(k *CaskWood) []Cell { return cells(Cell{ref: &k.SizesM3}) }},
	{Row{Path: PathOf("tare")}, func(k *CaskWood) []Cell { return cells(number(&k.TareKg)) }},
	{Row{Path: PathOf("soak"), Vary: true}, func(k *CaskWood) []Cell { return cells(number(&k.SoakFrac)) }},
}

// varied are the constants of models that are worth a nudge, and what sort of
// number each is; None is nudged by a tenth.
var varied = map[string]map[string]quantity.Kind{
	"mash": {
		"gel-rate": quantity.None, "branched": quantity.None, "alpha-on-starch": quantity.None, "alpha-on-dextrin": quantity.None,
		"beta-on-dextrin": quantity.None, "limit-on-branch": quantity.None, "alpha-half-life": quantity.None, "beta-half-life": quantity.None,
		"limit-half-life": quantity.None, "limit-bound-half-life": quantity.None, "limit-release": quantity.None,
		"closed": quantity.None, "malt-buffer": quantity.None, "raw-buffer": quantity.None, "backset-buffer": quantity.None,
		"water-flow": quantity.None, "grain-flow": quantity.None, "draff-holds": quantity.None,
		"access-raw": quantity.Share, "malt-pH": quantity.PH, "raw-pH": quantity.PH,
	},
	"ferment": {
		"biomass-most": quantity.None, "resting-rate": quantity.None, "glycerol-per-biomass": quantity.None, "heat-glucose": quantity.None,
		"wall-loss": quantity.None, "buffer": quantity.None, "lactic-growth": quantity.None, "lactic-most": quantity.None,
	},
	"cask": {"soak-time": quantity.None, "wood-water": quantity.None, "size-power": quantity.None},
}

// library gathers the figures of what the batch uses of the library besides its
// grains: the enzymes of mash and fermenter, the yeast, the wood, and the models.
func (v *values) library() {
	b, beside := v.batch, v.beside
	for _, z := range b.Enzymes() {
		if beside != nil && slices.Contains(beside.Enzymes(), z) {
			continue
		}
		gather(v, z.owner("enzyme", z.Name), enzymeKinds, enzymeRows, z)
	}
	if y := b.Ferm.Yeast; y != nil && (beside == nil || beside.Ferm.Yeast != y) {
		gather(v, y.owner("yeast", "the yeast"), yeastKinds, yeastRows, y)
	}
	if k := b.Cask.Kind; k != nil && (beside == nil || beside.Cask.Kind != k) {
		gather(v, k.owner("wood", "the wood"), caskKinds, caskRows, k)
	}
	for _, name := range sortedKeys(b.Models) {
		if m := b.Models[name]; beside == nil || beside.Models[name] != m {
			v.model(m)
		}
	}
}

// owner says whose the figures of an entry are. of is what it is called where one
// of its figures is nudged.
func (e *Entry) owner(sort, of string) owner {
	return owner{path: PathLibrary.Child(sort, e.Name), name: e.Name, of: of, where: in(e.Where)}
}

// Enzymes are those of the mash and of the fermenter, each once, by name.
func (b *Batch) Enzymes() []*Enzyme {
	var out []*Enzyme
	add := func(z *Enzyme) {
		if z != nil && !slices.Contains(out, z) {
			out = append(out, z)
		}
	}
	for i := range b.Mash.Steps {
		add(b.Mash.Steps[i].Enzyme)
	}
	for i := range b.Ferm.Doses {
		add(b.Ferm.Doses[i].Enzyme)
	}
	slices.SortStableFunc(out, func(x, y *Enzyme) int { return strings.Compare(x.Name, y.Name) })
	return out
}

// constantRow is the row of a constant that is not nudged.
var constantRow = Row{Maybe: true}

// model gathers the constants of a model.
func (v *values) model(m *Model) {
	o := m.owner("model", "")
	all := make([]Cell, len(m.Values))
	for i, name := range sortedKeys(m.Values) {
		kind, vary := varied[m.Name][name]
		r := &constantRow
		if vary {
			r = &Row{As: strings.ReplaceAll(name, "-", " ") + ", model " + m.Name, Down: kind == quantity.Share, Maybe: true}
		}
		if m.Name == "cask" {
			if words := v.batch.Cask.Climate.fallback(name); words != "" {
				kind, r = quantity.Share, &Row{As: words, Maybe: true}
			}
		}
		all[i] = Cell{Kind: kind, ref: m.Values, key: name}
		v.out = append(v.out, Value{
			Row: r, Path: o.path.Child(name), Name: name, Of: o.name, Words: name, Input: r.As, At: m.Where[name], Cells: all[i : i+1 : i+1],
		})
	}
}

// fallback says what a constant of the cask's model is to a batch whose house does
// not state it: the loss of its climate.
func (c Climate) fallback(name string) string {
	switch {
	case c.LossFirstYear == 0 && name == c.Named+"-"+PathLossFirst.Last():
		return lossFirstYear
	case c.LossYearly == 0 && name == c.Named+"-"+PathLoss.Last():
		return lossYearly
	}
	return ""
}

// What the losses are called where they are nudged, whoever states them.
const (
	lossFirstYear = "loss of the first year"
	lossYearly    = "loss of a later year"
)
