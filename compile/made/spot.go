package made

import (
	"math"
	"sort"

	"newmake/compile/lot"
	"newmake/compile/matter/stream"
	"newmake/compile/numbers"
	"newmake/compile/stage/ferment"
	"newmake/compile/stage/mash"
	"newmake/compile/stage/still"
	"newmake/lang/record"
)

// Spot is a place and a moment of a run at which something is read, or how long something
// took.
type Spot struct {
	Stage record.StageName
	// Step is the recipe's step of a mash, from 0.
	Step int
	// Of is the fraction of a still's run; "" is the charge.
	Of   string
	What record.What
	Kind Moment
	// From and To are the charges of a still, from 1, that it is of; 0: all of them.
	From, To int
	// AfterS is how long after the pitch, or after the first drop.
	AfterS float64
	// OverM3 is how much has come over when a spout is read, in the receivers since the
	// first drop, at 20 C; it goes before AfterS where it is above 0.
	OverM3 float64
}

// feints are heads and tails together.
const feints = "feints"

// Moment is what a spot is a moment of.
type Moment uint8

// Kinds of spots.
const (
	AtEnd     Moment = iota // of a step, a fraction, a run; of a lot when it is gauged
	Within                  // AfterS, or OverM3, into it
	HowLong                 // the spot is a duration, in s
	FirstDrop               // of a still: when, or what is read then
)

// Says is what a model says at a spot: temperatures in C, volumes in m3 at 20 C, strengths as the
// fraction by volume at 20 C, gravity as a hydrometer's at 20 C, durations in s. It is not ok where
// the run does not come to that.
func (s Spot) Says(n *numbers.Batch) (float64, bool) { return s.says(n, beyond) }

// SaysAtEnd is what Says is; of a moment that the run does not come to, what it says at its end.
func (s Spot) SaysAtEnd(n *numbers.Batch) (float64, bool) { return s.says(n, math.Inf(1)) }

// says takes a moment for the end that comes up to so many times later.
func (s Spot) says(n *numbers.Batch, beyond float64) (float64, bool) {
	switch s.Stage {
	case record.Mash:
		return s.inMash(n.Mashed)
	case record.Ferment:
		return s.inFerment(n, beyond)
	case record.Strip:
		return s.inStill(still.LowWines, n.Stripped.LowWines, max(n.Stripped.Charges, 1), n.Stripped.ChargeRun, beyond)
	case record.Spirit:
		return s.inStill(still.Hearts, n.Distilled.Hearts, max(n.Distilled.Charges, 1), n.Distilled.ChargeRun, beyond)
	}
	return 0, false
}

func (s Spot) inMash(r mash.Result) (float64, bool) {
	if s.Step < 0 || s.Step >= len(r.Steps) {
		return 0, false
	}
	step := r.Steps[s.Step]
	switch {
	case s.Kind == HowLong:
		return step.EndS - step.StartS, true
	case s.What == record.Temperature:
		return step.EndC, true
	case s.What == record.PH:
		return step.PH, step.PH > 0
	case s.What == record.Volume:
		return step.VolumeM3, true
	case s.What == record.Gravity && s.Step == len(r.Steps)-1:
		return r.HydrometerSG, true
	}
	return 0, false
}

func (s Spot) inFerment(n *numbers.Batch, beyond float64) (float64, bool) {
	curve := n.Fermented.Curve
	if s.What == record.Volume {
		return n.Mashed.Out.VolumeAtM3(lot.ReferenceC), true
	}
	if len(curve) == 0 {
		return 0, false
	}
	at := s.AfterS
	if s.Kind == AtEnd {
		at = curve[len(curve)-1].TimeS
	}
	if at > beyond*curve[len(curve)-1].TimeS {
		return 0, false
	}
	p := between(curve, func(p ferment.Point) float64 { return p.TimeS }, at)
	switch s.What {
	case record.Gravity:
		return p(func(p ferment.Point) float64 { return p.SG }), true
	case record.Temperature:
		return p(func(p ferment.Point) float64 { return p.TempC }), true
	case record.PH:
		return p(func(p ferment.Point) float64 { return p.PH }), true
	}
	return 0, false
}

// inStill is what a still's charges say: kept is what comes of all of them together, of the
// fraction that they are run for.
func (s Spot) inStill(keeps string, kept stream.Stream, charges int, run func(int) still.Run, beyond float64) (float64, bool) {
	from, to := s.From, s.To
	if to == 0 {
		from, to = 1, charges
	}
	if to > charges {
		return 0, false
	}
	r := run(from - 1)
	f := r.Fraction(s.Of)
	all := s.in(r)
	if s.Of == keeps && to-from+1 == charges {
		all = kept
	} else {
		for i := from; i < to; i++ {
			all = all.Plus(s.in(run(i)))
		}
	}
	switch {
	case s.Kind == HowLong && s.Of == "":
		return r.DurationS, r.DurationS > 0
	case s.Kind == HowLong:
		return f.EndS - f.StartS, f.EndS > f.StartS
	case s.Kind == FirstDrop && s.What == "":
		return r.HeatUpS, len(r.Curve) > 0
	case s.What == record.Spout && s.Kind == AtEnd:
		return f.EndABV, f.EndS > f.StartS
	case s.What == record.Volume, s.What == record.Receiver && s.Kind == AtEnd:
		return all.VolumeAtM3(lot.ReferenceC), all.MassKg() > 0
	case s.What == record.Strength:
		return all.ABV(), all.MassKg() > 0
	}
	return s.onCurve(r.Curve, beyond)
}

// in is the stream of a charge that it is read of.
func (s Spot) in(r still.Run) stream.Stream {
	switch s.Of {
	case "":
		return r.Charge
	case feints:
		return r.Feints()
	}
	return r.Fraction(s.Of).Stream
}

// beyond is by how much a run may have ended sooner than something was read in it, for the end
// to be taken for that: with other constants it may not have.
const beyond = 1.15

func (s Spot) onCurve(curve []still.Point, beyond float64) (float64, bool) {
	if len(curve) == 0 {
		return 0, false
	}
	along, at := func(p still.Point) float64 { return p.TimeS }, curve[0].TimeS
	last := curve[len(curve)-1]
	switch {
	case s.Kind == FirstDrop:
	case s.OverM3 > 0:
		along, at = func(p still.Point) float64 { return p.OverM3 }, s.OverM3
	default:
		at += s.AfterS
	}
	if at > beyond*along(last) {
		return 0, false
	}
	p := between(curve, along, at) // past its end, the end
	switch s.What {
	case record.Spout:
		return p(func(p still.Point) float64 { return p.ABV }), true
	case record.Vapour:
		return p(func(p still.Point) float64 { return p.VapourC }), true
	case record.Receiver:
		return p(func(p still.Point) float64 { return p.OverM3 }), true
	case record.Flow:
		return p(func(p still.Point) float64 { return p.RateM3S }), true
	}
	return 0, false
}

// between gives the figures of a curve at a place along it, in a straight line between
// its points.
func between[P any](curve []P, along func(P) float64, at float64) func(func(P) float64) float64 {
	i := sort.Search(len(curve), func(i int) bool { return along(curve[i]) >= at })
	i = min(max(i, 1), len(curve)-1)
	if len(curve) == 1 {
		i = 0
	}
	a, b := curve[max(i-1, 0)], curve[i]
	part := 0.0
	if width := along(b) - along(a); width > 0 {
		part = min(max((at-along(a))/width, 0), 1)
	}
	return func(of func(P) float64) float64 { return of(a) + part*(of(b)-of(a)) }
}
