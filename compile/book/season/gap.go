package season

import (
	"newmake/compile/book/season/search"
	"newmake/lang/recipe"
)

// boundRounds is how often the prices of the bound are moved.
const boundRounds = 800

// What can set the limit of a season.
const (
	ByDemand = "demand" // there is no more that is asked for
	ByCrew   = "crew"
	ByBoiler = "boiler"
)

// gap says how many of the wanted batches any plan can have.
func (s *solver) gap() Gap {
	g := Gap{By: ByDemand}
	all := 0
	for j, w := range s.list {
		if w.done != nil {
			continue
		}
		all++
		if s.inTime(j) {
			g.Met++
		}
	}
	g.Most = all
	if g.Met < all {
		limit := search.Bound(&s.built.Problem, g.Met, boundRounds)
		g.Most = max(limit.Most, g.Met)
		if len(limit.By) > 0 {
			g.By = s.kindOfResource(limit.By[0])
		}
	}
	if s.best {
		g.Most = g.Met
	}
	g.Most += s.open
	g.Proved = g.Met == g.Most
	if g.Most > 0 {
		g.Share = to(float64(g.Most-g.Met)/float64(g.Most), 3)
	}
	return g
}

// kindOfResource is the word for what a resource is: of several fermenters all of them.
func (s *solution) kindOfResource(r int) string {
	switch name := s.built.names[r]; name {
	case crewName:
		return ByCrew
	case boilerName:
		return ByBoiler
	default:
		for _, v := range s.Plant.Vessels {
			if v.Name == name && v.Kind == recipe.Fermenter {
				return v.Kind.String()
			}
		}
		return name
	}
}

// inTime says that a want is placed, and done by its day.
func (s *solution) inTime(j int) bool {
	w := s.list[j]
	return s.placed.Present[j] && (w.due == 0 || s.filledBy(j, w.due))
}
