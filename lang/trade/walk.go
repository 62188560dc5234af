package trade

import (
	"newmake/lang/recipe"
)

// Rough figures for reasoning about a mash before it is computed. The plan has
// the real balances; here a few degrees and a few per cent are enough.
const (
	grainDisplaces = 0.67e-3 // m3 a kg of grain as is: 0.65-0.70 L/kg (from memory)
	grainHolds     = 0.9e-3  // m3 of wort that a kg of draff keeps: 0.8-1.1 L/kg (from memory)
	waterHeat      = 4.18    // kJ/(kg K)
	grainHeat      = 1.67    // kJ/(kg K): 0.38-0.40 of water (common practice)
)

// moment is the cooker around one step.
type moment struct {
	step     *recipe.MashStep
	beforeC  float64 // temperature before the step
	afterC   float64
	sure     bool    // beforeC was set by a heat, cool or water line, not by mixing
	liquorM3 float64 // in the cooker after the step
	grainKg  float64
	wasEmpty bool // no liquor before the step
	noGrain  bool // no grain before the step
}

// meetsC is the temperature that what is added meets: in plain water that of the
// mixture, in a mash that of the mash.
func (m *moment) meetsC() float64 {
	if m.noGrain {
		return m.afterC
	}
	return m.beforeC
}

// walkthrough is the mash, step by step.
type walkthrough struct {
	moments    []moment
	boilC      float64
	added      map[int]int      // bill line: the step that adds it
	drained    float64          // m3 drawn off
	wortC      float64          // of what was drawn off, mixed
	wortStep   *recipe.MashStep // the last that set it
	hotDraw    *recipe.MashStep // the first that runs off and is not cooled
	lauter     bool
	firstDrain int // the step that first draws off; the number of steps if none does
}

// last is the cooker at the end.
func (w *walkthrough) last() *moment { return &w.moments[len(w.moments)-1] }

// draw adds what a step draws off.
func (w *walkthrough) draw(s *recipe.MashStep, m3, tunC float64) {
	if s.CooledC > 0 {
		tunC = s.CooledC
	} else if w.hotDraw == nil {
		w.hotDraw = s
	}
	if w.drained+m3 > 0 {
		w.wortC = (w.wortC*w.drained + tunC*m3) / (w.drained + m3)
	}
	w.drained += m3
	w.wortStep = s
}

// set is the temperature at which the wort goes to the yeast, and the step that sets it.
func (w *walkthrough) set() (c float64, step *recipe.MashStep) {
	if w.wortStep != nil {
		return w.wortC, w.wortStep
	}
	return w.last().afterC, w.last().step
}

// outM3 is what goes to the fermenter.
func (w *walkthrough) outM3() float64 {
	if w.lauter {
		return w.drained
	}
	return w.last().volumeM3()
}

func (m *moment) volumeM3() float64 { return m.liquorM3 + m.grainKg*grainDisplaces }

// walkThrough goes through the mash with mixing by heat capacities.
func walkThrough(r *rules) *walkthrough {
	p, bill := r.batch.Plant, r.batch.Bill.Lines
	w := &walkthrough{boilC: boilC(p.ElevationM), added: map[int]int{}}
	var c, liquor, grain float64
	sure := true
	w.firstDrain = len(r.batch.Mash.Steps)
	w.moments = make([]moment, 0, len(r.batch.Mash.Steps))
	for i := range r.batch.Mash.Steps {
		s := &r.batch.Mash.Steps[i]
		m := moment{step: s, beforeC: c, sure: sure, wasEmpty: liquor == 0, noGrain: grain == 0}
		heat := liquor*1000*waterHeat + grain*grainHeat
		switch s.Verb {
		case recipe.MashWater, recipe.MashBackset:
			more := s.VolumeM3 * 1000 * waterHeat
			if heat+more > 0 {
				c = (heat*c + more*s.TempC) / (heat + more)
			}
			sure = heat == 0
			liquor += s.VolumeM3
		case recipe.MashAdd:
			for _, g := range s.Grains {
				w.added[g] = i
				more := bill[g].MassKg * grainHeat
				if heat+more > 0 { // what lies dry is as warm as the house
					c = (heat*c + more*p.AmbientC) / (heat + more)
				}
				heat += more
				grain += bill[g].MassKg
			}
			sure = false
		case recipe.MashHeat, recipe.MashCool:
			c, sure = min(s.TempC, w.boilC), true // a step above the boil has its own diagnostic
			if w.wortStep != nil {
				w.wortC, w.wortStep = c, s
			}
		case recipe.MashBoil:
			c, sure = w.boilC, true
		case recipe.MashDrain:
			w.lauter, w.firstDrain = true, min(w.firstDrain, i)
			out := max(0, liquor-grain*grainHolds)
			if !s.NextMash {
				w.draw(s, out, c)
			}
			liquor -= out
		case recipe.MashSparge:
			w.lauter, w.firstDrain = true, min(w.firstDrain, i)
			out := max(0, liquor+s.VolumeM3-grain*grainHolds)
			w.draw(s, out, c)
			liquor += s.VolumeM3 - out
		}
		m.afterC, m.liquorM3, m.grainKg = c, liquor, grain
		w.moments = append(w.moments, m)
	}
	return w
}

// peakC is the hottest that a grain of the bill gets, and the step at which.
func (w *walkthrough) peakC(grain int) (c float64, step *recipe.MashStep) {
	from, ok := w.added[grain]
	if !ok {
		return 0, nil
	}
	c, step = w.moments[from].meetsC(), w.moments[from].step
	for i := from; i < len(w.moments); i++ {
		if m := &w.moments[i]; m.afterC > c {
			c, step = m.afterC, m.step
		}
	}
	return c, step
}
