package numbers

import (
	"newmake/compile/stage/mash"
	"newmake/lang/recipe"
)

// Use is a vessel at its fullest.
type Use struct {
	Vessel *recipe.Vessel
	Stage  string // mash, ferment, strip or spirit
	MostM3 float64
}

// MashUse is the cooker.
func MashUse(b *recipe.Batch, r mash.Result) Use { return Use{b.Mash.Cooker, "mash", r.MostVolumeM3} }

// Use is the fermenter.
func (f Ferment) Use() Use { return Use{f.Vessel, "ferment", f.WortM3} }

// Use is the wash still.
func (s Strip) Use(b *recipe.Batch) Use {
	return Use{b.Strip.Still, "strip", s.MostFill * b.Strip.Still.HoldsM3}
}

// Use is the spirit still.
func (s Spirit) Use(b *recipe.Batch) Use {
	return Use{b.Spirit.Still, "spirit", s.MostFill * b.Spirit.Still.HoldsM3}
}

// Uses is the vessels that a batch goes through, in order.
func (n *Batch) Uses() []Use {
	return []Use{MashUse(n.Batch, n.Mashed), n.Fermented.Use(), n.Stripped.Use(n.Batch), n.Distilled.Use(n.Batch)}
}

// FillMost is the greatest fill of a vessel, as a share of what it holds: the
// house's own figure, or what is common practice. A cooker keeps a hand's
// breadth, a fermenter room for the head of foam, a still room for a wash that
// rises: two thirds to three quarters with grain in it.
func FillMost(v *recipe.Vessel) float64 {
	if v.FillMost > 0 {
		return v.FillMost
	}
	switch v.Kind {
	case recipe.Cooker:
		return 0.95
	case recipe.Fermenter:
		return 0.90
	default:
		return 0.75
	}
}
