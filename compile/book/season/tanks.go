package season

import (
	"slices"

	"newmake/compile/matter/stream"
	"newmake/lang/recipe"
	"newmake/lang/sorting"
)

// tankLevels are the feints by their tanks, and of low wines and hearts what waits.
func (s *answer) tankLevels() []TankLevel {
	out := []TankLevel{}
	add := func(name, holds string, ofM3 float64, levels []level) {
		if len(levels) == 0 {
			return
		}
		sorting.Stable(levels, func(a, b level) int { return a.at - b.at })
		t := TankLevel{Tank: name, Holds: holds, OfL: to(litres(ofM3), 1)}
		for _, l := range levels {
			by := FromOpening
			if l.run >= 0 {
				by = s.number[l.run]
			}
			t.Levels = append(t.Levels, Level{At: s.axis.stamp(l.at), L: to(litres(l.m3), 1), By: by})
			t.MostL = max(t.MostL, to(litres(l.m3), 1))
		}
		t.Over = ofM3 > 0 && t.MostL > t.OfL+0.05
		out = append(out, t)
	}
	var names []string
	for name := range s.flows.feints {
		names = append(names, name)
	}
	slices.Sort(names)
	for _, name := range names {
		holds := 0.0
		for _, t := range s.Plant.Tanks {
			if t.Name == name {
				holds = t.HoldsM3
			}
		}
		add(name, "feints", holds, s.flows.feints[name])
	}
	for _, t := range s.Plant.Tanks {
		for _, of := range []recipe.Contents{recipe.OfLowWines, recipe.OfSpirit} {
			if t.For&of == 0 {
				continue
			}
			var levels []level
			for i, j := range s.order {
				for _, h := range s.built.Jobs[j].Holds {
					hold := s.built.Holds[h]
					at := int(hold.Of)
					if hold.Of < 0 {
						at = s.placed.Chosen[^hold.Of]
					}
					f := s.flows.runs[i]
					if s.built.names[at] != t.Name || f.err != nil || s.holdIs(j, hold) != of {
						continue
					}
					m3 := volume(f.n.Stripped.LowWines)
					if of == recipe.OfSpirit {
						m3 = hearts(f.n)
					}
					levels = append(levels, level{s.placed.Start[hold.From] + hold.FromTime, m3, i}, level{s.placed.Start[hold.To] + hold.ToTime, 0, i})
				}
			}
			add(t.Name, of.String(), t.HoldsM3, levels)
		}
	}
	return out
}

func (s *answer) left() []LeftOver {
	var out []LeftOver
	add := func(what string, of map[string]stream.Stream) {
		var names []string
		for name := range of {
			names = append(names, name)
		}
		slices.Sort(names)
		for _, name := range names {
			if l := rounded(of[name]); l.VolumeL >= litres(leastLeftM3) {
				out = append(out, LeftOver{What: what, Of: name, Lot: l})
			}
		}
	}
	add("feints", s.flows.left)
	add("spirit", s.flows.spirit)
	return out
}
