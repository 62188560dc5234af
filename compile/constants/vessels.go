package constants

import (
	"newmake/compile/numbers"
	"newmake/lang/recipe"
)

// vesselPath is the line of a vessel.
func vesselPath(v *recipe.Vessel, line string) recipe.Path {
	return recipe.PathPlant.Child(v.Name, line)
}

func cookerHeat(_ *row, b *recipe.Batch) []use {
	v := b.Mash.Cooker
	if v == nil || v.HeatsW <= 0 {
		return nil
	}
	return []use{{
		of: v.Name, is: 1, sure: ofVessel(v, "heats", v.HeatsW), paths: []recipe.Path{vesselPath(v, "heats")},
		set: func(b *recipe.Batch, x float64) { b.Mash.Cooker.HeatsW *= x },
	}}
}

// cool scales the cooling of a vessel: of a surface, its area, which does what its
// coefficient of heat transfer does, and stands there where that is the model's.
func cool(v *recipe.Vessel, x float64) {
	v.CoolsW *= x
	v.Cooler.AreaM2 *= x
}

func cookerCooling(_ *row, b *recipe.Batch) []use {
	v := b.Mash.Cooker
	if v == nil || !v.HasCooling() {
		return nil
	}
	return []use{{
		of: v.Name, is: 1, paths: []recipe.Path{vesselPath(v, "cools")},
		set: func(b *recipe.Batch, x float64) { cool(b.Mash.Cooker, x) },
	}}
}

// fermenterCooling is one constant of all the fermenters that a batch may go into:
// they are alike in most houses, and one batch finds but one of them.
func fermenterCooling(_ *row, b *recipe.Batch) []use {
	var paths []recipe.Path
	for _, v := range b.Ferm.Vessels {
		if v.HasCooling() && v != b.Mash.Cooker {
			paths = append(paths, vesselPath(v, "cools"))
		}
	}
	if paths == nil {
		return nil
	}
	return []use{{is: 1, paths: paths, set: func(b *recipe.Batch, x float64) {
		for _, v := range b.Ferm.Vessels {
			if v != b.Mash.Cooker {
				cool(v, x)
			}
		}
	}}}
}

// stillUse is a still by its use.
type stillUse struct {
	words string
	stage numbers.Stage
	in    func(*recipe.Batch) *recipe.Vessel
}

// stills are those of a batch; one, where both runs are made in it.
func stills(b *recipe.Batch) []stillUse {
	wash := stillUse{"the wash still", numbers.Stripping, func(b *recipe.Batch) *recipe.Vessel { return b.Strip.Still }}
	spirit := stillUse{"the spirit still", numbers.Distilling, func(b *recipe.Batch) *recipe.Vessel { return b.Spirit.Still }}
	switch {
	case b.Strip.Still == nil && b.Spirit.Still == nil:
		return nil
	case b.Spirit.Still == nil:
		return []stillUse{wash}
	case b.Strip.Still == nil:
		return []stillUse{spirit}
	case b.Strip.Still == b.Spirit.Still:
		wash.words = "the still"
		return []stillUse{wash}
	}
	return []stillUse{wash, spirit}
}

func stillHeat(_ *row, b *recipe.Batch) []use {
	var out []use
	for _, s := range stills(b) {
		v := s.in(b)
		if v.HeatsW <= 0 {
			continue
		}
		out = append(out, use{
			of: v.Name, words: "heating of " + s.words, stage: s.stage, is: 1, sure: ofVessel(v, "heats", v.HeatsW), paths: []recipe.Path{vesselPath(v, "heats")},
			set: func(b *recipe.Batch, x float64) { s.in(b).HeatsW *= x },
		})
	}
	return out
}

func reflux(r *row, b *recipe.Batch) []use {
	var out []use
	for _, s := range stills(b) {
		v := s.in(b)
		out = append(out, use{
			of: v.Name, words: "reflux of " + s.words, stage: s.stage, is: v.Reflux, sure: ofVessel(v, "reflux", v.Reflux),
			prior: &Prior{Shape: r.shape, Mean: v.Reflux, SD: 0.01 + 0.4*v.Reflux, Low: r.low, High: r.high},
			paths: []recipe.Path{vesselPath(v, "reflux")},
			set:   func(b *recipe.Batch, x float64) { s.in(b).Reflux = x },
		})
	}
	return out
}

// usuallyLost is the likeliest share of a run's alcohol that a still loses if its house
// states none (common practice). A plan takes such a still as tight, and so do its bands,
// which belong to the same run; learning from runs starts here.
const usuallyLost = 0.01

func alcoholLost(r *row, b *recipe.Batch) []use {
	var paths []recipe.Path
	written, of := 0.0, stills(b)
	var sure *stated
	for _, s := range of {
		if v := s.in(b); sure == nil {
			sure = ofVessel(v, "alcohol-lost", v.LostFrac)
		}
		paths = append(paths, vesselPath(s.in(b), "alcohol-lost"))
		written = max(written, s.in(b).LostFrac)
	}
	if of == nil {
		return nil
	}
	mean := written
	if mean == 0 {
		mean = usuallyLost
	}
	return []use{{
		is: written, paths: paths, sure: sure, unsaid: written == 0,
		prior: &Prior{Shape: r.shape, Mean: mean, SD: r.sd, Low: r.low, High: r.high},
		set: func(b *recipe.Batch, x float64) {
			for _, s := range of {
				s.in(b).LostFrac = x
			}
		},
	}}
}
