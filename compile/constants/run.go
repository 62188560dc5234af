package constants

import (
	"slices"

	"newmake/compile/stage/still"
	"newmake/lang/recipe"
)

// grains are those of a batch, each once, in the order of the bill.
func grains(b *recipe.Batch) []*recipe.Grain {
	var out []*recipe.Grain
	for _, l := range b.Bill.Lines {
		if !slices.Contains(out, l.Grain) {
			out = append(out, l.Grain)
		}
	}
	return out
}

// ofGrains makes a use of every grain of the bill that a constant is of. put changes
// the grain in a batch that is its own.
func ofGrains(b *recipe.Batch, is float64, lines []string, has func(*recipe.Grain) bool, put func(g *recipe.Grain, x float64)) []use {
	var out []use
	for i, g := range grains(b) {
		if !has(g) {
			continue
		}
		var paths []recipe.Path
		for _, line := range lines {
			paths = append(paths, recipe.PathLibrary.Child("grain", g.Name, line))
		}
		out = append(out, use{
			of: g.Name, is: is, paths: paths,
			set: func(b *recipe.Batch, x float64) { put(grains(b)[i], x) },
		})
	}
	return out
}

func lotStarch(r *row, b *recipe.Batch) []use {
	out := ofGrains(b, 1, []string{"starch", "extract"}, func(g *recipe.Grain) bool { return g.Starch > 0 }, func(g *recipe.Grain, x float64) {
		more := g.Starch * (x - 1)
		g.Starch += more
		if g.Extract > 0 {
			g.Extract += more * sugarPerStarch
		}
	})
	for i, g := range slices.DeleteFunc(grains(b), func(g *recipe.Grain) bool { return g.Starch <= 0 }) {
		out[i].words = "starch of the " + g.Name
		out[i].sure = ofEntry(&g.Entry, "starch", g.Starch)
		if g.Extract <= 0 {
			out[i].paths = out[i].paths[:1]
		}
		out[i].prior = &Prior{Shape: r.shape, Mean: 1, SD: r.sd, Low: r.low, High: min(r.high, (1-g.Sugars-g.Solubles)/g.Starch)}
	}
	return out
}

// sugarPerStarch is how much extract comes of starch, that takes up water as it turns
// to sugar, as maltose for the most part: see the library's malts.
const sugarPerStarch = 1.057

func lotMoisture(r *row, b *recipe.Batch) []use {
	all := func(*recipe.Grain) bool { return true }
	out := ofGrains(b, 0, []string{"moisture"}, all, func(g *recipe.Grain, x float64) { g.Moisture += x })
	for i, g := range grains(b) {
		out[i].words = "moisture of the " + g.Name
		out[i].sure = ofEntry(&g.Entry, "moisture", g.Moisture)
		out[i].prior = &Prior{Shape: r.shape, SD: r.sd, Low: max(r.low, -g.Moisture), High: r.high}
	}
	return out
}

func lotEnzymes(_ *row, b *recipe.Batch) []use {
	malt := func(g *recipe.Grain) bool { return g.LintnerPower > 0 || g.AlphaDU > 0 }
	out := ofGrains(b, 1, []string{"power", "alpha"}, malt, func(g *recipe.Grain, x float64) {
		g.LintnerPower *= x
		g.AlphaDU *= x
	})
	for i, g := range slices.DeleteFunc(grains(b), func(g *recipe.Grain) bool { return !malt(g) }) {
		out[i].words = "enzymes of the " + g.Name
		out[i].sure = ofEntry(&g.Entry, "power", g.LintnerPower)
	}
	return out
}

func weighing(_ *row, b *recipe.Batch) []use {
	paths := []recipe.Path{recipe.PathBill}
	for _, l := range b.Bill.Lines {
		paths = append(paths, recipe.PathBill.Child(l.Grain.Name))
	}
	return []use{{is: 1, paths: paths, set: func(b *recipe.Batch, x float64) {
		b.Bill.TotalKg *= x
		for i := range b.Bill.Lines {
			b.Bill.Lines[i].MassKg *= x
		}
	}}}
}

