package compare

import (
	"fmt"
	"strings"

	"newmake/lang/recipe"
)

func lossWords(s say, c recipe.Climate) string {
	if c.LossYearly == 0 {
		return ""
	}
	return "(loss " + s.share(c.LossYearly) + " a year)"
}

func longer(name string, get func(*recipe.Batch) float64) func(say, *recipe.Batch, *recipe.Batch) string {
	return func(s say, old, new *recipe.Batch) string {
		by := get(new) - get(old)
		if by < 0 {
			return name + " " + s.duration(by) + " shorter"
		}
		return name + " " + s.duration(by) + " longer"
	}
}

// bare is a cut without its place in the text.
func bare(c recipe.Cut) recipe.Cut {
	out := recipe.Cut{By: c.By, Strength: c.Strength, VolumeM3: c.VolumeM3, TempC: c.TempC, Share: c.Share}
	return out
}

func pitch(s say, b *recipe.Batch) string {
	if b.Ferm.PitchKg > 0 {
		return s.mass(b.Ferm.PitchKg)
	}
	return s.conc(b.Ferm.PitchKgM3)
}

// wood is the kind of cask, empty for a batch that goes into none.
func wood(b *recipe.Batch) string {
	if b.Cask.Kind == nil {
		return ""
	}
	return b.Cask.Kind.Name
}

func caskWords(s say, b *recipe.Batch) string {
	c := b.Cask
	if c.Kind == nil {
		return "none"
	}
	words := s.volume(c.SizeM3) + " used "
	if c.New {
		words = s.volume(c.SizeM3) + " new "
	}
	words += wood(b)
	if c.Char > 0 {
		words += fmt.Sprintf(" char %d", c.Char)
	}
	return words
}

func vesselNames(all []*recipe.Vessel) string {
	var out []string
	for _, v := range all {
		out = append(out, v.Name)
	}
	return strings.Join(out, ", ")
}

func promises(b *recipe.Batch) string {
	var out []string
	for _, e := range b.Expect {
		out = append(out, fmt.Sprintf("%s %s %s", e.What, number(e.Value), number(e.Tolerance)))
	}
	return strings.Join(out, "; ")
}
