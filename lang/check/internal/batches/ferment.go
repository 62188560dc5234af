package batches

import (
	"newmake/lang/diag"
	"newmake/lang/quantity"
	"newmake/lang/recipe"
	"newmake/lang/schema"
	"newmake/lang/tree"
)

// readFerment reads the days in the fermenter.
func readFerment(b *reader, n *tree.Node) (f recipe.Ferment, whole bool) {
	if n == nil {
		return f, false
	}
	f.At = n.At()
	b.places(recipe.PathFerm, n)
	whole = tree.Missing(b.diags, n, "the `ferment` block") && n.Sound()
	switch named := n.Match.All("vessel"); {
	case len(named) > 0:
		for _, c := range named {
			if v := findVessel(b, c, recipe.Fermenter, "fermenter"); v != nil {
				f.Vessels = append(f.Vessels, v)
			}
		}
	case !n.Bad:
		if onlyVessel(b, recipe.Fermenter, n, larger) != nil {
			f.Vessels = vesselsOf(b, recipe.Fermenter)
		}
	}
	whole = whole && len(f.Vessels) > 0
	if l := n.Line("pitch"); l != nil {
		whole = readPitch(b, l, &f) && whole
	}
	for _, l := range n.All("dose") {
		z, kg, share := readDose(b, l)
		if z == nil {
			whole = false
			continue
		}
		b.where(recipe.PathDose.Child(z.Name), l.At())
		f.Doses = append(f.Doses, recipe.Dose{Enzyme: z, MassKg: kg, Share: share, At: l.At()})
	}
	whole = readFeeding(b, n, &f) && whole
	if p := b.batch.Plant; p != nil {
		f.AmbientC = p.AmbientC
	}
	return f, whole
}

// readFeeding reads what the yeast is given besides wort.
func readFeeding(b *reader, n *tree.Node, f *recipe.Ferment) bool {
	if n.Line("rehydrate") != nil {
		f.Rehydrate.DurationS = 20 * 60
	}
	if c := n.Line("nutrient").Get("urea"); c != nil {
		b.add(diag.Diagnostic{
			Code: diag.CodeUrea, Summary: "urea may not feed a ferment that is drunk", At: c.At(),
			Help:   "write `nutrient dap` in its place: diammonium phosphate",
			Reason: "yeast leaves some of it, which becomes ethyl carbamate, a carcinogen, in the hot still and the cask",
		})
		return false
	}
	return true
}

// readPitch reads which yeast, and how much of it.
func readPitch(b *reader, l *tree.Node, f *recipe.Ferment) bool {
	c := l.Get("yeast")
	if f.Yeast = named[recipe.Yeast](b, schema.Yeast, c.Text()); f.Yeast == nil {
		b.unknown(schema.Yeast, "yeast", c, b.entries(schema.Yeast))
		return false
	}
	f.AsItFills = l.Has("fills")
	switch q := l.Quantity(); {
	case q == nil:
		f.PitchKgM3 = (f.Yeast.PitchLowKgM3 + f.Yeast.PitchHighKgM3) / 2
	case q.Kind == quantity.Mass:
		f.PitchKg = q.SI
	default:
		f.PitchKgM3 = q.SI
	}
	return true
}
