package bands

import (
	"math"
	"strconv"
	"strings"

	"newmake/compile/plan"
	"newmake/compile/stage/still"
	"newmake/compile/work"
	"newmake/lang/record"
)

// readings puts low and high to every reading of a plan that foretells something.
func (k *bench) readings(p *plan.Plan) {
	book := readBook{}
	for i := range p.Schedule.Steps {
		s := &p.Schedule.Steps[i]
		for n := range s.Read {
			r := &s.Read[n]
			should, ok := book.of(k.middle)[r.ID]
			if !ok {
				continue
			}
			_, by := k.around(k.foretold(s, r, book))
			by = by.and(r.Besides)
			r.Low, r.High = moved(should, -by.down), moved(should, by.up)
			r.Tolerance = should.Off(max(by.down, by.up))
		}
	}
}

// readBook has the readings of plans by their keys.
type readBook map[*plan.Plan]map[string]plan.Quantity

func (b readBook) of(p *plan.Plan) map[string]plan.Quantity {
	if b[p] == nil {
		b[p] = map[string]plan.Quantity{}
		for _, s := range p.Schedule.Steps {
			for _, r := range s.Read {
				b[p][r.ID] = r.Should
			}
		}
	}
	return b[p]
}

// foretold is the figure of a reading: at its moment, if it is taken while something
// goes on; else at the end of its step, which another batch has there too.
func (k *bench) foretold(s *plan.Step, r *plan.Reading, book readBook) figure {
	if of := k.alongside(s, r); of != nil {
		return of
	}
	return func(p *plan.Plan) float64 {
		if q, ok := book.of(p)[r.ID]; ok {
			return q.Value
		}
		return math.NaN()
	}
}

// moved is a quantity so much more. What is counted at 60 F goes with what is counted at
// 20 C: over so little a way they go by one factor.
func moved(q plan.Quantity, by float64) *plan.Quantity {
	out := q
	out.Value += by
	switch {
	case q.Unit == plan.AbvPct:
		out.Value = max(0, out.Value)
		if q.Proof > 0 {
			out.Proof = max(0, q.Proof+plan.ProofPerPct*by)
		}
		if q.Abv60F > 0 {
			out.Abv60F = max(0, q.Abv60F+by)
		}
	case q.Unit == plan.Litre:
		out.Value = max(0, out.Value)
		if q.Gallons > 0 && q.Value > 0 {
			out.Gallons = out.Value * q.Gallons / q.Value
		}
	}
	return &out
}

// alongside is the figure of a reading that is taken while something goes on, at its
// moment; nil for one at the end of its step.
func (k *bench) alongside(s *plan.Step, r *plan.Reading) figure {
	switch {
	case work.IsRound(s.ID):
		hour := k.since(s.Start, "ferment.run") / 60
		switch r.Kind {
		case record.Gravity:
			return fermenting(hour, fermentSG)
		case record.Temperature:
			return fermenting(hour, fermentC)
		case record.PH:
			return fermenting(hour, fermentPH)
		}
	case r.At == "" || r.At == s.End:
		return nil
	case s.Stage == "strip":
		return k.running(strip, s, r)
	case s.Stage == "spirit":
		return k.running(spirit, s, r)
	}
	return nil
}

// running is the figure of a reading while a still runs: at what has come over of its
// fraction, or of the receiver by the clock.
func (k *bench) running(w which, s *plan.Step, r *plan.Reading) figure {
	c := w(k.middle).Curve
	if len(c) == 0 {
		return nil
	}
	charge, name := cutLast(s.ID)
	if name == "collect" {
		name = still.LowWines
	}
	minutes := k.since(r.At, charge+".heat") - c[0].Min
	begun := func(p *plan.Plan) float64 { return w(p).Fraction(name).StartOverL }
	soFar := func(p *plan.Plan) float64 { return w.after(minutes, overL)(p) - begun(p) }
	litres := soFar(k.middle)
	at := func(of func(p *plan.RunPoint) float64) figure {
		return func(p *plan.Plan) float64 { return w.atVolume(begun(p)+litres, of)(p) }
	}
	switch r.Kind {
	case record.Spout:
		return at(spoutAbv)
	case record.Flow: // as it is held: where another batch has come to its next cut by then, its last
		return func(p *plan.Plan) float64 {
			f := w(p).Fraction(name)
			return w.atVolume(f.StartOverL+min(litres, nearlyAll*(f.EndOverL-f.StartOverL)), spoutRate)(p)
		}
	case record.Vapour:
		return at(vapourC)
	case record.Receiver:
		if name != still.Tails {
			return soFar
		}
		return func(p *plan.Plan) float64 { return soFar(p) + inTank(w(p), charge) }
	}
	return nil
}

// nearlyAll is as much of a fraction as lies safely before its cut.
const nearlyAll = 0.98

// inTank is what stands in the feints tank before the tails of a charge run into it: its
// heads, what the charges before it left, and what is kept for those after it.
func inTank(r *plan.Run, charge string) float64 {
	each := func(name string) float64 { f := r.Fraction(name); return f.EndOverL - f.StartOverL }
	litres, before := each(still.Heads), 0
	if _, n := cutLast(charge); n != "" {
		before, _ = strconv.Atoi(n)
		before--
	}
	if r.FeintsReturned != nil {
		litres += float64(r.Charges-1-before) * r.FeintsReturned.VolumeL
	}
	return litres + float64(before)*(each(still.Heads)+each(still.Tails))
}

// cutLast parts a key at its last point.
func cutLast(id string) (before, after string) {
	i := strings.LastIndexByte(id, '.')
	if i < 0 {
		return id, ""
	}
	return id[:i], id[i+1:]
}

// since is the minutes from the start of a step to a moment; NaN if there is no such
// step.
func (k *bench) since(moment, step string) float64 {
	for _, s := range k.middle.Schedule.Steps {
		if s.ID == step {
			return plan.Moment(moment).Sub(plan.Moment(s.Start)).Minutes()
		}
	}
	return math.NaN()
}
