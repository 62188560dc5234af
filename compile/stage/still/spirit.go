package still

import (
	"fmt"
	"math"

	"newmake/compile/matter/fluid"
	"newmake/compile/matter/stream"
	"newmake/lang/recipe"
)

// SpiritRun is the second run: foreshots by volume, then heads until the cut
// that begins the hearts, hearts, and tails to the stop. Errors and problems
// are as for Strip.
func SpiritRun(in SpiritInput) (Run, error) {
	return spiritRun(in, in.boil(), true)
}

func spiritRun(in SpiritInput, b *boil, keep bool) (Run, error) {
	r, err := runSpirit(in, b, keep)
	if err != nil {
		return Run{}, err
	}
	run := r.finish()
	in.asked(&run)
	run.lose(in.Still.LostFrac)
	return run, nil
}

// feints are the heads and tails of a run that is wanted for nothing else.
func feints(in SpiritInput, b *boil) (vec, error) {
	var drives []drive
	if in.Still.HeatedBy == recipe.Direct || in.byTime() { // how long it takes sets how much steam comes in, or where a cut falls
		var err error
		if drives, err = in.drives(b); err != nil {
			return vec{}, err
		}
	}
	r, err := cutSpirit(in, b, func(r *runner) { r.bare, r.drives = true, drives })
	if err != nil {
		return vec{}, err
	}
	heads, tails := &r.fractions[1], &r.fractions[3]
	back := vec{heads.EthanolKg + tails.EthanolKg, heads.WaterKg + tails.WaterKg}
	if lost := in.Still.LostFrac; lost > 0 {
		back = back.scale(1 - lost)
	}
	return back, nil
}

// runSpirit runs to the stop; with keep it remembers its steps.
func runSpirit(in SpiritInput, b *boil, keep bool) (*runner, error) {
	drives, err := in.drives(b)
	if err != nil {
		return nil, err
	}
	r, err := cutSpirit(in, b, func(r *runner) { r.keep, r.drives = keep, drives })
	if err != nil {
		return nil, err
	}
	return r, r.ends()
}

func cutSpirit(in SpiritInput, b *boil, how func(*runner)) (*runner, error) {
	if !(in.ForeshotsM3 >= 0) {
		return nil, fmt.Errorf("foreshots of %g L cannot be collected", 1000*in.ForeshotsM3)
	}
	if !(in.Feints.EthanolKg >= 0 && in.Feints.WaterKg >= 0) {
		return nil, fmt.Errorf("feints of %g kg of ethanol and %g kg of water cannot be returned", in.Feints.EthanolKg, in.Feints.WaterKg)
	}
	whole, waterKg, err := in.charge()
	if err != nil {
		return nil, err
	}
	r, err := newRunner(in.Setting, whole, in.Stop, b)
	if err != nil {
		return nil, err
	}
	r.closed = r.closed && !in.byTime() // whose nodes know no time before they are summed
	r.waterKg = waterKg
	r.gaugeC = in.GaugeC
	if r.gaugeC == 0 {
		r.gaugeC = referenceC
	}
	from, err := r.mark(in.HeartsFrom)
	if err != nil {
		return nil, fmt.Errorf("the cut that begins the hearts: %w", err)
	}
	to, err := r.mark(in.HeartsTo)
	if err != nil {
		return nil, fmt.Errorf("the cut that ends the hearts: %w", err)
	}
	how(r)
	r.fractions = make([]Fraction, 0, 4)
	r.cut(in.ForeshotsM3, from, to)
	return r, nil
}

// byTime reports whether a cut is made by the clock.
func (in SpiritInput) byTime() bool {
	return in.HeartsFrom.By == recipe.ByTime || in.HeartsTo.By == recipe.ByTime
}

// cut fills the four receivers.
func (r *runner) cut(foreshotsM3 float64, from, to mark) {
	weak := math.IsInf(from.u, 1)
	foreshots := r.collect(Foreshots, r.volumeMark(foreshotsM3))
	if r.ended {
		if !foreshots && foreshotsM3 > 0 && r.x0 > leastX && r.now.timeS > r.hot.heatUpS {
			r.problem(ProblemForeshotsNotReached)
		}
		for _, name := range [...]string{Heads, Hearts, Tails} {
			r.collect(name, runsOut)
		}
		return
	}
	begun := from.passed(r.now)
	switch {
	case weak:
		r.problem(ProblemHeartsWeak)
	case begun:
		r.problem(ProblemHeartsFromPassed)
	}
	if !r.collect(Heads, from) {
		r.problem(ProblemHeartsFromNotReached)
	} else if to.passed(r.now) {
		r.problem(ProblemCutsCrossed)
	}
	if !r.collect(Hearts, to) && r.fractions[2].MassKg() > 0 {
		r.problem(ProblemHeartsToNotReached)
	}
	r.collect(Tails, runsOut)
}

// charge mixes low wines and feints, and the water that brings them down to the
// strength that is asked for; none where they are no stronger.
func (in SpiritInput) charge() (whole stream.Stream, waterKg float64, err error) {
	whole = mixed(in.LowWines, in.Feints)
	if in.WaterTo.Value == 0 {
		return whole, 0, nil
	}
	w, err := massFrac(in.WaterTo)
	if err != nil || w <= 0 {
		return whole, 0, fmt.Errorf("the charge cannot be brought to %g %%", 100*in.WaterTo.Value)
	}
	waterKg = max(0, whole.EthanolKg/w-whole.EthanolKg-whole.WaterKg)
	return mixed(whole, stream.Stream{WaterKg: waterKg, TempC: in.WaterC}), waterKg, nil
}

// mixed adds one stream to another; the temperature is that of the mixture.
func mixed(s, more stream.Stream) stream.Stream {
	a, b := lot(s), lot(more)
	if b.MassKg <= 0 {
		return s
	}
	c := s.Plus(more)
	if mixed, err := fluid.Blend(a, b); err == nil {
		c.TempC = mixed.TempC
	}
	return c
}

// lot is a stream's ethanol and water as fluid mixes them.
func lot(s stream.Stream) fluid.Lot {
	m := s.EthanolKg + s.WaterKg
	if m <= 0 {
		return fluid.Lot{}
	}
	return fluid.Lot{MassKg: m, EthanolMassFrac: s.EthanolKg / m, TempC: s.TempC}
}
