package batches

import (
	"math"

	"newmake/lang/check/internal/fields"
	"newmake/lang/diag"
	"newmake/lang/quantity"
	"newmake/lang/recipe"
	"newmake/lang/tree"
)

// readStrip reads the stripping run.
func readStrip(b *reader, n *tree.Node) (s recipe.Strip, whole bool) {
	if n == nil {
		return s, false
	}
	s.At = n.At()
	b.places(recipe.PathStrip, n)
	s.Still = findStill(b, n, larger)
	s.Charges = readCharges(b, n)
	if l := n.Line("heat-up"); l != nil && !l.Bad {
		s.HeatUp = recipe.HeatUp{OverS: l.Num("duration"), RateKS: l.Num("warming"), PowerW: l.Num("power")}
	}
	s.StopAt = recipe.Strength{Value: 0.01}
	if n.Line("stop") != nil {
		s.StopAt = fields.StrengthOn(n, "stop")
	}
	s.Pace = recipe.FractionPace{Full: true}
	if l := n.Line("pace"); l != nil && !l.Bad {
		s.Pace = paceOn(l)
	}
	return s, !n.Bad && n.Sound() && s.Still != nil
}

func findStill(b *reader, n *tree.Node, better func(a, b *recipe.Vessel) bool) *recipe.Vessel {
	if c := n.Get("vessel"); c != nil {
		return findVessel(b, c, recipe.Still, "still")
	} else if n.Bad {
		return nil
	}
	return onlyVessel(b, recipe.Still, n, better)
}

func readCharges(b *reader, n *tree.Node) int {
	c := n.SIOr("charges", 1)
	if c != math.Trunc(c) {
		b.add(diag.Diagnostic{
			Code: diag.CodeWholeNumber, Summary: "charges are counted in whole numbers", At: n.Line("charges").At(), Help: "write 1, 2, 3 ...",
		})
	}
	return max(1, int(c))
}

// readSpirit reads the second run.
func readSpirit(b *reader, n *tree.Node) (s recipe.Spirit, whole bool) {
	if n == nil {
		return s, false
	}
	s.At = n.At()
	b.places(recipe.PathSpirit, n)
	s.Still = findStill(b, n, smaller)
	s.Charges = readCharges(b, n)
	s.Feints = n.Line("charge").Has("feints")
	if c := n.Line("charge").Get("strength"); c != nil {
		s.WaterTo = fields.Strength(c)
	}
	s.Pace = readPace(b, n.Line("pace"))
	s.Stop = recipe.Strength{Value: 0.01}
	if n.Line("stop") != nil {
		s.Stop = fields.StrengthOn(n, "stop")
	}
	whole = n.Sound() && tree.Missing(b.diags, n, "the `spirit` block") && s.Still != nil
	if l := n.Line("hearts"); l != nil {
		s.HeartsFrom, s.HeartsTo = cut(l.Get("cut-from")), cut(l.Get("cut-to"))
		b.where(recipe.PathHeartsFrom, s.HeartsFrom.At)
		b.where(recipe.PathHeartsTo, s.HeartsTo.At)
	}
	return s, whole
}

func cut(c *tree.Capture) recipe.Cut {
	out := recipe.Cut{At: c.At()}
	switch c.Kind {
	case quantity.Strength:
		out.By, out.Strength = recipe.ByStrength, fields.Strength(c)
	case quantity.Volume:
		out.By, out.VolumeM3 = recipe.ByVolume, c.SI
	case quantity.Temperature:
		out.By, out.TempC = recipe.ByVapourTemp, c.SI
	case quantity.Share:
		out.By, out.Share = recipe.ByShare, c.SI
	case quantity.Duration:
		out.By, out.TimeS = recipe.ByTime, c.SI
	}
	return out
}
