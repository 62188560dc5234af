package constants

import (
	"math"

	"newmake/lang/recipe"
)

// Of the starch, what the mill and the cook reach; of the sugar that is not built into
// yeast and glycerol, what becomes ethanol. No reading of a run tells the one from the
// other, but their product makes the spirit: so the product is one constant, and each
// has of it in proportion to how uncertain it is by itself, which is the likeliest
// pair of figures with that product.
//
// These deviations hold where the library's lines state no range.
const (
	accessRawSD    = 0.02  // of 96.5 %: corn coarse to fine grind is 93 to 100 %, The Alcohol Textbook 4th ed. (2003) Table 2
	accessMaltSD   = 0.01  // of 98 %: fine and coarse grind differ by at most 2 %, common practice
	ethanolYieldSD = 0.015 // of 97 %: tuned, judged by the spread of whole ferments, 86 to 92 % of theory (common practice)
)

func yieldEfficiency(r *row, b *recipe.Batch) []use {
	m, y := b.Models["mash"], b.Ferm.Yeast
	if m == nil || y == nil || !(y.EthanolYield > 0) {
		return nil
	}
	name, accessSD := "access-malt", accessMaltSD
	for _, l := range b.Bill.Lines {
		if !l.Grain.Malted {
			name, accessSD = "access-raw", accessRawSD
		}
	}
	access := m.Values[name]
	if !(access > 0) {
		return nil
	}
	if s := ofEntry(&m.Entry, name, access); s != nil {
		accessSD = s.sd
	}
	yieldSD := ethanolYieldSD
	if s := ofEntry(&y.Entry, "ethanol-yield", y.EthanolYield); s != nil {
		yieldSD = s.sd
	}
	ofAccess, ofYield := square(accessSD/access), square(yieldSD/y.EthanolYield)
	part := ofAccess / (ofAccess + ofYield)
	high := min(math.Pow(1/access, 1/part), math.Pow(1/y.EthanolYield, 1/(1-part)))
	return []use{{
		is:    1,
		prior: &Prior{Shape: r.shape, Mean: 1, SD: math.Sqrt(ofAccess + ofYield), Low: r.low, High: high},
		paths: []recipe.Path{
			recipe.PathLibrary.Child("yeast", y.Name, "ethanol-yield"),
			recipe.PathLibrary.Child("model", "mash", "access-malt"), recipe.PathLibrary.Child("model", "mash", "access-raw"),
		},
		set: func(b *recipe.Batch, x float64) {
			b.Ferm.Yeast.EthanolYield *= math.Pow(x, 1-part)
			reached := math.Pow(x, part)
			for _, name := range []string{"access-malt", "access-raw"} {
				v := b.Models["mash"].Values
				v[name] = min(1, v[name]*reached)
			}
		},
	}}
}

func square(x float64) float64 { return x * x }
