package check

import (
	"newmake/lang/diag"
	"newmake/lang/quantity"
	"newmake/lang/recipe"
	"newmake/lang/schema"
)

// ferment reads the days in the fermenter.
func (b *builder) ferment(n *node) (whole bool) {
	if n == nil {
		return false
	}
	f := &b.batch.Ferm
	f.At = n.at()
	b.places(recipe.PathFerm, n)
	whole = missing(b.diags, n, "the `ferment` block") && n.sound()
	switch named := n.m.all("vessel"); {
	case len(named) > 0:
		for _, c := range named {
			if v := b.vessel(c, recipe.Fermenter, "fermenter"); v != nil {
				f.Vessels = append(f.Vessels, v)
			}
		}
	case !n.bad:
		if b.only(recipe.Fermenter, n, larger) != nil {
			f.Vessels = b.ofKind(recipe.Fermenter)
		}
	}
	whole = whole && len(f.Vessels) > 0
	if l := n.line("pitch"); l != nil {
		whole = b.pitch(l) && whole
	}
	for _, l := range n.all("dose") {
		z, kg, share := b.dose(l)
		if z == nil {
			whole = false
			continue
		}
		b.where(recipe.PathDose.Child(z.Name), l.at())
		f.Doses = append(f.Doses, recipe.Dose{Enzyme: z, MassKg: kg, Share: share, At: l.at()})
	}
	if l := n.line("hold"); l != nil {
		f.HoldLowC, f.HoldHighC = n.span("hold")
		if f.HoldHighC < f.HoldLowC {
			whole = false
			b.add(diag.Diagnostic{
				Code: diag.CodeRangeTurned, Summary: "the range begins above its end", At: l.quantity().at(), Help: "write the lower temperature first",
			})
		}
	}
	if l := n.line("for"); l != nil {
		f.DurationS = l.num("duration")
	}
	if p := b.batch.Plant; p != nil {
		f.AmbientC = p.AmbientC
	}
	return whole
}

// sound says that every line of a block could be read.
func (n *node) sound() bool {
	if n.gaps {
		return false
	}
	for _, l := range n.lines {
		if l.bad {
			return false
		}
	}
	return true
}

func (b *builder) pitch(l *node) bool {
	f := &b.batch.Ferm
	c := l.get("yeast")
	if f.Yeast = b.house.Stock.Yeasts[c.text()]; f.Yeast == nil {
		b.unknown(schema.Yeast, "yeast", c, b.house.known.yeasts)
		return false
	}
	switch q := l.quantity(); {
	case q == nil:
		f.PitchKgM3 = (f.Yeast.PitchLowKgM3 + f.Yeast.PitchHighKgM3) / 2
	case q.kind == quantity.Mass:
		f.PitchKg = q.si
	default:
		f.PitchKgM3 = q.si
	}
	return true
}
