package chart

import (
	"fmt"
	"time"

	"newmake/compile/measure"
)

// Taken is a reading of a run, to be marked on the picture of its plan.
type Taken struct {
	Of    string    // gravity, temperature, spout, vapour or flow
	Clock time.Time // of a mash
	Hours float64   // of a ferment: since the pitch
	OverL float64   // of a run of a still: out of the spout since the first drop, at 20 C
	Value float64   // as the plan's curve has it: SG, C, % abv, L/h
	Off   bool      // it is not what it should be
}

const (
	crossArm = 4.0
	offArm   = 7.5
)

// read marks a reading: a cross, and a box round it if it is off. It stays within the
// panel, whose range was made for it.
func (p panel) read(x, y float64, off bool) {
	px, py := p.x.at(x), p.y.at(y)
	var d pen
	d.move(px-crossArm, py-crossArm)
	d.line(px+crossArm, py+crossArm)
	d.move(px-crossArm, py+crossArm)
	d.line(px+crossArm, py-crossArm)
	p.c.path("ground", d.String()) // white below it, so that it stands out of a hatch
	p.c.path("taken", d.String())
	if off {
		p.c.area("taken", "", px-offArm, py-offArm, 2*offArm, 2*offArm)
	}
}

// widen makes room for readings in a range.
func widen(low, high float64, taken []Taken, of string, at func(Taken) float64) (float64, float64) {
	for _, t := range taken {
		if t.Of == of {
			low, high = min(low, at(t)), max(high, at(t))
		}
	}
	return low, high
}

// takenDesc says in words what is marked.
func takenDesc(taken []Taken, said func(Taken) string) string {
	out := ""
	for _, t := range taken {
		if s := said(t); s != "" {
			out += " " + s
			if t.Off {
				out += ", not what it should be"
			}
			out += "."
		}
	}
	if out == "" {
		return ""
	}
	return " Read:" + out
}

// takenWords is a reading's quantity and value.
func takenWords(t Taken, u measure.Units) string {
	switch t.Of {
	case "gravity":
		return "gravity " + measure.Gravity(t.Value)
	case "spout":
		return "spout " + u.Abv(t.Value)
	case "flow":
		return fmt.Sprintf("flow %s %s", measure.Number(flow(u, t.Value), 1), flowUnit(u))
	}
	return t.Of + " " + u.Temp(t.Value)
}
