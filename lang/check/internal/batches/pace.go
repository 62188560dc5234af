package batches

import (
	"newmake/lang/quantity"
	"newmake/lang/recipe"
	"newmake/lang/tree"
)

// The paces of a batch that states none. Foreshots of 15 to 20 min are common
// practice, hearts of 2.5 to 3 h after gentle foreshots are those of Nicol in
// Russell (ed.), Whisky: Technology, Production and Marketing (2003), ch. 5. The
// times are those of large stills and small: heat is put in by the litre of charge
// (common practice), and so what comes over in an hour grows with the charge. In a
// small still of the same shape the run is even gentler: its vapour rises more slowly, as
// the cube root of the charge.
const (
	foreshotsS = 15 * 60.0
	heartsS    = 2.5 * quantity.HourS
)

// readPace reads how fast the fractions are brought over.
func readPace(b *reader, n *tree.Node) recipe.Pace {
	p := recipe.Pace{
		Foreshots: recipe.FractionPace{OverS: foreshotsS}, Hearts: recipe.FractionPace{OverS: heartsS}, Tails: recipe.FractionPace{Full: true},
	}
	if n == nil {
		return p
	}
	b.places(recipe.PathPace, n)
	for _, f := range []struct {
		name string
		pace *recipe.FractionPace
	}{{"foreshots", &p.Foreshots}, {"heads", &p.Heads}, {"hearts", &p.Hearts}, {"tails", &p.Tails}} {
		if l := n.Line(f.name); l != nil && !l.Bad {
			*f.pace = paceOn(l)
		}
	}
	return p
}

func paceOn(l *tree.Node) recipe.FractionPace {
	return recipe.FractionPace{OverS: l.Num("duration"), FlowM3S: l.Num("flow"), PowerW: l.Num("power"), Full: l.Has("full")}
}