func liquor(_ *row, b *recipe.Batch) []use {
	var paths []recipe.Path
	for _, s := range b.Mash.Steps {
		if s.Verb == recipe.MashWater {
			paths = append(paths, s.Path.Child("volume"))
		}
	}
	if paths == nil {
		return nil
	}
	return []use{{is: 1, paths: paths, set: func(b *recipe.Batch, x float64) {
		for i := range b.Mash.Steps {
			if s := &b.Mash.Steps[i]; s.Verb == recipe.MashWater {
				s.VolumeM3 *= x
			}
		}
	}}}
}

func backsetAcidity(_ *row, b *recipe.Batch) []use {
	has := slices.ContainsFunc(b.Mash.Steps, func(s recipe.MashStep) bool { return s.Verb == recipe.MashBackset })
	if !has || b.Models["mash"] == nil {
		return nil
	}
	if b.Mash.BacksetPH == 0 {
		return []use{{
			paths: []recipe.Path{recipe.PathLibrary.Child("model", "mash", "backset-pH")},
			set:   func(b *recipe.Batch, x float64) { b.Models["mash"].Values["backset-pH"] += x },
		}}
	}
	return []use{{paths: []recipe.Path{recipe.PathBacksetPH}, set: func(b *recipe.Batch, x float64) { b.Mash.BacksetPH += x }}}
}

func supply(*row, *recipe.Batch) []use {
	return []use{{paths: []recipe.Path{recipe.PathWater}, set: func(b *recipe.Batch, x float64) {
		b.Plant.WaterC += x
		if b.Plant.WarmestIn != 0 {
			b.Plant.WarmestC += x
		}
	}}}
}

func room(*row, *recipe.Batch) []use {
	return []use{{paths: []recipe.Path{recipe.PathAmbient}, set: func(b *recipe.Batch, x float64) {
		b.Plant.AmbientC += x
		b.Ferm.AmbientC += x
	}}}
}

// steam is the heating of each vessel again, as it is on the day.
func steam(r *row, b *recipe.Batch) []use {
	out := cookerHeat(r, b)
	for i := range out {
		out[i].words = "heating of the cooker on the day"
		out[i].as = Constant{ID: "cooker-heat", Of: out[i].of}.Key()
	}
	for _, u := range stillHeat(r, b) {
		u.words += " on the day"
		u.as = Constant{ID: "still-heat", Of: u.of}.Key()
		out = append(out, u)
	}
	for i := range out {
		out[i].sure = nil // that is the house's
	}
	return out
}

// refluxOfDay is the reflux of each still again, as it is on the day.
func refluxOfDay(_ *row, b *recipe.Batch) []use {
	var out []use
	for _, s := range stills(b) {
		v := s.in(b)
		if v.Reflux <= 0 {
			continue
		}
		out = append(out, use{
			of: v.Name, words: "reflux of " + s.words + " on the day", stage: s.stage, is: 1, as: Constant{ID: "reflux", Of: v.Name}.Key(),
			paths: []recipe.Path{vesselPath(v, "reflux")},
			set:   func(b *recipe.Batch, x float64) { s.in(b).Reflux = min(x*s.in(b).Reflux, still.MostReflux) },
		})
	}
	return out
}

// handAtCut is how far the cuts of the hearts fall from where they are written.
func handAtCut(*row, *recipe.Batch) []use {
	from := use{
		of: "hearts from", words: "where the hearts begin", is: 1, paths: []recipe.Path{recipe.PathHeartsFrom},
		set: func(b *recipe.Batch, x float64) { move(&b.Spirit.HeartsFrom, x) },
	}
	to := use{
		of: "hearts to", words: "where the hearts end", is: 1, paths: []recipe.Path{recipe.PathHeartsTo},
		set: func(b *recipe.Batch, x float64) { move(&b.Spirit.HeartsTo, x) },
	}
	return []use{from, to}
}

// vapourK is how much of a degree of vapour a hand misses by, for a factor of one: at
// a hundredth, a third of a degree.
const vapourK = 30

// move moves a cut.
func move(c *recipe.Cut, x float64) {
	switch c.By {
	case recipe.ByStrength:
		c.Strength.Value *= x
	case recipe.ByVolume:
		c.VolumeM3 *= x
	case recipe.ByVapourTemp:
		c.TempC += vapourK * (1 - x)
	case recipe.ByTime:
		c.TimeS *= x
	default:
		c.Share *= x
	}
}

// instrument has no way into a recipe.
func instrument(r *row, _ *recipe.Batch) []use {
	if r.form == Times {
		return []use{{is: 1}}
	}
	return []use{{}}
}
