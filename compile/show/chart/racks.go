package chart

import (
	"fmt"
	"math"
	"strings"
)

// Head is the head of a cask as it lies: how full it is, and what is written below it.
type Head struct {
	Name  string
	Below string  // how much is in it; "" where many are drawn
	Full  float64 // share of its size that is spirit, 0 to 1
	State HeadState
}

// HeadState is what of a cask is told by its hatch.
type HeadState uint8

const (
	Resting HeadState = iota
	Ready             // its rest is over
	Leaking
)

// headHatch is how each is drawn; the resting are grey.
var headHatch = map[HeadState]string{Ready: "rising", Leaking: "dense"}

// Rack is the casks that lie in one place, in their order.
type Rack struct {
	Name  string
	Heads []Head
}

// How casks are drawn: large with words below each, or small where there are many.
const (
	manyHeads  = 60
	MostHeads  = 1000 // more are not drawn one by one
	headR      = 27.0
	smallHeadR = 11.0
	rackTop    = 22.0
)

// Racks draws the casks of a house by the places in which they lie, each as full as it is.
// Nothing is drawn of more than MostHeads.
func Racks(all []Rack) Chart {
	return both(func(w float64) Chart { return racks(all, w) })
}

func racks(all []Rack, w float64) Chart {
	n := 0
	for _, r := range all {
		n += len(r.Heads)
	}
	if n == 0 || n > MostHeads {
		return Chart{}
	}
	c := Chart{ID: "chart-racks", Title: "The casks, as full as they are", W: int(w)}
	r, wide, high := headR, 86.0, 2*headR+40
	if n > manyHeads {
		r, wide, high = smallHeadR, 26.9, 2*smallHeadR+6
	}
	per := int(w / wide)
	y := 4.0
	var b strings.Builder
	for _, rack := range all {
		c.text("axis", "start", 2, y+13, shorten(rack.Name, min(80, int(w/glyphW))))
		y += rackTop
		for i, h := range rack.Heads {
			if i > 0 && i%per == 0 {
				y += high
			}
			x := wide*float64(i%per) + wide/2
			c.head(x, y+r, r, h)
			if n <= manyHeads {
				c.text("tick", "middle", x, y+2*r+14, shorten(h.Name, 11))
				c.text("tick", "middle", x, y+2*r+28, h.Below)
			}
		}
		y += high + 6
		fmt.Fprintf(&b, "%s: ", rack.Name)
		for i, h := range rack.Heads {
			if i == 40 {
				fmt.Fprintf(&b, " and %d more", len(rack.Heads)-i)
				break
			}
			if i > 0 {
				b.WriteString(", ")
			}
			fmt.Fprintf(&b, "%s %.0f %% full%s", h.Name, 100*h.Full, map[HeadState]string{Ready: ", rest over", Leaking: ", may leak"}[h.State])
		}
		b.WriteString(". ")
	}
	c.H = int(math.Ceil(y))
	c.Desc = strings.TrimSpace(b.String())
	return c
}

// head draws a cask from its end: spirit up to the level at which a lying cylinder holds
// so much.
func (c *Chart) head(x, y, r float64, h Head) {
	if level := levelOf(h.Full); level > 0 {
		var p pen
		half := math.Acos(1 - 2*level) // from straight down to where the spirit meets the staves
		const steps = 24
		for i := 0; i <= steps; i++ {
			a := -half + 2*half*float64(i)/steps
			if i == 0 {
				p.move(x+r*math.Sin(a), y+r*math.Cos(a))
			} else {
				p.line(x+r*math.Sin(a), y+r*math.Cos(a))
			}
		}
		p.close()
		c.Marks = append(c.Marks, Mark{Shape: "path", Class: map[bool]string{true: "spirit", false: "bar"}[h.State == Resting], D: p.String(), Fill: headHatch[h.State]})
	}
	var p pen
	const sides = 48
	for i := range sides {
		a := 2 * math.Pi * float64(i) / sides
		if i == 0 {
			p.move(x+r*math.Sin(a), y+r*math.Cos(a))
		} else {
			p.line(x+r*math.Sin(a), y+r*math.Cos(a))
		}
	}
	p.close()
	c.path("head", p.String())
}

// levelOf is how high a lying cylinder is filled, as a share of its height, that is full by
// a share of what it holds: found by halving.
func levelOf(full float64) float64 {
	full = min(max(full, 0), 1)
	low, high := 0.0, 1.0
	for range 40 {
		level := (low + high) / 2
		a := math.Acos(1 - 2*level)
		if (a-math.Sin(a)*math.Cos(a))/math.Pi < full {
			low = level
		} else {
			high = level
		}
	}
	if full == 0 {
		return 0
	}
	return (low + high) / 2
}
